package reading

import (
	"cmp"
	"counterpour/flavor/measure/draft/tongue"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/naming"
)

// Where the unit of a bare number lies: common practice.
const (
	mostOunces   = 6.0  // a bare number up to this may be ounces
	leastMillis  = 10.0 // from this it may be millilitres
	mostBase     = 3.0  // ounces of a spirit that fit one drink
	mostAll      = 7.5  // ounces of everything short that fit one drink
	leastOfMany  = 5.0  // millilitres that a jigger still measures beside larger pours
	mostCentis   = 20.0
	mostForeign  = 9.0 // a bare number up to this may be centilitres where no English is written
	mostParts    = 12.0
	mostPieces   = 4.0 // whole fruits that one drink takes
	mostBitters  = 10.0
	mostDashes   = 6.0 // of bitters whose name is not known
	mostEggs     = 3.0
	mostBerries  = 30.0
	mostLeaves   = 40.0
	fewBerries   = 3.0  // so many ounces of juice would fill the glass
	mostJuiceOz  = 4.0  // ounces of a juice that lengthen a drink
	smallML      = 12.0 // mL of one fruit as small as a grape or a berry
	leastShort   = 50.0 // mL of the smallest drink
	mostShort    = 300.0
	partsOfWhole = 1e-9
)

// task is one line on its way to a pour.
type task struct {
	laid     bool // it is laid on the drink, and no pour
	line     *entry.Line
	base     naming.Found // the name, wherever it stands
	unit     flavor.Unit
	amount   float64
	inferred []string
	notes    []string
	fault    *flavor.Fault
	hit      naming.Found
}

func (t *task) infer(what string) {
	if !slices.Contains(t.inferred, what) {
		t.inferred = append(t.inferred, what)
	}
}

// whole reports whether the amount is a number of things.
func (t *task) whole() bool { return math.Abs(t.amount-math.Round(t.amount)) < partsOfWhole }

// class is the class of what the name means, wherever it stands.
func (t *task) class() flavor.Class {
	if t.base.Profile == nil {
		return ""
	}
	return t.base.Profile.Class
}

// bare reports whether a number stands without a unit.
func (t *task) bare() bool { return t.line.Unit == "" }

// counts says what a bare number counts, whatever the other lines say: eggs,
// leaves, dashes. It is empty for what is poured, and for what may be both.
func (t *task) counts() flavor.Unit {
	p := t.base.Profile
	if p == nil {
		if strings.HasSuffix(strings.ToLower(t.line.Name), " bitters") && t.whole() && t.amount <= mostDashes { // of a kind unheard of
			return flavor.Dash
		}
		return ""
	}
	_, piece := p.Yield(flavor.Piece)
	_, leaf := p.Yield(flavor.Leaf)
	_, sprig := p.Yield(flavor.Sprig)
	_, slice := p.Yield(flavor.Slice)
	switch {
	case strings.EqualFold(t.line.Name, "bitter"): // one bitter is an aperitif, several are bitters
		return ""
	case p.Class == flavor.ClassCocktailBitters || p.Class == flavor.ClassTincture:
		if t.whole() && t.amount <= mostBitters {
			return flavor.Dash
		}
	case p.Class == flavor.ClassSavoury && !strings.Contains(strings.ToLower(t.line.Name), "brine"):
		if t.whole() && t.amount <= mostBitters {
			return flavor.Dash
		}
	case p.Class == flavor.ClassSpice && slice && piece && t.whole() && t.amount > 1 && t.amount < leastMillis:
		return flavor.Slice
	case p.Class == flavor.ClassEgg || p.Class == flavor.ClassFoam && piece:
		if t.amount <= mostEggs && (t.whole() || t.amount == 0.5 || t.amount == 0.25) {
			return flavor.Piece
		}
	case p.Class == flavor.ClassFreshHerb && leaf && t.whole() && t.amount >= 3 && t.amount <= mostLeaves:
		return flavor.Leaf
	case p.Class == flavor.ClassFreshHerb && sprig && t.whole() && t.amount < 3:
		return flavor.Sprig
	case t.juicy():
		if t.fruits() {
			return flavor.Piece
		}
	case piece && (t.line.Muddled || t.line.Cut) && t.amount <= mostPieces:
		return flavor.Piece
	case piece && t.amount <= mostBerries && (t.whole() || t.amount == 0.5):
		return flavor.Piece
	case slice && p.Class.Solid() && t.whole():
		return flavor.Slice
	}
	return ""
}

// dashedBeside reports whether a small number without a unit stands on the line of bitters
// that are dashed, beside millilitres, and may mean bitters: "2 dashes aromatic + 1 orange".
func (r *resolver) dashedBeside(t *task) bool {
	at := slices.Index(r.tasks, t)
	if at < 1 || !t.whole() || t.amount > mostBeside || naming.ByDash(flavor.NormaliseName(t.line.Name)) == "" || !r.metric(t) {
		return false
	}
	before := r.tasks[at-1]
	return before.line.Number == t.line.Number && before.line.Unit == flavor.Dash
}

