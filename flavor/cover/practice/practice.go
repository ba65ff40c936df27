// Package practice is what the trade is known to pour in place of what went, and what a house
// found of it by tasting. Parts are told by their places among the candidates.
package practice

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/cover/gap"
	"counterpour/flavor/cover/search"
)

// Practice is what is known of the candidates for one gap. Its zero value knows nothing, and
// learns nothing.
type Practice struct {
	alone    [][]int                        // by what went and by candidate: the place of what the trade pours alone for that, −1 for none
	first    []int                          // by what went: the least of these places, −1 for none
	sameKind []bool                         // by candidate: of the class of the only thing that went
	places   map[search.Combination]int     // of what the trade pours for the only thing that went, 0 for its first choice of what is at hand
	choices  [][]int                        // the same, the first choice first
	standing map[search.Combination]float64 // what a known combination must earn
	cameBack map[search.Combination]bool    // sent back in this house more often than kept
	oneByOne map[search.Combination]bool    // what covers each thing alone that went, taken together
}

// New returns what is known before any candidate is added, for so many things that went.
func New(gone int) Practice {
	return Practice{
		alone: make([][]int, gone), first: slices.Repeat([]int{noChoice}, gone),
		places: map[search.Combination]int{}, standing: map[search.Combination]float64{},
		cameBack: map[search.Combination]bool{}, oneByOne: map[search.Combination]bool{},
	}
}

// noChoice is the place of what the trade does not pour.
const noChoice = -1

// Add takes in the next candidate.
func (k *Practice) Add(p *flavor.Profile, g *gap.Gap, c gap.Customs) {
	for m := range g.Gone {
		place := c.Place(m, p.ID)
		k.alone[m] = append(k.alone[m], place)
		if place != noChoice && (k.first[m] == noChoice || place < k.first[m]) {
			k.first[m] = place
		}
	}
	k.sameKind = append(k.sameKind, len(g.Gone) == 1 && p.Class == g.Gone[0].Profile.Class)
}

// AddChoice adds what the trade pours for the only thing that went, at its place among the
// choices that are at hand, 0 for the first. Of two alike the first stays. Several parts must
// earn so many steps together.
func (k *Practice) AddChoice(parts []int, place int, standing float64) {
	key := search.Combine(parts...)
	if _, twice := k.places[key]; twice {
		return
	}
	k.places[key], k.choices = place, append(k.choices, parts)
	if len(parts) > 1 {
		k.standing[key] = standing
	}
}

// AddBehind adds what is poured for the only thing that went behind what the trade chooses.
func (k *Practice) AddBehind(parts []int, standing float64) {
	k.choices, k.standing[search.Combine(parts...)] = append(k.choices, parts), standing
}

// AddOneByOne adds what covers each of several things alone that went, taken together, and what
// it must earn unless that is known.
func (k *Practice) AddOneByOne(parts []int, standing float64) {
	key := search.Combine(parts...)
	if _, known := k.standing[key]; !known {
		k.standing[key] = standing
	}
	k.oneByOne[key] = true
}

// Choices lists what the trade pours for the only thing that went, the first choice first.
func (k *Practice) Choices() [][]int { return k.choices }

// Known is what each known combination must earn, in steps. It must not be changed.
func (k *Practice) Known() map[search.Combination]float64 { return k.standing }

// Standing returns what some parts must earn, in steps, if they are known.
func (k *Practice) Standing(parts []int) (steps float64, known bool) {
	steps, known = k.standing[search.Combine(parts...)]
	return steps, known
}

// Alone reports whether the trade pours a part alone for the mth thing that went.
func (k *Practice) Alone(m, part int) bool { return k.alone[m][part] != noChoice }

// SameKind reports whether a part is of the class of the only thing that went.
func (k *Practice) SameKind(part int) bool { return k.sameKind[part] }

// poursAlone reports whether parts are one that the trade pours alone for the only thing that
// went.
func (k *Practice) poursAlone(parts []int) bool {
	return len(parts) == 1 && len(k.alone) == 1 && k.Alone(0, parts[0])
}

