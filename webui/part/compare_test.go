package part

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
)

func pour(id string, amount float64, unit flavor.Unit, ml float64) flavor.Pour {
	return flavor.Pour{Profile: &flavor.Profile{ID: id, Name: id}, Amount: amount, Unit: unit, ML: ml}
}

func TestCompare(t *testing.T) {
	was := []flavor.Pour{pour("gin", 2, flavor.Ounce, 59.1), pour("gin", 1, flavor.Ounce, 29.6), pour("lemon", 0.75, flavor.Ounce, 22.2), pour("salt", 1, flavor.Piece, 0)}
	is := []flavor.Pour{pour("lemon", 0.75, flavor.Ounce, 22.2), pour("gin", 59.1, flavor.Millilitre, 59.1), pour("syrup", 15, flavor.Millilitre, 15), pour("gin", 1.5, flavor.Ounce, 44.4)}
	type row struct {
		name, before, after string
		at                  int
		moved               bool
	}
	var got []row
	for _, p := range Compare(was, is) {
		got = append(got, row{p.Name(), p.Before(), p.After(), p.At, p.Moved()})
	}
	assert.Equal(t, []row{
		{"lemon", "¾ oz", "¾ oz", 2, false},
		{"gin", "2 oz", "59.1 mL", 0, false},
		{"syrup", "", "15 mL", 0, false},
		{"gin", "1 oz", "1½ oz", 1, true},
		{"salt", "1", "", 3, false},
	}, got)
}

// A covered drink says of each pour what is not as it is written.
func TestWhatACoverChangesOfAPour(t *testing.T) {
	from := flavor.Spec{Pours: []flavor.Pour{pour("gin", 2, flavor.Ounce, 59.1), pour("lemon", 0.75, flavor.Ounce, 22.2), pour("falernum", 0.5, flavor.Ounce, 14.8)}}
	to := flavor.Spec{Pours: []flavor.Pour{pour("gin", 2, flavor.Ounce, 59.1), pour("lemon", 1, flavor.Ounce, 29.6), pour("orgeat", 0.5, flavor.Ounce, 14.8)}}
	var got []string
	for _, p := range coverPours(&from, &cover.Cover{Spec: to}) {
		got = append(got, p.ID+": "+p.Amount+" "+p.Name+", "+p.Note())
	}
	assert.Equal(t, []string{"gin: 2 oz gin, ", "lemon: 1 oz lemon, was ¾ oz", "orgeat: ½ oz orgeat, instead"}, got)
}

// Every pour of both stands in one pair.
func TestCompareLeavesNothingOut(t *testing.T) {
	one := rapid.Custom(func(t *rapid.T) flavor.Pour {
		return pour(rapid.SampledFrom([]string{"gin", "lemon", "syrup", "bitters"}).Draw(t, "id"), rapid.Float64Range(0.25, 3).Draw(t, "amount"), flavor.Ounce, 1)
	})
	rapid.Check(t, func(t *rapid.T) {
		was, is := rapid.SliceOfN(one, 0, 6).Draw(t, "was"), rapid.SliceOfN(one, 0, 6).Draw(t, "is")
		var before, after int
		for _, p := range Compare(was, is) {
			if p.Was != nil {
				assert.Same(t, &was[p.At], p.Was)
				before++
			}
			if p.Is != nil {
				assert.Same(t, &is[after], p.Is, "in the order of the second")
				after++
			}
			if p.Was != nil && p.Is != nil {
				assert.Equal(t, p.Was.Profile.ID, p.Is.Profile.ID)
			}
		}
		assert.Equal(t, [2]int{len(was), len(is)}, [2]int{before, after})
		for _, p := range Compare(was, was) {
			assert.False(t, p.Moved())
		}
	})
}

func TestSpecChanges(t *testing.T) {
	shelf := house.NewShelf([]*flavor.Profile{{ID: "gin", Name: "London dry gin"}, {ID: "lemon", Name: "lemon juice"}})
	from := house.Spec{ID: "a", Name: "Sour", Method: flavor.Shake, Service: flavor.Up,
		Pours: []house.Pour{{Ingredient: "gin", Amount: 2, Unit: flavor.Ounce}, {Ingredient: "lemon", Amount: 1, Unit: flavor.Ounce}, {Ingredient: "gone", Amount: 1, Unit: flavor.Dash}}}
	to := house.Spec{ID: "b", Name: "Sour", Method: flavor.Stir, Service: flavor.Up, Note: "cold",
		Pours: []house.Pour{{Ingredient: "lemon", Amount: 0.75, Unit: flavor.Ounce}, {Ingredient: "gin", Amount: 2, Unit: flavor.Ounce}}}
	assert.Equal(t, []string{"lemon juice from 1 oz to ¾ oz", "1 dash gone taken out", "the order of the pours", "from shake to stir", "a note added"}, SpecChanges(&from, &to, shelf))
	to = from
	to.ID = "b"
	assert.Empty(t, SpecChanges(&from, &to, shelf), "an id is no change")
}

// A bottle that nobody has described stands in the way of whoever avoids what it
// may carry, and of nobody else.
func TestClashes(t *testing.T) {
	stated := &flavor.Profile{ID: "orgeat", Name: "orgeat", AllergensKnown: true, AllergenMarks: []flavor.AllergenMark{{Allergen: flavor.TreeNuts, Certainty: flavor.Contains}, {Allergen: flavor.Soybeans, Certainty: flavor.MayContain}}}
	partly := &flavor.Profile{ID: "liqueur", Name: "liqueur", FreeOf: []flavor.Allergen{flavor.Milk}}
	s := &flavor.Spec{Pours: []flavor.Pour{{Profile: stated}, {Profile: partly}}}
	for _, c := range []struct {
		avoid []flavor.Allergen
		want  []string
	}{
		{nil, nil},
		{[]flavor.Allergen{flavor.Milk}, nil},
		{[]flavor.Allergen{flavor.Eggs}, []string{"may carry eggs, not on record (liqueur)"}},
		{[]flavor.Allergen{flavor.TreeNuts, flavor.Soybeans}, []string{"contains tree nuts (orgeat)", "may contain soybeans (orgeat)", "may carry tree nuts or soybeans, not on record (liqueur)"}},
	} {
		v := AllergensOf(s, c.avoid)
		assert.Equal(t, c.want, v.Clashes(), "%v", c.avoid)
		assert.Equal(t, len(c.want) == 0, s.Clear(c.avoid) == flavor.Free, "%v", c.avoid)
		require.Len(t, v.Unstated, 1)
		assert.Equal(t, "any allergen but milk (liqueur)", v.Unstated[0].Line())
	}
}
