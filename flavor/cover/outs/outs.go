// Package outs finds what becomes of a menu when bottles run out: the covers of every drink
// that they touch, those that serve the menu best together, and which bottle to fetch.
package outs

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"counterpour/flavor"
	"counterpour/flavor/beside"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/choice"
	"counterpour/flavor/guest"
)

// How the covers of a menu are weighed against each other.
const (
	// coversEach is how many covers of a drink are weighed for the menu.
	coversEach = 6
	// leastEffort is the least that the search for one drink may take, whatever its
	// share: some ten milliseconds.
	leastEffort = 500_000
)

// Request asks what becomes of a menu when bottles run out.
type Request struct {
	Specs    []*flavor.Spec
	Out      []*flavor.Profile
	Stock    []*flavor.Profile // what may be poured; what is out is left out of it
	Guest    guest.Guest
	Tastings []cover.Tasting
	Parts    int // most substitutes a drink; 0 means 2
	// Effort is how much work all searches together may take, as of a [cover.Request], in
	// equal shares; 0 means as much as they need.
	Effort int
}

// Touched is a drink that lost a pour.
type Touched struct {
	Spec    *flavor.Spec
	Missing []*flavor.Profile
	Removed []*flavor.Profile // all that had to go, as of a [cover.Result]
	// Unstated and IfLabelClears are the way out by the label, as of a [cover.Result].
	Unstated      []*flavor.Profile
	IfLabelClears []cover.Cover
	// ScoreBefore is the score of the drink as it is written.
	ScoreBefore float64
	Covers      []cover.Cover // the best first; none if nothing in stock will do
	// Unbalanced is true if no cover keeps this drink in balance, and those
	// listed do not, as it is of a [cover.Result].
	Unbalanced   bool
	Near, Proven bool         // as of a [cover.Result]
	NotSearched  bool         // time ran out before this drink: nobody knows of a cover
	LeftOut      *cover.Cover // as of a [cover.Result]
	// Chosen is the cover that serves the whole menu best, an index into
	// Covers, or −1.
	Chosen int

	whole bool // the guest may have the drink as it is written
}

// Fetch is a bottle out that could be fetched: one that the guest may have.
type Fetch struct {
	Profile *flavor.Profile
	Drinks  int // that are whole again with it alone, and that the guest may then have
	Lost    int // of these, the ones that have no cover
}

// Opened is a substitute that the chosen covers use, and for how many drinks.
type Opened struct {
	Profile *flavor.Profile
	Drinks  int
}

// Result is what becomes of the menu.
type Result struct {
	Touched []Touched // without a cover first, then the furthest first; those not searched last
	Fetch   []Fetch   // the bottle that brings most back first; none that the guest must not have
	Opened  []Opened
	// Spared is how many fewer substitutes the chosen covers need than each
	// drink's own best would, and Given how much further, in just-noticeable
	// differences over all drinks, they lie.
	Spared int
	Given  float64
	// CutShort is true if the deadline of the context passed, so that there may be
	// better covers, or some for a drink that has none.
	CutShort bool
}

// Find finds every drink that the bottles out touch, its covers, and the covers
// that serve the menu best together. Where the deadline of ctx is too near for all
// of them, every drink gets a share of the time, and the best so far is returned. It
// fails if no bottle is out, and where [cover.Finder.Find] does.
func Find(ctx context.Context, f *cover.Finder, r Request) (*Result, error) {
	if len(r.Out) == 0 {
		return nil, errors.New("outs: name at least one bottle that is out")
	}
	stock := slices.DeleteFunc(slices.Clone(r.Stock), func(p *flavor.Profile) bool { return has(r.Out, p) })
	result := &Result{}
	touched := Touching(r.Specs, r.Out)
	if r.Effort > 0 {
		r.Effort = max(leastEffort, r.Effort/max(1, len(touched)))
	}
	if err := result.search(ctx, f, &r, touched, stock); err != nil {
		return nil, err
	}
	result.choose()
	slices.SortStableFunc(result.Touched, Touched.compare)
	result.countFetches(slices.DeleteFunc(slices.Clone(r.Out), func(p *flavor.Profile) bool { return !r.Guest.MayHave(p) }))
	return result, nil
}

// search covers the drinks that are touched, on as many cores as there are, since none of them waits for
// another: each core takes the next drink when it is done with one. What is found does not depend on it.
func (r *Result) search(ctx context.Context, f *cover.Finder, asked *Request, touched []*flavor.Spec, stock []*flavor.Profile) error {
	cores := max(1, min(len(touched), runtime.GOMAXPROCS(0)))
	var taken atomic.Int64
	var cutShort atomic.Bool
	r.Touched = make([]Touched, len(touched))
	failed := make([]error, len(touched))
	err := beside.Each(cores, func(int) error {
		for {
			i := int(taken.Add(1)) - 1
			if i >= len(touched) {
				return nil
			}
			var cut bool
			r.Touched[i], cut, failed[i] = inShare(ctx, (len(touched)-i+cores-1)/cores, f, asked, touched[i], stock)
			if cut {
				cutShort.Store(true)
			}
			if failed[i] != nil {
				taken.Store(int64(len(touched))) // nobody takes another
				return nil
			}
		}
	})
	r.CutShort = cutShort.Load()
	for _, e := range failed {
		if err == nil {
			err = e
		}
	}
	return err
}

