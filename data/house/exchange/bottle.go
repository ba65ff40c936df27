package exchange

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/data/house/exchange/kinds"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
)

// defaults says how to read cells that are incomplete.
type defaults struct {
	currency string // of prices without a currency
	sizeUnit string // of sizes without a unit
	fraction bool   // strengths are fractions of 1, as spreadsheets store percentages
	sizes    []string
}

// usualSizes are offered if the file has no sizes of its own. Common practice, no source.
var usualSizes = []string{"700 ml", "750 ml", "1 L"}

// defaultsOf derives the defaults from all cells of a column.
func defaultsOf(s *sheetReader, rows []tableRow, there []house.Bottle) defaults {
	d := defaults{currency: s.settled.Currency}
	of := func(f Field) (cells []string, unit string) {
		for i, c := range s.Columns {
			if c.Field == f {
				return cellsOf(rows, i), c.unit
			}
		}
		return nil, ""
	}
	sizes, unit := of(FieldSize)
	if d.sizeUnit = unit; unit == "" {
		d.sizeUnit = numeral.ColumnUnit(sizes, s.comma)
		if d.sizeUnit != "" {
			s.Notes = append(s.Notes, "Sizes without a unit are read as "+d.sizeUnit+".")
		}
	}
	d.sizes = commonSizes(sizes, d.sizeUnit, s.comma)
	strengths, unit := of(FieldStrength)
	if shares := shareOf(strengths, func(c string) bool { v, ok := numeral.Number(c, s.comma); return ok && v > 0 && v <= 1 }); unit == "" && shares > 0 &&
		shareOf(strengths, func(c string) bool { v, ok := numeral.Number(c, s.comma); return ok && v <= 1 || numeral.Nothing(c) }) == 1 {
		d.fraction = true
		s.Notes = append(s.Notes, "Strengths are read as fractions: 0.4 as 40 % vol.")
	}
	prices, _ := of(FieldPrice)
	d.priced(s, prices, there)
	if !s.titled(FieldStock) {
		s.Notes = append(s.Notes, "No column says how many there are; a bottle that is new counts as one.")
	}
	return d
}

// priced sets the currency of prices without one: the one that the user chose, or that of
// the existing bottles, or of the house, or the one that all currency signs of the file
// agree on.
func (d *defaults) priced(s *sheetReader, prices []string, there []house.Bottle) {
	title := ""
	for _, c := range s.Columns {
		if c.Field == FieldPrice {
			title = c.Title
		}
	}
	var own, kept []string
	shared := false
	for _, cell := range append(slices.Clone(prices), title) {
		_, code, many, _ := numeral.Money(cell, s.comma)
		if code != "" && !slices.Contains(own, code) {
			own, shared = append(own, code), shared || many
		}
	}
	for _, b := range there {
		if b.Price != nil && !slices.Contains(kept, b.Currency) {
			kept = append(kept, b.Currency)
		}
	}
	switch {
	case d.currency != "":
	case len(kept) == 1 && (len(own) == 0 || shared):
		d.currency = kept[0]
	case s.settled.House != "" && (len(own) == 0 || len(own) == 1 && shared && numeral.Shares(own[0], s.settled.House)):
		d.currency = s.settled.House
		s.Notes = append(s.Notes, "Prices are read as "+s.settled.House+", the currency of the house; say so if they are in another.")
	case len(own) == 1:
		if d.currency = own[0]; shared {
			s.Notes = append(s.Notes, "Prices are read as "+own[0]+"; say so if they are in another currency.")
		}
	}
}

