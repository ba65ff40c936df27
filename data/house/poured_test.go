package house_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// What is poured of an ingredient changes only if somebody says so.
func TestWhatIsNewTakesNoPour(t *testing.T) {
	out := time.Date(2026, 5, 1, 22, 0, 0, 0, time.UTC)
	bottle := func(id string, stock float64, well bool) house.Bottle {
		return house.Bottle{ID: id, Name: id, Ingredient: "vodka", SizeML: 700, Stock: stock, Well: well}
	}
	other, gone := bottle("a", 1, false), bottle("b", 1, false)
	other.Ingredient, gone.OutSince = "apple-brandy", &out
	for name, c := range map[string]struct {
		there  []house.Bottle
		edits  []house.Bottle
		poured string
		marked bool // the bottle that was poured has to be marked for that
	}{
		"first of its kind":        {nil, []house.Bottle{bottle("a", 1, false)}, "a", false},
		"later by name":            {[]house.Bottle{bottle("b", 1, false)}, []house.Bottle{bottle("c", 1, false)}, "b", false},
		"earlier by name":          {[]house.Bottle{bottle("b", 1, false)}, []house.Bottle{bottle("a", 1, false)}, "b", true},
		"marked to be poured":      {[]house.Bottle{bottle("b", 1, false)}, []house.Bottle{bottle("a", 1, true)}, "a", false},
		"beside one that is empty": {[]house.Bottle{bottle("b", 0, false)}, []house.Bottle{bottle("a", 1, false)}, "a", false},
		"beside one that ran out":  {[]house.Bottle{gone}, []house.Bottle{bottle("a", 1, false)}, "a", false},
		"of another kind before":   {[]house.Bottle{other, bottle("b", 1, false)}, []house.Bottle{bottle("a", 1, false)}, "b", true},
		"filled up":                {[]house.Bottle{bottle("a", 0, false), bottle("b", 1, false)}, []house.Bottle{bottle("a", 2, false)}, "b", true},
		"both written":             {[]house.Bottle{bottle("b", 1, false)}, []house.Bottle{bottle("a", 1, false), bottle("b", 3, false)}, "b", true},
		"the mark taken off":       {[]house.Bottle{bottle("a", 1, false), bottle("b", 1, true)}, []house.Bottle{bottle("b", 1, false)}, "a", false},
	} {
		t.Run(name, func(t *testing.T) {
			var there []house.Kept[house.Bottle]
			after := map[string]house.Bottle{}
			for i, b := range c.there {
				there = append(there, house.Kept[house.Bottle]{Item: b, Version: int64(i + 1)})
				after[b.ID] = b
			}
			var edits []house.Edit
			for _, b := range c.edits {
				edits = append(edits, house.Put(b, 0))
			}
			for _, e := range house.KeepPoured(there, edits) {
				b, is := e.Item().(house.Bottle)
				require.True(t, is)
				after[b.ID] = b
			}
			var list []house.Bottle
			for _, b := range after {
				list = append(list, b)
			}
			got := house.Wells(list)["vodka"]
			assert.Equal(t, c.poured, got.ID)
			assert.Equal(t, c.marked, got.Well && c.poured == "b")
		})
	}
}

// A strength far from that of the kind is told of, and one of another bottle of it is not.
func TestAStrengthContradictsItsKind(t *testing.T) {
	c := catalogue(t)
	for _, x := range []struct {
		kind string
		abv  float64
		goes bool
	}{
		{"orange-juice", 20, false}, {"orange-juice", 0, true}, {"orange-juice", 0.5, true},
		{"london-dry-gin", 0, false}, {"london-dry-gin", 5, false}, {"london-dry-gin", 37.5, true}, {"london-dry-gin", 57, true},
		{"sweet-vermouth", 14.5, true}, {"sweet-vermouth", 0, false}, {"alcohol-free-gin", 0.5, true}, {"alcohol-free-gin", 40, false},
		{"triple-sec", 15, true}, {"triple-sec", 40, true}, {"lager", 4.4, true}, {"tonic", 40, false},
	} {
		p, _, err := house.NewShelf(c.Profiles()).Resolve(x.kind)
		if err != nil {
			t.Fatalf("%s: %v", x.kind, err)
		}
		err = house.Measured{ABVPct: &x.abv}.Contradicts(p)
		assert.Equal(t, x.goes, err == nil, "%s at %v %% vol: %v", x.kind, x.abv, err)
	}
	p, _ := c.ByID("orange-juice")
	assert.NoError(t, house.Measured{}.Contradicts(p), "nothing was read")
}
