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
	least := sweet(atLeast, 250)
	n := 0
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Class != flavor.ClassLiqueur || cremeDe(p.Name) || !slices.ContainsFunc(p.Aliases, cremeDe) {
			continue
		}
		n++
		upper := *p
		upper.Sugar.Value += 2 * upper.Sugar.Spread
		assert.GreaterOrEqual(t, least.what.of(&upper), least.value, p.ID)
	}
	assert.GreaterOrEqual(t, n, 20)
}

func TestDefinitionsNameTheirSource(t *testing.T) {
	for key, d := range definitions {
		assert.NotEmpty(t, d.source, key)
		assert.True(t, d.status.Valid(), key)
		assert.NotEmpty(t, d.limits, key)
	}
	claimed := map[string]int{}
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Legal != "" {
			claimed[p.Legal]++
		}
	}
	t.Logf("%d definitions, of which records claim %d: %v", len(definitions), len(claimed), claimed)
}

func TestRecordsKeepTheirLegalDefinitions(t *testing.T) {
	for _, p := range loadCatalogue(t).Profiles() {
		assert.NoError(t, checkLegal(p))
	}
}

// A name binds a record to a definition even where it claims none. The limits
// are those of Regulation (EU) 2019/787, Annex I, and (EU) No 251/2014, both
// read, but for the United States, Mexican and other rules marked from memory.
func TestNamesAndClassesImplyTheirLaw(t *testing.T) {
	liqueur := func(p *flavor.Profile) bool { return p.Class == flavor.ClassLiqueur }
	of := func(c flavor.Class, except ...string) func(*flavor.Profile) bool {
		return func(p *flavor.Profile) bool { return p.Class == c && !slices.Contains(except, p.ID) }
	}
	for _, rule := range []struct {
		name    string
		applies func(*flavor.Profile) bool
		limits  []limit
		atLeast int // records it must reach, so that a renamed class does not pass by silence
	}{
		{"London gin is not sweetened", func(p *flavor.Profile) bool { return called(p, "London") },
			[]limit{vol(atLeast, 37.5), sweet(atMost, 0.1)}, 1},
		{"crème de …", func(p *flavor.Profile) bool { return liqueur(p) && cremeDe(p.Name) },
			[]limit{vol(atLeast, 15), sweet(atLeast, 250)}, 5},
		{"crème de cassis", func(p *flavor.Profile) bool { return liqueur(p) && called(p, "crème de cassis") },
			[]limit{vol(atLeast, 15), sweet(moreThan, 400)}, 1},
		{"sambuca", func(p *flavor.Profile) bool { return called(p, "sambuca") }, []limit{vol(atLeast, 38), sweet(atLeast, 350)}, 1},
		{"maraschino", func(p *flavor.Profile) bool { return liqueur(p) && called(p, "maraschino") },
			[]limit{vol(atLeast, 24), sweet(atLeast, 250)}, 1},
		{"nocino", func(p *flavor.Profile) bool { return called(p, "nocino") }, []limit{vol(atLeast, 30), sweet(atLeast, 100)}, 1},
		{"egg liqueur", func(p *flavor.Profile) bool { return p.Legal == "egg liqueur" || called(p, "advocaat") },
			[]limit{vol(atLeast, 14), sweet(atLeast, 150)}, 1},
		{"sloe gin", func(p *flavor.Profile) bool { return p.ID == "sloe-gin" }, []limit{vol(atLeast, 25), sweet(atLeast, 100)}, 1},
		{"vermouth", of(flavor.ClassVermouth), []limit{vol(atLeast, 14.5), vol(lessThan, 22)}, 12},
		{"aromatised wine", of(flavor.ClassAromatisedWine, "ginger-wine"), []limit{vol(atLeast, 14.5), vol(lessThan, 22)}, 12},
		{"fortified wine", of(flavor.ClassFortifiedWine), []limit{vol(atLeast, 15), vol(atMost, 22)}, 30},
		// A spiced rum is a spirit drink of no category; it may be weaker.
		{"rum", of(flavor.ClassRum, "spiced-rum"), []limit{vol(atLeast, 37.5), sweet(atMost, 20)}, 15},
		{"whisky", of(flavor.ClassWhiskey), []limit{vol(atLeast, 40), sweet(atMost, caskTrace)}, 15},
		{"gin", of(flavor.ClassGin, "genever", "young-genever"), []limit{vol(atLeast, 37.5)}, 10},
		{"genever", func(p *flavor.Profile) bool { return called(p, "genever") }, []limit{vol(atLeast, 30)}, 2},
		{"vodka", of(flavor.ClassVodka), []limit{vol(atLeast, 37.5), sweet(lessThan, 100)}, 10},
		{"brandy", of(flavor.ClassBrandy), []limit{vol(atLeast, 36), sweet(atMost, 35)}, 10},
		{"fruit spirit", of(flavor.ClassFruitSpirit), []limit{vol(atLeast, 37.5), sweet(atMost, 18)}, 8},
		{"aniseed spirit", of(flavor.ClassAniseSpirit), []limit{vol(atLeast, 15)}, 8},
		// NOM-006-SCFI-2012 for tequila, 35 to 55 % vol; from memory.
		{"agave spirit", of(flavor.ClassAgaveSpirit), []limit{vol(atLeast, 35), vol(atMost, 55)}, 8},
		{"amaro", of(flavor.ClassAmaro), []limit{vol(atLeast, 15)}, 40},
	} {
		t.Run(rule.name, func(t *testing.T) {
			n := 0
			d := definition{source: "the test", limits: rule.limits}
			for _, p := range loadCatalogue(t).Profiles() {
				if rule.applies(p) {
					n++
					assert.NoError(t, d.check(p, rule.name), p.ID)
				}
			}
			assert.GreaterOrEqual(t, n, rule.atLeast)
		})
	}
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
	seen := map[string]int{}
	for _, p := range loadCatalogue(t).Profiles() {
		if p.Class != flavor.ClassVermouth {
			continue
		}
		assert.Equal(t, "vermouth", p.Legal, p.ID)
		assert.NoError(t, checkSugarWords(p), p.ID)
		for _, w := range sugarWords {
			if called(p, w.word) {
				seen[w.word]++
			}
		}
	}
	for _, w := range []string{"extra dry", "dry", "semi dry", "sweet"} {
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

func TestLegalFaultsSayWhatAndHow(t *testing.T) {
	sucrose := flavor.SugarBlend{Name: "sucrose", Sucrose: 1}
	invert := flavor.SugarBlend{Name: "invert", Glucose: 0.5, Fructose: 0.5}
	record := func(legal, name string, abv, sugar float64, blend flavor.SugarBlend, contains ...flavor.Allergen) *flavor.Profile {
		p := &flavor.Profile{ID: "a-bottle", Name: name, Legal: legal, AllergensKnown: true, Sugars: blend,
			ABV: flavor.Figure{Value: abv}, Sugar: flavor.Figure{Value: sugar}}
		for _, a := range contains {
			markAllergen(p, a, flavor.Contains)
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
			err := checkLegal(c.record)
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
