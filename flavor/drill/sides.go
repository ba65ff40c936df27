package drill

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/makeup"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// side is too much or too little of an axis.
type side struct {
	axis ratio.Axis
	high bool
}

// Complaint is one thing that a guest may say of a drink that is off: too much or too little of
// an axis.
type Complaint struct {
	Axis ratio.Axis
	High bool
	// Plain is the axis, Guest the words of a guest: "too much acid", "sharp".
	Plain, Guest string
	Also         []string // other words for it: "tart"
}

// Sayings lists all that may be said of a drink that is off, by axis.
func Sayings() (out []Complaint) {
	for _, a := range ratio.Axes() {
		for _, high := range []bool{true, false} {
			out = append(out, Complaint{a, high, wording.Plain(a, high), wording.Guest(a, high), wording.AlsoSaid(a, high)})
		}
	}
	return out
}

func (s side) String() string { return wording.Side(s.axis, s.high) }

// mirror is the same fault told from the other side: sugar against acid, strength against
// length. Bitterness has none.
func (s side) mirror() side {
	switch s.axis {
	case ratio.Sweet:
		return side{ratio.Sour, !s.high}
	case ratio.Sour:
		return side{ratio.Sweet, !s.high}
	case ratio.Strong:
		return side{ratio.Long, !s.high}
	case ratio.Long:
		return side{ratio.Strong, !s.high}
	}
	return s
}

// tellsOf reports whether a drink has what the side is told by: something that sours for
// acid, alcohol for strength.
func (s side) tellsOf(d *flavor.Spec) bool {
	switch s.axis {
	case ratio.Sour:
		return d.HasPart(flavor.PartSour)
	case ratio.Strong:
		return ratio.EquivalentsOf(d)[ratio.Strong] > 0
	}
	return true
}

// besideSpirit is what stands out in the glass when there is too little spirit to carry it,
// and is lost when there is too much.
var besideSpirit = []ratio.Axis{ratio.Sweet, ratio.Sour}

// hiddenBy are the axes of which too little brings one out in the mouth, and too much hides
// it, without a change of it in the glass: sugar hides what is sour or bitter and the other
// way round, and what stretches a drink hides its alcohol.
var hiddenBy = [ratio.NumAxes][]ratio.Axis{
	ratio.Strong: {ratio.Long},
	ratio.Sweet:  {ratio.Sour, ratio.Bitter},
	ratio.Sour:   {ratio.Sweet},
	ratio.Bitter: {ratio.Sweet},
	ratio.Long:   {ratio.Strong},
}

// broughtOut reports whether a guest says something of a drink because what hides it went the
// other way: with half the sugar and more coffee, what is left is bitter.
func broughtOut(x side, said []side) bool {
	return slices.ContainsFunc(hiddenBy[x.axis], func(a ratio.Axis) bool { return slices.Contains(said, side{a, !x.high}) })
}

// surely reports whether a spoilt drink has more or less sugar or acid in the glass than the
// proper one by more than the ± of both.
func surely(x side, c *classic, is *mix.Drink) bool {
	was, now := c.drink.PlusMinus.SugarPer100, is.PlusMinus.SugarPer100
	if x.axis == ratio.Sour {
		was, now = c.drink.PlusMinus.AcidPer100, is.PlusMinus.AcidPer100
	}
	return math.Abs(tasting.Value(x.axis, is)-tasting.Value(x.axis, c.drink)) > math.Hypot(was, now)
}

