package wish

import (
	"counterpour/flavor"
)

// Carriers say which pours a bartender meets a wish for more with. A wish that they
// do not name is met by whatever has much of what is wished. The zero value names none.
type Carriers struct {
	rows map[string]*Row // by plain word
}

// Row is what carries one wish, as ids of ingredients.
type Row struct {
	First map[string]bool // what a bartender reaches for
	Also  map[string]bool // what counts too, and is reached for later
}

// Carries reports whether an ingredient stands for the wish at all.
func (r *Row) Carries(p *flavor.Profile) bool { return r.First[p.ID] || r.Also[p.ID] }

// Add names what carries a wish. It is false if a word is none that a wish may be made
// of, or has a row already.
func (c *Carriers) Add(word string, row *Row) bool {
	if _, known := lexicon[word]; !known || c.rows[word] != nil {
		return false
	}
	if c.rows == nil {
		c.rows = map[string]*Row{}
	}
	c.rows[word] = row
	return true
}

// Of returns what carries a wish for more: the row of its own word, else of its sense
// or aroma family; nil if there is none.
func (c *Carriers) Of(w *Wish) *Row {
	if c == nil || !w.More {
		return nil
	}
	if t, ok := lexicon[w.Of]; ok && !t.down {
		if row := c.rows[w.Of]; row != nil {
			return row
		}
	}
	switch {
	case w.Kind == Sense:
		return c.rows[w.Sense.String()]
	case w.Kind == Aroma && len(w.Families) == 1 && len(w.Or) == 0:
		return c.rows[flavor.AromaFamilies()[w.Families[0]].ID]
	}
	return nil
}
