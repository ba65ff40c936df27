package cover

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"sync"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/role"
	"counterpour/flavor/cover/search"
	"counterpour/flavor/guest"
	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
)

// Finder finds covers. It is safe for concurrent use.
type Finder struct {
	mixer   *mix.Mixer
	judge   *balance.Judge
	space   *sense.Space
	trade   gap.Trade
	weights Weights
	desks   sync.Pool
}

// NewFinder returns a finder that knows the customs of the trade and judges by
// weights.
func NewFinder(mixer *mix.Mixer, judge *balance.Judge, space *sense.Space, customs *flavor.Customs, w Weights) *Finder {
	return &Finder{mixer: mixer, judge: judge, space: space, weights: w,
		trade: gap.Trade{Cellar: role.NewCellar(space, nil), Customs: customs, Weights: w.Gap, Near: NearJND}}
}

// Pour tells a finder how many mL of something a bartender pours in one drink. It is for whoever
// makes the finder, before its first search.
func (f *Finder) Pour(atMost func(*flavor.Profile) float64) {
	f.trade.Cellar = role.NewCellar(f.space, atMost)
}

// Space is the space in which it tells glasses apart.
func (f *Finder) Space() *sense.Space { return f.space }

// Limits of a request.
const (
	MaxParts = search.MaxParts
	MaxLimit = 100
)

// Request asks for covers.
type Request struct {
	Spec       *flavor.Spec
	Missing    []*flavor.Profile // what ran out; one or more pours of the spec
	Candidates []*flavor.Profile // what may be poured instead
	// Common weighs candidates by how common they are, for when nobody has said
	// what is at hand; nil if all of them are.
	Common   *flavor.Commonness
	Guest    guest.Guest
	Tastings []Tasting // what the house has learnt of covers
	// Parts is the most substitutes, 1 to MaxParts, for one thing that had to go;
	// each further one may have one more, up to MaxParts in all. 0 means 2.
	Parts int
	Limit int  // most covers, 1 to MaxLimit; 0 means 10
	Far   bool // list what ranks far behind the best too
	// Effort is how much work the search may take, see [search.Problem]; 0 means as
	// much as it needs. What it has by then, or by the deadline of the context, is
	// returned as the best so far.
	Effort int
}

// Cover is one way to pour the drink without what is missing.
type Cover struct {
	Parts []flavor.Pour
	// For is what each part stands for, of what had to go.
	For []*flavor.Profile
	// Without is what had to go and nothing stands for: the drink is poured without it.
	Without  []*flavor.Profile
	Changes  []balance.Change // other pours that move
	Spec     flavor.Spec
	Distance float64 // just-noticeable differences between the two finished drinks
	// Beside is the same without the alcohol that the guest must not have, 0 where that
	// is not in question.
	Beside float64
	Notice sense.Notice
	Score  float64
	// Gone is what led the missing ingredients and is not in the glass any more.
	Gone         []sense.Lost
	Lost, Gained []flavor.AromaFamily
	ABV          float64 // % vol, finished
	ABVChange    float64 // % vol, finished
	VolumeChange float64 // mL, finished
	Marks        []flavor.AllergenMark
	NewAllergens []flavor.Allergen
	Read         []*flavor.Profile // whose labels must clear it for the guest; none for a safe cover
	ReadFor      []string          // what each of those labels must say, see [guest.Guest.Cleared]
	Ask          []string          // what to ask the guest before it is poured, see [flavor.Spec.Ask]
	Also         []Cover           // covers that come to the same glass, the best first
	Text         string
	Custom       bool  // the trade, or the house, pours it in place of what went
	Ahead        Ahead // why it ranks above a nearer one of its list

	// Keeps is true if it keeps the drink, the alcohol apart that the guest must not have:
	// it lies within [NearJND], hardly further and is what every bar pours, or is
	// poured by custom, not much further, and has lost nothing that led.
	Keeps bool

	// OtherSpirit is true if a spirit of another class stands for what the drink is made on: guests
	// order by that, and are told, however near the glass.
	OtherSpirit bool

	// Rank is what covers of a drink are listed by, the least first, in just-noticeable
	// steps: the distance, and what the parts must earn.
	Rank float64
}

// Result is the covers found, the best first.
type Result struct {
	ScoreBefore float64
	// Removed are the pours that had to go: what is missing, and what the guest
	// must not have.
	Removed []*flavor.Profile
	// Unstated are those of Removed that are not missing and whose label may clear them
	// for the guest: they may carry what the guest avoids, or nobody has stated it.
	Unstated    []*flavor.Profile
	UnstatedFor []string // what each of those labels must say, see [guest.Guest.Cleared]
	Covers      []Cover
	// IfLabelClears are covers that hold something which may carry what the guest avoids,
	// or of which nobody has stated it. They are safe only if the labels in Read say so. One
	// without parts leaves out what went.
	IfLabelClears []Cover
	// LabelFirst is true if the first of IfLabelClears would rank before every cover: its labels
	// are what to read first.
	LabelFirst bool
	// Unbalanced is true if no cover keeps the drink in balance, and those
	// listed do not.
	Unbalanced bool
	// LeftOut is the drink with nothing poured instead; nil unless that keeps it
	// within [NearJND], or is in balance, within [LastJND], and no cover is nearer or
	// ranks before it. Where nothing covers a foam or a milk it may be another drink
	// altogether, in balance; and so may a long drink without its spirit, for a guest who
	// drinks no alcohol.
	LeftOut *Cover
	// LeftOutBest is true if that is in balance, or a long drink, and does better than every cover.
	LeftOutBest bool
	Near        bool // some cover keeps the drink, or leaving out what went does
	Proven      bool // no better cover is possible; false if time or effort ran out

	strayed, labels int // how far its covers, and those by label, are from being like what went, see [task.strayed]
}

