package wording

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/serve"
	"counterpour/flavor/weigh"
)

// family is what a drink is called by, where it is one.
type family struct {
	word string
	is   func(h *serve.Held, s *flavor.Spec) bool // nil if the word claims nothing that a glass shows
}

// families are the words of the trade for the families, by id, and what each claims.
// Common practice, no source.
var families = map[string]family{
	"sour": {"sour", func(h *serve.Held, s *flavor.Spec) bool { return s.HasPart(flavor.PartSour) && !h.Soda }},
	"bitter-split-sour": {"bitter sour", func(h *serve.Held, s *flavor.Spec) bool {
		return s.HasPart(flavor.PartSour) && s.HasKin(flavor.KinBitter)
	}},
	"tropical-sour": {"tropical sour", func(h *serve.Held, s *flavor.Spec) bool { return s.HasPart(flavor.PartSour) && tropical(s) }},
	"punch":         {"punch", func(h *serve.Held, s *flavor.Spec) bool { return h.LengthML > 0 }},
	"daisy": {"daisy", func(h *serve.Held, s *flavor.Spec) bool {
		return s.HasPart(flavor.PartSour) && s.HasKin(flavor.KinLiqueur) && !h.Soda
	}},
	"collins":            {"collins", func(h *serve.Held, s *flavor.Spec) bool { return s.HasPart(flavor.PartSour) && h.Fizz }},
	"highball":           {"highball", func(h *serve.Held, s *flavor.Spec) bool { return h.Fizz || serve.Long(h.LengthML) }},
	"buck":               {"buck", func(h *serve.Held, s *flavor.Spec) bool { return h.Fizz && s.HasPart(flavor.PartSour) }},
	"juice-highball":     {"juice highball", func(h *serve.Held, s *flavor.Spec) bool { return s.HasKin(flavor.KinJuice) }},
	"aromatic-stirred":   {"aromatic stirred", stirredOnly},
	"dry-stirred":        {"dry stirred", stirredOnly},
	"equal-parts-bitter": {"equal-parts bitter", func(h *serve.Held, s *flavor.Spec) bool { return even(s) && s.HasKin(flavor.KinBitter) }},
	"equal-parts-sour":   {"equal-parts sour", func(h *serve.Held, s *flavor.Spec) bool { return even(s) && s.HasPart(flavor.PartSour) }},
	"wine-stirred":       {"stirred aperitif", stirredOnly},
	"old-fashioned":      {"old-fashioned", stirredOnly},
	"duo": {"duo", func(h *serve.Held, s *flavor.Spec) bool {
		return counted(s, precedent.Carries) == 2 && stirredOnly(h, s)
	}},
	"flip":           {"flip", func(h *serve.Held, s *flavor.Spec) bool { return h.Foam }},
	"julep":          {"julep", func(h *serve.Held, s *flavor.Spec) bool { return s.HasKin(flavor.KinHerb) }},
	"spritz":         {"spritz", func(h *serve.Held, s *flavor.Spec) bool { return h.Fizz && s.Service != flavor.Up }},
	"sparkling-sour": {"sparkling sour", func(h *serve.Held, s *flavor.Spec) bool { return h.Fizz && s.HasPart(flavor.PartSour) }},
	"swizzle":        {"swizzle", func(h *serve.Held, s *flavor.Spec) bool { return s.Service == flavor.Crushed }},
	"dessert":        {"dessert", nil},
	"hot":            {"hot drink", func(h *serve.Held, s *flavor.Spec) bool { return s.Service == flavor.Hot }},
	"toddy": {"toddy", func(h *serve.Held, s *flavor.Spec) bool {
		return s.Service == flavor.Hot && s.HasPart(flavor.PartSour)
	}},
	"light-sour":     {"light sour", func(h *serve.Held, s *flavor.Spec) bool { return s.HasPart(flavor.PartSour) && !h.Soda }},
	"light-juice":    {"light juice highball", func(h *serve.Held, s *flavor.Spec) bool { return s.HasKin(flavor.KinJuice) }},
	"light-highball": {"light highball", func(h *serve.Held, s *flavor.Spec) bool { return h.Fizz || serve.Long(h.LengthML) }},
	"savoury": {"savoury", func(h *serve.Held, s *flavor.Spec) bool {
		return s.HasKin(flavor.KinSavoury) || s.HasKin(flavor.KinSpice) || s.HasKin(flavor.KinSaline)
	}},
	"beer":   {"beer drink", func(h *serve.Held, s *flavor.Spec) bool { return s.HasClass(flavor.ClassBeer) }},
	"frozen": {"frozen", func(h *serve.Held, s *flavor.Spec) bool { return s.Method == flavor.Blend }},
	"wine-cooler": {"wine cooler", func(h *serve.Held, s *flavor.Spec) bool {
		return s.HasClass(flavor.ClassWine) || s.HasKin(flavor.KinWine) && h.Fizz
	}},
	"wine-and-soda": {"wine and soda", func(h *serve.Held, s *flavor.Spec) bool { return s.HasKin(flavor.KinWine) && h.Fizz }},
	"lemonade":      {"lemonade", func(h *serve.Held, s *flavor.Spec) bool { return s.HasPart(flavor.PartSour) && !s.Has(alcoholic) }},
	"milk-punch":    {"milk punch", func(h *serve.Held, s *flavor.Spec) bool { return h.Milk }},
}

