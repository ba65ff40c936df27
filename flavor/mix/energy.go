package mix

// Energy factors per gram, kcal and kJ: Regulation (EU) No 1169/2011, Annex XIV.
const (
	kcalEthanol, kjEthanol = 7, 29
	kcalSugar, kjSugar     = 4, 17
	kcalAcid, kjAcid       = 3, 13
	kcalFat, kjFat         = 9, 37
	kcalProtein, kjProtein = 4, 17
)

// EnergyKcal returns the energy in kcal of a ledger: 7 kcal/g of ethanol, 4 of
// sugar, 3 of acid, 9 of fat. What thickens and is not fat counts as protein,
// 4, which is right for egg and milk and high for gums.
func EnergyKcal(l *Ledger) float64 {
	p := l.parts()
	return p.kcal()
}

func (p *parts) kcal() float64 {
	return kcalEthanol*p.ethanol + kcalSugar*p.sugar + kcalAcid*p.acid +
		kcalFat*p.fat + kcalProtein*(p.texture-p.fat)
}

// energyKJ is the same in kJ: 29 kJ/g of ethanol, 17 of sugar and protein, 13
// of acid, 37 of fat. The regulation rounds its factors, so it is not exactly
// 4.184 times the kcal.
func energyKJ(l *Ledger) float64 {
	return kjEthanol*l.Ethanol + kjSugar*l.Sugar + kjAcid*l.Acid +
		kjFat*l.Fat + kjProtein*(l.Texture-l.Fat)
}
