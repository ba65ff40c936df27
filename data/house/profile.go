package house

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// Profile computes the profile of something house-made from its recipe: the mass balance
// of the parts in the volume that the recipe gives. It assumes that aromas are
// transferred completely, which a short infusion does not reach. Measured values replace
// the computed ones.
func (m Made) Profile(shelf *Shelf) (*flavor.Profile, error) {
	s, err := m.sum(shelf)
	if err != nil {
		return nil, err
	}
	p := &flavor.Profile{ID: m.ID, Name: m.Name, Aliases: slices.Clone(m.Aliases), Class: m.Class, Making: m.Method,
		ABV:    s.figure(100 / mix.EthanolDensity * s.all.Ethanol),
		Sugar:  s.figure(1000 * s.all.Sugar),
		Acid:   s.figure(1000 * s.all.Acid),
		Bitter: s.figure(1000 * s.all.Bitter),
		Salt:   s.figure(1000 * s.all.Salt),
		Fat:    s.figure(1000 * s.all.Fat), Texture: s.figure(1000 * s.all.Texture),
	}
	s.rest(p)
	s.spreads(p)
	s.blends(p)
	s.aroma(p)
	s.senses(p)
	s.marks(p)
	s.steep(p, m.Steeped, shelf)
	if err := m.Measured.overlay(p); err != nil {
		return nil, err
	}
	return p, nil
}

// sum adds up the parts of a recipe.
type sum struct {
	parts []flavor.Pour
	all   mix.Ledger
	ml    float64 // volume of the result
}

func (m Made) sum(shelf *Shelf) (*sum, error) {
	s, strained := &sum{}, 0.0 // mL
	for i, part := range m.Parts {
		p, ml, err := shelf.Pour(part)
		if err != nil {
			fault := invalid("ingredient", part.Ingredient, "%s", err)
			fault.Location = flavor.At("parts", i)
			return nil, fault
		}
		per := mix.PerML(p)
		s.all = s.all.Plus(&per, ml)
		if Strained(p, part.Unit) {
			strained += ml
		}
		s.parts = append(s.parts, flavor.Pour{Profile: p, ML: ml})
	}
	if s.ml = m.YieldML; s.ml == 0 {
		s.ml = s.all.VolumeML() - strained
		if !(s.ml > 0) {
			return nil, invalid("parts", s.ml, "nothing is left of it once it is strained; write what it steeps in")
		}
	}
	return s, nil
}

// VolumeML returns the volume that the recipe gives, in mL: measured or, if not, the sum
// of its parts.
func (m Made) VolumeML(shelf *Shelf) (float64, error) {
	s, err := m.sum(shelf)
	if err != nil {
		return 0, err
	}
	return s.ml, nil
}

// figure divides a total by the volume of the recipe.
func (s *sum) figure(total float64) flavor.Figure {
	return flavor.Figure{Value: total / s.ml, Origin: flavor.OriginComputed, Source: "the house's recipe"}
}

// rest computes the properties that a ledger does not track, if any part states them.
func (s *sum) rest(p *flavor.Profile) {
	for _, part := range s.parts {
		for _, f := range []struct{ from, into *flavor.Figure }{{&part.Profile.Sweeteners, &p.Sweeteners}, {&part.Profile.Caffeine, &p.Caffeine}, {&part.Profile.Tannin, &p.Tannin}} {
			if f.from.Origin == "" {
				continue
			}
			share := s.figure(f.from.Value * part.ML)
			share.Value += f.into.Value
			share.Spread = math.Hypot(f.into.Spread, f.from.Spread*part.ML/s.ml)
			*f.into = share
		}
	}
}