// Knows reports whether the trade or the house pours some parts together.
func (k *Practice) Knows(parts []int) bool {
	key := search.Combine(parts...)
	_, known := k.standing[key]
	return known && !k.oneByOne[key]
}

// Pours reports whether the trade or the house pours some parts for what went.
// What came back in this house is no custom of it.
func (k *Practice) Pours(parts []int) bool {
	return !k.SentBack(parts) && (k.poursAlone(parts) || k.Knows(parts))
}

// SentBack reports whether some parts came back in this house more often than not.
func (k *Practice) SentBack(parts []int) bool { return k.cameBack[search.Combine(parts...)] }

// EachAlone reports whether some parts are what covers each thing alone that went.
func (k *Practice) EachAlone(parts []int) bool { return k.oneByOne[search.Combine(parts...)] }

// FirstChoice reports whether some parts are the first that the trade pours for what went.
func (k *Practice) FirstChoice(parts []int) bool {
	place, custom := k.places[search.Combine(parts...)]
	return custom && place == 0 && k.Pours(parts)
}

// Obvious reports whether some parts are what a bar pours as a matter of course: one
// bottle of the class of what went, or what the trade or the house pours for it.
func (k *Practice) Obvious(parts []int) bool {
	return len(parts) == 1 && (k.sameKind[parts[0]] || k.poursAlone(parts)) || k.Pours(parts)
}

// habitPlaces is how many of the first choices of the trade rank nearer for it.
const habitPlaces = 4.0

// Habit is how far some parts are what every hand reaches for: 1 for a first choice of the
// trade, less for a later one, and of several things that went the mean of that. What came back
// in this house is none, and is 0.
func (k *Practice) Habit(parts []int) float64 {
	if len(k.alone) > 1 && !k.SentBack(parts) {
		return k.habitOfEach(parts)
	}
	place, custom := k.places[search.Combine(parts...)]
	if !custom || k.SentBack(parts) {
		return 0
	}
	return max(0, 1-float64(place)/habitPlaces)
}

// habitOfEach is how far some parts are, one by one, what every hand reaches for in place of each
// thing that went.
func (k *Practice) habitOfEach(parts []int) (sum float64) {
	for m := range k.alone {
		best := 0.0
		for _, i := range parts {
			if k.Alone(m, i) {
				best = max(best, 1-float64(k.alone[m][i]-k.first[m])/habitPlaces)
			}
		}
		sum += best
	}
	return sum / float64(len(k.alone))
}

// Tasted is how some parts were received once, from 0 for sent back to 1 for kept.
type Tasted struct {
	Parts []int
	Liked float64
}

// How tastings weigh: a cover that was always sent back ranks tasteJND further
// away in the end, one always kept that much nearer; before that, the result is
// shrunk toward indifference as if tasteDoubt tastings had been undecided.
// What a house has found out for itself weighs as much as how strange a pour is by
// the trade's book.
const (
	tasteJND   = 6.0
	tasteDoubt = 2.0
)

// Heed adds what tastings are worth to the standing of what was tasted. Plain is what parts must
// earn that nobody knows, infinite for what can stand for nothing; custom is what a bottle is let
// off that the trade pours alone, all in steps.
func (k *Practice) Heed(tasted []Tasted, plain func(parts []int) float64, custom float64) {
	type tally struct{ n, liked float64 }
	tallies := map[search.Combination]tally{}
	for _, x := range tasted {
		key := search.Combine(x.Parts...)
		s := tallies[key]
		s.n++
		s.liked += min(max(x.Liked, 0), 1)
		tallies[key] = s
	}
	for key, s := range tallies {
		standing, known := k.standing[key]
		if !known {
			standing = plain(key.Parts())
		}
		if math.IsInf(standing, 1) {
			continue // no liking makes sugar stand for an aroma
		}
		mean := (s.liked + tasteDoubt/2) / (s.n + tasteDoubt)
		if mean < 0.5 {
			k.cameBack[key] = true
			if k.poursAlone(key.Parts()) {
				standing += custom // it is let off nothing any more
			}
		}
		k.standing[key] = standing + tasteJND*(1-2*mean)
	}
}
