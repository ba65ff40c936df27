package draft

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a line lacks may stand in the line beside it. Common practice, no source.
func TestAmountsInOtherLines(t *testing.T) {
	for _, c := range []struct{ text, name, pours string }{
		{"3/4 oz each:\ngin\nlemon\n2 dashes bitters\nshake", "", "0.75 oz gin; 0.75 oz lemon; 2 dash bitters"},
		{"20 ml each of the following\nrum\nlime\n\nmint", "", "20 ml rum; 20 ml lime"},
		{"60ml\nwhite rum\n30ml\nlime juice", "", "60 ml white rum; 30 ml lime juice"},
		{"Bourbon\n60ml\nBitters\n2 dashes", "", "60 ml Bourbon; 2 dash Bitters"},
		{"Nightwatch\n60ml\nrum\n30ml\nlime", "Nightwatch", "60 ml rum; 30 ml lime"},
		{"1 oz mezcal\n\" lemon\nhoney ditto", "", "1 oz mezcal; 1 oz lemon; 1 oz honey"},
		{"rye, lemon, maple 60/20/15 ml", "", "60 ml rye; 20 ml lemon; 15 ml maple"},
		{"gin60 lemon30 sugar15 shake", "", "60  gin; 30  lemon; 15  sugar"},
		{"6cl gin.3cl lemon", "", "6 cl gin; 3 cl lemon"},
		{"all equal, 25ml: gin, lemon, honey", "", "25 ml gin; 25 ml lemon; 25 ml honey"},
		{"equal parts gin, lemon, honey (25ml)", "", "25 ml gin; 25 ml lemon; 25 ml honey"},
		{"X\nrum 50 gold\nvermouth 2 oz dry", "X", "50  rum, gold; 2 oz vermouth, dry"},
		{"X\n1 bottle (75 cl) white port", "X", "75 cl white port"},
		{"\"Low Tide\" 45 gin, 15 sherry", "Low Tide", "45  gin; 15  sherry"},
		{"1) 2 oz gin 2) 1 oz lemon", "", "2 oz gin; 1 oz lemon"},
		{"1 gin, 1 lime, 1 honey, equal parts", "", "1  gin; 1  lime; 1  honey"},
		{"1 gin, 1 lime, 1 honey, equal pts, shake", "", "1  gin; 1  lime; 1  honey"},
		{"X\nspec: 2 oz gin, 1 oz lemon", "X", "2 oz gin; 1 oz lemon"},
		{"X\ngin, vermouth, bitter equal parts", "X", "1 part gin; 1 part vermouth; 1 part bitter"},
		{"equal parts gin, vermouth, bitter", "", "1 part gin; 1 part vermouth; 1 part bitter"},
		{"X\nItem\treg\ngin\t45\nlemon\t20", "X", "45  gin; 20  lemon"},
		{"2 oz gin, 5 or 6 basil leaves", "", "2 oz gin; 5.5 leaf basil"},
		{"2 oz gin, two or three dashes bitters", "", "2 oz gin; 2.5 dash bitters"},
	} {
		d := Parse(c.text)
		assert.Equal(t, c.name, d.Name, c.text)
		var got []string
		for _, l := range d.Lines {
			got = append(got, fmt.Sprintf("%v %s %s", l.Amount, l.Unit, l.Name))
		}
		assert.Equal(t, c.pours, strings.Join(got, "; "), c.text)
		assert.Equal(t, c.text, d.String())
	}
}

// An amount alone, with no name beside it, is asked for.
func TestAnAmountAloneIsAsked(t *testing.T) {
	for _, text := range []string{"Halyard Sour\n2 oz", "X\n2 oz gin\n1 oz\n", "handful of basil, 60 gin"} {
		require.Error(t, Parse(text).Err(), text)
	}
}

// Labels that follow each other on one line are read as if each had its own.
func TestLabelsOnOneLine(t *testing.T) {
	for _, c := range []struct{ line, glass, garnish, method string }{
		{"Glass: hurricane  Ice: crushed  Garnish: mint sprig", "hurricane", "mint sprig", ""},
		{"Method: shake, Garnish: lime wheel", "", "lime wheel", "shake"},
	} {
		text := "X\n2 oz rum\n1 oz lime\n" + c.line
		d := Parse(text)
		assert.Empty(t, d.Faults, c.line)
		assert.Equal(t, c.glass, d.Glass, c.line)
		assert.Equal(t, c.garnish, d.Garnish, c.line)
		assert.Equal(t, c.method, string(d.Method), c.line)
		assert.Equal(t, text, d.String())
	}
	assert.Equal(t, "lime wheel: thin", Parse("X\n2 oz rum\nGarnish: lime wheel: thin").Garnish)
}

// A labelled name is kept to the letter, though it holds what is a label elsewhere.
func TestLabelledNameHoldsNoLabels(t *testing.T) {
	d := Parse("name: \"G:B 0\n2 oz gin\nshake, up")
	assert.Equal(t, "\"G:B 0", d.Name)
	assert.Empty(t, d.Garnish)
}
