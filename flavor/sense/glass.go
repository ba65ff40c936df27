package sense

import (
	"cmp"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Percept is a finished drink as it is sensed: what the guest has of what is in the glass.
type Percept struct {
	Holds        Vector // concentrations
	VolumeML     float64
	TemperatureC float64
	PouredML     float64 // the pours together, before ice
	// Materials of the aroma, each once, with the intensity that it has in the
	// finished drink, by name.
	Materials []flavor.MaterialShare
}

// Percept returns what is sensed of a spec that is poured; drink is what mixing it gives.
func (s *Space) Percept(spec *flavor.Spec, drink *mix.Drink) *Percept {
	g := &Percept{VolumeML: drink.VolumeML, TemperatureC: drink.TemperatureC, PouredML: spec.VolumeML()}
	for i := range spec.Pours {
		p := &spec.Pours[i]
		share := p.ML / drink.VolumeML
		v := s.PerML(p.Profile)
		g.Holds.Add(&v, share)
		for _, m := range p.Profile.Materials {
			g.Materials = append(g.Materials, flavor.MaterialShare{Material: m.Material, Intensity: share * m.Intensity})
		}
	}
	g.Materials = merged(g.Materials)
	return g
}

// neatML is a neat pour, common practice; only differences of it would show.
const neatML = 30.0

// Neat returns an ingredient by itself, at the temperature of a room.
func (s *Space) Neat(p *flavor.Profile) *Percept {
	const roomC = 20
	return &Percept{Holds: s.PerML(p), VolumeML: neatML, PouredML: neatML, TemperatureC: roomC, Materials: merged(slices.Clone(p.Materials))}
}

// merged adds up materials of the same name and sorts them by it.
func merged(list []flavor.MaterialShare) []flavor.MaterialShare {
	slices.SortStableFunc(list, func(a, b flavor.MaterialShare) int { return cmp.Compare(a.Material, b.Material) })
	out := list[:0]
	for _, m := range list {
		if n := len(out); n > 0 && out[n-1].Material == m.Material {
			out[n-1].Intensity += m.Intensity
			continue
		}
		out = append(out, m)
	}
	return out
}
