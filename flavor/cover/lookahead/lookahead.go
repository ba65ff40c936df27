// Package lookahead finds, before service, which bottles a menu cannot do without, and which
// other bottle would help it most.
package lookahead

import (
	"cmp"
	"context"
	"errors"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
)

// Weak is a bottle that the menu leans on and that nothing in stock covers well.
type Weak struct {
	Profile *flavor.Profile
	Drinks  []string // names of the drinks without a good cover
}

// Gap is a drink without a good cover for one of its bottles.
type Gap struct {
	Without *flavor.Profile
	Drink   string
}

// Buy is a bottle that is not in stock and would by itself be a good cover.
type Buy struct {
	Profile *flavor.Profile
	Closes  []Gap
}

// Answer is the bottles that a menu leans on.
type Answer struct {
	Weak []Weak            // the one that most drinks lean on first
	Buy  []Buy             // the one that closes most gaps first; of as many, the nearest
	Left []*flavor.Profile // those that time ran out for, by id: nobody knows
}

// Of tells, for every bottle that a menu uses, which drinks would be left without a good
// cover if it ran out. Those are the bottles to order two of; market is what could be bought
// to cover them, nil to say nothing of it. The searches for one bottle
// take no more than effort, as of a [outs.Request]; a bottle whose drinks the
// deadline of ctx leaves in doubt is listed apart, and nothing is said of what covers it.
func Of(ctx context.Context, f *cover.Finder, specs []*flavor.Spec, stock, market []*flavor.Profile, effort int) (*Answer, error) {
	bottles := bottlesOf(specs)
	out := &Answer{}
	shop := newShop(stock, market)
	for n, b := range bottles {
		if errors.Is(ctx.Err(), context.DeadlineExceeded) {
			out.Left = append(out.Left, bottles[n:]...)
			break
		}
		r, err := outs.Find(ctx, f, outs.Request{Specs: specs, Out: []*flavor.Profile{b}, Stock: stock, Effort: effort})
		if err != nil {
			return nil, err
		}
		w := Weak{Profile: b}
		for i := range r.Touched {
			if t := &r.Touched[i]; len(t.Covers) == 0 || !t.Covers[0].Keeps {
				w.Drinks = append(w.Drinks, t.Spec.Name)
			}
		}
		switch {
		case len(w.Drinks) > 0 && r.CutShort:
			out.Left = append(out.Left, b)
		case len(w.Drinks) > 0:
			slices.Sort(w.Drinks)
			out.Weak = append(out.Weak, w)
			if err := shop.ask(ctx, f, &w, specs, effort); err != nil {
				return nil, err
			}
		}
	}
	out.Buy = shop.ranked()
	slices.SortStableFunc(out.Weak, func(a, b Weak) int {
		return cmp.Or(cmp.Compare(len(b.Drinks), len(a.Drinks)), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
	return out, nil
}

// bottlesOf lists what the drinks are made of, by id.
func bottlesOf(specs []*flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	for _, s := range specs {
		for i := range s.Pours {
			out = append(out, s.Pours[i].Profile)
		}
	}
	slices.SortFunc(out, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	return slices.CompactFunc(out, func(a, b *flavor.Profile) bool { return a.ID == b.ID })
}
