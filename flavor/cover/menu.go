package cover

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterpour/flavor"
)

// Limits of a menu, and how its covers are weighed against each other.
const (
	MaxMenu = 2000
	// coversEach is how many covers of a drink are weighed for the menu.
	coversEach = 6
	// openCost is what one more substitute to keep at hand is worth, in
	// just-noticeable differences summed over the drinks.
	openCost = 0.5
	// GoodDistance is the distance, in just-noticeable differences, up to which
	// a cover is called good.
	GoodDistance = 4.0
)

// MenuRequest asks what becomes of a menu when bottles run out.
type MenuRequest struct {
	Specs    []*flavor.Spec
	Out      []*flavor.Profile
	Stock    []*flavor.Profile // what may be poured; what is out is left out of it
	Guest    Guest
	Tastings []Tasting
	Parts    int // most substitutes a drink; 0 means 2
}

// Touched is a drink that lost a pour.
type Touched struct {
	Spec    *flavor.Spec
	Missing []*flavor.Profile
	// ScoreBefore is the score of the drink as it is written.
	ScoreBefore float64
	Covers      []Cover // the best first; none if nothing in stock will do
	// Chosen is the cover that serves the whole menu best, an index into
	// Covers, or −1.
	Chosen int
}

// Fetch is a bottle that could be fetched.
type Fetch struct {
	Profile *flavor.Profile
	Drinks  int // that are whole again with it alone
	Lost    int // of these, the ones that have no cover
}

// Opened is a substitute that the chosen covers use, and for how many drinks.
type Opened struct {
	Profile *flavor.Profile
	Drinks  int
}

// MenuResult is what becomes of the menu.
type MenuResult struct {
	Touched []Touched // without a cover first, then the furthest first
	Fetch   []Fetch   // the bottle that brings most back first
	Opened  []Opened
	// Spared is how many fewer substitutes the chosen covers need than each
	// drink's own best would, and Given how much further, in just-noticeable
	// differences over all drinks, they lie.
	Spared int
	Given  float64
}

// Outs finds every drink that the bottles out touch, its covers, and the covers
// that serve the menu best together. Progress, if not nil, is told drinks done
// and in all.
func (f *Finder) Outs(ctx context.Context, r MenuRequest, progress func(done, total int)) (*MenuResult, error) {
	if len(r.Out) == 0 {
		return nil, errors.New("cover: name at least one bottle that is out")
	}
	if len(r.Specs) > MaxMenu {
		return nil, fmt.Errorf("cover: a menu of %d drinks; ask for at most %d at once", len(r.Specs), MaxMenu)
	}
	stock := slices.DeleteFunc(slices.Clone(r.Stock), func(p *flavor.Profile) bool { return has(r.Out, p) })
	result := &MenuResult{}
	for i, s := range r.Specs {
		t := Touched{Spec: s, Missing: missingFrom(s, r.Out), Chosen: -1}
		if len(t.Missing) > 0 {
			found, err := f.Find(ctx, Request{Spec: s, Missing: t.Missing, Candidates: stock, Guest: r.Guest,
				Tastings: r.Tastings, Parts: r.Parts, Limit: coversEach})
			if err != nil {
				return nil, fmt.Errorf("%s: %w", s.Name, err)
			}
			t.Covers, t.ScoreBefore = found.Covers, found.ScoreBefore
			result.Touched = append(result.Touched, t)
		}
		if progress != nil {
			progress(i+1, len(r.Specs))
		}
	}
	result.choose()
	slices.SortStableFunc(result.Touched, Touched.compare)
	result.countFetches(r.Out)
	return result, nil
}

func has(list []*flavor.Profile, p *flavor.Profile) bool {
	return slices.ContainsFunc(list, func(o *flavor.Profile) bool { return o.ID == p.ID })
}

// missingFrom lists the bottles out that a drink needs, in the order of its pours.
func missingFrom(s *flavor.Spec, out []*flavor.Profile) []*flavor.Profile {
	var missing []*flavor.Profile
	for i := range s.Pours {
		if p := s.Pours[i].Profile; has(out, p) && !has(missing, p) {
			missing = append(missing, p)
		}
	}
	return missing
}

func (t Touched) compare(o Touched) int {
	distance := func(t Touched) float64 {
		if t.Chosen < 0 {
			return 1e9 // no cover at all comes first
		}
		return t.Covers[t.Chosen].Distance
	}
	return cmp.Or(cmp.Compare(distance(o), distance(t)), strings.Compare(t.Spec.Name, o.Spec.Name))
}

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

// countFetches counts the drinks that each bottle out would make whole again.
func (r *MenuResult) countFetches(out []*flavor.Profile) {
	for _, p := range out {
		f := Fetch{Profile: p}
		for i := range r.Touched {
			t := &r.Touched[i]
			if len(t.Missing) == 1 && t.Missing[0].ID == p.ID {
				f.Drinks++
				if len(t.Covers) == 0 {
					f.Lost++
				}
			}
		}
		r.Fetch = append(r.Fetch, f)
	}
	slices.SortStableFunc(r.Fetch, func(a, b Fetch) int {
		return cmp.Or(cmp.Compare(b.Lost, a.Lost), cmp.Compare(b.Drinks, a.Drinks), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
}

// Weak is a bottle that the menu leans on and that nothing in stock covers well.
type Weak struct {
	Profile *flavor.Profile
	Drinks  []string // names of the drinks without a good cover
}

// Coverage looks ahead, before service: for every bottle that the menu uses,
// which drinks would be left without a good cover if it ran out. Those are the
// bottles to order two of; the one that most drinks lean on comes first.
func (f *Finder) Coverage(ctx context.Context, specs []*flavor.Spec, stock []*flavor.Profile, progress func(done, total int)) ([]Weak, error) {
	bottles := bottlesOf(specs)
	var out []Weak
	for n, b := range bottles {
		r, err := f.Outs(ctx, MenuRequest{Specs: specs, Out: []*flavor.Profile{b}, Stock: stock}, nil)
		if err != nil {
			return nil, err
		}
		w := Weak{Profile: b}
		for i := range r.Touched {
			if t := &r.Touched[i]; len(t.Covers) == 0 || t.Covers[0].Distance > GoodDistance {
				w.Drinks = append(w.Drinks, t.Spec.Name)
			}
		}
		if len(w.Drinks) > 0 {
			slices.Sort(w.Drinks)
			out = append(out, w)
		}
		if progress != nil {
			progress(n+1, len(bottles))
		}
	}
	slices.SortStableFunc(out, func(a, b Weak) int {
		return cmp.Or(cmp.Compare(len(b.Drinks), len(a.Drinks)), strings.Compare(a.Profile.Name, b.Profile.Name))
	})
	return out, nil
}

// bottlesOf lists what the drinks are made of, by id.
func bottlesOf(specs []*flavor.Spec) []*flavor.Profile {
	var out []*flavor.Profile
	for _, s := range specs {
		for i := range s.Pours {
			out = append(out, s.Pours[i].Profile)
		}
	}
	slices.SortFunc(out, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	return slices.CompactFunc(out, func(a, b *flavor.Profile) bool { return a.ID == b.ID })
}
