// Package dressing tells what is served with a drink and is none of its pours, on it, on the
// rim of its glass or by a step, and what of it a guest may have to avoid. Each thing counts by
// the record of the ingredient that it names, by the words of package carrier, or as plainly
// harmless. Anything else may carry whatever a guest avoids, until somebody has read its label.
package dressing

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/carrier"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/laid"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// Dress looks up what garnish, rim, glass and steps of a drink name. It fails only with the
// failure of the finder.
func Dress(s *flavor.Spec, f naming.Finder) error {
	s.Dressings, s.Dressed = nil, false
	if s.Garnish == "" && s.Rim == "" && s.Glass == "" && len(s.Steps) == 0 {
		return nil
	}
	s.Dressed = true
	d := &dresser{spec: s, names: naming.NewResolver(f)}
	for _, thing := range Things(s.Garnish) {
		d.laid(flavor.OnDrink, thing, 0)
	}
	for _, thing := range Things(s.Rim) {
		d.laid(flavor.OnRim, thing, 0)
	}
	d.told(s.Glass, 0)
	for i, step := range s.Steps {
		if m := tellsGarnish.FindStringSubmatch(step); m != nil {
			for _, thing := range Things(firstClause(m[1])) {
				d.laid(flavor.InStep, thing, i)
			}
		}
		d.told(step, i)
	}
	return d.names.Err()
}

// Notes says of each thing that is laid on the drink and may as well be poured that it is not counted.
func Notes(s *flavor.Spec) (out []string) {
	for i := range s.Dressings {
		d := &s.Dressings[i]
		liquid := slices.ContainsFunc(d.Records, func(p *flavor.Profile) bool { return !p.Class.Solid() && p.Class != flavor.ClassWater })
		if d.Spot == flavor.OnDrink && (liquid || d.Profile.ABV.Value > flavor.NoAlcoholABV && misted(d.Said)) {
			out = append(out, "“"+d.Said+"” is kept as garnish, and its amount is not counted; write it on a line of its own, with an amount, to have it poured")
		}
	}
	return out
}

// misted reports whether words measure what goes on top by the spritz, the float or the splash.
func misted(said string) bool {
	return slices.ContainsFunc(carrier.Words(said), func(w string) bool {
		u, _ := measure.ParseUnit(w)
		return u == flavor.Spritz || u == flavor.Float || u == flavor.Splash
	})
}

// tellsGarnish is a step that says what is laid on the drink.
var tellsGarnish = pattern.Of(`(?i)^\W*(?:garnish(?:ed)?|decorate|dress)\b(?:\s+(?:it|the drink|the glass))?(?:\s*:|\s+(?:with|by))?\s*(.+)$`)

// firstClause is what stands before the end of a sentence or another instruction.
func firstClause(text string) string {
	if at := endsClause.FindStringIndex(text); at != nil {
		return text[:at[0]]
	}
	return text
}

var endsClause = pattern.Of(`(?i)[.!;](?:\s|$)|,?\s+(?:and|then)\s+(?:then\s+)?(?:serve|enjoy|drink|pour|strain)\b|\s+before serving`)

// parts stand between two things that are laid on a drink.
var parts = pattern.Of(`(?i)\s*[,;|•\n]\s*|\s*[&+/]\s*|\s+(?:and|or|plus|with)\s+`)

// Things parts what is laid on a drink into single things.
func Things(text string) []string {
	text = fraction.ReplaceAllString(halfAndHalf.ReplaceAllString(text, "half-and-half"), "$1\u2044$2")
	var out []string
	for _, t := range parts.Split(text, -1) {
		if t = strings.Trim(t, " .\t()[]–—-"); t != "" && !nothing.Has(strings.ToLower(t)) {
			if len(out) > 0 && onlyManner(t) { // "lemon twist, expressed"
				out[len(out)-1] += ", " + t
				continue
			}
			out = append(out, strings.ReplaceAll(t, "\u2044", "/"))
		}
	}
	return out
}

