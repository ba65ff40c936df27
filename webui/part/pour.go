package part

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// ShelfTitles are the shelves of the board, in order.
var ShelfTitles = []struct {
	Part  flavor.Part
	Title string
	Short string // for the link to the shelf
}{
	{flavor.PartBase, "Spirits", "Spirits"},
	{flavor.PartModifier, "Liqueurs, wines, bitter and sweet", "Liqueurs"},
	{flavor.PartSour, "Sour", "Sour"},
	{flavor.PartSweetener, "Syrups and sugars", "Syrups"},
	{flavor.PartLength, "Juices, sodas and teas", "Juices"},
	{flavor.PartTexture, "Egg, cream and foam", "Egg"},
	{flavor.PartSeasoning, "Bitters, herbs and spices", "Bitters"},
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
// everywhere on the pages, "22.5 mL".
func Amount(p *flavor.Pour) string {
	switch p.Unit {
	case flavor.Piece:
		return measure.FormatAmount(p.Amount, "")
	case flavor.Millilitre:
		return strings.TrimSuffix(measure.FormatAmount(p.Amount, p.Unit), string(p.Unit)) + "mL"
	}
	return measure.FormatAmount(p.Amount, p.Unit)
}
