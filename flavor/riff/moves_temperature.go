package riff

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/riff/aim"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/riff/station"
)

// How hot drinks are lengthened, in mL: with four ounces of water, and by so much of what is hot
// they are. Common practice, no source.
const (
	hotWaterML = 118.0
	leastHotML = 59.0
)

// atItsHeat returns the drink asked about at the heat at which it is wished, and whether that is
// another one than its own.
func (w *work) atItsHeat() (flavor.Spec, bool) {
	s := station.Snapped(w.From)
	switch {
	case w.Limits.Heats(&s):
		return w.heated(s)
	case w.Limits.Chills(&s):
		return w.chilled(s)
	}
	return s, false
}

// heated is a cold drink made hot: built in the glass, with hot water for what sparkles and for
// the water of the ice, and without foam, which hot water cooks. False if nothing here is hot.
func (w *work) heated(s flavor.Spec) (flavor.Spec, bool) {
	out := s.Clone()
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool {
		return p.Profile.Carbonated || p.Profile.Whitens()
	})
	hot := 0.0
	for i := range out.Pours {
		out.Pours[i].After = false
		if out.Pours[i].Profile.Class.Heated() && out.Pours[i].Profile.Class.Part() == flavor.PartLength {
			hot += out.Pours[i].ML
		}
	}
	out.Method, out.Service = flavor.Build, flavor.Hot
	if len(out.Pours) == 0 {
		return s, false
	}
	if hot >= leastHotML {
		return out, true
	}
	at := slices.IndexFunc(w.Shelf, func(it station.Item) bool {
		return it.Profile.Class.Free() && it.Profile.Class.Heated() && !it.Profile.Carbonated
	})
	if at < 0 {
		return s, false
	}
	water, ok := station.Pour(w.Shelf[at].Profile, w.Shelf[at].Unit, hotWaterML-hot)
	if !ok {
		return s, false
	}
	out.Pours = append(out.Pours, water)
	return out, true
}

// unstocked is what proven drinks pour, every bar has and none takes stock of, where a wish asks
// for it: the water of the kettle, and salt. What is marked as out is not among it.
func unstocked(st *station.Station, l *aim.Limits, from *flavor.Spec, ranOut []*flavor.Profile) (out []*flavor.Profile) {
	find := func(wanted bool, is func(*flavor.Profile) bool) {
		for _, proven := range st.Proven() {
			at := slices.IndexFunc(proven.Spec.Pours, func(p flavor.Pour) bool { return is(p.Profile) })
			if !wanted || at < 0 {
				continue
			}
			if p := proven.Spec.Pours[at].Profile; !slices.Contains(ranOut, p) {
				out = append(out, p)
			}
			return
		}
	}
	find(l.Heats(from), func(p *flavor.Profile) bool { return p.Class.Free() && p.Class.Heated() && !p.Carbonated })
	find(l.Salts(), func(p *flavor.Profile) bool {
		return p.Class.Kin() == flavor.KinSaline && p.Aroma.Total() <= 0 && p.Salt.Value >= drySalt
	})
	return out
}

// drySalt is the salt, in g/L, from which it is dry and no brine: common practice, no source.
const drySalt = 1000.0

// chilled is a hot drink made cold: the ice gives the water that was hot, and what else lengthens
// it stays, poured cold, or what is made cold of its kind if that is at hand. False if nothing but
// water is in it.
func (w *work) chilled(s flavor.Spec) (flavor.Spec, bool) {
	out := s.Clone()
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Free() && !p.Profile.Carbonated })
	if len(out.Pours) == 0 {
		return s, false
	}
	for i := range out.Pours {
		out.Pours[i] = w.cold(out.Pours[i])
	}
	h := serve.HeldBy(&out)
	switch {
	case serve.Long(h.LengthML):
		out.Method, out.Service = flavor.Build, flavor.Long
	case h.Cloudy || h.Milk:
		out.Method, out.Service = flavor.Shake, flavor.Rocks
	default:
		out.Method, out.Service = flavor.Stir, flavor.Rocks
	}
	return out, true
}

// cool pours cold what a drink that is not hot was to have hot.
func (w *work) cool(s *flavor.Spec) {
	if s.Service == flavor.Hot {
		return
	}
	for i := range s.Pours {
		if s.Pours[i].Heat == flavor.HeatHot {
			s.Pours = slices.Clone(s.Pours)
			s.Pours[i] = w.cold(s.Pours[i])
		}
	}
}

// cold is a pour of a hot drink as it goes into a cold one: cold brew for coffee from the filter where
// that is at hand.
func (w *work) cold(p flavor.Pour) flavor.Pour {
	if p.Warmth() == flavor.HeatCold || !brewedHot(p.Profile) {
		return p
	}
	at := slices.IndexFunc(w.Shelf, func(it station.Item) bool {
		as := flavor.Pour{Profile: it.Profile}
		return it.Profile.Class == p.Profile.Class && as.Warmth() == flavor.HeatCold
	})
	if at >= 0 {
		if out, ok := station.Pour(w.Shelf[at].Profile, p.Unit, p.ML); ok {
			return out
		}
	}
	p.Heat = flavor.HeatCold
	return p
}

// brewedHot reports whether something is made by hot water, and lengthens a drink.
func brewedHot(p *flavor.Profile) bool {
	return p.Class.Heated() && p.Class.Part() == flavor.PartLength
}
