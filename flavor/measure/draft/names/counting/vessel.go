package counting

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
)

// What is sold by the bottle or the can, and poured whole: "1 can lager", "1 ginger beer".

// What one holds, in mL; common practice.
const (
	mixerBottleML = 200
	beerBottleML  = 330
	canML         = 330
	wineBottleML  = 750 // one of the sizes that 27 CFR 4.72 and Directive 2007/45/EC allow
	mostVessels   = 2.0
)

// vessels are words for what is sold whole.
var vessels = token.Words(`bottle bottles btl btls can cans`)

// vesselML is what a bottle or a can of an ingredient holds in mL; 0 where it is of no
// size that goes without saying.
func vesselML(p *flavor.Profile, word string) float64 {
	can := strings.HasPrefix(word, "can")
	switch {
	case p.Class == flavor.ClassSparklingWine || p.Class == flavor.ClassWine: // of a bowl or a jug
		if can || word == "" {
			return 0
		}
		return wineBottleML
	case !p.Carbonated:
		return 0
	case can:
		return canML
	case p.Class == flavor.ClassBeer || p.Class == flavor.ClassCider:
		return beerBottleML
	}
	return mixerBottleML
}

// wholeVessel takes a bottle or a can, and a lone number of what is sold by the bottle, as so
// many millilitres, and says so. It is false for anything else.
func (r *reader) wholeVessel(t *Task) bool {
	p, word := t.Base.Profile, t.Line.Measure
	named := vessels[word]
	if !named && (p == nil || !t.Whole() || t.Amount > mostVessels || !t.lone() || !r.metric(t) && !soldWhole(p)) {
		return false
	}
	ml := 0.0
	if p != nil {
		ml = vesselML(p, word)
	}
	if ml == 0 {
		if named {
			t.Fault = noUnit(word)
		}
		return named
	}
	if !named {
		word = "bottle"
	}
	t.Amount *= ml
	t.SetUnit(flavor.Millilitre, "“"+t.Line.Asked+"” is taken as "+measure.FormatAmount(t.Amount, flavor.Millilitre)+", what the "+strings.TrimSuffix(word, "s")+" holds; write how much of it goes in")
	return true
}

// mostPintABV is the strength in vol% of the strongest that bars pour by the pint; common practice.
const mostPintABV = 14

// pintOfStrong reports whether something is poured by the pint that no bar pours so.
func (r *reader) pintOfStrong(t *Task) bool {
	if slices.ContainsFunc(r.tasks, func(o *Task) bool {
		return o != t && (byTheQuart[o.Line.Measure] || o.Unit == flavor.Millilitre && o.Amount >= leastBowlML)
	}) { // of a bowl
		return false
	}
	return strings.HasPrefix(t.Line.Measure, "pint") && (t.Base.Profile == nil || t.Base.Profile.ABV.Value > mostPintABV)
}

// leastBowlML is from how much of one thing on a draft is that of a bowl; common practice.
const leastBowlML = 1000

// byTheQuart are measures that only what is made for many is poured by.
var byTheQuart = token.Words(`qt qts quart quarts bottle bottles btl btls l lt ltr litre litres liter liters`)

// noUnit is the fault of a measure that nothing tells the size of.
func noUnit(word string) *flavor.DataFault {
	f := measure.Invalid("unit", word, "%q is no unit of the bar; write the amount in oz, ml or cl", word)
	f.Suggest = []string{string(flavor.Ounce), string(flavor.Millilitre), string(flavor.Centilitre)}
	return f
}

// lone reports whether a number stands before a name with nothing between them.
func (t *Task) lone() bool {
	l := t.Line
	return t.Bare() && l.Measure == "" && l.Figures && !l.Point && l.AmountAt.Start < l.NameAt.Start && !l.After
}

// soldWhole reports whether so little of an ingredient as an ounce is hardly ever poured:
// beer, tonic and ginger beer.
func soldWhole(p *flavor.Profile) bool {
	return p.Class == flavor.ClassBeer || p.Class == flavor.ClassSoda && (strings.Contains(p.Name, "tonic") || strings.Contains(p.Name, "ginger beer"))
}

// EspressoML is a shot of espresso; common practice.
const EspressoML = 30.0