// rightOf lists all that is right to say of a drink with a slip, the slip itself first.
// These are right too, unless the glass contradicts them:
//   - the slip, told from the other side;
//   - what a guest cannot miss beside the proper drink;
//   - what the engine itself faults;
//   - what a slip of the spirit brings out or drowns;
//   - what lies outside the range of the family by more than its own ±;
//   - what the glass has more of while it has less of what hides it, or the reverse.
func (t *Trainer) rightOf(c *classic, s *flavor.Spec, r *balance.Result, slipped side) ([]side, error) {
	var e ratio.Equivalents
	var bands *[ratio.NumAxes]weigh.Band
	if len(r.Judgement.Fits) > 0 {
		var err error
		if e, bands, err = t.bandsOf(s, r.Judgement.Fits[0].ID); err != nil {
			return nil, err
		}
	}
	out := []side{slipped}
	add := func(x side) {
		drowned := slipped.axis == ratio.Strong && slices.Contains(besideSpirit, x.axis) && outdone(x, &e, bands)
		if !drowned && !slices.Contains(out, x) && !slices.Contains(out, side{x.axis, !x.high}) {
			out = append(out, x)
		}
	}
	if m := slipped.mirror(); m.tellsOf(&c.spec) {
		add(m)
	}
	for _, x := range slices.Concat(plainlyMoved(c, s, r.Drink), faulted(c, s, r, slipped), besideSlip(c, s, r.Drink, slipped)) {
		add(x)
	}
	for _, x := range outOfRange(s, &e, bands) {
		if tasted(x, c, s, r.Drink) {
			add(x)
		}
	}
	for _, x := range allSides() {
		if x.tellsOf(s) && x.moved(c.drink, r.Drink) >= leastBroughtOut && broughtOut(x, out) {
			add(x)
		}
	}
	return out, nil
}

// plainlyMoved lists what a guest cannot miss beside the proper drink.
func plainlyMoved(c *classic, s *flavor.Spec, is *mix.Drink) (out []side) {
	for _, x := range allSides() {
		least := plainlyTasted
		if x.axis != ratio.Strong && x.axis != ratio.Long {
			least = max(least, leads*mostMoved(c.drink, is)) // heat is felt beside everything
		}
		if x.tellsOf(s) && x.moved(c.drink, is) >= least {
			out = append(out, x)
		}
	}
	return out
}

// faulted lists what the engine itself faults and the drink can be told by, as far as it moved
// the way that it says, or the slip hides that it did.
func faulted(c *classic, s *flavor.Spec, r *balance.Result, slipped side) (out []side) {
	for i := range r.Faults {
		f := &r.Faults[i]
		if f.Method != "" || int(f.Axis) >= ratio.NumAxes {
			continue
		}
		x := side{f.Axis, f.High}
		moved := x.moved(c.drink, r.Drink)
		hidden := slices.Contains(hiddenBy[x.axis], slipped.axis) && x.high != slipped.high && moved > -leastTasted
		if x.tellsOf(s) && (hidden || moved >= leastTasted) {
			out = append(out, x)
		}
	}
	return out
}

// besideSlip lists what a slip of the spirit brings out or drowns.
func besideSlip(c *classic, s *flavor.Spec, is *mix.Drink, slipped side) (out []side) {
	if slipped.axis != ratio.Strong {
		return nil
	}
	for _, a := range besideSpirit {
		if x := (side{a, !slipped.high}); surely(x, c, is) && tasted(x, c, s, is) {
			out = append(out, x)
		}
	}
	return out
}

// outdone reports whether sugar lies so much nearer to its place in the family than acid, or
// the other way round, that of a drink with too little spirit, or too much, only the other is
// said: nobody calls the same glass sharp and cloying unless both stand out.
func outdone(x side, e *ratio.Equivalents, bands *[ratio.NumAxes]weigh.Band) bool {
	if bands == nil {
		return false
	}
	beyond := func(a ratio.Axis) float64 { // steps past the centre, to the side
		b := bands[a]
		if !b.Has || b.Centre <= 0 || e[a] <= 0 {
			return 0
		}
		steps := tasting.JND(a, b.Centre, e[a])
		if x.high != (e[a] > b.Centre) {
			return -steps
		}
		return steps
	}
	other := ratio.Sour
	if x.axis == ratio.Sour {
		other = ratio.Sweet
	}
	return beyond(other)-beyond(x.axis) >= plainlyTasted
}

