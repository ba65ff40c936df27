package behind

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/specbook"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

// House is the bar whose menu, stock and outs the pages show. What it returns is
// the caller's, but profiles are shared and read only.
type House interface {
	// About says whose house it is, in one line; it may be empty.
	About() string
	// Settings is how the house calls itself, and what it measures, pays and counts in.
	Settings() house.Settings
	// Menu returns every drink of the house, in the order of its menu.
	Menu(ctx context.Context) ([]HouseSpec, error)
	// Find returns the drinks of the menu that a query lets through, in order.
	Find(ctx context.Context, q SpecQuery) ([]HouseSpec, error)
	// Stock returns all that the house keeps, run dry or not, in the order of
	// its shelves.
	Stock(ctx context.Context) ([]*flavor.Profile, error)
	// RunOut returns the ids of what has run dry, in any order.
	RunOut(ctx context.Context) ([]string, error)
	// Mark notes what ran dry or is back, and how covers were received: all of it
	// or nothing. To mark what is marked already changes nothing; what the house
	// does not know is a fault.
	Mark(ctx context.Context, by house.By, r service.MarkRequest) error
	// Names lists the house's own words, by what is written.
	Names() []service.Named
	// Name keeps what words mean in this house, or forgets it. Words that mean
	// another ingredient already, and a kind that is not known, are a fault.
	Name(ctx context.Context, by house.By, r service.NameRequest) error
	// Prices returns what a millilitre of everything costs; empty if no bottle has
	// a price. It fails with [house.ErrInvalid] if they cannot be added up.
	Prices(ctx context.Context) (prep.Prices, error)
	// Batch plans a drink of the menu made ahead.
	Batch(ctx context.Context, r service.BatchRequest) (*service.BatchAnswer, error)
	// Tastings returns how covers were received that were poured here.
	Tastings(ctx context.Context) ([]cover.Tasting, error)
	// Changes tells when the outs or the menu may have changed, from now on.
	// Several changes may come as one. The channel closes once ctx ends or the
	// house closes.
	Changes(ctx context.Context) (<-chan struct{}, error)
	// Fresh returns why what is shown may be old: the store does not answer; nil if
	// it is as the store has it.
	Fresh() error
	// Store keeps the house's records. What it has acknowledged, every method
	// here and the bar's reckoning know of at once.
	Store() house.Store
	// Catalogue is what is known without the house.
	Catalogue() *house.Shelf
	// Shelf is the catalogue with the house's bottles and makings laid over it.
	Shelf() *house.Shelf
	// Usual lists what most proven drinks pour, the commonest first, at most n.
	Usual(n int) []*flavor.Profile
	// Starters lists proven drinks that the stock can pour, for a menu to begin
	// with, at most n.
	Starters(n int) []template.Labelled
}

// SpecsOf is the specs of a house, to open, keep and change.
func SpecsOf(h House) *specbook.Book {
	return &specbook.Book{Store: h.Store(), Shelf: h.Shelf()}
}
