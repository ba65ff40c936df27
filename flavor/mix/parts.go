package mix

// Apparent volumes in mL/g of what is neither solvent nor sugar, from memory:
// milk fat 0.93 g/mL; protein and gum 1.4 g/mL; salt in dilute solution.
const (
	fatVolume     = 1 / 0.93
	textureVolume = 1 / 1.4
	saltVolume    = 0.35
)

// parts is the bulk of a ledger, from which volume, strength, heat and energy follow. It
// leaves out tastes and aromas, so that it is cheap to copy.
type parts struct {
	ethanol, water, sugar, acid, sour, salt, fat, texture float64
}

func (l *Ledger) parts() parts {
	return parts{l.Ethanol, l.Water, l.Sugar, l.Acid, l.Sour, l.Salt, l.Fat, l.Texture}
}

// add adds times × o.
func (p *parts) add(o *parts, times float64) {
	p.ethanol += times * o.ethanol
	p.water += times * o.water
	p.sugar += times * o.sugar
	p.acid += times * o.acid
	p.sour += times * o.sour
	p.salt += times * o.salt
	p.fat += times * o.fat
	p.texture += times * o.texture
}

// volumeML returns the volume in mL at 20 °C.
func (p *parts) volumeML() float64 {
	return p.solventML() + p.solutesML()
}

// numParts is the number of fields of parts.
const numParts = 8

func (p *parts) values() [numParts]float64 {
	return [numParts]float64{p.ethanol, p.water, p.sugar, p.acid, p.sour, p.salt, p.fat, p.texture}
}

// unitPart returns one gram of field i.
func unitPart(i int) parts {
	var v [numParts]float64
	v[i] = 1
	return parts{v[0], v[1], v[2], v[3], v[4], v[5], v[6], v[7]}
}

func (p *parts) solventML() float64 {
	solvent := p.ethanol + p.water
	if solvent <= 0 {
		return 0
	}
	return solvent / ethanolWater20(p.ethanol/solvent)
}

func (p *parts) solutesML() float64 {
	return soluteVolume(p.sugar+p.acid, p.water) + p.salt*saltVolume +
		p.fat*fatVolume + (p.texture-p.fat)*textureVolume
}
