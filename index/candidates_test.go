package index

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

func TestCandidates(t *testing.T) {
	x := build(t, shelf())
	stock := []string{"vodka", "rye-whiskey", "amaretto", "egg-white", "ginger-beer"}
	tests := []struct {
		about   string
		need    lookup.Need
		want    []string
		refused lookup.Refused
	}{
		{"stock alone", lookup.Need{Stock: stock}, []string{"amaretto", "egg-white", "ginger-beer", "rye-whiskey", "vodka"}, lookup.Refused{ByAllergen: 0, NotInStock: 16}},
		{"nothing in stock", lookup.Need{Stock: []string{}}, []string{}, lookup.Refused{ByAllergen: 0, NotInStock: 21}},
		{"a possible allergen and an unknown one are refused",
			lookup.Need{Stock: stock, Avoid: []flavor.Allergen{flavor.TreeNuts}}, []string{"egg-white", "ginger-beer", "vodka"}, lookup.Refused{ByAllergen: 2, NotInStock: 16}},
		{"several allergens", lookup.Need{Stock: stock, Avoid: []flavor.Allergen{flavor.TreeNuts, flavor.Eggs, flavor.Fish}},
			[]string{"ginger-beer", "vodka"}, lookup.Refused{ByAllergen: 3, NotInStock: 16}},
		{"what is excluded is not counted", lookup.Need{Stock: stock, Exclude: []string{"vodka", "peach-liqueur"}},
			[]string{"amaretto", "egg-white", "ginger-beer", "rye-whiskey"}, lookup.Refused{ByAllergen: 0, NotInStock: 15}},
		{"no alcohol, traces aside", lookup.Need{Stock: stock, NoAlcohol: true}, []string{"egg-white", "ginger-beer"}, lookup.Refused{ByAllergen: 0, NotInStock: 5}},
		{"nothing from animals", lookup.Need{NoAlcohol: true, NoAnimal: []string{"Eggs", "honey", "insect"}},
			[]string{"ginger-beer", "lemon-juice", "oat-milk", "rich-syrup-2-1", "simple-syrup"}, lookup.Refused{}},
		{"the same id twice", lookup.Need{Stock: []string{"vodka", "vodka"}}, []string{"vodka"}, lookup.Refused{ByAllergen: 0, NotInStock: 20}},
	}
	for _, tt := range tests {
		t.Run(tt.about, func(t *testing.T) {
			got, refused, err := x.Candidates(context.Background(), tt.need)
			require.NoError(t, err)
			require.Equal(t, tt.want, idsOf(got))
			require.Equal(t, tt.refused, refused)
		})
	}
	everything, refused, err := x.Candidates(context.Background(), lookup.Need{})
	require.NoError(t, err)
	require.Len(t, everything, x.Len())
	require.Zero(t, refused)
}

func TestCandidatesFaults(t *testing.T) {
	x := build(t, shelf())
	for location, n := range map[string]lookup.Need{
		"avoid[0]":     {Avoid: []flavor.Allergen{"pollen"}},
		"stock[1]":     {Stock: []string{"vodka", "vodak"}},
		"exclude[0]":   {Exclude: []string{""}},
		"no_animal[1]": {NoAnimal: []string{"egg", "dairy"}},
	} {
		_, _, err := x.Candidates(context.Background(), n)
		require.Equal(t, location, fault(t, err).Location)
	}
}

// The index is only the first of two guards: one that misses a document must
// not let it through.
func TestCandidatesCheckTheProfile(t *testing.T) {
	p := known("late", "Late change", flavor.ClassGin)
	x := build(t, []*flavor.Profile{p})
	p.AllergenMarks = []flavor.AllergenMark{{Allergen: flavor.Milk, Certainty: flavor.MayContain}}
	got, refused, err := x.Candidates(context.Background(), lookup.Need{Avoid: []flavor.Allergen{flavor.Milk}})
	require.NoError(t, err)
	require.Empty(t, got)
	require.Equal(t, lookup.Refused{ByAllergen: 1}, refused)
}

// anyProfiles draws profiles of which some carry allergens, surely, possibly
// or for all anyone knows.
func anyProfiles(t *rapid.T) []*flavor.Profile {
	out := make([]*flavor.Profile, rapid.IntRange(1, 30).Draw(t, "n"))
	for i := range out {
		p := known(fmt.Sprintf("p-%02d", i), fmt.Sprintf("Thing %d", i), rapid.SampledFrom(flavor.Classes()).Draw(t, "class"))
		p.AllergensKnown = rapid.Bool().Draw(t, "known")
		p.ABV.Value = rapid.SampledFrom([]float64{0, 0.5, 0.6, 40}).Draw(t, "abv")
		for _, a := range rapid.SliceOfDistinct(rapid.SampledFrom(flavor.Allergens()), rapid.ID).Draw(t, "marks") {
			p.AllergenMarks = append(p.AllergenMarks, flavor.AllergenMark{Allergen: a, Certainty: flavor.Contains})
		}
		out[i] = p
	}
	return out
}

func TestCandidatesNeverCarryWhatIsAvoided(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		profiles := anyProfiles(t)
		x, err := Build(context.Background(), profiles, nil)
		require.NoError(t, err)
		defer x.Close()
		n := lookup.Need{Avoid: rapid.SliceOfDistinct(rapid.SampledFrom(flavor.Allergens()), rapid.ID).Draw(t, "avoid"), NoAlcohol: rapid.Bool().Draw(t, "noalcohol")}
		if rapid.Bool().Draw(t, "stocked") {
			n.Stock = rapid.SliceOf(rapid.SampledFrom(idsOf(profiles))).Draw(t, "stock")
		}
		got, refused, err := x.Candidates(context.Background(), n)
		require.NoError(t, err)

		var want []string
		var wantRefused lookup.Refused
		for _, p := range profiles {
			switch {
			case n.NoAlcohol && p.ABV.Value > maxAlcoholFree:
			case n.Stock != nil && !slices.Contains(n.Stock, p.ID):
				wantRefused.NotInStock++
			case !p.Avoids(n.Avoid):
				wantRefused.ByAllergen++
			default:
				want = append(want, p.ID)
			}
		}
		require.Equal(t, append([]string{}, want...), idsOf(got))
		require.Equal(t, wantRefused, refused)

		r, err := x.Search(context.Background(), lookup.Query{Avoid: n.Avoid, Text: "thing", Limit: lookup.MaxLimit})
		require.NoError(t, err)
		for _, h := range r.Hits {
			require.True(t, h.Profile.Avoids(n.Avoid), h.Profile.ID)
		}
	})
}
