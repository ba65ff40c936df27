package mend

import (
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/measure"
	"counterpour/flavor/weigh"
)

// byAdding tries what the pantry holds, and a base if there is none.
func (f *fixing) byAdding() error {
	return f.adding(f.additions(), true)
}

// byCompanions tries what proven drinks pour beside all that the draft has.
func (f *fixing) byCompanions() error {
	const few = 6
	if f.bench.Pantry.empty() || f.accompanied {
		return nil
	}
	f.accompanied = true
	short := f.short()
	var out []addition
	asked := unasked
	if len(f.faults) > 0 && f.faults[0].Beside {
		asked = 0
	}
	for _, c := range f.build.Forgotten().Companions(few) {
		jigger := flavor.Ounce
		if measure.SystemOf(f.spec) == measure.Metric {
			jigger = flavor.Millilitre
		}
		u, ok := c.Profile.UsualUnit(jigger)
		if flat := f.spec.Service == flavor.Hot && (c.Profile.Carbonated || c.Profile.Class.Sparkles()); !ok || flat {
			continue
		}
		a := addition{profile: c.Profile, unit: u, asked: asked, fills: short && c.Profile.Class.Part() == flavor.PartLength}
		short = short && !a.fills // the likeliest alone
		for _, times := range []float64{0.5, 0.75, 1, 1.5, 2} {
			if x := measure.Snap(c.ML*times, u, c.Profile); x > 0 && f.fits(c.ML*times) && !slices.Contains(a.amounts, x) {
				a.amounts = append(a.amounts, x)
			}
		}
		out = append(out, a)
	}
	return f.adding(out, false)
}

// short reports whether a draft that is served long is so small for its kind that something
// that lengthens it may have been forgotten: less of what else is in it is then no drink.
func (f *fixing) short() bool {
	const hardly = 0.6 // of what is usual; judged
	return f.spec.Service == flavor.Long && f.spec.VolumeML() < hardly*f.build.UsualML(f.ml)
}

// fits reports whether so many mL more go into the largest glass, or the draft is for more
// than one guest anyway.
func (f *fixing) fits(ml float64) bool {
	all := f.spec.VolumeML()
	return all >= batchFromML || all+ml <= weigh.MostML
}

// adding tries to add something to the draft and, if that does not balance it and besides
// is true, to move one pour beside it.
func (f *fixing) adding(additions []addition, besides bool) error {
	for place := range additions {
		if err := f.add(&additions[place], place, besides); err != nil {
			return fmt.Errorf("trying to add %s: %w", additions[place].profile.Name, err)
		}
	}
	return nil
}

// add is adding for one of them, at its place among all.
func (f *fixing) add(a *addition, place int, besides bool) error {
	at := len(f.spec.Pours)
	ladder := a.ladder(at)
	if len(ladder) == 0 || f.spikes(ladder) {
		return nil
	}
	with := change.Apply(f.spec, []change.Change{ladder[len(ladder)/2]})
	build, err := f.bench.Set.Prepare(&with)
	if err != nil {
		return err
	}
	defer build.Done()
	ladder = filling(ladder, build, with.VolumeML()-ladder[len(ladder)/2].ToML)
	added := fixing{bench: f.bench, spec: &with, base: f.base, faults: f.faults, build: build, ml: build.Amounts(), free: f.free}
	k, score := added.along(at, ladder, comfortable)
	c := candidate{changes: []change.Change{ladder[k]}, asked: a.asked, steps: place*change.MostSteps + k + 1, score: score, puts: a.asked == 0 && f.forgets() || a.fills}
	f.keep(c)
	if c.balanced() || !besides {
		return nil
	}
	added.ml[at] = ladder[k].ToML
	added.spec = f.spec
	added.besides(&c)
	f.found = append(f.found, added.found...)
	return nil
}

// filling leaves of the amounts of what lengthens a draft of rest mL those that bring it to
// most of what drinks of its kind are: the least that passes is a short drink in a tall glass.
func filling(ladder []change.Change, build *weigh.Build, rest float64) []change.Change {
	if ladder[0].Profile.Class.Part() != flavor.PartLength {
		return ladder
	}
	least := mostOfUsual*build.UsualML(build.Amounts()) - rest
	for len(ladder) > 1 && ladder[0].ToML < least {
		ladder = ladder[1:]
	}
	return ladder
}

// mostOfUsual is the share of the usual size of its kind that a drink is lengthened to at
// least. Judged.
const mostOfUsual = 0.8

// besides moves one pour of the draft beside one that was added.
func (f *fixing) besides(c *candidate) {
	for i := range f.spec.Pours {
		for _, more := range []bool{false, true} {
			ladder := f.served(f.freely(i, more))
			if at, score := f.along(i, ladder, comfortable); at >= 0 {
				f.keep(candidate{changes: []change.Change{c.changes[0], ladder[at]}, asked: c.asked, steps: c.steps + at + 1, score: score, puts: c.puts})
			}
		}
	}
}
