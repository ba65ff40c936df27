package api

import (
	"encoding/json"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

const sourDraft = `"text":"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"`

// nutty are words for what holds tree nuts or may.
var nutty = []string{"almond", "orgeat", "amaretto", "walnut", "hazelnut", "pistachio", "macadamia", "falernum", `"allergen":"tree nuts"`, `["tree nuts"`}

func TestRiffForGuests(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	for _, sc := range []scenario{
		{name: "the seed comes back", body: `{` + sourDraft + `,"limit":2,"seed":18446744073709551615}`, status: 200, want: []string{`"seed":18446744073709551615`, `"new_allergens":[`}, wantNot: []string{`"cost"`}},
		{name: "no nuts, wherever one looks", body: `{` + sourDraft + `,"avoid":["tree nuts"],"limit":60,"toward":["nuttier"]}`, status: 200, want: []string{`"ingredient":"amontillado sherry"`}, wantNot: nutty},
		{name: "no nuts, but of kernels", body: `{` + sourDraft + `,"avoid":["tree nuts"],"limit":10,"toward":["with maraschino"]}`, status: 200, want: []string{`"ask":["maraschino liqueur tastes of the kernels`}, wantNot: nutty},
		{name: "no quinine", body: `{"text":"2 oz gin\n5 oz tonic water\nbuild, long","avoid":["quinine"],"limit":10}`, status: 200, want: []string{`"ingredient":"soda water"`}, wantNot: []string{`"ingredient":"tonic`, "tonic water\"}", "bitter lemon"}},
		{name: "no quinine, as a wish", body: `{"text":"2 oz gin\n5 oz tonic water\nbuild, long","toward":["no quinine"],"limit":10}`, status: 200, want: []string{`"ingredient":"soda water"`}, wantNot: []string{`"ingredient":"tonic`, `tonic water","amount`, "bitter lemon"}},
		{name: "what nobody knows is refused", body: `{` + sourDraft + `,"avoid":["moon dust"]}`, status: 422, want: []string{"body.avoid[0]", "grapefruit", "tree nuts"}},
		{name: "vegan", body: `{` + sourDraft + `,"diet":["vegan"],"limit":40}`, status: 200, wantNot: []string{"egg white", "heavy cream", `"ingredient":"honey`}},
		{name: "alcohol-free", body: `{` + sourDraft + `,"diet":["alcohol-free"],"limit":5}`, status: 200, wantNot: []string{`"ingredient":"London dry gin"`}},
		{name: "weak", body: `{` + sourDraft + `,"max_abv_pct":8,"limit":5}`, status: 200, want: []string{`"riffs":[{`}},
		{name: "cheap", body: `{` + sourDraft + `,"prices_per_ml":{"london-dry-gin":0.02,"lemon-juice":0.01,"simple-syrup":0.002,"bourbon":0.03,"lime-juice":0.01},"max_cost":2.5}`,
			status: 200, want: []string{`"cost":`}, wantNot: []string{"crémant"}},
		{name: "what has run out", body: `{"text":"2 oz gin\n3/4 oz lemon juice\n1/2 oz falernum\nshake, up","limit":40}`, status: 200, wantNot: []string{`"ingredient":"falernum"`, `"ingredient":"triple sec"`}},
		{name: "what has run out, sent as stock", body: `{` + sourDraft + `,"stock":["london-dry-gin","lemon-juice","triple-sec"]}`, status: 200, want: []string{`"ingredient":"triple sec"`}},
		{name: "a limit without prices", body: `{` + sourDraft + `,"max_cost":1}`, status: 422, want: []string{"body.max_cost", "prices_per_ml"}},
		{name: "a price below nothing", body: `{` + sourDraft + `,"prices_per_ml":{"gin":-1}}`, status: 422, want: []string{"must be zero or more"}},
		{name: "unknown diet", body: `{` + sourDraft + `,"diet":["moonlight"]}`, status: 422, want: []string{"body.diet[0]", "alcohol-free"}},
		{name: "too strong a limit", body: `{` + sourDraft + `,"max_abv_pct":101}`, status: 422, want: []string{"body.max_abv_pct"}},
		{name: "every fault at once", body: `{"text":"2 oz moon dust","toward":["more moon"],"avoid":["gravity"],"diet":["moon"]}`, status: 422,
			want: []string{`"line 1"`, "body.toward[0]", "body.avoid[0]", "body.diet[0]"}},
	} {
		sc.url = "/v1/riff"
		sc.run(t, h)
	}
}

// The specs of riffs, drafts and stops come back as the drinks that they were.
func TestRiffSpecsRoundTrip(t *testing.T) {
	s, _ := serverFor(t, Options{})
	for _, c := range []struct{ url, body, list string }{
		{"/v1/riff", `{` + sourDraft + `,"limit":20}`, "riffs"},
		{"/v1/use-up", `{"bottles":["mezcal","fino sherry","apricot liqueur"],"unit":"ml"}`, "drafts"},
		{"/v1/walk", `{"from":{` + sourDraft + `},"to":{"text":"2 oz bourbon\n2 tsp simple syrup\n2 dashes aromatic bitters\nstir, rocks"},"steps":2}`, "stops"},
	} {
		var lists map[string]json.RawMessage
		require.NoError(t, json.Unmarshal([]byte(sent(t, s, c.url, c.body)), &lists))
		var drinks []struct {
			Spec  json.RawMessage
			Score float64
		}
		require.NoError(t, json.Unmarshal(lists[c.list], &drinks))
		require.NotEmpty(t, drinks, c.url)
		for _, d := range drinks {
			var scored shape.ScoreAnswer
			require.NoError(t, json.Unmarshal([]byte(sent(t, s, "/v1/score", `{"spec":`+string(d.Spec)+`}`)), &scored))
			assert.InDelta(t, d.Score, scored.Score, 0.1+1e-9, "%s: %s", c.url, d.Spec)
		}
	}
}

// sent posts a body and returns the answer, which must be 200.
func sent(t *testing.T, s *Server, url, body string) string {
	t.Helper()
	r := httptest.NewRequest("POST", url, strings.NewReader(body))
	r.Header.Set("Content-Type", mediaJSON)
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, r)
	require.Equal(t, 200, w.Code, w.Body.String())
	return w.Body.String()
}
