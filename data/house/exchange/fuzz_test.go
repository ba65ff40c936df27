package exchange_test

import (
	"io"
	"strings"
	"testing"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor/measure/draft/names/naming"
)

// A reader of one form, with the names that are known.
type reader func(io.Reader, naming.Finder) (*exchange.Reading, error)

// readsSoundly holds a reader to this: whatever is read, nothing panics, and what
// comes out is sound. Each seed is one that some reader takes, so that each reader
// meets what was meant for another too.
func readsSoundly(f *testing.F, read reader) {
	known := shelf(f)
	for _, seed := range []string{stockFile, "", "Halyard Sour\n2 oz gin\nshake, up\n", `{"@type":"Recipe","name":"x","recipeIngredient":["2 oz gin"]}`,
		`{"format":"counterpour-house","version":1,"records":[{"kind":"out","record":{"ingredient":"x"}}]}`,
		"name,amount,unit,ingredient\nx,2,oz,gin\n", "name;ingredient\n\"", "Item\tSize\tCost\nGIN\nx\t70cl\t$1,024.5\nTotal\t\t9\n", "x,24 x 70cl,€1.024,-,½\n", "\x00\xff", "\n\n\n---\n\n2 oz"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := read(strings.NewReader(text), known)
		if err != nil {
			return
		}
		for _, it := range r.Items {
			if err := house.Check(it); err != nil {
				t.Errorf("%v came out of %q", err, text)
			}
		}
	})
}

func FuzzReadText(f *testing.F)    { readsSoundly(f, exchange.ReadText) }
func FuzzReadStock(f *testing.F)   { readsSoundly(f, readStock) }
func FuzzReadSpecs(f *testing.F)   { readsSoundly(f, exchange.ReadSpecs) }
func FuzzReadRecipes(f *testing.F) { readsSoundly(f, exchange.ReadRecipes) }
func FuzzReadJSON(f *testing.F) {
	readsSoundly(f, func(in io.Reader, _ naming.Finder) (*exchange.Reading, error) { return exchange.ReadJSON(in) })
}
