package house

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"counterpour/flavor"
)

// Label is what somebody read on a bottle about its allergens. It settles what
// the category leaves open: an allergen that is unstated or possible there is
// absent unless the label names it. What the category contains, it contains
// whatever a label says.
type Label struct {
	Contains   []flavor.Allergen `json:"contains"` // empty: the label names none
	MayContain []flavor.Allergen `json:"may_contain,omitempty"`
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

// clean copies the label, each allergen once and in the order of the law. A
// word that is no allergen is kept, so that check can refuse it.
func (l *Label) clean() *Label {
	if l == nil {
		return nil
	}
	return &Label{Contains: inLegalOrder(l.Contains), MayContain: inLegalOrder(l.MayContain), ReadBy: tidy(l.ReadBy), ReadAt: utc(l.ReadAt)}
}

func inLegalOrder(list []flavor.Allergen) []flavor.Allergen {
	order := flavor.Allergens()
	out := slices.Clone(list)
	slices.SortFunc(out, func(a, b flavor.Allergen) int {
		return cmp.Or(slices.Index(order, a)-slices.Index(order, b), compare(string(a), string(b)))
	})
	return slices.Compact(out)
}

// overlay puts what the label says into a copy of its category's profile.
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
}

// Says lists the allergens that the label names with a certainty; a label that
// nobody has read names none.
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

// Reader is who read the label, empty if nobody has.
func (l *Label) Reader() string {
	if l == nil {
		return ""
	}
	return l.ReadBy
}

// String says who read the label and when.
func (l *Label) String() string {
	return fmt.Sprintf("read by %s on %s", l.ReadBy, l.ReadAt.Format(time.DateOnly))
}
