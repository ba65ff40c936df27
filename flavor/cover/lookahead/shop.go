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

// shop is what could be bought, and what each of it would cover.
type shop struct {
	market []*flavor.Profile // without what is in stock, and what costs nothing
	closes map[*flavor.Profile][]Gap
	steps  map[*flavor.Profile]float64 // of all the covers together, in just-noticeable differences
}

func newShop(stock, market []*flavor.Profile) *shop {
	s := &shop{closes: map[*flavor.Profile][]Gap{}, steps: map[*flavor.Profile]float64{}}
	for _, p := range market {
		if !p.Class.Free() && !slices.ContainsFunc(stock, func(q *flavor.Profile) bool { return q.ID == p.ID }) {
			s.market = append(s.market, p)
		}
	}
	return s
}

// ask notes what of the market by itself covers a bottle well, in each drink that leans on it.
// It notes nothing once the deadline of ctx has passed.
func (s *shop) ask(ctx context.Context, f *cover.Finder, w *Weak, specs []*flavor.Spec, effort int) error {
	if len(s.market) == 0 || errors.Is(ctx.Err(), context.DeadlineExceeded) {
		return nil
	}
	lean := slices.DeleteFunc(slices.Clone(specs), func(d *flavor.Spec) bool { return !slices.Contains(w.Drinks, d.Name) })
	r, err := outs.Find(ctx, f, outs.Request{Specs: lean, Out: []*flavor.Profile{w.Profile}, Stock: s.market, Parts: 1, Effort: effort})
	if err != nil {
		return err
	}
	for i := range r.Touched {
		t := &r.Touched[i]
		for k := range t.Covers {
			if c := &t.Covers[k]; c.Keeps && len(c.Parts) == 1 {
				p := c.Parts[0].Profile
				s.closes[p] = append(s.closes[p], Gap{w.Profile, t.Spec.Name})
				s.steps[p] += c.Distance
			}
		}
	}
	return nil
}

// ranked lists what closes most gaps first; of as many, what stays nearer to the drinks.
func (s *shop) ranked() []Buy {
	var out []Buy
	for p, gaps := range s.closes {
		slices.SortFunc(gaps, func(a, b Gap) int {
			return cmp.Or(strings.Compare(a.Without.Name, b.Without.Name), strings.Compare(a.Drink, b.Drink))
		})
		out = append(out, Buy{p, gaps})
	}
	slices.SortFunc(out, func(a, b Buy) int {
		return cmp.Or(cmp.Compare(len(b.Closes), len(a.Closes)), cmp.Compare(s.steps[a.Profile], s.steps[b.Profile]), strings.Compare(a.Profile.ID, b.Profile.ID))
	})
	return out
}
