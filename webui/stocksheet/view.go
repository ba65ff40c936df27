package stocksheet

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/data/house/exchange/column"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/webui/behind"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// view is the page that takes a file of bottles.
type view struct {
	Text    string
	Columns []columnNote
	Most    int // bytes of a file
	Trouble string
	Taken   string     // what was taken in just now
	Undo    *part.Undo // of that
	Preview *preview
}

// preview is what a file is taken for, before anything is written.
type preview struct {
	Ready, Bad   int
	ReadySaid    string
	BadSaid      string
	Currency     string
	AskCurrency  bool
	Currencies   []string
	Mend         []mendRow
	Kinds        []kindRow
	ByHand       string // names of the bottles whose kind was chosen and is not in the name
	Known        bool   // and they carry what that kind does
	Mapped       []mappedColumn
	Notes        []string
	Supplies     []supplyRow // left out, since nobody drinks them
	SuppliesSaid string
	Rows         []readyRow
	More         int // ready rows that are not shown
	Settled      []string

	asked map[string]int // the rows whose kind is asked for, by their names
}

// mendRow is a row with all that is wrong with it.
type mendRow struct {
	Number int
	Name   string
	Faults []mendFault
	Leave  string // the value of the button that leaves the row out
	Like   int    // an earlier row of the same name, whose kind settles this one's; 0 if there is none
}

// mendFault is a fault with what may be tapped to mend it, and a box for anything
// else.
type mendFault struct {
	Message  string
	Box      string // name of the box; empty if there is nothing to type
	Label    string
	Value    string
	Kinds    bool
	Remedies []form.Option
}

// supplyRow is a row that is left out unless it is said to be a bottle.
type supplyRow struct {
	Number int
	Name   string
	TakeIn string // the value of the button that takes it in
}

// kindRow is a row whose kind the file leaves open.
type kindRow struct {
	Number  int
	Box     string
	Name    string
	Why     string
	Options []form.Option
}

type mappedColumn struct {
	Box, Title, Samples string
	Options             []form.Option
}

// readyRow is a bottle that is ready to be taken in.
type readyRow struct{ Name, Kind, Size, Price, Stock, New string }

// mostReady is how many ready rows are shown.
const mostReady = 100

// fieldName is a field of a bottle as the page calls it; empty for one that it does not show.
func fieldName(f column.Field) string { return fieldNames()[f] }

var fieldNames = sync.OnceValue(func() map[column.Field]string {
	return map[column.Field]string{
		column.Name:        say.It("stocksheet.field-name"),
		column.Kind:        say.It("stocksheet.field-kind"),
		column.Group:       say.It("stocksheet.field-group"),
		column.Size:        say.It("stocksheet.field-size"),
		column.Price:       say.It("stocksheet.field-price"),
		column.Currency:    say.It("stocksheet.field-currency"),
		column.Stock:       say.It("stocksheet.field-stock"),
		column.Strength:    say.It("stocksheet.field-strength"),
		column.Par:         say.It("stocksheet.field-par"),
		column.Note:        say.It("stocksheet.field-note"),
		column.Beside:      say.It("stocksheet.field-beside"),
		column.Nothing:     say.It("stocksheet.field-nothing"),
		column.ID:          say.It("stocksheet.field-id"),
		column.Well:        say.It("stocksheet.field-well"),
		column.SizeML:      say.It("stocksheet.field-size-ml"),
		column.SizeG:       say.It("stocksheet.field-size-g"),
		column.Brix:        say.It("stocksheet.field-brix"),
		column.Sugar:       say.It("stocksheet.field-sugar"),
		column.Acid:        say.It("stocksheet.field-acid"),
		column.Contains:    say.It("stocksheet.field-contains"),
		column.MayContain:  say.It("stocksheet.field-may-contain"),
		column.Vegan:       say.It("stocksheet.field-vegan"),
		column.LabelReader: say.It("stocksheet.field-label-reader"),
		column.LabelRead:   say.It("stocksheet.field-label-read"),
		column.Unread:      say.It("stocksheet.field-label-unread"),
		column.Out:         say.It("stocksheet.field-out"),
	}
})