// commonSizes returns the sizes that most bottles of a file have, in a form that can be
// written into a cell.
func commonSizes(cells []string, unit string, comma bool) []string {
	counts := map[string]int{}
	var out []string
	for _, c := range cells {
		if a, open, ok := numeral.Size(c, unit, comma); ok && !open && a.ML > 0 {
			s := exact(a.ML) + " ml"
			if counts[s]++; counts[s] == 1 {
				out = append(out, s)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return counts[b] - counts[a] })
	if len(out) == 0 {
		return usualSizes
	}
	return out[:min(len(out), 3)]
}

// bottleReader reads the cells of a row into a bottle, and collects all faults of them.
type bottleReader struct {
	*sheetReader
	r *SheetRow
}

// has reports whether the file has a column for a field, or the user entered a value for
// it.
func (b *bottleReader) has(f Field) bool {
	_, settled := b.settled.Cells[Cell{b.r.Number, f}]
	return settled || b.titled(f)
}

func (b *bottleReader) cell(f Field) string { return strings.TrimSpace(b.r.Cells[f]) }

func (b *bottleReader) fault(f Field, message string, remedies ...Remedy) {
	if slices.ContainsFunc(b.r.Faults, func(o CellFault) bool { return o.Field == f }) {
		return
	}
	written := b.cell(f)
	if f == FieldSize && written == "" {
		written = b.cell(FieldSizeML) + b.cell(FieldSizeG)
	}
	b.r.Faults = append(b.r.Faults, CellFault{Field: f, Written: written, Message: message, Remedies: remedies})
}

// empty is the remedy of clearing a field.
func empty(f Field) Remedy { return Remedy{"leave it empty", f, ""} }

func (b *bottleReader) read() {
	name := b.r.Cells[FieldName]
	if strings.TrimSpace(name) == "" {
		name = b.r.Cells[FieldKind]
	}
	id := b.cell(FieldID)
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
		b.fault(FieldName, "the row has no name; write what the bottle is called")
		return
	}
	b.kind()
	b.size()
	b.strengths()
	b.contradicted()
	b.price()
	b.stock()
	b.pack()
	b.words()
	b.check()
	b.twice()
}

