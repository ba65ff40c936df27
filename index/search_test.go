package index

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

func ptr[T any](v T) *T { return &v }

func TestSearch(t *testing.T) {
	x := build(t, shelf())
	tests := []struct {
		about string
		query lookup.Query
		want  []string // in order
	}{
		{"the alias as written comes before names that hold the word",
			lookup.Query{Text: "gin"}, []string{"london-dry-gin", "sloe-gin", "ginger-beer"}},
		{"the own name as written comes first", lookup.Query{Text: "vodka"}, []string{"vodka"}},
		{"an id is a name", lookup.Query{Text: "creme-de-cassis"}, []string{"creme-de-cassis"}},
		{"accents and case don't matter", lookup.Query{Text: "CREME DE CASSÍS"}, []string{"creme-de-cassis"}},
		{"letters that only look accented", lookup.Query{Text: "raki"}, []string{"raki"}},
		{"as you type: the beginning of a word", lookup.Query{Text: "cass"}, []string{"creme-de-cassis"}},
		{"as you type: beginnings of several words", lookup.Query{Text: "lon dr"}, []string{"london-dry-gin"}},
		{"as you type: one letter", lookup.Query{Text: "v"}, []string{"vodka"}},
		{"singular for plural", lookup.Query{Text: "aromatic bitter"}, []string{"aromatic-bitters"}},
		{"American for British spelling", lookup.Query{Text: "scotch whiskey"}, []string{"peated-scotch"}},
		{"a letter dropped", lookup.Query{Text: "amareto"}, []string{"amaretto"}},
		{"letters swapped", lookup.Query{Text: "vokda"}, []string{"vodka"}},
		{"a slip in the first letter", lookup.Query{Text: "bodka"}, []string{"vodka"}},
		{"a slip in a word that is not finished", lookup.Query{Text: "aromtic bi"}, []string{"aromatic-bitters"}},
		{"two slips in a long word", lookup.Query{Text: "blackurant liquer"}, []string{"creme-de-cassis"}},
		{"a space left out", lookup.Query{Text: "gingerbeer"}, []string{"ginger-beer"}},
		{"a word of the class", lookup.Query{Text: "sour juice"}, []string{"lemon-juice"}},
		{"an aroma family", lookup.Query{Text: "smoke"}, []string{"peated-scotch"}},
		{"a material", lookup.Query{Text: "heather"}, []string{"honey-syrup"}},
		{"how it is made", lookup.Query{Text: "warm honey"}, []string{"honey-syrup"}},
		{"a word too many is forgiven when nothing has them all",
			lookup.Query{Text: "organic amaretto"}, []string{"amaretto"}},
		{"nothing is like it", lookup.Query{Text: "xyzzyqq"}, nil},
		{"punctuation alone names nothing", lookup.Query{Text: "?!*"}, nil},
		{"query syntax is text", lookup.Query{Text: `+name:"vodka"~2 -gin^3 (/[a/`}, nil},
		{"a class", lookup.Query{Class: flavor.ClassLiqueur}, []string{"amaretto", "creme-de-cassis", "peach-liqueur", "sloe-gin"}},
		{"words in a class", lookup.Query{Text: "gin", Class: flavor.ClassLiqueur}, []string{"sloe-gin"}},
		{"words that nothing in the class has", lookup.Query{Text: "xyzzyqq", Class: flavor.ClassLiqueur}, nil},
		{"a family, faint citrus left out", lookup.Query{Family: ptr(flavor.Citrus)}, []string{"lemon-juice"}},
		{"a family that leads, however faint", lookup.Query{Family: ptr(flavor.Grain)}, []string{"vodka"}},
		{"at least so bitter, the bound included", lookup.Query{BitterMin: ptr(500.0)}, []string{"aromatic-bitters", "cardamom-bitters"}},
		{"at most so strong, the bound included", lookup.Query{ABVMax: ptr(23.0), BitterMin: ptr(1.0)}, []string{"light-amaro"}},
		{"possible allergens count, unknown ones too", lookup.Query{Class: flavor.ClassLiqueur, Avoid: []flavor.Allergen{flavor.TreeNuts}},
			[]string{"creme-de-cassis", "peach-liqueur", "sloe-gin"}},
		{"unknown allergens are all of them", lookup.Query{Class: flavor.ClassWhiskey, Avoid: []flavor.Allergen{flavor.Lupin}},
			[]string{"peated-scotch"}},
		{"an allergen that nothing states", lookup.Query{Text: "vodka", Avoid: []flavor.Allergen{flavor.Molluscs}}, []string{"vodka"}},
		{"the nearest of a class", lookup.Query{Like: "sloe-gin", Measure: byNumbers, Class: flavor.ClassLiqueur},
			[]string{"creme-de-cassis", "amaretto", "peach-liqueur"}},
		{"words and likeness together", lookup.Query{Like: "london-dry-gin", Measure: byNumbers, Text: "gin"}, []string{"sloe-gin", "ginger-beer"}},
	}
	for _, tt := range tests {
		t.Run(tt.about, func(t *testing.T) {
			r, err := x.Search(context.Background(), tt.query)
			require.NoError(t, err)
			if tt.about == "query syntax is text" {
				return // what it finds is of no matter
			}
			require.Equal(t, append([]string{}, tt.want...), ids(r.Hits))
			require.Equal(t, len(tt.want), r.Total)
		})
	}
}

