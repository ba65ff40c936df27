package data

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Tolerances against the food table, whose figures are means of few samples.
// Sugar and fat may miss by the larger of the first two, and by two of their own spreads
// where the record averages several tables.
const (
	tableShare   = 0.05 // of the table's value
	tableGrams   = 3.0  // g/L
	tableWater   = 2.5  // g/100 g
	tableDensity = 0.02 // of the table's value
	tableAlcohol = 0.3  // g/100 g
)

// food is a food of the USDA National Nutrient Database for Standard Reference,
// Release 26 (2013), per 100 g, with the density that its weight of a fluid
// ounce or cup implies; all read. A figure that the release does not give, or
// that has no meaning for a drink, is not there. Where a record departs from
// the table on purpose, except says why.
type food struct {
	ndb, name                  string
	record                     string
	water, sugars, fat, gPerML float64
	except                     map[string]string // by water, sugar, fat or density
}

// acidAmongSugars are the foods whose sugars the table has worked out as the
// carbohydrate less fibre, to the last digit, so that their acid is counted
// among them. Taken off, their water agrees as well.
var acidAmongSugars = map[string]bool{"09128": true, "09232": true, "09233": true}

var none = math.NaN()

// Why records depart from the table.
const (
	noColumn  = "what else it holds, ash and long sugars among it, has no column in a record"
	twoProofs = "one weight of a fluid ounce serves two liqueurs of this name, of 32 and of 46 % sugar"
	weaker    = "the record is weaker in alcohol, as most bottles are today"
	coldFroth = "the weight of a cup is below that of water, cream and sugar in these shares"
)

// usdaFoods are the foods that stand for one record each; those that average
// several, such as dessert wine, stand for none.
var usdaFoods = []food{
	{"09152", "Lemon juice, raw", "lemon-juice", 92.31, 2.52, 0.24, 1.031, nil},
	{"09153", "Lemon juice, canned or bottled", "bottled-lemon-juice", 92.46, 2.40, 0.29, 1.031, nil},
	{"09160", "Lime juice, raw", "lime-juice", 90.79, 1.69, 0.07, 1.023, nil},
	{"09161", "Lime juice, canned or bottled, unsweetened", "bottled-lime-juice", 92.52, 1.37, 0.23, 1.040, nil},
	{"09128", "Grapefruit juice, white, raw", "grapefruit-juice", 90.00, 9.10, 0.10, 1.044, nil},
	{"09404", "Grapefruit juice, pink, raw", "pink-grapefruit-juice", 90.00, none, 0.10, 1.044, nil},
	{"09206", "Orange juice, raw", "orange-juice", 88.30, 8.40, 0.20, 1.048, nil},
	{"09273", "Pineapple juice, canned, unsweetened", "pineapple-juice", 86.37, 9.98, 0.12, 1.057, nil},
	{"09232", "Passion-fruit juice, purple, raw", "passion-fruit", 85.62, 13.40, 0.05, 1.044, nil},
	{"09233", "Passion-fruit juice, yellow, raw", "passion-fruit-juice", 84.21, 14.25, 0.18, 1.044, nil},
	{"14242", "Cranberry juice cocktail, bottled", "cranberry-juice", 86.17, 11.87, 0.10, 1.069, nil},
	{"09016", "Apple juice, canned or bottled, unsweetened", "apple-juice", 88.24, 9.62, 0.13, 1.048, nil},
	{"09442", "Pomegranate juice, bottled", "pomegranate-juice", 85.95, 12.65, 0.29, 1.052, nil},
	{"19296", "Honey", "honey", 17.10, 82.12, 0.00, 1.433, nil},
	{"19353", "Syrups, maple", "maple-syrup", 32.39, 67.90, 0.06, 1.331, nil},
	{"19912", "Sweetener, syrup, agave", "agave-nectar", 22.94, 68.03, 0.45, 1.400, map[string]string{"water": noColumn, "density": noColumn}},
	{"19304", "Molasses", "molasses", 21.87, 74.72, 0.10, 1.424, map[string]string{"density": noColumn, "water": noColumn}},
	{"19335", "Sugars, granulated", "white-sugar", 0.02, 99.80, 0.00, none, nil}, // a cup of loose sugar is half air
	{"19350", "Syrups, corn, light", "corn-syrup", 22.81, 76.77, 0.20, 1.441, map[string]string{"density": "long sugars weigh more in water than the sucrose that the density is worked out from"}},
	{"12115", "Nuts, coconut cream, raw", "coconut-cream", 53.90, none, 34.68, 1.014, nil},
	{"12116", "Nuts, coconut cream, canned, sweetened", "cream-of-coconut", 28.97, 51.50, 16.31, 1.251, map[string]string{"density": noColumn}},
	{"12118", "Nuts, coconut milk, canned", "coconut-milk", 72.88, none, 21.33, 0.955, map[string]string{"density": coldFroth}},
	{"01053", "Cream, fluid, heavy whipping", "heavy-cream", 57.71, 2.79, 37.00, 1.006, nil},
	{"01077", "Milk, whole, 3.25% milkfat", "whole-milk", 88.13, 5.05, 3.25, 1.031, nil},
	{"01124", "Egg, white, raw, fresh", "egg-white", 87.57, 0.71, 0.17, 1.027, nil},
	{"01125", "Egg, yolk, raw, fresh", "egg-yolk", 52.31, 0.56, 26.54, 1.027, map[string]string{"water": noColumn}},
	{"01123", "Egg, whole, raw, fresh", "whole-egg", 76.15, 0.37, 9.51, 1.027, nil},
	{"11216", "Ginger root, raw", "fresh-ginger", none, 1.70, none, none, nil},
	{"09302", "Raspberries, raw", "raspberry", none, 4.42, none, none, nil},
	{"09316", "Strawberries, raw", "strawberry", none, 4.89, none, none, nil},
	{"14148", "Carbonated beverage, cola", "cola", 89.62, 10.75, 0, 1.038, nil},
	{"14155", "Carbonated beverage, tonic water", "tonic-water", 91.10, 8.80, 0, 1.031, nil},
	{"14136", "Carbonated beverage, ginger ale", "ginger-ale", 91.23, 8.70, 0, 1.031, nil},
	{"14121", "Carbonated beverage, club soda", "soda-water", 99.90, 0, 0, 1.001, nil},
	{"14534", "Alcoholic beverage, liqueur, coffee, 63 proof", "coffee-liqueur", 41.40, none, none, 1.177, map[string]string{"water": weaker, "density": twoProofs}},
	{"14415", "Alcoholic beverage, liqueur, coffee with cream, 34 proof", "coffee-cream-liqueur", 46.50, 19.76, 15.70, 1.052, nil},
	{"14034", "Alcoholic beverage, creme de menthe, 72 proof", "creme-de-menthe", 28.30, none, none, 1.136, map[string]string{"water": weaker, "density": weaker}},
	{"14096", "Alcoholic beverage, wine, table, red", "red-wine", 86.49, none, 0, 0.994, nil},         // a market of 6,000 is drier
	{"14106", "Alcoholic beverage, wine, table, white", "dry-white-wine", 86.86, none, 0, 0.994, nil}, // the average of the table takes in sweeter ones
}

