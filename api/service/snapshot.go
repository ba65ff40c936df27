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
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
)

// Snapshot is a house as it stands at one moment. It is read only, and safe for
// concurrent use.
type Snapshot struct {
	*kitchen.Kitchen // with the house's bottles and makings, and its palate

	About    About
	Settings house.Settings    // how the house wants it said
	Shelf    *house.Shelf      // the catalogue with the house laid over it
	Menu     []Drink           // by name
	Stock    []*flavor.Profile // all that the house keeps, by id
	Out      []*flavor.Profile // what of it has run out
	Tastings []cover.Tasting   // what it has learnt of covers
	Prices   prep.Prices       // empty if the house keeps none, or PricesFault says why
	Faults   []error           // what of the house cannot be used, by record

	PricesFault error // such as two currencies; among the faults too
	Version     records.Version

	upTo     int64               // no record is of a later change
	unlaid   []error             // faults of the bottles and makings, for as long as the shelf is the same
	from     *records.Records    // nil for a house at rest
	right    []template.Labelled // the drinks that are marked as right
	unpoured []error             // faults of the menu
	made     []house.Made
	rights   []house.Right
	named    []house.Name
	coach    func() (*drill.Trainer, error)
	mixed    func() []cover.Mixed // the menu, mixed when somebody first asks
}

// About says whose house it is.
type About struct {
	Name        string
	Description string // one line; may be empty
	Invented    bool   // nobody's bar
}

// named is a house by the name that it gives itself, if it does.
func (a About) named(s house.Settings) About {
	if s.Name != "" {
		a.Name = s.Name
	}
	return a
}

// Drink is a spec of the house.
type Drink struct {
	Slug    string // names it in addresses, and in the store
	Version int64  // of its record; 0 if there is none
	Family  string // id of the one that it reads as; empty if it cannot be weighed
	Spec    flavor.Spec
}

// AtRest returns the snapshot of a house that comes with the program, which no
// store keeps.
func AtRest(k *kitchen.Kitchen, h *data.House) *Snapshot {
	s := &Snapshot{Kitchen: k, About: About{h.Name, h.Description, h.Invented}, Shelf: house.NewShelf(k.Catalogue.Profiles()), Stock: h.Stock, Out: h.Out}
	for i := range h.Specs {
		d := &h.Specs[i]
		s.Menu = append(s.Menu, Drink{Slug: house.IDOf(house.KindSpec, d.Name), Family: d.Family, Spec: d.Spec})
	}
	s.coach, s.mixed = s.newCoach(), s.newMixed(k)
	return s
}

// newMixed mixes the menu once.
func (s *Snapshot) newMixed(k *kitchen.Kitchen) func() []cover.Mixed {
	menu, finder := make([]*flavor.Spec, len(s.Menu)), k.Finder
	for i := range s.Menu {
		menu[i] = &s.Menu[i].Spec
	}
	return sync.OnceValue(func() []cover.Mixed { return finder.MixAll(menu) })
}

// InStock returns what the house keeps and has not run out of.
func (s *Snapshot) InStock() []*flavor.Profile {
	return slices.DeleteFunc(slices.Clone(s.Stock), func(p *flavor.Profile) bool { return slices.Contains(s.Out, p) })
}
