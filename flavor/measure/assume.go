package measure

import (
	"fmt"
	"slices"

	"counterpour/flavor"
)

// longML is the volume in mL of juice or soda from which a built drink is long;
// common practice.
const longML = 60

// Assume returns s with the method and the service filled in where they are
// empty, by common practice, and a note for each thing assumed, those about
// units among them.
//
// What holds juice, egg, dairy, purée or anything sour is shaken; what holds
// something carbonated beside none of these is built; the rest is stirred.
// Shaken, stirred and thrown drinks are served up, or long with something
// carbonated; built ones on the rocks, or long with 60 mL or more of soda or
// juice; swizzled ones on crushed ice; blended ones up.
func Assume(s flavor.Spec) flavor.Spec {
	s = s.Clone()
	note := func(format string, args ...any) {
		if n := fmt.Sprintf(format, args...); !slices.Contains(s.Notes, n) {
			s.Notes = append(s.Notes, n)
		}
	}
	for _, p := range s.Pours {
		if n := unitNote(p); n != "" {
			note("%s", n)
		}
	}
	if s.Method == "" {
		var why string
		s.Method, why = usualMethod(&s)
		note("no method stated: %s, as is usual with %s", s.Method, why)
	}
	if s.Service == "" {
		s.Service = usualService(&s)
		note("no service stated: %s, as is usual for this method", s.Service)
	}
	return s
}

// unitNote says what was taken for granted about the unit of a pour.
func unitNote(p flavor.Pour) string {
	if p.Profile == nil || hasYield(p.Profile, p.Unit) {
		return ""
	}
	info, ok := infoOf(p.Unit)
	switch {
	case !ok:
		return ""
	case p.Unit == flavor.PartUnit:
		return fmt.Sprintf("a part is taken as %v ml", PartML)
	case p.Unit == flavor.Top:
		return fmt.Sprintf("topping up is taken as %v ml", TopML)
	case p.Unit == flavor.Splash:
		return fmt.Sprintf("a splash is taken as %v ml", SplashML)
	case p.Unit == flavor.Float, p.Unit == flavor.Rinse, p.Unit == flavor.Spritz, p.Unit == flavor.Scoop:
		return fmt.Sprintf("a %s is taken as %v ml", p.Unit, info.size.Value)
	case p.Unit == flavor.Pinch:
		return fmt.Sprintf("a pinch is taken as %v g", PinchG)
	case info.kind == byVolume && bulk(p.Profile) > 0:
		return fmt.Sprintf("%s by volume is taken as it lies in a spoon, %.2f g/ml", p.Profile.Name, bulk(p.Profile))
	}
	return ""
}

// usualMethod returns the method that the trade would use, and why.
func usualMethod(s *flavor.Spec) (flavor.Method, string) {
	carbonated := false
	for _, p := range s.Pours {
		switch {
		case p.Profile == nil:
			continue
		case p.Profile.Class.Shaken():
			return flavor.Shake, p.Profile.Name
		case p.Profile.Carbonated:
			carbonated = true
		}
	}
	if carbonated {
		return flavor.Build, "something sparkling"
	}
	return flavor.Stir, "nothing cloudy or sparkling"
}

// usualService returns the service that goes with the method of s.
func usualService(s *flavor.Spec) flavor.Service {
	carbonated, length := false, 0.0
	for _, p := range s.Pours {
		if p.Profile == nil {
			continue
		}
		carbonated = carbonated || p.Profile.Carbonated
		if p.Profile.Carbonated || p.Profile.Class == flavor.ClassJuice {
			length = max(length, p.ML)
		}
	}
	switch s.Method {
	case flavor.Swizzle:
		return flavor.Crushed
	case flavor.Blend:
		return flavor.Up
	case flavor.Build:
		if length >= longML {
			return flavor.Long
		}
		return flavor.Rocks
	}
	if carbonated {
		return flavor.Long
	}
	return flavor.Up
}
