// Package assumed fills in the method and the service of a drink that states none, as is usual.
package assumed

import (
	"fmt"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/drinks"
)

// longML is the volume in mL of juice or soda from which a built drink is long;
// common practice.
const longML = 60

// Fill returns s with the method and the service filled in where they are
// empty, by common practice, and a note for each thing assumed, those about
// units among them.
//
// What bears the name of a drink that is made and served the same everywhere is made and served
// so, where the draft says nothing else. A spirit alone is served neat. What is served hot or neat is built, and so is what is long with something sparkling,
// without egg or dairy; else what holds juice, egg, dairy, purée
// or anything sour, before it is topped, is shaken; what holds something
// carbonated, or is topped, beside none of these is built; the rest is stirred.
// Shaken, stirred and thrown drinks are served up, or long with something
// carbonated; built ones on the rocks, or long with 60 mL or more of soda or
// juice; swizzled ones on crushed ice; blended ones up.
func Fill(s flavor.Spec) flavor.Spec {
	s = s.Clone()
	note := func(format string, args ...any) {
		if n := fmt.Sprintf(format, args...); !slices.Contains(s.Notes, n) {
			s.Notes = append(s.Notes, n)
		}
	}
	for _, p := range s.Pours {
		if n := measure.UnitNote(p); n != "" {
			note("%s", n)
		}
	}
	method, service := drinks.Served(s.Name)
	if s.Method == "" && method != "" && (s.Service == "" || s.Service == service) {
		s.Method = method
		note("no method stated: %s, as is usual with a drink of that name", s.Method)
	}
	if s.Method == "" && s.Service == "" && alone(&s) {
		s.Service = flavor.Neat
		note("no service stated: %s, as is usual with a spirit alone", s.Service)
	}
	if s.Method == "" {
		var why string
		s.Method, why = usualMethod(&s)
		note("no method stated: %s, as is usual with %s", s.Method, why)
	}
	if s.Service == "" && service != "" && made(s.Method, method) {
		s.Service = service
		note("no service stated: %s, as is usual with a drink of that name", s.Service)
	}
	if s.Service == "" {
		s.Service = usualService(&s)
		note("no service stated: %s, as is usual for this method", s.Service)
	}
	return s
}

// made reports whether a drink is made as those of its name are, or, where they are not all
// made alike, is at least not blended, which calls for a glass of its own.
func made(method, as flavor.Method) bool {
	return method == as || as == "" && method != flavor.Blend
}

// alone reports whether a drink is one spirit and nothing else.
func alone(s *flavor.Spec) bool {
	return len(s.Pours) == 1 && s.Pours[0].Profile != nil && s.Pours[0].Profile.Base()
}

// usualMethod returns the method that the trade would use, and why.
func usualMethod(s *flavor.Spec) (flavor.Method, string) {
	if s.Service == flavor.Hot || s.Service == flavor.Neat {
		return flavor.Build, "what is served " + string(s.Service)
	}
	if lengthened(s) {
		return flavor.Build, "what is long and sparkling"
	}
	if s.Service == flavor.Long && juiced(s) {
		return flavor.Build, "a spirit and juice in a tall glass"
	}
	carbonated, filled, coffee := false, false, 0.0
	for _, p := range s.Pours {
		filled = filled || p.Unit == flavor.Top || p.After && p.Unit != flavor.Rinse && p.Unit != flavor.Spritz
		switch {
		case p.Profile == nil:
			continue
		case p.Profile.Class.Shaken() && !p.After:
			return flavor.Shake, p.Profile.Name
		case p.Profile.Carbonated:
			carbonated = true
		case p.Profile.Class == flavor.ClassCoffee:
			coffee += p.ML
		}
	}
	if carbonated {
		return flavor.Build, "something sparkling"
	}
	if filled {
		return flavor.Build, "what goes on top"
	}
	if coffee >= leastFoamingML && coffee <= mostFoamingML {
		return flavor.Shake, "coffee that foams"
	}
	return flavor.Stir, "nothing cloudy or sparkling"
}

// mostFoamingML is the most mL of coffee that is shaken for its foam rather than poured
// for length; common practice.
const mostFoamingML = 75

// leastFoamingML is the least mL of coffee that foams, and does not only season; common
// practice.
const leastFoamingML = 15

// lengthened reports whether a drink is long with something sparkling, as a collins, a
// mule or a cooler is: it is built in its glass. Egg and dairy have to be shaken, and so
// has what is strained into a stemmed glass; common practice.
func lengthened(s *flavor.Spec) bool {
	length, strong, listed := 0.0, false, false
	for _, p := range s.Pours {
		if p.Profile == nil {
			return false
		}
		strong = strong || p.Profile.Base()
		listed = listed || p.Profile.Carbonated && !p.After
		switch class := p.Profile.Class; {
		case p.Profile.Carbonated:
			length += p.ML
		case class == flavor.ClassEgg || class == flavor.ClassFoam || class == flavor.ClassDairy || class == flavor.ClassCreamLiqueur:
			return false
		}
	}
	if length >= longML && s.Service == flavor.Up && !strong && listed { // "2 cl peach purée, 10 cl prosecco, flute"
		return true
	}
	return length >= longML && (s.Service == "" || s.Service == flavor.Long || s.Service == flavor.Crushed || s.Service == flavor.Rocks)
}

// juiced reports whether a drink is a spirit lengthened with juice that is not sour, and
// little else, as a breeze or a sunrise is: it is built; common practice.
func juiced(s *flavor.Spec) bool {
	juice := 0.0
	for _, p := range s.Pours {
		switch {
		case p.Profile == nil:
			return false
		case p.Profile.Class == flavor.ClassJuice:
			juice += p.ML
		case p.Profile.Base(), p.Profile.Class == flavor.ClassLiqueur, p.After, p.Profile.Class.Part() == flavor.PartSeasoning:
		case p.Profile.Class == flavor.ClassSourJuice && p.ML <= mostBrightML/2:
		default:
			return false
		}
	}
	return juice >= longML
}

// mostBrightML is the most mL of sour juice that brightens a long drink rather than makes
// it sour; common practice.
const mostBrightML = 30

// hurricane is a glass that nothing is served in without ice but what is blended; common practice.
const hurricane = "hurricane glass"

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
	if carbonated || s.Glass == hurricane {
		return flavor.Long
	}
	return flavor.Up
}
