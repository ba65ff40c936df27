// Package chart arranges ingredients on a map by their contents and aroma, and finds the
// nearest to one.
package chart

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"counterpour/flavor"
)

// leastPlaces is the least number of ingredients with two principal components.
const leastPlaces = 4

// tastes are the first columns of the profile matrix; the aroma families follow.
var tastes = []struct {
	word, more, less string
	of               func(p *flavor.Profile) float64
}{
	{"strong", "stronger", "weaker", func(p *flavor.Profile) float64 { return p.ABV.Value }},
	{"sweet", "sweeter", "drier", func(p *flavor.Profile) float64 { return math.Log1p(p.Sugar.Value / softSugar) }},
	{"sour", "sharper", "rounder", func(p *flavor.Profile) float64 { return math.Log1p(p.Acid.Value / softAcid) }},
	{"bitter", "more bitter", "less bitter", func(p *flavor.Profile) float64 { return math.Log1p(p.Bitter.Value / softBitter) }},
}

// Thresholds of the columns: far below them a column is linear, far above logarithmic.
// They are judged, at about the least that is tasted neat.
const (
	softSugar  = 20.0 // g/L
	softAcid   = 2.0  // g/L
	softBitter = 20.0 // mg/L of quinine
	softAroma  = 2.0  // on the scale of [flavor.AromaFamilies]
)

// Axis is one direction of the map.
type Axis struct {
	Share     float64  // of the variance of the matrix, 0 to 1
	More, Few []string // what grows to the right or up, and to the left or down
}

// Chart is ingredients arranged in two dimensions.
type Chart struct {
	X, Y []float64 // in the order of the ingredients; right and up are positive
	Axes [2]Axis
}

// Of lays out ingredients by the first two principal components of their
// profile matrix, one row an ingredient. Its columns are strength, and the
// logarithms of one plus sugar, acid, bitterness and the aroma intensities over
// a soft threshold each, since those run over three orders of magnitude and
// taste follows factors. Every taste is scaled to a variance of
// one. The aromas share one factor that gives them together the variance of all
// tastes together, so that an aroma few bottles have weighs little. The signs
// are fixed: right is stronger, and up is where the second axis weighs most. It
// is false for fewer than four ingredients, or if they do not differ.
func Of(list []*flavor.Profile) (Chart, bool) {
	if len(list) < leastPlaces {
		return Chart{}, false
	}
	x := profileMatrix(list)
	var pc stat.PC
	if !pc.PrincipalComponents(x, nil) {
		return Chart{}, false
	}
	vars := pc.VarsTo(nil)
	var total float64
	for _, v := range vars {
		total += v
	}
	var vectors mat.Dense
	pc.VectorsTo(&vectors)
	if len(vars) < 2 || !(vars[1] > 1e-9*total) {
		return Chart{}, false
	}
	var out Chart
	for k, to := range []*[]float64{&out.X, &out.Y} {
		loads := mat.Col(nil, k, &vectors)
		orient(loads, k == 0)
		var at mat.VecDense
		at.MulVec(x, mat.NewVecDense(len(loads), loads))
		*to = slices.Clone(at.RawVector().Data)
		out.Axes[k] = axisOf(loads, vars[k]/total)
	}
	return out, true
}

// profileMatrix is centred and scaled as [Of] says.
func profileMatrix(list []*flavor.Profile) *mat.Dense {
	n, t := len(list), len(tastes)
	x := mat.NewDense(n, t+flavor.NumAromaFamilies, nil)
	for i, p := range list {
		for k := range tastes {
			x.Set(i, k, tastes[k].of(p))
		}
		for f, v := range p.Aroma {
			x.Set(i, t+f, math.Log1p(v/softAroma))
		}
	}
	_, cols := x.Dims()
	var aromas float64
	variances := make([]float64, cols)
	for k := range cols {
		col := mat.Col(nil, k, x)
		mean, variance := stat.MeanVariance(col, nil)
		for i := range col {
			x.Set(i, k, col[i]-mean)
		}
		if variances[k] = variance; k >= t {
			aromas += variance
		}
	}
	for k := range cols {
		by := math.Sqrt(variances[k])
		if k >= t {
			by = math.Sqrt(aromas / float64(t))
		}
		for i := range n {
			if by > 0 {
				x.Set(i, k, x.At(i, k)/by)
			}
		}
	}
	return x
}

// leastTilt is the least loading of strength on an axis with which it sets the sign.
const leastTilt = 0.1

// orient fixes the sign of an axis.
func orient(loads []float64, byStrength bool) {
	lead := 0
	if !byStrength || math.Abs(loads[0]) < leastTilt {
		for i := range loads {
			if math.Abs(loads[i]) > math.Abs(loads[lead])+1e-9 {
				lead = i
			}
		}
	}
	if loads[lead] < 0 {
		for i := range loads {
			loads[i] = -loads[i]
		}
	}
}

// axisOf describes an axis by up to three columns with the largest loadings on either
// side.
func axisOf(loads []float64, share float64) Axis {
	order := make([]int, len(loads))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(math.Abs(loads[b]), math.Abs(loads[a])) })
	a := Axis{Share: share}
	for _, i := range order {
		switch w := loads[i]; {
		case math.Abs(w) < math.Abs(loads[order[0]])/4:
		case w > 0 && len(a.More) < 3:
			a.More = append(a.More, columnWord(i))
		case w < 0 && len(a.Few) < 3:
			a.Few = append(a.Few, columnWord(i))
		}
	}
	return a
}

func columnWord(i int) string {
	if i < len(tastes) {
		return tastes[i].word
	}
	return familyOf(i).String()
}

// familyOf is the family of aromas that a column behind those of tastes holds.
func familyOf(column int) flavor.AromaFamily { return flavor.AromaFamily(column - len(tastes)) }
