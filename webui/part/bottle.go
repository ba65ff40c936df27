package part

import (
	"strconv"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/webui/behind"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// maxNearest is how many searches for suggestions one form may cause, so that a file with
// a thousand misspellings stays cheap.
const maxNearest = 40

// NearFinder resolves names on the house's shelf, and suggests the nearest names for
// unknown ones.
type NearFinder struct {
	bar   behind.Bar
	shelf *house.Shelf
	left  int // searches left
}

var _ naming.Placer = (*NearFinder)(nil)

// NewNearFinder returns a finder over a bar and the shelf of its house.
func NewNearFinder(bar behind.Bar, shelf *house.Shelf) *NearFinder {
	return &NearFinder{bar: bar, shelf: shelf, left: maxNearest}
}

// Shelf returns the shelf.
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
	return nil, m, &flavor.DataFault{Kind: flavor.ErrUnknown, Location: "ingredient", Value: written, Suggest: near,
		Message: say.It("part.not-known-here", "Written", strconv.Quote(written), "Near", flavor.JoinOr(near))}
}

// Profiles returns everything on the shelf.
func (f *NearFinder) Profiles() []*flavor.Profile { return f.shelf.Profiles() }

// Named finds the profile whose id, name or alias is written, without suggestions.
func (f *NearFinder) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	p, m, err := f.shelf.Resolve(written)
	return p, m.How, err == nil
}

// Slip never finds anything: records use exact names.
func (f *NearFinder) Slip(string, func(*flavor.Profile) bool) (*flavor.Profile, bool) {
	return nil, false
}

// Suggest returns the nearest names.
func (f *NearFinder) Suggest(written string, _ func(*flavor.Profile) bool) []string {
	if f.left == 0 {
		return nil
	}
	f.left--
	return f.nearest(written)
}

// nearest returns the bar's suggestions for a name that are on the shelf.
func (f *NearFinder) nearest(written string) []string {
	p, err := f.bar.Named(written)
	var names, out []string
	if err == nil {
		names = []string{p.Name}
	}
	for _, fault := range flavor.DataFaultsOf(err) {
		names = append(names, fault.Suggest...)
	}
	for _, n := range names {
		if _, _, err := f.shelf.Resolve(n); err == nil {
			out = append(out, n)
		}
	}
	return out
}

// ShelfName returns the name by which the shelf resolves an ingredient: its own, or its
// id if another ingredient has that name.
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

// SizeOf formats the content of a full bottle.
func SizeOf(b *house.Bottle) string {
	if b.SizeG > 0 {
		return words.Joined(words.Plain(b.SizeG), "g")
	}
	return words.Joined(words.Plain(b.SizeML), "mL")
}
