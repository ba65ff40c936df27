package part

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// ShelfTitles are the shelves of the board, in order.
var ShelfTitles = []struct {
	Part  flavor.Part
	Title string
}{
	{flavor.PartBase, "Spirits"},
	{flavor.PartModifier, "Liqueurs, wines, bitter and sweet"},
	{flavor.PartSour, "Sour"},
	{flavor.PartSweetener, "Syrups and sugars"},
	{flavor.PartLength, "Juices, sodas and teas"},
	{flavor.PartTexture, "Egg, cream and foam"},
	{flavor.PartSeasoning, "Bitters, herbs and spices"},
}

// Bottles lists the ingredients of a drink, each once.
func Bottles(s *flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	for i := range s.Pours {
		if b := s.Pours[i].Profile; !slices.Contains(out, b) {
			out = append(out, b)
		}
	}
	return out
}

// Amount says the amount of a pour; what comes in pieces is only counted.
func Amount(p *flavor.Pour) string {
	if p.Unit == flavor.Piece {
		return measure.FormatAmount(p.Amount, "")
	}
	return measure.FormatAmount(p.Amount, p.Unit)
}

// IndexOf is the first pour of an ingredient, -1 if there is none.
func IndexOf(pours []flavor.Pour, p *flavor.Profile) int {
	return slices.IndexFunc(pours, func(x flavor.Pour) bool { return x.Profile.ID == p.ID })
}
