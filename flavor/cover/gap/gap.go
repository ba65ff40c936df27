package gap

import (
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/cover/portion"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/sister"
	"counterpour/flavor/guest"
	"counterpour/flavor/sense"
)

// Trade is what is known whatever the drink: bottles, the customs of the trade, and what a
// bottle must earn.
type Trade struct {
	Cellar  *role.Cellar
	Customs *flavor.Customs
	Sisters *sister.Book
	Weights Weights
	Near    float64 // how far a glass may move and still be the drink, in just-noticeable differences
}

// Weights are what a bottle must earn in a gap, in just-noticeable differences. All are
// judged on situations of the trade (common practice, no source).
type Weights struct {
	// Class: a part of another part of the drink than what is missing; a third of
	// it for another class of the same kin, two thirds for other kin.
	Class float64
	// Aroma: a part that smells of nothing that the missing one smells of.
	Aroma float64
	// Look: a part of quite another colour, where the trade goes by colour.
	Look float64
	// Solid: what comes by the piece in place of a liquid, and the other way.
	Solid float64
	// Role: a part that is no spirit in the place of a little of a base spirit, holds
	// alcohol in the place of a juice, or is a spirit beside what nobody pours it beside.
	Role float64
	// Firm: any other amount of what is of one class, or one spirit for another; Measure:
	// of a spirit that is as strong.
	Firm, Measure float64
	// Custom: what a first choice of the trade is let off; Place: what each further place
	// takes back.
	Custom, Place float64
}

// DefaultWeights returns the weights that the program uses.
func DefaultWeights() Weights {
	return Weights{Class: 1.5, Aroma: 4, Look: 1.5, Solid: 1.5, Role: 4, Firm: 1.5, Measure: 4, Custom: 2, Place: 0.1}
}

// Asked is what leaves a gap: a drink, what is missing of it, and for whom it is poured.
type Asked struct {
	Spec       *flavor.Spec
	ABV        float64           // % vol of the finished drink
	Missing    []*flavor.Profile // what ran out
	Candidates []*flavor.Profile // what may be poured instead
	Guest      *guest.Guest
	Labels     bool // what only a label would have to clear may be poured
}

// Gap is what had to leave a drink: what is missing, and what the guest must not have.
type Gap struct {
	Gone   []Gone    // each ingredient once, in the order of the pours
	Keep   []int     // indices of the pours that stay
	Row    sense.Row // what all of Gone took with it, in steps
	ML     float64   // of all that went
	Brewed float64   // mL of it that are brewed
	Less   bool      // the guest must have less alcohol than went, whatever is poured
	Asked  Asked
	trade  *Trade
	near   *sense.Near
	base   portion.Spirits // that went with other things

	sisters []sister.Sister // candidates that make another proven drink

	someAfter, allAfter bool // whether what went was added after the rest was mixed
}

// Gone is what is known of something that had to go.
type Gone struct {
	*role.Bottle
	Missing bool    // it ran out; else the guest must not have it
	Smells  bool    // of more than next to nothing
	Told    bool    // its aroma is told in the drink
	Weight  float64 // how much of the gap it left, against the others: 1 for the most
	ML      float64 // that went of it
}

// toldAroma is how many steps of a drink's aroma something brings that is told in it.
const toldAroma = 1.0

// Places of the aroma in a row.
const (
	FirstAroma = sense.Dims - sense.AromaDims
	lastAroma  = sense.Dims
)

// New returns the gap in a drink; near is the space near its glass.
func New(trade *Trade, a Asked, near *sense.Near) *Gap {
	g := &Gap{Asked: a, trade: trade, near: near}
	for i := range a.Spec.Pours {
		p := a.Spec.Pours[i].Profile
		missing := slices.ContainsFunc(a.Missing, func(m *flavor.Profile) bool { return m.ID == p.ID })
		switch {
		case !missing && g.Accepts(p):
			g.Keep = append(g.Keep, i)
		case !g.Took(p):
			g.Gone = append(g.Gone, Gone{Bottle: trade.Cellar.Of(p), Missing: missing})
		}
	}
	g.Less = g.wantsLess()
	g.base, g.sisters = g.baseGone(), g.sistersOf()
	g.measure()
	g.allAfter = len(g.Gone) > 0
	for i := range a.Spec.Pours {
		if p := &a.Spec.Pours[i]; g.Took(p.Profile) {
			g.someAfter, g.allAfter = g.someAfter || p.After, g.allAfter && p.After
		}
	}
	return g
}

