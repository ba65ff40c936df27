package forgotten

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/technique"
)

// Draft is a drink that may lack something, held against the rests of proven drinks. What does
// not depend on its amounts is worked out once. It is for one goroutine at a time.
type Draft struct {
	book   *Book
	spec   *flavor.Spec
	called []int // the places of the proven drinks that it is called after
	parts  []makeup.Part
	ml     []float64
	served makeup.Service
	width  float64
	room   func(int) []float64
	// How near the rest of the drink is to those of proven ones; nil until asked for.
	unbased, unsoured, unsweetened []float64
	// Of the proven drinks with the same rest, those that are strong, have a base, and so on.
	having struct{ strong, based, sharp, soured, sweet, seasoned, mixed known }
	// Memory that outlives the drink.
	rest    makeup.Kinship
	lacking []bool
	ballot  []votes
}

// Hold makes the draft that of a spec, given the places of the proven drinks that it is called after, its
// parts and the mL of its pours; an earlier one leaves its memory. width is how fast proven drinks count less for being made of other things,
// see [makeup.Likeness]; room lends lists of so many zeros, which are in use as long as the
// draft is.
func (d *Draft) Hold(b *Book, spec *flavor.Spec, called []int, parts []makeup.Part, ml []float64, width float64, room func(int) []float64) {
	*d = Draft{book: b, spec: spec, called: called, parts: parts, ml: ml, served: b.Served.Place(spec.Service), width: width, room: room, lacking: d.lacking, ballot: d.ballot}
}

// ServedAlike reports whether a proven drink, by its place, is served as the draft is.
func (d *Draft) ServedAlike(drink int) bool { return d.book.Served.Of[drink] == d.served }

// nearUnbased is Weights without bases, nearUnsoured without what is sour; both
// are worked out once.
func (d *Draft) nearUnbased() []float64 {
	if d.unbased == nil {
		d.unbased = d.Weights(&d.book.unbased, makeup.IsBase)
	}
	return d.unbased
}

func (d *Draft) nearUnsoured() []float64 {
	if d.unsoured == nil {
		other := otherServing
		if d.spec.Method.Aerates() { // who swizzles a julep wants no juice in it
			other = clearlyOther
		}
		d.unsoured = d.weights(&d.book.unsoured, makeup.IsSharp, other)
	}
	return d.unsoured
}

// nearUnsweetened is Weights without syrups and sugar.
func (d *Draft) nearUnsweetened() []float64 {
	if d.unsweetened == nil {
		d.unsweetened = d.Weights(&d.book.unsweetened, makeup.IsSweetener)
	}
	return d.unsweetened
}

// shareThat returns the weighted share of proven drinks that have something, and
// false if none is near enough to tell.
func shareThat(weights []float64, has []bool) (float64, bool) {
	var with, total float64
	for i, w := range weights {
		total += w
		if has[i] {
			with += w
		}
	}
	if total <= NearestToTell {
		return 0, false
	}
	return with / total, true
}

// known is a share of proven drinks, once it was asked for: it depends on what is in the draft
// and not on how much of it is tried.
type known struct {
	share       float64
	told, asked bool
}

// shareOf is shareThat, worked out once.
func (k *known) shareOf(weights func() []float64, has []bool) (float64, bool) {
	if !k.asked {
		k.share, k.told = shareThat(weights(), has)
		k.asked = true
	}
	return k.share, k.told
}

// Stirred returns the share of the proven drinks that are, but for what is sour, made of the same, and
// that nobody shakes, blends or swizzles; 1 if none is near enough to tell.
func (d *Draft) Stirred() float64 {
	mixed, ok := d.having.mixed.shareOf(func() []float64 { return d.weights(&d.book.unsoured, makeup.IsSharp, 1) }, d.book.mixed)
	if !ok {
		return 1
	}
	return 1 - mixed
}

// Milky reports whether a drink in which acid and milk meet is meant for the milk: more
// of the drinks with the same rest have milk or cream than have something sour.
func (d *Draft) Milky() bool {
	near := d.Weights(&d.book.unturned, isSharpOrTurns)
	milk, _ := shareThat(near, d.book.milky)
	sour, _ := shareThat(near, d.book.sharp)
	return milk > sour
}

func isSharpOrTurns(p *makeup.Part) bool { return makeup.IsSharp(p) || technique.Turns(p.Profile) }

// sized returns a list of n zeros in the memory of one that is no longer needed.
func sized[T any](list *[]T, n int) []T {
	*list = slices.Grow((*list)[:0], n)[:n]
	clear(*list)
	return *list
}
