package house

import (
	"errors"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/dressing"
)

// Spec is a drink of the house; it names ingredients by id. Order, amounts and units are
// as written.
type Spec struct {
	ID      string         `json:"id"`
	Name    string         `json:"name"`
	Method  flavor.Method  `json:"method"`
	Service flavor.Service `json:"service"`
	Pours   []Pour         `json:"pours"`
	HotC    float64        `json:"hot_c,omitempty"` // temperature of a hot drink, in °C; 0: not stated
	Glass   string         `json:"glass,omitempty"`
	Garnish string         `json:"garnish,omitempty"`
	Rim     string         `json:"rim,omitempty"`
	Steps   []string       `json:"steps,omitempty"`
	Note    string         `json:"note,omitempty"`
}

// Limits of the fields of a spec beside its pours.
const (
	maxSteps = 40
	mostHotC = 100.0
)

// Ref returns the kind and id of the record.
func (s Spec) Ref() Ref { return Ref{KindSpec, s.ID} }

func (s Spec) check() error {
	return checks(
		checkLine("name", s.Name, true),
		oneOf("method", s.Method, flavor.Methods()),
		oneOf("service", s.Service, flavor.Services()),
		checkPours("pours", s.Pours, ""),
		checkRange("hot_c", s.HotC, 0, mostHotC),
		checkLine("glass", s.Glass, false),
		checkLine("garnish", s.Garnish, false),
		checkLine("rim", s.Rim, false),
		checkSteps(s.Steps),
		checkText("note", s.Note, MaxNote),
	)
}

func (s Spec) clean() Item {
	s.Pours, s.Name, s.Note = slices.Clone(s.Pours), tidy(s.Name), lines(s.Note)
	s.Glass, s.Garnish, s.Rim = tidy(s.Glass), tidy(s.Garnish), tidy(s.Rim)
	var steps []string
	for _, step := range s.Steps {
		if step = tidy(step); step != "" {
			steps = append(steps, step)
		}
	}
	s.Steps = steps
	return s
}

func checkSteps(steps []string) error {
	if len(steps) > maxSteps {
		return invalid("steps", len(steps), "steps must be at most %d", maxSteps)
	}
	for _, step := range steps {
		if err := checks(checkText("steps", step, MaxNote)); err != nil {
			return err
		}
	}
	return nil
}
func (s Spec) withID(id string) Item { s.ID = id; return s }
func (s Spec) links() []Ref          { return nil }

func checkPours(field string, pours []Pour, self string) error {
	if len(pours) == 0 || len(pours) > draft.MaxPours {
		return invalid(field, len(pours), "%s must hold 1 to %d ingredients", field, draft.MaxPours)
	}
	units := measure.Units()
	for i, p := range pours {
		var fault *flavor.DataFault
		if self != "" && p.Ingredient == self {
			fault = invalid("ingredient", self, "%q cannot be made of itself", self)
			fault.Location = flavor.At(field, i)
			return fault
		}
		err := checks(CheckID(p.Ingredient), oneOf("unit", p.Unit, units),
			checkRange("amount", p.Amount, measure.MinAmount, measure.MaxPourML))
		if err == nil && !p.Heat.Valid() {
			err = invalid("heat", string(p.Heat), "%q is neither hot nor cold; leave it out", string(p.Heat))
		}
		if errors.As(err, &fault) {
			fault.Location = flavor.At(field, i)
			return fault
		}
	}
	return nil
}

// FromSpec converts a spec to the form that is stored. An empty id is derived from the
// name.
func FromSpec(id string, s flavor.Spec) Spec {
	if id == "" {
		id = IDOf(KindSpec, s.Name)
	}
	out := Spec{ID: id, Name: s.Name, Method: s.Method, Service: s.Service, HotC: s.HotC,
		Glass: s.Glass, Garnish: s.Garnish, Rim: s.Rim, Steps: slices.Clone(s.Steps)}
	for _, p := range s.Pours {
		pour := Pour{Amount: p.Amount, Unit: p.Unit, After: p.After && !p.Unit.After(), Heat: p.Heat}
		if p.Profile != nil {
			pour.Ingredient = p.Profile.ID
		}
		out.Pours = append(out.Pours, pour)
	}
	return out
}

// Flavor converts a stored spec back, with profiles and millilitres from the shelf. It
// fails with [ErrInvalid] if the shelf does not have an ingredient or it is not poured in
// that unit.
func (s Spec) Flavor(shelf *Shelf) (flavor.Spec, error) {
	out := flavor.Spec{Name: s.Name, Method: s.Method, Service: s.Service, HotC: s.HotC,
		Glass: s.Glass, Garnish: s.Garnish, Rim: s.Rim, Steps: slices.Clone(s.Steps)}
	for i, p := range s.Pours {
		profile, ml, err := shelf.Pour(p)
		if err != nil {
			return flavor.Spec{}, fail(ErrInvalid, "mix", s.Ref().String(), "pours[%d]: %s", i, err)
		}
		out.Pours = append(out.Pours, flavor.Pour{Profile: profile, Amount: p.Amount, Unit: p.Unit, ML: ml, After: p.After || p.Unit.After(), Heat: p.Heat,
			Match: flavor.Match{Asked: profile.Name, How: flavor.MatchExact}})
	}
	if err := dressing.Dress(&out, shelf); err != nil {
		return flavor.Spec{}, fail(ErrInvalid, "mix", s.Ref().String(), "%s", err)
	}
	return out, nil
}