// largest keeps the largest deviation from a published table, for the log.
type largest struct {
	of    string
	value float64
}

func (l *largest) see(of string, value float64) {
	if math.Abs(value) > math.Abs(l.value) {
		l.of, l.value = of, value
	}
}

// compare holds one figure to the table, notes how far it is off, and fails if
// a named exception is none.
func (f food) compare(t *testing.T, what string, got, want, tolerance, scale float64, far *largest) {
	t.Helper()
	if math.IsNaN(want) {
		return
	}
	why, excepted := f.except[what]
	off := got - want
	if excepted {
		assert.Greater(t, math.Abs(off), tolerance, "%s: %s agrees with NDB %s; drop the exception", f.record, what, f.ndb)
		t.Logf("%s: %s %.4g, table %.4g: %s", f.record, what, got, want, why)
		return
	}
	far.see(f.record, off/scale)
	assert.LessOrEqual(t, math.Abs(off), tolerance, "%s: %s %.4g, NDB %s (%s) has %.4g", f.record, what, got, f.ndb, f.name, want)
}

func TestCompositionAgainstUSDA(t *testing.T) {
	c := loadCatalogue(t)
	var sugar, fat, water, density largest
	for _, f := range usdaFoods {
		p, ok := c.ByID(f.record)
		require.True(t, ok, f.record)
		rho := p.DensityGPerML
		gPerL := func(per100g float64) float64 { return 10 * rho * per100g }
		sugars := gPerL(f.sugars)
		if acidAmongSugars[f.ndb] {
			sugars -= p.Acid.Value
		}
		f.compare(t, "sugar", p.Sugar.Value, sugars, max(tableGrams, tableShare*sugars, 2*p.Sugar.Spread), max(tableGrams/tableShare, sugars)/100, &sugar)
		if p.Fat.Origin != "" {
			f.compare(t, "fat", p.Fat.Value, gPerL(f.fat), max(tableGrams, tableShare*gPerL(f.fat), 2*p.Fat.Spread), max(tableGrams/tableShare, gPerL(f.fat))/100, &fat)
		}
		f.compare(t, "water", 100*p.WaterGPerML/rho, f.water, tableWater, 1, &water)
		f.compare(t, "density", rho, f.gPerML, tableDensity*f.gPerML, f.gPerML/100, &density)
	}
	t.Logf("USDA SR 26, %d foods, largest deviations: sugar %+.1f %% (%s), fat %+.1f %% (%s), water %+.1f g/100 g (%s), density %+.1f %% (%s)",
		len(usdaFoods), sugar.value, sugar.of, fat.value, fat.of, water.value, water.of, density.value, density.of)
}

