package draft

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/drafttest"
	"counterpour/flavor/measure/draft/words/token"
)

func TestParsePourForms(t *testing.T) {
	for _, c := range []struct {
		text   string
		amount float64
		unit   flavor.Unit
		name   string
	}{
		{"2 oz gin", 2, flavor.Ounce, "gin"},
		{"2oz gin", 2, flavor.Ounce, "gin"},
		{"2 Limettenviertel", 2, flavor.Piece, "Limetten"},
		{"3 Gurkenscheiben", 3, flavor.Slice, "Gurken"},
		{"6 muntblaadjes", 6, flavor.Leaf, "munt"},
		{"½ lima en gajos", 0.5, "", "lima"},
		{"1 colher de chá de mel", 1, flavor.Teaspoon, "mel"},
		{"una spruzzata di soda", 1, flavor.Splash, "soda"},
		{"0.75 oz gin", 0.75, flavor.Ounce, "gin"},
		{".75 oz gin", 0.75, flavor.Ounce, "gin"},
		{"3/4 oz gin", 0.75, flavor.Ounce, "gin"},
		{"3⁄4 oz gin", 0.75, flavor.Ounce, "gin"},
		{"1 1/2 oz gin", 1.5, flavor.Ounce, "gin"},
		{"¾ oz gin", 0.75, flavor.Ounce, "gin"},
		{"¾oz gin", 0.75, flavor.Ounce, "gin"},
		{"1½ oz gin", 1.5, flavor.Ounce, "gin"},
		{"1 ½ oz gin", 1.5, flavor.Ounce, "gin"},
		{"⅓ oz gin", 1.0 / 3, flavor.Ounce, "gin"},
		{"22,5 ml gin", 22.5, flavor.Millilitre, "gin"},
		{"0,125 oz gin", 0.125, flavor.Ounce, "gin"},
		{"22.5ml gin", 22.5, flavor.Millilitre, "gin"},
		{"22.5mL of gin", 22.5, flavor.Millilitre, "gin"},
		{"1.5 fl oz gin", 1.5, flavor.Ounce, "gin"},
		{"1.5 fl. oz. gin", 1.5, flavor.Ounce, "gin"},
		{"2 oz. gin", 2, flavor.Ounce, "gin"},
		{"6 CL GIN", 6, flavor.Centilitre, "GIN"},
		{"2-3 dashes bitters", 2.5, flavor.Dash, "bitters"},
		{"2–3 dashes bitters", 2.5, flavor.Dash, "bitters"},
		{"2 - 3 dashes bitters", 2.5, flavor.Dash, "bitters"},
		{"2 to 3 dashes bitters", 2.5, flavor.Dash, "bitters"},
		{"1-1 1/2 oz gin", 1.25, flavor.Ounce, "gin"},
		{"a dash of bitters", 1, flavor.Dash, "bitters"},
		{"dash of bitters", 1, flavor.Dash, "bitters"},
		{"Dash bitters", 1, flavor.Dash, "bitters"},
		{"two dashes bitters", 2, flavor.Dash, "bitters"},
		{"twelve drops saline", 12, flavor.Drop, "saline"},
		{"one and a half oz gin", 1.5, flavor.Ounce, "gin"},
		{"1 and a half oz gin", 1.5, flavor.Ounce, "gin"},
		{"half oz gin", 0.5, flavor.Ounce, "gin"},
		{"half an oz of gin", 0.5, flavor.Ounce, "gin"},
		{"a half ounce of gin", 0.5, flavor.Ounce, "gin"},
		{"three quarters of an oz gin", 0.75, flavor.Ounce, "gin"},
		{"three quarter oz gin", 0.75, flavor.Ounce, "gin"},
		{"half a lime", 0.5, "", "lime"},
		{"1 bar spoon honey", 1, flavor.Barspoon, "honey"},
		{"barspoon of honey", 1, flavor.Barspoon, "honey"},
		{"1 bsp honey", 1, flavor.Barspoon, "honey"},
		{"2 tsp sugar", 2, flavor.Teaspoon, "sugar"},
		{"1 tablespoon sugar", 1, flavor.Tablespoon, "sugar"},
		{"2 parts gin", 2, flavor.PartUnit, "gin"},
		{"splash of water", 1, flavor.Splash, "water"},
		{"pinch of salt", 1, flavor.Pinch, "salt"},
		{"5g sugar", 5, flavor.Gram, "sugar"},
		{"6 mint leaves", 6, flavor.Leaf, "mint"},
		{"6-8 mint leaves", 7, flavor.Leaf, "mint"},
		{"4 mint sprigs", 4, flavor.Sprig, "mint"},
		{"1 sprig of mint", 1, flavor.Sprig, "mint"},
		{"1 sprig mint", 1, flavor.Sprig, "mint"},
		{"2 thin orange slices", 2, flavor.Slice, "thin orange"},
		{"1 lime wedge", 1, flavor.Wedge, "lime"},
		{"1 lime wheel", 1, flavor.Slice, "lime"},
		{"1 sugar cube", 1, flavor.Cube, "sugar"},
		{"1 pc lime", 1, flavor.Piece, "lime"},
		{"1 lime", 1, "", "lime"},
		{"a lime", 1, "", "lime"},
		{"2 raspberries", 2, "", "raspberries"},
		{"1 orange peel", 1, "", "orange peel"},
		{"top soda water", 1, flavor.Top, "soda water"},
		{"Top with soda water", 1, flavor.Top, "soda water"},
		{"top up with soda", 1, flavor.Top, "soda"},
		{"topped off with soda", 1, flavor.Top, "soda"},
		{"fill with soda", 1, flavor.Top, "soda"},
		{"soda water to top", 1, flavor.Top, "soda water"},
		{"soda water, to top up", 1, flavor.Top, "soda water"},
		{"90 ml soda water, to top", 90, flavor.Millilitre, "soda water"},
		{"- 2 oz gin", 2, flavor.Ounce, "gin"},
		{"* 2 oz gin", 2, flavor.Ounce, "gin"},
		{"• 2 oz gin", 2, flavor.Ounce, "gin"},
		{"•2 oz gin", 2, flavor.Ounce, "gin"},
		{"\t2\u00a0oz   gin,", 2, flavor.Ounce, "gin"},
		{"1 oz 20% saline", 1, flavor.Ounce, "20% saline"},
		{"2 oz half and half", 2, flavor.Ounce, "half and half"},
		{"1 oz Saline, 20 %", 1, flavor.Ounce, "Saline, 20 %"},
		{"2x oz gin", 2, flavor.Ounce, "gin"},
		{"2 x dashes bitters", 2, flavor.Dash, "bitters"},
		{"1-1/2 oz gin", 1.5, flavor.Ounce, "gin"},
		{"1 1/2oz. gin", 1.5, flavor.Ounce, "gin"},
		{"1 & 1/2 oz gin", 1.5, flavor.Ounce, "gin"},
		{"oz 2 gin", 2, flavor.Ounce, "gin"},
		{"2 ounces of gin", 2, flavor.Ounce, "gin"},
		{"60 mls gin", 60, flavor.Millilitre, "gin"},
		{"60ml. gin", 60, flavor.Millilitre, "gin"},
		{"60 cc gin", 60, flavor.Millilitre, "gin"},
		{"2 ds bitters", 2, flavor.Dash, "bitters"},
		{"1 bs simple", 1, flavor.Barspoon, "simple"},
		{"2 dl wine", 20, flavor.Centilitre, "wine"},
		{"1 jigger gin", 1.5, flavor.Ounce, "gin"},
		{"1 pony gin", 1, flavor.Ounce, "gin"},
		{"half a gill of gin", 2, flavor.Ounce, "gin"},
		{"1 wineglass of gin", 2, flavor.Ounce, "gin"},
		{"one wine-glassful gin", 2, flavor.Ounce, "gin"},
		{"gin 60", 60, "", "gin"},
		{"gin - 60ml", 60, flavor.Millilitre, "gin"},
		{"gin: 60 ml", 60, flavor.Millilitre, "gin"},
		{"gin, 2 oz", 2, flavor.Ounce, "gin"},
		{"gin (60 ml)", 60, flavor.Millilitre, "gin"},
		{"gin ........ 60 ml", 60, flavor.Millilitre, "gin"},
		{"gin | 60 ml", 60, flavor.Millilitre, "gin"},
		{"gin = 60 ml", 60, flavor.Millilitre, "gin"},
		{"2 oz (60 ml) gin", 2, flavor.Ounce, "gin"},
		{"60ml/2oz gin", 2, flavor.Ounce, "gin"},
		{"2 oz gin (60ml)", 2, flavor.Ounce, "gin"},
		{"about 2 oz gin", 2, flavor.Ounce, "gin"},
		{"~2 oz gin", 2, flavor.Ounce, "gin"},
		{"a scant oz gin", 1, flavor.Ounce, "gin"},
		{"2 fat dashes bitters", 2, flavor.Dash, "bitters"},
		{"a couple of dashes bitters", 2, flavor.Dash, "bitters"},
		{"one half oz gin", 0.5, flavor.Ounce, "gin"},
		{"two thirds oz gin", 2.0 / 3, flavor.Ounce, "gin"},
		{".5 2:1 demerara", 0.5, "", "2:1 demerara"},
		{"1 oz 151 rum", 1, flavor.Ounce, "151 rum"},
		{"151 rum 1 oz", 1, flavor.Ounce, "151 rum"},
		{"12 year old scotch 45ml", 45, flavor.Millilitre, "12 year old scotch"},
		{"add 2 oz gin", 2, flavor.Ounce, "gin"},
		{"1) 2 oz gin", 2, flavor.Ounce, "gin"},
		{"1. 2 oz gin", 2, flavor.Ounce, "gin"},
		{"splash soda", 1, flavor.Splash, "soda"},
		{"float red wine", 1, flavor.Float, "red wine"},
		{"float ½ oz red wine", 0.5, flavor.Ounce, "red wine"},
		{"½ oz rum float", 0.5, flavor.Ounce, "rum"},
		{"1 oz float of cream", 1, flavor.Ounce, "cream"},
		{"rum, float", 1, flavor.Float, "rum"},
		{"absinthe rinse", 1, flavor.Rinse, "absinthe"},
		{"rinse the glass with absinthe", 1, flavor.Rinse, "absinthe"},
		{"rinse: absinthe", 1, flavor.Rinse, "absinthe"},
		{"absinthe-rinsed coupe", 1, flavor.Rinse, "absinthe"},
		{"3 sprays mezcal", 3, flavor.Spritz, "mezcal"},
		{"top w/ soda", 1, flavor.Top, "soda"},
		{"top off w/ soda", 1, flavor.Top, "soda"},
		{"soda (top)", 1, flavor.Top, "soda"},
		{"top with 2 oz soda", 2, flavor.Ounce, "soda"},
		{"egg white", 1, flavor.Piece, "egg white"},
		{"1 ea egg white", 1, "", "egg white"},
		{"white of one egg", 1, flavor.Piece, "egg white"},
		{"muddle 8 mint", 8, "", "mint"},
		{"8 mint, muddled", 8, "", "mint"},
		{"½ lime squeezed", 0.5, "", "lime"},
		{"juice of half a lime", 0.5, "", "lime"},
		{"squeeze of lime", 1, flavor.Wedge, "lime"},
		{"1 lime cheek", 1, flavor.Piece, "lime"},
		{"2 cucumber rounds", 2, flavor.Slice, "cucumber"},
		{"1 scoop ice cream", 1, flavor.Scoop, "ice cream"},
		{"1 oz gin (optional)", 1, flavor.Ounce, "gin"},
	} {
		d := Parse("A name\n" + c.text)
		require.NoError(t, d.Err(), c.text)
		require.Len(t, d.Lines, 1, c.text)
		l := d.Lines[0]
		assert.Equal(t, "A name", d.Name)
		assert.InDelta(t, c.amount, l.Amount, 1e-12, c.text)
		assert.Equal(t, c.unit, l.Unit, c.text)
		assert.Equal(t, c.name, l.Name, c.text)
		assert.Equal(t, 2, l.Number, c.text)
		assert.Equal(t, strings.TrimPrefix(strings.TrimPrefix(strings.Trim(token.OneLine(c.text), "-*• ,"), "1) "), "1. "), l.Asked, c.text)
	}
}

