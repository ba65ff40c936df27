package flavor

import "slices"

// Custom is one thing that the trade pours in place of another.
type Custom struct {
	Parts []string // ids of what is poured together, ascending
	Place int      // 0 for the first choice, and up
}

// Customs says what the trade pours in place of what is out. The zero value
// knows of no custom.
type Customs struct {
	of      map[string][]Custom // by the id of what is out
	kin     map[string][]string // by the id of a member, the others in order
	lighter map[Class][]string  // by the class of a spirit
	dry     map[Class][]string  // by the class of a spirit
	apart   map[Class][]string  // by the class of a spirit, the ids of what nobody pours it beside
}

// Add adds a custom. Of two that pour the same, the one with the better place
// counts.
func (c *Customs) Add(out string, parts []string, place int) {
	if c.of == nil {
		c.of = map[string][]Custom{}
	}
	parts = slices.Sorted(slices.Values(parts))
	at := slices.IndexFunc(c.of[out], func(x Custom) bool { return slices.Equal(x.Parts, parts) })
	if at < 0 {
		c.of[out] = append(c.of[out], Custom{parts, place})
		return
	}
	c.of[out][at].Place = min(c.of[out][at].Place, place)
}

// For returns the customs for what is out, the first choice first, and those of
// one place in the order of their ids. The result is the caller's. Nil knows of
// no custom.
func (c *Customs) For(out string) []Custom {
	if c == nil {
		return nil
	}
	return slices.SortedFunc(slices.Values(c.of[out]), func(a, b Custom) int {
		if a.Place != b.Place {
			return a.Place - b.Place
		}
		return slices.Compare(a.Parts, b.Parts)
	})
}

// AddKin adds ids that stand in for one another wherever one of them is poured with
// others.
func (c *Customs) AddKin(ids []string) {
	if c.kin == nil {
		c.kin = map[string][]string{}
	}
	for _, id := range ids {
		for _, other := range ids {
			if other != id && !slices.Contains(c.kin[id], other) {
				c.kin[id] = append(c.kin[id], other)
			}
		}
	}
}

// Kin returns the ids that stand in for one that is poured with others, in the order in
// which they were added; they are not to be changed. Nil knows of none.
func (c *Customs) Kin(id string) []string {
	if c == nil {
		return nil
	}
	return c.kin[id]
}

// AddLighter adds what is poured in place of the spirits of a class for a guest who wants
// less alcohol, the first choice first.
func (c *Customs) AddLighter(of Class, ids []string) {
	if c.lighter == nil {
		c.lighter = map[Class][]string{}
	}
	c.lighter[of] = append(c.lighter[of], ids...)
}

// Lighter returns what is poured in place of the spirits of a class for a guest who wants
// less alcohol, the first choice first; it is not to be changed. Nil knows of nothing.
func (c *Customs) Lighter(of Class) []string {
	if c == nil {
		return nil
	}
	return c.lighter[of]
}

// AddDry adds what is poured in place of the spirits of a class for a guest who drinks no
// alcohol, or of the liqueurs that a drink is made on, the first choice first.
func (c *Customs) AddDry(of Class, ids []string) {
	if c.dry == nil {
		c.dry = map[Class][]string{}
	}
	c.dry[of] = append(c.dry[of], ids...)
}

// Dry returns what is poured in place of the spirits of a class for a guest who drinks no
// alcohol, the first choice first; it is not to be changed. Nil knows of nothing.
func (c *Customs) Dry(of Class) []string {
	if c == nil {
		return nil
	}
	return c.dry[of]
}

// KeepApart adds that nobody pours the spirits of a class beside what has some ids.
func (c *Customs) KeepApart(of Class, ids []string) {
	if c.apart == nil {
		c.apart = map[Class][]string{}
	}
	c.apart[of] = append(c.apart[of], ids...)
}

// Apart reports whether nobody pours the spirits of a class beside an ingredient. Nil knows
// of none.
func (c *Customs) Apart(of Class, id string) bool {
	return c != nil && slices.Contains(c.apart[of], id)
}

// Out returns the ids of everything that there is a custom for, ascending.
func (c *Customs) Out() []string {
	out := make([]string, 0, len(c.of))
	for id := range c.of {
		out = append(out, id)
	}
	slices.Sort(out)
	return out
}
