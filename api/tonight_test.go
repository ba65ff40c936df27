package api

import (
	"encoding/json"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

func TestTonight(t *testing.T) {
	s, _ := serverFor(t, Options{})
	for _, sc := range []scenario{
		{name: "everybody", url: "/v1/tonight", body: `{}`, status: 200, want: []string{`"state":"ready"`, `"poured":{"name":"`, `"not_kept":[]`}, wantNot: []string{"not for this guest", "cross_contact"}},
		{name: "a guest", url: "/v1/tonight", body: `{"avoid":["tree nuts"]}`, status: 200, want: []string{`"state":"not for this guest"`, `"because":"black walnut bitters contains tree nuts"`, `"read":[{"id":`, `"cross_contact":"`}},
		{name: "no such allergen", url: "/v1/tonight", body: `{"avoid":["gravity"]}`, status: 422, want: []string{"body.avoid[0]"}},
		{name: "too many parts", url: "/v1/tonight", body: `{"max_parts":9}`, status: 422, want: []string{"body.max_parts"}},
		{name: "a flight", url: "/v1/tonight/flight", body: `{"drinks":["tide-table","Wicker Lee"]}`, status: 200, want: []string{`"each_ml":40`, `"guests":2`, `"make":1`, `"left_ml":`, `"ethanol_g":`, `"servings":[`, `"cautions":["Whoever swallows all of it`, `"care":[{"key":"`}},
		{name: "one drink", url: "/v1/tonight/flight", body: `{"drinks":["Tide Table"]}`, status: 422, want: []string{"body.drinks"}},
		{name: "the same drink twice", url: "/v1/tonight/flight", body: `{"drinks":["Tide Table","tide-table"]}`, status: 422, want: []string{"body.drinks[1]", "asked for twice"}},
		{name: "drinks of another house", url: "/v1/tonight/flight", body: `{"drinks":["Moon Punch","Sun Punch"]}`, status: 422, want: []string{"body.drinks[0]", "body.drinks[1]"}},
		{name: "not for this guest", url: "/v1/tonight/flight", body: `{"drinks":["Tide Table","Tarred Line"],"avoid":["tree nuts"]}`, status: 422, want: []string{"body.drinks[1]", "black walnut bitters contains tree nuts"}},
		{name: "more alcohol than is safe", url: "/v1/tonight/flight", body: `{"drinks":["Tide Table","Wicker Lee","Fog Signal","Bow Spring"],"each_ml":120}`, status: 422, want: []string{"body.each_ml", "standard drinks", "pour 75 ml each"}},
		{name: "nobody", url: "/v1/tonight/flight", body: `{"drinks":["Tide Table","Wicker Lee"],"guests":-1}`, status: 422, want: []string{"body.guests"}},
	} {
		sc.run(t, s.Handler())
	}
}

// What is poured for a guest holds nothing that the guest avoids: an allergen that is not
// stated counts as there.
func TestNothingIsPouredTonightThatAGuestAvoids(t *testing.T) {
	s, _ := serverFor(t, Options{})
	for _, avoid := range []string{"tree nuts", "milk", "eggs", "sulphites"} {
		w := httptest.NewRecorder()
		sc := scenario{url: "/v1/tonight", body: `{"avoid":["` + avoid + `"]}`}
		s.Handler().ServeHTTP(w, sc.request())
		var a shape.TonightAnswer
		require.NoError(t, json.Unmarshal(w.Body.Bytes(), &a))
		poured := 0
		for _, d := range a.Drinks {
			assert.Equal(t, d.State == "ready" || d.State == "covered", d.Poured != nil, d.Name)
			if d.Poured != nil {
				poured++
			}
			for _, m := range d.Allergens {
				assert.NotEqual(t, avoid, m.Allergen, d.Name)
			}
		}
		assert.Positive(t, poured, avoid)
	}
}
