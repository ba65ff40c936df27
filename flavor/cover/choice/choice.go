// Package choice picks for each drink of a menu one of the ways to serve it, so that
// together they need few things at hand.
package choice

import (
	"math"
	"slices"
)

// Way is one way to serve a drink.
type Way struct {
	Needs []string // ids of what must be at hand for it
	Cost  float64  // in just-noticeable differences
}

// OpenCost is what one more thing to keep at hand is worth, in just-noticeable
// differences summed over the drinks.
const OpenCost = 0.5

// Answer is a way for each drink.
type Answer struct {
	Of []int // place among the ways of each drink, −1 if it has none
	// Spared is how many fewer things are needed than each drink's own first way would,
	// and Given how much more the ways cost, over all drinks.
	Spared int
	Given  float64
}

// Together picks the ways that together want the fewest things at the least cost: from
// each drink's first, one drink at a time takes the way that is cheapest given the others,
// and then whole things are tried on every drink that has a way with them, until nothing
// gets cheaper.
func Together(ways [][]Way) Answer {
	c := newChoice(ways)
	own := slices.Clone(c.of)
	for cheaper := true; cheaper; {
		before := c.price()
		c.settle()
		for id := range c.names {
			keep, was := slices.Clone(c.of), c.price()
			c.lean(id)
			c.settle()
			if c.price() > was-slack {
				c.set(keep)
			}
		}
		cheaper = c.price() < before-slack
	}
	out := Answer{Of: slices.Clone(c.of)}
	price, open := c.price(), c.open()
	c.set(own)
	out.Spared = c.open() - open
	out.Given = price - OpenCost*float64(open) - (c.price() - OpenCost*float64(c.open()))
	return out
}

// slack is the cost below which two choices cost the same.
const slack = 1e-9

// choice is a way for each drink, with what it costs kept up to date.
type choice struct {
	ways  [][]Way
	of    []int     // way of each drink, or −1
	needs [][][]int // of each way of each drink, as places in names
	names []string  // ids of all that is needed, in order
	count []int     // drinks that each serves
}

// newChoice starts from each drink's first way.
func newChoice(ways [][]Way) *choice {
	c := &choice{ways: ways, of: make([]int, len(ways)), needs: make([][][]int, len(ways))}
	for i := range ways {
		for _, w := range ways[i] {
			c.names = append(c.names, w.Needs...)
		}
	}
	slices.Sort(c.names)
	c.names = slices.Compact(c.names)
	first := make([]int, len(ways))
	for i := range ways {
		first[i] = min(0, len(ways[i])-1)
		c.needs[i] = make([][]int, len(ways[i]))
		for k, w := range ways[i] {
			for _, id := range w.Needs {
				at, _ := slices.BinarySearch(c.names, id)
				c.needs[i][k] = append(c.needs[i][k], at)
			}
		}
	}
	c.set(first)
	return c
}

func (c *choice) set(of []int) {
	copy(c.of, of)
	c.count = make([]int, len(c.names))
	for i, k := range c.of {
		c.serve(i, k, 1)
	}
}

// serve counts the things of way k of drink i in, or with −1 out.
func (c *choice) serve(i, k, by int) {
	if k < 0 {
		return
	}
	for _, id := range c.needs[i][k] {
		c.count[id] += by
	}
}

// open counts the things in use.
func (c *choice) open() int {
	n := 0
	for _, k := range c.count {
		if k > 0 {
			n++
		}
	}
	return n
}

func (c *choice) price() float64 {
	sum := OpenCost * float64(c.open())
	for i, k := range c.of {
		if k >= 0 {
			sum += c.ways[i][k].Cost
		}
	}
	return sum
}

// settle lets each drink in turn take its cheapest way, given the others'.
func (c *choice) settle() {
	for changed := true; changed; {
		changed = false
		for i := range c.of {
			now := c.of[i]
			c.serve(i, now, -1)
			best, least := now, math.Inf(1)
			if now >= 0 {
				least = c.cost(i, now)
			}
			for k := range c.needs[i] {
				if p := c.cost(i, k); p < least-slack {
					best, least = k, p
				}
			}
			c.serve(i, best, 1)
			changed = changed || best != now
			c.of[i] = best
		}
	}
}

// cost is what way k of drink i adds to the price of the others.
func (c *choice) cost(i, k int) float64 {
	cost := c.ways[i][k].Cost
	for _, id := range c.needs[i][k] {
		if c.count[id] == 0 {
			cost += OpenCost
		}
	}
	return cost
}

// lean gives every drink its first way that uses a thing, if any.
func (c *choice) lean(id int) {
	for i := range c.of {
		if k := slices.IndexFunc(c.needs[i], func(needs []int) bool { return slices.Contains(needs, id) }); k >= 0 {
			c.serve(i, c.of[i], -1)
			c.serve(i, k, 1)
			c.of[i] = k
		}
	}
}