// mostBeside is the most dashes that are counted without the word; common practice.
const mostBeside = 3

// perhapsPoured reports whether a count of fruit may be its volume: "raspberry 15" beside
// millilitres is no fifteen berries.
func (t *task) perhapsPoured() bool {
	return t.class() == flavor.ClassFruit && !t.line.Muddled && !t.line.Cut && t.amount >= leastMillis && !plural(t.line.Name)
}

// juicy reports whether the name is a fruit that is as likely to be its juice.
func (t *task) juicy() bool {
	p := t.base.Profile
	if p == nil || p.Class != flavor.ClassFruit && p.Class != flavor.ClassSpice {
		return false
	}
	return naming.Pressed(t.line.Name) != ""
}

// several reports whether a name says several of a fruit, "2 fresh limes", which is no
// juice.
func (t *task) several() bool {
	return t.bare() && plural(t.line.Name) && strings.HasSuffix(naming.Pressed(t.line.Name), " juice")
}

// fruits reports whether a bare number of what may be juice is surely a number of
// fruits: they are muddled, or the word says several, or they are as small as a
// grape and the number is whole.
func (t *task) fruits() bool {
	p := t.base.Profile
	handful := t.whole() || t.amount == 0.5
	switch many := plural(t.line.Name); {
	case (t.line.Muddled || t.line.Cut) && t.amount <= mostPieces, many && handful && t.amount <= mostPieces:
		return true
	case !t.small() || !t.whole():
		return false
	case many:
		return t.amount <= mostBerries
	case p.Class == flavor.ClassSpice:
		return t.amount > 1 && t.amount < leastMillis
	}
	full, _ := naming.Lengthen(flavor.NormaliseName(t.line.Name))
	if strings.HasSuffix(naming.ByVolume(full), " juice") && t.amount <= mostJuiceOz { // "3 pineapple"
		return false
	}
	return t.amount >= fewBerries && t.amount < leastMillis
}

// small reports whether one piece is hardly a spoonful.
func (t *task) small() bool {
	y, ok := t.base.Profile.Yield(flavor.Piece)
	return ok && y.Amount.Value <= smallML
}

// plural reports whether the last word of a name says several.
func plural(name string) bool {
	w := strings.ToLower(name[strings.LastIndexByte(name, ' ')+1:])
	one := flavor.NormaliseName(w)
	return strings.HasSuffix(w, "s") && len(one) > 1 && len(one) < len(w) && strings.HasPrefix(w, one[:len(one)-1])
}

// ask is the fault of a bare number that nothing tells the unit of.
func (t *task) ask(why string) *flavor.Fault {
	w := measure.FormatAmount(t.amount, "")
	f := measure.Invalid("unit", t.line.Name, "%q has the number %s and no unit, and %s; write it after the number, such as \"%s oz\" or \"%s ml\"", t.line.Name, w, why, w, w)
	f.Suggest = []string{string(flavor.Ounce), string(flavor.Millilitre), string(flavor.Centilitre), string(flavor.Dash)}
	if p := t.base.Profile; p != nil {
		f.Suggest = f.Suggest[:0]
		for _, u := range measure.UnitsFor(p) {
			f.Suggest = append(f.Suggest, string(u))
		}
	}
	return f
}

// inferUnits gives every bare number its unit: what it counts, or else what the
// other lines are poured in.
func (r *resolver) inferUnits() {
	var stated []flavor.Unit // of jigger pours
	var open []*task         // bare numbers of what is poured
	habit := false           // some pour has surely lost its unit
	for _, t := range r.tasks {
		switch {
		case t.fault != nil:
		case t.line.Squeezed && t.juicy(): // see squeeze
			t.unit = cmp.Or(t.unit, flavor.Piece)
		case !t.bare():
			if u := t.unit; (u.Jigger() || u == flavor.PartUnit) && t.line.Measure == "" && !slices.Contains(stated, u) {
				stated = append(stated, u)
			}
		case r.wholeVessel(t):
		default:
			if t.espresso() && (r.metric(t) || t.amount == 1 && r.inCentilitres()) {
				t.amount *= espressoML
				t.setUnit(flavor.Millilitre, "a shot of coffee is taken as 1 oz")
				continue
			}
			u := t.counts()
			if u == "" && r.dashedBeside(t) {
				u = flavor.Dash
			}
			if u == "" && t.class() == flavor.ClassSpice && t.juicy() && t.amount == 1 && r.metric(t) { // "1 star anise" beside millilitres
				u = flavor.Piece
			}
			if u == flavor.Piece && t.perhapsPoured() && r.metric(t) {
				u = ""
			}
			if u != "" {
				t.setUnit(u, countNote(t, u))
				continue
			}
			open = append(open, t)
			habit = habit || t.juicy() && !t.whole() && t.amount != 0.5 || !t.juicy() && (t.base.Profile == nil || !t.base.Profile.Class.Solid())
		}
	}
	if r.draft.Headed != "" { // whatever single cells or lines state
		stated = []flavor.Unit{r.draft.Headed}
		habit = true
	}
	open = r.countFruit(open, stated, habit)
	if len(open) == 0 {
		return
	}
	u, why := r.unitOf(open, stated)
	if u == "" {
		for _, t := range open {
			t.fault = t.ask(why)
		}
		return
	}
	for _, t := range open {
		if reason := unfit(t, u, stated); reason != "" && !(t.class() == flavor.ClassAniseSpirit && u == flavor.Ounce && t.amount <= mostBase && !r.based()) {
			t.fault = t.ask(reason)
			continue
		}
		t.setUnit(u, "")
	}
	r.note("bare numbers are read as " + unitNames[u])
}

