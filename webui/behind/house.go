package behind

import (
	"context"

	"counterpour/api/service"
	"counterpour/api/service/marking"
	"counterpour/api/service/specbook"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/template"
)

// House is the bar whose menu, stock and outs the pages show. The caller may change the
// slices that it returns, but not the profiles.
type House interface {
	// About says whose house it is, in one line; it may be empty.
	About() string
	// Settings returns the name, units, currency and other conventions of the house.
	Settings() house.Settings
	// Menu returns every drink of the house, in the order of its menu.
	Menu(ctx context.Context) ([]HouseSpec, error)
	// Find returns the drinks of the menu that match a query, in the order of the menu.
	Find(ctx context.Context, q SpecQuery) ([]HouseSpec, error)
	// Stock returns everything that the house keeps, also what has run out, in the order
	// of its shelves.
	Stock(ctx context.Context) ([]*flavor.Profile, error)
	// Inventory returns the bottles of the house, sorted by id.
	Inventory() []house.Bottle
	// RunOut returns the ids of what has run out, in any order.
	RunOut(ctx context.Context) ([]string, error)
	// Mark writes what ran out or is back, and how covers were received: all of it or
	// nothing. Marking what is marked already changes nothing. Unknown ingredients are
	// faults.
	Mark(ctx context.Context, by house.By, r marking.Request) error
	// Names lists the house's own words in alphabetical order.
	Names() []service.Named
	// Name stores what a word means in this house, or forgets it. It is a fault if the
	// word means another ingredient already, or the ingredient is unknown.
	Name(ctx context.Context, by house.By, r service.NameRequest) error
	// Prices returns prices per millilitre; empty if no bottle has a price. It fails with
	// [house.ErrInvalid] if the prices cannot be added up.
	Prices(ctx context.Context) (prep.Prices, error)
	// Batch plans a batch of a drink of the menu.
	Batch(ctx context.Context, r service.BatchRequest) (*service.BatchAnswer, error)
	// Tastings returns how covers poured in this house were received.
	Tastings(ctx context.Context) ([]cover.Tasting, error)
	// Changes returns a channel that receives a value after the outs or the menu may have
	// changed. Several changes may be combined into one value. The channel closes when
	// ctx ends or the house closes.
	Changes(ctx context.Context) (<-chan struct{}, error)
	// Fresh returns why what is shown may be out of date, such as a store that does not
	// answer; nil if it is not.
	Fresh() error
	// Store returns the house's store. After a write through it, all methods of House and
	// Bar include the write.
	Store() house.Store
	// Catalogue returns the shelf without the house's bottles and makings.
	Catalogue() *house.Shelf
	// Shelf returns the catalogue, overlaid with the house's bottles and makings.
	Shelf() *house.Shelf
	// Usual lists up to n ingredients that most proven drinks pour, the most common
	// first.
	Usual(n int) []*flavor.Profile
	// Starters suggests up to n proven drinks for a first menu that the stock can pour.
	Starters(n int) []template.Labelled
}

// SpecsOf returns the specs of a house.
func SpecsOf(h House) *specbook.Editor {
	return &specbook.Editor{Store: h.Store(), Shelf: h.Shelf()}
}
