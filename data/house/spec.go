package house

import (
	"errors"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// Spec is a drink of the house, by the ids of its ingredients. Order, amounts
// and units are as they were written.
type Spec struct {
	ID      string         `json:"id"`
	Name    string         `json:"name"`
	Method  flavor.Method  `json:"method"`
	Service flavor.Service `json:"service"`
	Pours   []Pour         `json:"pours"`
	Note    string         `json:"note,omitempty"`
}

// Ref returns the name of the record.
func (s Spec) Ref() Ref { return Ref{KindSpec, s.ID} }

func (s Spec) check() error {
	return checks(
		checkLine("name", s.Name, true),
		oneOf("method", s.Method, flavor.Methods()),
		oneOf("service", s.Service, flavor.Services()),
		checkPours("pours", s.Pours, ""),
		checkText("note", s.Note, MaxNote),
	)
}

func (s Spec) clean() Item {
	s.Pours, s.Name, s.Note = slices.Clone(s.Pours), tidy(s.Name), lines(s.Note)
	return s
}
func (s Spec) withID(id string) Item { s.ID = id; return s }
func (s Spec) links() []Ref          { return nil }

func checkPours(field string, pours []Pour, self string) error {
	if len(pours) == 0 || len(pours) > measure.MaxPours {
		return invalid(field, len(pours), "%s must hold 1 to %d ingredients", field, measure.MaxPours)
	}
	units := measure.Units()
	for i, p := range pours {
		var fault *flavor.Fault
		if self != "" && p.Ingredient == self {
			fault = invalid("ingredient", self, "%q cannot be made of itself", self)
			fault.Location = flavor.At(field, i)
			return fault
		}
		err := checks(CheckID(p.Ingredient), oneOf("unit", p.Unit, units),
			checkRange("amount", p.Amount, measure.MinAmount, measure.MaxPourML))
		if errors.As(err, &fault) {
			fault.Location = flavor.At(field, i)
			return fault
		}
	}
	return nil
}

// FromSpec turns a spec that was read into one that can be kept. The id is
// made of the name if it is empty.
func FromSpec(id string, s flavor.Spec) Spec {
	if id == "" {
		id = IDOf(KindSpec, s.Name)
	}
	out := Spec{ID: id, Name: s.Name, Method: s.Method, Service: s.Service}
	for _, p := range s.Pours {
		pour := Pour{Amount: p.Amount, Unit: p.Unit}
		if p.Profile != nil {
			pour.Ingredient = p.Profile.ID
		}
		out.Pours = append(out.Pours, pour)
	}
	return out
}

// Flavor gives the spec its profiles and its millilitres. It fails with
// [ErrInvalid] if the shelf does not know an ingredient or cannot pour it in
// its unit.
func (s Spec) Flavor(shelf *Shelf) (flavor.Spec, error) {
	out := flavor.Spec{Name: s.Name, Method: s.Method, Service: s.Service}
	for i, p := range s.Pours {
		profile, ml, err := shelf.Pour(p)
		if err != nil {
			return flavor.Spec{}, fail(ErrInvalid, "mix", s.Ref().String(), "pours[%d]: %s", i, err)
		}
		out.Pours = append(out.Pours, flavor.Pour{Profile: profile, Amount: p.Amount, Unit: p.Unit, ML: ml,
			Match: flavor.Match{Asked: profile.Name, How: flavor.MatchExact}})
	}
	return out, nil
}