// Find returns the best covers. It fails if the request is out of range, if
// what is missing is not in the spec, or if ctx is cancelled.
func (f *Finder) Find(ctx context.Context, r Request) (*Result, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	r.Spec = r.Guest.Serve(r.Spec)
	all, unasked := r.Guest.Untroubled(r.Candidates, r.Spec)
	r.Candidates = unasked
	result, err := f.covers(ctx, &r, false)
	if err != nil {
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

// hopeless reports whether nothing covers what went but what is nothing like it, and another drink.
func (r *Result) hopeless() bool {
	return r.empty() || r.LeftOut == nil && min(r.strayed, r.labels) == strayedAll && !slices.ContainsFunc(r.Covers, Cover.worthPouring)
}

// empty reports whether nothing at all covers what went.
func (r *Result) empty() bool {
	return len(r.Covers) == 0 && len(r.IfLabelClears) == 0 && r.LeftOut == nil
}

// addLabels adds what is safe only if a label clears it, and leaving out what went where
// nothing is safe.
func (f *Finder) addLabels(ctx context.Context, r *Request, to *Result) error {
	if !r.Guest.HeedsLabels() {
		return nil
	}
	unsure, err := f.covers(ctx, r, true)
	if err != nil {
		return err
	}
	to.labels = unsure.strayed
	to.LabelFirst = len(unsure.Covers) > 0 && len(unsure.Covers[0].Read) > 0
	if c := unsure.LeftOut; c != nil && len(c.Read) > 0 && len(to.Covers) == 0 && to.LeftOut == nil {
		at := len(unsure.Covers)
		if unsure.LeftOutBest {
			at = 0
		}
		unsure.Covers = slices.Insert(unsure.Covers, at, *c)
		to.LabelFirst = true
	}
	for _, c := range unsure.Covers {
		if len(c.Read) > 0 {
			to.IfLabelClears = append(to.IfLabelClears, c)
		}
	}
	if to.strayed > unsure.strayed && len(to.IfLabelClears) > 0 && !r.Guest.NoAlcohol && !slices.ContainsFunc(to.Covers, Cover.worthPouring) {
		to.Covers = slices.DeleteFunc(to.Covers, func(c Cover) bool { return !c.Keeps && c.Distance > strangeJND })
		to.LabelFirst = true
		if len(to.Covers) == 0 {
			to.Unbalanced, to.Near = false, to.LeftOut != nil && to.LeftOut.Keeps
		}
	}
	to.Proven = to.Proven && unsure.Proven
	return nil
}

// strangeJND is how far a safe cover may move a drink, in just-noticeable differences, that stands
// beside one which keeps it once a label is read: who cannot read a label still pours something.
// Judged.
const strangeJND = 5.0

// worthPouring reports whether a cover has a place beside others that are more like what went,
// though a label must be read for those: the trade pours it, or it keeps the drink and what led.
func (c Cover) worthPouring() bool { return c.Custom || c.Keeps && len(c.Gone) == 0 }

// covers finds the covers of a request; with labels, those that some label would
// have to clear.
func (f *Finder) covers(ctx context.Context, r *Request, labels bool) (*Result, error) {
	task, err := f.newTask(r, labels)
	if err != nil {
		return nil, err
	}
	defer task.done()
	result := &Result{ScoreBefore: task.scoreBefore, Removed: task.gap.Profiles(), Unstated: task.gap.Unstated(), Proven: true}
	for _, p := range result.Unstated {
		result.UnstatedFor = append(result.UnstatedFor, r.Guest.Cleared(p))
	}
	if err := task.addCandidates(); err != nil {
		return nil, err
	}
	spared := task.spare(false)
	if len(spared) == 0 {
		if err := task.find(ctx, result); err != nil {
			return nil, err
		}
		spared = task.spare(true)
	}
	if len(result.Covers) == 0 && len(spared) > 0 {
		if err := task.findSparing(ctx, spared, result); err != nil {
			return nil, err
		}
	}
	result.strayed = task.strayed
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
		if pass.base && !t.baseMoves() || pass.strict && t.gap.Less {
			continue // it would be the same search again, or nothing keeps the balance
		}
		t.strict = pass.strict
		t.addMoves(pass.base)
		ideas, proven, err := t.ideas(ctx)
		if err != nil {
			return err
		}
		to.Proven = to.Proven && proven
		if len(ideas) == 0 {
			continue
		}
		to.Unbalanced = !pass.strict && !t.gap.Less
		for i := range ideas {
			c := t.describe(&ideas[i])
			to.Near = to.Near || c.Keeps
			to.Covers = append(to.Covers, c)
		}
		return nil
	}
	return nil
}

func (r *Request) check() error {
	if r.Limit == 0 {
		r.Limit = 10
	}
	switch {
	case r.Spec == nil || len(r.Missing) == 0:
		return errors.New("cover: a request needs a spec and what is missing")
	case r.Parts < 0 || r.Parts > MaxParts:
		return fmt.Errorf("cover: %d substitutes; ask for 1 to %d", r.Parts, MaxParts)
	case r.Limit < 1 || r.Limit > MaxLimit:
		return fmt.Errorf("cover: limit %d; ask for 1 to %d", r.Limit, MaxLimit)
	}
	for _, m := range r.Missing {
		if !r.Spec.HasProfile(m) {
			return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: "missing", Value: m.Name,
				Message: fmt.Sprintf("%s is not a pour of this drink; name one that is", m.Name)}
		}
	}
	return r.Guest.Check()
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
	drink, err := f.mixer.Mix(s)
	if err != nil {
		return false, err
	}
	return !g.TooStrong(drink.ABV), nil
}
