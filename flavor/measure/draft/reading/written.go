package reading

import (
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/entry"
)

// CountedBare reports whether a bare number of the pour is a number of things,
// whatever the other lines say.
func CountedBare(p *flavor.Pour) bool {
	if p.Profile == nil {
		return false
	}
	t := task{line: &entry.Line{Name: p.Profile.Name}, base: found{profile: p.Profile}, amount: p.Amount}
	return t.counts() == flavor.Piece && !t.perhapsPoured()
}

// Movable reports whether the place would make another ingredient of the name,
// or ask.
func Movable(name string, p *flavor.Pour) bool {
	pl := placeOf(p.Unit, p.Amount, p.After)
	for _, n := range strip(name) {
		key := flavor.NormaliseName(n)
		switch {
		case pl.volume() && sweetened[key] != "":
			return true
		case p.Unit == flavor.Drop && byDrop[key] != "", p.Unit == flavor.Gram && byVolume[key] != "":
			return true
		case (p.Unit == flavor.Dash || p.Unit == flavor.Drop) && (byDash[key] != "" && flavor.NormaliseName(byDash[key]) != key || askDash[key] != nil):
			return true
		case p.Unit.Spoon() && spooned[key] != "":
			return flavor.NormaliseName(spooned[key]) != key
		case (p.Unit.Spoon() || pl.volume() || pl.topped) && (byVolume[key] != "" || askVolume[key] != nil || askTop[key] != nil):
			return true
		}
	}
	return false
}
