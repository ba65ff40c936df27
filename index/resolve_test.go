package index

import (
	"maps"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

func TestResolve(t *testing.T) {
	x := build(t, shelf())
	tests := []struct {
		written string
		want    string
		how     flavor.MatchHow
		about   string
	}{
		{"London dry gin", "london-dry-gin", flavor.MatchExact, "own name"},
		{"london-dry-gin", "london-dry-gin", flavor.MatchExact, "id"},
		{"  LONDON   Dry GIN ", "london-dry-gin", flavor.MatchExact, "case and spaces"},
		{"creme de cassis", "creme-de-cassis", flavor.MatchExact, "accents"},
		{"aromatic bitter", "aromatic-bitters", flavor.MatchExact, "singular"},
		{"egg whites", "egg-white", flavor.MatchExact, "plural"},
		{"gin", "london-dry-gin", flavor.MatchAlias, "alias"},
		{"Sugar-Syrup", "simple-syrup", flavor.MatchAlias, "alias, other punctuation"},
		{"bitters aromatic", "aromatic-bitters", flavor.MatchAlias, "words in another order"},
		{"rye whisky", "rye-whiskey", flavor.MatchAlias, "spelt the other way"},
		{"Peated scotch whiskey", "peated-scotch", flavor.MatchAlias, "spelt the other way"},
		{"vokda", "vodka", flavor.MatchFuzzy, "letters swapped"},
		{"bodka", "vodka", flavor.MatchFuzzy, "first letter"},
		{"amareto", "amaretto", flavor.MatchFuzzy, "letter dropped"},
		{"amarretto", "amaretto", flavor.MatchFuzzy, "letter added"},
		{"amratto", "amaretto", flavor.MatchFuzzy, "two slips in eight letters"},
		{"lodnon dry gin", "london-dry-gin", flavor.MatchFuzzy, "a slip in one of three words"},
		{"lemonjuice", "lemon-juice", flavor.MatchFuzzy, "space left out"},
		{"creme de cass is", "creme-de-cassis", flavor.MatchFuzzy, "space put in"},
		{"gingerbeer", "ginger-beer", flavor.MatchFuzzy, "space left out"},
		{"cardamon tincture", "cardamom-tincture", flavor.MatchFuzzy, "a slip that another name allows for"},
	}
	for _, tt := range tests {
		t.Run(tt.written, func(t *testing.T) {
			p, m, err := x.Resolve(tt.written)
			require.NoError(t, err, tt.about)
			require.Equal(t, tt.want, p.ID, tt.about)
			require.Equal(t, flavor.Match{Asked: tt.written, How: tt.how}, m, tt.about)
		})
	}
}

func TestResolveDoesNotGuess(t *testing.T) {
	shelf := append(shelf(), known("lime-cordial", "Lime cordial", flavor.ClassCordial), known("limu-cordial", "Limu cordial", flavor.ClassCordial),
		known("one", "One", flavor.ClassGin, "shared"), known("two", "Two", flavor.ClassGin, "Shared"), known("mute", "?", flavor.ClassGin),
		known("red-vermouth", "Spanish red vermouth", flavor.ClassVermouth, "vermut"))
	x := build(t, shelf)
	for written, about := range map[string]string{
		"":                              "nothing",
		"   ":                           "nothing",
		"?!":                            "no letters",
		"rum":                           "too short to be a slip for rye or gin",
		"gim":                           "three letters have too many neighbours",
		"London dri gin":                "a short word is forgiven nothing",
		"lodnon dry gni":                "a short word is forgiven nothing",
		"lemon fresh":                   "a word is missing",
		"lemon fresh juicy":             "another order and a slip",
		"London":                        "the beginning of a name",
		"very dry gin":                  "a word too many",
		"goat milk":                     "a slip in the first letter of a short word",
		"pear liqueur":                  "pear is a word of its own, no slip for peach",
		"peach brandy":                  "peach is a word of its own, no slip for pear",
		"rich syrup 3:1":                "numbers must agree",
		"simple syrup 2:1":              "numbers must agree",
		"limx cordial":                  "as near to lime as to limu",
		"shared":                        "an alias of two",
		"vodka\x00gin":                  "control characters divide words",
		"name:vodka":                    "query syntax is text",
		"va*":                           "query syntax is text",
		"vermuth":                       "as near to vermouth, which is no name but a word, as to vermut",
		"campagne":                      "nothing near",
		"xq":                            "nothing near",
		"almond milk":                   "another milk",
		"vooodkaa":                      "too many slips",
		"creme de cacao":                "another crème",
		strings.Repeat("a", 1<<20):      "huge",
		strings.Repeat("vodka ", 1<<16): "huge",
	} {
		p, _, err := x.Resolve(written)
		require.Nil(t, p, about)
		f := fault(t, err)
		require.ErrorIs(t, err, flavor.ErrUnknown)
		require.Empty(t, f.Location)
		require.LessOrEqual(t, utf8.RuneCountInString(f.Value), lookup.MaxText)
		require.True(t, utf8.ValidString(f.Message))
		require.LessOrEqual(t, len(f.Suggest), maxSuggest)
		if strings.ContainsAny(written, "abcdefghijklmnopqrstuvwxyz") {
			require.NotEmpty(t, f.Suggest, about)
		}
	}
}

func TestResolveFaultNamesTheNearest(t *testing.T) {
	x := build(t, shelf())
	_, _, err := x.Resolve("goat milk")
	f := fault(t, err)
	require.Equal(t, "goat milk", f.Value)
	require.Equal(t, `unknown ingredient "goat milk"; nearest: Oat milk`, f.Message)
	require.Equal(t, []string{"Oat milk"}, f.Suggest)
}

// A slip is forgiven only where the place allows what is meant, and never if the
// nearest name is one that it does not allow.
func TestSlipRespectsAllows(t *testing.T) {
	x := build(t, []*flavor.Profile{known("mango", "Mango", flavor.ClassFruit), known("mango-bitters", "Mango bitters", flavor.ClassCocktailBitters),
		known("aromatic-bitters", "Aromatic bitters", flavor.ClassCocktailBitters)})
	bitters := func(p *flavor.Profile) bool { return p.Class == flavor.ClassCocktailBitters }
	for written, want := range map[string]string{"aromatik bitters": "aromatic-bitters", "mangoe": "", "mengo": "", "ango": "", "mengo bitters": "mango-bitters"} {
		p, ok := x.Slip(written, bitters)
		require.Equal(t, want != "", ok, written)
		if ok {
			require.Equal(t, want, p.ID, written)
		}
	}
	_, ok := x.Slip("mengo", nil)
	require.True(t, ok, "allowed anywhere")
}

func TestFavouring(t *testing.T) {
	x := build(t, []*flavor.Profile{known("oat-milk", "Oat milk", flavor.ClassPlantMilk), known("rice-milk", "Rice milk", flavor.ClassPlantMilk)})
	require.Equal(t, []string{"Oat milk", "Rice milk"}, x.Suggest("milk", nil))
	rice := x.Favouring(func(id string) float64 { return map[string]float64{"rice-milk": 1}[id] })
	require.Equal(t, []string{"Rice milk", "Oat milk"}, rice.Suggest("milk", nil))
	require.Equal(t, []string{"Oat milk", "Rice milk"}, rice.Suggest("milk", func(p *flavor.Profile) bool { return p.ID == "oat-milk" }))
}

// An own name is stronger than an alias of another.
func TestResolveOwnNameBeatsAlias(t *testing.T) {
	for _, order := range [][2]int{{0, 1}, {1, 0}} {
		two := []*flavor.Profile{known("a", "Rye", flavor.ClassWhiskey), known("b", "Rye spirit", flavor.ClassOtherSpirit, "rye")}
		x := build(t, []*flavor.Profile{two[order[0]], two[order[1]]})
		p, m, err := x.Resolve("rye")
		require.NoError(t, err)
		require.Equal(t, "a", p.ID)
		require.Equal(t, flavor.MatchExact, m.How)
	}
}

func TestResolveCatalogueNames(t *testing.T) {
	x := build(t, catalogue(t))
	for _, p := range x.profiles {
		for i, name := range append([]string{p.Name, p.ID}, p.Aliases...) {
			got, m, err := x.Resolve(name)
			require.NoError(t, err, name)
			require.Equal(t, p.ID, got.ID, name)
			if i < 2 {
				require.Equal(t, flavor.MatchExact, m.How, name)
			} else {
				require.NotEqual(t, flavor.MatchFuzzy, m.How, name)
			}
		}
	}
}

// A word put before a name makes another name, never a slip.
func TestResolveKeepsWordsApart(t *testing.T) {
	x := build(t, catalogue(t))
	for i, key := range slices.Sorted(maps.Keys(x.names.written)) {
		if testing.Short() && i%5 > 0 {
			continue
		}
		for _, s := range []string{"goat ", "sheep ", "extra "} {
			if p, how, ok := x.lookUp(s + key); ok {
				require.NotEqual(t, flavor.MatchFuzzy, how, "%q read as %q", s+key, p.ID)
			}
		}
	}
}

func TestEditDistance(t *testing.T) {
	for _, tt := range []struct {
		a, b  string
		limit int
		want  int
	}{
		{"", "", 0, 0}, {"gin", "gin", 0, 0}, {"gin", "", 3, 3}, {"", "gin", 2, 3},
		{"gin", "gni", 2, 1},  // swapped
		{"gin", "grin", 2, 1}, // added
		{"gin", "gn", 2, 1},   // dropped
		{"gin", "gum", 2, 2},  // replaced twice
		{"ca", "abc", 5, 3},   // the restricted form: 2 without the restriction
		{"crème", "creme", 1, 1}, {"kitten", "sitting", 5, 3}, {"kitten", "sitting", 2, 3},
		{strings.Repeat("a", 40), strings.Repeat("a", 38) + "bb", 5, 2}, // beyond the small buffer
	} {
		require.Equal(t, tt.want, editDistance([]rune(tt.a), []rune(tt.b), tt.limit), "%q %q", tt.a, tt.b)
		require.Equal(t, tt.want, editDistance([]rune(tt.b), []rune(tt.a), tt.limit), "%q %q", tt.b, tt.a)
	}
}

// What spares a comparison letter by letter never finds two words farther apart than they are.
func TestLettersApart(t *testing.T) {
	word := rapid.StringOfN(rapid.SampledFrom([]rune("abcdéß1")), 0, 8, -1)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		require.LessOrEqual(t, apart(lettersOf(a), lettersOf(b)), editDistance([]rune(a), []rune(b), 20))
	})
}

