package api

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"counterpour/api/metrics"
	"counterpour/api/problem"

	"github.com/danielgtaylor/huma/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// document is as much of an OpenAPI document as the tests read.
type document struct {
	OpenAPI string
	Paths   map[string]map[string]struct {
		OperationID string
		Parameters  []struct{ Name, In string }
		RequestBody struct {
			Content map[string]struct {
				Examples map[string]struct{ Value json.RawMessage }
			}
		}
		Responses map[string]struct {
			Content map[string]struct{ Schema map[string]any }
		}
	}
	Components struct{ Schemas map[string]map[string]any }
}

func documentOf(t *testing.T, h http.Handler) (d document, text string) {
	t.Helper()
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest("GET", "/openapi.json", nil))
	require.Equal(t, http.StatusOK, w.Code)
	require.NoError(t, json.Unmarshal(w.Body.Bytes(), &d))
	return d, w.Body.String()
}

func TestOpenAPI(t *testing.T) {
	s, _ := serverFor(t, Options{Version: "1.2.3"})
	d, text := documentOf(t, s.Handler())
	assert.True(t, strings.HasPrefix(d.OpenAPI, "3.1"))
	assert.Contains(t, text, `"version":"1.2.3"`)
	assert.NotContains(t, text, "ErrorModel")
	for _, r := range s.engine.Routes() {
		path := strings.ReplaceAll(r.Path, ":id", "{id}")
		require.Contains(t, d.Paths, path, "a route that the document does not list")
		op, ok := d.Paths[path][strings.ToLower(r.Method)]
		require.True(t, ok, "%s %s is not in the document", r.Method, path)
		assert.NotEmpty(t, op.OperationID)
		assert.Contains(t, op.Responses, "200")
		if strings.HasPrefix(path, "/v1/") {
			assert.Contains(t, op.Responses["default"].Content, problem.MediaType, path)
		}
	}
	other, again := serverFor(t, Options{Version: "1.2.3"})
	_ = again
	_, second := documentOf(t, other.Handler())
	assert.Equal(t, text, second, "the document is the same every time")
}

func TestOpenAPISchemas(t *testing.T) {
	s, _ := serverFor(t, Options{})
	d, text := documentOf(t, s.Handler())
	for _, ref := range strings.Split(text, `"$ref":"`)[1:] {
		name := strings.TrimPrefix(ref[:strings.IndexByte(ref, '"')], schemasPrefix)
		assert.Contains(t, d.Components.Schemas, name)
	}
	for _, closed := range []string{"ScoreBody", "CoverBody", "OutsBody", "CoverageBody", "RiffBody", "UseUpBody", "CostBody", "BatchBody", "PalateBody", "NameBody", "WalkBody", "WalkEnd", "RoundBody", "RoundKey", "GradeBody", "GuessedBody", "FlightBody", "TonightBody", "TonightFlightBody", "TriangleBody", "Spec", "Pour"} {
		assert.Equal(t, false, d.Components.Schemas[closed]["additionalProperties"], "%s takes no unknown field", closed)
	}
	for _, open := range []string{"ScoreAnswer", "CoverAnswer", "OutsAnswer", "RiffAnswer", "UseUpAnswer", "WalkAnswer", "CostAnswer", "BatchAnswer", "PalateAnswer", "NamesAnswer", "RoundAnswer", "GradeAnswer", "FlightAnswer", "TriangleAnswer", "CardAnswer", "Problem", "Finished", "Hit"} {
		require.Contains(t, d.Components.Schemas, open)
		assert.NotContains(t, d.Components.Schemas[open], "additionalProperties", "%s may have more fields some day", open)
	}
}

// TestAnswersHoldToTheirSchema sends every example of the document, and one
// request for each GET, and holds the answers against their schemas.
func TestAnswersHoldToTheirSchema(t *testing.T) {
	s, _ := serverFor(t, Options{})
	d, _ := documentOf(t, s.Handler())
	sent := 0
	for path, methods := range d.Paths {
		for method, op := range methods {
			schema := s.api.OpenAPI().Paths[path]
			if path == metrics.Path || path == openAPIPath {
				continue
			}
			if method == "get" {
				checkAnswer(t, s, schema.Get, httptest.NewRequest("GET", exampleOf(t, path, schema.Get), nil))
				sent++
				continue
			}
			for _, example := range op.RequestBody.Content[mediaJSON].Examples {
				r := httptest.NewRequest("POST", path, bytes.NewReader(example.Value))
				r.Header.Set("Content-Type", mediaJSON)
				checkAnswer(t, s, schema.Post, r)
				sent++
			}
		}
	}
	assert.Equal(t, 44, sent)
}

// exampleOf is a path with the example that the document gives for each part of it.
func exampleOf(t *testing.T, path string, op *huma.Operation) string {
	for _, p := range op.Parameters {
		if p.In == "path" {
			require.NotEmpty(t, p.Schema.Examples, "%s of %s has no example", p.Name, path)
			path = strings.ReplaceAll(path, "{"+p.Name+"}", p.Schema.Examples[0].(string))
		}
	}
	return path
}

func checkAnswer(t *testing.T, s *Server, op *huma.Operation, r *http.Request) {
	t.Helper()
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, r)
	require.Equal(t, http.StatusOK, w.Code, w.Body.String())
	var v any
	require.NoError(t, json.Unmarshal(w.Body.Bytes(), &v))
	var found huma.ValidateResult
	huma.Validate(s.api.OpenAPI().Components.Schemas, op.Responses["200"].Content[mediaJSON].Schema,
		huma.NewPathBuffer(nil, 0), huma.ModeReadFromServer, v, &found)
	assert.Empty(t, found.Errors, r.URL.Path)
}

func TestProblemsHoldToTheirSchema(t *testing.T) {
	s, _ := serverFor(t, Options{})
	for _, body := range []string{"", "{", "{}", quote("2 oz moon dust"), `{"txet":1}`} {
		r := httptest.NewRequest("POST", "/v1/score", strings.NewReader(body))
		r.Header.Set("Content-Type", mediaJSON)
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, r)
		var v any
		require.NoError(t, json.Unmarshal(w.Body.Bytes(), &v))
		var found huma.ValidateResult
		huma.Validate(s.api.OpenAPI().Components.Schemas, s.api.OpenAPI().Paths["/v1/score"].Post.Responses["default"].Content[problem.MediaType].Schema,
			huma.NewPathBuffer(nil, 0), huma.ModeReadFromServer, v, &found)
		assert.Empty(t, found.Errors, body)
	}
}
