package mix

import "counterpour/flavor"

// Scale returns a copy of a spec with every amount multiplied. It fails for a
// factor that is not above zero and up to 10 000.
func Scale(s *flavor.Spec, times float64) (flavor.Spec, error) {
	if !(times > 0 && times <= maxServings) {
		return flavor.Spec{}, flavor.Invalid("scale", times, "%v must be more than 0 and no more than %v", times, maxServings)
	}
	out := s.Clone()
	for i := range out.Pours {
		out.Pours[i].Amount *= times
		out.Pours[i].ML *= times
	}
	return out, nil
}

// maxServings bounds a batch.
const maxServings = 10000

// BatchPlan is a drink made ahead, to be served cold without ice.
type BatchPlan struct {
	Servings  float64
	Bottle    flavor.Spec   // what goes into the bottle, for all servings
	WaterML   float64       // to add in place of the ice
	BottleML  float64       // volume of the bottled mixture, at 20 °C
	ServingML float64       // to pour for one
	ABV       float64       // % vol of the bottled mixture
	FreezingC float64       // a freezer below this turns it to slush
	Tops      []flavor.Pour // what goes into each glass at the end, for one
}

// Batch plans a drink for a number of servings: every pour that meets the ice
// is multiplied, and water takes the place of what the ice would have added.
// Pours that sparkle, and tops, stay out of the bottle. It fails as [Mixer.Mix]
// and [Scale] do, and for a spec of nothing but tops.
func (m *Mixer) Batch(s *flavor.Spec, servings float64) (*BatchPlan, error) {
	if err := check(s); err != nil {
		return nil, err
	}
	bottle, tops := s.Clone(), []flavor.Pour(nil)
	bottle.Pours = nil
	for i := range s.Pours {
		if afterIce(&s.Pours[i]) {
			tops = append(tops, s.Pours[i])
		} else {
			bottle.Pours = append(bottle.Pours, s.Pours[i])
		}
	}
	if len(bottle.Pours) == 0 {
		return nil, flavor.Invalid("pours", len(s.Pours), "nothing in the spec can be bottled; add a pour that does not sparkle")
	}
	one, err := m.Mix(&bottle)
	if err != nil {
		return nil, err
	}
	all, err := Scale(&bottle, servings)
	if err != nil {
		return nil, err
	}
	return &BatchPlan{Servings: servings, Bottle: all, Tops: tops,
		WaterML: servings * one.IceWaterG / WaterDensity, BottleML: servings * one.VolumeML,
		ServingML: one.VolumeML, ABV: one.ABV, FreezingC: one.FreezingC}, nil
}