// onlyManner reports whether words name nothing, and say how what stands before them is laid.
func onlyManner(text string) bool {
	return !slices.ContainsFunc(carrier.Words(text), func(w string) bool { return !manner.Has(w) && !passes(w) })
}

var (
	halfAndHalf = pattern.Of(`(?i)half and half`)
	fraction    = pattern.Of(`(\d)/(\d)`)
	nothing     = vocabulary.SetOf("none", "nothing", "no garnish", "no rim", "n/a", "na")
)

type dresser struct {
	spec  *flavor.Spec
	names *naming.Resolver
}

// laid adds a thing that lies on the drink or the rim.
func (d *dresser) laid(spot flavor.Spot, said string, step int) {
	found := d.lookUp(said)
	where := string(spot)
	if spot == flavor.InStep {
		where = string(flavor.OnDrink)
	}
	p := found.profile(where + ": " + said)
	d.spec.Dressings = append(d.spec.Dressings, flavor.Dressing{Spot: spot, Said: said, Step: step, Laid: true, Profile: p, Records: found.records})
}

// told adds what a step, or the words for the glass, name that carries what no pour does and
// no garnish.
func (d *dresser) told(said string, step int) {
	c := carrier.Of(said)
	if c.None() {
		return
	}
	var marks []flavor.AllergenMark
	for _, m := range c.Marks {
		if !slices.ContainsFunc(d.spec.Held(), func(p *flavor.Profile) bool {
			return slices.Contains(p.AllergenMarks, m) || hasMark(p, m.Allergen) && m.Certainty != flavor.Contains
		}) {
			marks = append(marks, m)
		}
	}
	animal := slices.DeleteFunc(slices.Clone(c.Animal), func(a string) bool {
		return slices.ContainsFunc(d.spec.Held(), func(p *flavor.Profile) bool { return slices.Contains(p.Animal, a) })
	})
	if len(marks) == 0 && len(animal) == 0 {
		return
	}
	p := &flavor.Profile{ID: "step: " + strings.Join(c.Words, ", "), Name: "step: " + strings.Join(c.Words, ", "), AllergensKnown: true, AllergenMarks: marks, Animal: animal}
	d.spec.Dressings = append(d.spec.Dressings, flavor.Dressing{Spot: flavor.InStep, Said: said, Step: step, Profile: p})
}

func hasMark(p *flavor.Profile, a flavor.Allergen) bool {
	return slices.ContainsFunc(p.AllergenMarks, func(m flavor.AllergenMark) bool { return m.Allergen == a })
}

// finding is what is known of one thing.
type finding struct {
	records []*flavor.Profile
	carried carrier.Carried
	unknown bool // some word of it is known to nobody
	coconut bool
}

// lookUp looks the words of a thing up, the longest names first.
func (d *dresser) lookUp(said string) finding {
	var f finding
	words := carrier.Words(said)
	known, shaped := false, false
	if p, _, ok := d.names.Named(said); ok {
		f.records, known = append(f.records, p), true
	}
	f.carried = carrier.Of(said)
	for i := 0; i < len(words); {
		_, taken := carrier.At(words[i:])
		p, n := d.record(words[i:])
		if n > 1 || n == 1 && !harmless.Has(words[i]) && !shapes.Has(words[i]) && !manner.Has(words[i]) || n == 1 && counts(p) {
			f.records = append(f.records, p)
			known = true
		} else {
			n = 0
		}
		w := words[i]
		f.coconut = f.coconut || strings.HasPrefix(w, "coco") && strings.Contains(w, "nut") || w == "coco"
		switch {
		case n > 0 || taken > 0:
			known = known || taken > 0
			i += max(n, taken)
			continue
		case harmless.Has(w) || laid.Fruit(w):
			known = true
		case shapes.Has(w):
			shaped = shaped || complete.Has(w)
		case foreign(w):
			known = true
		case manner.Has(w), passes(w), w == "foam" && lies(words[:i]), w == "stuffed" && plainlyStuffed(words):
		default:
			f.unknown = true
		}
		i++
	}
	f.unknown = f.unknown || !known && !shaped
	if plainCherry(words) {
		if p, _, ok := d.names.Named("cocktail cherry"); ok {
			f.carried.Join(&carrier.Carried{Marks: p.AllergenMarks, Animal: p.Animal})
		}
	}
	return f
}

