package flavor

// Priced reports whether an ingredient has a price, or needs none since it comes from the
// tap. Prices are per millilitre, by id.
func (p *Profile) Priced(prices map[string]float64) bool {
	_, known := prices[p.ID]
	return known || p.Class.Free()
}

// Cost returns what the pours of a drink cost together, by prices per millilitre of each
// ingredient's id, and the ingredients that have none, each once, in the order of the
// pours; they count nothing.
func (s *Spec) Cost(prices map[string]float64) (sum float64, unpriced []*Profile) {
	seen := map[string]bool{}
	for i := range s.Pours {
		p := s.Pours[i].Profile
		if p == nil {
			continue
		}
		sum += prices[p.ID] * s.Pours[i].ML
		if !p.Priced(prices) && !seen[p.ID] {
			seen[p.ID] = true
			unpriced = append(unpriced, p)
		}
	}
	return sum, unpriced
}
