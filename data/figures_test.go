package data

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/tables"
	"counterpour/flavor"
)

var updateFigures = flag.Bool("update-figures", false, "write the figures that the tables give into the catalogue")

// Every figure that a published table gives stands in the catalogue as the
// table gives it, with its spread, origin and source, unless figures.toml says
// why the record departs from it.
func TestFiguresAreThoseOfTheTables(t *testing.T) {
	book, err := tables.Load()
	require.NoError(t, err)
	c := loadCatalogue(t)
	taken := 0
	for _, id := range book.IDs() {
		p, ok := c.ByID(id)
		require.True(t, ok, "figures.toml: %s is not in the catalogue", id)
		list := book.Figures(p)
		assert.NotEmpty(t, list, "%s: its rows give nothing", id)
		for _, want := range list {
			got := figureOf(p, want.Field)
			if want.Reason != "" {
				assert.NotEqual(t, want.Figure.Source, got.Source, "%s: %s is the table's; drop keep", id, want.Field)
				continue
			}
			taken++
			if *updateFigures {
				writeFigure(t, id, want.Field, want.Figure)
				continue
			}
			assert.Equal(t, want.Figure, got, "%s: %s: run this test with -update-figures, or say in figures.toml why it is kept", id, want.Field)
		}
	}
	t.Logf("%d figures of %d ingredients are taken from %d rows", taken, len(book.IDs()), len(book.Rows()))
}

// fieldOrder is the order of the lines of a record.
var fieldOrder = []string{"abv", "sugar", "sugars", "acid", "acids", "bitter", "texture", "fat", "salt", "sweeteners", "caffeine", "tannin"}

// writeFigure puts a figure into the record of an ingredient, in place of the
// line that is there or after the one that comes before it.
func writeFigure(t *testing.T, id, field string, f flavor.Figure) {
	paths, err := filepath.Glob("catalogue/*.toml")
	require.NoError(t, err)
	line := fmt.Sprintf("%s = %q", field, fmt.Sprintf("%v ± %v | %s | %s", f.Value, f.Spread, f.Origin, f.Source))
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		lines := strings.Split(string(text), "\n")
		at := slices.Index(lines, fmt.Sprintf("id = %q", id))
		if at < 0 {
			continue
		}
		after := at
		for i := at; i < len(lines) && lines[i] != "[[ingredient]]"; i++ {
			key, _, _ := strings.Cut(lines[i], " = ")
			if key == field {
				lines[i] = line
				require.NoError(t, os.WriteFile(path, []byte(strings.Join(lines, "\n")), 0o644))
				return
			}
			if k := slices.Index(fieldOrder, key); k >= 0 && k < slices.Index(fieldOrder, field) {
				after = i
			}
		}
		lines = slices.Insert(lines, after+1, line)
		require.NoError(t, os.WriteFile(path, []byte(strings.Join(lines, "\n")), 0o644))
		return
	}
	t.Fatalf("%s is in no file", id)
}

// No figure lies beyond two of its own spreads of a table without a reason
// written beside it, and a slip of the pen does not pass for one.
func TestFiguresLieWithinTwoSpreads(t *testing.T) {
	c := loadCatalogue(t)
	classes, err := c.AgainstTables()
	require.NoError(t, err)
	given := 0
	for _, k := range classes {
		given += k.Given
		for _, d := range k.Beyond {
			assert.NotEmpty(t, d.Reason, "%s: %s %v ± %v, table %v: %.1f spreads away; take it, or say in tables/figures.toml why not",
				d.Ingredient, d.Field, d.Have.Value, d.Have.Spread, d.Table.Value, d.Spreads())
		}
	}
	assert.Greater(t, given, 2000)

	p, ok := c.ByID("lemon-juice")
	require.True(t, ok)
	slipped := *p
	slipped.Acid.Value, slipped.Acid.Spread = 5, 1
	other := &Catalogue{profiles: []*flavor.Profile{&slipped}}
	classes, err = other.AgainstTables()
	require.NoError(t, err)
	require.Len(t, classes, 1)
	require.Len(t, classes[0].Beyond, 1)
	assert.Equal(t, "acid", classes[0].Beyond[0].Field)
	assert.Greater(t, classes[0].Beyond[0].Spreads(), 40.0)
}

// Nothing is copied that is not used, and no row is named that is not there.
func TestEveryRowIsUsed(t *testing.T) {
	book, err := tables.Load()
	require.NoError(t, err)
	used := book.Rows()
	assert.Equal(t, used, book.Copied())
}

// A figure that says it comes from a table is held to one, or names a
// publication that is transcribed here.
func TestPublishedFiguresArePublished(t *testing.T) {
	published := map[string]float64{
		"CRC Handbook of Chemistry and Physics, aqueous sucrose at 20 °C: 50 % by mass, 614.8 g/L": 614.8,
		"CRC Handbook of Chemistry and Physics, aqueous sucrose at 20 °C: 30 % by mass, 338.1 g/L": 338.1,
	}
	book, err := tables.Load()
	require.NoError(t, err)
	for _, p := range loadCatalogue(t).Profiles() {
		var given []flavor.Figure
		for _, x := range book.Figures(p) {
			given = append(given, x.Figure)
		}
		for _, f := range figuresOf(p) {
			if f.Origin != flavor.OriginPublished {
				continue
			}
			want, known := published[f.Source]
			assert.True(t, known && f.Value == want || slices.Contains(given, f.Figure),
				"%s: %s %v from %q: name the row in tables/figures.toml, transcribe the publication here, or call the figure computed", p.ID, f.field, f.Value, f.Source)
		}
	}
}

var recalled = regexp.MustCompile(`\bfrom memory\b`)

// Who computes from a remembered figure says so in the origin.
func TestComputedFiguresSayWhatTheyRestOn(t *testing.T) {
	for _, p := range loadCatalogue(t).Profiles() {
		for _, f := range figuresOf(p) {
			switch f.Origin {
			case flavor.OriginComputed:
				assert.False(t, recalled.MatchString(f.Source), "%s: %s: %s", p.ID, f.field, f.Source)
			case flavor.OriginMemory:
				assert.False(t, f.Value <= f.Spread && f.field != "smells_of", "%s: %s %v ± %v is next to nothing: call it common practice", p.ID, f.field, f.Value, f.Spread)
			}
		}
	}
}
