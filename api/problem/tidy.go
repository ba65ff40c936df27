package problem

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"counterpour/api/service/fault"
	"counterpour/flavor"

	"github.com/danielgtaylor/huma/v2"
	"github.com/danielgtaylor/huma/v2/validation"
)

// unknownParameter is huma's message for a query parameter that the operation does not
// have.
const unknownParameter = "unknown query parameter"

// Tidier rewrites huma's validation errors as problems: each says how to mend the fault,
// and does not echo a whole body as the value of one field.
type Tidier struct {
	Schemas huma.Registry
	Request func(*huma.Operation) *huma.Schema // schema of an operation's body; nil if it has none
}

// Transform implements huma.Transformer.
func (t Tidier) Transform(ctx huma.Context, _ string, v any) (any, error) {
	found, ok := v.(*huma.ErrorModel)
	if !ok {
		return v, nil
	}
	p := New(found.Status, "")
	for _, e := range found.Errors {
		if e != nil {
			p.Errors = append(p.Errors, t.tidy(ctx.Operation(), e))
		}
	}
	p.Detail = p.summary()
	if len(p.Errors) == 0 {
		p.Detail = found.Detail
	}
	return p, nil
}

func (t Tidier) tidy(op *huma.Operation, e *huma.ErrorDetail) ProblemError {
	out := ProblemError{Location: fault.Quotable(e.Location), Message: e.Message, Value: scalar(e.Value), Suggest: []string{}}
	parent, name := cutLast(e.Location)
	switch e.Message {
	case unknownParameter:
		out.Value = fault.Quotable(name)
		out.Message = mend(name, "parameter", parameters(op))
	case validation.MsgUnexpectedProperty:
		out.Value = fault.Quotable(name)
		out.Message = mend(name, "field", t.fields(op, parent))
	}
	return out
}

func mend(name, what string, known []string) string {
	if len(known) == 0 {
		return fmt.Sprintf("%q is no %s here; leave it out", fault.Quotable(name), what)
	}
	return fmt.Sprintf("%q is no %s here; leave it out, or use %s", fault.Quotable(name), what, flavor.JoinOr(known))
}

// cutLast splits a place at its last dot.
func cutLast(place string) (parent, name string) {
	i := strings.LastIndexByte(place, '.')
	if i < 0 {
		return "", place
	}
	return place[:i], place[i+1:]
}

// scalar returns v if it is a string, a number or a boolean, and nil if it is larger.
func scalar(v any) any {
	switch v := v.(type) {
	case string:
		return fault.Quotable(v)
	case bool, float64, int, int64:
		return v
	}
	return ""
}

// parameters returns the names of an operation's query parameters.
func parameters(op *huma.Operation) []string {
	var out []string
	for _, p := range op.Parameters {
		if p.In == "query" {
			out = append(out, p.Name)
		}
	}
	return out
}

// fields returns the names of the fields of the object at a place in an operation's body,
// or none if the place is unknown.
func (t Tidier) fields(op *huma.Operation, place string) []string {
	s := t.resolve(t.Request(op))
	for i, step := range strings.Split(place, ".") {
		if i == 0 || s == nil {
			continue // the body itself
		}
		name, _, isList := strings.Cut(step, "[")
		s = t.resolve(s.Properties[name])
		if isList && s != nil {
			s = t.resolve(s.Items)
		}
	}
	if s == nil {
		return nil
	}
	return slices.Sorted(maps.Keys(s.Properties))
}

// resolve follows the schema's references.
func (t Tidier) resolve(s *huma.Schema) *huma.Schema {
	for s != nil && s.Ref != "" {
		s = t.Schemas.SchemaFromRef(s.Ref)
	}
	return s
}