func TestParseRangeIsNoted(t *testing.T) {
	d := Parse("X\n2–3 dashes bitters")
	require.NoError(t, d.Err())
	assert.Contains(t, d.Lines[0].Note, "2–3")
	assert.Contains(t, d.Lines[0].Note, "2.5")
}

// One line may hold several entries; each is read by itself.
func TestParseEntries(t *testing.T) {
	type pour struct {
		amount float64
		unit   flavor.Unit
		name   string
	}
	for _, c := range []struct {
		text  string
		pours []pour
	}{
		{"2 gin / .75 lime / .75 simple", []pour{{2, "", "gin"}, {0.75, "", "lime"}, {0.75, "", "simple"}}},
		{"2 gin, .75 lime, .75 simple", []pour{{2, "", "gin"}, {0.75, "", "lime"}, {0.75, "", "simple"}}},
		{"60 gin;25 lemon;20 simple", []pour{{60, "", "gin"}, {25, "", "lemon"}, {20, "", "simple"}}},
		{"60 gin 25 lemon 20 simple", []pour{{60, "", "gin"}, {25, "", "lemon"}, {20, "", "simple"}}},
		{"gin 60, lemon 25, simple 20", []pour{{60, "", "gin"}, {25, "", "lemon"}, {20, "", "simple"}}},
		{"2 oz gin + 1 oz lime juice", []pour{{2, "oz", "gin"}, {1, "oz", "lime juice"}}},
		{"2 oz gin and 1 oz lime juice", []pour{{2, "oz", "gin"}, {1, "oz", "lime juice"}}},
		{"2 oz gin • 1 oz lime juice", []pour{{2, "oz", "gin"}, {1, "oz", "lime juice"}}},
		{"2 oz. gin. 1 oz. lime juice.", []pour{{2, "oz", "gin"}, {1, "oz", "lime juice"}}},
		{"60 ml gin - 25 ml lemon", []pour{{60, "ml", "gin"}, {25, "ml", "lemon"}}},
		{"2gin/.75 lime/.75 simple", []pour{{2, "", "gin"}, {0.75, "", "lime"}, {0.75, "", "simple"}}},
		{"3/4 each gin, bitter-style, sweet vermouth", []pour{{0.75, "", "gin"}, {0.75, "", "bitter-style"}, {0.75, "", "sweet vermouth"}}},
		{"1 oz each: gin, rum and rye", []pour{{1, "oz", "gin"}, {1, "oz", "rum"}, {1, "oz", "rye"}}},
		{"1 oz each of gin & rum", []pour{{1, "oz", "gin"}, {1, "oz", "rum"}}},
		{"gin, rum, rye - 1 oz each", []pour{{1, "oz", "gin"}, {1, "oz", "rum"}, {1, "oz", "rye"}}},
		{"equal parts gin, rum and rye", []pour{{1, "part", "gin"}, {1, "part", "rum"}, {1, "part", "rye"}}},
		{"2 oz gin, shake, up, lemon twist", []pour{{2, "oz", "gin"}}},
		{"shake: 2 oz gin, 1 oz lime juice", []pour{{2, "oz", "gin"}, {1, "oz", "lime juice"}}},
		{"dash bitters, top soda", []pour{{1, "dash", "bitters"}, {1, "top", "soda"}}},
		{"2 oz half and half, 1 oz gin", []pour{{2, "oz", "half and half"}, {1, "oz", "gin"}}},
		{"1 large cube", nil},
		{"1 cup crushed ice", nil},
	} {
		d := Parse("X\n" + c.text + "\n1 dash bitters\n")
		require.NoError(t, d.Err(), c.text)
		require.Len(t, d.Lines, len(c.pours)+1, c.text)
		for i, w := range c.pours {
			l := d.Lines[i]
			assert.Equal(t, w, pour{l.Amount, l.Unit, l.Name}, c.text)
			assert.Equal(t, l.Name, token.OneLine(d.text[l.NameAt.Start:l.NameAt.End]), c.text)
		}
	}
}

