package exchange

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/kinds"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
)

// bottleReader reads the cells of a row into a bottle, and collects all faults of them.
type bottleReader struct {
	*sheetReader
	r *SheetRow
}

// has reports whether the file has a column for a field, or the user entered a value for
// it.
func (b *bottleReader) has(f column.Field) bool {
	_, settled := b.settled.Cells[Cell{b.r.Number, f}]
	return settled || b.titled(f)
}

func (b *bottleReader) cell(f column.Field) string { return strings.TrimSpace(b.r.Cells[f]) }

func (b *bottleReader) fault(f column.Field, message string, remedies ...Remedy) {
	if slices.ContainsFunc(b.r.Faults, func(o CellFault) bool { return o.Field == f }) {
		return
	}
	written := b.cell(f)
	if f == column.Size && written == "" {
		written = b.cell(column.SizeML) + b.cell(column.SizeG)
	}
	b.r.Faults = append(b.r.Faults, CellFault{Field: f, Written: written, Message: message, Remedies: remedies})
}

// empty is the remedy of clearing a field.
func empty(f column.Field) Remedy { return Remedy{"leave it empty", f, ""} }

func (b *bottleReader) read() {
	name := b.r.Cells[column.Name]
	if strings.TrimSpace(name) == "" {
		name = b.r.Cells[column.Kind]
	}
	id := b.cell(column.ID)
	if id == "" {
		id = house.IDOf(house.KindBottle, name)
	}
	there, known := b.there[id]
	bottle := there
	bottle.ID, bottle.Name = id, name
	if !known {
		bottle.Stock = uncounted
	}
	b.r.Bottle = bottle
	if strings.TrimSpace(name) == "" { // whatever else is wrong with it can wait for one
		b.fault(column.Name, "the row has no name; write what the bottle is called")
		return
	}
	b.kind()
	b.size()
	b.strengths()
	b.contradicted()
	b.tooLargeForDashes()
	b.price()
	b.stock()
	b.pack()
	b.words()
	b.check()
	b.twice()
}

// notDrunk reports whether the row is of what nobody drinks, such as napkins, and notes its
// name. What the house has as a bottle already, and what the user says is one, is one.
func (b *bottleReader) notDrunk() bool {
	name := strings.TrimSpace(b.r.Cells[column.Name])
	if name == "" {
		name = b.cell(column.Kind)
	}
	if _, settled := b.settled.Cells[Cell{b.r.Number, column.Kind}]; settled || b.r.Cells[column.Row] == TakeIn {
		return false
	}
	if _, known := b.there[house.IDOf(house.KindBottle, name)]; known || !b.kinds.Knows() || !b.kinds.Supply(b.cell(column.Kind), strings.TrimSpace(b.cell(column.Group)+" "+b.heading), name) {
		return false
	}
	b.r.Bottle.Name = name
	return true
}

// kind finds the ingredient that the bottle is, or offers candidates.
func (b *bottleReader) kind() {
	settled, said := b.settled.Cells[Cell{b.r.Number, column.Kind}]
	if like := b.said[SameName(b.r.Bottle.Name)]; !said && like != "" && b.cell(column.Kind) == "" {
		settled, said = like, true // of another row of this name
	}
	var found *kinds.Kind
	group := strings.TrimSpace(b.cell(column.Group) + " " + b.heading)
	switch {
	case !b.kinds.Knows():
		b.r.Bottle.Ingredient = b.cell(column.Kind)
		return
	case said:
		if found = b.kinds.Stated(settled); found != nil {
			found.Supposed = false // the user chose it
		}
	default:
		found = b.kinds.Find(b.cell(column.Kind), group, b.r.Bottle.Name)
		if old := b.there[b.r.Bottle.ID]; found != nil && found.Supposed && old.Ingredient != "" {
			found = b.asBefore(old.Ingredient, found) // was settled at an earlier import
		}
	}
	if found != nil && found.Supposed {
		if lost := naming.Loses(b.r.Bottle.Name, found.Profile); lost != "" {
			b.fault(column.Kind, fmt.Sprintf("the name says that it holds %s, which %s is not known to carry; choose its kind, and it counts as there until somebody has read its label", lost, found.Profile.Name),
				Remedy{found.Profile.Name, column.Kind, found.Profile.Name})
			return
		}
	}
	if found != nil {
		b.r.Kind, b.r.Bottle.Ingredient = *found, found.Profile.ID
		b.byHand(said)
		return
	}
	written := b.cell(column.Kind)
	message := "nothing says which kind of bottle it is"
	if said {
		written = settled
	}
	if written != "" {
		message = fmt.Sprintf("%q is not a kind known here", written)
	}
	names := slices.DeleteFunc(b.kinds.Near(written, b.r.Bottle.Name), func(n string) bool {
		p, _, known := b.kinds.Named(n)
		return known && naming.Loses(b.r.Bottle.Name, p) != ""
	})
	var remedies []Remedy
	for _, n := range names {
		remedies = append(remedies, Remedy{n, column.Kind, n})
	}
	if len(names) > 0 {
		message += "; did you mean " + flavor.JoinOr(names) + "?"
	} else {
		message += "; its category is wanted, such as London dry gin"
	}
	b.fault(column.Kind, message, remedies...)
}

