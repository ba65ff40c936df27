package wording

import (
	"math"
	"slices"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
)

// Changes lists what changed from one drink to another: what went or moved in the
// order of the first, then what came in.
func Changes(from, to *flavor.Spec) []balance.Change {
	var out []balance.Change
	used := make([]bool, len(to.Pours))
	for i := range from.Pours {
		old := &from.Pours[i]
		at := -1
		for j := range to.Pours {
			if !used[j] && to.Pours[j].Profile.ID == old.Profile.ID {
				at = j
				break
			}
		}
		c := balance.Change{Pour: i, Profile: old.Profile, Unit: old.Unit, From: old.Amount, FromML: old.ML}
		if at >= 0 {
			used[at] = true
			c.Unit, c.To, c.ToML = to.Pours[at].Unit, to.Pours[at].Amount, to.Pours[at].ML
			if math.Abs(c.ToML-c.FromML) < SameML {
				continue
			}
		}
		out = append(out, c)
	}
	for j := range to.Pours {
		if p := &to.Pours[j]; !used[j] {
			out = append(out, balance.Change{Pour: len(from.Pours), Profile: p.Profile, Unit: p.Unit, To: p.Amount, ToML: p.ML})
		}
	}
	return out
}

// SameML is the difference in mL below which an amount has not changed.
const SameML = 0.05

// Capital begins a sentence.
func Capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// Recipe says the changes: what stands for what, what is added or left out, and
// what moves.
func Recipe(changes []balance.Change) []string {
	var went, came, moved []balance.Change
	for _, c := range changes {
		switch {
		case c.ToML == 0:
			went = append(went, c)
		case c.FromML == 0:
			came = append(came, c)
		default:
			moved = append(moved, c)
		}
	}
	var out []string
	for _, c := range came {
		said := measure.FormatAmount(c.To, c.Unit) + " " + c.Profile.Name
		at := slices.IndexFunc(went, func(x balance.Change) bool { return standsFor(&c, &x) })
		switch {
		case at < 0 && splits(&c, moved):
			out = append(out, "split the base with "+said)
			continue
		case at < 0 && c.Profile.Carbonated:
			out = append(out, "top with "+said)
			continue
		case at < 0:
			out = append(out, "add "+said)
			continue
		}
		out = append(out, said+" for "+went[at].Profile.Name)
		went = slices.Delete(went, at, at+1)
	}
	for _, c := range went {
		out = append(out, "leave out "+c.Profile.Name)
	}
	for _, c := range moved {
		out = append(out, c.Profile.Name+" to "+measure.FormatAmount(c.To, c.Unit))
	}
	return out
}

// splits reports whether what came in is a base and another one made room.
func splits(came *balance.Change, moved []balance.Change) bool {
	return came.Profile.Base() && slices.ContainsFunc(moved, func(x balance.Change) bool {
		return x.Profile.Base() && x.ToML < x.FromML
	})
}

// standsFor reports whether what came in does the work of what went: the same
// part, or a liqueur in place of a syrup and the other way round, or a wine of a
// spirit.
func standsFor(came, went *balance.Change) bool {
	a, b := came.Profile.Class, went.Profile.Class
	sweet := func(x, y flavor.Class) bool { return x.Kin() == flavor.KinLiqueur && y.Part() == flavor.PartSweetener }
	return a.Part() == b.Part() || sweet(a, b) || sweet(b, a) || a.Part() == flavor.PartModifier && b.Part() == flavor.PartBase
}

// WayOf says how a drink is mixed and served.
func WayOf(s *flavor.Spec) string {
	methods := map[flavor.Method]string{flavor.Shake: "shaken", flavor.DryShake: "dry shaken, then shaken", flavor.Stir: "stirred",
		flavor.Build: "built", flavor.Blend: "blended", flavor.Throw: "thrown", flavor.Swizzle: "swizzled"}
	services := map[flavor.Service]string{flavor.Up: "served up", flavor.Rocks: "served on the rocks", flavor.Crushed: "served on crushed ice", flavor.Long: "served long",
		flavor.Hot: "served hot", flavor.Neat: "served neat"}
	return methods[s.Method] + " and " + services[s.Service]
}

// Topped says what goes in once a drink is mixed, since what sparkles meets no
// shaker; empty if nothing does, or if the drink is built in its glass.
func Topped(s *flavor.Spec) string {
	var names []string
	for i := range s.Pours {
		if p := &s.Pours[i]; p.After {
			names = append(names, p.Profile.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "the " + flavor.JoinAnd(names) + " last, on top"
}
