package reading

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// How large a drink is: what hardly anybody pours is said, and what no glass holds is asked.

// leastDrinkML and mostDrinkML are millilitres beyond which a draft is more likely
// in another unit; common practice.
const (
	leastDrinkML = 15.0
	mostDrinkML  = 700.0
	mostBaseML   = 150.0 // of one spirit
	mostSourML   = 90.0  // of one sour juice
)

// checkSize says so where all of a draft is hardly a sip, or fills a bottle, and asks where it
// is poured into a glass that holds no such amount.
func (r *resolver) checkSize(s *flavor.Spec, faults *flavor.DataFaults) {
	all := 0.0
	for i := range s.Pours {
		all += s.Pours[i].ML
	}
	if f := r.overflows(s, all); f != nil {
		*faults = append(*faults, f)
		return
	}
	if all > 0 && (all < leastDrinkML || all > mostDrinkML) {
		r.note("the whole drink is " + token.Decimals(all) + " ml; check the unit if you did not mean that")
		return
	}
	for i := range s.Pours {
		p := &s.Pours[i]
		if class := p.Profile.Class; class.Part() == flavor.PartBase && p.ML > mostBaseML || class == flavor.ClassSourJuice && p.ML > mostSourML {
			r.note(measure.FormatAmount(p.Amount, p.Unit) + " of " + p.Profile.Name + " is a lot for one drink; check the amount if you did not mean that")
		}
	}
}

// What a glass holds at most, in mL, with what ice and a generous hand add: common practice. A
// glass without ice is a small one.
const (
	mostStemmedML = 450.0
	mostGlassML   = 900.0
)

// overflows asks where all of a draft is more than the glass holds that one drink is poured
// into: the unit may be another, or the draft is one of many drinks and does not say so.
func (r *resolver) overflows(s *flavor.Spec, all float64) *flavor.DataFault {
	glass := serving.Of(r.draft.Glass)
	most := mostGlassML
	if glass.Service == flavor.Up {
		most = mostStemmedML
	}
	if glass.Glass == "" || all <= most || len(s.Pours) < leastTwice || r.forMany() {
		return nil
	}
	f := measure.Invalid("amount", token.Decimals(math.Round(all)), "the pours come to %s ml, which no %s holds; check the unit, or write how many drinks they make, such as \"serves 6\"", token.Decimals(math.Round(all)), glass.Glass)
	f.Location = measure.LineLocation(r.draft.Lines[0].Number)
	return f
}

// manyWords say that the amounts are those of more than one drink.
var manyWords = token.Words(`batch batches batched prebatch premix bottle bottles bottled btl serves serve servings serving portion portions pour pitcher pitchers jug jugs bowl keg kegs makes make yields yield litre litres liter liters l
ltr gallon large-format carafe decanter pax ppl people covers heads guests each per tap fridge freezer days day event party punch punches clarified clarify filter curdle drinks for ahead dilution water`)

// forMany reports whether a draft speaks of more than one drink.
func (r *resolver) forMany() bool {
	text := r.draft.String()
	return slices.ContainsFunc(token.Lex(nil, text, 0, len(text)), func(t token.Token) bool { return t.Kind == token.Word && manyWords[t.Text] })
}
