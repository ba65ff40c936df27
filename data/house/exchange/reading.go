package exchange

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/grid"
	"counterpour/flavor"
)

// MaxBytes is the largest file that is read; a house is far smaller.
const MaxBytes = 64 << 20

// Bad is a record that could not be read.
type Bad struct {
	Number  int    // of the row, the record or the line, counted from 1
	Name    string // of the record, if known
	Message string // what is wrong and how to mend it
}

// Reading is the content of a file.
type Reading struct {
	Items []house.Item // in file order
	Bad   []Bad        // sorted by number
	Notes []string     // assumptions that were made

	seen   map[house.Ref]bool
	head   string     // of a table: its row of titles
	spoilt []grid.Row // of a table: its bad rows
}

// Specs returns the specs among the items.
func (r *Reading) Specs() (out []house.Spec) {
	for _, it := range r.Items {
		if s, ok := it.(house.Spec); ok {
			out = append(out, s)
		}
	}
	return out
}

// Rest returns the bad rows of a table as they were written, under its titles. The user
// can mend this table and import it after the good rows. If one row of a spec is bad, all
// rows of that spec are in it. It is empty if nothing is bad or the file was no table.
func (r *Reading) Rest() string {
	if len(r.spoilt) == 0 {
		return ""
	}
	rows := slices.Clone(r.spoilt)
	slices.SortStableFunc(rows, func(a, b grid.Row) int { return a.Number - b.Number })
	lines := []string{r.head}
	for _, row := range rows {
		lines = append(lines, row.Raw)
	}
	return strings.Join(lines, "\n") + "\n"
}

// spoil adds rows that must be mended.
func (r *Reading) spoil(rows ...grid.Row) { r.spoilt = append(r.spoilt, rows...) }

// badRow adds a fault for a row that makes no record.
func (r *Reading) badRow(row grid.Row, err error) {
	r.spoil(row)
	r.bad(row.Number, "", err)
}

// add adds an item. It returns false if the item is invalid or its id appeared before.
func (r *Reading) add(number int, item house.Item) bool {
	ref := item.Ref()
	if err := house.Check(item); err != nil {
		r.bad(number, ref.ID, err)
		return false
	}
	if r.seen[ref] {
		r.bad(number, ref.ID, fmt.Errorf("%s is there twice; keep one, or give one another id", ref))
		return false
	}
	if r.seen == nil {
		r.seen = map[house.Ref]bool{}
	}
	r.seen[ref] = true
	r.Items = append(r.Items, item)
	return true
}

func (r *Reading) bad(number int, name string, err error) {
	message := err.Error()
	var own *house.Error
	if errors.As(err, &own) {
		message = own.Message
	}
	r.Bad = append(r.Bad, Bad{number, name, message})
}

// done sorts the bad records and returns the reading.
func (r *Reading) done() *Reading {
	slices.SortStableFunc(r.Bad, func(a, b Bad) int { return a.Number - b.Number })
	return r
}

// Mode says what to do if some records are bad.
type Mode int

// AllOrNone writes nothing if any record is bad; the other mode writes the good ones.
const (
	AllOrNone Mode = iota
	KeepGood
)

// Result is what an import did.
type Result struct {
	Added, Changed, Same int
	Words                int // of the house's own words, those that are new or changed
	Bad                  []Bad
	Stays                []string       // names of bottles that were marked, so that they stay the ones that are poured
	Changes              []house.Change // in the order written
}

// importTries is how often an import is retried if it conflicts with other writes.
const importTries = 5

// Import writes a reading in one transaction. Records that exist already are replaced,
// and left alone if they would not change. With [AllOrNone] and a bad record it fails
// with [house.ErrInvalid], which names the bad records.
func Import(ctx context.Context, s house.Store, by house.By, r *Reading, mode Mode) (Result, error) {
	if mode == AllOrNone && len(r.Bad) > 0 {
		return Result{Bad: r.Bad}, &house.Error{Kind: house.ErrInvalid, Op: "import",
			Message: "nothing was imported:\n" + r.Faults()}
	}
	for try := 1; ; try++ {
		result, edits, err := plan(ctx, s, r)
		if err != nil || len(edits) == 0 {
			return result, err
		}
		result.Changes, err = s.Write(ctx, by, edits...)
		if err == nil || !errors.Is(err, house.ErrConflict) || try == importTries {
			return result, err
		}
	}
}

// plan compares a reading with the house and returns the edits, which leave what is poured as
// it is unless the reading says otherwise.
func plan(ctx context.Context, s house.Store, r *Reading) (result Result, edits []house.Edit, err error) {
	list, err := s.List(ctx)
	if err != nil {
		return result, nil, err
	}
	there := map[house.Ref]house.Entry{}
	for _, e := range list {
		there[e.Item.Ref()] = e
	}
	result.Bad = r.Bad
	for _, it := range r.Items {
		old, ok := there[it.Ref()]
		_, word := it.(house.Name)
		switch {
		case word && (!ok || !same(old.Item, it)):
			result.Words++
		case word:
			continue
		case !ok:
			result.Added++
		case same(old.Item, it):
			result.Same++
			continue
		default:
			result.Changed++
		}
		edits = append(edits, house.Put(it, old.Version))
	}
	asked := len(edits)
	edits = house.KeepPoured(bottlesOf(list), edits)
	for _, e := range edits[asked:] {
		if b, is := e.Item().(house.Bottle); is {
			result.Stays = append(result.Stays, b.Name)
		}
	}
	return result, edits, nil
}

func bottlesOf(list []house.Entry) (out []house.Kept[house.Bottle]) {
	for _, e := range list {
		if b, ok := e.Item.(house.Bottle); ok {
			out = append(out, house.Kept[house.Bottle]{Item: b, Version: e.Version, Seq: e.Seq})
		}
	}
	return out
}

// same reports whether two items are stored as the same bytes.
func same(a, b house.Item) bool {
	x, errX := house.Encode(a)
	y, errY := house.Encode(b)
	return errX == nil && errY == nil && reflect.DeepEqual(x, y)
}

// Faults lists the faults, one per line.
func (r *Reading) Faults() string {
	lines := make([]string, len(r.Bad))
	for i, b := range r.Bad {
		lines[i] = fmt.Sprintf("%d: %s", b.Number, b.Message)
		if b.Name != "" {
			lines[i] = fmt.Sprintf("%d (%s): %s", b.Number, b.Name, b.Message)
		}
	}
	return strings.Join(lines, "\n")
}

// unreadable returns the error for a file that cannot be read at all.
func unreadable(format string, args ...any) error {
	return &house.Error{Kind: house.ErrInvalid, Op: "import", Message: fmt.Sprintf(format, args...)}
}

// faultText returns the messages of faults without their places, which refer to a text
// that the user did not write.
func faultText(err error) error {
	faults := flavor.DataFaultsOf(err)
	if faults == nil {
		return err
	}
	var out []string
	for _, f := range faults {
		out = append(out, f.Message)
	}
	return errors.New(strings.Join(out, "; "))
}
