package part

import (
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/weigh"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// OtherLine describes a cover that was not chosen, its new allergens first.
func OtherLine(said house.Settings, from *flavor.Spec, c *cover.Cover, avoid []flavor.Allergen) string {
	v := CoverOf(said, from, c, 0, avoid)
	line := strings.Join(append([]string{strings.Join(v.Instead, " + ")}, v.Moves...), ", ")
	return words.Bound(say.It("part.other-cover", "New", words.List(v.New), "Cover", line, "Notice", v.Notice))
}

// MostParts is the most substitutes of a cover.
const MostParts = 2

// Cover is one cover, as shown on a page.
type Cover struct {
	Text      string   // the cover in a line
	Instead   []string // the substitutes, with their amounts
	Moves     []string // other pours that change
	Tell      string   // what a guest would notice
	Change    string   // in strength and volume
	New       []string // allergens that the original drink does not have
	Ask       []string // what to ask the guest first
	Allergens Allergens
	Pours     []Pour
	Score     string
	Verdict   string
	Before    string
	Steps     string // noticeable steps
	Notice    string // whether a guest notices the difference
	Draft     string
	Moved     *Difference // what a guest could notice; nil if not drawn
	Cost      string      // compared with the original; "" without prices
}

// Pour is one pour of the covered drink.
type Pour struct {
	ID, Amount, Name string
	Mark             string // insteadMark or movedMark; empty if unchanged
	Was              string // the amount before, where it is moved
}

// What a cover does to a pour, as style sheets know it.
const (
	insteadMark = "instead"
	movedMark   = "moved"
)

// Note says what is not as it is written; empty if the pour is unchanged.
func (p *Pour) Note() string {
	if p.Was != "" {
		return say.It("part.was", "Amount", p.Was)
	}
	if p.Mark == insteadMark {
		return say.It("part.instead")
	}
	return p.Mark
}

// CoverOf describes a cover of a drink with the score before, its pours in the units of
// the house.
func CoverOf(said house.Settings, from *flavor.Spec, c *cover.Cover, before float64, avoid []flavor.Allergen) Cover {
	from, c = SpecInUnits(said, from), coverInUnits(said, c)
	return Cover{Text: words.Sentence(words.Bound(c.Text)), Instead: substitutes(c), Moves: moves(c), Tell: tell(c), Change: change(c), New: words.Of(c.NewAllergens), Ask: c.Ask,
		Allergens: AllergensOf(&c.Spec, avoid), Pours: coverPours(from, c), Score: words.Points(c.Score), Before: words.Points(before),
		Verdict: strings.ToLower(words.Verdict(weigh.VerdictOf(c.Score))), Steps: words.Figure(c.Distance, 1), Notice: words.Notice(c.Notice)}
}

// LabelWay describes a cover that is not safe until labels are read, and what they must say.
func LabelWay(said house.Settings, c *cover.Cover) string {
	c = coverInUnits(said, c)
	labels := make([]string, len(c.Read))
	for i, p := range c.Read {
		labels[i] = p.Name
		if i < len(c.ReadFor) {
			labels[i] += " " + c.ReadFor[i]
		}
	}
	return words.Bound(say.It("part.label-way", "Pours", strings.Join(substitutes(c), " + "), "Labels", words.List(labels)))
}

// substitutes lists the substitutes with their amounts.
func substitutes(c *cover.Cover) []string {
	var out []string
	for i := range c.Parts {
		said := Amount(&c.Parts[i]) + " " + c.Parts[i].Profile.Name
		if c.OnTop(&c.Parts[i]) {
			said = say.It("part.on-top", "Pour", said)
		}
		out = append(out, words.Bound(said))
	}
	return out
}

// moves lists the other pours that change, and what is left off.
func moves(c *cover.Cover) []string {
	out := shifts(c)
	if off := c.Spec.LeaveOff(); off != "" {
		out = append(out, off)
	}
	return out
}

// shifts lists the other pours that change.
func shifts(c *cover.Cover) []string {
	var out []string
	for _, m := range c.Changes {
		if m.To == 0 {
			out = append(out, say.It("part.none-of", "Name", m.Profile.Name))
			continue
		}
		to := flavor.Pour{Profile: m.Profile, Amount: m.To, Unit: m.Unit, ML: m.ToML}
		out = append(out, words.Bound(say.It("part.moved-to", "Name", m.Profile.Name, "Amount", Amount(&to))))
	}
	return out
}

// coverPours lists the pours of the covered drink and marks the differences.
func coverPours(from *flavor.Spec, c *cover.Cover) []Pour {
	var out []Pour
	for _, p := range Compare(from.Pours, c.Spec.Pours) {
		if p.Is == nil {
			continue
		}
		v := Pour{ID: p.Is.Profile.ID, Amount: p.After(), Name: p.Name()}
		switch {
		case p.Was == nil:
			v.Mark = insteadMark
		case p.Moved():
			v.Mark, v.Was = movedMark, p.Before()
		}
		out = append(out, v)
	}
	return out
}

// tell describes what a guest would miss and what is new.
func tell(c *cover.Cover) string {
	var parts []string
	if c.OtherSpirit {
		parts = append(parts, say.It("part.another-spirit"))
	}
	if len(c.Lost) > 0 {
		parts = append(parts, say.It("part.less", "Aromas", aromas(c.Lost)))
	}
	if len(c.Gained) > 0 {
		parts = append(parts, say.It("part.more", "Aromas", aromas(c.Gained)))
	}
	if len(parts) == 0 {
		return say.It("part.same-aromas")
	}
	return words.Sentence(strings.Join(parts, "; "))
}

// aromas lists families of aromas.
func aromas(list []flavor.AromaFamily) string {
	var names []string
	for _, f := range list {
		names = append(names, f.Word())
	}
	return words.List(names)
}

// change describes the change of strength and volume.
func change(c *cover.Cover) string {
	abv, volume := words.Signed(c.ABVChange, 1), words.Signed(c.VolumeChange, 0)
	if abv == "0.0" && volume == "0" {
		return say.It("part.as-strong-and-as-long")
	}
	return say.It("part.strength-and-volume-change", "Strength", abv, "Volume", volume)
}