// inShare covers a drink in its share of the time that is left, where so many are to share it; cut
// reports that it was not enough.
func inShare(ctx context.Context, among int, f *cover.Finder, asked *Request, s *flavor.Spec, stock []*flavor.Profile) (t Touched, cut bool, err error) {
	if errors.Is(ctx.Err(), context.DeadlineExceeded) {
		return Touched{Spec: s, Missing: missingFrom(s, asked.Out), Chosen: -1, NotSearched: true}, true, nil
	}
	own, cancel := timeShare(ctx, among)
	defer cancel()
	if t, err = touchedBy(own, f, asked, s, stock); err != nil {
		err = fmt.Errorf("%s: %w", s.Name, err)
	}
	return t, errors.Is(own.Err(), context.DeadlineExceeded), err
}

// Touching returns the drinks of a menu that pour one of the bottles out.
func Touching(menu []*flavor.Spec, out []*flavor.Profile) []*flavor.Spec {
	gone := make(map[string]bool, len(out))
	for _, p := range out {
		gone[p.ID] = true
	}
	var touched []*flavor.Spec
	for _, s := range menu {
		if slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return gone[p.Profile.ID] }) {
			touched = append(touched, s)
		}
	}
	return touched
}

// timeShare ends a context once its share of the time that is left is over, where
// so many are to share it.
func timeShare(ctx context.Context, among int) (context.Context, context.CancelFunc) {
	end, limited := ctx.Deadline()
	if !limited {
		return context.WithCancel(ctx)
	}
	return context.WithTimeout(ctx, time.Until(end)/time.Duration(among))
}

// touchedBy covers one drink of the menu.
func touchedBy(ctx context.Context, f *cover.Finder, r *Request, s *flavor.Spec, stock []*flavor.Profile) (Touched, error) {
	missing := missingFrom(s, r.Out)
	found, err := f.Find(ctx, cover.Request{Spec: s, Missing: missing, Candidates: stock, Guest: r.Guest,
		Tastings: r.Tastings, Parts: r.Parts, Limit: coversEach, Effort: r.Effort})
	if err != nil {
		return Touched{}, err
	}
	t := Touched{Spec: s, Missing: missing, Removed: found.Removed, Unstated: found.Unstated, IfLabelClears: found.IfLabelClears,
		ScoreBefore: found.ScoreBefore, Covers: found.Covers, Unbalanced: found.Unbalanced, Near: found.Near, Proven: found.Proven,
		LeftOut: found.LeftOut, Chosen: -1}
	t.whole, err = f.MayServe(&r.Guest, s)
	return t, err
}

func has(list []*flavor.Profile, p *flavor.Profile) bool {
	return slices.ContainsFunc(list, func(o *flavor.Profile) bool { return o.ID == p.ID })
}

// missingFrom lists the bottles out that a drink needs, in the order of its pours.
func missingFrom(s *flavor.Spec, out []*flavor.Profile) []*flavor.Profile {
	var missing []*flavor.Profile
	for i := range s.Pours {
		if p := s.Pours[i].Profile; has(out, p) && !has(missing, p) {
			missing = append(missing, p)
		}
	}
	return missing
}

func (t Touched) compare(o Touched) int {
	distance := func(t Touched) float64 {
		switch {
		case t.NotSearched:
			return -1 // nothing is known of it, and it comes last
		case t.Chosen < 0:
			return 1e9 // no cover at all comes first
		}
		return t.Covers[t.Chosen].Distance
	}
	return cmp.Or(cmp.Compare(distance(o), distance(t)), strings.Compare(t.Spec.Name, o.Spec.Name))
}

// countFetches counts the drinks that each of some bottles would make whole
// again.
func (r *Result) countFetches(some []*flavor.Profile) {
	for _, p := range some {
		f := Fetch{Profile: p}
		for i := range r.Touched {
			t := &r.Touched[i]
			if t.whole && len(t.Missing) == 1 && t.Missing[0].ID == p.ID {
				f.Drinks++
				if len(t.Covers) == 0 {
					f.Lost++
				}
			}
		}
		r.Fetch = append(r.Fetch, f)
	}
	slices.SortStableFunc(r.Fetch, func(a, b Fetch) int {
		return cmp.Or(cmp.Compare(b.Lost, a.Lost), cmp.Compare(b.Drinks, a.Drinks), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
}

// choose picks the covers that together want the fewest substitutes at the least
// distance. To spare a bottle no drink is given a new allergen that another cover of it spares.
func (r *Result) choose() {
	ways := make([][]choice.Way, len(r.Touched))
	for i := range r.Touched {
		for _, c := range r.Touched[i].Covers {
			w := choice.Way{Cost: c.Rank}
			if len(c.NewAllergens) > 0 {
				w.Cost += cover.SpareJND
			}
			for _, p := range c.Parts {
				w.Needs = append(w.Needs, p.Profile.ID)
			}
			ways[i] = append(ways[i], w)
		}
	}
	chosen := choice.Together(ways)
	for i := range r.Touched {
		r.Touched[i].Chosen = chosen.Of[i]
	}
	r.Opened, r.Spared, r.Given = r.opened(chosen.Of), chosen.Spared, chosen.Given
}

// opened lists the substitutes of the chosen covers, the one that serves most
// drinks first.
func (r *Result) opened(of []int) []Opened {
	var out []Opened
	for i, k := range of {
		if k < 0 {
			continue
		}
		for _, p := range r.Touched[i].Covers[k].Parts {
			at := slices.IndexFunc(out, func(o Opened) bool { return o.Profile.ID == p.Profile.ID })
			if at < 0 {
				out = append(out, Opened{Profile: p.Profile})
				at = len(out) - 1
			}
			out[at].Drinks++
		}
	}
	slices.SortFunc(out, func(a, b Opened) int {
		return cmp.Or(cmp.Compare(b.Drinks, a.Drinks), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
	return out
}
