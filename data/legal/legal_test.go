package legal

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestDefinitionsNameTheirSource(t *testing.T) {
	for key, d := range definitions {
		assert.NotEmpty(t, d.source, key)
		assert.True(t, d.status.Valid(), key)
		assert.NotEmpty(t, d.limits, key)
	}
}

func TestLegalFaultsSayWhatAndHow(t *testing.T) {
	sucrose := flavor.SugarBlend{Name: "sucrose", Sucrose: 1}
	invert := flavor.SugarBlend{Name: "invert", Glucose: 0.5, Fructose: 0.5}
	record := func(legal, name string, abv, sugar float64, blend flavor.SugarBlend, contains ...flavor.Allergen) *flavor.Profile {
		p := &flavor.Profile{ID: "a-bottle", Name: name, Legal: legal, AllergensKnown: true, Sugars: blend,
			ABV: flavor.Figure{Value: abv}, Sugar: flavor.Figure{Value: sugar}}
		for _, a := range contains {
			p.AllergenMarks = append(p.AllergenMarks, flavor.AllergenMark{Allergen: a, Certainty: flavor.Contains})
		}
		return p
	}
	for _, c := range []struct {
		name   string
		record *flavor.Profile
		want   []string // nothing wanted: the record passes
	}{
		{"no claim", record("", "Anything", 3, 3, sucrose), nil},
		{"unknown claim", record("liqeur", "A liqueur", 20, 200, sucrose), []string{"field legal", `"liqeur"`, "use one of", "London gin"}},
		{"liqueur, on the limit as invert sugar", record("liqueur", "A liqueur", 15, 95.1, sucrose), nil},
		{"liqueur, invert sugar below it", record("liqueur", "A liqueur", 15, 95.1, invert), []string{"field sugar", "95.1 g/L", "at least 100", "category 33", "raise it"}},
		{"liqueur, weak", record("liqueur", "A liqueur", 14.9, 200, sucrose), []string{"field abv", "14.9 % vol", "at least 15 % vol", "raise it"}},
		{"whisky, sweetened", record("whisky", "A whisky", 40, 1, sucrose), []string{"field sugar", "at most 0.5", "lower it"}},
		{"London gin, on the limit", record("London gin", "A gin", 37.5, 0.095, sucrose), nil},
		{"London gin, sweet", record("London gin", "A gin", 40, 0.2, sucrose), []string{"field sugar", "at most 0.1"}},
		{"dry gin, sweet", record("gin", "A dry gin", 40, 5, sucrose), []string{"field sugar", `"dry gin"`, "at most 0.1"}},
		{"gin, sweet", record("gin", "An old tom gin", 40, 5, sucrose), nil},
		{"cassis, on the limit", record("creme de cassis", "Cassis", 20, 400, invert), []string{"more than 400"}},
		{"crème with milk", record("creme de", "A crème", 20, 300, sucrose, flavor.Milk), []string{"field allergens", "without milk"}},
		{"cream without milk", record("cream liqueur", "A cream", 17, 200, sucrose), []string{"field allergens", "made with milk"}},
		{"egg liqueur without egg", record("egg liqueur", "An egg liqueur", 17, 200, sucrose), []string{"field allergens", "made with eggs"}},
		{"vermouth, strong", record("vermouth", "A vermouth", 22, 150, invert), []string{"field abv", "less than 22 % vol", "lower it"}},
		{"dry vermouth, sweet", record("vermouth", "A dry vermouth", 18, 50, invert), []string{"field sugar", "less than 50", "Article 6(1)"}},
		{"extra-dry vermouth", record("vermouth", "An extra-dry vermouth", 18, 30, invert), []string{"less than 30"}},
		{"semi-dry vermouth", record("vermouth", "A semi-dry vermouth", 17, 70, invert), nil},
		{"semi-sweet vermouth", record("vermouth", "A semi-sweet vermouth", 17, 89, invert), []string{"at least 90"}},
		{"sweet vermouth, sucrose counts for more", record("vermouth", "A sweet vermouth", 16, 124, sucrose), nil},
		{"sweet vermouth, short of sugar", record("vermouth", "A sweet vermouth", 16, 124, invert), []string{"field sugar", "at least 130", "raise it"}},
		{"dry vermouth, short of total strength", record("vermouth", "A dry vermouth", 15, 5, invert), []string{"field abv", "total strength", "at least 16"}},
		{"a trade word is no legal word", record("vermouth", "A half-dry vermouth", 17, 70, invert), nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			err := Check(c.record)
			if c.want == nil {
				require.NoError(t, err)
				return
			}
			require.Error(t, err)
			for _, part := range c.want {
				assert.Contains(t, err.Error(), part)
			}
		})
	}
}