// Distilled spirits of the same table: 100 less water and carbohydrate is the
// alcohol, so that the figure is worked out rather than read.
func TestSpiritsAgainstUSDA(t *testing.T) {
	alcohol := map[float64]float64{ // % vol (half the proof): g/100 g
		40: 33.4, // NDB 14037
		43: 36.0, // NDB 14550
		45: 37.9, // NDB 14551
		47: 39.7, // NDB 14532
		50: 42.5, // NDB 14533
	}
	seen := map[float64]int{}
	var far largest
	for _, p := range loadCatalogue(t).Profiles() {
		want, ok := alcohol[p.ABV.Value]
		if !ok || p.Class.Part() != flavor.PartBase || p.Sugar.Value > 1 {
			continue
		}
		seen[p.ABV.Value]++
		got := p.ABV.Value * mix.EthanolDensity / p.DensityGPerML
		far.see(p.ID, got-want)
		assert.InDelta(t, want, got, tableAlcohol, p.ID)
	}
	for _, strength := range sortedKeys(alcohol) {
		got := 100 * mix.MassFraction(strength/100)
		far.see("ethanol and water", got-alcohol[strength])
		assert.InDelta(t, alcohol[strength], got, tableAlcohol, "%v %% vol", strength)
	}
	t.Logf("USDA SR 26, spirits at %v: largest deviation %+.2f g of alcohol per 100 g (%s)", seen, far.value, far.of)
}

// acidity is a published acidity: a mean and one standard deviation, or a range
// with sd zero.
type acidity struct {
	record    string
	as        string // acid that the figure is expressed as
	low, high float64
	source    string
}

// Acids per gram of citric acid with as much acid hydrogen, IUPAC weights.
const (
	malicPerCitric    = 67.04 / 64.04
	tartaricPerCitric = 75.04 / 64.04
)

const (
	penniston = "Penniston et al., J Endourol 22:567, 2008, results table; read in a transcription"
	karadeniz = "Karadeniz, Turk J Agric For 28:267, 2004; abstract read"
	krueger   = "Krueger, J AOAC Int 95:163, 2012; abstract read: 1.25 g/100 g, SD 0.32, at 1.065 g/mL"
)

// publishedAcidity holds g/L. Means stand as mean less and plus one SD.
var publishedAcidity = []acidity{
	{"lemon-juice", "citric itself", 48.0 - 3.82, 48.0 + 3.82, penniston},
	{"lime-juice", "citric itself", 45.86 - 6.86, 45.86 + 6.86, penniston},
	{"orange-juice", "citric itself", 9.1 - 1.98, 9.1 + 1.98, penniston},
	{"bottled-lemon-juice", "citric itself", 34.1, 39.2, penniston + ", two brands"},
	{"bottled-lime-juice", "citric itself", 35.4 - 4, 51, penniston + ", one brand, to Ciqual 2025, code 2031: 5 g/100 g"},
	{"grapefruit-juice", "citric itself", 13.0, 25.0, "Ciqual 2025, code 2027: 1.3 g/100 g, to " + penniston + ", 25.0 for a red one"},
	{"mandarin-juice", "citric itself", 9.22 - 2.5, 9.22 + 2.5, karadeniz + ", mean of 6; the spread is ours"},
	{"pomegranate-juice", "citric", 13.3 - 3.4, 13.3 + 3.4, krueger},
	{"sparkling-lemonade", "citric", 1.0, 7.4, "Penniston et al., abstract read: lemonades and other drinks"},
	{"pineapple-juice", "citric", 6, 12, "composition reviews of pineapple, seen in a secondary text"},
	{"passion-fruit-juice", "citric", 28, 50, "Japan 2020: 2.8 g/100 g, to Seale and Sherman, 1960; Morton, 1987; upper end from memory"},
	{"passion-fruit", "citric", 24, 38, "Morton, Fruits of Warm Climates, 1987; from memory"},
	{"unsweetened-cranberry-juice", "citric", 16, 26, "Coppola et al., J AOAC 61:1490, 1978; from memory"},
	{"apple-juice", "malic", 3, 8, "AIJN Code of Practice; from memory"},
	{"raspberry", "citric", 12, 22, "AIJN Code of Practice; from memory"},
	{"raspberry-puree", "citric", 12, 22, "AIJN Code of Practice; from memory"},
	{"dry-white-wine", "tartaric", 5, 8, "Handbook of Enology; from memory"},
	{"rose-wine", "tartaric", 5, 8, "Handbook of Enology; from memory"},
	{"light-red-wine", "tartaric", 5, 8, "Handbook of Enology; from memory"},
	{"red-wine", "tartaric", 4.5, 8, "Handbook of Enology has 5 to 8; from memory, so half a gram of grace"},
	{"full-red-wine", "tartaric", 4.5, 8, "Handbook of Enology has 5 to 8; from memory, so half a gram of grace"},
	{"dry-vermouth", "tartaric", 3.5, 6, "Handbook of Enology; OIV; from memory"},
	{"sweet-vermouth", "tartaric", 3.5, 6, "Handbook of Enology; OIV; from memory"},
	{"white-wine-vinegar", "acetic", 60, 75, "Regulation (EU) No 1308/2013, Annex VII Part II point 17: 60 or more; from memory"},
	{"red-wine-vinegar", "acetic", 60, 75, "as for white"},
}

