package cover

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// choose picks the covers that together want the fewest substitutes at the
// least distance: from each drink's best, one drink at a time takes the cover
// that is cheapest given the others, and then whole substitutes are tried on
// every drink that has a cover with them, until nothing gets cheaper.
func (r *MenuResult) choose() {
	c := newChoice(r.Touched)
	own := slices.Clone(c.of)
	for cheaper := true; cheaper; {
		before := c.price()
		c.settle()
		for id := range c.names {
			keep, was := slices.Clone(c.of), c.price()
			c.lean(id)
			c.settle()
			if c.price() > was-1e-9 {
				c.set(keep)
			}
		}
		cheaper = c.price() < before-1e-9
	}
	for i := range r.Touched {
		r.Touched[i].Chosen = c.of[i]
	}
	r.Opened = r.opened(c.of)
	price, open := c.price(), c.open()
	c.set(own)
	r.Spared = c.open() - open
	r.Given = price - openCost*float64(open) - (c.price() - openCost*float64(c.open()))
}

// choice is a cover for each drink, with what it costs kept up to date.
type choice struct {
	touched []Touched
	of      []int     // cover of each drink, or −1
	parts   [][][]int // of each cover of each drink, as places in names
	names   []string  // ids of all substitutes, in order
	count   []int     // drinks that each substitute serves
}

// newChoice starts from each drink's own best.
func newChoice(touched []Touched) *choice {
	c := &choice{touched: touched, of: make([]int, len(touched)), parts: make([][][]int, len(touched))}
	for i := range touched {
		for _, x := range touched[i].Covers {
			for _, p := range x.Parts {
				c.names = append(c.names, p.Profile.ID)
			}
		}
	}
	slices.Sort(c.names)
	c.names = slices.Compact(c.names)
	first := make([]int, len(touched))
	for i := range touched {
		first[i] = min(0, len(touched[i].Covers)-1)
		c.parts[i] = make([][]int, len(touched[i].Covers))
		for k, x := range touched[i].Covers {
			for _, p := range x.Parts {
				at, _ := slices.BinarySearch(c.names, p.Profile.ID)
				c.parts[i][k] = append(c.parts[i][k], at)
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

// serve counts the substitutes of cover k of drink i in, or with −1 out.
func (c *choice) serve(i, k, by int) {
	if k < 0 {
		return
	}
	for _, id := range c.parts[i][k] {
		c.count[id] += by
	}
}

// open counts the substitutes in use.
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
	sum := openCost * float64(c.open())
	for i, k := range c.of {
		if k >= 0 {
			sum += c.touched[i].Covers[k].rank
		}
	}
	return sum
}

// settle lets each drink in turn take its cheapest cover, given the others'.
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
			for k := range c.parts[i] {
				if p := c.cost(i, k); p < least-1e-9 {
					best, least = k, p
				}
			}
			c.serve(i, best, 1)
			changed = changed || best != now
			c.of[i] = best
		}
	}
}

// cost is what cover k of drink i adds to the price of the others.
func (c *choice) cost(i, k int) float64 {
	cost := c.touched[i].Covers[k].rank
	for _, id := range c.parts[i][k] {
		if c.count[id] == 0 {
			cost += openCost
		}
	}
	return cost
}

// lean gives every drink its nearest cover that uses a substitute, if any.
func (c *choice) lean(id int) {
	for i := range c.of {
		if k := slices.IndexFunc(c.parts[i], func(parts []int) bool { return slices.Contains(parts, id) }); k >= 0 {
			c.serve(i, c.of[i], -1)
			c.serve(i, k, 1)
			c.of[i] = k
		}
	}
}

// opened lists the substitutes of the chosen covers, the one that serves most
// drinks first.
func (r *MenuResult) opened(of []int) []Opened {
	var out []Opened
	for i, k := range of {
		if k < 0 {
			continue
		}
		for _, p := range r.Touched[i].Covers[k].Parts {
			at := slices.IndexFunc(out, func(o Opened) bool { return o.Profile.ID == p.Profile.ID })
			if at < 0 {
				out = append(out, Opened{Profile: p.Profile})
				at = len(out) - 1
			}
			out[at].Drinks++
		}
	}
	slices.SortFunc(out, func(a, b Opened) int {
		return cmp.Or(cmp.Compare(b.Drinks, a.Drinks), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
	return out
}
