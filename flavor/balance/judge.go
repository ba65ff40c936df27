package balance

import (
	"counterpour/flavor"
	"counterpour/flavor/balance/arithmetic"
	"counterpour/flavor/mix"
	"counterpour/flavor/weigh"
)

// Judge scores drafts. It is safe for concurrent use.
type Judge struct {
	mixer  *mix.Mixer
	set    *weigh.Set
	pantry Pantry
}

// Pantry is what the judge may propose to add when no pour of the draft can
// mend it; an ingredient that is nil is not proposed. What proven drinks pour is proposed
// too, unless the pantry is empty.
type Pantry struct {
	Syrup   *flavor.Profile   // rich syrup
	Sour    *flavor.Profile   // lemon juice
	Bitters *flavor.Profile   // aromatic bitters
	Length  *flavor.Profile   // soda water
	Water   *flavor.Profile   // lengthens what is hot, in which nothing sparkles
	Sober   []*flavor.Profile // bases without alcohol, for a draft without
}

// empty reports whether nothing may be proposed to add.
func (p *Pantry) empty() bool {
	return p.Syrup == nil && p.Sour == nil && p.Bitters == nil && p.Length == nil && p.Water == nil && len(p.Sober) == 0
}

// NewJudge returns a judge over a set of families.
func NewJudge(mixer *mix.Mixer, set *weigh.Set, pantry Pantry) *Judge {
	return &Judge{mixer: mixer, set: set, pantry: pantry}
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
	tell(r.Faults)
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
	fixes, err := j.fixes(s, r, build, limit)
	if err == nil && len(fixes) > 0 {
		agree(r.Faults, &fixes[0])
	}
	tell(r.Faults)
	return r, fixes, err
}

// score is Score without the sentences of the faults, see [tell], and the spec made ready,
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

// reaches returns the score of a spec and whether it is least or more; if it is not, the
// score is no more than a bound. See [weigh.Build.Reaches].
func (j *Judge) reaches(s *flavor.Spec, least float64) (score float64, ok bool, err error) {
	build, err := j.set.Prepare(s)
	if err != nil {
		return 0, false, err
	}
	defer build.Done()
	score, ok = build.Reaches(build.Amounts(), least)
	return score, ok, nil
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
