package balance

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// Change is one pour moved, added or left out.
type Change struct {
	Pour     int // index in the spec; len(spec.Pours) for a pour that is added
	Profile  *flavor.Profile
	Unit     flavor.Unit
	From, To float64 // in the unit; From is 0 for a pour that is added, To for one left out
	FromML   float64
	ToML     float64
}

// Fix is a change that mends a draft, and the score it would have.
type Fix struct {
	Changes []Change
	Spec    flavor.Spec // with the changes made
	Score   float64
	Text    string
}

// MaxFixes is how many fixes are worth a bartender's time.
const MaxFixes = 3

// leastLift is how many points a fix must bring.
const leastLift = 3.0

// Fixes returns up to limit changes that mend a draft, the best first: one
// pour moved if that balances it, else two, else something added or left out.
// Every step of the jigger is tried, so what is found is the best there is.
// They differ in kind, none lowers the score, and the same draft always gives
// the same list. A balanced draft needs none.
func (j *Judge) Fixes(s *flavor.Spec, r *Result, limit int) ([]Fix, error) {
	if r.Verdict == template.Balanced || limit <= 0 {
		return nil, nil
	}
	f := &fixing{spec: s, base: r.Judgement.Score, faults: r.Faults}
	build, err := j.set.Prepare(s)
	if err != nil {
		return nil, err
	}
	moves := movesOf(s, r.Faults)
	f.singles(build, moves)
	if err := f.omissions(j, func(p *flavor.Profile) bool { return blames(r.Faults, p) }); err != nil {
		return nil, err
	}
	if !f.mended(straysNot) {
		f.pairs(build, moves, 0)
	}
	if !f.mended(straysNot) {
		if err := f.additions(j, moves); err != nil {
			return nil, err
		}
	}
	if !f.mended(straysNot) {
		if err := f.omissions(j, func(p *flavor.Profile) bool {
			return p.Class.Part() != flavor.PartBase && p.Class.Movable() && !blames(r.Faults, p)
		}); err != nil {
			return nil, err
		}
	}
	return f.list(j, limit)
}

// list returns the best of what was found, each of another kind, with the
// score that the mended spec gets. While something mends the draft, what leaves
// it off is not worth telling.
func (f *fixing) list(j *Judge, limit int) ([]Fix, error) {
	var out []Fix
	var told []*candidate
	spared := f.mended(straysBase)
	for _, c := range f.ranked() {
		if len(out) == limit {
			break
		}
		if slices.ContainsFunc(told, func(o *candidate) bool { return c.sameIdea(o) }) {
			continue
		}
		fix := Fix{Changes: slices.Clone(c.changes()), Text: fixText(c.changes())}
		fix.Spec = apply(f.spec, fix.Changes)
		var err error
		if fix.Score, err = j.ScoreOnly(&fix.Spec); err != nil {
			return nil, err
		}
		if fix.Score < f.base+leastLift || spared && fix.Score < template.NearFrom {
			continue
		}
		told, out = append(told, c), append(out, fix)
	}
	return out, nil
}

// ranked returns the best of each kind: what balances the draft before what
// does not, then by merit, then in a fixed order. While something else mends
// the draft, what strays far from what was ordered is left out.
func (f *fixing) ranked() []*candidate {
	most := straysBase
	for most > straysNot && f.mended(most-1) {
		most--
	}
	var out []*candidate
	for i := range f.found {
		if c := &f.found[i]; c.strays <= most && !f.idle(c) {
			out = append(out, c)
		}
	}
	slices.SortStableFunc(out, func(a, b *candidate) int {
		x, y := a.score >= template.BalancedFrom, b.score >= template.BalancedFrom
		switch {
		case x && !y:
			return -1
		case y && !x:
			return 1
		}
		return cmp.Or(cmp.Compare(b.merit, a.merit), a.compare(b))
	})
	return out
}

// idle reports whether one of two moves does as well alone.
func (f *fixing) idle(c *candidate) bool {
	return c.n > 1 && slices.ContainsFunc(f.found, func(o candidate) bool {
		return o.n == 1 && o.merit >= c.merit && c.sameIdea(&o)
	})
}

// apply returns the spec with changes made.
func apply(s *flavor.Spec, changes []Change) flavor.Spec {
	out := s.Clone()
	for _, c := range changes {
		if c.Pour == len(s.Pours) {
			out.Pours = append(out.Pours, flavor.Pour{Profile: c.Profile,
				Match: flavor.Match{Asked: c.Profile.Name, How: flavor.MatchExact}})
		}
		p := &out.Pours[c.Pour]
		p.Amount, p.Unit, p.ML = c.To, c.Unit, c.ToML
	}
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.ML == 0 })
	return out
}

func fixText(changes []Change) string {
	parts := make([]string, len(changes))
	for i, c := range changes {
		to := measure.FormatAmount(c.To, c.Unit)
		switch {
		case c.FromML == 0:
			parts[i] = fmt.Sprintf("add %s %s", to, c.Profile.Name)
		case c.ToML == 0:
			parts[i] = "leave out the " + c.Profile.Name
		default:
			parts[i] = fmt.Sprintf("pour %s %s instead of %s", to, c.Profile.Name, measure.FormatAmount(c.From, c.Unit))
		}
	}
	return strings.Join(parts, ", and ")
}
