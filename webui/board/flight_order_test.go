package board

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/mix"
)

// The light stands before the strong, then the less bitter, then the drier; what no guest
// can tell apart is in the order of names.
func TestOrderOfAFlight(t *testing.T) {
	glass := func(name string, abv, bitter, sugar float64) flightGlass {
		return flightGlass{tonightDrink: tonightDrink{Slug: name, Name: name}, drink: &mix.Drink{ABV: abv, Bitter: bitter, SugarPer100: sugar}}
	}
	list := []flightGlass{glass("strong", 30, 0, 5), glass("sweet", 15.2, 1, 12), glass("b", 15, 1, 6), glass("a", 14.8, 1.2, 6.3), glass("bitter", 15, 40, 6), glass("light", 7, 60, 20)}
	slices.SortStableFunc(list, lighterFirst)
	var names []string
	for _, g := range list {
		names = append(names, g.Name)
	}
	assert.Equal(t, []string{"light", "a", "b", "sweet", "bitter", "strong"}, names)
}
