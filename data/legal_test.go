package data

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/legal"
	"counterpour/flavor"
)

var embeddedOnce = sync.OnceValues(Embedded)

// loadCatalogue returns the catalogue that is part of the program.
func loadCatalogue(t *testing.T) *Catalogue {
	t.Helper()
	c, err := embeddedOnce()
	require.NoError(t, err)
	return c
}

// called reports whether a record bears a name or an alias with any of the
// words in it, accents and case aside.
func called(p *flavor.Profile, words ...string) bool {
	for _, name := range append([]string{p.Name}, p.Aliases...) {
		key := " " + flavor.NormaliseName(name) + " "
		for _, w := range words {
			if strings.Contains(key, " "+flavor.NormaliseName(w)+" ") {
				return true
			}
		}
	}
	return false
}

// cremeDe reports whether a name is that of a crème de something.
func cremeDe(name string) bool {
	return strings.HasPrefix(flavor.NormaliseName(name), "creme d") || strings.Contains(flavor.NormaliseName(name), " creme d")
}

// A record that stands for a liqueur and for the crème of the same fruit is
// drier than the law lets the crème be, but by no more than two of its spreads.
func TestLiqueursThatStandForACreme(t *testing.T) {
	n := 0
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Class != flavor.ClassLiqueur || cremeDe(p.Name) || !slices.ContainsFunc(p.Aliases, cremeDe) {
			continue
		}
		n++
		upper := *p
		upper.Sugar.Value += 2 * upper.Sugar.Spread
		assert.NoError(t, claiming("creme de", &upper), p.ID)
	}
	assert.GreaterOrEqual(t, n, 20)
}

func TestRecordsKeepTheirLegalDefinitions(t *testing.T) {
	for _, p := range loadCatalogue(t).Profiles() {
		assert.NoError(t, legal.Check(p))
	}
}

// claiming checks a record as if it claimed a legal definition.
func claiming(definition string, p *flavor.Profile) error {
	claim := *p
	claim.Legal = definition
	return legal.Check(&claim)
}

// A name binds a record to a definition even where it claims none.
func TestNamesAndClassesImplyTheirLaw(t *testing.T) {
	liqueur := func(p *flavor.Profile) bool { return p.Class == flavor.ClassLiqueur }
	of := func(c flavor.Class, except ...string) func(*flavor.Profile) bool {
		return func(p *flavor.Profile) bool { return p.Class == c && !slices.Contains(except, p.ID) }
	}
	named := func(words ...string) func(*flavor.Profile) bool {
		return func(p *flavor.Profile) bool { return called(p, words...) }
	}
	for _, rule := range []struct {
		definition string
		applies    func(*flavor.Profile) bool
		atLeast    int // records it must reach, so that a renamed class does not pass by silence
	}{
		{"London gin", named("London"), 1},
		{"creme de", func(p *flavor.Profile) bool { return liqueur(p) && cremeDe(p.Name) }, 5},
		{"creme de cassis", func(p *flavor.Profile) bool { return liqueur(p) && called(p, "crème de cassis") }, 1},
		{"sambuca", named("sambuca"), 1},
		{"maraschino", func(p *flavor.Profile) bool { return liqueur(p) && called(p, "maraschino") }, 1},
		{"nocino", named("nocino"), 1},
		{"egg liqueur", named("advocaat"), 1},
		{"sloe gin", func(p *flavor.Profile) bool { return p.ID == "sloe-gin" }, 1},
		{"vermouth", of(flavor.ClassVermouth), 12},
		{"aromatised wine", of(flavor.ClassAromatisedWine, "ginger-wine"), 12},
		{"liqueur wine", of(flavor.ClassFortifiedWine), 30},
		// A spiced rum is a spirit drink of no category; it may be weaker.
		{"rum", of(flavor.ClassRum, "spiced-rum"), 15},
		{"whisky", of(flavor.ClassWhiskey), 15},
		{"gin", of(flavor.ClassGin, "genever", "young-genever"), 10},
		{"juniper spirit", named("genever"), 2},
		{"flavoured vodka", of(flavor.ClassVodka), 10},
		{"brandy", of(flavor.ClassBrandy), 10},
		{"fruit spirit", of(flavor.ClassFruitSpirit), 8},
		{"aniseed spirit", of(flavor.ClassAniseSpirit), 8},
		{"bitter", of(flavor.ClassAmaro), 40},
	} {
		t.Run(rule.definition, func(t *testing.T) {
			n := 0
			for _, p := range loadCatalogue(t).Profiles() {
				if rule.applies(p) {
					n++
					assert.NoError(t, claiming(rule.definition, p), p.ID)
				}
			}
			assert.GreaterOrEqual(t, n, rule.atLeast)
		})
	}
}

// NOM-006-SCFI-2012 for tequila, 35 to 55 % vol; from memory.
func TestAgaveSpiritsAreAsStrongAsMexicanLawSays(t *testing.T) {
	n := 0
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Class == flavor.ClassAgaveSpirit {
			n++
			assert.GreaterOrEqual(t, p.ABV.Value, 35.0, p.ID)
			assert.LessOrEqual(t, p.ABV.Value, 55.0, p.ID)
		}
	}
	assert.GreaterOrEqual(t, n, 8)
}

