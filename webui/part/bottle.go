package part

import (
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/naming"
	"counterpour/webui/behind"
	"counterpour/webui/words"
)

// maxNearest is how often one form is searched for what was meant; a file of a
// thousand slips is not.
const maxNearest = 40

// NearFinder reads names as the house's shelf has them, and offers the nearest ones
// for a name that it does not know.
type NearFinder struct {
	bar   behind.Bar
	shelf *house.Shelf
	left  int // searches
}

var _ naming.Placer = (*NearFinder)(nil)

// NewNearFinder returns a finder over a bar and the shelf of its house.
func NewNearFinder(bar behind.Bar, shelf *house.Shelf) *NearFinder {
	return &NearFinder{bar: bar, shelf: shelf, left: maxNearest}
}

// Shelf is what names are read as.
func (f *NearFinder) Shelf() *house.Shelf { return f.shelf }

// Resolve finds the profile whose id, name or alias is written.
func (f *NearFinder) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	p, m, err := f.shelf.Resolve(written)
	if err == nil || f.left == 0 || written == "" {
		return p, m, err
	}
	f.left--
	near := f.nearest(written)
	if len(near) == 0 {
		return nil, m, err
	}
	return nil, m, &flavor.Fault{Kind: flavor.ErrUnknown, Location: "ingredient", Value: written, Suggest: near,
		Message: fmt.Sprintf("%q is not an ingredient known here; did you mean %s?", written, flavor.JoinOr(near))}
}

// Profiles returns everything on the shelf.
func (f *NearFinder) Profiles() []*flavor.Profile { return f.shelf.Profiles() }

// Named finds the profile whose id, name or alias is written, and searches for
// nothing.
func (f *NearFinder) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	p, m, err := f.shelf.Resolve(written)
	return p, m.How, err == nil
}

// Slip finds nothing: what goes into the books is written as it is called.
func (f *NearFinder) Slip(string, func(*flavor.Profile) bool) (*flavor.Profile, bool) {
	return nil, false
}

// Suggest offers the nearest names.
func (f *NearFinder) Suggest(written string, _ func(*flavor.Profile) bool) []string {
	if f.left == 0 {
		return nil
	}
	f.left--
	return f.nearest(written)
}

// nearest asks the bar, which names what a slip may mean, and keeps what the shelf has.
func (f *NearFinder) nearest(written string) []string {
	p, err := f.bar.Named(written)
	var names, out []string
	if err == nil {
		names = []string{p.Name}
	}
	for _, fault := range flavor.FaultsOf(err) {
		names = append(names, fault.Suggest...)
	}
	for _, n := range names {
		if _, _, err := f.shelf.Resolve(n); err == nil {
			out = append(out, n)
		}
	}
	return out
}

// ShelfName is the name by which the shelf finds an ingredient again: its own, or
// its id where another has that name.
func ShelfName(shelf *house.Shelf, id string) string {
	p, ok := shelf.ByID(id)
	if !ok {
		return id
	}
	if named, _, err := shelf.Resolve(p.Name); err == nil && named.ID == id {
		return p.Name
	}
	return id
}

// SizeOf says what a full bottle holds.
func SizeOf(b *house.Bottle) string {
	if b.SizeG > 0 {
		return words.Joined(words.Plain(b.SizeG), "g")
	}
	return words.Joined(words.Plain(b.SizeML), "mL")
}