func TestSearchEverything(t *testing.T) {
	x := build(t, shelf())
	for _, text := range []string{"", "  \t\n"} {
		r, err := x.Search(context.Background(), lookup.Query{Text: text, Limit: lookup.MaxLimit})
		require.NoError(t, err)
		require.Equal(t, len(shelf()), r.Total)
		require.Len(t, r.Hits, r.Total)
		require.True(t, slices.IsSorted(ids(r.Hits)))
		require.Equal(t, []lookup.Facet{{Name: "liqueur", Count: 4}, {Name: "syrup", Count: 3}, {Name: "cocktail bitters", Count: 2}, {Name: "whiskey", Count: 2}, {Name: "amaro", Count: 1}}, r.Classes[:5])
	}
	r, err := x.Search(context.Background(), lookup.Query{})
	require.NoError(t, err)
	require.Len(t, r.Hits, lookup.DefaultLimit)
	require.Equal(t, len(shelf()), r.Total)
}

func TestSearchScores(t *testing.T) {
	x := build(t, shelf())
	for _, q := range []lookup.Query{{Text: "gin"}, {Text: "g"}, {Text: "amareto"}, {Text: "bitter"}, {Like: "vodka", Measure: byNumbers, Limit: lookup.MaxLimit}, {}} {
		r, err := x.Search(context.Background(), q)
		require.NoError(t, err)
		for i, h := range r.Hits {
			require.Positive(t, h.Score)
			require.LessOrEqual(t, h.Score, 1.0)
			if i > 0 {
				before := r.Hits[i-1]
				require.True(t, before.Score > h.Score || before.Score == h.Score && before.Profile.ID < h.Profile.ID, "%v: %v", q, ids(r.Hits))
			}
		}
	}
}

func TestSearchLike(t *testing.T) {
	x := build(t, shelf())
	r, err := x.Search(context.Background(), lookup.Query{Like: "aromatic-bitters", Measure: byNumbers, Limit: 3})
	require.NoError(t, err)
	require.Equal(t, "cardamom-bitters", r.Hits[0].Profile.ID)
	require.Equal(t, len(shelf())-1, r.Total, "it is not like itself")
	require.Len(t, r.Hits, 3)

	twin := known("vodka-two", "Vodka two", flavor.ClassVodka)
	twin.ABV.Value, twin.Aroma[flavor.Grain] = 40, 0.3
	y := build(t, append(shelf(), twin))
	r, err = y.Search(context.Background(), lookup.Query{Like: "vodka", Measure: byNumbers})
	require.NoError(t, err)
	require.Equal(t, lookup.Hit{Profile: twin, Score: 1}, r.Hits[0], "the same profile is at no distance")
}

