package mix

import "counterpour/flavor"

// Drink is what is in the glass.
type Drink struct {
	Before       Ledger  // all pours, before ice
	After        Ledger  // with the water of the ice
	BeforeML     float64 // volume before ice, at 20 °C
	VolumeML     float64 // finished, at 20 °C
	ColdML       float64 // finished, at TemperatureC, without foam
	ABV          float64 // % vol
	SugarPer100  float64 // g per 100 mL
	SweetPer100  float64 // g of sucrose per 100 mL that taste as sweet
	AcidPer100   float64 // g of citric acid per 100 mL with as much acid hydrogen
	Bitter       float64 // mg of quinine per litre that taste as bitter
	IceWaterG    float64 // water that the ice added, in mixing and in the glass, g
	DilutionPct  float64 // the same by volume, per cent of the volume that met the ice
	TemperatureC float64 // as it is served, never below FreezingC
	FreezingC    float64 // where ice begins to form in it
	AtFreezing   bool    // there is more cold than melting needs: some of IceWaterG is still ice
	EnergyKcal   float64
	EnergyKJ     float64
	Aroma        flavor.Aroma // intensities in the finished drink
	PlusMinus    PlusMinus
}

// Mixer mixes drinks. It is safe for concurrent use.
type Mixer struct {
	freezing *freezing
	ice      Ice
}

// NewMixer returns a mixer with the usual ice, or an error if its tables do
// not fit together.
func NewMixer() (*Mixer, error) {
	f, err := newFreezing()
	if err != nil {
		return nil, err
	}
	return &Mixer{freezing: f}, nil
}

// Mix works out the drink that a spec gives. It fails with a fault of kind
// [flavor.ErrInvalid] if the spec is empty, a pour has no profile, or an amount
// is not a number above zero and below a thousand litres.
func (m *Mixer) Mix(s *flavor.Spec) (*Drink, error) {
	if err := check(s); err != nil {
		return nil, err
	}
	d := &Drink{}
	var room [8]dose // on the stack; more pours than this take a trip to the heap
	doses := pourAll(room[:0], &d.Before, s)
	p := potOf(doses)
	set := settingFor(s.Method, s.Service, m.ice)
	set.pour(s)
	set.scale = m.iceFactor(&p.still, &set, s)
	f := p.finish(&set, 1, m.freezing)
	d.IceWaterG, d.DilutionPct, d.VolumeML = f.waterG, 100*f.share, f.volumeML
	d.BeforeML = d.Before.VolumeML()
	d.After = d.Before
	d.After.Water += f.waterG
	d.concentrations()
	d.AtFreezing = f.frozen
	d.FreezingC = m.freezing.point(&f.after)
	d.TemperatureC = max(f.celsius, d.FreezingC)
	d.ColdML = f.after.volumeAt(d.TemperatureC)
	d.PlusMinus = plusMinus(doses, &p, &set)
	return d, nil
}

// check reports why a spec cannot be mixed.
func check(s *flavor.Spec) error {
	if len(s.Pours) == 0 {
		return flavor.Invalid("pours", 0, "the spec has no pours; write at least one, such as \"2 oz London dry gin\"")
	}
	for i := range s.Pours {
		p := &s.Pours[i]
		if p.Profile == nil {
			return flavor.Invalid(pourAt(i), "", "has no ingredient; name one")
		}
		if !(p.ML > 0 && p.ML < maxML) {
			return flavor.Invalid(pourAt(i), p.ML, "%s: %v mL must be more than 0 and less than a thousand litres", p.Profile.Name, p.ML)
		}
	}
	return nil
}

// concentrations fills in what follows from the ledger and the volume.
func (d *Drink) concentrations() {
	per100 := 100 / d.VolumeML
	d.ABV = per100 * d.After.Ethanol / EthanolDensity
	d.SugarPer100 = per100 * d.After.Sugar
	d.SweetPer100 = per100 * d.After.Sweet
	d.AcidPer100 = per100 * d.After.Sour
	d.Bitter = 10 * per100 * d.After.Bitter
	d.EnergyKcal = EnergyKcal(&d.After)
	d.EnergyKJ = energyKJ(&d.After)
	for i := range d.Aroma {
		d.Aroma[i] = d.After.Aroma[i] / d.VolumeML
	}
}

// volumeAt returns the volume in mL at celsius: ethanol and water by OIML R 22,
// at the nearer end beyond its range; what is dissolved in them keeps its volume.
func (p *parts) volumeAt(celsius float64) float64 {
	grams, ethanol := p.solvent()
	if grams <= 0 {
		return p.solutesML()
	}
	celsius = min(max(celsius, OIMLMinC), OIMLMaxC)
	return grams/ethanolWater(ethanol, celsius) + p.solutesML()
}