// lies reports whether words end as a place does: "bitters on the foam".
func lies(before []string) bool {
	return len(before) > 0 && slices.Contains([]string{"on", "over", "onto", "the", "atop", "of"}, before[len(before)-1])
}

// plainlyStuffed reports whether it is told what an olive is stuffed with. Elsewhere it may be
// cheese, anchovy or almond.
func plainlyStuffed(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool {
		return slices.Contains([]string{"pimento", "pimiento", "garlic", "jalapeño", "jalapeno", "lemon", "pepper"}, w)
	})
}

// counts reports whether a record tells of anything that a guest may avoid; whether it holds
// alcohol is told by its words, since the name of a fruit may be short for its liqueur.
func counts(p *flavor.Profile) bool {
	return p != nil && p.Class.Solid() && (len(p.AllergenMarks) > 0 || len(p.Animal) > 0)
}

// plainCherry reports whether a cherry is meant that may well come from a jar.
func plainCherry(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return w == "cherry" || w == "cherries" }) && !slices.Contains(words, "fresh")
}

// foreign reports whether a word names what is plainly laid on drinks in another tongue.
func foreign(w string) bool {
	return laid.Noun(w) && !slices.Contains(strings.Fields(doubtful), w)
}

// doubtful are words for what is laid on a drink that may be made of anything.
const doubtful = `candy chip crisp crisps crumb crumbs dots biscuit cookie marshmallow marshmallows bacon dust dusting wing foam pickle pickles none`

// passes reports whether a word is a number, a unit, or says how a thing is in another tongue.
func passes(w string) bool {
	if _, ok := measure.ParseUnit(w); ok || tongue.Idle(flavor.NormaliseName(w)) {
		return true
	}
	return strings.Trim(w, "0123456789") == "" || w == "s"
}

// record returns the ingredient that words begin with, and how many words it takes.
func (d *dresser) record(words []string) (*flavor.Profile, int) {
	for n := min(naming.LongestName, len(words)); n > 0; n-- {
		if p, _, ok := d.names.Named(strings.Join(words[:n], " ")); ok {
			return p, n
		}
	}
	return nil, 0
}

// spirited is the strength, in % vol, that stands for alcohol of which nobody says how much.
var spirited = flavor.Figure{Value: 20, Spread: 15}

// profile is what is known of the thing, under a name.
func (f *finding) profile(name string) *flavor.Profile {
	p := &flavor.Profile{ID: name, Name: name, AllergensKnown: !f.unknown, Unread: f.unknown}
	all := f.carried
	for _, r := range f.records {
		all.Join(&carrier.Carried{Marks: r.AllergenMarks, Animal: r.Animal})
		p.AllergensKnown = p.AllergensKnown && r.AllergensKnown
		p.Materials = append(p.Materials, r.Materials...)
		if r.ABV.Value > p.ABV.Value || p.ABV.Value == 0 && r.ABV.Spread > p.ABV.Spread {
			p.ABV = r.ABV
		}
	}
	p.AllergenMarks, p.Animal = all.Marks, all.Animal
	if !p.AllergensKnown && !f.unknown && len(f.records) > 0 {
		p.FreeOf = freeOfAll(f.records)
	}
	if f.carried.Alcohol && p.ABV.Value <= flavor.NoAlcoholABV {
		p.ABV = spirited
	}
	if f.coconut {
		p.Materials = append(p.Materials, flavor.MaterialShare{Material: "coconut", Intensity: 1})
	}
	return p
}

// freeOfAll lists the allergens that all records are known to be free of.
func freeOfAll(records []*flavor.Profile) (out []flavor.Allergen) {
	for _, a := range flavor.Allergens() {
		if !slices.ContainsFunc(records, func(p *flavor.Profile) bool { _, may := p.Allergen(a); return may }) {
			out = append(out, a)
		}
	}
	return out
}
