package weigh

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/habit"
	"counterpour/flavor/makeup"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// How far over its room a glass is from where it is too small, and from where hardly
// any glass of the name holds so much: coupes of 150 to 240 mL are all coupes, while
// what has ice in it takes only the ice out. Common practice.
const (
	roomyUp, smallUp       = 1.2, 1.5
	roomyOnIce, smallOnIce = 1.05, 1.3
)

// overfull tells whether a drink of so many mL does not go into the glass that the
// spec names.
func (b *Build) overfull(ml float64, tell func(OutOfBounds)) {
	if b.spec.Glass == "" {
		return
	}
	glass, ok := mix.GlassOf(b.spec)
	if !ok {
		return
	}
	service := mix.Standing(b.spec)
	room := glass.RoomML(service)
	from, to := roomyUp, smallUp
	if room < glass.ML {
		from, to = roomyOnIce, smallOnIce
	}
	if x := inOneGlass((ml/room-from)/(to-from), ml); x > 0 {
		tell(OutOfBounds{Axis: ratio.Volume, High: true, Amount: ml, Bound: room, Edges: x * x, Glass: glass})
	}
}

// The most ethanol in one glass, g. Proven drinks have up to 33 g up, 30 g on ice and
// 21 g hot, and one of 50 g on crushed ice, which its bar pours twice to a guest at
// most; the largest of the stirred ones in the trade have 40 g.
const (
	mostEthanol        = 44.0
	mostEthanolHot     = 28.0
	mostEthanolCrushed = 58.0
)

// potent tells whether there is more alcohol in one glass than any good drink has.
func (b *Build) potent(glass *inGlass, tell func(OutOfBounds)) {
	if glass.ml >= batchML {
		return
	}
	most := mostEthanol
	switch b.spec.Service {
	case flavor.Hot:
		most = mostEthanolHot
	case flavor.Crushed:
		most = mostEthanolCrushed
	}
	g := glass.ethanol
	free := freeSize
	if !b.ethanolG.allows(b, b.set.ethanol, g/gentleShare) && b.ethanolG.most < most {
		most, free = b.ethanolG.most, gentleShare
	}
	if x := inOneGlass((g/most-free)/(1-free), glass.ml); x > 0 {
		tell(OutOfBounds{Axis: ratio.Strong, High: true, Amount: g, Bound: most, Edges: math.Min(x*x, noScore), Grams: true})
	}
}

// large tells whether a drink is larger in its glass than good drinks served so are.
// What is hot stands in a mug, whatever the spec says.
func (b *Build) large(ml float64, tell func(OutOfBounds)) {
	if ml >= batchML || b.spec.Service != flavor.Hot && slices.ContainsFunc(b.spec.Pours, func(p flavor.Pour) bool { return p.Heat == flavor.HeatHot }) {
		return
	}
	if b.volumeML.allows(b, b.set.volumes, ml/gentleShare) {
		return
	}
	most := b.volumeML.most
	if x := inOneGlass((ml/most-gentleShare)/(1-gentleShare), ml); x > 0 {
		tell(OutOfBounds{Axis: ratio.Volume, High: true, Amount: ml, Bound: most, Edges: math.Min(x*x, noScore)})
	}
}

// What is served up, still, and without egg, milk or cream, fills no more than the largest glass of
// that: proven drinks, as mixed here, have up to 190 mL, and coupes hold up to 210. Of mild juices it
// has up to 0.44; with more than half of them it is a long drink without ice. Common practice for
// what is beyond. A drink without them that is too large has too much of something else.
const (
	splash, lengthening = 0.20, 0.40
	mostUpML            = 230.0
	someJuice, mostlyOf = 0.45, 0.58
	mildAcidGPerL       = 25.0
	longestEdges        = 2.0
)

// tall tells whether a drink that is served up is too large for that, or little but juice.
func (b *Build) tall(ml []float64, e *ratio.Equivalents, inGlass float64, tell func(OutOfBounds)) {
	if b.spec.Service != flavor.Up || b.spec.Method == flavor.Blend {
		return
	}
	var juice, body, fizz, total float64
	for i := range b.spec.Pours {
		p := b.spec.Pours[i].Profile
		total += ml[i]
		switch {
		case p.Class == flavor.ClassJuice && p.Acid.Value < mildAcidGPerL:
			juice += ml[i]
		case p.Class.Part() == flavor.PartTexture || p.Class == flavor.ClassCreamLiqueur || p.Class == flavor.ClassCoffee:
			body += ml[i]
		case p.Carbonated || p.Class.Sparkles():
			fizz += ml[i]
		}
	}
	still := (1 - makeup.Certainty(fizz, total, makeup.HalfLength)) * (1 - makeup.Presence(body, total, makeup.HalfLength))
	if x := inOneGlass((inGlass/mostUpML-gentleShare)/(1-gentleShare), inGlass); x > 0 && b.spec.Glass == "" {
		by := makeup.Ramp(juice/total, splash, lengthening)
		tell(OutOfBounds{Axis: ratio.Volume, High: true, Amount: inGlass, Bound: mostUpML, Edges: still * by * math.Min(x*x, longestEdges)})
	}
	if x := (juice/total - someJuice) / (mostlyOf - someJuice); x > 0 {
		strong := makeup.Presence(e[ratio.Strong], e.Total(), makeup.HalfWine)
		tell(OutOfBounds{Axis: ratio.Long, High: true, Amount: 100 * juice / total, Bound: 100 * mostlyOf, Edges: still * strong * math.Min(x*x, longestEdges)})
	}
}

// gentleShare is the share of the most that is known of a kind up to which a drink costs
// nothing: a little more than the most is no wreck.
const gentleShare = 0.7

// leastEthanol is the g below which the alcohol of a drink is taken as that.
const leastEthanol = 1.0

// What a proven drink that is served otherwise, and one that is made of quite other
// things, says of how large or how strong a glass may be. Chosen by the trial.
const (
	otherService = 0.1
	otherMakeUp  = 0.002
)

// ofService returns how near each proven drink is in make-up, family and serving.
func (b *Build) ofService() []float64 {
	out := b.room(b.set.kin.Drinks())
	near := b.habit().near
	for i, kind := range b.ofKind() {
		out[i] = otherMakeUp + (near[i]*near[i]+kind)/2
		if !b.Forgotten().ServedAlike(i) {
			out[i] *= otherService
		}
	}
	return out
}

// upTo is the most of something in the glass, as far as that is known: in most drinks a
// quick bound shows that there is not much of it.
type upTo struct {
	free float64 // what is known to be no more than the most
	most float64 // 0 until it is needed
}

// allows reports whether an amount is no more than good drinks of the kind have at most;
// if it is more, that is known afterwards.
func (u *upTo) allows(b *Build, known *habit.Range, amount float64) bool {
	if u.most > 0 {
		return amount <= u.most
	}
	if amount <= u.free {
		return true
	}
	if b.nearServed == nil {
		b.nearServed = b.ofService()
	}
	if known.Reaches(b.nearServed, amount+boundSlack) {
		u.free = amount
		return true
	}
	u.most = known.Most(b.nearServed)
	return amount <= u.most
}
