package template

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"

	"counterpour/flavor"
)

// Labelled is a proven drink and the family it belongs to.
type Labelled struct {
	Spec   flavor.Spec
	Family string
	Source string
	Status string // StatusRead or StatusRecalled; empty for a drink of the house
}

// How sure it is that a proven drink stands as its source prints it.
const (
	StatusRead     = "read"     // its source was read
	StatusRecalled = "recalled" // its source was not: name and amounts are from memory
)

// Recalled reports whether the source of the drink was not read.
func (l *Labelled) Recalled() bool { return l.Status == StatusRecalled }

// kinship is a drink's place in ingredient space: what it is made of, whatever
// the amounts, as a vector of length 1 over classes and aroma families. A drink
// has few classes, so those are kept as a list.
type kinship struct {
	classes []classWeight
	aroma   flavor.Aroma
}

type classWeight struct {
	class  int // its place among flavor.Classes
	weight float64
}

// partWeight is how much a pour says about which drinks are its relatives.
var partWeight = map[flavor.Part]float64{
	flavor.PartBase: 1, flavor.PartModifier: 1, flavor.PartSweetener: 0.9, flavor.PartSour: 0.6,
	flavor.PartLength: 0.8, flavor.PartTexture: 0.5, flavor.PartSeasoning: 0.25,
}

// classShare is the weight of an ingredient's class against its aroma.
const classShare = 0.7

// kinshipOf places a drink of so many mL of each pour. What there is hardly any of
// hardly counts, so that a splash does not make another drink.
func kinshipOf(parts []part, ml []float64) kinship {
	var k kinship
	total := sum(ml)
	for i := range parts {
		x := &parts[i]
		w := partWeight[x.role] * certainty(x.amount(ml), total, halfCertain(x.role))
		if w <= 0 {
			continue
		}
		k.addClass(x.profile.Class.Place(), w*classShare)
		norm := math.Sqrt(square(&x.profile.Aroma))
		if norm <= 0 {
			continue
		}
		for f, v := range x.profile.Aroma {
			k.aroma[f] += w * (1 - classShare) * v / norm
		}
	}
	k.scale()
	return k
}

// halfCertain is the share of a drink at which an ingredient counts half.
func halfCertain(role flavor.Part) float64 {
	switch role {
	case flavor.PartLength:
		return halfWater
	case flavor.PartSeasoning:
		return halfSeasoning
	}
	return halfLiquid
}

func (k *kinship) addClass(c int, w float64) {
	for i := range k.classes {
		if k.classes[i].class == c {
			k.classes[i].weight += w
			return
		}
	}
	k.classes = append(k.classes, classWeight{c, w})
}

// scale brings the vector to length 1, if it has any.
func (k *kinship) scale() {
	norm := square(&k.aroma)
	for _, c := range k.classes {
		norm += c.weight * c.weight
	}
	if norm <= 0 {
		return
	}
	norm = math.Sqrt(norm)
	for i := range k.classes {
		k.classes[i].weight /= norm
	}
	for f := range k.aroma {
		k.aroma[f] /= norm
	}
}

func square(a *flavor.Aroma) float64 {
	var s float64
	for _, v := range a {
		s += v * v
	}
	return s
}

// likeness is, by the cosine of the angle between them, 1 for drinks of the same make-up and falls off with the angle
// between them.
func likeness(cosine, bandwidth float64) float64 {
	return math.Exp((cosine - 1) / bandwidth)
}

// weightOf is the likeness, and more for drinks of the very same make-up: how one
// of those is poured says more than how all of its kind are.
func weightOf(cosine float64, t *Tuning) float64 {
	away := cosine - 1
	w := math.Exp(away / t.Bandwidth)
	if away > -noTwin*twinWidth {
		w += t.Twin * math.Exp(away/twinWidth)
	}
	return w
}

// noTwin is how many widths apart drinks are twins by less than a billionth.
const noTwin = 25.0

// twinWidth is how far apart drinks of the same make-up are, in 1 − cosine: a
// dash of something, or one gin for another.
const twinWidth = 0.01

// cosine is that of the angle between two drinks.
func (k *kinship) cosine(o *kinship) float64 {
	var cos float64
	for _, c := range k.classes {
		for _, d := range o.classes {
			if c.class == d.class {
				cos += c.weight * d.weight
			}
		}
	}
	for f := range k.aroma {
		cos += k.aroma[f] * o.aroma[f]
	}
	return cos
}

// kin is many drinks' places in ingredient space, laid out so that one drink is held
// against all of them at once: to hold it against each in turn took a quarter of a
// score.
type kin struct {
	classes [][]classWeight // of each drink
	width   int             // one more than the largest class
	aroma   []float64       // a row of flavor.NumFamilies for each drink
}

func (k *kin) add(drink kinship) {
	k.classes = append(k.classes, drink.classes)
	for _, c := range drink.classes {
		k.width = max(k.width, c.class+1)
	}
	k.aroma = append(k.aroma, drink.aroma[:]...)
}

func (k *kin) drinks() int { return len(k.classes) }

// cosines returns the cosine of the angle between a drink and each of the kin.
func (k *kin) cosines(of *kinship) []float64 {
	out := make([]float64, k.drinks())
	if len(out) == 0 {
		return out
	}
	weight := make([]float64, k.width)
	for _, c := range of.classes {
		if c.class < len(weight) {
			weight[c.class] = c.weight
		}
	}
	for i, classes := range k.classes {
		for _, c := range classes {
			out[i] += weight[c.class] * c.weight
		}
	}
	aromas := blas64.General{Rows: len(out), Cols: flavor.NumFamilies, Stride: flavor.NumFamilies, Data: k.aroma}
	blas64.Gemv(blas.NoTrans, 1, aromas, vector(of.aroma[:]), 1, vector(out))
	return out
}

func vector(x []float64) blas64.Vector { return blas64.Vector{N: len(x), Inc: 1, Data: x} }

// relative is a proven drink as one family sees it.
type relative struct {
	at     int // among the proven drinks of all families
	kin    kinship
	coords coords
	size   float64 // logarithm of its mL before ice
}

// coords are log-ratio coordinates in a family, as many as it has and then zeros.
type coords [NumAxes - 1]float64

func coordsOf(z []float64) (c coords) {
	copy(c[:], z)
	return c
}

// middle is the middle of some good drinks.
type middle struct {
	coords coords
	size   float64 // logarithm of mL before ice
	near   float64 // how many proven drinks it rests on, by likeness
}

// to returns the cosine to each relative.
func (k *kinship) to(r *relative) float64 { return k.cosine(&r.kin) }

// localMiddle pulls a family's middle toward the proven drinks made of the
// same things: partial pooling, with Tuning.Pull the weight in drinks of the
// family's own.
func localMiddle(own middle, relatives []relative, cosine func(*relative) float64, skip int, t *Tuning) middle {
	weight := t.Pull
	m := middle{size: t.Pull * own.size}
	for j := range m.coords {
		m.coords[j] = t.Pull * own.coords[j]
	}
	for i := range relatives {
		if i == skip {
			continue
		}
		w := weightOf(cosine(&relatives[i]), t)
		weight += w
		m.size += w * relatives[i].size
		for j := range m.coords {
			m.coords[j] += w * relatives[i].coords[j]
		}
	}
	m.near = weight - t.Pull
	m.size /= weight
	for j := range m.coords {
		m.coords[j] /= weight
	}
	return m
}
