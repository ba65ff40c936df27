package evening

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/guest"
)

// barredOf lists the pours that a guest must not have, what is certain first; of what is
// equally certain, those that are there before those that are missing.
func barredOf(s *flavor.Spec, t *outs.Touched, g *guest.Guest) []guest.Objected {
	var there, missing []*flavor.Profile
	for i := range s.Pours {
		if p := s.Pours[i].Profile; isMissing(t, p) {
			missing = append(missing, p)
		} else {
			there = append(there, p)
		}
	}
	return g.Objections(slices.Concat(there, missing))
}

// because says why a drink is not for the guest. It names every pour that is barred, and what
// is served with the drink and cannot be left off: who reads of a pour that may carry something
// must read as well of the one that does.
func because(barred []guest.Objected, served *flavor.Spec, t *outs.Touched, g *guest.Guest) string {
	if one := barred[0]; len(barred) == 1 && isMissing(t, one.Profile) && g.MayHaveLaid(served) {
		return one.Profile.Name + " is out, it " + one.Why + ", and nothing keeps the drink without it"
	}
	var held []*flavor.Profile
	for _, o := range barred {
		held = append(held, o.Profile)
	}
	var whys []string
	names := map[string][]string{} // by why
	for _, o := range g.Objections(append(held, served.Held()[len(served.Pours):]...)) {
		if names[o.Why] == nil {
			whys = append(whys, o.Why)
		}
		name := o.Profile.Name
		if isMissing(t, o.Profile) {
			name += " (out)"
		}
		names[o.Why] = append(names[o.Why], name)
	}
	clauses := make([]string, len(whys))
	for i, why := range whys {
		clauses[i] = names[why][0] + " " + why
		if others := names[why][1:]; len(others) > 0 {
			clauses[i] += ", and " + flavor.JoinAnd(others) + " too"
		}
	}
	return strings.Join(clauses, "; ")
}

func isMissing(t *outs.Touched, p *flavor.Profile) bool {
	return t != nil && slices.Contains(t.Missing, p)
}