// spreads combines the spreads of the parts in quadrature, weighted by volume.
func (s *sum) spreads(p *flavor.Profile) {
	for _, f := range []struct {
		into *flavor.Figure
		of   func(*flavor.Profile) float64
	}{
		{&p.ABV, func(q *flavor.Profile) float64 { return q.ABV.Spread }},
		{&p.Sugar, func(q *flavor.Profile) float64 { return q.Sugar.Spread }},
		{&p.Acid, func(q *flavor.Profile) float64 { return q.Acid.Spread }},
		{&p.Bitter, func(q *flavor.Profile) float64 { return q.Bitter.Spread }},
		{&p.Salt, func(q *flavor.Profile) float64 { return q.Salt.Spread }},
		{&p.Fat, func(q *flavor.Profile) float64 { return q.Fat.Spread }},
		{&p.Texture, func(q *flavor.Profile) float64 { return q.Texture.Spread }},
	} {
		var square float64
		for _, part := range s.parts {
			v := f.of(part.Profile) * part.ML / s.ml
			square += v * v
		}
		f.into.Spread = math.Sqrt(square)
	}
}

// blends computes the shares of the kinds of sugar and acid.
func (s *sum) blends(made *flavor.Profile) {
	made.Sugars.Name, made.Acids.Name = "house recipe", "house recipe"
	for _, part := range s.parts {
		p := part.Profile
		if s.all.Sugar > 0 {
			made.Sugars = made.Sugars.Plus(&p.Sugars, part.ML*p.Sugar.Value/1000/s.all.Sugar)
		}
		if s.all.Acid > 0 {
			made.Acids = made.Acids.Plus(&p.Acids, part.ML*p.Acid.Value/1000/s.all.Acid)
		}
	}
}

func (s *sum) aroma(p *flavor.Profile) {
	p.AromaOrigin = flavor.OriginComputed
	for i := range p.Aroma {
		p.Aroma[i] = s.all.Aroma[i] / s.ml
	}
	materials := map[string]float64{}
	var total, spread float64
	for _, part := range s.parts {
		w := part.ML * part.Profile.Aroma.Total()
		total += w
		spread += w * part.Profile.AromaSpread
		for _, m := range part.Profile.Materials {
			materials[m.Material] += m.Intensity * part.ML / s.ml
		}
	}
	if total > 0 {
		p.AromaSpread = spread / total
	}
	for _, name := range sortedKeys(materials) {
		p.Materials = append(p.Materials, flavor.MaterialShare{Material: name, Intensity: materials[name]})
	}
}

// senses mixes colour, pungency and savouriness. Carbonation is lost when the house
// mixes.
func (s *sum) senses(p *flavor.Profile) {
	for _, part := range s.parts {
		p.Senses = p.Senses.Plus(&part.Profile.Senses, part.ML/s.ml)
	}
	p.Senses.CarbonationGPerL = 0
}

// marks collects allergens, animal sources and cautions. What a part may contain, the
// whole may contain; what is unstated of a part stays unstated.
func (s *sum) marks(p *flavor.Profile) {
	p.AllergensKnown = true
	whole := flavor.Spec{Pours: s.parts}
	for _, part := range s.parts {
		q := part.Profile
		p.AllergensKnown = p.AllergensKnown && q.AllergensKnown
		p.Undisclosed = p.Undisclosed || q.Undisclosed
		for _, a := range q.Animal {
			p.Animal = appendNew(p.Animal, a)
		}
		for _, c := range q.Cautions {
			p.Cautions = appendNew(p.Cautions, c)
		}
	}
	marks := whole.Allergens()
	for _, m := range marks {
		if m.Certainty != flavor.Unstated {
			p.AllergenMarks = append(p.AllergenMarks, m)
		}
	}
	if p.AllergensKnown {
		return
	}
	for _, a := range flavor.Allergens() {
		if !slices.ContainsFunc(marks, func(m flavor.AllergenMark) bool { return m.Allergen == a }) {
			p.FreeOf = append(p.FreeOf, a)
		}
	}
}

func appendNew(list []string, s string) []string {
	if slices.Contains(list, s) {
		return list
	}
	return append(list, s)
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

func compare(a, b string) int { return cmp.Compare(a, b) }