// byHand notes that somebody chose a kind of which the name says nothing, so that what it carries
// is not stated until its label is read, unless they say that it is known.
func (b *bottleReader) byHand(said bool) {
	b.r.ByHand = said && b.r.Bottle.Label == nil && !kinds.Says(b.r.Bottle.Name, b.r.Kind.Profile)
	b.r.Bottle.Unread = b.r.ByHand && !b.settled.Known || b.r.Bottle.Unread && b.there[b.r.Bottle.ID].Ingredient == b.r.Bottle.Ingredient
}

// asBefore keeps the ingredient that the bottle has in the house already, if the file
// allows it.
func (b *bottleReader) asBefore(id string, supposed *kinds.Kind) *kinds.Kind {
	p, _, ok := b.kinds.Named(id)
	if !ok || p.Class != supposed.Profile.Class {
		return supposed
	}
	return &kinds.Kind{Profile: p, Why: "the house"}
}

func (b *bottleReader) price() {
	bottle := &b.r.Bottle
	if b.has(column.Currency) {
		bottle.Currency = b.code(b.cell(column.Currency))
	}
	if !b.has(column.Price) {
		return
	}
	written := b.cell(column.Price)
	if numeral.Nothing(written) {
		bottle.Price = nil
		if !b.has(column.Currency) {
			bottle.Currency = ""
		}
		return
	}
	sum, code, shared, ok := numeral.Money(written, b.comma)
	if !ok {
		b.fault(column.Price, fmt.Sprintf("%q is not a price; write it as 18.50", written), empty(column.Price))
		return
	}
	bottle.Price = &sum
	switch {
	case code != "" && (!shared || b.foreignSign(code)):
		bottle.Currency = code
	case b.settled.Currency != "":
		bottle.Currency = b.settled.Currency
	case bottle.Currency == "":
		bottle.Currency = b.defaults.currency
	}
	if bottle.Currency == "" && b.cell(column.Currency) == "" {
		b.fault(column.Currency, "the price has no currency; write its three letters, such as EUR, beside it", Remedy{"leave the price out", column.Price, ""})
	}
}

// foreignSign reports whether a sign of several currencies, given by the usual one of them, is
// none of the currency that the price would have without it. A currency that the row states
// stands.
func (b *bottleReader) foreignSign(usual string) bool {
	if b.has(column.Currency) && b.cell(column.Currency) != "" {
		return false
	}
	without := cmp.Or(b.settled.Currency, b.r.Bottle.Currency, b.defaults.currency)
	return without != "" && !numeral.Shares(usual, without)
}

// code returns the three-letter code of a currency or of a currency sign. Anything else
// is returned unchanged, and refused by check.
func (b *bottleReader) code(written string) string {
	if _, code, _, _ := numeral.Money(written+"1", false); code != "" && !numeral.KnownCurrency(strings.ToUpper(written)) {
		return code
	}
	return strings.ToUpper(written)
}

// uncounted is how many there are of a new bottle that the file does not count: a bar
// lists what it has. Common practice, no source.
const uncounted = 1

