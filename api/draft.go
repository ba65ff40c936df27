package api

import (
	"errors"
	"fmt"
	"strings"
	"unicode"

	"counterpour/api/service"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/template"
)

// Draft is a spec as it comes in: as text, or in fields, but not both.
type Draft struct {
	Text *string `json:"text,omitempty" doc:"The spec as a bartender writes it down, one pour a line: an amount, a unit, an ingredient. A first line without an amount is the name, a last one the method and service."`
	Spec *Spec   `json:"spec,omitempty" doc:"The spec in fields"`
}

// Spec is a spec in fields, the same on the way in and on the way out.
type Spec struct {
	Name    string `json:"name" required:"false" maxLength:"200" doc:"Name of the drink"`
	Method  string `json:"method" required:"false" doc:"shake, dry shake, stir, build, blend, throw or swizzle; left out, what is usual is assumed"`
	Service string `json:"service" required:"false" doc:"up, rocks, crushed or long; left out, what is usual is assumed"`
	Pours   []Pour `json:"pours" maxItems:"40" nullable:"false" doc:"What goes in, in order"`
}

// Pour is one pour of a spec.
type Pour struct {
	Ingredient string  `json:"ingredient" doc:"Name, alias or id of the ingredient"`
	Amount     float64 `json:"amount" doc:"Amount in the unit, above zero"`
	Unit       string  `json:"unit" required:"false" doc:"oz, ml, cl, dash, drop, barspoon, tsp, tbsp, part, splash, pinch, g, sprig, leaf, slice, wedge, piece, cube or top; left out, pieces"`
}

// read reads a draft. Faults of a text name the line; those of fields the place
// under "spec".
func read(k *service.Kitchen, d Draft) (flavor.Spec, error) {
	spec, err := readEither(k, d)
	if err != nil {
		return flavor.Spec{}, err
	}
	var total float64
	for _, v := range template.EquivalentsOf(&spec) {
		total += v
	}
	if !(total > 0) {
		return flavor.Spec{}, invalid("", "", "the drink has no strength, sweetness, acid, bitterness or length to weigh; add a pour that has")
	}
	return spec, nil
}

func readEither(k *service.Kitchen, d Draft) (flavor.Spec, error) {
	switch {
	case d.Text != nil && d.Spec != nil:
		return flavor.Spec{}, invalid("", "", "text and spec are both given; send one of them")
	case d.Text != nil:
		return k.Read(*d.Text)
	case d.Spec != nil:
		return readFields(k, d.Spec)
	}
	return flavor.Spec{}, invalid("", "", "there is no draft; send it as text, or in fields as spec")
}

// readFields makes a spec of fields, with the checks and the assumptions of a
// text.
func readFields(k *service.Kitchen, in *Spec) (flavor.Spec, error) {
	var faults flavor.Faults
	out := flavor.Spec{Name: strings.Join(strings.Fields(in.Name), " ")}
	if strings.ContainsFunc(out.Name, unicode.IsControl) {
		faults = append(faults, invalid("spec.name", in.Name, "the name holds a control character; delete it"))
	}
	if len(in.Pours) == 0 {
		faults = append(faults, invalid("spec.pours", "", "there is no pour here; give at least one, such as 2 oz London dry gin"))
	}
	if len(in.Pours) > measure.MaxPours {
		return flavor.Spec{}, invalid("spec.pours", "", "these are more than %d pours; leave some out", measure.MaxPours)
	}
	for i, p := range in.Pours {
		pour, err := measure.ResolvePour(p.Amount, p.Unit, p.Ingredient, fmt.Sprintf("spec.pours[%d]", i), k.Index)
		switch f := faultsOf(err); {
		case f != nil:
			faults = append(faults, f...)
		case err != nil:
			return flavor.Spec{}, err
		default:
			out.Pours = append(out.Pours, pour)
		}
	}
	var ok bool
	if out.Method, ok = measure.ParseMethod(in.Method); !ok && strings.TrimSpace(in.Method) != "" {
		faults = append(faults, unknownWord("spec.method", in.Method, "method", flavor.Methods()))
	}
	if out.Service, ok = measure.ParseService(in.Service); !ok && strings.TrimSpace(in.Service) != "" {
		faults = append(faults, unknownWord("spec.service", in.Service, "service", flavor.Services()))
	}
	if len(faults) > 0 {
		return flavor.Spec{}, faults
	}
	return measure.Assume(out), nil
}

// specOf returns a spec in fields. The names of its ingredients are their own,
// so that it reads back as the same drink.
func specOf(s *flavor.Spec) Spec {
	return Spec{Name: s.Name, Method: string(s.Method), Service: string(s.Service),
		Pours: list(s.Pours, func(p flavor.Pour) Pour {
			return Pour{Ingredient: p.Profile.Name, Amount: p.Amount, Unit: string(p.Unit)}
		})}
}

func invalid(location, value, format string, args ...any) *flavor.Fault {
	return &flavor.Fault{Kind: flavor.ErrInvalid, Location: location, Value: value, Message: fmt.Sprintf(format, args...)}
}

func unknownWord[T ~string](location, word, what string, known []T) *flavor.Fault {
	f := invalid(location, word, "%q is no %s; use %s", capText(word), what, orList(known))
	f.Suggest = measure.NearestMethods(word)
	return f
}

// orList joins words as "a, b or c".
func orList[T ~string](words []T) string {
	var b strings.Builder
	for i, w := range words {
		switch {
		case i > 0 && i == len(words)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(string(w))
	}
	return b.String()
}

// inRange returns a fault if n is not from low to high.
func inRange(location string, n, low, high int) *flavor.Fault {
	if n < low || n > high {
		return invalid(location, fmt.Sprint(n), "%d is out of range; give %d to %d", n, low, high)
	}
	return nil
}

// avoided reads the words for what a guest must not have.
func avoided(words []string) ([]flavor.Allergen, error) {
	var out []flavor.Allergen
	var faults flavor.Faults
	for i, w := range words {
		a, err := flavor.ParseAllergen(w)
		if err != nil {
			faults = append(faults, invalid(fmt.Sprintf("avoid[%d]", i), w, "%s", err))
			continue
		}
		out = append(out, a)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}

// isFault reports whether an error is the user's to mend.
func isFault(err error) bool {
	return errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown)
}
