package api

import (
	"encoding/json"
	"net/http/httptest"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/flavor/measure"
)

// fieldsNamed returns the JSON names of the fields of a body.
func fieldsNamed(of reflect.Type) (names []string) {
	for i := range of.NumField() {
		if f := of.Field(i); f.Anonymous {
			names = append(names, fieldsNamed(f.Type)...)
		} else if name, _, _ := strings.Cut(f.Tag.Get("json"), ","); name != "" {
			names = append(names, name)
		}
	}
	return names
}

// limits are a guest's limits by their field, with a request that nothing poured from the
// draft below satisfies.
var limits = map[string]string{"Avoid": `"avoid":["tree nuts"]`, "Diet": `"diet":["alcohol-free"]`, "MaxABV": `"max_abv_pct":1`, "MaxCost": `"max_cost":0.0001`}

// Every limit of a guest affects the search: a request with it has another answer than
// one without.
func TestEveryLimitReachesTheSearch(t *testing.T) {
	guest := reflect.TypeFor[service.Guest]()
	for i := range guest.NumField() {
		if name := guest.Field(i).Name; name != "Prices" { // what MaxCost goes by
			assert.Contains(t, limits, name, "%s is not tried here", name)
		}
	}
	const sour = `"spec":{"pours":[{"ingredient":"London dry gin","amount":2,"unit":"oz"},{"ingredient":"lemon juice","amount":0.75,"unit":"oz"},{"ingredient":"orgeat","amount":0.75,"unit":"oz"}]}`
	s, _ := serverFor(t, Options{})
	ask := func(path, body string) string {
		w := httptest.NewRecorder()
		sc := scenario{url: path, body: body}
		s.Handler().ServeHTTP(w, sc.request())
		require.Less(t, w.Code, 500, w.Body.String())
		return w.Body.String()
	}
	for path, c := range map[string]struct {
		body string
		of   reflect.Type
	}{
		"/v1/cover":  {sour + `,"missing":"orgeat","limit":3,"max_parts":1`, reflect.TypeFor[shape.CoverBody]()},
		"/v1/riff":   {sour + `,"limit":3`, reflect.TypeFor[shape.RiffBody]()},
		"/v1/outs":   {`"out":["falernum"],"max_parts":1`, reflect.TypeFor[shape.OutsBody]()},
		"/v1/use-up": {`"bottles":["orgeat"],"limit":2`, reflect.TypeFor[shape.UseUpBody]()},
	} {
		without := ask(path, "{"+c.body+"}")
		require.Equal(t, without, ask(path, "{"+c.body+"}"), "%s: the same question has the same answer", path)
		for name, limit := range limits {
			field, _, _ := strings.Cut(strings.TrimPrefix(limit, `"`), `"`)
			assert.Contains(t, fieldsNamed(c.of), field, path)
			assert.NotEqual(t, without, ask(path, "{"+c.body+","+limit+"}"), "%s: %s does not reach the search", path, name)
		}
	}
}

// The description of a pour lists every unit that is read.
func TestEveryUnitIsDescribed(t *testing.T) {
	s, _ := serverFor(t, Options{})
	var doc struct {
		Components struct {
			Schemas map[string]struct {
				Properties map[string]struct{ Description string }
			}
		}
	}
	require.NoError(t, json.Unmarshal(s.openAPI, &doc))
	said := doc.Components.Schemas["Pour"].Properties["unit"].Description
	require.NotEmpty(t, said)
	words := strings.FieldsFunc(said, func(r rune) bool { return r == ',' || r == ' ' || r == ';' })
	for _, u := range measure.Units() {
		assert.True(t, slices.Contains(words, string(u)), "%s is not in %q", u, said)
	}
}
