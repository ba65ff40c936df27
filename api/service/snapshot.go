package service

import (
	"slices"
	"sync"

	"counterpour/api/service/kitchen"
	"counterpour/api/service/records"
	"counterpour/data"
	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/instead"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
)

// Snapshot is the state of a house at one moment. It is immutable and safe for concurrent
// use.
type Snapshot struct {
	*kitchen.Kitchen // with the house's bottles, makings and palate

	About    About
	Settings house.Settings    // how the house wants things written
	Shelf    *house.Shelf      // the catalogue, overlaid with the house's bottles and makings
	Menu     []Drink           // sorted by name
	Stock    []*flavor.Profile // everything that the house keeps, sorted by id
	Out      []*flavor.Profile // the part of Stock that has run out
	Tastings []cover.Tasting   // what was learnt from tasted covers
	Prices   prep.Prices       // empty if the house has none, or if PricesFault is set
	Faults   []error           // the records that cannot be used

	PricesFault error // such as two currencies; also in Faults
	Version     records.Version

	upTo     int64               // sequence number of the last change that is included
	unlaid   []error             // faults of bottles and makings, kept while the shelf is the same
	from     *records.Records    // nil for a built-in house without a store
	right    []template.Labelled // the drinks marked as right
	unpoured []error             // faults of the menu
	made     []house.Made
	rights   []house.Right
	named    []house.Name
	school   func() (*drill.Trainer, error) // over the proven drinks
	coach    func() (*drill.Trainer, error) // and over the menu
	mixed    func() *instead.Menu           // the mixed menu, computed on first use
}

// About says whose house it is.
type About struct {
	Name        string
	Description string // one line; may be empty
	Invented    bool   // a demo, not a real bar
}

// named returns a with the name from the settings, if they have one.
func (a About) named(s house.Settings) About {
	if s.Name != "" {
		a.Name = s.Name
	}
	return a
}

// Drink is a spec of the house.
type Drink struct {
	Slug    string // id in addresses and in the store
	Version int64  // of its record; 0 if it has none
	Family  string // id of its most probable family; empty if it cannot be weighed
	Spec    flavor.Spec
}

// AtRest returns the snapshot of a built-in house, which has no store.
func AtRest(k *kitchen.Kitchen, h *data.House) *Snapshot {
	s := &Snapshot{Kitchen: k, About: About{h.Name, h.Description, h.Invented}, Shelf: house.NewShelf(k.Catalogue.Profiles()), Stock: h.Stock, Out: h.Out}
	for i := range h.Specs {
		d := &h.Specs[i]
		s.Menu = append(s.Menu, Drink{Slug: house.IDOf(house.KindSpec, d.Name), Family: d.Family, Spec: d.Spec})
	}
	s.school = s.newSchool()
	s.coach, s.mixed = s.newCoach(), s.newMixed(k)
	return s
}

// newMixed returns a function that mixes the menu on its first call.
func (s *Snapshot) newMixed(k *kitchen.Kitchen) func() *instead.Menu {
	menu := make([]*flavor.Spec, len(s.Menu))
	for i := range s.Menu {
		menu[i] = &s.Menu[i].Spec
	}
	return sync.OnceValue(func() *instead.Menu { return instead.Mix(k.Mixer, k.Catalogue.Space(), menu) })
}

// InStock returns the part of the stock that has not run out.
func (s *Snapshot) InStock() []*flavor.Profile {
	return slices.DeleteFunc(slices.Clone(s.Stock), func(p *flavor.Profile) bool { return slices.Contains(s.Out, p) })
}
