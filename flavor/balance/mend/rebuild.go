package mend

import (
	"counterpour/flavor"
	"counterpour/flavor/balance/change"
	"counterpour/flavor/makeup"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// What a sour holds beside two measures of base: three quarters of an ounce of syrup, as 1:1, and as
// much juice; and what is poured of the base. Common practice, no source.
const (
	sourSyrupML = 22.5
	sourJuiceML = 22.5
	sourBaseML  = 60.0
	muchSyrup   = 2.0 // times that, from where syrup is what the draft is made of
)

// byRebuilding makes a sour of a draft that is little but syrup and that nothing else brings near: all
// that sweetens is poured in the same proportion, as much of it as a sour holds, and what a sour has
// beside is added.
func (f *fixing) byRebuilding() error {
	for i := range f.found {
		if f.found[i].score >= weigh.NearFrom {
			return nil
		}
	}
	less, ok := f.lessSyrup()
	if !ok || f.spec.VolumeML() >= batchFromML {
		return nil
	}
	sour, base := f.bench.Pantry.Sour, f.build.Forgotten().UsualBase(f.bench.Pantry.Sober)
	if usual := f.build.Forgotten().UsualSour(); usual != nil && sour != nil {
		sour = usual
	}
	if f.spec.HasPart(flavor.PartSour) {
		sour = nil
	}
	if f.spec.HasPart(flavor.PartBase) || f.bench.Pantry.empty() {
		base = nil
	}
	var best candidate
	for _, with := range [][]*flavor.Profile{{sour}, {base}, {sour, base}} {
		changes := less
		for _, p := range with {
			if p != nil {
				changes = append(changes[:len(changes):len(changes)], f.poured(p, len(f.spec.Pours)+len(changes)-len(less)))
			}
		}
		if score := f.scoreWith(changes, f.base); score > best.score {
			best = candidate{changes: changes, asked: unasked, steps: change.MostSteps, score: score, sure: true}
		}
	}
	f.keep(best)
	return nil
}

// lessSyrup returns the changes that leave of all that sweetens a draft as much as a sour holds, and
// whether there is far more of it.
func (f *fixing) lessSyrup() (out []change.Change, ok bool) {
	var sweet float64
	for i := range f.spec.Pours {
		if p := &f.spec.Pours[i]; !p.Profile.Base() {
			sweet += p.ML * makeup.PerML(p.Profile)[ratio.Sweet]
		}
	}
	if sweet < muchSyrup*sourSyrupML {
		return nil, false
	}
	for i := range f.spec.Pours {
		p := &f.spec.Pours[i]
		per, known := measure.MLPerUnit(p.Unit, p.Profile)
		if p.Profile.Base() || makeup.PerML(p.Profile)[ratio.Sweet] <= makeup.PerML(p.Profile)[ratio.Sour] || !known {
			continue
		}
		if to := measure.Snap(p.ML*sourSyrupML/sweet, p.Unit, p.Profile); to < p.Amount {
			out = append(out, change.To(p, i, p.Unit, to, to*per))
		}
	}
	return out, len(out) > 0
}

// poured is what a sour has of a juice or a base, added as the pour at a place.
func (f *fixing) poured(p *flavor.Profile, at int) change.Change {
	ml := sourJuiceML
	if p.Base() {
		ml = sourBaseML
	}
	u := flavor.Ounce
	if measure.SystemOf(f.spec) == measure.Metric {
		u = flavor.Millilitre
	}
	amount := measure.Snap(ml, u, p)
	per, _ := measure.MLPerUnit(u, p)
	return change.Change{Pour: at, Profile: p, Unit: u, To: amount, ToML: amount * per}
}
