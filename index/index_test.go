package index

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

var update = flag.Bool("update", false, "rewrite the golden files in testdata")

// known is a profile whose allergens are stated.
func known(id, name string, class flavor.Class, aliases ...string) *flavor.Profile {
	return &flavor.Profile{ID: id, Name: name, Class: class, Aliases: aliases, AllergensKnown: true}
}

// shelf is a small bar on which every behaviour can be seen.
func shelf() []*flavor.Profile {
	gin := known("london-dry-gin", "London dry gin", flavor.ClassGin, "gin", "dry gin")
	gin.ABV.Value, gin.Aroma[flavor.Juniper], gin.Aroma[flavor.Citrus] = 41, 10, 0.4
	sloe := known("sloe-gin", "Sloe gin", flavor.ClassLiqueur)
	sloe.ABV.Value, sloe.Sugar.Value, sloe.Aroma[flavor.Berry] = 27, 180, 9
	vodka := known("vodka", "Vodka", flavor.ClassVodka)
	vodka.ABV.Value, vodka.Aroma[flavor.Grain] = 40, 0.3
	rye := known("rye-whiskey", "Rye whiskey", flavor.ClassWhiskey, "rye")
	rye.ABV.Value, rye.Aroma[flavor.Oak], rye.AllergensKnown = 45, 8, false
	scotch := known("peated-scotch", "Peated Scotch whisky", flavor.ClassWhiskey, "Islay-style whisky")
	scotch.ABV.Value, scotch.Aroma[flavor.Smoke] = 46, 12
	bitters := known("aromatic-bitters", "Aromatic bitters", flavor.ClassCocktailBitters, "bitters")
	bitters.ABV.Value, bitters.Bitter.Value, bitters.Aroma[flavor.Clove] = 44, 900, 60
	amaro := known("light-amaro", "Light amaro", flavor.ClassAmaro)
	amaro.ABV.Value, amaro.Bitter.Value, amaro.Aroma[flavor.Orange] = 23, 60, 7
	lemon := known("lemon-juice", "Lemon juice", flavor.ClassSourJuice, "fresh lemon juice")
	lemon.Acid.Value, lemon.Aroma[flavor.Citrus] = 60, 8
	cassis := known("creme-de-cassis", "Crème de cassis", flavor.ClassLiqueur, "blackcurrant liqueur")
	cassis.ABV.Value, cassis.Sugar.Value, cassis.Aroma[flavor.Berry] = 17, 420, 10
	peach := known("peach-liqueur", "Peach liqueur", flavor.ClassLiqueur)
	peach.ABV.Value, peach.Sugar.Value, peach.Aroma[flavor.Orchard] = 20, 300, 9
	pear := known("pear-brandy", "Pear brandy", flavor.ClassFruitSpirit)
	pear.ABV.Value, pear.Aroma[flavor.Orchard] = 42, 8
	amaretto := known("amaretto", "Amaretto", flavor.ClassLiqueur, "almond liqueur")
	amaretto.ABV.Value, amaretto.Sugar.Value, amaretto.Aroma[flavor.Nut] = 26, 260, 10
	amaretto.AllergenMarks = []flavor.AllergenMark{{Allergen: flavor.TreeNuts, Certainty: flavor.MayContain}}
	oat := known("oat-milk", "Oat milk", flavor.ClassPlantMilk)
	oat.AllergenMarks = []flavor.AllergenMark{{Allergen: flavor.Gluten, Certainty: flavor.MayContain}}
	egg := known("egg-white", "Egg white", flavor.ClassEgg)
	egg.AllergenMarks, egg.Animal = []flavor.AllergenMark{{Allergen: flavor.Eggs, Certainty: flavor.Contains}}, []string{"egg"}
	honey := known("honey-syrup", "Honey syrup", flavor.ClassSyrup)
	honey.Animal, honey.Sugar.Value, honey.Making = []string{"honey"}, 700, "Warm honey with water and stir."
	honey.Materials = []flavor.MaterialShare{{Material: "heather honey", Intensity: 4}}
	rich := known("rich-syrup-2-1", "Rich syrup 2:1", flavor.ClassSyrup)
	rich.Sugar.Value = 850
	simple := known("simple-syrup", "Simple syrup 1:1", flavor.ClassSyrup, "simple syrup", "sugar syrup")
	simple.Sugar.Value = 615
	beer := known("ginger-beer", "Ginger beer", flavor.ClassSoda)
	beer.Carbonated, beer.ABV.Value, beer.Aroma[flavor.Pungent] = true, 0.4, 4
	raki := known("raki", "Rakı", flavor.ClassAniseSpirit)
	raki.ABV.Value, raki.Aroma[flavor.Anise] = 45, 20
	carda := known("cardamom-bitters", "Cardamom bitters", flavor.ClassCocktailBitters, "cardamon bitters")
	carda.ABV.Value, carda.Bitter.Value, carda.Aroma[flavor.Cinnamon] = 40, 500, 50
	tincture := known("cardamom-tincture", "Cardamom tincture", flavor.ClassTincture)
	tincture.ABV.Value = 60
	return []*flavor.Profile{tincture, carda, raki, beer, simple, rich, honey, egg, oat, amaretto, pear,
		peach, cassis, lemon, amaro, bitters, scotch, rye, vodka, sloe, gin}
}