// espresso reports whether a bare number counts shots of espresso.
func (t *task) espresso() bool {
	return t.class() == flavor.ClassCoffee && t.whole() && t.amount <= mostShots && strings.Contains(strings.ToLower(t.line.Name), "espresso")
}

// mostShots is the most shots of espresso in one drink; common practice.
const mostShots = 3

// based reports whether a draft pours a spirit.
func (r *resolver) based() bool {
	return slices.ContainsFunc(r.tasks, func(t *task) bool { return t.class().Part() == flavor.PartBase })
}

// metric reports whether another pour of the draft is surely in millilitres.
func (r *resolver) metric(t *task) bool {
	return slices.ContainsFunc(r.tasks, func(o *task) bool {
		if o == t {
			return false
		}
		return o.unit == flavor.Millilitre || o.bare() && o.amount >= leastMillis && o.base.Profile != nil && !o.base.Profile.Class.Solid()
	})
}

// inCentilitres reports whether another pour states centilitres: one of them is no
// espresso, but one shot is.
func (r *resolver) inCentilitres() bool {
	return slices.ContainsFunc(r.tasks, func(o *task) bool { return o.line.Unit == flavor.Centilitre && !o.line.UnitAt.Empty() })
}

var unitNames = map[flavor.Unit]string{flavor.Ounce: "ounces", flavor.Millilitre: "millilitres", flavor.Centilitre: "centilitres", flavor.PartUnit: "parts"}

func (t *task) setUnit(u flavor.Unit, note string) {
	t.unit = u
	t.infer(flavor.InferredUnit)
	if note != "" {
		t.notes = append(t.notes, note)
	}
}

// countNote says what a bare number was taken to count, where that is not plain.
func countNote(t *task, u flavor.Unit) string {
	switch u {
	case flavor.Piece:
		if t.juicy() {
			return wholeFruit(t)
		}
	case flavor.Dash, flavor.Leaf, flavor.Sprig, flavor.Slice:
		return t.line.Asked + " read as " + measure.FormatAmount(t.amount, u)
	}
	return ""
}

// countFruit takes bare numbers of fruit as whole fruit where the draft states
// the units of everything that is poured, or muddles it.
func (r *resolver) countFruit(open []*task, stated []flavor.Unit, habit bool) []*task {
	return slices.DeleteFunc(open, func(t *task) bool {
		handful := t.amount <= mostPieces && (t.whole() || t.amount == 0.5 && !t.line.Point || t.line.Times > 0)
		share := t.amount < 1 && !t.line.Point && len(stated) == 1 && stated[0] == flavor.Millilitre // "1/6 lime": nobody pours less than a millilitre
		muddled := r.draft.Muddle && t.juicy() && t.small()
		if t.juicy() && (halfOf(t) || share) { // "half a lime"
			t.setUnit(flavor.Piece, wholeFruit(t))
			return true
		}
		if !t.juicy() || !handful || habit && !muddled {
			return false
		}
		if len(stated) == 0 && !r.draft.Muddle && !hasPieces(r.draft) {
			return false
		}
		t.setUnit(flavor.Piece, wholeFruit(t))
		return true
	})
}

// halfOf reports whether an amount is written as a part of one thing: "half a lime".
func halfOf(t *task) bool {
	l := t.line
	return !l.Figures && strings.HasPrefix(strings.ToLower(l.Asked), "half a ")
}

func wholeFruit(t *task) string {
	return t.line.Asked + " read as the whole fruit; write \"oz\" or \"ml\" for its juice"
}

// hasPieces reports whether the draft is poured in anything but jiggers.
func hasPieces(d *draft.Draft) bool {
	for i := range d.Lines {
		if d.Lines[i].Unit != "" {
			return true
		}
	}
	return len(d.Lines) == 1
}

