package manner

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/serving"
)

// leastHot is the share of a drink that is poured hot from which it is a hot one;
// common practice.
const leastHot = 0.3

// heat settles whether a drink is hot, where only its glass or its pours say so.
func (w *words) heat(s *flavor.Spec) {
	d := w.draft
	hot, able, fizzy := shares(s)
	switch {
	case s.Service == flavor.Hot && d.Hinted:
		w.mug(s, hot, able, fizzy)
	case (s.Service == "" || d.Hinted) && hot >= leastHot && !d.Iced && !d.Cold && serving.Mixes(s.Method) <= serving.Mixes(flavor.Stir):
		s.Service = flavor.Hot
		w.note("it is taken as served hot, since " + hottest(s).Profile.Name + " is poured hot")
	}
}

// mug settles what a mug or a toddy glass suggests.
func (w *words) mug(s *flavor.Spec, hot, able, fizzy float64) {
	d := w.draft
	mug := "“" + w.draft.Glass + "”"
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
		w.note(mug + " is taken as served cold; write \"hot\" if it is not")
	case hot > 0:
	case serving.Mixes(s.Method) > serving.Mixes(flavor.Throw) || s.Method == "" && raw(s):
		s.Service = flavor.Up
		w.note(mug + " after a shaker is taken as served cold, without ice; write \"hot\" if it is not")
	case able < leastHot && !coldSaid(s):
		s.Service = ""
		w.note(mug + " is taken as served cold, since nothing in it is poured hot; write \"hot\" if it is")
	default:
		w.note(mug + " is taken as served hot; write \"over ice\" or \"cold\" if it is not")
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
