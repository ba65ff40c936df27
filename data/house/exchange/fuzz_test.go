package exchange_test

import (
	"strings"
	"testing"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
)

// Whatever is read, nothing panics, and what comes out is sound.
func FuzzReading(f *testing.F) {
	known := shelf(f)
	for _, seed := range []string{stockFile, "", "Halyard Sour\n2 oz gin\nshake, up\n", `{"@type":"Recipe","name":"x","recipeIngredient":["2 oz gin"]}`,
		`{"format":"counterpour-house","version":1,"records":[{"kind":"out","record":{"ingredient":"x"}}]}`,
		"name,amount,unit,ingredient\nx,2,oz,gin\n", "name;ingredient\n\"", "Item\tSize\tCost\nGIN\nx\t70cl\t$1,024.5\nTotal\t\t9\n", "x,24 x 70cl,€1.024,-,½\n", "\x00\xff", "\n\n\n---\n\n2 oz"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, read := range []func() (*exchange.Reading, error){
			func() (*exchange.Reading, error) { return exchange.ReadText(strings.NewReader(text), known) },
			func() (*exchange.Reading, error) { return exchange.ReadStock(strings.NewReader(text), known) },
			func() (*exchange.Reading, error) { return exchange.ReadSpecs(strings.NewReader(text), known) },
			func() (*exchange.Reading, error) { return exchange.ReadRecipes(strings.NewReader(text), known) },
			func() (*exchange.Reading, error) { return exchange.ReadJSON(strings.NewReader(text)) },
		} {
			r, err := read()
			if err != nil {
				continue
			}
			for _, it := range r.Items {
				if err := house.Check(it); err != nil {
					t.Errorf("%v came out of %q", err, text)
				}
			}
		}
	})
}
