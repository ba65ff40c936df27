package stock

import (
	"errors"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/say"
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
		return reference{p, say.It("stock.the-catalogue"), false}, true
	}
	p, ok := shelf.ByID(id)
	return reference{p, say.It("stock.its-recipe"), true}, ok
}

// notUsed says why what was measured in a bottle is not reckoned with, nil if
// it is.
func (r *reference) notUsed(b house.Bottle) error {
	if !r.made {
		_, faults := laidOver(r.profile, b)
		return errors.Join(faults...)
	}
	if b.Measured != (house.Measured{}) {
		return errors.New(say.It("stock.house-makes-this"))
	}
	return nil
}

// standsIn reports whether what the house makes under an id stands in for
// something of the catalogue.
func (p *pages) standsIn(id string) bool {
	_, ok := p.house.Catalogue().ByID(id)
	return ok
}