// stock reads the count, and whether it is the house's pour. A count that is not said
// changes nothing: an empty cell must not mark a bottle out.
func (b *bottleReader) stock() {
	if b.has(column.Stock) {
		written := b.cell(column.Stock)
		v, said, ok := numeral.Count(written, b.comma)
		switch {
		case !ok:
			b.fault(column.Stock, fmt.Sprintf("%q is not a number of bottles; write it as 2 or 2.5", written), Remedy{"none", column.Stock, "0"}, Remedy{"one", column.Stock, "1"})
		case said && v > 0: // a bottle that was counted is there
			b.r.Bottle.Stock, b.r.Bottle.OutSince = v, nil
		case said:
			b.r.Bottle.Stock = v
		default:
			b.r.Uncounted = true
		}
	}
	if b.has(column.Par) {
		b.r.Bottle.Par = 0
		if v := b.figure(column.Par, "4"); v != nil {
			b.r.Bottle.Par = *v
		}
	}
	if b.has(column.Out) {
		b.r.Bottle.OutSince = b.moment(column.Out)
	}
	if !b.has(column.Well) {
		return
	}
	b.r.Bottle.Well = b.yes(column.Well)
}

// yes reads a cell that says yes or no; empty is no.
func (b *bottleReader) yes(f column.Field) bool {
	switch written := strings.ToLower(b.cell(f)); written {
	case "yes", "true", "1", "x", "y":
		return true
	case "", "no", "false", "0", "n":
	default:
		b.fault(f, fmt.Sprintf("%q is neither yes nor no", written), Remedy{"yes", f, "yes"}, Remedy{"no", f, "no"})
	}
	return false
}

// words reads the note and the label.
func (b *bottleReader) words() {
	bottle := &b.r.Bottle
	if b.has(column.Note) {
		bottle.Note = b.r.Cells[column.Note]
	}
	bottle.Note = b.beside(bottle.Note)
	if b.has(column.LabelReader) {
		bottle.Label = b.label()
	}
	if b.has(column.Unread) {
		bottle.Unread = b.yes(column.Unread)
	}
}

// beside adds the cells of columns without a field to the note, one line each, beginning
// with the column's title. A line replaces an older one with the same title.
func (b *bottleReader) beside(note string) string {
	for i, c := range b.Columns {
		if c.Field != column.Beside || c.Title == "" || i >= len(b.r.row.Cells) {
			continue
		}
		mark := c.Title + ": "
		var kept []string
		for line := range strings.Lines(note) {
			if line = strings.TrimRight(line, "\n"); !strings.HasPrefix(line, mark) {
				kept = append(kept, line)
			}
		}
		if text := strings.Join(strings.Fields(grid.Unguard(b.r.row.Cells[i])), " "); text != "" {
			kept = append(kept, mark+text)
		}
		note = strings.Join(kept, "\n")
	}
	return note
}

// label reads the allergens on the label; nil if nobody has read it.
func (b *bottleReader) label() *house.Label {
	said := house.Label{Contains: b.allergens(column.Contains), MayContain: b.allergens(column.MayContain), Vegan: b.yes(column.Vegan), ReadBy: b.cell(column.LabelReader)}
	when := b.cell(column.LabelRead)
	if said.ReadBy == "" && when == "" && !said.Vegan && len(said.Contains)+len(said.MayContain) == 0 {
		return nil
	}
	at, ok := momentIn(when)
	if !ok {
		b.fault(column.LabelRead, noDate(when))
		return nil
	}
	said.ReadAt = at
	return &said
}

// moment reads an optional date; nil if the cell is empty.
func (b *bottleReader) moment(f column.Field) *time.Time {
	written := b.cell(f)
	if numeral.Nothing(written) {
		return nil
	}
	at, ok := momentIn(written)
	if !ok {
		b.fault(f, noDate(written), empty(f))
		return nil
	}
	return &at
}

func momentIn(written string) (time.Time, bool) {
	for _, layout := range []string{time.RFC3339Nano, time.DateOnly} {
		if at, err := time.Parse(layout, written); err == nil {
			return at, true
		}
	}
	return time.Time{}, false
}

func noDate(written string) string {
	return fmt.Sprintf("%q is no date; write it as 2026-04-01", written)
}

// allergens reads a list of allergens separated by commas.
func (b *bottleReader) allergens(f column.Field) []flavor.Allergen {
	var out []flavor.Allergen
	for w := range strings.SplitSeq(b.cell(f), ",") {
		if w = strings.TrimSpace(w); w == "" {
			continue
		}
		a, err := flavor.ParseAllergen(w)
		if err != nil {
			b.fault(f, err.Error())
			return nil
		}
		out = append(out, a)
	}
	return out
}