// A name is listed for the beginnings of its words, whichever of them are written.
func TestInitialled(t *testing.T) {
	x := build(t, shelf())
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(x.profiles).Draw(t, "profile")
		name := flavor.NormaliseName(rapid.SampledFrom(append([]string{p.Name}, p.Aliases...)).Draw(t, "name"))
		var begun []string
		for w := range strings.FieldsSeq(name) {
			if n := rapid.IntRange(0, len(w)).Draw(t, "letters"); n > 0 {
				begun = append(begun, w[:n])
			}
		}
		require.Contains(t, slices.Collect(x.Initialled(begun)), name)
	})
	for name := range x.Initialled([]string{"dry", "g"}) {
		require.Regexp(t, `(^| )d`, name)
		require.Regexp(t, `(^| )g`, name)
	}
}

func FuzzResolve(f *testing.F) {
	for _, s := range []string{"", "gin", "lemon fresh juice", "vokda", "\xff\x00", "name:gin~2", "rich syrup 3:1", "ﷺ", "İı"} {
		f.Add(s)
	}
	x := build(f, shelf())
	f.Fuzz(func(t *testing.T, written string) {
		p, m, err := x.Resolve(written)
		if err != nil {
			require.ErrorIs(t, err, flavor.ErrUnknown)
			require.Nil(t, p)
			require.True(t, utf8.ValidString(fault(t, err).Value))
			return
		}
		require.Equal(t, written, m.Asked)
		require.Contains(t, []flavor.MatchHow{flavor.MatchExact, flavor.MatchAlias, flavor.MatchFuzzy}, m.How)
	})
}

