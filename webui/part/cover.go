package part

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/weigh"
	"counterpour/webui/words"
)

// OtherLine says a cover that was not chosen, its new allergens first.
func OtherLine(from *flavor.Spec, c *cover.Cover, avoid []flavor.Allergen) string {
	v := CoverOf(from, c, 0, avoid)
	line := strings.Join(append([]string{strings.Join(v.Instead, " + ")}, v.Moves...), ", ")
	if len(v.New) > 0 {
		line = "New allergen: " + words.List(v.New) + ". " + line
	}
	return words.Bound(line) + " (" + v.Notice + ")"
}

// MostParts is how many substitutes a cover may have.
const MostParts = 2

// Cover is one cover.
type Cover struct {
	Text      string   // the cover in a line
	Instead   []string // the substitutes, with their amounts
	Moves     []string // the other pours that move
	Tell      string   // what a guest would notice
	Change    string   // of strength and volume
	New       []string // allergens that the drink did not carry
	Ask       []string // what to ask the guest first
	Allergens Allergens
	Pours     []Pour
	Score     string
	Verdict   string
	Before    string
	Steps     string // noticeable steps
	Notice    string // whether a guest tells it from the drink
	Draft     string
	Moved     *Difference // what a guest could notice; nil if it is not drawn
	Cost      string      // against the drink itself; empty if nothing is priced
}

// Pour is one pour of the covered drink.
type Pour struct {
	Amount, Name string
	Mark         string // "instead" or "moved", empty if it stays
}

// CoverOf says a cover of a drink that scored before.
func CoverOf(from *flavor.Spec, c *cover.Cover, before float64, avoid []flavor.Allergen) Cover {
	return Cover{Text: words.Sentence(c.Text), Instead: instead(c), Moves: moves(c), Tell: tell(c), Change: change(c), New: words.Of(c.NewAllergens), Ask: c.Ask,
		Allergens: AllergensOf(&c.Spec, avoid), Pours: coverPours(from, c), Score: words.Points(c.Score), Before: words.Points(before),
		Verdict: strings.ToLower(words.Verdict(weigh.VerdictOf(c.Score))), Steps: words.Figure(c.Distance, 1), Notice: words.Notice(c.Notice)}
}

// instead lists the substitutes with their amounts.
func instead(c *cover.Cover) []string {
	var out []string
	for i := range c.Parts {
		out = append(out, Amount(&c.Parts[i])+" "+c.Parts[i].Profile.Name)
	}
	return out
}

// moves lists the other pours that move.
func moves(c *cover.Cover) []string {
	var out []string
	for _, m := range c.Changes {
		if m.To == 0 {
			out = append(out, "no "+m.Profile.Name)
			continue
		}
		to := flavor.Pour{Amount: m.To, Unit: m.Unit}
		out = append(out, words.Bound(m.Profile.Name+" to "+Amount(&to)))
	}
	return out
}

// coverPours lists the whole covered drink and marks what differs.
func coverPours(from *flavor.Spec, c *cover.Cover) []Pour {
	var out []Pour
	for _, p := range Compare(from.Pours, c.Spec.Pours) {
		if p.Is == nil {
			continue
		}
		v := Pour{Amount: p.After(), Name: p.Name()}
		switch {
		case p.Was == nil:
			v.Mark = "instead"
		case p.Moved():
			v.Mark = "moved"
		}
		out = append(out, v)
	}
	return out
}

// tell says what a guest would miss and meet.
func tell(c *cover.Cover) string {
	var parts []string
	for _, x := range []struct {
		word     string
		families []flavor.Family
	}{{"less", c.Lost}, {"more", c.Gained}} {
		var names []string
		for _, f := range x.families {
			names = append(names, f.String())
		}
		if len(names) > 0 {
			parts = append(parts, x.word+" "+words.List(names))
		}
	}
	if len(parts) == 0 {
		return "The same aromas."
	}
	return words.Sentence(strings.Join(parts, "; "))
}

// change says what happens to strength and volume.
func change(c *cover.Cover) string {
	abv, volume := words.Signed(c.ABVChange, 1), words.Signed(c.VolumeChange, 0)
	if abv == "0.0" && volume == "0" {
		return "As strong and as long as before."
	}
	return abv + "\u00a0% vol and " + volume + "\u00a0mL in the glass."
}