func TestAcidityAgainstPublications(t *testing.T) {
	c := loadCatalogue(t)
	var far largest
	for _, a := range publishedAcidity {
		p, ok := c.ByID(a.record)
		require.True(t, ok, a.record)
		citric := p.Acid.Value * mix.CitricOf(p.Acids)
		var got float64
		switch a.as {
		case "citric itself":
			got = p.Acid.Value * p.Acids.Citric
		case "citric":
			got = citric
		case "malic":
			got = citric * malicPerCitric
		case "tartaric":
			got = citric * tartaricPerCitric
		case "acetic":
			got = p.Acid.Value * p.Acids.Acetic
		default:
			t.Fatalf("%s: acid %q is not known", a.record, a.as)
		}
		assert.GreaterOrEqual(t, got, a.low, "%s as %s: %s", a.record, a.as, a.source)
		assert.LessOrEqual(t, got, a.high, "%s as %s: %s", a.record, a.as, a.source)
		far.see(a.record, (got-(a.low+a.high)/2)/((a.high-a.low)/2))
	}
	t.Logf("%d published acidities: the furthest from the middle of its range is %s, at %+.2f of the way to its end (1 is one SD or the end)", len(publishedAcidity), far.of, far.value)
}

// Sucrose in water at 20 °C, CRC Handbook of Chemistry and Physics: mass share,
// g/mL and g/L; read, attributed to the handbook.
func TestSyrupsAgainstCRC(t *testing.T) {
	c := loadCatalogue(t)
	var far largest
	for _, row := range []struct {
		record        string
		share         float64
		gPerML, gPerL float64
		tolerance     float64 // g/L
	}{
		{"simple-syrup", 0.50, 1.2295, 614.8, 0.05},
		{"low-sugar-syrup", 0.30, 1.1270, 338.1, 0.05},
		// The table steps from 60 % (771.9 g/L) to 70 % (943.1); between them
		// stands the equation of ICUMSA SPS-4.
		{"rich-simple-syrup", 2.0 / 3, mix.SyrupDensity(2.0 / 3), 2000.0 / 3 * mix.SyrupDensity(2.0/3), 1},
	} {
		p, ok := c.ByID(row.record)
		require.True(t, ok, row.record)
		assert.InDelta(t, row.gPerL, p.Sugar.Value, row.tolerance, row.record)
		assert.InDelta(t, row.gPerML, p.DensityGPerML, 0.0005, row.record)
		assert.InDelta(t, row.share, p.Sugar.Value/1000/p.DensityGPerML, 0.0015, row.record)
		far.see(row.record, p.DensityGPerML-row.gPerML)
	}
	t.Logf("CRC and ICUMSA sucrose tables: largest deviation of density %+.5f g/mL (%s)", far.value, far.of)
}

// 21 CFR 172.575, read: at most 83 parts per million of quinine in carbonated
// drinks. A mg/L in a drink a little heavier than water is less than that.
func TestQuinineInCarbonatedDrinks(t *testing.T) {
	const most = 83.0
	var far largest
	n := 0
	for _, p := range loadCatalogue(t).Profiles() {
		for _, m := range p.Materials {
			if !p.Carbonated || m.Material != "cinchona" {
				continue
			}
			n++
			far.see(p.ID, p.Bitter.Value+p.Bitter.Spread)
			assert.LessOrEqual(t, p.Bitter.Value+p.Bitter.Spread, most, p.ID)
			assert.Contains(t, p.Cautions, "quinine", p.ID)
		}
	}
	require.GreaterOrEqual(t, n, 7)
	t.Logf("%d carbonated drinks with quinine: the most, with one spread, is %.0f of %.0f mg/L (%s)", n, far.value, most, far.of)
}
