package slip

import (
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Mistake is how a hand came to pour something else.
type Mistake int

// The mistakes: common practice, no source.
const (
	Doubled   Mistake = iota // poured twice
	Halved                   // poured once where twice was due
	Misread                  // to another mark of the jigger
	Miscount                 // a dash or a piece too many or too few
	ByEye                    // a filler of more than a jigger holds, and not measured
	Unstopped                // out of a dasher without its stopper
	Swapped                  // two amounts, each poured of the other
	Forgotten                // not poured
	Strength                 // syrup of another strength
	NumMistakes
)

// Slip is one mistake with one drink: the pours that it changes, and to what.
type Slip struct {
	Mistake Mistake
	Moved   []Moved
}

// Moved is a pour of the proper drink as the slip left it; the amount is 0 of what was
// forgotten.
type Moved struct {
	At         int
	Amount, ML float64
	Profile    *flavor.Profile
}

// On returns the drink with the slip.
func (s *Slip) On(proper *flavor.Spec) flavor.Spec {
	out := proper.Clone()
	for _, m := range s.Moved {
		p := &out.Pours[m.At]
		p.Amount, p.ML, p.Profile = m.Amount, m.ML, m.Profile
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.Amount == 0 })
	return out
}

// Touches reports whether the slip changes a pour.
func (s *Slip) Touches(at int) bool {
	return slices.ContainsFunc(s.Moved, func(m Moved) bool { return m.At == at })
}

// Mendable reports whether one other amount of one pour undoes the slip.
func (s *Slip) Mendable() bool {
	return s.Mistake != Swapped && s.Mistake != Forgotten && s.Mistake != Strength
}

// What hands do: common practice, no source.
var (
	ounceMarks  = []float64{0.25, 0.5, 0.75, 1, 1.5, 2}                           // of jiggers in ounces
	metricMarks = []float64{5, 7.5, 10, 15, 20, 22.5, 25, 30, 35, 40, 45, 50, 60} // and in millilitres
	eyeTimes    = []float64{0.5, 2.0 / 3, 1.5, 2}                                 // how far a glass is topped up wrong
)

const (
	jiggerML       = 62.0 // what a jigger holds, with room for 2 oz; more of a filler is poured by eye
	misreadUp      = 2.0  // the mark that is read in place of another is at most so many times it,
	misreadDown    = 3.0  // and at least one part in so many
	unstoppedTimes = 4.0  // as much as runs out of a dasher without its stopper
	mostDashes     = 8.0  // that a slip leaves of bitters and the like
	mostClassTimes = 1.5  // as much as proven drinks pour of a class in one glass, of all else
	swappedTimes   = 3.0  // two amounts that are swapped differ by at most so much
)

// Hand is what hands know of pouring: how much of each class anybody pours, and which
// syrups may be taken for each other.
type Hand struct {
	most   map[flavor.Class]float64 // the largest pour of each class, mL
	syrups []*flavor.Profile        // plain ones, of whatever strength
}

// NewHand returns the hand that pours drinks, over a stock.
func NewHand(drinks []*flavor.Spec, stock []*flavor.Profile) *Hand {
	return &Hand{mostOf(drinks), plainSyrups(drinks, stock)}
}

// Slips lists the mistakes that hands make with a drink and that leave no pour which
// nobody would make.
func (h *Hand) Slips(s *flavor.Spec) (out []Slip) {
	for i := range s.Pours {
		p := &s.Pours[i]
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok {
			continue
		}
		for _, x := range amountsBySlip(p) {
			if ml := x.amount * per; h.Pourable(p, ml) {
				out = append(out, Slip{x.mistake, []Moved{{i, x.amount, ml, p.Profile}}})
			}
		}
		if len(s.Pours) > 2 {
			out = append(out, Slip{Forgotten, []Moved{{At: i, Profile: p.Profile}}})
		}
		for _, other := range h.strengths(p.Profile) {
			out = append(out, Slip{Strength, []Moved{{i, p.Amount, p.ML, other}}})
		}
		for k := range i {
			if o := &s.Pours[k]; swappable(o, p) && h.Pourable(o, p.ML) && h.Pourable(p, o.ML) {
				out = append(out, Slip{Swapped, []Moved{{k, p.Amount, p.ML, o.Profile}, {i, o.Amount, o.ML, p.Profile}}})
			}
		}
	}
	return out
}

// bySlip is an amount of a pour, in its unit, and how it came about.
type bySlip struct {
	mistake Mistake
	amount  float64
}

// amountsBySlip lists the wrong amounts of one pour; each comes once, by the mistake that
// is likeliest.
func amountsBySlip(p *flavor.Pour) (out []bySlip) {
	if p.Unit.After() {
		return nil // as much as fits, or hardly any
	}
	add := func(m Mistake, amount float64) {
		known := func(x bySlip) bool { return math.Abs(x.amount-amount) < 1e-9 }
		if amount > 0 && amount != p.Amount && onTheGrid(amount, p.Unit) && !slices.ContainsFunc(out, known) {
			out = append(out, bySlip{m, amount})
		}
	}
	add(Doubled, 2*p.Amount)
	add(Halved, p.Amount/2)
	switch {
	case p.Unit.Jigger() && p.ML > jiggerML && p.Profile.Class.Part() != flavor.PartBase: // spirit goes by the jigger, twice if need be
		for _, times := range eyeTimes {
			add(ByEye, onGrid(times*p.Amount, p))
		}
	case p.Unit.Jigger():
		for _, mark := range marksOf(p.Unit) {
			if mark <= misreadUp*p.Amount+1e-9 && mark >= p.Amount/misreadDown-1e-9 {
				add(Misread, mark)
			}
		}
	default:
		add(Miscount, p.Amount+1)
		add(Miscount, p.Amount-1)
		if p.Unit == flavor.Dash {
			add(Unstopped, unstoppedTimes*p.Amount)
		}
	}
	return out
}

// onGrid is the amount that a hand can pour which is nearest.
func onGrid(amount float64, p *flavor.Pour) float64 {
	per, ok := measure.MLPerUnit(p.Unit, p.Profile)
	if !ok {
		return 0
	}
	return measure.Snap(amount*per, p.Unit, p.Profile)
}

// onTheGrid reports whether an amount is a multiple of what a hand can pour.
func onTheGrid(amount float64, u flavor.Unit) bool {
	steps := amount / measure.Step(u)
	return math.Abs(steps-math.Round(steps)) < 1e-6
}

func marksOf(u flavor.Unit) []float64 {
	switch u {
	case flavor.Ounce:
		return ounceMarks
	case flavor.Millilitre:
		return metricMarks
	case flavor.Centilitre:
		out := make([]float64, len(metricMarks))
		for i, ml := range metricMarks {
			out[i] = ml / measure.CentilitreML
		}
		return out
	}
	return nil
}

// Pourable reports whether anybody pours so much, in mL: bitters and the like have a most of
// their own, all else goes by the most of its class that a proven drink pours.
func (h *Hand) Pourable(p *flavor.Pour, ml float64) bool {
	if p.Profile.Class.Part() == flavor.PartSeasoning {
		return ml <= mostDashes*measure.DashML+1e-9
	}
	return ml <= mostClassTimes*h.most[p.Profile.Class]+1e-9
}

// mostOf is the largest pour of each class, in mL, that any of the drinks has.
func mostOf(specs []*flavor.Spec) map[flavor.Class]float64 {
	out := map[flavor.Class]float64{}
	for _, s := range specs {
		for i := range s.Pours {
			p := &s.Pours[i]
			out[p.Profile.Class] = max(out[p.Profile.Class], p.ML)
		}
	}
	return out
}

// swappable reports whether two amounts may be taken for each other: both by the jigger,
// in one unit, and not worlds apart.
func swappable(a, b *flavor.Pour) bool {
	return a.Unit == b.Unit && a.Unit.Jigger() && a.Amount != b.Amount && a.Profile != b.Profile &&
		max(a.Amount, b.Amount) <= swappedTimes*min(a.Amount, b.Amount)
}

// leastStronger is how many times the sugar of one syrup another holds that is of another
// strength; common practice: 2:1 holds some 1.4 times that of 1:1.
const leastStronger = 1.2

// strengths lists the syrups that are a plain syrup in another strength: made of the same
// sugars, and hardly smelling of anything.
func (h *Hand) strengths(p *flavor.Profile) (out []*flavor.Profile) {
	if !plainSyrup(p) {
		return nil
	}
	for _, o := range h.syrups {
		times := o.Sugar.Value / p.Sugar.Value
		if o.Sugars == p.Sugars && max(times, 1/times) >= leastStronger {
			out = append(out, o)
		}
	}
	return out
}

// smellsOf is the sum of intensities from which a syrup is one of something: common
// practice, no source.
const smellsOf = 3.0

// Smells reports whether a syrup is one of something.
func Smells(p *flavor.Profile) bool { return p.Aroma.Total() >= smellsOf }

func plainSyrup(p *flavor.Profile) bool {
	return p.Class == flavor.ClassSyrup && !Smells(p) && p.Sugar.Value > 0
}

// plainSyrups lists the plain syrups that are poured, in order of their ids.
func plainSyrups(specs []*flavor.Spec, stock []*flavor.Profile) (out []*flavor.Profile) {
	add := func(p *flavor.Profile) {
		if plainSyrup(p) && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	for _, s := range specs {
		for i := range s.Pours {
			add(s.Pours[i].Profile)
		}
	}
	for _, p := range stock {
		add(p)
	}
	slices.SortFunc(out, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	return out
}