// The shortlist of the nearest names is that of every name compared in full.
func TestNearestIsThatOfAllNames(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	n := newNames(c.Profiles())
	plain := func(key string, limit int) []*flavor.Profile {
		least := map[*flavor.Profile]float64{}
		for _, list := range n.spellings {
			for _, s := range list {
				meant := []rune(s.key)
				longer := max(len([]rune(key)), len(meant))
				share := float64(editDistance([]rune(key), meant, longer)) / float64(longer)
				if old, seen := least[s.profile]; !seen || share < old {
					least[s.profile] = share
				}
			}
		}
		all := slices.SortedFunc(maps.Keys(least), func(a, b *flavor.Profile) int { return byScore(-least[a], a, -least[b], b) })
		return all[:min(limit, len(all))]
	}
	letters := rapid.SampledFrom([]rune("aeioulmnrst bcdg"))
	rapid.Check(t, func(t *rapid.T) {
		key := string(rapid.SliceOfN(letters, 1, maxCompared).Draw(t, "letters"))
		if rapid.Bool().Draw(t, "a name with another letter") {
			name := []rune(rapid.SampledFrom(c.Profiles()).Draw(t, "profile").Name)
			name[rapid.IntRange(0, len(name)-1).Draw(t, "at")] = letters.Draw(t, "letter")
			key = string(name[:min(len(name), maxCompared)])
		}
		limit := rapid.IntRange(1, maxSuggest).Draw(t, "limit")
		require.Equal(t, plain(key, limit), n.nearest(key, limit), key)
	})
}