func build(t testing.TB, profiles []*flavor.Profile) *Index {
	t.Helper()
	x, err := Build(context.Background(), profiles, nil)
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, x.Close()) })
	return x
}

func catalogue(t testing.TB) []*flavor.Profile {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	return c.Profiles()
}

func ids(hits []lookup.Hit) []string {
	out := make([]string, len(hits))
	for i, h := range hits {
		out[i] = h.Profile.ID
	}
	return out
}

func idsOf(profiles []*flavor.Profile) []string {
	out := make([]string, len(profiles))
	for i, p := range profiles {
		out[i] = p.ID
	}
	return out
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), string(got), "rewrite with -update if the change is meant")
}

func fault(t *testing.T, err error) *flavor.DataFault {
	t.Helper()
	var f *flavor.DataFault
	require.ErrorAs(t, err, &f)
	require.NotEmpty(t, f.Message)
	return f
}

func TestBuildReportsProgress(t *testing.T) {
	var profiles []*flavor.Profile
	for i := range 2*batchSize + 1 {
		profiles = append(profiles, known("p-"+strings.Repeat("x", i%7)+string(rune('a'+i%26))+"-"+itoa(i), "Thing "+itoa(i), flavor.ClassGin))
	}
	var seen [][2]int
	x, err := Build(context.Background(), profiles, func(done, total int) { seen = append(seen, [2]int{done, total}) })
	require.NoError(t, err)
	defer x.Close()
	require.Len(t, seen, 3, "after each batch")
	before := 0
	for _, s := range seen { // batches are done in whatever order
		require.Greater(t, s[0], before)
		require.Equal(t, 2001, s[1])
		before = s[0]
	}
	require.Equal(t, 2001, before)
	require.Equal(t, 2001, x.Len())
	r, err := x.Search(context.Background(), lookup.Query{Limit: 1})
	require.NoError(t, err)
	require.Equal(t, 2001, r.Total)
}

func itoa(i int) string { b, _ := json.Marshal(i); return string(b) }

func TestBuildRefuses(t *testing.T) {
	gin := known("gin", "Gin", flavor.ClassGin)
	for name, profiles := range map[string][]*flavor.Profile{
		"an id twice": {gin, known("gin", "Other gin", flavor.ClassGin)},
		"no id":       {known("", "Nothing", flavor.ClassGin)},
		"nil":         {gin, nil},
	} {
		_, err := Build(context.Background(), profiles, nil)
		require.Error(t, err, name)
	}
	stopped, stop := context.WithCancel(context.Background())
	stop()
	_, err := Build(stopped, []*flavor.Profile{gin}, nil)
	require.ErrorIs(t, err, context.Canceled)
}

