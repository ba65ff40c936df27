package mix

import (
	"fmt"

	"counterpour/flavor"
)

// Drink is what is in the glass.
type Drink struct {
	Before       Ledger  // all pours, before ice
	After        Ledger  // with the water of the ice
	BeforeML     float64 // volume before ice, at 20 °C
	VolumeML     float64 // finished, at 20 °C
	ABV          float64 // % vol
	SugarPer100  float64 // g per 100 mL
	SweetPer100  float64 // g of sucrose per 100 mL that taste as sweet
	AcidPer100   float64 // g of citric acid per 100 mL with as much acid hydrogen
	Bitter       float64 // mg of quinine per litre that taste as bitter
	DilutionPct  float64 // water added, per cent of the volume that met the ice
	TemperatureC float64
	EnergyKcal   float64
	Aroma        flavor.Aroma // intensities in the finished drink
	PlusMinus    PlusMinus
}

// PlusMinus is one standard deviation of each number, from the spread of the
// profiles, the tolerance of the pours and the spread of the dilution.
type PlusMinus struct {
	VolumeML, ABV, SugarPer100, AcidPer100, DilutionPct float64
}

// Mixer mixes drinks. It is safe for concurrent use.
type Mixer struct {
	freezing *freezing
}

// NewMixer returns a mixer, or an error if its tables do not fit together.
func NewMixer() (*Mixer, error) {
	f, err := newFreezing()
	if err != nil {
		return nil, err
	}
	return &Mixer{freezing: f}, nil
}

// dose is one pour as the arithmetic sees it.
type dose struct {
	per   Ledger // one millilitre
	ml    float64
	still bool // meets the ice; a carbonated pour is added after it
}

// finishedTotals are the ledgers and the dilution of a drink.
type finishedTotals struct {
	before, after Ledger
	met           float64 // mL that met the ice
	meltG         float64
	share         float64 // water added over volume that met the ice
}

// Mix works out the drink that a spec gives. It fails if the spec is empty, a
// pour has no profile or an amount is not a positive, finite number.
func (m *Mixer) Mix(s *flavor.Spec) (*Drink, error) {
	doses, err := dosesOf(s)
	if err != nil {
		return nil, err
	}
	rule := ruleFor(s.Method, s.Service)
	t := finish(doses, rule, 1)
	d := &Drink{Before: t.before, After: t.after, BeforeML: t.before.VolumeML(), VolumeML: t.after.VolumeML()}
	d.ABV = 100 * t.after.Ethanol / EthanolDensity / d.VolumeML
	per100 := 100 / d.VolumeML
	d.SugarPer100 = t.after.Sugar * per100
	d.SweetPer100 = t.after.Sweet * per100
	d.AcidPer100 = t.after.Sour * per100
	d.Bitter = t.after.Bitter * 1000 / d.VolumeML
	d.DilutionPct = 100 * t.share
	for i := range d.Aroma {
		d.Aroma[i] = t.after.Aroma[i] / d.VolumeML
	}
	d.TemperatureC = m.temperature(doses, rule, &t)
	d.EnergyKcal = EnergyKcal(&t.after)
	d.PlusMinus = plusMinus(s, doses, rule)
	return d, nil
}

func dosesOf(s *flavor.Spec) ([]dose, error) {
	if len(s.Pours) == 0 {
		return nil, fmt.Errorf("mix: the spec has no pours; write at least one, such as \"2 oz London dry gin\"")
	}
	doses := make([]dose, len(s.Pours))
	for i := range s.Pours {
		p := &s.Pours[i]
		if p.Profile == nil {
			return nil, fmt.Errorf("mix: pour %d has no ingredient", i+1)
		}
		if !(p.ML > 0 && p.ML < 1e6) {
			return nil, fmt.Errorf("mix: pour %d, %s: %v mL must be more than 0 and less than a thousand litres", i+1, p.Profile.Name, p.ML)
		}
		doses[i] = dose{per: PerML(p.Profile), ml: p.ML, still: !p.Profile.Carbonated}
	}
	return doses, nil
}

// finish adds up the doses and the ice; scale multiplies the dilution.
func finish(doses []dose, rule dilutionRule, scale float64) finishedTotals {
	var t finishedTotals
	var still Ledger
	for i := range doses {
		t.before = t.before.Plus(&doses[i].per, doses[i].ml)
		if doses[i].still {
			still.addMacros(&doses[i].per, doses[i].ml)
		}
	}
	t.met = still.VolumeML()
	t.after = t.before
	if t.met > 0 {
		a := still.Ethanol / EthanolDensity / t.met
		t.share = rule.share(a) * scale
		t.meltG = t.share * t.met * WaterDensity
		t.after.Water += t.meltG
	}
	return t
}

// temperature cools what met the ice, then mixes in what was added after it at
// the temperature of a refrigerator.
func (m *Mixer) temperature(doses []dose, rule dilutionRule, t *finishedTotals) float64 {
	const fridgeC = 4
	var still, top Ledger
	for i := range doses {
		if doses[i].still {
			still.addMacros(&doses[i].per, doses[i].ml)
		} else {
			top.addMacros(&doses[i].per, doses[i].ml)
		}
	}
	cold := still
	cold.Water += t.meltG
	c := chilled(&still, &cold, t.meltG, rule.vessel, m.freezing)
	a, b := heatCapacity(&cold), heatCapacity(&top)
	if a+b <= 0 {
		return ambientC
	}
	return (a*c + b*fridgeC) / (a + b)
}

// Energy factors in kcal/g: Regulation (EU) No 1169/2011, Annex XIV.
const (
	kcalEthanol = 7
	kcalSugar   = 4
	kcalAcid    = 3
	kcalFat     = 9
	kcalProtein = 4
)

// EnergyKcal returns the energy in kcal of a ledger. What thickens and is not
// fat counts as protein, which is right for egg and milk and high for gums.
func EnergyKcal(l *Ledger) float64 {
	return kcalEthanol*l.Ethanol + kcalSugar*l.Sugar + kcalAcid*l.Acid +
		kcalFat*l.Fat + kcalProtein*(l.Texture-l.Fat)
}
