package counting

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/jargon"
)

// Where the unit of a bare number lies: common practice.
const (
	MostOunces   = 6.0  // a bare number up to this may be ounces
	LeastMillis  = 10.0 // from this it may be millilitres
	mostBase     = 3.0  // ounces of a spirit that fit one drink
	mostOfEach   = 2.0  // and of each of several spirits
	mostBlend    = 4.5  // which make one drink of the tropics together
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
	fewLeaves    = 3.0 // fewer of a herb are sprigs
	mostLeaves   = 40.0
	fewBerries   = 3.0  // so many ounces of juice would fill the glass
	mostJuiceOz  = 4.0  // ounces of a juice that lengthen a drink
	smallML      = 12.0 // mL of one fruit as small as a grape or a berry
	leastShort   = 50.0 // mL of the smallest drink
	mostShort    = 300.0
	partsOfWhole = 1e-9
)

// dashedBeside reports whether a small number without a unit stands on the line of bitters
// that are dashed, beside millilitres, and may mean bitters: "2 dashes aromatic + 1 orange".
func (r *reader) dashedBeside(t *Task) bool {
	at := slices.Index(r.tasks, t)
	if at < 1 || !t.Whole() || t.Amount > mostBeside || jargon.ByDash(flavor.NormaliseName(t.Line.Name)) == "" || !r.metric(t) {
		return false
	}
	before := r.tasks[at-1]
	return before.Line.Number == t.Line.Number && before.Line.Unit == flavor.Dash
}

// mostBeside is the most dashes that are counted without the word; common practice.
const mostBeside = 3

// ask is the fault of a bare number that nothing tells the unit of.
func (t *Task) ask(why string) *flavor.DataFault {
	w := measure.FormatAmount(t.Amount, "")
	f := measure.Invalid("unit", t.Line.Name, "%q has the number %s and no unit, and %s; write it after the number, such as \"%s oz\" or \"%s ml\"", t.Line.Name, w, why, w, w)
	f.Suggest = []string{string(flavor.Ounce), string(flavor.Millilitre), string(flavor.Centilitre), string(flavor.Dash)}
	if p := t.Base.Profile; p != nil {
		f.Suggest = f.Suggest[:0]
		for _, u := range measure.UnitsFor(p) {
			f.Suggest = append(f.Suggest, string(u))
		}
	}
	return f
}

// reader gives the bare numbers of one draft their units.
type reader struct {
	tasks []*Task
	draft *draft.Draft

	stated []flavor.Unit // of jigger pours
	open   []*Task       // bare numbers of what is poured
	habit  bool          // some pour has surely lost its unit
}

// Units gives every bare number of a draft its unit: what it counts, or else what the other lines
// are poured in. It says in which unit those are read that count nothing, and nothing if there are
// none; what nothing tells the unit of gets a fault.
func Units(tasks []*Task, d *draft.Draft) (note string) {
	r := &reader{tasks: tasks, draft: d}
	r.pints()
	for _, t := range tasks {
		if t.Fault == nil {
			r.sort(t)
		}
	}
	if d.Headed != "" { // whatever single cells or lines state
		r.stated = []flavor.Unit{d.Headed}
		r.habit = true
	}
	r.open = r.countFruit(r.open, r.stated, r.habit)
	if len(r.open) == 0 {
		return ""
	}
	u, why := r.unitOf(r.open, r.stated)
	if u == "" {
		for _, t := range r.open {
			t.Fault = t.ask(why)
		}
		return ""
	}
	for _, t := range r.open {
		if reason := unfit(t, u); reason != "" && !r.anise(t, u) {
			t.Fault = t.ask(reason)
			continue
		}
		t.SetUnit(u, "")
	}
	return "bare numbers are read as " + unitNames[u]
}

