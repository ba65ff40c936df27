package cover

import (
	"context"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/idea"
	"counterpour/flavor/cover/listing"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/sister"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Finder finds covers. It is safe for concurrent use.
type Finder struct{ tools idea.Tools }

// NewFinder returns a finder that knows the customs of the trade and judges by
// weights.
func NewFinder(mixer *mix.Mixer, judge *balance.Judge, space *sense.Space, customs *flavor.Customs, w Weights) *Finder {
	return &Finder{tools: idea.Tools{Mixer: mixer, Judge: judge, Space: space, Weights: w,
		Trade: gap.Trade{Cellar: role.NewCellar(space, nil), Customs: customs, Weights: w.Gap, Near: NearJND}}}
}

// Pour tells a finder how many mL of something a bartender pours in one drink. It is for whoever
// makes the finder, before its first search.
func (f *Finder) Pour(atMost func(*flavor.Profile) float64) {
	f.tools.Trade.Cellar = role.NewCellar(f.tools.Space, atMost)
}

// Know tells a finder which drinks are proven, so that it says what another bottle makes of one. It is
// for whoever makes the finder, before its first search.
func (f *Finder) Know(proven []sister.Drink) {
	f.tools.Trade.Sisters = sister.NewBook(proven, f.tools.Trade.Customs)
}

// Space is the space in which it tells glasses apart.
func (f *Finder) Space() *sense.Space { return f.tools.Space }

// task is one request being worked on.
type task struct {
	*listing.List
	finder *Finder
	whole  *whole // the drink that was ordered, where this is what is left of it
}

// newTask measures the drink and what leaves it; with labels, what only some label would have to
// clear may be poured.
func (f *Finder) newTask(r *Request, labels bool) (*task, error) {
	t, err := f.tools.NewTask(r, labels)
	if err != nil {
		return nil, err
	}
	return &task{List: &listing.List{Task: t}, finder: f}, nil
}

// Customary lists what the trade pours in place of an ingredient, the first choice first.
func (f *Finder) Customary(p *flavor.Profile) []flavor.Custom { return f.tools.Trade.Customs.For(p.ID) }

// CustomaryDry lists the same for a guest who drinks no alcohol: behind what is poured for
// everybody, what is where the ingredient is a spirit or what a drink is made on.
func (f *Finder) CustomaryDry(p *flavor.Profile) []flavor.Custom {
	out := f.Customary(p)
	for i, id := range f.tools.Trade.Customs.Dry(p.Class) {
		out = append(out, flavor.Custom{Parts: []string{id}, Place: len(out) + i})
	}
	return out
}

// Find returns the best covers. It fails if the request is out of range, if
// what is missing is not in the spec, or if ctx is cancelled.
func (f *Finder) Find(ctx context.Context, r Request) (*Result, error) {
	if err := r.Check(); err != nil {
		return nil, err
	}
	r.Spec = r.Guest.Serve(r.Spec)
	all, unasked := r.Guest.Untroubled(r.Candidates, r.Spec)
	r.Candidates = unasked
	result, err := f.covers(ctx, &r, false)
	if err != nil {
		return nil, err
	}
	if err := f.addMadeOfThree(ctx, &r, result); err != nil {
		return nil, err
	}
	if err := f.addLabels(ctx, &r, result); err != nil {
		return nil, err
	}
	if len(unasked) < len(all) && result.hopeless() {
		r.Candidates = all
		asking, err := f.covers(ctx, &r, false)
		if err != nil {
			return nil, err
		}
		if result.empty() || asking.Near {
			result = asking
		}
	}
	if !r.Guest.MayHaveLaid(r.Spec) { // nothing that is poured makes up for what a step brings
		return &Result{ScoreBefore: result.ScoreBefore, Removed: result.Removed, Unstated: result.Unstated, UnstatedFor: result.UnstatedFor, Proven: result.Proven}, nil
	}
	rankedAhead(result.Covers)
	rankedAhead(result.IfLabelClears)
	return result, nil
}

// covers finds the covers of a request; with labels, those that some label would
// have to clear.
func (f *Finder) covers(ctx context.Context, r *Request, labels bool) (*Result, error) {
	task, err := f.newTask(r, labels)
	if err != nil {
		return nil, err
	}
	defer task.Done()
	result := &Result{ScoreBefore: task.ScoreBefore, Removed: task.Gap.Profiles(), Unstated: task.Gap.Unstated(), Proven: true}
	for _, p := range result.Unstated {
		result.UnstatedFor = append(result.UnstatedFor, r.Guest.Cleared(p))
	}
	if err := task.AddCandidates(); err != nil {
		return nil, err
	}
	spared := task.Spare(false)
	if len(spared) == 0 {
		if err := task.find(ctx, result); err != nil {
			return nil, err
		}
		spared = task.Spare(true)
	}
	if len(result.Covers) == 0 && len(spared) > 0 {
		if err := task.findSparing(ctx, spared, result); err != nil {
			return nil, err
		}
	}
	result.strayed = task.Strayed
	return result, task.addLeftOut(result)
}

// find adds the covers of what went.
func (t *task) find(ctx context.Context, to *Result) error {
	if err := t.addOneByOne(ctx); err != nil {
		return err
	}
	// The base is what the guest ordered: it moves only if nothing else keeps
	// the drink in balance, and balance is given up only after that.
	for _, pass := range []struct{ base, strict bool }{{false, true}, {true, true}, {false, false}} {
		if pass.base && !t.BaseMoves() || pass.strict && t.Gap.Less {
			continue // it would be the same search again, or nothing keeps the balance
		}
		t.Strict = pass.strict
		t.AddMoves(pass.base)
		ideas, proven, err := t.Ideas(ctx)
		if err != nil {
			return err
		}
		to.Proven = to.Proven && proven
		if len(ideas) == 0 {
			continue
		}
		if !pass.strict {
			if err := t.rebuildUnbalanced(ideas); err != nil {
				return err
			}
		}
		to.Unbalanced = !pass.strict && !t.Gap.Less && !slices.ContainsFunc(ideas, func(x idea.Idea) bool { return x.Score >= t.LeastScore() })
		for i := range ideas {
			c := t.describe(&ideas[i])
			to.Near = to.Near || c.Keeps
			to.Covers = append(to.Covers, c)
		}
		return nil
	}
	return nil
}

// MayServe reports whether a guest may have a drink as it is written, without what of its garnish
// the guest must not have. It fails if its strength is asked for and it cannot be mixed.
func (f *Finder) MayServe(g *guest.Guest, s *flavor.Spec) (bool, error) {
	if !g.MayHaveAll(g.Serve(s)) {
		return false, nil
	}
	if g.MaxABV <= 0 {
		return true, nil
	}
	drink, err := f.tools.Mixer.Mix(s)
	if err != nil {
		return false, err
	}
	return !g.TooStrong(drink.ABV), nil
}