// usualCurrencies are offered where nothing says which it is.
var usualCurrencies = []string{"EUR", "GBP", "USD", "CAD", "AUD"}

// show fills the page with what a sheet was read as.
func (v *view) show(s *exchange.Sheet, settled exchange.Settled, h behind.House, there []house.Bottle) {
	shelf, usual := h.Shelf(), sync.OnceValue(func() []*flavor.Profile { return append(h.Usual(mostUsual), h.Shelf().Profiles()...) })
	p := &preview{Currency: s.Currency, AskCurrency: s.AskCurrency, Currencies: usualCurrencies, Notes: slices.Clone(s.Notes), Settled: marks(settled), asked: map[string]int{}}
	known := map[string]bool{}
	for _, b := range there {
		known[b.ID] = true
	}
	left := map[string]int{}
	var byHand []string
	for i := range s.Rows {
		r := &s.Rows[i]
		switch {
		case r.LeftOut == exchange.NotDrunk:
			p.Supplies = append(p.Supplies, supplyRow{r.Number, r.Bottle.Name, cellMark(r.Number, column.Row, exchange.TakeIn)})
			continue
		case r.LeftOut != "":
			left[r.LeftOut]++
			continue
		case len(r.Faults) > 0:
			p.mend(r, usual)
		default:
			p.ready(r, shelf, known[r.Bottle.ID])
		}
		if r.ByHand {
			byHand = append(byHand, r.Bottle.Name+" ("+r.Kind.Profile.Name+")")
		}
		if r.Kind.Supposed {
			p.Kinds = append(p.Kinds, kindOf(r, shelf))
		}
	}
	p.ByHand, p.Known = house.FirstFew(byHand), settled.Known
	for _, bad := range s.Unreadable() {
		p.Bad++
		p.Mend = append(p.Mend, mendRow{Number: bad.Number, Leave: leave(bad.Number), Faults: []mendFault{{Message: words.Sentence(bad.Message)}}})
	}
	if n := left["a heading"]; n > 0 {
		p.Notes = append(p.Notes, say.It("stocksheet.headings-left-out", "Rows", n))
	}
	if n := left["a sum"]; n > 0 {
		p.Notes = append(p.Notes, say.It("stocksheet.sums-left-out", "Rows", n))
	}
	if n := left["left out, as you said"]; n > 0 {
		p.Notes = append(p.Notes, say.It("stocksheet.left-out-as-said", "Rows", n))
	}
	p.SuppliesSaid = say.It("stocksheet.supplies", "Rows", len(p.Supplies))
	p.ReadySaid = say.It("stocksheet.bottles", "Bottles", p.Ready)
	p.BadSaid = say.It("stocksheet.rows", "Rows", p.Bad)
	p.columns(s)
	v.Preview = p
}

// marks are the cells that were settled, as hidden fields keep them; the kinds that
// a list chose stand in it.
func marks(s exchange.Settled) []string {
	var out []string
	for cell, text := range s.Cells {
		out = append(out, cellMark(cell.Row, cell.Field, text))
	}
	slices.Sort(out)
	return out
}

// leave is what a button sends to leave a row out.
func leave(row int) string { return cellMark(row, column.Row, exchange.LeaveOut) }

// mostUsual is among how many usual ingredients those are looked for that a bottle may be.
const mostUsual = 1000