// leastProbable is how likely a drink must be of a family to be called by it.
const leastProbable = 0.05

// FamilyWord is what a drink is called by: the likeliest of its families whose word
// claims nothing that is not in the glass, else what its make says.
func FamilyWord(s *flavor.Spec, fits []weigh.Fit) string {
	h := serve.HeldBy(s)
	for _, f := range fits {
		if f.Probability < leastProbable {
			break
		}
		known, ok := families[f.ID]
		if f.ID == "wine-cooler" && s.Service == flavor.Crushed && s.HasKin(flavor.KinWine) {
			return "cobbler"
		}
		switch {
		case !ok:
			return strings.ReplaceAll(f.ID, "-", " ")
		case known.is == nil || known.is(&h, s):
			return known.word
		}
	}
	return formOf(&h, s)
}

// formOf is what a drink is called by that is of no family.
func formOf(h *serve.Held, s *flavor.Spec) string {
	switch {
	case s.Service == flavor.Hot:
		return "hot drink"
	case h.Milk:
		return "creamy drink"
	case s.HasPart(flavor.PartSour) && h.Fizz:
		return "fizz"
	case s.HasPart(flavor.PartSour):
		return "sour"
	case h.Fizz && s.Service == flavor.Up:
		return "sparkling drink"
	case h.Fizz || s.Service == flavor.Long:
		return "highball"
	case s.Service == flavor.Crushed:
		return "cobbler"
	case h.Cloudy || s.Method.Shaken():
		return "shaken drink"
	}
	return "stirred drink"
}

func stirredOnly(h *serve.Held, _ *flavor.Spec) bool { return !h.Cloudy && !h.Fizz }

func alcoholic(p *flavor.Profile) bool { return p.ABV.Value > flavor.NoAlcoholABV }

func counted(s *flavor.Spec, so func(*flavor.Profile) bool) (n int) {
	for i := range s.Pours {
		if so(s.Pours[i].Profile) {
			n++
		}
	}
	return n
}

// tropical reports whether a drink pours rum, or what smells of the tropics or of
// almonds first.
func tropical(s *flavor.Spec) bool {
	return s.Has(func(p *flavor.Profile) bool {
		f, ok := precedent.LeadOf(p)
		return p.Class.Cane() || ok && (f == flavor.Tropical || f == flavor.Nut && p.Class.Part() == flavor.PartSweetener)
	})
}

// mostEven is how many times the smallest of equal parts the largest may be, as a
// jigger rounds them.
const mostEven = 1.4

// even reports whether what carries a drink is poured in equal parts.
func even(s *flavor.Spec) bool {
	var least, most float64
	for i := range s.Pours {
		if p := &s.Pours[i]; precedent.Carries(p.Profile) && !p.Unit.Small() {
			if least == 0 || p.ML < least {
				least = p.ML
			}
			most = max(most, p.ML)
		}
	}
	return most <= mostEven*least
}
