package makeup

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
)

// Kinship is a drink's place in ingredient space: what it is made of, whatever
// the amounts, as a vector of length 1 over classes and aroma families. A drink
// has few classes, so those are kept as a list.
type Kinship struct {
	classes []classWeight
	aroma   flavor.Aroma
}

type classWeight struct {
	class  int // its place among flavor.Classes
	weight float64
}

// partWeights is how much a pour says about which drinks are its relatives.
var partWeights = map[flavor.Part]float64{
	flavor.PartBase: 1, flavor.PartModifier: 1, flavor.PartSweetener: 0.9, flavor.PartSour: 0.6,
	flavor.PartLength: 0.8, flavor.PartTexture: 0.5, flavor.PartSeasoning: 0.25,
}

// PartWeight returns how much a pour of a part says about what a drink is, 0 to 1.
func PartWeight(p flavor.Part) float64 { return partWeights[p] }

// ClassShare is the weight of an ingredient's class against its aroma.
const ClassShare = 0.7

// KinshipOf places a drink of so many mL of each pour. What there is hardly any of
// hardly counts, so that a splash does not make another drink.
func KinshipOf(parts []Part, ml []float64) Kinship {
	k := Kinship{classes: make([]classWeight, 0, len(parts))}
	total := floats.Sum(ml)
	for i := range parts {
		x := &parts[i]
		w := PartWeight(x.Role) * Certainty(x.Amount(ml), total, halfCertain(x.Role))
		if w <= 0 {
			continue
		}
		k.addClass(x.Profile.Class.Place(), w*ClassShare)
		norm := math.Sqrt(square(&x.Profile.Aroma))
		if norm <= 0 {
			continue
		}
		for f, v := range x.Profile.Aroma {
			k.aroma[f] += w * (1 - ClassShare) * v / norm
		}
	}
	k.scale()
	return k
}

// halfCertain is the share of a drink at which an ingredient counts half.
func halfCertain(role flavor.Part) float64 {
	switch role {
	case flavor.PartLength:
		return HalfWater
	case flavor.PartSeasoning:
		return halfSeasoning
	}
	return HalfLiquid
}

func (k *Kinship) addClass(c int, w float64) {
	for i := range k.classes {
		if k.classes[i].class == c {
			k.classes[i].weight += w
			return
		}
	}
	k.classes = append(k.classes, classWeight{c, w})
}

// scale brings the vector to length 1, if it has any.
func (k *Kinship) scale() {
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

// Likeness is 1 for two drinks of the same make-up, whose angle has cosine 1, and falls
// off as the angle grows, the faster the narrower the bandwidth, which is positive.
func Likeness(cosine, bandwidth float64) float64 {
	return Falloff((1 - cosine) / bandwidth)
}

// Likenesses fills out, which is as long as the list of cosines and may be that, with the
// [Likeness] of each.
func Likenesses(cosines []float64, bandwidth float64, out []float64) {
	for i, cosine := range cosines {
		out[i] = (1 - cosine) / bandwidth
	}
	Falloffs(out)
}

// Cosine returns the cosine of the angle between two drinks, from 0 to 1.
func (k *Kinship) Cosine(o *Kinship) float64 {
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
