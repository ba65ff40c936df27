package flavor

// Senses is what an ingredient holds for the senses that its figures and its
// aroma leave out. All are concentrations in the neat ingredient, so they mix
// by volume.
type Senses struct {
	UmamiGPerL       float64 // monosodium glutamate that tastes as savoury
	PungentMGPerL    float64 // capsaicin that bites as much: chilli, ginger, pepper, mustard
	CoolingMGPerL    float64 // menthol that cools as much
	AstringentGPerL  float64 // tannic acid that dries the mouth as much
	CarbonationGPerL float64 // carbon dioxide
	FoamGPerL        float64 // egg-white protein that holds as much foam
	Colour           Colour
}

// Colour is how light fares in a centimetre of a neat liquid: decadic
// absorbance at the red (about 630 nm), green (530 nm) and blue (450 nm) end of
// the light, and Cloud, the same for what scatters light without swallowing it.
// All four add up by volume (the law of Beer and Lambert).
type Colour struct {
	Red, Green, Blue, Cloud float64
}

// Plus returns s with times × o added to it.
func (s Senses) Plus(o *Senses, times float64) Senses {
	s.UmamiGPerL += times * o.UmamiGPerL
	s.PungentMGPerL += times * o.PungentMGPerL
	s.CoolingMGPerL += times * o.CoolingMGPerL
	s.AstringentGPerL += times * o.AstringentGPerL
	s.CarbonationGPerL += times * o.CarbonationGPerL
	s.FoamGPerL += times * o.FoamGPerL
	s.Colour.Red += times * o.Colour.Red
	s.Colour.Green += times * o.Colour.Green
	s.Colour.Blue += times * o.Colour.Blue
	s.Colour.Cloud += times * o.Colour.Cloud
	return s
}
