package mix

import (
	"math"

	"counterpour/flavor"
)

// Acids is the citric and malic acid in a litre of juice, in grams.
type Acids struct {
	CitricGPerL, MalicGPerL float64
}

// LimeStrength and LemonStrength are the drinks convention of 6 % acid, for
// juices made as sour as lime and lemon (Arnold, Liquid Intelligence, 2014;
// from memory). Fresh limes measure less: 45.86 g/L of citric acid (Penniston
// et al., J Endourol 22:567, 2008) and little malic.
var (
	LimeStrength  = Acids{CitricGPerL: 40, MalicGPerL: 20}
	LemonStrength = Acids{CitricGPerL: 60}
)

// maxAcidGPerL is the most acid that is asked for: citric acid dissolves to
// more, but nothing sourer is poured.
const maxAcidGPerL = 300

// AcidAddition is what to add to a juice to reach a target.
type AcidAddition struct {
	CitricG, MalicG  float64 // powders to add, anhydrous
	VolumeML         float64 // of the adjusted juice, including the powder's volume
	After            Acids
	TitratableGPerL  float64 // all acids of the adjusted juice, as citric acid
	TitratableBefore float64
}

// juiceToAdjust is a measured volume of a juice and the acids in it, in grams.
type juiceToAdjust struct {
	name          string
	bulk          parts
	citric, malic float64
}

func newJuice(p *flavor.Profile, volumeML float64) (*juiceToAdjust, error) {
	if p == nil {
		return nil, flavor.Invalid("juice", "", "is missing; name a juice")
	}
	if err := amount("juice", volumeML, maxML, "mL"); err != nil {
		return nil, err
	}
	l := bulkPerML(p)
	per := l.parts()
	j := &juiceToAdjust{name: p.Name}
	j.bulk.add(&per, volumeML)
	j.citric, j.malic = j.bulk.acid*p.Acids.Citric, j.bulk.acid*p.Acids.Malic
	return j, nil
}

// with returns the juice with powders dissolved in it.
func (j *juiceToAdjust) with(citric, malic float64) AcidAddition {
	mixed := j.bulk
	mixed.acid += citric + malic
	mixed.sour += citric + malic*asCitric.Malic
	v := mixed.volumeML()
	return AcidAddition{
		CitricG: citric, MalicG: malic, VolumeML: v,
		After:            Acids{CitricGPerL: 1000 * (j.citric + citric) / v, MalicGPerL: 1000 * (j.malic + malic) / v},
		TitratableGPerL:  1000 * mixed.sour / v,
		TitratableBefore: 1000 * j.bulk.sour / j.bulk.volumeML(),
	}
}

// settle returns the powders that the juice lacks. Their own volume dilutes the acid, so
// it iterates: each iteration leaves less than half of the error, and 40 leave nothing.
func (j *juiceToAdjust) settle(target Acids) AcidAddition {
	a := j.with(0, 0)
	for range 40 {
		litres := a.VolumeML / 1000
		citric, malic := lacking(target.CitricGPerL*litres, j.citric), lacking(target.MalicGPerL*litres, j.malic)
		switch { // too much of one acid stands for as much of the other as is as sour
		case malic < 0:
			citric, malic = citric+malic*asCitric.Malic, 0
		case citric < 0:
			citric, malic = 0, malic+citric/asCitric.Malic
		}
		a = j.with(citric, malic)
	}
	return a
}

// lacking returns the grams that have lacks of wanted, negative if it has too many. It
// returns 0 if the two differ only by rounding.
func lacking(wanted, have float64) float64 {
	const rounding = 1e-6 // relative
	if g := wanted - have; math.Abs(g) > rounding*have {
		return g
	}
	return 0
}

// AdjustAcid returns the citric and malic acid that bring volumeML of a juice
// to a target, both in grams per litre of the adjusted juice. The rule of thumb
// of the trade weighs the powder per litre of the juice it goes into, which
// comes out some 3 % weaker. Of an acid that the juice has too much of none is
// added, and so much less of the other that the juice is as sour as was asked for.
// It fails for a missing juice, for amounts out of range, and for a juice that is
// sourer than that already. The profile must be completed; other acids stay as they are.
func AdjustAcid(juice *flavor.Profile, volumeML float64, target Acids) (AcidAddition, error) {
	j, err := newJuice(juice, volumeML)
	if err != nil {
		return AcidAddition{}, err
	}
	if err := within("target citric", target.CitricGPerL, 0, maxAcidGPerL, " g/L"); err != nil {
		return AcidAddition{}, err
	}
	if err := within("target malic", target.MalicGPerL, 0, maxAcidGPerL, " g/L"); err != nil {
		return AcidAddition{}, err
	}
	a := j.settle(target)
	if a.CitricG < 0 || a.MalicG < 0 {
		wanted := target.CitricGPerL + target.MalicGPerL*asCitric.Malic
		return AcidAddition{}, flavor.Invalid("target", wanted, "%s already holds %.1f g/L of acid, as citric, more than the %.1f asked for; raise the target, or thin the juice with water first",
			j.name, a.TitratableBefore, wanted)
	}
	return a, nil
}