// Who sells a liqueur claims a definition. These are weaker than the 15 % vol
// that a spirit drink needs, so they may not.
func TestLiqueursClaimADefinition(t *testing.T) {
	weak := []string{"falernum", "ume-liqueur", "rice-cream-liqueur", "rompope"}
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Class != flavor.ClassLiqueur && p.Class != flavor.ClassCreamLiqueur {
			continue
		}
		if slices.Contains(weak, p.ID) {
			assert.Empty(t, p.Legal, p.ID)
			assert.Less(t, p.ABV.Value, 15.0, p.ID)
			continue
		}
		assert.NotEmpty(t, p.Legal, "%s: claim \"liqueur\" or a narrower definition", p.ID)
	}
}

// The words for sweetness in the name of a vermouth, Regulation (EU) No
// 251/2014, Article 6(1), read.
func TestVermouthsKeepTheirSugarWords(t *testing.T) {
	words := []string{"extra dry", "dry", "semi dry", "sweet"}
	seen := map[string]int{}
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Class != flavor.ClassVermouth {
			continue
		}
		assert.Equal(t, "vermouth", p.Legal, p.ID)
		assert.NoError(t, legal.Check(p), p.ID)
		for _, w := range words {
			if called(p, w) {
				seen[w]++
			}
		}
	}
	for _, w := range words {
		assert.Positive(t, seen[w], "no vermouth is called %s", w)
	}
}

// Sherry and port obey their product specifications, recalled and so not
// strict: strength may miss by 0.5 % vol and sugar by a tenth.
func TestSherryAndPort(t *testing.T) {
	c := loadCatalogue(t)
	for _, r := range []struct {
		ids              []string
		minABV, maxABV   float64
		minSugar, maxSug float64
	}{
		{[]string{"fino-sherry", "manzanilla-sherry", "amontillado-sherry", "oloroso-sherry", "palo-cortado-sherry"}, 15, 22, 0, 9},
		{[]string{"medium-sherry"}, 15, 22, 5, 115},
		{[]string{"pale-cream-sherry"}, 15, 22, 45, 115},
		{[]string{"cream-sherry"}, 15, 22, 115, 140},
		{[]string{"moscatel-sherry"}, 15, 22, 160, math.Inf(1)},
		{[]string{"pedro-ximenez-sherry"}, 15, 22, 212, math.Inf(1)},
		{[]string{"white-port", "dry-white-port", "rose-port", "ruby-port", "lbv-port", "vintage-port", "tawny-port", "aged-tawny-port"}, 19, 22, 0, 140},
	} {
		for _, id := range r.ids {
			p, ok := c.ByID(id)
			require.True(t, ok, id)
			assert.GreaterOrEqual(t, p.ABV.Value, r.minABV-0.5, id)
			assert.LessOrEqual(t, p.ABV.Value, r.maxABV+0.5, id)
			assert.GreaterOrEqual(t, p.Sugar.Value, 0.9*r.minSugar, id)
			assert.LessOrEqual(t, p.Sugar.Value, 1.1*r.maxSug, id)
		}
	}
}

// A figure is law only where the law sets that very number: zero, or the limit
// that its source states. A value that merely lies within the law came from
// somewhere else.
func TestLawFiguresAreSetByLaw(t *testing.T) {
	for _, p := range loadCatalogue(t).Profiles() {
		for _, f := range figuresOf(p) {
			if f.Origin == flavor.OriginLaw && f.Value != 0 {
				assert.Contains(t, f.Source, strconv.FormatFloat(f.Value, 'f', -1, 64), "%s: %v: %s", p.ID, f.Value, f.Source)
			}
		}
	}
}

// Loading holds every record to its claim and names file, record and field.
func TestLoadChecksTheLaw(t *testing.T) {
	const record = `version = 1
class = "liqueur"

[[ingredient]]
id = "thin-liqueur"
name = "Thin liqueur"
legal = "liqueur"
abv = "20 ± 1 | from memory"
sugar = "40 ± 5 | from memory"
sugars = "sucrose"
acid = "0 ± 0 | common practice"
acids = "none"
bitter = "0 ± 0 | common practice"
texture = "0 ± 0 | common practice"
smells_of = "vanilla 10 | ± 25 % | from memory"
allergens = []
`
	fsys := fstest.MapFS{
		"blends.toml":    {Data: []byte("version = 1\n[sugars]\nsucrose = { sucrose = 1.0 }\n[acids]\nnone = {}\n")},
		"materials.toml": {Data: []byte("version = 1\n[materials]\n\"vanilla\" = \"vanilla 1\"\n")},
		"liqueur.toml":   {Data: []byte(record)},
	}
	_, err := Load(fsys)
	require.Error(t, err)
	for _, part := range []string{"liqueur.toml", `ingredient "thin-liqueur"`, "field sugar", "at least 100", "raise it"} {
		assert.Contains(t, err.Error(), part)
	}
	assert.Equal(t, 1, strings.Count(err.Error(), "ingredient"), "the record is named once: %v", err)
	fsys["liqueur.toml"] = &fstest.MapFile{Data: []byte(strings.Replace(record, "40 ± 5", "140 ± 5", 1))}
	_, err = Load(fsys)
	require.NoError(t, err)
}
