package drill

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/guest"
)

// Avoided is a set of allergens: bit i stands for the one at place i of
// [flavor.Allergens].
type Avoided uint16

// AvoidedOf returns the set of a list.
func AvoidedOf(list []flavor.Allergen) (out Avoided) {
	for _, a := range list {
		if at := slices.Index(flavor.Allergens(), a); at >= 0 {
			out |= 1 << at
		}
	}
	return out
}

// List returns the allergens of a set, in the order of the law.
func (v Avoided) List() (out []flavor.Allergen) {
	for at, a := range flavor.Allergens() {
		if v&(1<<at) != 0 {
			out = append(out, a)
		}
	}
	return out
}

func (v Avoided) guest() guest.Guest { return guest.Guest{Avoid: v.List()} }

// served lists the drinks that a round may be of: those of the menu or the proven ones,
// that hold nothing of what is avoided; what is unknown counts as present.
func (t *Trainer) served(r *RoundRequest) (out []int) {
	g := r.Avoid.guest()
	for i := range t.classics {
		if t.classics[i].own == r.Menu && g.MayHaveAll(&t.classics[i].spec) {
			out = append(out, i)
		}
	}
	return out
}

// remedy says what to do where no drink lends itself to a round.
func (v Avoided) remedy(other string) string {
	if v == 0 {
		return other
	}
	return other + ", or avoid fewer allergens"
}