// How many noticeable steps of the glass it takes; common practice, no source.
const (
	hardlyTasted  = 0.5 // of a step: less is told by nobody, and a step by half of all who taste
	leastTasted   = 1.0 // for what nobody else names to be right
	plainlyTasted = 2.0 // for what everybody who knows the drink names
	// leastBroughtOut is for what is tasted besides against less, or more, of what hides it.
	leastBroughtOut = 0.5
	// leads is the share of the largest move that is named beside it.
	leads = 0.5
	// heads is the share of the largest move that a round may be about.
	heads = 0.75
)

// allSides lists too much and too little of every axis.
func allSides() (out []side) {
	for _, a := range ratio.Axes() {
		out = append(out, side{a, true}, side{a, false})
	}
	return out
}

// moved is how many noticeable steps a drink has moved in the glass to the side, below zero
// for the other way.
func (s side) moved(was, is *mix.Drink) float64 {
	steps := tasting.Steps(s.axis, tasting.Value(s.axis, was), tasting.Value(s.axis, is))
	if !s.high {
		return -steps
	}
	return steps
}

// mostMoved is how many noticeable steps the axis moved that moved most in the glass.
func mostMoved(was, is *mix.Drink) (most float64) {
	for _, x := range allSides() {
		most = max(most, x.moved(was, is))
	}
	return most
}

// isWhatHappened reports whether a slip told by a side, or from the other side of it, is told
// by what moved most in the glass, or by not much less: nobody learns strength from a drink
// whose sweetness doubled.
func (s side) isWhatHappened(was, is *mix.Drink) bool {
	return max(s.moved(was, is), s.mirror().moved(was, is)) >= heads*mostMoved(was, is)
}

// tasted reports whether a guest tells, in the glass, that a spoilt drink has more or less of an
// axis than the proper one. The range alone does not say so: the shares of a ratio hang together.
// With less gin the acid of the vermouth is out of range, and nobody calls that sharp.
func tasted(x side, c *classic, s *flavor.Spec, is *mix.Drink) bool {
	return x.tellsOf(s) && x.moved(c.drink, is) >= leastTasted
}

// bandsOf returns what a drink has on each axis, and where good drinks of a family lie; the
// bands are nil where none are drawn for it.
func (t *Trainer) bandsOf(s *flavor.Spec, family string) (ratio.Equivalents, *[ratio.NumAxes]weigh.Band, error) {
	build, err := t.set.Prepare(s)
	if err != nil {
		return ratio.Equivalents{}, nil, err
	}
	e := build.Equivalents(build.Amounts())
	bands, ok := build.Bands(family, build.Amounts())
	if !ok {
		return e, nil, nil
	}
	return e, &bands, nil
}

// outOfRange lists the axes on which a drink lies out of the range of a family by more than
// the ± of its own pours.
func outOfRange(s *flavor.Spec, e *ratio.Equivalents, bands *[ratio.NumAxes]weigh.Band) (out []side) {
	if bands == nil {
		return nil
	}
	spread := makeup.Spreads(s)
	for a, has := range e {
		switch band, unsure := bands[a], spread[a]*has; {
		case has-unsure > band.High:
			out = append(out, side{ratio.Axis(a), true})
		case band.Has && has+unsure < band.Low:
			out = append(out, side{ratio.Axis(a), false})
		}
	}
	return out
}

// whyNot says why a drink is not what somebody said of it. Length shows as strength: the
// further a drink is stretched, the weaker it is.
func whyNot(said side, was, is *mix.Drink) string {
	shown, high := said.axis, said.high
	if shown == ratio.Long {
		shown, high = ratio.Strong, !high
	}
	before, after := tasting.Value(shown, was), tasting.Value(shown, is)
	text := wording.NotSo(said.axis, said.high, after, before)
	switch steps := math.Abs(tasting.Steps(shown, before, after)); {
	case steps < hardlyTasted:
		return text + wording.NobodyTells
	case steps < leastTasted:
		return text + wording.FewTell
	case high != (after > before):
		return text + wording.OtherWay
	default:
		return text + wording.WithinFamily(steps)
	}
}
