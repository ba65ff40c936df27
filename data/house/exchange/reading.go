package exchange

import (
	"context"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
)

// MaxBytes bounds what is read; a house is far smaller.
const MaxBytes = 64 << 20

// Bad is a record that could not be read.
type Bad struct {
	Number  int    // of the row, the record or the line, from 1
	Name    string // of the record, as far as it is known
	Message string // what is wrong and how to mend it
}

// Reading is what was found in a file.
type Reading struct {
	Items []house.Item // in the order of the file
	Bad   []Bad        // by number
	Notes []string     // what was assumed

	seen   map[house.Ref]bool
	head   string     // of a table: the row that names its columns
	spoilt []tableRow // of a table: the rows to be mended
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

// Rest returns the rows of a table that hold what is bad, as they stood and
// under the names of its columns: a table of its own, to be mended and read
// again once the good rows are in. Of a spec with a bad row it holds every row.
// It is empty if nothing is bad, or if what was read was no table.
func (r *Reading) Rest() string {
	if len(r.spoilt) == 0 {
		return ""
	}
	rows := slices.Clone(r.spoilt)
	slices.SortStableFunc(rows, func(a, b tableRow) int { return a.number - b.number })
	lines := []string{r.head}
	for _, row := range rows {
		lines = append(lines, row.raw)
	}
	return strings.Join(lines, "\n") + "\n"
}

// spoil notes rows that have to be mended.
func (r *Reading) spoil(rows ...tableRow) { r.spoilt = append(r.spoilt, rows...) }

// badRow is bad for a row that makes no record.
func (r *Reading) badRow(row tableRow, err error) {
	r.spoil(row)
	r.bad(row.number, "", err)
}

// add takes an item, and is false if it is not sound or is there twice.
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

// done puts the bad ones in order.
func (r *Reading) done() *Reading {
	slices.SortStableFunc(r.Bad, func(a, b Bad) int { return a.Number - b.Number })
	return r
}

// Mode says what to do when some records are bad.
type Mode int

// Write all or nothing, or keep the good ones.
const (
	AllOrNone Mode = iota
	KeepGood
)

// Result says what an import did.
type Result struct {
	Added, Changed, Same int
	Words                int // of the house's own words, those that are new or mean another thing
	Bad                  []Bad
	Changes              []house.Change // what was written, in order
}

// importTries is how often an import is made again when others write meanwhile.
const importTries = 5

// Import writes what was read, as one write. Records that are there already
// are replaced; those that would not change are left alone. With [AllOrNone]
// and a bad record it fails with [house.ErrInvalid], which names the numbers.
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

// plan compares the reading with the house.
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
	return result, edits, nil
}

// same compares two items as they are stored.
func same(a, b house.Item) bool {
	x, errX := house.Encode(a)
	y, errY := house.Encode(b)
	return errX == nil && errY == nil && reflect.DeepEqual(x, y)
}

// Faults lists what is bad, one a line.
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

// unreadable says that a file as a whole cannot be read.
func unreadable(format string, args ...any) error {
	return &house.Error{Kind: house.ErrInvalid, Op: "import", Message: fmt.Sprintf(format, args...)}
}

// faultText is the text of faults, without where they are in a text that the
// user did not write.
func faultText(err error) error {
	faults := flavor.FaultsOf(err)
	if faults == nil {
		return err
	}
	var out []string
	for _, f := range faults {
		out = append(out, f.Message)
	}
	return errors.New(strings.Join(out, "; "))
}
