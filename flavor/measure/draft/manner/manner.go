// Package manner settles how a drink is mixed and served where not words of method and
// service say so, but its glass, its name or what is poured.
package manner

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
)

// words are a draft and what is said of how it is read.
type words struct {
	draft *draft.Draft
	notes []string
}

func (w *words) note(n string) { w.notes = append(w.notes, n) }

// Settle sets the method and the service of s, which was read from d, and says of each why.
// What d states outright stays.
func Settle(s *flavor.Spec, d *draft.Draft) []string {
	w := &words{draft: d}
	w.heat(s)
	w.byName(s)
	w.iced(s)
	w.stirredInGlass(s)
	w.lengthened(s)
	w.sparklesAfter(s)
	return w.notes
}

// sparklesAfter says of what sparkles, listed among what is shaken, that it is taken as
// added afterwards, if something else is there to be shaken, and as much of it as a drink that
// is shaken may be lengthened by.
func (w *words) sparklesAfter(s *flavor.Spec) {
	shaken := func(p flavor.Pour) bool {
		return p.Profile != nil && p.Profile.Class.Shaken() && !p.Profile.Carbonated && !p.After && !p.Unit.After()
	}
	if !s.Method.Shaken() || s.Together || !slices.ContainsFunc(s.Pours, shaken) {
		return
	}
	sparkles := 0.0
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile != nil && p.Profile.Carbonated && !p.After && !p.Unit.After() {
			sparkles += p.ML
		}
	}
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Profile != nil && p.Profile.Carbonated && !p.After && sparkles <= p.Profile.MostTopped()*s.VolumeML() {
			w.note(p.Profile.Name + " is taken as added after the shake; write \"shake everything\" if it is shaken too")
		}
	}
}

// stirredInGlass takes a drink that is stirred hot, or hardly and with something
// sparkling, as built: it is stirred in its glass.
func (w *words) stirredInGlass(s *flavor.Spec) {
	if s.Method != flavor.Stir {
		return
	}
	fizzy := slices.ContainsFunc(s.Pours, func(p flavor.Pour) bool { return p.Profile.Carbonated })
	switch {
	case s.Service == flavor.Hot && w.draft.Hinted: // by a mug
		w.note("a hot drink that is stirred is taken as built in its glass")
	case w.draft.Touch && fizzy:
		w.note("a touch of the spoon beside something sparkling is taken as built in the glass")
	default:
		return
	}
	s.Method = flavor.Build
}

// mostOnRocksML is the most mL poured that a rocks glass holds beside its ice; common practice, no source.
const mostOnRocksML = 160

// leastLengthML is from how many mL of what sparkles on a drink is lengthened with it; common practice, no source.
const leastLengthML = 60

// lengthened takes a drink of which no more is said than that it is poured over ice, and that is more than a rocks
// glass holds and lengthened with what sparkles, as served long.
func (w *words) lengthened(s *flavor.Spec) {
	if s.Service != flavor.Rocks || !w.draft.Hinted || !w.draft.OnIce && !w.draft.Iced || s.Glass != "" || s.VolumeML() <= mostOnRocksML {
		return
	}
	fizzy := 0.0
	for i := range s.Pours {
		if s.Pours[i].Profile.Carbonated {
			fizzy += s.Pours[i].ML
		}
	}
	if fizzy >= leastLengthML {
		s.Service = flavor.Long
		w.note("ice under so much that sparkles is taken as a tall glass; say \"rocks\" if it is not")
	}
}

// iced takes a drink of which no more is said than that there is ice as built on it.
func (w *words) iced(s *flavor.Spec) {
	if !w.draft.Iced || s.Method != "" || s.Service != "" || s.Glass != "" {
		return
	}
	for i := range s.Pours {
		if p := s.Pours[i].Profile; p.Class.Shaken() && p.Class != flavor.ClassJuice || p.Carbonated || s.Pours[i].Unit == flavor.Top {
			return
		}
	}
	s.Method, s.Service = flavor.Build, flavor.Rocks
	w.note("“ice” is taken as built and served on it")
}
