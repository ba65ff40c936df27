package mend

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/balance/fault"
)

// without leaves out every pour of some ingredients.
func (f *fixing) without(is func(*flavor.Profile) bool) []change.Change {
	return change.Without(f.spec, is)
}

// isStrange reports whether hardly any drink of the draft's kind has an ingredient: less
// of it mends nothing.
func (f *fixing) isStrange(p *flavor.Profile) bool {
	return slices.ContainsFunc(f.faults, func(x fault.Fault) bool { return x.Strange && x.Profile == p })
}

// strange reports whether the first that is wrong is what hardly any drink of the draft's
// kind has.
func (f *fixing) strange() bool { return len(f.faults) > 0 && f.faults[0].Strange }

// rids reports whether a candidate leaves out what is strange, if that is the first that
// is wrong.
func (f *fixing) rids(c *candidate) bool {
	return f.strange() && slices.ContainsFunc(c.changes, func(x change.Change) bool { return x.Profile == f.faults[0].Profile && x.ToML == 0 })
}

// leaveStrangeOut leaves out all that is strange at once.
func (f *fixing) leaveStrangeOut() {
	if f.strange() {
		f.tryWithout(0, change.MostSteps, f.isStrange)
	}
}

func (f *fixing) leaveOut(p *flavor.Profile, asked int) {
	f.tryWithout(asked, change.MostSteps, func(o *flavor.Profile) bool { return o == p })
}

// byLeavingOut tries to leave out each pour but the base.
func (f *fixing) byLeavingOut() error {
	if len(f.spec.Pours) < 3 {
		return nil
	}
	for i := range f.spec.Pours {
		p := f.spec.Pours[i].Profile
		if !p.Base() && (p.Class.Movable() || p.Class == flavor.ClassEgg) && f.spec.IndexOf(p) == i {
			f.leaveOut(p, unasked)
		}
	}
	return nil
}

// byLeavingMuchOut leaves out pour after pour, each time the one without which the draft is
// best, until it is balanced or only one is left.
func (f *fixing) byLeavingMuchOut() error {
	var out []*flavor.Profile
	for len(out)+1 < len(f.spec.Pours) {
		c, worst := f.withoutOneMore(out)
		if worst == nil {
			return nil
		}
		f.keep(c)
		if c.balanced() {
			return nil
		}
		out = append(out, worst)
	}
	return nil
}

// withoutOneMore leaves out, beside some ingredients, the one without which the draft is
// best, and says which that is; nil if nothing would be left.
func (f *fixing) withoutOneMore(out []*flavor.Profile) (best candidate, worst *flavor.Profile) {
	for i := range f.spec.Pours {
		p := f.spec.Pours[i].Profile
		if slices.Contains(out, p) {
			continue
		}
		c := candidate{asked: unasked, steps: change.MostSteps, sure: true,
			changes: f.without(func(o *flavor.Profile) bool { return o == p || slices.Contains(out, o) })}
		if len(c.changes) == len(f.spec.Pours) {
			continue
		}
		if c.score = f.scoreWith(c.changes, best.score); worst == nil || c.score > best.score {
			best, worst = c, p
		}
	}
	return best, worst
}
