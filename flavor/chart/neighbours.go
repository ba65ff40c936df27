package chart

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"counterpour/flavor"
)

// leastTold is the smallest difference between two bottles that is named, in standard
// deviations of one taste. It is judged: half of one is visible on a map.
const leastTold = 0.5

// mostTold is how many differences of a neighbour are named.
const mostTold = 3

// Neighbour is an ingredient near another one.
type Neighbour struct {
	Profile  *flavor.Profile
	Distance float64  // in standard deviations of one taste, 0 or more
	Differs  []string // the differences, largest first; empty if all are small
}

// Neighbours lists up to n ingredients nearest to one in a list, by Euclidean distance
// between rows of the matrix of [Of], sorted by distance and then by id. It is nil if one
// is not in the list or is alone in it.
func Neighbours(list []*flavor.Profile, one *flavor.Profile, n int) []Neighbour {
	at := slices.Index(list, one)
	if at < 0 || len(list) < 2 || n < 1 {
		return nil
	}
	x := profileMatrix(list)
	own := x.RawRowView(at)
	var out []Neighbour
	for i, p := range list {
		if i != at {
			row := x.RawRowView(i)
			out = append(out, Neighbour{p, floats.Distance(own, row, 2), differences(own, row)})
		}
	}
	slices.SortFunc(out, func(a, b Neighbour) int {
		return cmp.Or(cmp.Compare(a.Distance, b.Distance), cmp.Compare(a.Profile.ID, b.Profile.ID))
	})
	return out[:min(n, len(out))]
}

// differences says how a row of the profile matrix differs from another.
func differences(from, to []float64) []string {
	order := make([]int, len(from))
	for k := range order {
		order[k] = k
	}
	by := func(k int) float64 { return to[k] - from[k] }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(math.Abs(by(b)), math.Abs(by(a))) })
	var out []string
	for _, k := range order[:min(mostTold, len(order))] {
		if math.Abs(by(k)) >= leastTold {
			out = append(out, comparative(k, by(k) > 0))
		}
	}
	return out
}

// comparative says more or less of what a column of the matrix holds.
func comparative(column int, more bool) string {
	if column < len(tastes) {
		if more {
			return tastes[column].more
		}
		return tastes[column].less
	}
	if more {
		return "more " + familyOf(column).Word()
	}
	return "less " + familyOf(column).Word()
}
