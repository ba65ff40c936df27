package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/riff/wording"
)

// The recipe pairs what came with what went only if it does the same work, and
// what sparkles goes on top.
func TestRecipe(t *testing.T) {
	b := bartest.New(t)
	change := func(name string, unit flavor.Unit, from, to float64) balance.Change {
		return balance.Change{Profile: b.Bottle(t, name), Unit: unit, From: from, FromML: from, To: to, ToML: to}
	}
	for _, c := range []struct {
		changes []balance.Change
		want    []string
	}{
		{[]balance.Change{change("London dry gin", "oz", 2, 0), change("bourbon", "oz", 0, 2)}, []string{"2 oz bourbon for London dry gin"}},
		{[]balance.Change{change("London dry gin", "oz", 2, 1), change("mezcal", "oz", 0, 1)}, []string{"split the base with 1 oz mezcal", "London dry gin to 1 oz"}},
		{[]balance.Change{change("orgeat", "oz", 0.5, 0), change("soda water", "oz", 0, 3)}, []string{"top with 3 oz soda water", "leave out orgeat"}},
		{[]balance.Change{change("London dry gin", "oz", 2, 0), change("aromatic bitters", "dash", 0, 2)}, []string{"add 2 dashes aromatic bitters", "leave out London dry gin"}},
		{[]balance.Change{change("simple syrup", "oz", 0.75, 0), change("triple sec", "oz", 0, 1)}, []string{"1 oz triple sec for simple syrup (1:1)"}},
		{[]balance.Change{change("triple sec", "oz", 1, 0), change("simple syrup", "oz", 0, 0.5)}, []string{"½ oz simple syrup (1:1) for triple sec"}},
		{nil, nil},
	} {
		assert.Equal(t, c.want, wording.Recipe(c.changes))
	}
}