// What is no pour is kept.
func TestParseKeeps(t *testing.T) {
	for _, c := range []struct {
		text                string
		garnish, glass, rim string
		steps               []string
		method              flavor.Method
		service             flavor.Service
		hotC                float64
	}{
		{text: "garnish: lemon twist", garnish: "lemon twist"},
		{text: "Garnish with a lemon twist, cherry", garnish: "a lemon twist, cherry"},
		{text: "lemon twist", garnish: "lemon twist"},
		{text: "lime wheel garnish", garnish: "lime wheel"},
		{text: "1 lime wheel for garnish", garnish: "1 lime wheel"},
		{text: "express orange peel", garnish: "express orange peel"},
		{text: "grated nutmeg", garnish: "grated nutmeg"},
		{text: "Garnish:\nmint sprig\nlime wheel\n\nshake", garnish: "mint sprig, lime wheel", method: flavor.Shake},
		{text: "glass: chilled coupe", glass: "chilled coupe", service: flavor.Up},
		{text: "nick & nora", glass: "Nick-and-Nora glass", service: flavor.Up},
		{text: "DOF", glass: "double rocks glass", service: flavor.Rocks},
		{text: "salt rim", rim: "salt"},
		{text: "rim glass with sugar", rim: "sugar"},
		{text: "rim: half salt", rim: "half salt"},
		{text: "dbl strain", steps: []string{"dbl strain"}},
		{text: "shake 12 seconds", steps: []string{"shake 12 seconds"}, method: flavor.Shake},
		{text: "shake & strain", method: flavor.Shake},
		{text: "shake/strain/up", method: flavor.Shake, service: flavor.Up},
		{text: "stir, big rock", method: flavor.Stir, service: flavor.Rocks},
		{text: "stir, served down", method: flavor.Stir, service: flavor.Up, glass: "rocks glass"},
		{text: "whip shake, crushed", method: flavor.Shake, service: flavor.Crushed, steps: []string{"whip shake"}},
		{text: "rolled, long", method: flavor.Throw, service: flavor.Long, steps: []string{"rolled"}},
		{text: "reverse dry shake", method: flavor.DryShake, steps: []string{"reverse dry shake"}},
		{text: "frozen", method: flavor.Blend},
		{text: "muddle, build, rocks", method: flavor.Build, service: flavor.Rocks, steps: []string{"muddle"}},
		{text: "build, hot, 70 °C", method: flavor.Build, service: flavor.Hot, hotC: 70},
		{text: "hot, mug", service: flavor.Hot, glass: "mug"},
		{text: "step: Flame the zest over it", steps: []string{"Flame the zest over it"}},
		{text: "Shake hard with ice. Double strain into a coupe. Garnish with a cherry.", method: flavor.Shake, service: flavor.Up, glass: "coupe",
			steps: []string{"Shake hard with ice", "Double strain into a coupe"}, garnish: "a cherry"},
	} {
		d := Parse("X\n2 oz gin\n" + c.text)
		require.NoError(t, d.Err(), c.text)
		require.Len(t, d.Lines, 1, c.text)
		assert.Equal(t, c.garnish, d.Garnish, c.text)
		assert.Equal(t, c.glass, d.Glass, c.text)
		assert.Equal(t, c.rim, d.Rim, c.text)
		assert.Equal(t, c.steps, d.Steps, c.text)
		assert.Equal(t, c.method, d.Method, c.text)
		assert.Equal(t, c.service, d.Service, c.text)
		assert.Equal(t, c.hotC, d.HotC, c.text)
	}
}

