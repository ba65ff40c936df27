package shape

import (
	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/shape/figure"
	"counterpour/flavor"
)

// Draft is a spec in a request: as text or in fields, but not both.
type Draft struct {
	Text *string `json:"text,omitempty" doc:"The spec as a bartender writes it down, one pour a line: an amount, a unit, an ingredient. A first line without an amount is the name, a last one the method and service."`
	Spec *Spec   `json:"spec,omitempty" doc:"The spec in fields"`
}

// Spec is a spec in fields. Requests and answers share it.
type Spec struct {
	Name    string `json:"name" required:"false" maxLength:"200" doc:"Name of the drink"`
	Method  string `json:"method" required:"false" doc:"shake, dry shake, stir, build, blend, throw or swizzle; if left out, the usual one is assumed"`
	Service string `json:"service" required:"false" doc:"up, rocks, crushed, long, hot or neat; if left out, the usual one is assumed"`
	Pours   []Pour `json:"pours" maxItems:"40" nullable:"false" doc:"What goes in, in order"`
	Said
}

// Said is what a spec tells whoever makes the drink. It changes no number, except that
// the temperature of a hot drink counts.
type Said struct {
	HotC    float64  `json:"hot_c,omitempty" minimum:"0" maximum:"100" doc:"°C at which a hot drink is served; left out, as is usual"`
	Glass   string   `json:"glass,omitempty" maxLength:"200"`
	Garnish string   `json:"garnish,omitempty" maxLength:"200"`
	Rim     string   `json:"rim,omitempty" maxLength:"200"`
	Steps   []string `json:"steps,omitempty" maxItems:"40" doc:"Further instructions, in order"`
	// LeaveOff is for answers; a request that repeats one keeps it.
	LeaveOff []string `json:"leave_off,omitempty" maxItems:"80" doc:"In answers: what the drink was written with on it, and is left off for this guest"`
}

// Pour is one pour of a spec.
type Pour struct {
	Ingredient string  `json:"ingredient" required:"false" doc:"Name, alias or id of the ingredient; leave it out if id or name is given"`
	Amount     float64 `json:"amount" doc:"Amount in the unit, above zero"`
	Unit       string  `json:"unit" required:"false" doc:"oz, ml, cl, dash, drop, barspoon, tsp, tbsp, part, splash, pinch, g, sprig, leaf, slice, wedge, piece, cube, top, float, rinse, spritz or scoop; left out, pieces"`
	ID         string  `json:"id" required:"false" doc:"Id of the ingredient; if it is sent beside ingredient, both must mean the same"`
	Name       string  `json:"name" required:"false" doc:"Name of the ingredient; if it is sent beside ingredient, both must mean the same"`
	ML         float64 `json:"ml" required:"false" minimum:"0" doc:"The amount in mL; if it is sent, it must be what amount and unit give"`
	After      bool    `json:"after,omitempty" doc:"Goes in after the rest is mixed, such as a top after the shake"`
}

// ToCentre returns the draft as the centre takes it.
func (d Draft) ToCentre() service.Draft {
	out := service.Draft{Text: d.Text}
	if d.Spec != nil {
		fields := d.Spec.fields()
		out.Fields = &fields
	}
	return out
}

func (s Spec) fields() kitchen.Fields {
	return kitchen.Fields{Name: s.Name, Method: s.Method, Service: s.Service, HotC: s.HotC,
		Glass: s.Glass, Garnish: s.Garnish, Rim: s.Rim, Steps: s.Steps, LeftOff: s.LeaveOff,
		Pours: figure.List(s.Pours, func(p Pour) kitchen.Line { return kitchen.Line(p) })}
}

// fieldsOf returns specs as the service takes them; nil stays nil.
func fieldsOf(specs []Spec) []kitchen.Fields {
	if specs == nil {
		return nil
	}
	return figure.List(specs, Spec.fields)
}

// SpecOf returns a spec in fields. It names each ingredient by its own name, so that the
// spec reads back as the same drink.
func SpecOf(s *flavor.Spec) Spec {
	return Spec{Name: s.Name, Method: string(s.Method), Service: string(s.Service), Said: saidOf(s),
		Pours: figure.List(s.Pours, func(p flavor.Pour) Pour {
			return Pour{Ingredient: p.Called(), Amount: p.Amount, Unit: string(p.Unit), ID: p.Profile.ID, Name: p.Profile.Name, ML: figure.Round(p.ML, figure.ML), After: p.After}
		})}
}

func saidOf(s *flavor.Spec) Said { return Said{s.HotC, s.Glass, s.Garnish, s.Rim, s.Steps, s.LeftOff} }