// Whoever is told of progress may break; the program does not.
func TestBuildIgnoresAPanickingProgress(t *testing.T) {
	_, err := Build(t.Context(), shelf(), func(int, int) { panic("nobody listens") })
	require.ErrorContains(t, err, "it panicked: nobody listens")
}

func TestBuildOfNothing(t *testing.T) {
	x := build(t, nil)
	r, err := x.Search(context.Background(), lookup.Query{Text: "gin", Avoid: flavor.Allergens()})
	require.NoError(t, err)
	require.Zero(t, r.Total)
	_, _, err = x.Resolve("gin")
	require.ErrorIs(t, err, flavor.ErrUnknown)
	list, refused, err := x.Candidates(context.Background(), lookup.Need{Stock: []string{}, Avoid: flavor.Allergens()})
	require.NoError(t, err)
	require.Empty(t, list)
	require.Zero(t, refused)
}

func TestBuildLeavesTheSliceAlone(t *testing.T) {
	profiles := shelf()
	before := slices.Clone(profiles)
	build(t, profiles)
	require.Equal(t, before, profiles)
}

func TestCloseTwice(t *testing.T) {
	x, err := Build(context.Background(), shelf(), nil)
	require.NoError(t, err)
	require.NoError(t, x.Close())
	require.NoError(t, x.Close())
	_, err = x.Search(context.Background(), lookup.Query{Text: "gin"})
	require.ErrorIs(t, err, lookup.ErrClosed)
	_, err = x.Search(context.Background(), lookup.Query{Like: "vodka", Measure: byNumbers})
	require.ErrorIs(t, err, lookup.ErrClosed)
	_, _, err = x.Resolve("gin")
	require.ErrorIs(t, err, lookup.ErrClosed)
	_, _, err = x.Candidates(context.Background(), lookup.Need{})
	require.ErrorIs(t, err, lookup.ErrClosed)
}

func TestCloseWhileSearching(t *testing.T) {
	x, err := Build(context.Background(), shelf(), nil)
	require.NoError(t, err)
	done := make(chan error)
	for range 4 {
		go func() {
			for {
				if _, err := x.Search(context.Background(), lookup.Query{Text: "gin"}); err != nil {
					done <- err
					return
				}
			}
		}()
	}
	require.NoError(t, x.Close())
	for range 4 {
		require.ErrorIs(t, <-done, lookup.ErrClosed)
	}
}

func TestSearchHeedsContext(t *testing.T) {
	x := build(t, shelf())
	stopped, stop := context.WithCancel(context.Background())
	stop()
	_, err := x.Search(stopped, lookup.Query{Text: "gin"})
	require.ErrorIs(t, err, context.Canceled)
	_, _, err = x.Candidates(stopped, lookup.Need{})
	require.True(t, errors.Is(err, context.Canceled), err)
}

// A change of the mapping shows here, to be looked at before -update.
func TestMapping(t *testing.T) {
	m, err := newMapping()
	require.NoError(t, err)
	require.NoError(t, m.Validate())
	text, err := json.MarshalIndent(m, "", "  ")
	require.NoError(t, err)
	golden(t, "mapping.golden", append(text, '\n'))
}

// byNumbers is a measure for the tests: strength, sugar, bitterness and the families of aroma.
func byNumbers(of *flavor.Profile) func(*flavor.Profile) float64 {
	return func(other *flavor.Profile) float64 {
		sum := math.Pow((math.Sqrt(of.Sugar.Value)-math.Sqrt(other.Sugar.Value))/5, 2) + math.Pow((of.ABV.Value-other.ABV.Value)/10, 2) + math.Pow(math.Log1p(of.Bitter.Value/10)-math.Log1p(other.Bitter.Value/10), 2)
		for f := range of.Aroma {
			sum += math.Pow(math.Log1p(of.Aroma[f])-math.Log1p(other.Aroma[f]), 2) / 2
		}
		return math.Sqrt(sum)
	}
}