// kind finds the ingredient that the bottle is, or offers candidates.
func (b *bottleReader) kind() {
	settled, said := b.settled.Cells[Cell{b.r.Number, FieldKind}]
	var found *kinds.Kind
	group := strings.TrimSpace(b.cell(FieldGroup) + " " + b.heading)
	switch {
	case !b.kinds.Knows():
		b.r.Bottle.Ingredient = b.cell(FieldKind)
		return
	case said:
		if found = b.kinds.Stated(settled); found != nil {
			found.Supposed = false // the user chose it
		}
	default:
		found = b.kinds.Find(b.cell(FieldKind), group, b.r.Bottle.Name)
		if old := b.there[b.r.Bottle.ID]; found != nil && found.Supposed && old.Ingredient != "" {
			found = b.asBefore(old.Ingredient, found) // was settled at an earlier import
		}
	}
	if found != nil {
		b.r.Kind, b.r.Bottle.Ingredient = *found, found.Profile.ID
		return
	}
	written := b.cell(FieldKind)
	message := "nothing says which kind of bottle it is"
	if said {
		written = settled
	}
	if written != "" {
		message = fmt.Sprintf("%q is not a kind known here", written)
	}
	names := b.kinds.Near(written, b.r.Bottle.Name)
	var remedies []Remedy
	for _, n := range names {
		remedies = append(remedies, Remedy{n, FieldKind, n})
	}
	if len(names) > 0 {
		message += "; did you mean " + flavor.JoinOr(names) + "?"
	} else {
		message += "; write its category, such as London dry gin"
	}
	b.fault(FieldKind, message, remedies...)
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

func (b *bottleReader) size() {
	for _, col := range []struct {
		field Field
		unit  string
	}{{FieldSize, b.defaults.sizeUnit}, {FieldSizeML, numeral.ExactML}, {FieldSizeG, numeral.ExactG}} {
		written := b.cell(col.field)
		_, said := b.settled.Cells[Cell{b.r.Number, FieldSize}]
		if !b.has(col.field) || said && col.field != FieldSize {
			continue
		}
		if col.field != FieldSizeG || b.r.Bottle.SizeML == 0 || !b.has(FieldSizeML) {
			b.r.Bottle.SizeML, b.r.Bottle.SizeG = 0, 0
		}
		if numeral.Nothing(written) {
			continue
		}
		a, open, ok := numeral.Size(strings.TrimSuffix(written, byThePack), col.unit, b.comma)
		switch {
		case open:
			b.fault(FieldSize, fmt.Sprintf("%q does not say of what; is it ml, cl or oz?", written), Remedy{written + " cl", FieldSize, written + " cl"},
				Remedy{written + " ml", FieldSize, written + " ml"}, Remedy{written + " oz", FieldSize, written + " oz"})
		case !ok:
			b.fault(FieldSize, fmt.Sprintf("%q is not a size; write it as 700 ml, 70 cl, 24 oz, 1 L or 500 g", written), b.sizes()...)
		case a.G > 0:
			b.r.Bottle.SizeG = a.G
		case a.ML > house.LargestML && col.field == FieldSize:
			less := exact(a.ML/100) + " ml"
			b.fault(FieldSize, fmt.Sprintf("%q is %s litres, more than the largest keg holds", written, exact(a.ML/1000)), Remedy{less, FieldSize, less})
		default:
			b.r.Bottle.SizeML = a.ML
		}
	}
	if b.r.Bottle.SizeML == 0 && b.r.Bottle.SizeG == 0 {
		b.fault(FieldSize, "nothing says what a full one holds", b.sizes()...)
	}
}

func (b *bottleReader) sizes() (out []Remedy) {
	for _, s := range b.defaults.sizes {
		out = append(out, Remedy{s, FieldSize, s})
	}
	return out
}

// figure reads an optional number; nil if the cell is empty.
func (b *bottleReader) figure(f Field, such string) *float64 {
	written := b.cell(f)
	if numeral.Nothing(written) {
		return nil
	}
	v, ok := numeral.Number(written, b.comma)
	if !ok {
		b.fault(f, fmt.Sprintf("%q is not a number; write it with digits, such as %s", written, such), empty(f))
		return nil
	}
	return &v
}

func (b *bottleReader) strengths() {
	m := &b.r.Bottle.Measured
	if b.has(FieldStrength) {
		m.ABVPct = b.abv()
	}
	if b.has(FieldBrix) || b.has(FieldSugar) { // brix and sugar both state the sweetness
		m.Brix, m.SugarGPerL = b.figure(FieldBrix, "22.5"), b.figure(FieldSugar, "300")
	}
	if b.has(FieldAcid) {
		m.AcidGPerL = b.figure(FieldAcid, "60")
	}
}

// contradicted asks which kind the bottle is if its strength is that of another: a liqueur
// that was taken for a juice would lose its alcohol and its allergens.
func (b *bottleReader) contradicted() {
	kind, m := b.r.Kind.Profile, b.r.Bottle.Measured
	if kind == nil {
		return
	}
	err := m.Contradicts(kind)
	if err == nil {
		return
	}
	var remedies []Remedy
	for _, name := range b.kinds.Near(b.cell(FieldKind), b.r.Bottle.Name) {
		if p, _, known := b.kinds.Named(name); known && m.Contradicts(p) == nil {
			remedies = append(remedies, Remedy{name, FieldKind, name})
		}
	}
	b.fault(FieldKind, err.Error(), append(remedies, Remedy{"leave the strength out", FieldStrength, ""})...)
}

func (b *bottleReader) abv() *float64 {
	written := b.cell(FieldStrength)
	if numeral.Nothing(written) {
		return nil
	}
	unit := ""
	for _, c := range b.Columns {
		if c.Field == FieldStrength {
			unit = c.unit
		}
	}
	v, ok := numeral.Strength(written, unit, b.comma)
	if ok && b.defaults.fraction && v <= 1 && !strings.Contains(written, "%") {
		v *= 100
	}
	if !ok {
		b.fault(FieldStrength, fmt.Sprintf("%q is not a strength; write it as 40 %% or 80 proof", written), empty(FieldStrength))
		return nil
	}
	if v > 100 && v <= 200 {
		half := exact(v/2) + " %"
		b.fault(FieldStrength, fmt.Sprintf("%q is above 100 %%; is it proof?", written), Remedy{half, FieldStrength, half}, empty(FieldStrength))
		return nil
	}
	return &v
}

func (b *bottleReader) price() {
	bottle := &b.r.Bottle
	if b.has(FieldCurrency) {
		bottle.Currency = b.code(b.cell(FieldCurrency))
	}
	if !b.has(FieldPrice) {
		return
	}
	written := b.cell(FieldPrice)
	if numeral.Nothing(written) {
		bottle.Price = nil
		if !b.has(FieldCurrency) {
			bottle.Currency = ""
		}
		return
	}
	sum, code, shared, ok := numeral.Money(written, b.comma)
	if !ok {
		b.fault(FieldPrice, fmt.Sprintf("%q is not a price; write it as 18.50", written), empty(FieldPrice))
		return
	}
	bottle.Price = &sum
	switch {
	case code != "" && !shared:
		bottle.Currency = code
	case b.settled.Currency != "":
		bottle.Currency = b.settled.Currency
	case bottle.Currency == "":
		bottle.Currency = b.defaults.currency
	}
	if bottle.Currency == "" && b.cell(FieldCurrency) == "" {
		b.fault(FieldCurrency, "the price has no currency; write its three letters, such as EUR, beside it", Remedy{"leave the price out", FieldPrice, ""})
	}
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
	if b.has(FieldStock) {
		written := b.cell(FieldStock)
		v, said, ok := numeral.Count(written, b.comma)
		switch {
		case !ok:
			b.fault(FieldStock, fmt.Sprintf("%q is not a number of bottles; write it as 2 or 2.5", written), Remedy{"none", FieldStock, "0"}, Remedy{"one", FieldStock, "1"})
		case said && v > 0: // a bottle that was counted is there
			b.r.Bottle.Stock, b.r.Bottle.OutSince = v, nil
		case said:
			b.r.Bottle.Stock = v
		default:
			b.r.Uncounted = true
		}
	}
	if b.has(FieldOut) {
		b.r.Bottle.OutSince = b.moment(FieldOut)
	}
	if !b.has(FieldWell) {
		return
	}
	b.r.Bottle.Well = b.yes(FieldWell)
}

// yes reads a cell that says yes or no; empty is no.
func (b *bottleReader) yes(f Field) bool {
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
	if b.has(FieldNote) {
		bottle.Note = b.r.Cells[FieldNote]
	}
	bottle.Note = b.beside(bottle.Note)
	if b.has(FieldLabelReader) {
		bottle.Label = b.label()
	}
}

// beside adds the cells of columns without a field to the note, one line each, beginning
// with the column's title. A line replaces an older one with the same title.
func (b *bottleReader) beside(note string) string {
	for i, c := range b.Columns {
		if c.Field != FieldBeside || c.Title == "" || i >= len(b.r.row.cells) {
			continue
		}
		mark := c.Title + ": "
		var kept []string
		for line := range strings.Lines(note) {
			if line = strings.TrimRight(line, "\n"); !strings.HasPrefix(line, mark) {
				kept = append(kept, line)
			}
		}
		if text := strings.Join(strings.Fields(unguard(b.r.row.cells[i])), " "); text != "" {
			kept = append(kept, mark+text)
		}
		note = strings.Join(kept, "\n")
	}
	return note
}

// label reads the allergens on the label; nil if nobody has read it.
func (b *bottleReader) label() *house.Label {
	said := house.Label{Contains: b.allergens(FieldContains), MayContain: b.allergens(FieldMayContain), Vegan: b.yes(FieldVegan), ReadBy: b.cell(FieldLabelReader)}
	when := b.cell(FieldLabelRead)
	if said.ReadBy == "" && when == "" && !said.Vegan && len(said.Contains)+len(said.MayContain) == 0 {
		return nil
	}
	at, ok := momentIn(when)
	if !ok {
		b.fault(FieldLabelRead, noDate(when))
		return nil
	}
	said.ReadAt = at
	return &said
}

// moment reads an optional date; nil if the cell is empty.
func (b *bottleReader) moment(f Field) *time.Time {
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
func (b *bottleReader) allergens(f Field) []flavor.Allergen {
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