// sort takes the unit that a line states, gives a number its unit that counts something, and keeps
// what is left for when all other lines are known.
func (r *reader) sort(t *Task) {
	switch {
	case t.Line.Squeezed && t.juicy(): // its juice is worked out once the units of the draft are known
		t.Unit = cmp.Or(t.Unit, flavor.Piece)
	case r.pintOfStrong(t):
		t.Fault = noUnit(t.Line.Measure)
	case !t.Bare():
		if u := t.Unit; (u.Jigger() || u == flavor.PartUnit) && t.Line.Measure == "" && !slices.Contains(r.stated, u) {
			r.stated = append(r.stated, u)
		}
	case t.handful():
	case r.wholeVessel(t):
	case t.espresso() && (r.metric(t) || t.Amount == 1 && r.inCentilitres()):
		note := "a shot of coffee is taken as 1 oz"
		if doubled(t.Line.Asked) {
			t.Amount, note = 2*t.Amount, "a double shot of coffee is taken as 2 oz"
		}
		t.Amount *= EspressoML
		t.SetUnit(flavor.Millilitre, note)
	default:
		if u := r.counts(t); u != "" {
			t.SetUnit(u, countNote(t, u))
			return
		}
		r.open = append(r.open, t)
		r.habit = r.habit || t.poured()
	}
}

// spritz reports whether bitters are written as the aperitif of a spritz is: in the singular, beside bare numbers
// of sparkling wine, with no spirit in the drink. Common practice, no source.
func (r *reader) spritz(t *Task) bool {
	wine := false
	for _, o := range r.tasks {
		if o != t && o.Class().Part() == flavor.PartBase && o.Class() != flavor.ClassSparklingWine {
			return false
		}
		wine = wine || o.Bare() && o.Class() == flavor.ClassSparklingWine
	}
	return wine && strings.HasSuffix(strings.ToLower(t.Line.Name), "bitter")
}

// counts says what a bare number counts beside the other lines; it is empty for what is poured, and
// for what may be both.
func (r *reader) counts(t *Task) flavor.Unit {
	switch u := t.counts(); {
	case u == flavor.Dash && r.spritz(t): // "3 prosecco, 2 orange bitter, 1 soda"
		return ""
	case u == "" && r.dashedBeside(t):
		return flavor.Dash
	case u == "" && t.Class() == flavor.ClassSpice && t.juicy() && t.Amount == 1 && r.metric(t): // "1 star anise" beside millilitres
		return flavor.Piece
	case u == flavor.Piece && t.perhapsPoured() && r.metric(t):
		return ""
	case u == "" && r.manyPieces(t):
		return flavor.Piece
	default:
		return u
	}
}

// eachPieceML is how many millilitres of the rest of a batch come to one egg or one fruit at least;
// common practice, no source.
const eachPieceML = 40

// manyPieces reports whether a number of things by a name in the plural is that of a batch, such as
// "10 eggs" beside bottles of rum and milk.
func (r *reader) manyPieces(t *Task) bool {
	if t.Base.Profile == nil || !t.Whole() || !plural(t.Line.Name) || !comesIn(t.Base.Profile).piece {
		return false
	}
	rest := 0.0
	for _, o := range r.tasks {
		switch {
		case o == t || o.Fault != nil:
		case o.Unit.Jigger():
			if ml, err := measure.ToML(o.Amount, o.Unit, o.Base.Profile); err == nil {
				rest += ml
			}
		case o.Bare() && o.Amount >= LeastMillis:
			rest += o.Amount
		}
	}
	return rest >= eachPieceML*t.Amount
}

// poured reports whether a bare number that counts nothing is surely one of what is poured: no
// whole fruit, and nothing solid.
func (t *Task) poured() bool {
	if t.juicy() {
		return !t.Whole() && t.Amount != 0.5
	}
	return t.Base.Profile == nil || !t.Base.Profile.Class.Solid()
}

// anise reports whether a number is ounces of an anise spirit that is the base of its drink, and
// not rinsed with.
func (r *reader) anise(t *Task, u flavor.Unit) bool {
	return t.Class() == flavor.ClassAniseSpirit && u == flavor.Ounce && t.Amount <= mostBase && !r.based()
}

