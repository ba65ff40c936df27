package tables

import (
	"fmt"
	"math"
	"strconv"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Factors of the rules.
const (
	saltPerSodium = 58.44 / 22.99 // molar masses of NaCl and Na
	// quininePerIBU is the quinine, in mg/L, that is as bitter as 1 mg/L of
	// iso-alpha-acids. From memory.
	quininePerIBU = 1.0
	// quininePerNaringin is the same for naringin in a juice, whose sugar and acid mask
	// part of it. From memory.
	quininePerNaringin = 0.08
	// tartaricWeight is the equivalent weight of tartaric acid, in which total acid is
	// expressed, and citricWeight that of citric acid: grams per mole of acid hydrogen,
	// IUPAC.
	tartaricWeight = 75.04
	citricWeight   = 64.04
)

// sample is the value of one field from one row.
type sample struct {
	value, spread float64
	weight        float64 // weight of the row in the average
	read          string  // the number in the table, with its unit
	plain         bool    // the figure itself, not computed
	remembered    bool    // a factor from memory was used
}

// context holds what a rule needs beside the row.
type context struct {
	vary  float64          // relative spread of foods
	acids flavor.AcidBlend // of the record
	plus  float64          // mass fraction of sugar added to the food
}

// rule computes one field from one row. ok is false if the row does not supply it.
type rule func(r *row, c context) (s sample, ok bool)

// rules are the rules of each table, by field.
var rules = map[string]map[string]rule{
	"usda": {
		"abv": alcohol, "sugar": perLitre("sugars"), "fat": perLitre("fat"), "texture": solids, "salt": sodium, "caffeine": caffeine,
	},
	"ciqual": {
		"abv": alcohol, "sugar": perLitre("sugars"), "fat": perLitre("fat"), "acid": perLitre("acids"), "salt": perLitre("salt"),
	},
	"acids":      {"acid": perLitre("total")},
	"market":     {"abv": median("abv"), "sugar": median("sugar"), "acid": totalAcid},
	"beer":       {"abv": mean("abv", 1), "bitter": mean("ibu", quininePerIBU)},
	"juices":     {"acid": citricAcid},
	"flavonoids": {"bitter": naringin, "tannin": teaTannin},
}

// density returns the density of a food in g/mL, computed from 100 g of it. Everything
// that is not water, alcohol or sugar counts like the other solids of a drink.
func density(r *row, c context) float64 {
	l := mix.Ledger{Ethanol: r.or0("alcohol"), Sugar: r.or0("sugars"), Fat: r.or0("fat")}
	water, given := r.get("water")
	if !given {
		water = 100 - l.Ethanol - l.Sugar - l.Fat - r.or0("acids") - r.or0("total")
	}
	l.Water = water
	l.Texture = math.Max(100-water-l.Ethanol-l.Sugar, l.Fat)
	mass := 100.0
	if c.plus > 0 {
		added := 100 * c.plus / (1 - c.plus)
		l.Sugar += added
		mass += added
	}
	return mass / l.VolumeML()
}

// gPerL converts g per 100 g of the food to g/L of what is poured.
func gPerL(r *row, c context, per100 float64) float64 {
	return 10 * per100 * (1 - c.plus) * density(r, c)
}

func perLitre(column string) rule {
	return func(r *row, c context) (sample, bool) {
		v, ok := r.get(column)
		if !ok {
			return sample{}, false
		}
		s := food(gPerL(r, c, v), c)
		if column == "sugars" && c.plus > 0 {
			s.value += 1000 * c.plus * density(r, c)
		}
		s.read, s.plain = number(v)+" g/100 g", v == 0 && c.plus == 0
		return s, true
	}
}

func food(v float64, c context) sample { return sample{value: v, spread: v * c.vary, weight: 1} }

func solids(r *row, c context) (sample, bool) {
	protein, ok := r.get("protein")
	if !ok {
		return sample{}, false
	}
	v := protein + r.or0("fat") + r.or0("fibre")
	s := food(gPerL(r, c, v), c)
	s.read, s.plain = number(v)+" g/100 g of fat, protein and fibre", v == 0
	return s, true
}

func sodium(r *row, c context) (sample, bool) {
	mg, ok := r.get("sodium")
	if !ok {
		return sample{}, false
	}
	s := food(gPerL(r, c, mg*saltPerSodium/1000), c)
	s.read, s.plain = number(mg)+" mg of sodium/100 g", mg == 0
	return s, true
}

func caffeine(r *row, c context) (sample, bool) {
	mg, ok := r.get("caffeine")
	if !ok || mg == 0 {
		return sample{}, false
	}
	s := food(gPerL(r, c, mg), c) // mg per 100 g convert to mg/L like g to g/L
	s.read = number(mg) + " mg/100 g"
	return s, true
}

func alcohol(r *row, c context) (sample, bool) {
	g, ok := r.get("alcohol")
	if !ok {
		return sample{}, false
	}
	s := food(gPerL(r, c, g)/10/mix.EthanolDensity, c)
	s.read, s.plain = number(g)+" g of alcohol/100 g", g == 0
	return s, true
}

// tails is the number of products from which the spread is taken from the middle eighty
// per cent, as the standard deviation of a normal distribution. The tails hold overproof
// and cask-strength products and novelties, most of which have records of their own.
// sdOfTenths is the distance between the 10th and the 90th percentile, in standard
// deviations.
const (
	tails      = 10
	sdOfTenths = 2.563
)

func median(column string) rule {
	return func(r *row, c context) (sample, bool) {
		v, ok := r.get(column)
		n := r.or0(column + "_n")
		spread := r.or0(column + "_sd")
		if n >= tails {
			spread = (r.or0(column+"_p90") - r.or0(column+"_p10")) / sdOfTenths
		}
		return sample{value: v, spread: spread, weight: n, plain: true, read: fmt.Sprintf("median of %g", n)}, ok
	}
}

// citricAcid computes the total acid from the citric acid and its share in the record's
// blend.
func citricAcid(r *row, c context) (sample, bool) {
	v, ok := r.get("citric")
	if !ok || c.acids.Citric == 0 {
		return sample{}, false
	}
	s := food(v/c.acids.Citric, c)
	if sd := r.or0("citric_sd"); sd > 0 {
		s.spread = sd / c.acids.Citric
	}
	s.read = number(v) + " g/L of citric acid"
	return s, true
}

func totalAcid(r *row, c context) (sample, bool) {
	s, ok := median("acid")(r, c)
	if !ok || c.acids == (flavor.AcidBlend{Name: c.acids.Name}) {
		return sample{}, false
	}
	weighed := citricWeight / tartaricWeight / mix.CitricOf(c.acids)
	s.value, s.spread, s.plain = s.value*weighed, s.spread*weighed, false
	s.read += ", as tartaric acid"
	return s, true
}

func mean(column string, factor float64) rule {
	return func(r *row, _ context) (sample, bool) {
		v, ok := r.get(column)
		n := r.or0(column + "_n")
		return sample{value: factor * v, spread: factor * r.or0(column+"_sd"), weight: n, plain: column == "abv",
			remembered: column == "ibu", read: fmt.Sprintf("mean of %g", n)}, ok
	}
}

// naringin has no spread in the table. One standard deviation is taken as a third, so
// that fruits of one kind differ by up to two thirds (judged).
func naringin(r *row, _ context) (sample, bool) {
	mg, ok := r.get("naringin")
	v := 10 * mg * quininePerNaringin // mg per 100 g of juice, at about 1 g/mL
	return sample{value: v, spread: v / 3, weight: 1, remembered: true, read: number(mg) + " mg/100 g of naringin at most"}, ok
}

// teaTannin adds up the astringent compounds of a tea: its catechins and their products
// of oxidation.
func teaTannin(r *row, c context) (sample, bool) {
	catechins, ok := r.get("catechins")
	if !ok {
		return sample{}, false
	}
	mg := catechins + r.or0("theaflavins") + r.or0("thearubigins")
	s := food(gPerL(r, c, mg/1000), c)
	s.read = number(mg) + " mg/100 g of catechins, theaflavins and thearubigins"
	return s, true
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }
