package drill

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// mistake is how a hand came to pour something else, in the words of an answer.
type mistake string

// The mistakes: common practice, no source.
const (
	doubled   mistake = "it was poured twice"
	halved    mistake = "only half of it was poured"
	misread   mistake = "another mark of the jigger was read"
	miscount  mistake = "it was counted wrong"
	byEye     mistake = "it was poured by eye"
	unstopped mistake = "it ran out of a bottle whose stopper is off"
	flipped   mistake = "the two amounts were swapped"
	forgotten mistake = "it was forgotten"
	strength  mistake = "syrup of another strength was poured"
)

// slip is one mistake with one drink: the pours that it changes, and to what.
type slip struct {
	mistake mistake
	moved   []moved
}

// moved is a pour of the proper drink as the slip left it; the amount is 0 of what was
// forgotten.
type moved struct {
	at         int
	amount, ml float64
	profile    *flavor.Profile
}

// on returns the drink with the slip.
func (s *slip) on(proper *flavor.Spec) flavor.Spec {
	out := proper.Clone()
	for _, m := range s.moved {
		p := &out.Pours[m.at]
		p.Amount, p.ML, p.Profile = m.amount, m.ml, m.profile
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.Amount == 0 })
	return out
}

// touches reports whether the slip changes a pour.
func (s *slip) touches(at int) bool {
	return slices.ContainsFunc(s.moved, func(m moved) bool { return m.at == at })
}

// mendable reports whether one other amount of one pour undoes the slip.
func (s *slip) mendable() bool {
	return s.mistake != flipped && s.mistake != forgotten && s.mistake != strength
}

// text says which pours were wrong, how much was poured and what the proper drink pours.
func (s *slip) text(proper *flavor.Spec) string {
	was := func(m moved) string { return poured(&proper.Pours[m.at]) }
	is := func(m moved) string {
		p := proper.Pours[m.at]
		p.Amount, p.Profile = m.amount, m.profile
		return poured(&p)
	}
	first := s.moved[0]
	switch s.mistake {
	case forgotten:
		return fmt.Sprintf("%s is missing: %s", was(first), s.mistake)
	case strength:
		return fmt.Sprintf("%s in place of %s: %s", is(first), was(first), s.mistake)
	case flipped:
		return fmt.Sprintf("%s and %s in place of %s and %s: %s", is(first), is(s.moved[1]), was(first), was(s.moved[1]), s.mistake)
	}
	p := &proper.Pours[first.at]
	return fmt.Sprintf("%s in place of %s: %s", is(first), amountOf(p), s.mistake)
}

// amountOf writes the amount of a pour; pieces have no unit.
func amountOf(p *flavor.Pour) string {
	if p.Unit == flavor.Piece {
		return measure.FormatAmount(p.Amount, "")
	}
	return measure.FormatAmount(p.Amount, p.Unit)
}

// poured writes a pour.
func poured(p *flavor.Pour) string { return amountOf(p) + " " + p.Profile.Name }

// What hands do: common practice, no source.
var (
	ounceMarks  = []float64{0.25, 0.5, 0.75, 1, 1.5, 2}                           // of jiggers in ounces
	metricMarks = []float64{5, 7.5, 10, 15, 20, 22.5, 25, 30, 35, 40, 45, 50, 60} // and in millilitres
	eyeTimes    = []float64{1.0 / 3, 0.5, 2.0 / 3, 1.5, 2}                        // how far a glass is topped up wrong
)

const (
	jiggerML       = 62.0 // what a jigger holds, with room for 2 oz; more is poured by eye
	misreadUp      = 2.0  // the mark that is read in place of another is at most so many times it,
	misreadDown    = 3.0  // and at least one part in so many
	unstoppedTimes = 4.0  // as much as runs out of a dasher without its stopper
	mostDashes     = 8.0  // that a slip leaves of bitters and the like
	mostClassTimes = 1.5  // as much as proven drinks pour of a class in one glass, of all else
	swappedTimes   = 3.0  // two amounts that are swapped differ by at most so much
)

// slips lists the mistakes that hands make with a drink and that leave no pour which
// nobody would make.
func (t *Trainer) slips(s *flavor.Spec) (out []slip) {
	for i := range s.Pours {
		p := &s.Pours[i]
		per, ok := measure.MLPerUnit(p.Unit, p.Profile)
		if !ok {
			continue
		}
		for _, x := range amountsBySlip(p) {
			if ml := x.amount * per; t.pourable(p, ml) {
				out = append(out, slip{x.mistake, []moved{{i, x.amount, ml, p.Profile}}})
			}
		}
		if len(s.Pours) > 2 {
			out = append(out, slip{forgotten, []moved{{at: i, profile: p.Profile}}})
		}
		for _, other := range t.strengths(p.Profile) {
			out = append(out, slip{strength, []moved{{i, p.Amount, p.ML, other}}})
		}
		for k := range i {
			if o := &s.Pours[k]; swappable(o, p) && t.pourable(o, p.ML) && t.pourable(p, o.ML) {
				out = append(out, slip{flipped, []moved{{k, p.Amount, p.ML, o.Profile}, {i, o.Amount, o.ML, p.Profile}}})
			}
		}
	}
	return out
}

// bySlip is an amount of a pour, in its unit, and how it came about.
type bySlip struct {
	mistake mistake
	amount  float64
}

// amountsBySlip lists the wrong amounts of one pour; each comes once, by the mistake that
// is likeliest.
func amountsBySlip(p *flavor.Pour) (out []bySlip) {
	if p.Unit.After() {
		return nil // as much as fits, or hardly any
	}
	add := func(m mistake, amount float64) {
		known := func(x bySlip) bool { return math.Abs(x.amount-amount) < 1e-9 }
		if amount > 0 && amount != p.Amount && onTheGrid(amount, p.Unit) && !slices.ContainsFunc(out, known) {
			out = append(out, bySlip{m, amount})
		}
	}
	add(doubled, 2*p.Amount)
	add(halved, p.Amount/2)
	switch {
	case p.Unit.Jigger() && p.ML > jiggerML:
		for _, times := range eyeTimes {
			add(byEye, onGrid(times*p.Amount, p))
		}
	case p.Unit.Jigger():
		for _, mark := range marksOf(p.Unit) {
			if mark <= misreadUp*p.Amount+1e-9 && mark >= p.Amount/misreadDown-1e-9 {
				add(misread, mark)
			}
		}
	default:
		add(miscount, p.Amount+1)
		add(miscount, p.Amount-1)
		if p.Unit == flavor.Dash {
			add(unstopped, unstoppedTimes*p.Amount)
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

// pourable reports whether anybody pours so much: bitters and the like have a most of
// their own, all else goes by the most of its class that a proven drink pours.
func (t *Trainer) pourable(p *flavor.Pour, ml float64) bool {
	if p.Profile.Class.Part() == flavor.PartSeasoning {
		return ml <= mostDashes*measure.DashML+1e-9
	}
	return ml <= mostClassTimes*t.most[p.Profile.Class]+1e-9
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
func (t *Trainer) strengths(p *flavor.Profile) (out []*flavor.Profile) {
	if !plainSyrup(p) {
		return nil
	}
	for _, o := range t.syrups {
		times := o.Sugar.Value / p.Sugar.Value
		if o.Sugars == p.Sugars && max(times, 1/times) >= leastStronger {
			out = append(out, o)
		}
	}
	return out
}

func plainSyrup(p *flavor.Profile) bool {
	return p.Class == flavor.ClassSyrup && p.Aroma.Total() < smellsOf && p.Sugar.Value > 0
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

// shuffled returns a copy in an order that is drawn.
func shuffled[T any](of []T, rng *rand.Rand) []T {
	out := slices.Clone(of)
	rng.Shuffle(len(out), func(i, k int) { out[i], out[k] = out[k], out[i] })
	return out
}