// espresso reports whether a bare number counts shots of espresso.
func (t *Task) espresso() bool {
	return t.Class() == flavor.ClassCoffee && t.Whole() && t.Amount <= mostShots && strings.Contains(strings.ToLower(t.Line.Name), "espresso")
}

// mostShots is the most shots of espresso in one drink; common practice.
const mostShots = 3

// based reports whether a draft pours a spirit.
func (r *reader) based() bool {
	return slices.ContainsFunc(r.tasks, func(t *Task) bool { return t.Class().Part() == flavor.PartBase })
}

// metric reports whether another pour of the draft is surely in millilitres.
func (r *reader) metric(t *Task) bool {
	return slices.ContainsFunc(r.tasks, func(o *Task) bool {
		if o == t {
			return false
		}
		return o.Unit == flavor.Millilitre || o.Bare() && o.Amount >= LeastMillis && o.Base.Profile != nil && !o.Base.Profile.Class.Solid()
	})
}

// inCentilitres reports whether another pour states centilitres: one of them is no
// espresso, but one shot is.
func (r *reader) inCentilitres() bool {
	return slices.ContainsFunc(r.tasks, func(o *Task) bool { return o.Line.Unit == flavor.Centilitre && !o.Line.UnitAt.Empty() })
}

var unitNames = map[flavor.Unit]string{flavor.Ounce: "ounces", flavor.Millilitre: "millilitres", flavor.Centilitre: "centilitres", flavor.PartUnit: "parts"}

func (t *Task) SetUnit(u flavor.Unit, note string) {
	t.Unit = u
	t.Infer(flavor.InferredUnit)
	if note != "" {
		t.Notes = append(t.Notes, note)
	}
}

// countNote says what a bare number was taken to count, where that is not plain.
func countNote(t *Task, u flavor.Unit) string {
	switch u {
	case flavor.Piece:
		if t.juicy() {
			return wholeFruit(t)
		}
	case flavor.Dash, flavor.Leaf, flavor.Sprig, flavor.Slice:
		return t.Line.Asked + " read as " + measure.FormatAmount(t.Amount, u)
	}
	return ""
}

// countFruit takes bare numbers of fruit as whole fruit where the draft states
// the units of everything that is poured, or muddles it.
func (r *reader) countFruit(open []*Task, stated []flavor.Unit, habit bool) []*Task {
	return slices.DeleteFunc(open, func(t *Task) bool {
		handful := t.Amount <= mostPieces && (t.Whole() || t.Amount == 0.5 && !t.Line.Point || t.Line.Times > 0)
		share := t.Amount < 1 && !t.Line.Point && len(stated) == 1 && stated[0] == flavor.Millilitre // "1/6 lime": nobody pours less than a millilitre
		muddled := r.draft.Muddle && t.juicy() && t.small()
		if t.juicy() && (halfOf(t) || share) { // "half a lime"
			t.SetUnit(flavor.Piece, wholeFruit(t))
			return true
		}
		if !t.juicy() || !handful || habit && !muddled {
			return false
		}
		if len(stated) == 0 && !r.draft.Muddle && !hasPieces(r.draft) {
			return false
		}
		t.SetUnit(flavor.Piece, wholeFruit(t))
		return true
	})
}

// halfOf reports whether an amount is written as a part of one thing: "half a lime".
func halfOf(t *Task) bool {
	l := t.Line
	return !l.Figures && strings.HasPrefix(strings.ToLower(l.Asked), "half a ")
}

func wholeFruit(t *Task) string {
	return t.Line.Asked + " read as the whole fruit; write \"oz\" or \"ml\" for its juice"
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

// doubled reports whether words say that a shot is a double one.
func doubled(asked string) bool {
	words := strings.Fields(strings.ToLower(asked))
	return slices.Contains(words, "double") || slices.Contains(words, "doppio") || slices.Contains(words, "dbl")
}
