package wish

import (
	"counterpour/flavor"
)

// Carriers say which pours a bartender meets a wish for more with. A wish that they
// do not name is met by whatever has much of what is wished. The zero value names none.
type Carriers struct {
	rows map[on]*Row
}

// on is a plain word, and the class of spirit that the row is for; none for any.
type on struct {
	word string
	base flavor.Class
}

// Row is what carries one wish, as ids of ingredients.
type Row struct {
	First map[string]bool // what a bartender reaches for
	Also  map[string]bool // what counts too, and is reached for later
}

// Carries reports whether an ingredient stands for the wish at all.
func (r *Row) Carries(p *flavor.Profile) bool { return r.First[p.ID] || r.Also[p.ID] }

// Add names what carries a wish: in drinks on one class of spirit, or in any if base is
// empty. It is false if a word is none that a wish may be made of, or has such a row already.
func (c *Carriers) Add(word string, base flavor.Class, row *Row) bool {
	key := on{word, base}
	if _, known := lexicon[word]; !known || c.rows[key] != nil {
		return false
	}
	if c.rows == nil {
		c.rows = map[on]*Row{}
	}
	c.rows[key] = row
	return true
}

// Of returns what carries a wish for more in a drink on a class of spirit; base is empty for a
// drink on none. It looks for the row of the wish's own word, then for that of its sense or aroma
// family, and takes a row for that spirit before one for any. It is nil if there is none.
func (c *Carriers) Of(w *Wish, base flavor.Class) *Row {
	if c == nil || !w.More {
		return nil
	}
	if t, ok := lexicon[w.Of]; ok && !t.down {
		if row := c.row(w.Of, base); row != nil {
			return row
		}
	}
	switch {
	case w.Kind == Sense:
		return c.row(w.Sense.String(), base)
	case w.Kind == Aroma && len(w.Families) == 1 && len(w.Or) == 0:
		return c.row(flavor.AromaFamilies()[w.Families[0]].ID, base)
	}
	return nil
}

// row is the row of a word for a class of spirit, else the one for any.
func (c *Carriers) row(word string, base flavor.Class) *Row {
	if row := c.rows[on{word, base}]; row != nil {
		return row
	}
	return c.rows[on{word: word}]
}
