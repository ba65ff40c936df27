package habit

import "counterpour/flavor"

// Asked is an ingredient that a book is asked of, with what each question of it needs.
type Asked struct {
	of           *flavor.Profile
	shelf, doses *shelf
	likeness     []float64 // to it, of what is on the shelf
	at           int       // its own place on the shelf, -1 if it is not there
	rooms        *rooms
}

// Ask returns an ingredient to ask of; room lends lists of so many zeros, which are in use as
// long as it is.
func (b *Book) Ask(p *flavor.Profile, room func(int) []float64) Asked {
	a := Asked{of: p, shelf: b.shelves[p.Class], doses: b.doses[p.Class], rooms: &b.rooms}
	if a.shelf == nil {
		a.shelf = &shelf{}
	}
	if a.doses == nil {
		a.doses = &shelf{}
	}
	a.likeness, a.at = a.shelf.likenessTo(p, room)
	return a
}

// Accent returns how surely the ingredient is poured beside others only, 0 to 1: what many
// proven drinks have a little of and none is made of does not lead for being poured by the
// ounce.
func (a *Asked) Accent() float64 {
	if a.at >= 0 {
		return a.shelf.accents[a.at]
	}
	return a.shelf.accent(a.likeness)
}

// Limit returns what good drinks pour of the ingredient, as shares of the drink before ice: with
// first where a drink is made of it first, else where it stands beside that. near is how near each proven drink of the book is in make-up, 0 to 1, in the order
// of [NewBook]. Four
// voices are pooled, each with the next: the ingredient itself, those of its class that
// smell like it, its class, and common practice. Each has the weight of the proven
// drinks behind it. A modifier that smells all but the same speaks for the ingredient
// itself: one orange liqueur may be poured as the next, however few drinks name it.
func (a *Asked) Limit(first bool, near []float64) Limit {
	return a.shelf.limit(a, commonMost(a.of.Class), first, near)
}

// LimitOfDose is Limit for what modifies, as doses, see [Dose]: it tells a large pour
// doubled from a large pour, which a share hardly does.
func (a *Asked) LimitOfDose(first bool, near []float64) Limit {
	return a.doses.limit(a, Dose(commonMost(a.of.Class)), first, near)
}