// The first line without an amount is the name.
func TestParseFirstLine(t *testing.T) {
	for _, c := range []struct {
		first, name string
		pours       int
	}{
		{"Halyard Sour", "Halyard Sour", 1},
		{"- Halyard Sour", "Halyard Sour", 1},
		{"name: 12 Mile Limit", "12 Mile Limit", 1},
		{"NAME:2 oz gin", "2 oz gin", 1},
		{"20th Floor", "20th Floor", 1},
		{"1862", "1862", 1},
		{"1862 Punch", "1862 Punch", 1},
		{"A Late Start", "A Late Start", 1},
		{"Top Hat", "Top Hat", 1},
		{"Splash Down", "Splash Down", 1},
		{"Half and Half", "Half and Half", 1},
		{"Stirred", "Stirred", 1},
		{"Halyard: 2 oz gin, 1 oz lime juice", "Halyard", 3},
		{"Halyard - 2 oz gin / 1 oz lime juice", "Halyard", 3},
		{"shake, up", "shake, up", 1},
		{"Infinity Pool", "Infinity Pool", 1},
		{"2 oz gin", "", 2},
		{"½ oz gin", "", 2},
		{"a dash of bitters", "", 2},
		{"two dashes bitters", "", 2},
		{"1 lime", "", 2},
		{"6 mint leaves", "", 2},
	} {
		d := Parse(c.first + "\n1 oz gin")
		require.NoError(t, d.Err(), c.first)
		assert.Equal(t, c.name, d.Name, c.first)
		assert.Len(t, d.Lines, c.pours, c.first)
	}
}