func TestSearchFaults(t *testing.T) {
	x := build(t, shelf())
	tests := []struct {
		query    lookup.Query
		location string
		value    string
		kind     error
	}{
		{lookup.Query{Limit: -1}, "limit", "-1", flavor.ErrInvalid},
		{lookup.Query{Limit: lookup.MaxLimit + 1}, "limit", "101", flavor.ErrInvalid},
		{lookup.Query{Class: "gni"}, "class", "gni", flavor.ErrInvalid},
		{lookup.Query{Family: ptr(flavor.AromaFamily(-1))}, "family", "family(-1)", flavor.ErrInvalid},
		{lookup.Query{Family: ptr(flavor.AromaFamily(99))}, "family", "family(99)", flavor.ErrInvalid},
		{lookup.Query{BitterMin: ptr(-1.0)}, "bitter_min", "-1", flavor.ErrInvalid},
		{lookup.Query{BitterMin: ptr(math.NaN())}, "bitter_min", "NaN", flavor.ErrInvalid},
		{lookup.Query{ABVMax: ptr(math.Inf(1))}, "abv_max", "+Inf", flavor.ErrInvalid},
		{lookup.Query{Avoid: []flavor.Allergen{flavor.Milk, "nuts"}}, "avoid[1]", "nuts", flavor.ErrInvalid},
		{lookup.Query{Like: "vodak", Measure: byNumbers}, "like", "vodak", flavor.ErrUnknown},
	}
	for _, tt := range tests {
		_, err := x.Search(context.Background(), tt.query)
		f := fault(t, err)
		require.ErrorIs(t, err, tt.kind)
		require.Equal(t, tt.location, f.Location)
		require.Equal(t, tt.value, f.Value)
	}
	_, err := x.Search(context.Background(), lookup.Query{Like: "vodak", Measure: byNumbers})
	require.Equal(t, []string{"Vodka"}, fault(t, err).Suggest)
}

func TestSearchSurvives(t *testing.T) {
	x := build(t, shelf())
	for _, text := range []string{strings.Repeat("gin ", 1<<18), strings.Repeat("x", 1<<20), "\x00\x01\xff\xfe", "*", "~", "a~9999",
		`"`, `\`, "name:gin", "+-/[](){}^:", "gin\u202e", strings.Repeat("\u0301", 5000), "🍸🍸", "一二三", strings.Repeat("ﷺ", 300)} {
		for _, q := range []lookup.Query{{Text: text}, {Text: text, Class: flavor.ClassGin}, {Text: text, Like: "vodka", Measure: byNumbers}} {
			r, err := x.Search(context.Background(), q)
			require.NoError(t, err)
			require.LessOrEqual(t, len(r.Hits), lookup.DefaultLimit)
		}
	}
}

// Every name and alias of the catalogue finds its own ingredient first.
func TestSearchCatalogueNames(t *testing.T) {
	x := build(t, catalogue(t))
	for i, p := range x.profiles {
		if testing.Short() && i%5 > 0 {
			continue
		}
		for _, name := range append([]string{p.Name, p.ID}, p.Aliases...) {
			r, err := x.Search(context.Background(), lookup.Query{Text: name, Limit: 1})
			require.NoError(t, err)
			require.Equal(t, []string{p.ID}, ids(r.Hits), name)
		}
	}
}

func FuzzSearch(f *testing.F) {
	for _, s := range []string{"", "gin", "lon dr", "amareto", "name:gin~2", "\xff", "a b c d e f"} {
		f.Add(s, 0, "")
	}
	f.Add("gin", 101, "nothing")
	f.Add("gin", 5, "vodka")
	x := build(f, shelf())
	f.Fuzz(func(t *testing.T, text string, limit int, like string) {
		q := lookup.Query{Text: text, Limit: limit, Like: like, Measure: byNumbers}
		r, err := x.Search(context.Background(), q)
		if err != nil {
			fault(t, err)
			return
		}
		require.LessOrEqual(t, len(r.Hits), q.Most())
		require.LessOrEqual(t, len(r.Hits), r.Total)
		n := 0
		for _, c := range r.Classes {
			n += c.Count
		}
		require.Equal(t, r.Total, n)
		again, err := x.Search(context.Background(), q)
		require.NoError(t, err)
		require.Equal(t, r, again)
	})
}
