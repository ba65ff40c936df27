package station

import (
	"counterpour/flavor"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/wording"
)

// LeftOut is a pour of a drink that was given and that may not be poured.
type LeftOut struct {
	Profile *flavor.Profile
	Why     string // in words that go on from its name
	Read    bool   // reading the label may clear it for the guest
}

// LeftOutOf lists what of a drink the guest must not have, or is not there to be
// poured. What a wish rules out is not told: it was asked for.
func (j *Job) LeftOutOf(s *flavor.Spec) (out []LeftOut) {
	guest := &j.Limits.Guest
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if _, ok := j.Has(p); ok || precedent.PouredBefore(s, i) {
			continue
		}
		_, stocked := j.byID[p.ID]
		switch why := guest.Objection(p); {
		case why != "":
			out = append(out, LeftOut{p, why, guest.LabelDecides(p)})
		case !stocked:
			out = append(out, LeftOut{Profile: p, Why: wording.NotAtHand})
		}
	}
	return out
}
