package forgotten

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

// joints are the ingredients of the proven drinks that a draft may be short of, each with
// what the drink is without it.
type joints struct {
	of       []joint
	without  makeup.Kinships
	profiles []*flavor.Profile // that they are of, each once
}

// joint is one ingredient of one proven drink.
type joint struct {
	drink, profile int32   // their places
	share          float64 // logarithm of how much of it there is to a millilitre of the rest
}

// joinedOf returns the ingredients of a drink that a draft may be short of, with what the drink is
// without each.
func joinedOf(parts []makeup.Part, ml []float64) (out []joined) {
	for k := range parts {
		p := &parts[k]
		if joins(p) && p.Amount(ml) > 0 {
			rest := RestOf(parts, ml, func(o *makeup.Part) bool { return o == p })
			out = append(out, joined{p.Profile, rest.kin, math.Log(p.Amount(ml)) - rest.size})
		}
	}
	return out
}

// joined is one ingredient of a drink, and what the drink is without it.
type joined struct {
	profile *flavor.Profile
	without makeup.Kinship
	share   float64 // as of a joint
}

// add takes in what the next proven drink joins.
func (j *joints) add(drink int, all []joined) {
	for k := range all {
		x := &all[k]
		at := slices.Index(j.profiles, x.profile)
		if at < 0 {
			at = len(j.profiles)
			j.profiles = append(j.profiles, x.profile)
		}
		j.without.Add(x.without)
		j.of = append(j.of, joint{int32(drink), int32(at), x.share})
	}
}

// Companions returns what the proven drinks that are made of the same things as the draft,
// and of one more, pour as that one: what most of them pour first, up to limit. A draft
// without alcohol has no companion with it.
func (d *Draft) Companions(limit int) []Companion {
	votes, profiles := d.votes(), d.book.joints.profiles
	var order []int
	for i := range votes {
		if votes[i].weight > 0 {
			order = append(order, i)
		}
	}
	slices.SortFunc(order, func(x, y int) int {
		return cmp.Or(cmp.Compare(votes[y].weight, votes[x].weight), strings.Compare(profiles[x].ID, profiles[y].ID))
	})
	out := make([]Companion, min(limit, len(order)))
	for i := range out {
		v := &votes[order[i]]
		out[i] = Companion{profiles[order[i]], math.Exp(v.logs/v.weight) * floats.Sum(d.ml), v.nearest}
	}
	return out
}

// votes is how many proven drinks speak for an ingredient, by how near they are, the sum
// of the logarithms of how much of it they pour to a millilitre of the rest, and the nearest.
type votes struct{ weight, logs, nearest float64 }

// votes lets each proven drink speak for each of its ingredients that the draft has not, as
// far as the draft is like the rest of the drink.
func (d *Draft) votes() []votes {
	all := &d.book.joints
	lacks, out := sized(&d.lacking, len(all.profiles)), sized(&d.ballot, len(all.profiles))
	for i, p := range all.profiles {
		lacks[i] = d.allows(p) && !slices.ContainsFunc(d.parts, func(o makeup.Part) bool { return o.Profile.Class == p.Class })
	}
	own := makeup.KinshipOf(d.parts, d.ml)
	for i, cosine := range all.without.Cosines(&own, d.room(all.without.Drinks())) {
		j := &all.of[i]
		if !lacks[j.profile] {
			continue
		}
		near := makeup.Likeness(cosine, d.width)
		w := heard(near)
		if d.book.Served.Of[j.drink] != d.served {
			w *= servedOtherwise
		}
		if w <= NearestToTell {
			continue
		}
		v := &out[j.profile]
		v.weight += w
		v.nearest = math.Max(v.nearest, near)
		v.logs += w * j.share
	}
	return out
}

// allows reports whether an ingredient may be suggested for the draft: none with alcohol for
// one without.
func (d *Draft) allows(p *flavor.Profile) bool {
	return p.ABV.Value <= flavor.NoAlcoholABV || !d.spec.AlcoholFree()
}

// servedOtherwise is what is left of a drink's say if it is served otherwise than the draft:
// what lacks its mixer is a long drink, what lacks its sugar a short one.
const servedOtherwise = 0.1

// heard returns how much a drink so like the draft has its say, the sixth power of that: few
// drinks are the draft and one thing more, and those should be heard before the many that
// resemble it.
func heard(near float64) float64 {
	cube := near * near * near
	return cube * cube
}

// joins reports whether a drink may be short of an ingredient: seasonings, eggs and cream
// make another drink of it.
func joins(p *makeup.Part) bool {
	return p.Role != flavor.PartSeasoning && p.Role != flavor.PartTexture && p.Profile.Class != flavor.ClassCreamLiqueur
}
