package api

import (
	"fmt"
	"net/http"
	"reflect"

	"counterpour/api/metrics"
	"counterpour/api/problem"
	"counterpour/api/wire"

	"github.com/danielgtaylor/huma/v2"
	"github.com/gin-gonic/gin"
)

const (
	mediaJSON     = "application/json"
	openAPI31     = "3.1.0"
	schemasPrefix = "#/components/schemas/"
)

// exampleText is the drink of the examples.
const exampleText = "Halyard Sour\n2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 dashes aromatic bitters\n6 mint leaves\nshake, up"

// exampleServed is a drink of the invented house, poured with a cover.
const exampleServed = "Leeward Almanac\n1 1/2 oz aged rum\n1/2 oz rhum agricole blanc\n3/4 oz lime juice\n1/2 oz allspice dram\n1/2 oz orgeat\n1 dash aromatic bitters\nshake, rocks"

var exampleSpec = map[string]any{"name": "Halyard Sour", "method": "shake", "service": "up", "pours": []any{
	map[string]any{"ingredient": "london-dry-gin", "amount": 2, "unit": "oz"},
	map[string]any{"ingredient": "lemon juice", "amount": 0.75, "unit": "oz"},
	map[string]any{"ingredient": "simple syrup", "amount": 0.5, "unit": "oz"},
}}

var exampleWalkTo = map[string]any{"method": "shake", "service": "up", "pours": []any{
	map[string]any{"ingredient": "blanco tequila", "amount": 2, "unit": "oz"},
	map[string]any{"ingredient": "lime juice", "amount": 0.75, "unit": "oz"},
	map[string]any{"ingredient": "triple sec", "amount": 1, "unit": "oz"},
}}

// examples returns a JSON request body with named examples; huma adds the schema.
func examples(byName map[string]any) *huma.RequestBody {
	m := &huma.MediaType{Examples: map[string]*huma.Example{}}
	for name, value := range byName {
		m.Examples[name] = &huma.Example{Value: value}
	}
	return &huma.RequestBody{Content: map[string]*huma.MediaType{mediaJSON: m}}
}

func requestSchema(op *huma.Operation) *huma.Schema {
	if op.RequestBody == nil || op.RequestBody.Content[mediaJSON] == nil {
		return nil
	}
	return op.RequestBody.Content[mediaJSON].Schema
}

// newConfig returns a huma configuration without the documentation pages and schema links
// that huma would add.
func newConfig(version string) huma.Config {
	schemas := huma.NewMapRegistry(schemasPrefix, huma.DefaultSchemaNamer)
	schemas.RegisterTypeAlias(reflect.TypeFor[huma.ErrorModel](), reflect.TypeFor[problem.Problem]())
	return huma.Config{
		OpenAPI: &huma.OpenAPI{
			OpenAPI: openAPI31,
			Info: &huma.Info{
				Title:   "Counterpour",
				Version: version,
				Description: "Scores drafts of drinks, fixes them, and finds what to pour when a bottle is out. " +
					"Numbers carry their unit in their name. Fields may be added to answers, and are never renamed or removed; " +
					"in requests an unknown field or parameter is an error. A noticeable step, jnd in a field's name, is one just-noticeable difference, " +
					"the least change that people can tell.",
			},
			Components: &huma.Components{Schemas: schemas},
		},
		// The second key is for the suffix of application/problem+json.
		Formats:                      map[string]huma.Format{mediaJSON: wire.Format, "json": wire.Format},
		DefaultFormat:                mediaJSON,
		RejectUnknownQueryParameters: true,
		Transformers:                 []huma.Transformer{problem.Tidier{Schemas: schemas, Request: requestSchema}.Transform},
	}
}

// document completes the OpenAPI document and stores it as JSON.
func (s *Server) document() error {
	doc := s.api.OpenAPI()
	plain := func(id, path, summary, media string) {
		doc.AddOperation(&huma.Operation{OperationID: id, Method: http.MethodGet, Path: path, Summary: summary, Tags: []string{"program"},
			Responses: map[string]*huma.Response{"200": {Description: http.StatusText(http.StatusOK),
				Content: map[string]*huma.MediaType{media: {Schema: &huma.Schema{Type: schemaTypes[media]}}}}}})
	}
	plain("metrics", metrics.Path, "Counts and durations, as Prometheus reads them", "text/plain")
	plain("openapi", openAPIPath, "This document", mediaJSON)
	s.openAnswers()
	text, err := wire.Encode(doc)
	if err != nil {
		return fmt.Errorf("api: the OpenAPI document: %w", err)
	}
	s.openAPI = text
	return nil
}

var schemaTypes = map[string]string{"text/plain": huma.TypeString, mediaJSON: huma.TypeObject}

// openAnswers allows additional fields in the schemas of answers, since later versions
// may add some, and states that lists in them are never null. The schemas of requests
// stay closed.
func (s *Server) openAnswers() {
	doc := s.api.OpenAPI()
	requests := map[string]bool{}
	for _, path := range doc.Paths {
		if path.Post != nil {
			noteRefs(doc.Components.Schemas, requestSchema(path.Post), requests)
		}
	}
	for name, schema := range doc.Components.Schemas.Map() {
		if requests[name] {
			continue
		}
		if closed, isBool := schema.AdditionalProperties.(bool); isBool && !closed {
			schema.AdditionalProperties = nil
		}
		for _, p := range schema.Properties {
			p.Nullable = p.Nullable && p.Type != huma.TypeArray
		}
	}
}

// noteRefs collects into names every schema that s refers to, directly or through others.
func noteRefs(all huma.Registry, s *huma.Schema, names map[string]bool) {
	if s == nil {
		return
	}
	if s.Ref != "" {
		name := s.Ref[len(schemasPrefix):]
		if !names[name] {
			names[name] = true
			noteRefs(all, all.SchemaFromRef(s.Ref), names)
		}
		return
	}
	noteRefs(all, s.Items, names)
	for _, p := range s.Properties {
		noteRefs(all, p, names)
	}
}

func (s *Server) serveOpenAPI(c *gin.Context) {
	c.Header("Cache-Control", aMinute)
	c.Data(http.StatusOK, mediaJSON, s.openAPI)
}
