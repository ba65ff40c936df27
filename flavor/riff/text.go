package riff

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// describe turns a solved drink into a riff.
func (w *work) describe(s *solved) (Riff, error) {
	result, err := w.riffer.judge.Score(&s.spec)
	if err != nil {
		return Riff{}, err
	}
	r := Riff{Spec: s.spec, Kind: s.kind, Score: result.Judgement.Score, FamilyID: result.Judgement.Fits[0].ID, Family: result.Judgement.Fits[0].Name,
		Marks: s.spec.Allergens(), Cost: costOf(&s.spec, w.limits.guest.Prices), Drink: s.drink, at: s.at}
	r.Spec.Name = ""
	if w.spec == nil {
		return r, nil
	}
	r.Distance = s.at.distance(&w.at)
	r.Changes = diff(w.spec, &r.Spec)
	before, err := w.riffer.judge.Score(w.spec)
	if err != nil {
		return Riff{}, err
	}
	r.Text = w.text(&r, before.Judgement.Fits[0].ID)
	return r, nil
}

// diff lists what changed from one drink to another: what went or moved in the
// order of the first, then what came in.
func diff(from, to *flavor.Spec) []balance.Change {
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
			if math.Abs(c.ToML-c.FromML) < sameML {
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

// sameML is the difference in mL below which an amount has not changed.
const sameML = 0.05

// text says the riff in one line: what to do, then what it does.
func (w *work) text(r *Riff, familyBefore string) string {
	text := recipe(r.Changes)
	if r.Spec.Method != w.spec.Method || r.Spec.Service != w.spec.Service {
		text = append(text, wayOf(&r.Spec))
	}
	head := strings.Join(text, ", ")
	if head == "" {
		head = "the same pours"
	}
	if r.FamilyID != familyBefore {
		head += ", which reads as " + strings.ToLower(r.Family)
	}
	return capital(head) + ": " + w.effect(r)
}

// capital begins a sentence.
func capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}

// recipe says the changes: what stands for what, what is added or left out, and
// what moves.
func recipe(changes []balance.Change) []string {
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
			out = append(out, "top with "+said) // what sparkles is not shaken
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
	return came.Profile.Class.Part() == flavor.PartBase && slices.ContainsFunc(moved, func(x balance.Change) bool {
		return x.Profile.Class.Part() == flavor.PartBase && x.ToML < x.FromML
	})
}

// standsFor reports whether what came in does the work of what went: the same
// part, or a liqueur in place of a syrup and the other way round, or a wine of a
// spirit.
func standsFor(came, went *balance.Change) bool {
	a, b := came.Profile.Class, went.Profile.Class
	sweet := func(x, y flavor.Class) bool { return x == flavor.ClassLiqueur && y.Part() == flavor.PartSweetener }
	return a.Part() == b.Part() || sweet(a, b) || sweet(b, a) || a.Part() == flavor.PartModifier && b.Part() == flavor.PartBase
}

// wayOf says how a drink is mixed and served.
func wayOf(s *flavor.Spec) string {
	methods := map[flavor.Method]string{flavor.Shake: "shaken", flavor.DryShake: "dry shaken, then shaken", flavor.Stir: "stirred",
		flavor.Build: "built", flavor.Blend: "blended", flavor.Throw: "thrown", flavor.Swizzle: "swizzled"}
	services := map[flavor.Service]string{flavor.Up: "served up", flavor.Rocks: "served on the rocks", flavor.Crushed: "served on crushed ice", flavor.Long: "served long",
		flavor.Hot: "served hot", flavor.Neat: "served neat"}
	return methods[s.Method] + " and " + services[s.Service]
}

// mostNamed is how many aroma families are named each way.
const mostNamed = 3

// effect says what the guest will notice.
func (w *work) effect(r *Riff) string {
	var words []string
	if d := r.Drink.ABV - w.drink.ABV; math.Abs(r.at[rowStrong]-w.at[rowStrong]) >= leastStep {
		words = append(words, fmt.Sprintf("%s at %.0f %% vol, not %.0f", direction(d, "stronger", "lighter"), r.Drink.ABV, w.drink.ABV))
	}
	for _, a := range []struct {
		axis     template.Axis
		up, down string
	}{{template.Sweet, "sweeter", "drier"}, {template.Sour, "sharper", "rounder"}, {template.Bitter, "more bitter", "less bitter"}, {template.Long, "longer", "shorter"}} {
		if d := r.at[rowOf(a.axis)] - w.at[rowOf(a.axis)]; math.Abs(d) >= leastStep {
			words = append(words, direction(d, a.up, a.down))
		}
	}
	more, less := w.told(r.Drink)
	if len(more) > 0 {
		words = append(words, "more "+families(more))
	}
	if len(less) > 0 {
		words = append(words, "less "+families(less))
	}
	if len(words) == 0 {
		return "much the same on the tongue"
	}
	return strings.Join(words, ", ")
}

func families(fs []flavor.Family) string {
	names := make([]string, 0, mostNamed)
	for _, f := range fs[:min(len(fs), mostNamed)] {
		names = append(names, f.String())
	}
	return strings.Join(names, " and ")
}

func direction(x float64, up, down string) string {
	if x > 0 {
		return up
	}
	return down
}
