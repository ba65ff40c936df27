package part

import (
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/say"
)

// ShelfTitle is a shelf of the board.
type ShelfTitle struct {
	Part  flavor.Part
	Title string
	Short string // for the link to the shelf
}

// ShelfTitles are the shelves of the board, in order.
func ShelfTitles() []ShelfTitle {
	return []ShelfTitle{
		{flavor.PartBase, say.It("part.spirits"), say.It("part.spirits")},
		{flavor.PartModifier, say.It("part.modifiers"), say.It("part.modifiers-short")},
		{flavor.PartSour, say.It("part.sour"), say.It("part.sour")},
		{flavor.PartSweetener, say.It("part.sweeteners"), say.It("part.sweeteners-short")},
		{flavor.PartLength, say.It("part.length"), say.It("part.length-short")},
		{flavor.PartTexture, say.It("part.texture"), say.It("part.texture-short")},
		{flavor.PartSeasoning, say.It("part.seasoning"), say.It("part.seasoning-short")},
	}
}

// Bottles lists the ingredients of a drink without duplicates.
func Bottles(s *flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	for i := range s.Pours {
		if b := s.Pours[i].Profile; !slices.Contains(out, b) {
			out = append(out, b)
		}
	}
	return out
}

// Amount formats the amount of a pour; pieces have no unit, and millilitres are written as
// everywhere on the pages, "22.5 mL". What is rounded says so, and of what.
func Amount(p *flavor.Pour) string {
	switch {
	case p.Unit == flavor.Piece:
		return measure.FormatAmount(p.Amount, "")
	case p.Unit == flavor.Millilitre:
		return millilitresOf(p.Amount)
	case house.Rounded(*p):
		return say.It("part.rounded", "Amount", measure.FormatAmount(p.Amount, p.Unit), "Written", millilitresOf(p.ML))
	}
	return measure.FormatAmount(p.Amount, p.Unit)
}

func millilitresOf(ml float64) string {
	return strings.TrimSuffix(measure.FormatAmount(ml, flavor.Millilitre), string(flavor.Millilitre)) + "mL"
}
