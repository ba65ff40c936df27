package house

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"counterpour/flavor"
)

// Label is what somebody read about allergens on a bottle. It decides what the
// ingredient's record leaves open: an allergen that is unstated or possible there is
// absent unless the label names it. An allergen that the ingredient contains stays,
// whatever the label says.
type Label struct {
	Contains   []flavor.Allergen `json:"contains"` // empty: the label names none
	MayContain []flavor.Allergen `json:"may_contain,omitempty"`
	Vegan      bool              `json:"vegan,omitempty"` // it, or the maker, says so: nothing from animals cleared or dyed it
	ReadBy     string            `json:"read_by"`
	ReadAt     time.Time         `json:"read_at"`
}

func (l *Label) check() error {
	if l == nil {
		return nil
	}
	for _, list := range [][]flavor.Allergen{l.Contains, l.MayContain} {
		for _, a := range list {
			if err := oneOf("label: allergen", a, flavor.Allergens()); err != nil {
				return err
			}
		}
	}
	return checks(
		checkLine("label: read_by", l.ReadBy, true),
		checkTime("label: read_at", l.ReadAt),
	)
}

// clean returns a copy with each allergen once, in the order of the law. Unknown words
// are kept, so that check can refuse them.
func (l *Label) clean() *Label {
	if l == nil {
		return nil
	}
	return &Label{Contains: inLegalOrder(l.Contains), MayContain: inLegalOrder(l.MayContain), Vegan: l.Vegan, ReadBy: tidy(l.ReadBy), ReadAt: utc(l.ReadAt)}
}

func inLegalOrder(list []flavor.Allergen) []flavor.Allergen {
	order := flavor.Allergens()
	out := slices.Clone(list)
	slices.SortFunc(out, func(a, b flavor.Allergen) int {
		return cmp.Or(slices.Index(order, a)-slices.Index(order, b), compare(string(a), string(b)))
	})
	return slices.Compact(out)
}

// overlay writes the label's allergens into p, which is a copy of the ingredient's
// profile.
func (l *Label) overlay(p *flavor.Profile) {
	if l == nil {
		return
	}
	var marks []flavor.AllergenMark
	for _, a := range flavor.Allergens() {
		known, _ := p.Allergen(a)
		switch {
		case known == flavor.Contains || slices.Contains(l.Contains, a):
			marks = append(marks, flavor.AllergenMark{Allergen: a, Certainty: flavor.Contains})
		case slices.Contains(l.MayContain, a):
			marks = append(marks, flavor.AllergenMark{Allergen: a, Certainty: flavor.MayContain})
		}
	}
	p.AllergensKnown, p.AllergenMarks, p.FreeOf = true, marks, nil
	if l.Vegan {
		dyed := p.MayHoldInsect()
		p.Animal = slices.DeleteFunc(slices.Clone(p.Animal), func(a string) bool { return a == flavor.Finings || a == flavor.Insect && dyed })
	}
}

// Says lists the allergens that the label names with a certainty; none if the label is
// nil.
func (l *Label) Says(c flavor.Certainty) []flavor.Allergen {
	switch {
	case l == nil:
		return nil
	case c == flavor.Contains:
		return l.Contains
	case c == flavor.MayContain:
		return l.MayContain
	}
	return nil
}

// SaysVegan reports whether the label was read and says so.
func (l *Label) SaysVegan() bool { return l != nil && l.Vegan }

// Reader returns who read the label; "" if nobody did.
func (l *Label) Reader() string {
	if l == nil {
		return ""
	}
	return l.ReadBy
}

// String says who read the label and when.
func (l *Label) String() string {
	return fmt.Sprintf("read by %s on %s", l.ReadBy, l.ReadAt.UTC().Format(time.DateOnly))
}
