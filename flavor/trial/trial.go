package trial

import (
	"errors"
	"fmt"
	"slices"
	"sync"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/beside"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Rig is what a trial needs.
type Rig struct {
	Families []template.Family
	Proven   []template.Labelled
	Tuning   template.Tuning
	Pantry   balance.Pantry
	Advise   bool   // try fixes too, which takes longer
	Larder   Larder // for what is poured in mischief; nil leaves that out
}

// Case is one drink judged: proven if Factor is 1, else spoilt.
type Case struct {
	Name, Family, Taken string
	Second              string // the second most probable family
	Recalled            bool   // the source of the proven drink was not read
	Axis                ratio.Axis
	Factor              float64
	Score, Own          float64 // Own is the score of the drink unspoilt
	Faults              []balance.Fault
	// Of the first fix, if the rig advises: whether it balances the drink, and
	// whether it moves what was spoilt back. A drink that is balanced as it is
	// needs no fix.
	Mended, Undone bool
}

// Proven reports whether the drink is as its book gives it.
func (c *Case) Proven() bool { return c.Factor == 1 }

// Run leaves out each proven drink in turn, fits the families to the others
// and judges the drink and its spoilt versions, several drinks at once. It calls
// progress, which may be nil, once for each drink, never at once. It fails
// if there are no proven drinks or one of them cannot be judged.
func (r *Rig) Run(progress func(done, total int)) (*Report, error) {
	if len(r.Proven) == 0 {
		return nil, errors.New("trial: there are no proven drinks to leave out")
	}
	mixer, err := mix.NewMixer()
	if err != nil {
		return nil, err
	}
	start, err := template.Learn(r.Families, r.Proven, r.Tuning)
	if err != nil {
		return nil, err
	}
	learned := earlier{start, template.LessonsOf(r.Proven), weigh.LessonsOf(r.Proven)}
	cases, pranks := make([][]Case, len(r.Proven)), make([][]Prank, len(r.Proven))
	var told sync.Mutex
	done := 0
	err = beside.Each(len(r.Proven), func(i int) (err error) {
		if cases[i], pranks[i], err = r.leaveOut(i, mixer, &learned); err != nil {
			return fmt.Errorf("trial: %s: %w", r.Proven[i].Spec.Name, err)
		}
		told.Lock()
		defer told.Unlock()
		if done++; progress != nil {
			progress(done, len(r.Proven))
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	out := r.report(slices.Concat(cases...))
	out.Pranks = slices.Concat(pranks...)
	out.Mischiefs = mischiefReports(out.Pranks)
	return out, nil
}

// earlier is what was learned of all proven drinks, and what each of them teaches.
type earlier struct {
	whole []template.Fitted
	fits  []template.Lesson
	sets  []*weigh.Lesson
}

// leaveOut judges proven drink i, its spoilt versions and the mischief done to it, by what
// the others teach.
func (r *Rig) leaveOut(i int, mixer *mix.Mixer, learned *earlier) ([]Case, []Prank, error) {
	judge, err := r.without(i, mixer, learned)
	if err != nil {
		return nil, nil, err
	}
	cases, err := r.drink(judge, &r.Proven[i])
	if err != nil {
		return nil, nil, err
	}
	pranks, err := r.pranks(judge, &r.Proven[i])
	return cases, pranks, err
}

// without returns a judge that has never seen proven drink i.
func (r *Rig) without(i int, mixer *mix.Mixer, learned *earlier) (*balance.Judge, error) {
	fitted, err := template.LearnWithout(r.Families, learned.fits, i, r.Tuning, learned.whole)
	if err != nil {
		return nil, err
	}
	set, err := weigh.NewSetFrom(r.Families, fitted, slices.Delete(slices.Clone(learned.sets), i, i+1), r.Tuning)
	if err != nil {
		return nil, err
	}
	return balance.NewJudge(mixer, set, r.Pantry), nil
}

// drink judges a proven drink and its spoilt versions.
func (r *Rig) drink(j *balance.Judge, p *template.Labelled) ([]Case, error) {
	own, _, err := judged(j, &p.Spec, p.Family)
	if err != nil {
		return nil, err
	}
	own.Factor, own.Own, own.Recalled = 1, own.Score, p.Recalled()
	out := []Case{own}
	for _, s := range Spoilings() {
		for _, axis := range spoiltAxes {
			for _, factor := range []float64{s.Up, s.Down} {
				spec, ok := Spoil(&p.Spec, axis, factor)
				if !ok {
					continue
				}
				c, result, err := judged(j, &spec, p.Family)
				if err != nil {
					return nil, err
				}
				c.Axis, c.Factor, c.Own, c.Recalled = axis, factor, own.Score, own.Recalled
				if r.Advise {
					if err := c.advise(j, &spec, result); err != nil {
						return nil, err
					}
				}
				out = append(out, c)
			}
		}
	}
	return out, nil
}

func judged(j *balance.Judge, s *flavor.Spec, family string) (Case, *balance.Result, error) {
	r, err := j.Score(s)
	if err != nil {
		return Case{}, nil, err
	}
	c := Case{Name: s.Name, Family: family, Taken: r.Judgement.Fits[0].ID, Score: r.Judgement.Score, Faults: r.Faults}
	if len(r.Judgement.Fits) > 1 {
		c.Second = r.Judgement.Fits[1].ID
	}
	return c, r, nil
}

// advise looks at the first fix.
func (c *Case) advise(j *balance.Judge, s *flavor.Spec, r *balance.Result) error {
	if r.Verdict == weigh.Balanced {
		c.Mended = true
		return nil
	}
	fixes, err := j.Fixes(s, r, 1)
	if err != nil || len(fixes) == 0 {
		return err
	}
	c.Mended = fixes[0].Score >= weigh.BalancedFrom
	for _, ch := range fixes[0].Changes {
		if ch.Profile.Class.Part() == c.Axis.Part() && (ch.ToML < ch.FromML) == (c.Factor > 1) {
			c.Undone = true
		}
	}
	return nil
}
