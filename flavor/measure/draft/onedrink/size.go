package onedrink

import (
	"cmp"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// How large a drink is: what hardly anybody pours is said, and what no glass holds is asked.

// leastDrinkML and mostDrinkML are millilitres beyond which a draft is more likely
// in another unit; common practice.
const (
	leastSipML   = 5.0 // of a drink whose name tells the ratio of the rest: dashes alone are none
	leastDrinkML = 15.0
	mostDrinkML  = 700.0
	mostBaseML   = 150.0 // of one spirit
	mostSourML   = 90.0  // of one sour juice
)

// tellsRatio finds a ratio in a name: "5:1 martini", "50/50".
var tellsRatio = pattern.Of(`\d[ \t]*[:/][ \t]*\d`)

// Size returns a note for each thing that is odd about how much is poured, all of it hardly a sip
// or a bottle full; and the fault of a draft that its glass cannot hold, or of which hardly anything
// was read, nil if there is none. At tells which of the pours each line is: −1 if it is none.
func Size(d *draft.Draft, s *flavor.Spec, at []int) (notes []string, fault *flavor.DataFault) {
	all := 0.0
	for i := range s.Pours {
		all += s.Pours[i].ML
	}
	if f := overflows(d, s, all); f != nil {
		return nil, f
	}
	if f := cmp.Or(outOfScale(d, s, at, all), tooSweet(d, s, at, all), spooned(d, s, at)); f != nil {
		return nil, f
	}
	if !d.Labelled && tellsRatio.MatchString(d.Name) && all > 0 && all < leastSipML { // "5:1 martini, dash of bitters"
		p := &s.Pours[0]
		f := measure.Invalid("", d.Name, "%q is made of more than %s of %s; write what else is poured, each on a line with its amount", d.Name, measure.FormatAmount(p.Amount, p.Unit), p.Profile.Name)
		f.Location = measure.LineLocation(d.Lines[0].Number)
		return nil, f
	}
	if all > 0 && (all < leastDrinkML || all > mostDrinkML) {
		return []string{"the whole drink is " + token.Decimals(all) + " ml; check the unit if you did not mean that"}, nil
	}
	for i := range s.Pours {
		p := &s.Pours[i]
		if class := p.Profile.Class; class.Part() == flavor.PartBase && p.ML > mostBaseML || class == flavor.ClassSourJuice && p.ML > mostSourML {
			notes = append(notes, measure.FormatAmount(p.Amount, p.Unit)+" of "+p.Profile.Name+" is a lot for one drink; check the amount if you did not mean that")
		}
	}
	return notes, nil
}

// What a glass holds at most, in mL, with what ice and a generous hand add: common practice. A
// glass without ice is a small one.
const (
	mostStemmedML = 450.0
	mostGlassML   = 900.0
)

// overflows asks where all of a draft is more than the glass holds that one drink is poured
// into: the unit may be another, or the draft is one of many drinks and does not say so.
func overflows(d *draft.Draft, s *flavor.Spec, all float64) *flavor.DataFault {
	glass := serving.Of(d.Glass)
	most := mostGlassML
	if glass.Service == flavor.Up {
		most = mostStemmedML
	}
	if glass.Glass == "" || all <= most || len(s.Pours) < leastTwice || says(d, manyWords) || says(d, largeWords) {
		return nil
	}
	f := measure.Invalid("amount", token.Decimals(math.Round(all)), "the pours come to %s ml, which no %s holds; check the unit, or write how many drinks they make, such as \"serves 6\"", token.Decimals(math.Round(all)), glass.Glass)
	f.Location = measure.LineLocation(d.Lines[0].Number)
	return f
}

// MostInScaleML is the most that one pour of a drink has, in mL, whatever else is poured, without being asked
// about: common practice, no source.
const MostInScaleML = 400.0

// A pour that has more is out of scale from so many times all others on: a point or a unit was lost. What
// lengthens may be a large glass of beer. Common practice.
const (
	mostOfLengthML = 1200.0
	timesTheRest   = 8.0
	timesInOne     = 4.0 // of a draft that says how one drink is served
)

// outOfScale asks about a pour that dwarfs all others of a draft of one drink: "2 oz gin, 75 oz lemon". The
// parts of a syrup are no drink.
func outOfScale(d *draft.Draft, s *flavor.Spec, at []int, all float64) *flavor.DataFault {
	if len(s.Pours) < leastTwice || d.PoursOnly() {
		return nil
	}
	for i := range s.Pours {
		p, most := &s.Pours[i], MostInScaleML
		if p.Profile.Class.Part() == flavor.PartLength {
			most = mostOfLengthML
		}
		l, times := &d.Lines[max(0, slices.Index(at, i))], timesTheRest
		if l.Measure == "" && (d.Service != "" || d.Glass != "") { // a litre is poured into a bowl
			times = timesInOne
		}
		if p.ML > most && p.ML > times*(all-p.ML) {
			if says(d, manyWords) { // which takes a look at every word, and few drafts need it
				return nil
			}
			return askedFor(d, l, p, all-p.ML)
		}
	}
	return nil
}

// From so many mL on a syrup without a unit is asked about that is more than all of the base: it may be written
// in another unit, or by the spoon. Common practice.
const mostSweetML = 100.0

var syrups = map[flavor.Class]bool{flavor.ClassSyrup: true, flavor.ClassSpicedSyrup: true, flavor.ClassFruitSyrup: true}

// tooSweet asks about a syrup without a unit that is more than all of the base: "gin 2, lemon 1, simple 5".
func tooSweet(d *draft.Draft, s *flavor.Spec, at []int, all float64) *flavor.DataFault {
	base := 0.0
	for i := range s.Pours {
		if s.Pours[i].Profile.Class.Part() == flavor.PartBase {
			base += s.Pours[i].ML
		}
	}
	for i := range s.Pours {
		p, k := &s.Pours[i], slices.Index(at, i)
		if k < 0 || base == 0 || p.ML <= max(mostSweetML, base) || !syrups[p.Profile.Class] {
			continue
		}
		if l := &d.Lines[k]; l.Unit == "" && l.Figures && !l.AmountAt.Empty() {
			return askedFor(d, l, p, all-p.ML)
		}
	}
	return nil
}

// askedFor is the fault of a pour that dwarfs so many mL of all others. It suggests the amount with its point
// moved to where one drink may have so much.
func askedFor(d *draft.Draft, l *entry.Line, p *flavor.Pour, rest float64) *flavor.DataFault {
	poured := measure.FormatAmount(p.Amount, p.Unit) + " of " + p.Profile.Name
	f := measure.Invalid("amount", poured, "%s is %s ml, beside %s ml of all else; check the amount and its unit, or write how many drinks they make, such as \"serves 6\"",
		poured, token.Decimals(math.Round(p.ML)), token.Decimals(math.Round(rest)))
	f.Location = measure.LineLocation(l.Number)
	written := d.String()[l.AmountAt.Start:l.AmountAt.End]
	if stated, ok := token.Value(written); ok && stated == p.Amount {
		f.Value = written
		f.Suggest = []string{token.Decimals(stated / math.Pow(10, math.Ceil(math.Log10(p.ML/mostBaseML))))}
	}
	return f
}

// manyWords say that the amounts are those of more than one drink.
var manyWords = token.Words(`batch batches batched prebatch premix bottle bottles bottled btl serves serve servings serving portion portions pitcher pitchers jug jugs bowl keg kegs makes make yields yield
large-format carafe decanter pax ppl people covers heads guests each tap fridge freezer event party punch punches clarified clarify filter curdle drinks ahead dilution`)

// largeWords tell of many drinks only where all of them is more than a glass holds: litres, the water that thins
// a batch, and words that are said of one drink too.
var largeWords = token.Words(`per pour for day days litre litres liter liters l ltr gallon water`)

// says reports whether one of some words stands in a draft.
func says(d *draft.Draft, words map[string]bool) bool {
	text := d.String()
	return slices.ContainsFunc(token.Lex(nil, text, 0, len(text)), func(t token.Token) bool { return t.Kind == token.Word && words[t.Text] })
}