func (p *preview) mend(r *exchange.SheetRow, usual func() []*flavor.Profile) {
	p.Bad++
	row := mendRow{Number: r.Number, Name: r.Bottle.Name, Leave: leave(r.Number)}
	for _, f := range r.Faults {
		if f.Field == column.Currency && f.Written == "" {
			continue // asked once, above
		}
		if f.Field == column.Kind && p.asked[exchange.SameName(r.Bottle.Name)] > 0 {
			row.Like = p.asked[exchange.SameName(r.Bottle.Name)]
			continue
		}
		m := mendFault{Message: words.Sentence(f.Message), Label: fieldName(f.Field), Value: f.Written, Kinds: f.Field == column.Kind}
		if f.Field != column.Row {
			m.Box = cellField + strconv.Itoa(r.Number) + "." + string(f.Field)
		}
		for _, remedy := range f.Remedies {
			m.Remedies = append(m.Remedies, form.Option{Value: cellMark(r.Number, remedy.Field, remedy.Write), Name: words.SentenceStart(remedy.Say)})
		}
		if m.Kinds {
			p.asked[exchange.SameName(r.Bottle.Name)] = r.Number
		}
		if m.Kinds && len(f.Remedies) == 0 {
			for _, k := range part.LikelyKinds(&r.Bottle, usual()) {
				m.Remedies = append(m.Remedies, form.Option{Value: cellMark(r.Number, column.Kind, k.Name), Name: words.SentenceStart(k.Name)})
			}
		}
		if m.Kinds && len(f.Remedies) == 0 {
			m.Message = say.It("stocksheet.what-is-it", "Message", m.Message, "Written", f.Written, "Usual", len(m.Remedies))
		}
		row.Faults = append(row.Faults, m)
	}
	if len(row.Faults) > 0 || row.Like > 0 {
		p.Mend = append(p.Mend, row)
	}
}

func (p *preview) ready(r *exchange.SheetRow, shelf *house.Shelf, known bool) {
	if p.Ready++; p.Ready > mostReady {
		p.More++
		return
	}
	b := &r.Bottle
	row := readyRow{Name: b.Name, Kind: part.ShelfName(shelf, b.Ingredient), Size: part.SizeOf(b), Stock: countOf(r), New: say.It("stocksheet.new")}
	if b.Price != nil {
		row.Price = words.Joined(words.Figure(*b.Price, 2), b.Currency)
	}
	if known {
		row.New = say.It("stocksheet.there-already")
	}
	p.Rows = append(p.Rows, row)
}

// countOf is how many there are of a bottle, and what that number means where it is none,
// or is not the file's.
func countOf(r *exchange.SheetRow) string {
	switch said := words.Plain(r.Bottle.Stock); {
	case r.Uncounted:
		return say.It("stocksheet.not-said", "Number", said)
	case r.Bottle.Stock == 0:
		return say.It("stocksheet.so-it-is-out", "Number", said)
	default:
		return said
	}
}

// kindOf offers everything of its class that carries whatever its name says that there is, the
// nearest first: no liqueur without nuts for one that is called after them.
func kindOf(r *exchange.SheetRow, shelf *house.Shelf) kindRow {
	out := kindRow{Number: r.Number, Box: kindField + strconv.Itoa(r.Number), Name: r.Bottle.Name, Why: r.Kind.Why}
	add := func(p *flavor.Profile) {
		if p != r.Kind.Profile && naming.Loses(r.Bottle.Name, p) != "" {
			return
		}
		if !slices.ContainsFunc(out.Options, func(o form.Option) bool { return o.Value == p.ID }) {
			out.Options = append(out.Options, form.Option{Value: p.ID, Name: p.Name, Chosen: p.ID == r.Kind.Profile.ID})
		}
	}
	add(r.Kind.Profile)
	for _, name := range r.Kind.Others {
		if p, _, err := shelf.Resolve(name); err == nil {
			add(p)
		}
	}
	for _, p := range shelf.Profiles() {
		if p.Class == r.Kind.Profile.Class {
			add(p)
		}
	}
	return out
}

func (p *preview) columns(s *exchange.Sheet) {
	for i, c := range s.Columns {
		m := mappedColumn{Box: columnField + strconv.Itoa(i), Title: c.Title, Samples: strings.Join(c.Samples, ", ")}
		if m.Title == "" {
			m.Title = say.It("stocksheet.column", "Number", i+1)
		}
		for _, f := range column.Fields() {
			m.Options = append(m.Options, form.Option{Value: string(f), Name: fieldName(f), Chosen: f == c.Field})
		}
		p.Mapped = append(p.Mapped, m)
	}
}
