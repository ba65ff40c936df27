package riff

import (
	"slices"

	"counterpour/flavor"
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
		return chilled(s)
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

// tapOf is the water of the kettle, which proven drinks pour and no bar takes stock of.
func tapOf(st *station.Station) []*flavor.Profile {
	for _, proven := range st.Proven() {
		for i := range proven.Spec.Pours {
			if p := proven.Spec.Pours[i].Profile; p.Class.Free() && p.Class.Heated() && !p.Carbonated {
				return []*flavor.Profile{p}
			}
		}
	}
	return nil
}

// chilled is a hot drink made cold: the ice gives the water that was hot, and what else lengthens
// it stays. False if nothing but water is in it.
func chilled(s flavor.Spec) (flavor.Spec, bool) {
	out := s.Clone()
	out.Pours = slices.DeleteFunc(out.Pours, func(p flavor.Pour) bool { return p.Profile.Class.Free() && !p.Profile.Carbonated })
	if len(out.Pours) == 0 {
		return s, false
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
