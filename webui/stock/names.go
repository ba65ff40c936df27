package stock

import (
	"errors"
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/webui/behind"
)

// reference is what a bottle is held against.
type reference struct {
	profile *flavor.Profile
	by      string // whose word it is
	made    bool   // the house makes it
}

// referTo finds a bottle's category in the catalogue, or else among what the
// house makes.
func referTo(catalogue, shelf *house.Shelf, id string) (reference, bool) {
	if p, ok := catalogue.ByID(id); ok {
		return reference{p, "the catalogue", false}, true
	}
	p, ok := shelf.ByID(id)
	return reference{p, "its recipe", true}, ok
}

// notUsed says why what was measured in a bottle is not reckoned with, nil if
// it is.
func (r *reference) notUsed(b house.Bottle) error {
	if !r.made {
		_, faults := laidOver(r.profile, b)
		return errors.Join(faults...)
	}
	if b.Measured != (house.Measured{}) {
		return errors.New("the house makes this; what was measured belongs with its recipe, so leave it empty here")
	}
	return nil
}

// standsIn reports whether what the house makes under an id stands in for
// something of the catalogue.
func (p *pages) standsIn(id string) bool {
	_, ok := p.house.Catalogue().ByID(id)
	return ok
}

// maxNearest is how often one form is searched for what was meant; a file of a
// thousand slips is not.
const maxNearest = 40

// nearFinder reads names as the house's shelf has them, and offers the nearest ones
// for a name that it does not know.
type nearFinder struct {
	bar   behind.Bar
	shelf *house.Shelf
	left  int // searches
}

var _ reading.Placer = (*nearFinder)(nil)

func (p *pages) nearFinder() *nearFinder {
	return &nearFinder{bar: p.bar, shelf: p.house.Shelf(), left: maxNearest}
}

// Resolve finds the profile whose id, name or alias is written.
func (f *nearFinder) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
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
func (f *nearFinder) Profiles() []*flavor.Profile { return f.shelf.Profiles() }

// Named finds the profile whose id, name or alias is written, and searches for
// nothing.
func (f *nearFinder) Named(written string) (*flavor.Profile, flavor.MatchHow, bool) {
	p, m, err := f.shelf.Resolve(written)
	return p, m.How, err == nil
}

// Slip finds nothing: what goes into the books is written as it is called.
func (f *nearFinder) Slip(string, func(*flavor.Profile) bool) (*flavor.Profile, bool) {
	return nil, false
}

// Suggest offers the nearest names.
func (f *nearFinder) Suggest(written string, _ func(*flavor.Profile) bool) []string {
	if f.left == 0 {
		return nil
	}
	f.left--
	return f.nearest(written)
}

// nearest asks the bar, which names what a slip may mean, and keeps what the shelf has.
func (f *nearFinder) nearest(written string) []string {
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

// shelfName is the name by which the shelf finds an ingredient again: its own, or
// its id where another has that name.
func shelfName(shelf *house.Shelf, id string) string {
	p, ok := shelf.ByID(id)
	if !ok {
		return id
	}
	if named, _, err := shelf.Resolve(p.Name); err == nil && named.ID == id {
		return p.Name
	}
	return id
}
