// Package barred says what the trade would pour in place of what went, and what keeps each of it
// from this guest, this shelf or this drink: nothing is the answer to no question.
package barred

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// Reason is what keeps something from being poured.
type Reason string

// The reasons, in the order in which they are told: the first ones can be mended.
const (
	ByLabel  Reason = "label" // only its label may clear it
	ByAsking Reason = "ask"   // the guest must be asked
	ByStock  Reason = "stock" // it is not at hand, and the guest may have it
	ByGuest  Reason = "guest" // the guest must not have it
	ByDrink  Reason = "drink" // it is at hand, and makes another drink or spoils it
)

// toldOfEach is how many ways are named that one reason bars.
const toldOfEach = 4

var order = []Reason{ByLabel, ByAsking, ByStock, ByGuest, ByDrink}

// Way is what the trade would pour in place of something, and why nobody does now.
type Way struct {
	Out    *flavor.Profile   // what it would stand for
	Parts  []*flavor.Profile // poured together
	Reason Reason
	Why    string // in words that go on from the names, such as "contains tree nuts"
}

// Names joins what is poured together.
func (w *Way) Names() string {
	names := make([]string, len(w.Parts))
	for i, p := range w.Parts {
		names[i] = p.Name
	}
	return flavor.JoinAnd(names)
}

// Request asks why nothing is poured.
type Request struct {
	Spec    *flavor.Spec
	Missing []*flavor.Profile
	Guest   *guest.Guest
	Customs func(*flavor.Profile) []flavor.Custom // what the trade pours for something, the first choice first
	ByID    func(string) *flavor.Profile          // nil for what nobody knows
	AtHand  func(*flavor.Profile) bool
	// Spoils says what the drink comes to with one thing in the measure of another, in words that
	// go on from its name; empty if it keeps the drink and its balance.
	Spoils func(out, with *flavor.Profile) string
	// Listed reports whether parts are poured by a cover that is listed already.
	Listed func([]*flavor.Profile) bool
}

// Ways lists what the trade would pour for each thing that is missing, and what keeps it from
// being poured: what a label or a question may clear first, then what could be fetched.
func Ways(r *Request) (out []Way) {
	for _, m := range r.Missing {
		var ways []Way
		for _, c := range r.Customs(m) {
			parts := r.parts(c.Parts)
			if parts == nil || r.Listed(parts) {
				continue
			}
			named := slices.ContainsFunc(ways, func(w Way) bool { return slices.Equal(w.Parts, parts) })
			if w := (Way{Out: m, Parts: parts}); !named && r.explains(&w) {
				ways = append(ways, w)
			}
		}
		slices.SortStableFunc(ways, func(a, b Way) int { return slices.Index(order, a.Reason) - slices.Index(order, b.Reason) })
		out = append(out, fewOfEach(ways)...)
	}
	return out
}

// fewOfEach leaves no more ways of one reason than somebody reads.
func fewOfEach(ways []Way) []Way {
	told := map[Reason]int{}
	return slices.DeleteFunc(ways, func(w Way) bool {
		told[w.Reason]++
		return told[w.Reason] > toldOfEach
	})
}

// parts returns what has some ids, less what the drink pours anyway; nil if something is not known
// or nothing is left.
func (r *Request) parts(ids []string) (out []*flavor.Profile) {
	for _, id := range ids {
		p := r.ByID(id)
		switch {
		case p == nil:
			return nil
		case !r.Spec.HasProfile(p):
			out = append(out, p)
		}
	}
	return out
}

// explains finds the reason of a way; false if there is none to tell.
func (r *Request) explains(w *Way) bool {
	for _, p := range w.Parts {
		if r.Guest.NoAlcohol && p.ABV.Value > flavor.NoAlcoholABV {
			return false // a guest who drinks no alcohol knows that
		}
	}
	if objected := r.Guest.Objections(w.Parts); len(objected) > 0 { // no label clears the rest of what surely is not for the guest
		p := objected[0].Profile
		w.Reason, w.Why = ByGuest, objected[0].Why
		if r.Guest.LabelDecides(p) && !r.Guest.Wonders(p, r.Spec) { // what must be asked of is never offered by its label
			w.Reason, w.Why = ByLabel, r.Guest.ToRead(p)
		}
		return r.AtHand(p)
	}
	if slices.ContainsFunc(w.Parts, func(p *flavor.Profile) bool { return r.Guest.Startles(p, r.Spec) }) {
		return false
	}
	at := slices.IndexFunc(w.Parts, func(p *flavor.Profile) bool { return !r.AtHand(p) })
	if at >= 0 {
		w.Reason, w.Why = ByStock, "not at hand"
		return !r.Guest.Wonders(w.Parts[at], r.Spec)
	}
	for _, p := range w.Parts {
		if asks := p.Asks(r.Guest.Avoid); len(asks) > 0 && r.Guest.Wonders(p, r.Spec) {
			w.Reason, w.Why = ByAsking, asks[0]
			return true
		}
	}
	if len(w.Parts) > 1 || w.Parts[0].Class.Solid() {
		return false
	}
	w.Reason, w.Why = ByDrink, r.Spoils(w.Out, w.Parts[0])
	return w.Why != ""
}

// Line is the ways that one reason keeps from being poured.
type Line struct {
	Out    string   // what they would stand for
	Ways   []string // by name
	Reason Reason
	Why    string
}

// Lines gathers the ways that share what they stand for and why they are not poured.
func Lines(ways []Way) (out []Line) {
	for i := range ways {
		w := &ways[i]
		at := slices.IndexFunc(out, func(l Line) bool { return l.Out == w.Out.Name && l.Why == w.Why })
		if at < 0 {
			out = append(out, Line{Out: w.Out.Name, Reason: w.Reason, Why: w.Why})
			at = len(out) - 1
		}
		out[at].Ways = append(out[at].Ways, w.Names())
	}
	return out
}

// String says the line as one bartender to another: what would stand for what went, and why it
// does not.
func (l *Line) String() string {
	would := flavor.JoinOr(l.Ways) + " would do for " + l.Out
	switch l.Reason {
	case ByStock:
		return would + ": " + l.Why
	case ByLabel:
		return would + " if its label clears it: " + l.Why
	case ByAsking:
		return would + " if the guest says so: " + l.Why
	}
	return flavor.JoinOr(l.Ways) + " will not do for " + l.Out + ": " + l.Why
}