// Any reports whether something is true of an ingredient that went.
func (g *Gap) Any(of func(*flavor.Profile) bool) bool {
	return slices.ContainsFunc(g.Gone, func(q Gone) bool { return of(q.Profile) })
}

// Took reports whether an ingredient is among those that went.
func (g *Gap) Took(p *flavor.Profile) bool {
	return g.Any(func(q *flavor.Profile) bool { return q == p })
}

// Profiles returns what went, each ingredient once.
func (g *Gap) Profiles() []*flavor.Profile {
	out := make([]*flavor.Profile, len(g.Gone))
	for m := range g.Gone {
		out[m] = g.Gone[m].Profile
	}
	return out
}

// Accepts reports whether an ingredient may be in the glass.
func (g *Gap) Accepts(p *flavor.Profile) bool {
	if g.Asked.Labels {
		return g.Asked.Guest.IfCleared(p)
	}
	return g.Asked.Guest.Accepts(p)
}

// wantsLess reports whether the guest cannot have the alcohol of what went. Then
// nothing keeps the balance of the drink as it was, and the nearest glass is what
// the guest is served.
func (g *Gap) wantsLess() bool {
	if g.Asked.Guest.TooStrong(g.Asked.ABV) {
		return true
	}
	return g.NoAlcohol() && g.Any(func(q *flavor.Profile) bool { return q.ABV.Value > flavor.NoAlcoholABV })
}

// NoAlcohol reports whether the guest drinks no alcohol.
func (g *Gap) NoAlcohol() bool { return g.Asked.Guest.NoAlcohol || g.Asked.Guest.NoTrace }

// RowOf returns what a millilitre brings, in steps: for a guest who must have less
// alcohol, that apart.
func (g *Gap) RowOf(holds *sense.Vector) sense.Row {
	row := g.near.RowOf(holds)
	if g.Less {
		row[sense.Ethanol] = 0
	}
	return row
}

// measure works out what went took with it.
func (g *Gap) measure() {
	var most float64
	for m := range g.Gone {
		q := &g.Gone[m]
		per := g.RowOf(&q.Holds)
		var own sense.Row
		for i := range g.Asked.Spec.Pours {
			if p := &g.Asked.Spec.Pours[i]; p.Profile == q.Profile {
				AddTo(&own, &per, p.ML)
				q.ML += p.ML
				if p.Profile.Class.Brewed() {
					g.Brewed += p.ML
				}
			}
		}
		g.ML += q.ML
		AddTo(&g.Row, &own, 1)
		q.Weight = floats.Norm(own[:], 2)
		q.Smells = !q.Smell.Plain()
		q.Told = q.Smells && floats.Norm(own[FirstAroma:lastAroma], 2) >= toldAroma
		most = max(most, q.Weight)
	}
	for m := range g.Gone {
		if most > 0 {
			g.Gone[m].Weight /= most
		}
	}
}

// AddTo adds so many times one row to another.
func AddTo(v, o *sense.Row, times float64) {
	for i := range v {
		v[i] += times * o[i]
	}
}

// Keeps reports whether the drink keeps a pour of which something is true.
func (g *Gap) Keeps(of func(*flavor.Profile) bool) bool {
	return slices.ContainsFunc(g.Keep, func(i int) bool { return of(g.Asked.Spec.Pours[i].Profile) })
}

// InDrink reports whether an ingredient is a pour of the drink already, the missing ones
// among them.
func (g *Gap) InDrink(p *flavor.Profile) bool {
	return g.Asked.Spec.Has(func(q *flavor.Profile) bool { return q.ID == p.ID })
}

// Unstated returns what had to go, without being missing, though its label may clear it.
func (g *Gap) Unstated() (out []*flavor.Profile) {
	for m := range g.Gone {
		if q := &g.Gone[m]; !q.Missing && g.Asked.Guest.IfCleared(q.Profile) {
			out = append(out, q.Profile)
		}
	}
	return out
}