func TestParseMethodLine(t *testing.T) {
	for _, c := range []struct {
		text    string
		method  flavor.Method
		service flavor.Service
	}{
		{"shake, up", flavor.Shake, flavor.Up},
		{"up, shake", flavor.Shake, flavor.Up},
		{"Shaken hard and served up", flavor.Shake, flavor.Up},
		{"shake hard and strain up", flavor.Shake, flavor.Up},
		{"shake with ice, double strain into a chilled coupe", flavor.Shake, flavor.Up},
		{"stir over ice then strain, up", flavor.Stir, flavor.Up},
		{"stirred straight up", flavor.Stir, flavor.Up},
		{"stir on the rocks", flavor.Stir, flavor.Rocks},
		{"build over ice", flavor.Build, flavor.Rocks},
		{"build on ice", flavor.Build, flavor.Rocks},
		{"built, tall, over ice", flavor.Build, flavor.Long},
		{"build in a highball glass", flavor.Build, flavor.Long},
		{"shake; collins glass", flavor.Shake, flavor.Long},
		{"build and stir, rocks", flavor.Build, flavor.Rocks},
		{"swizzle crushed", flavor.Swizzle, flavor.Crushed},
		{"swizzled, crushed ice", flavor.Swizzle, flavor.Crushed},
		{"long over crushed ice, swizzle", flavor.Swizzle, flavor.Crushed},
		{"shake, strain over fresh ice", flavor.Shake, flavor.Rocks},
		{"blended", flavor.Blend, ""},
		{"thrown, up", flavor.Throw, flavor.Up},
		{"sheke, up", flavor.Shake, flavor.Up},
		{"strired\nrokcs", flavor.Stir, flavor.Rocks},
		{"dry shake, up", flavor.DryShake, flavor.Up},
		{"Dry-Shake then shake, up", flavor.DryShake, flavor.Up},
		{"dry shake, shake, strain up", flavor.DryShake, flavor.Up},
		{"shake without ice, up", flavor.DryShake, flavor.Up},
		{"shake\nup", flavor.Shake, flavor.Up},
		{"rocks\nstir", flavor.Stir, flavor.Rocks},
		{"up", "", flavor.Up},
		{"----\nshake", flavor.Shake, ""},
		{"# a remark\n\nshake", flavor.Shake, ""},
	} {
		d := Parse("X\n2 oz gin\n" + c.text)
		require.NoError(t, d.Err(), c.text)
		assert.Equal(t, c.method, d.Method, c.text)
		assert.Equal(t, c.service, d.Service, c.text)
	}
}

