package mix

// Thermal properties, from memory: CRC Handbook of Chemistry and Physics; ice
// from Feistel and Wagner, J. Phys. Chem. Ref. Data 35:1021, 2006.
const (
	LatentHeat  = 333.55 // J/g, ice at 0 °C
	waterHeat   = 4.19   // J/(g K), water between 0 and 20 °C
	ethanolHeat = 2.44   // J/(g K), ethanol at 25 °C
	iceHeat     = 2.06   // J/(g K), ice between 0 and −10 °C

	// solidsHeat is that of sugar in solution, in J/(g K). Sugar Technologists
	// Manual, 1995, gives 4.1868 − B (0.0297 − 4.6e-5 P) + 7.5e-5 B t for B
	// per cent of solids, purity P and t °C; it is linear in B, and this is
	// what it leaves for the solids at P = 100 and t = 10. The crystal has
	// 1.24, which would make a syrup too easy to chill.
	solidsHeat = 1.75
)

// excessHeat returns what a mixture of ethanol and water holds in J/(g K)
// beyond its parts, with p the mass fraction of ethanol. Fitted here to
// Perry's Chemical Engineers' Handbook (from memory): 4.33, 4.29 and 3.48
// J/(g K) at p = 0.10, 0.25 and 0.60, between 3 and 23 °C.
func excessHeat(p float64) float64 { return p * (1 - p) * (3.9 - 4.0*p) }

// mixingHeat returns the heat in J/g that ethanol and water give off when they
// mix near 0 °C, with p the mass fraction of ethanol. Fitted here to excess
// enthalpies of −370, −720, −755 and −545 J/mol at 25 °C for p = 0.1, 0.25, 0.4
// and 0.6 (from memory), carried to 0 °C by [excessHeat].
func mixingHeat(p float64) float64 { return p * (1 - p) * (340 - 360*p) }

// solvent returns the mass of ethanol and water in grams and the mass fraction
// of ethanol in it.
func (p *parts) solvent() (grams, ethanol float64) {
	grams = p.ethanol + p.water
	if grams <= 0 {
		return 0, 0
	}
	return grams, p.ethanol / grams
}

// heatCapacity returns the heat capacity in J/K: that of the parts, and what
// ethanol and water hold together beyond it. Fat and protein count as sugar.
func (p *parts) heatCapacity() float64 {
	grams, ethanol := p.solvent()
	return p.water*waterHeat + p.ethanol*ethanolHeat + grams*excessHeat(ethanol) +
		(p.sugar+p.acid+p.salt+p.texture)*solidsHeat
}

// dilutionHeat returns the heat in J that p gives off when waterG grams of
// water are mixed in.
func (p *parts) dilutionHeat(waterG float64) float64 {
	before, x := p.solvent()
	if before <= 0 {
		return 0
	}
	after := before + waterG
	return after*mixingHeat(p.ethanol/after) - before*mixingHeat(x)
}