// unitOf returns the unit of the bare numbers of a draft, or why it cannot be
// told.
func (r *resolver) unitOf(open []*task, stated []flavor.Unit) (flavor.Unit, string) {
	switch len(stated) {
	case 1:
		return stated[0], ""
	case 0:
		return r.unitAlone(open)
	}
	return "", "other lines are written in more than one"
}

// unfit says why a bare number cannot be in the unit of the draft; empty if it
// can.
func unfit(t *task, u flavor.Unit, stated []flavor.Unit) string {
	beside := "beside " + unitNames[u] + " it may be something else"
	a := t.amount
	switch u {
	case flavor.Ounce:
		if a > mostOunces || a >= 1 && t.dosed() {
			return beside
		}
	case flavor.Millilitre:
		if a < leastOfMany && math.Abs(a-2.5) > partsOfWhole {
			return beside
		}
	case flavor.Centilitre:
		if a > mostCentis {
			return beside
		}
	case flavor.PartUnit:
		if a > mostParts {
			return beside
		}
	}
	return ""
}

// dosed reports whether the ingredient is one that bars count in dashes or drops, or
// rinse a glass with.
func (t *task) dosed() bool { return t.class().Dosed() }

// partsOfOne returns by what the amounts of a draft are whole, where they are fractions
// that make one drink together, as "2/3 gin, 1/3 lime cordial" do; 0 if they do not.
func partsOfOne(open []*task) float64 {
	sum := 0.0
	for _, t := range open {
		sum += t.amount
	}
	if len(open) < 2 || math.Abs(sum-1) > 0.02 {
		return 0
	}
	for n := 2.0; n <= mostParts; n++ {
		if !slices.ContainsFunc(open, func(t *task) bool { return math.Abs(t.amount*n-math.Round(t.amount*n)) > 0.05 }) {
			return n
		}
	}
	return 0
}

// foreign reports whether the names of a draft are written in another tongue: where
// English is not, bars measure in centilitres; common practice.
func foreign(open []*task) bool {
	return slices.ContainsFunc(open, func(t *task) bool {
		return t.base.Profile != nil && tongue.Foreign(t.line.Name, t.base.Profile.Name)
	})
}

// inHalves reports whether a name of the draft is written in a tongue whose bars measure
// in centilitres, and all amounts are whole or half ones: who measures in ounces pours
// quarters of them.
func (r *resolver) inHalves(open []*task) bool {
	return slices.ContainsFunc(r.tasks, func(t *task) bool { return tongue.Continental(t.line.Name) }) &&
		!slices.ContainsFunc(open, func(t *task) bool { return math.Abs(t.amount*2-math.Round(t.amount*2)) > partsOfWhole })
}

// unitAlone reads the unit of a draft in which no jigger pour has one: ounces
// where all are small, millilitres where they are large, parts where they are
// whole and a drink of so many ounces would not fit its glass.
func (r *resolver) unitAlone(open []*task) (flavor.Unit, string) {
	most, all, base, poured := 0.0, 0.0, 0.0, 0.0
	whole, comma := true, false
	if n := partsOfOne(open); n > 0 {
		for _, t := range open {
			t.amount *= n
			t.notes = append(t.notes, "“"+t.line.Asked+"” is read as "+measure.FormatAmount(math.Round(t.amount), flavor.PartUnit))
		}
		return flavor.PartUnit, ""
	}
	for _, t := range open {
		most = max(most, t.amount)
		poured += t.amount
		whole, comma = whole && t.whole(), comma || t.line.Comma
		if t.class().Part() == flavor.PartBase {
			base += t.amount
		}
		if t.class().Part() != flavor.PartLength && !t.line.After {
			all += t.amount
		}
	}
	ounces := most <= mostOunces && base <= mostBase && all <= mostAll
	centilitres := comma && poured*measure.CentilitreML >= leastShort && poured*measure.CentilitreML <= mostShort
	switch {
	case most >= leastMillis && !(centilitres && most <= mostCentis):
		return flavor.Millilitre, ""
	case most <= mostForeign && poured*measure.CentilitreML >= leastShort && (foreign(open) && (comma || !ounces) || r.inHalves(open)):
		return flavor.Centilitre, ""
	case centilitres && !ounces: // who writes a decimal comma measures metric
		return flavor.Centilitre, ""
	case centilitres:
		return "", "it may be centilitres or ounces"
	case ounces && !(whole && base >= mostBase && len(open) > 1):
		return flavor.Ounce, ""
	case whole && len(open) > 1:
		return flavor.PartUnit, ""
	case most > mostOunces:
		return "", "it is too much in ounces and too little in millilitres"
	}
	return "", "in ounces the drink would be very large"
}