func TestParseFaults(t *testing.T) {
	const head = "X\n"
	for _, c := range []struct {
		text  string
		wants []drafttest.Want
	}{
		{"", []drafttest.Want{{"line 1", "", ""}}},
		{" \n\n# nothing\n", []drafttest.Want{{"line 1", "", ""}}},
		{"0\t\"", []drafttest.Want{{"line 1", "", ""}}}, // a row that says that nothing is poured, of no name
		{"Only a name\n", []drafttest.Want{{"line 1", "", ""}}},
		{"-2 oz gin", []drafttest.Want{{"line 1", "-2", ""}}},
		{head + "-2 oz gin", []drafttest.Want{{"line 2", "-2", ""}}},
		{head + "−½ oz gin", []drafttest.Want{{"line 2", "-½", ""}}},
		{head + "- -2 oz gin", []drafttest.Want{{"line 2", "-2", ""}}},
		{head + "0 oz gin", []drafttest.Want{{"line 2", "0", ""}}},
		{head + "0/4 oz gin", []drafttest.Want{{"line 2", "0/4", ""}}},
		{head + "3/0 oz gin", []drafttest.Want{{"line 2", "3/0", ""}}},
		{head + "NaN oz gin", []drafttest.Want{{"line 2", "nan", ""}}},
		{head + "+Inf oz gin", []drafttest.Want{{"line 2", "inf", ""}}},
		{head + "1e3 ml gin", []drafttest.Want{{"line 2", "1e3", ""}}},
		{head + "1.2.3 oz gin", []drafttest.Want{{"line 2", "1.2.3", ""}}},
		{head + "1/2/3 oz gin", []drafttest.Want{{"line 2", "1/2/3", ""}}},
		{head + "1,000 ml gin", []drafttest.Want{{"line 2", "1,000", ""}}},
		{head + "2ozz gin", []drafttest.Want{{"line 2", "2ozz", "oz"}}},
		{head + "2% milk", []drafttest.Want{{"line 2", "2% milk", ""}}},
		{head + "2) gin", []drafttest.Want{{"line 2", "gin", ""}}},
		{head + "3-2 oz gin", []drafttest.Want{{"line 2", "3-2", ""}}},
		{head + "2-2 oz gin", []drafttest.Want{{"line 2", "2-2", ""}}},
		{head + "400 oz gin", []drafttest.Want{{"line 2", "400", ""}}},
		{head + "10001 ml gin", []drafttest.Want{{"line 2", "10001", ""}}},
		{head + "101 dashes bitters", []drafttest.Want{{"line 2", "101", ""}}},
		{head + "0.0001 oz gin", []drafttest.Want{{"line 2", "0.0001", ""}}},
		{head + strings.Repeat("9", 150) + " oz gin", []drafttest.Want{{"line 2", strings.Repeat("9", 150), ""}}},
		{head + "2 3 oz gin", []drafttest.Want{{"line 2", "2 3", ""}}},
		{head + "1/2 oz cane syrup -> cut to 1/4!!", []drafttest.Want{{"line 2", "cut to 1/4", ""}}},
		{head + "1 thimble gin", []drafttest.Want{{"line 2", "thimble", "oz"}}},
		{head + "2 oz", []drafttest.Want{{"line 2", "2 oz", ""}}},
		{"2 oz", []drafttest.Want{{"line 1", "2 oz", ""}}},
		{head + "7", []drafttest.Want{{"line 2", "7", ""}}},
		{head + "oz gin", []drafttest.Want{{"line 2", "oz gin", ""}}},
		{head + "top", []drafttest.Want{{"line 2", "top", ""}}},
		{head + "lemon juice\n1 oz gin", []drafttest.Want{{"line 2", "lemon juice", ""}}},
		{head + "1 oz gin\nshake, upp", []drafttest.Want{{"line 3", "upp", ""}}},
		{head + "1 oz gin\nwibble shake wobble", []drafttest.Want{{"line 3", "wibble shake wobble", ""}}},
		{head + "1 oz gin\nshake, stir", []drafttest.Want{{"line 3", "stir", ""}}},
		{head + "1 oz gin\nShake\nStirred", []drafttest.Want{{"line 4", "stirred", ""}}},
		{head + "1 oz gin\nshake up on the rocks", []drafttest.Want{{"line 3", "on the rocks", ""}}},
		{head + "1 oz gin\n$$$", []drafttest.Want{{"line 3", "$$$", ""}}},
		{head + "1 oz g\x00in", []drafttest.Want{{"line 2", "\x00", ""}}},
		{head + "1 oz g\xffin", []drafttest.Want{{"line 2", "\uFFFD", ""}}},
		{head + "0 oz gin\r\n-1 oz rum\r1 oz rye\nwobble", []drafttest.Want{{"line 2", "0", ""}, {"line 3", "-1", ""}, {"line 5", "wobble", ""}}},
	} {
		assert.Empty(t, drafttest.Departs(Parse(c.text).Err(), c.wants), c.text)
	}
}

func TestParseLimits(t *testing.T) {
	ok := strings.Repeat("1 oz gin\n", MaxPours)
	d := Parse(ok)
	require.NoError(t, d.Err())
	assert.Len(t, d.Lines, MaxPours)

	assert.Empty(t, drafttest.Departs(Parse(ok+"1 oz gin\n").Err(), []drafttest.Want{{"line 41", "1 oz gin", ""}}), "too many pours")

	long := "1 oz " + strings.Repeat("é", MaxLine)
	require.NoError(t, Parse(long).Err())
	assert.Empty(t, drafttest.Departs(Parse(long+"é").Err(), []drafttest.Want{{"line 1", strings.Repeat("é", 40), ""}}), "long name")

	var fs flavor.DataFaults
	require.ErrorAs(t, Parse("X\n"+strings.Repeat("#\n", MaxText)).Err(), &fs)
	assert.Len(t, fs, 1)

	require.ErrorAs(t, Parse("X\n"+strings.Repeat("?\n", MaxText/3)).Err(), &fs)
	assert.Len(t, fs, MaxFaults)
}
