package weigh

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// Companion is an ingredient that proven drinks pour beside all that a draft has.
type Companion struct {
	Profile *flavor.Profile
	ML      float64 // as they pour it, for a drink of the draft's size
	Like    float64 // how like the draft the rest of the nearest of them is, 0 to 1
}

// recipe is what a proven drink pours.
type recipe struct {
	parts []makeup.Part
	ml    []float64
}

// Companions returns what the proven drinks that are made of the same things as the draft,
// and of one more, pour as that one: what most of them pour first, up to limit. A draft
// without alcohol has no companion with it.
func (b *Build) Companions(limit int) []Companion {
	own, votes := makeup.KinshipOf(b.parts, b.ml), map[*flavor.Profile]*votes{}
	for i := range b.set.recipes {
		b.vote(i, &own, votes)
	}
	out := make([]Companion, 0, len(votes))
	for p, v := range votes {
		out = append(out, Companion{p, math.Exp(v.logs/v.weight) * floats.Sum(b.ml), v.nearest})
	}
	slices.SortFunc(out, func(x, y Companion) int {
		return cmp.Or(cmp.Compare(votes[y.Profile].weight, votes[x.Profile].weight), strings.Compare(x.Profile.ID, y.Profile.ID))
	})
	return out[:min(limit, len(out))]
}

// votes is how many proven drinks speak for an ingredient, by how near they are, the sum
// of the logarithms of how much of it they pour to a millilitre of the rest, and the nearest.
type votes struct{ weight, logs, nearest float64 }

// vote lets proven drink i speak for each of its ingredients that the draft has not, as
// far as the draft is like the rest of the drink.
func (b *Build) vote(i int, own *makeup.Kinship, all map[*flavor.Profile]*votes) {
	r := &b.set.recipes[i]
	for k := range r.parts {
		p := &r.parts[k]
		if !joins(p) || !b.allows(p.Profile) || slices.ContainsFunc(b.parts, func(o makeup.Part) bool { return o.Profile.Class == p.Profile.Class }) {
			continue
		}
		kin, size := restOf(r.parts, r.ml, func(o *makeup.Part) bool { return o == p })
		w := makeup.Likeness(own.Cosine(&kin), b.set.tuning.HabitWidth)
		near := w
		w = math.Pow(w, nearestSay)
		if b.set.served[i] != b.spec.Service {
			w *= servedOtherwise
		}
		if w <= nearestToTell || p.Amount(r.ml) <= 0 {
			continue
		}
		v := all[p.Profile]
		if v == nil {
			v = &votes{}
			all[p.Profile] = v
		}
		v.weight += w
		v.nearest = math.Max(v.nearest, near)
		v.logs += w * (math.Log(p.Amount(r.ml)) - size)
	}
}

// allows reports whether an ingredient may be suggested for the draft: none with alcohol for
// one without.
func (b *Build) allows(p *flavor.Profile) bool {
	return p.ABV.Value <= flavor.NoAlcoholABV || !b.spec.AlcoholFree()
}

// servedOtherwise is what is left of a drink's say if it is served otherwise than the draft:
// what lacks its mixer is a long drink, what lacks its sugar a short one.
const servedOtherwise = 0.1

// nearestSay is the power of the likeness by which a drink has its say: few drinks are the
// draft and one thing more, and those should be heard before the many that resemble it.
const nearestSay = 6.0

// joins reports whether a drink may be short of an ingredient: seasonings, eggs and cream
// make another drink of it.
func joins(p *makeup.Part) bool {
	return p.Role != flavor.PartSeasoning && p.Role != flavor.PartTexture && p.Profile.Class != flavor.ClassCreamLiqueur
}
