package reading

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
	"counterpour/flavor/measure/draft/serving"
)

// heatOf reads how warm a line says that its pour is. A word of the ingredient's
// own name says what it is called, see [flavor.Pour.Warmth].
func heatOf(l *entry.Line, p *flavor.Profile) flavor.Heat {
	if !p.Class.Heated() {
		return ""
	}
	own := strings.Fields(flavor.NormaliseName(p.Name))
	if len(own) > 0 && serving.Warmth(own[0]) != "" {
		return ""
	}
	for _, w := range strings.Fields(flavor.NormaliseName(l.Asked + " " + l.Name)) {
		if heat := serving.Warmth(w); heat != "" {
			return heat
		}
	}
	return ""
}

// leastHot is the share of a drink that is poured hot from which it is a hot one;
// common practice.
const leastHot = 0.3

// heat settles whether a drink is hot, where only its glass or its pours say so.
func (r *resolver) heat(s *flavor.Spec) {
	d := r.draft
	hot, able, fizzy := shares(s)
	switch {
	case s.Service == flavor.Hot && d.Hinted:
		r.mug(s, hot, able, fizzy)
	case (s.Service == "" || d.Hinted) && hot >= leastHot && !d.Iced && !d.Cold && serving.Mixes(s.Method) <= serving.Mixes(flavor.Stir):
		s.Service = flavor.Hot
		r.note("it is taken as served hot, since " + hottest(s).Profile.Name + " is poured hot")
	}
}

// mug settles what a mug or a toddy glass suggests.
func (r *resolver) mug(s *flavor.Spec, hot, able, fizzy float64) {
	d := r.draft
	mug := "“" + r.draft.Glass + "”"
	switch {
	case d.Iced || d.Cold || hot == 0 && fizzy > 0:
		switch {
		case serving.Mixes(s.Method) <= serving.Mixes(flavor.Build):
			s.Service = flavor.Long
		case d.OnIce:
			s.Service = flavor.Rocks
		default:
			s.Service = flavor.Up
		}
		r.note(mug + " is taken as served cold; write \"hot\" if it is not")
	case hot > 0:
	case serving.Mixes(s.Method) > serving.Mixes(flavor.Throw) || s.Method == "" && raw(s):
		s.Service = flavor.Up
		r.note(mug + " after a shaker is taken as served cold, without ice; write \"hot\" if it is not")
	case able < leastHot && !coldSaid(s):
		s.Service = ""
		r.note(mug + " is taken as served cold, since nothing in it is poured hot; write \"hot\" if it is")
	default:
		r.note(mug + " is taken as served hot; write \"over ice\" or \"cold\" if it is not")
	}
}

// shares returns the shares of a drink that are said to be hot, that the trade
// heats and nothing is said of, and that sparkle.
func shares(s *flavor.Spec) (hot, able, fizzy float64) {
	total := s.VolumeML()
	if total <= 0 {
		return 0, 0, 0
	}
	for i := range s.Pours {
		switch p := &s.Pours[i]; {
		case p.Heat == flavor.HeatHot:
			hot += p.ML / total
		case p.Profile.Carbonated:
			fizzy += p.ML / total
		case p.Heat == "" && p.Profile.Class.Heated():
			able += p.ML / total
		}
	}
	return hot, able, fizzy
}

// raw reports whether there is egg in a drink, which is shaken.
func raw(s *flavor.Spec) bool {
	for i := range s.Pours {
		if s.Pours[i].Profile.Class == flavor.ClassEgg {
			return true
		}
	}
	return false
}

func coldSaid(s *flavor.Spec) bool {
	for i := range s.Pours {
		if s.Pours[i].Heat == flavor.HeatCold {
			return true
		}
	}
	return false
}

// hottest returns the largest pour that is said to be hot.
func hottest(s *flavor.Spec) *flavor.Pour {
	var out *flavor.Pour
	for i := range s.Pours {
		if p := &s.Pours[i]; p.Heat == flavor.HeatHot && (out == nil || p.ML > out.ML) {
			out = p
		}
	}
	return out
}
