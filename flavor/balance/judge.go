package balance

import (
	"counterpour/flavor"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
	"counterpour/flavor/balance/mend"
	"counterpour/flavor/mix"
	"counterpour/flavor/weigh"
)

// The words of an answer.
type (
	Fault  = fault.Fault
	Fix    = mend.Fix
	Change = change.Change
	Pantry = mend.Pantry
)

// MaxFixes is how many fixes are worth a bartender's time.
const MaxFixes = mend.MaxFixes

// Judge scores drafts. It is safe for concurrent use.
type Judge struct {
	mixer *mix.Mixer
	set   *weigh.Set
	bench *mend.Bench
}

// NewJudge returns a judge over a set of families.
func NewJudge(mixer *mix.Mixer, set *weigh.Set, pantry Pantry) *Judge {
	j := &Judge{mixer: mixer, set: set}
	j.bench = &mend.Bench{Set: set, Pantry: pantry, Faults: j.wrong}
	return j
}

// Result is a draft scored.
type Result struct {
	Drink     *mix.Drink
	Judgement weigh.Judgement
	Verdict   weigh.Verdict
	Faults    []Fault // the worst first; none if the draft is balanced
}

// Score works out the drink and judges it. It fails if the spec has no pours,
// or one without an ingredient or with an amount that is not positive.
func (j *Judge) Score(s *flavor.Spec) (*Result, error) {
	r, build, err := j.score(s)
	if err != nil {
		return nil, err
	}
	build.Done()
	fault.Tell(r.Faults)
	return r, nil
}

// Mend is Score and Fixes in one, and quicker than one after the other. A fault of a pour that
// the first fix moves alone says by how much the fix moves it.
func (j *Judge) Mend(s *flavor.Spec, limit int) (*Result, []Fix, error) {
	r, build, err := j.score(s)
	if err != nil {
		return nil, nil, err
	}
	defer build.Done()
	fixes, err := j.bench.Fixes(draftOf(s, r, build), limit)
	if err == nil && len(fixes) > 0 {
		fault.Agree(r.Faults, fixes[0].Changes)
	}
	fault.Tell(r.Faults)
	return r, fixes, err
}

// score is Score without the sentences of the faults, see [fault.Tell], and the spec made ready,
// which the caller says when it is done with.
func (j *Judge) score(s *flavor.Spec) (*Result, *weigh.Build, error) {
	drink, err := j.mixer.Mix(s)
	if err != nil {
		return nil, nil, err
	}
	build, err := j.set.Prepare(s)
	if err != nil {
		return nil, nil, err
	}
	r := &Result{Drink: drink, Judgement: build.Judge(build.Amounts())}
	r.Verdict = weigh.VerdictOf(r.Judgement.Score)
	if r.Verdict != weigh.Balanced {
		if r.Faults, err = j.faults(s, &r.Judgement, build); err != nil {
			build.Done()
			return nil, nil, err
		}
	}
	return r, build, nil
}

// Prepare makes a spec ready to be scored with many amounts.
func (j *Judge) Prepare(s *flavor.Spec) (*weigh.Build, error) { return j.set.Prepare(s) }

// Fixes returns up to limit changes that mend a draft, see [mend.Bench.Fixes].
func (j *Judge) Fixes(s *flavor.Spec, r *Result, limit int) ([]Fix, error) {
	if r.Verdict == weigh.Balanced || limit <= 0 {
		return nil, nil
	}
	build, err := j.set.Prepare(s)
	if err != nil {
		return nil, err
	}
	defer build.Done()
	return j.bench.Fixes(draftOf(s, r, build), limit)
}

// draftOf is a draft that was scored, for the bench that mends it.
func draftOf(s *flavor.Spec, r *Result, build *weigh.Build) *mend.Draft {
	return &mend.Draft{Spec: s, Score: r.Judgement.Score, Faults: r.Faults, Build: build}
}

// wrong says what is wrong with a draft that is halfway mended.
func (j *Judge) wrong(s *flavor.Spec) ([]Fault, *weigh.Build, error) {
	r, build, err := j.score(s)
	if err != nil {
		return nil, nil, err
	}
	return r.Faults, build, nil
}

// ScoreOnly returns the score alone.
func (j *Judge) ScoreOnly(s *flavor.Spec) (float64, error) {
	build, err := j.set.Prepare(s)
	if err != nil {
		return 0, err
	}
	defer build.Done()
	return build.Score(build.Amounts()), nil
}

// Explain works out the score of a draft line by line; see [arithmetic.Of]. Its faults are those
// of [weigh.Set.Prepare].
func (j *Judge) Explain(s *flavor.Spec) ([]arithmetic.Step, error) {
	build, err := j.set.Prepare(s)
	if err != nil {
		return nil, err
	}
	return arithmetic.Of(s, build.Detail(build.Amounts())), nil
}
