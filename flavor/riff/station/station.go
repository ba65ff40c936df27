package station

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/mix"
	"counterpour/flavor/riff/precedent"
	"counterpour/flavor/riff/wish"
	"counterpour/flavor/sense"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Station is what every request works with. It is safe for concurrent use.
type Station struct {
	Mixer      *mix.Mixer
	Judge      *balance.Judge
	Set        *weigh.Set
	Space      *sense.Space
	book       *precedent.Book
	serves     []template.Labelled
	practice   *precedent.Practice
	companions *precedent.Companions
	carriers   *wish.Carriers
	customs    *flavor.Customs
}

// Lore is what a station knows of the trade beside the families of drinks.
type Lore struct {
	Proven   []template.Labelled // what reads like a drink; may be none
	Serves   []template.Labelled // how bars pour what proven drinks hardly have a place for, nameless; may be none
	Carriers *wish.Carriers      // what a bartender meets a wish with; may be nil
	Customs  *flavor.Customs     // what the trade pours in place of what; may be nil
}

// New returns a station that judges by a set of families and tells glasses apart in a
// sensory space.
func New(mixer *mix.Mixer, judge *balance.Judge, set *weigh.Set, space *sense.Space, lore Lore) (*Station, error) {
	b, err := precedent.NewBook(lore.Proven)
	if err != nil {
		return nil, err
	}
	poured := slices.Concat(lore.Proven, lore.Serves)
	return &Station{Mixer: mixer, Judge: judge, Set: set, Space: space, book: b, serves: lore.Serves, carriers: lore.Carriers, customs: lore.Customs,
		practice: precedent.NewPractice(poured), companions: precedent.NewCompanions(poured, space)}, nil
}

// Serves returns how bars pour what proven drinks hardly have a place for; they are not to
// be changed.
func (s *Station) Serves() []template.Labelled { return s.serves }

// Proven returns the proven drinks; they are not to be changed.
func (s *Station) Proven() []template.Labelled { return s.book.Proven() }

// MostPoured is the most of an ingredient, in mL, that proven drinks pour, see
// [precedent.Practice.MostML].
func (s *Station) MostPoured(p *flavor.Profile) float64 { return s.practice.MostML(p) }

// Limits of a request.
const (
	MaxLimit     = 100
	DefaultLimit = 10
	MaxPours     = 16
	// LeastDistance is the least distance between any two drinks of a list, and
	// between a riff and the drink it came from, in just-noticeable differences.
	LeastDistance = 3.0
	// LeastWished is the same where a wish for more or less says what to change: one
	// amaro or another is what was asked to choose from.
	LeastWished = 1.2
)

// Kind is the move that makes a drink.
type Kind string

// Refused counts what was left out and why.
type Refused struct {
	ByGuest  int // ingredients that the guest or a wish rules out
	Off      int // drafts that no amounts bring into balance
	Unfit    int // balanced ones that are not poured, mixed or served as the trade does
	ByLimit  int // balanced ones that are too strong, too weak or too dear
	Unmet    int // balanced ones that do not meet every wish
	TooAlike int // good ones that are too near to the drink or to a better riff
}

// CheckSpec fails with a fault if a drink cannot be worked on.
func CheckSpec(s *flavor.Spec) error {
	switch {
	case s == nil || len(s.Pours) == 0:
		return flavor.Invalid("spec", "", "a riff needs a drink to start from; write at least one pour")
	case len(s.Pours) > MaxPours:
		return flavor.OutOfRange("spec", len(s.Pours), 1, MaxPours, "this drink has too many pours for a riff")
	}
	for i := range s.Pours {
		if s.Pours[i].Profile == nil || !(s.Pours[i].ML > 0) {
			return flavor.Invalid(flavor.At("pours", i), "", "has no ingredient or no amount; write both")
		}
	}
	return nil
}
