package api

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

func TestCoverScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	cover := func(rest string) string {
		return strings.TrimSuffix(quote("2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\nshake, up"), "}") + rest + "}"
	}
	for _, sc := range []scenario{
		{name: "text", body: cover(`,"missing":"orgeat","limit":3,"max_parts":1`), status: 200, want: []string{
			`"missing":{"id":"orgeat"`, `"distance_jnd":`, `"score_before":`, `"new_allergens":[`, `"spec":{"name":"","method":"shake"`, `"refused":{"by_allergen":0,"not_in_stock":0}`}},
		{name: "avoid", body: cover(`,"missing":"orgeat","avoid":["tree nuts"],"max_parts":1`), status: 200,
			wantNot: []string{`"refused":{"by_allergen":0`}},
		{name: "no grapefruit", body: `{"text":"2 oz blanco tequila\n1/2 oz lime juice\n4 oz grapefruit soda\nbuild, long","missing":"grapefruit soda","avoid":["grapefruit"],"limit":5}`, status: 200,
			want: []string{`"id":"lemon-lime-soda"`}, wantNot: []string{`"id":"grapefruit-juice"`, `"id":"grapefruit-cordial"`}},
		{name: "what nobody knows is refused", body: cover(`,"missing":"orgeat","avoid":["moon dust"]`), status: 422, want: []string{"body.avoid[0]", "grapefruit", "tree nuts"}},
		{name: "stock", body: cover(`,"missing":"orgeat","stock":["amaretto","honey-syrup"],"max_parts":1`), status: 200,
			want: []string{`"id":"amaretto"`}, wantNot: []string{`"not_in_stock":0`}},
		{name: "nothing in stock", body: cover(`,"missing":"orgeat","stock":[]`), status: 200, want: []string{`"covers":[]`}},
		{name: "as it was written", body: `{"text":"2 oz gin\n1 oz fresh lemon juice\n1/2 oz simple syrup","missing":"fresh lemon juice","max_parts":1,"limit":1}`,
			status: 200, want: []string{`"missing":{"id":"lemon-juice"`}},
		{name: "all that there is", body: `{"text":"2 oz gin\nstir","missing":"gin","max_parts":1,"limit":1}`, status: 200, want: []string{`"missing":{"id":"london-dry-gin"`}},

		{name: "two missing", body: cover(`,"missing":["orgeat","lemon juice"],"limit":2`), status: 200,
			want: []string{`"missing":[{"id":"orgeat","name":"orgeat"},{"id":"lemon-juice","name":"lemon juice"}]`}, wantNot: []string{`"ingredient":"orgeat"`, `"ingredient":"lemon juice"`}},
		{name: "a list of one", body: cover(`,"missing":["orgeat"],"limit":1,"max_parts":1`), status: 200, want: []string{`"missing":[{"id":"orgeat","name":"orgeat"}`}},
		{name: "the same twice", body: cover(`,"missing":["orgeat","orgeat"],"limit":1,"max_parts":1`), status: 200, want: []string{`"missing":[{"id":"orgeat","name":"orgeat"}`}},
		{name: "an unknown one of two", body: cover(`,"missing":["orgeat","moon dust"]`), status: 422, want: []string{`"body.missing[1]"`, "moon dust"}},
		{name: "none of a list", body: cover(`,"missing":[]`), status: 422, want: []string{"body.missing"}},
		{name: "an empty word of two", body: cover(`,"missing":["orgeat",""]`), status: 422, want: []string{"body.missing"}},
		{name: "a number", body: cover(`,"missing":7`), status: 422, want: []string{"body.missing"}},

		{name: "nothing missing", body: cover(``), status: 422, want: []string{"missing"}},
		{name: "an empty word", body: cover(`,"missing":""`), status: 422, want: []string{"body.missing"}},
		{name: "unknown missing", body: cover(`,"missing":"moon dust"`), status: 422, want: []string{`"body.missing"`, "moon dust"}},
		{name: "missing from another drink", body: cover(`,"missing":"moonlight"`), status: 422, want: []string{"body.missing"}},
		{name: "not a pour of it", body: cover(`,"missing":"vodka"`), status: 422, want: []string{"body.missing", "not a pour"}},
		{name: "unknown allergen", body: cover(`,"missing":"orgeat","avoid":["milk","gravity"]`), status: 422, want: []string{`"body.avoid[1]"`, `"value":"gravity"`, "tree nuts"}},
		{name: "an empty allergen", body: cover(`,"missing":"orgeat","avoid":[""]`), status: 422, want: []string{"body.avoid[0]"}},
		{name: "avoid as a word", body: cover(`,"missing":"orgeat","avoid":"milk"`), status: 422, want: []string{"expected array"}},
		{name: "unknown stock", body: cover(`,"missing":"orgeat","stock":["simple-syrup","moon-dust"]`), status: 422, want: []string{`"body.stock[1]"`, "moon-dust"}},
		{name: "no covers", body: cover(`,"missing":"orgeat","limit":0`), status: 422, want: []string{"body.limit"}},
		{name: "too many covers", body: cover(`,"missing":"orgeat","limit":101`), status: 422, want: []string{"body.limit", "101"}},
		{name: "half a cover", body: cover(`,"missing":"orgeat","limit":1.5`), status: 422, want: []string{"integer"}},
		{name: "no parts", body: cover(`,"missing":"orgeat","max_parts":0`), status: 422, want: []string{"body.max_parts"}},
		{name: "too many parts", body: cover(`,"missing":"orgeat","max_parts":4`), status: 422},
		{name: "unknown field", body: cover(`,"missing":"orgeat","avoids":["milk"]`), status: 422, want: []string{"avoids", "use avoid, diet, everywhere, limit"}},
		{name: "the allergen twice", body: cover(`,"missing":"orgeat","avoid":["milk"],"avoid":[]`), status: 422, want: []string{"given twice"}},
		{name: "no draft", body: `{"missing":"gin"}`, status: 422, want: []string{"there is no draft"}},
		{name: "every fault at once", body: `{"text":"2 oz moon dust","missing":"gin","avoid":["gravity"]}`, status: 422, want: []string{`"line 1"`, "body.avoid[0]"}},
		{name: "GET", url: "/v1/cover", status: 405},
	} {
		sc.url = "/v1/cover"
		sc.run(t, h)
	}
}

// What a guest avoids is in no cover, in whichever word it is said; what only may carry it
// stands apart, with the label to read, and kernels that taste of nuts do not even stand there.
func TestAvoidedAllergensStandApart(t *testing.T) {
	s, _ := serverFor(t, Options{})
	for _, word := range []string{"tree nuts", "Almonds", "nuts"} {
		for missing, labels := range map[string]bool{"orgeat": false, "allspice liqueur": true} {
			draft := strings.TrimSuffix(quote("2 oz gin\n3/4 oz lemon juice\n1/2 oz "+missing+"\nshake, up"), "}")
			w := httptest.NewRecorder()
			s.Handler().ServeHTTP(w, (&scenario{url: "/v1/cover", body: draft + `,"missing":"` + missing + `","avoid":["` + word + `"],"max_parts":1}`}).request())
			require.Equal(t, http.StatusOK, w.Code, w.Body.String())
			var answer shape.CoverAnswer
			require.NoError(t, json.Unmarshal(w.Body.Bytes(), &answer))
			require.NotEmpty(t, answer.Covers, missing)
			for i := range answer.Covers {
				assert.Empty(t, certaintyOf(&answer.Covers[i], "tree nuts"), answer.Covers[i].Text)
			}
			assert.Equal(t, labels, len(answer.IfLabelClears) > 0, missing)
			for i := range answer.IfLabelClears {
				c := &answer.IfLabelClears[i]
				assert.Contains(t, []string{"may contain", "unstated"}, certaintyOf(c, "tree nuts"), c.Text)
				assert.NotEmpty(t, c.Read, c.Text)
			}
		}
	}
}

// certaintyOf is how sure it is that a cover carries an allergen, empty if it does not.
func certaintyOf(c *shape.Cover, allergen string) (certainty string) {
	for _, a := range c.Allergens {
		if a.Allergen == allergen {
			certainty = a.Certainty
		}
	}
	return certainty
}

func TestCoverForGuests(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	const draft = `"text":"1 oz cognac\n1 oz creme de cacao\n1 oz heavy cream\nshake, up","missing":"heavy cream"`
	for _, sc := range []scenario{
		{name: "vegan", body: `{` + draft + `,"diet":["vegan"],"limit":20}`, status: 200, want: []string{`"covers":[{`}, wantNot: []string{`"allergen":"milk","from":["heavy-cream"]`, `"id":"single-cream"`}},
		{name: "alcohol-free", body: `{` + draft + `,"diet":["alcohol-free"],"max_parts":1}`, status: 200, want: []string{`"removed":[{"id":"cognac"`}},
		{name: "weak", body: `{` + draft + `,"max_abv_pct":15}`, status: 200},
		{name: "cheap", body: `{` + draft + `,"prices_per_ml":{"coconut-cream":0.01,"light-cream":0.005},"max_cost":1}`, status: 200},
		{name: "a limit without prices", body: `{` + draft + `,"max_cost":1}`, status: 422, want: []string{"body.max_cost", "prices_per_ml"}},
		{name: "a price below nothing", body: `{` + draft + `,"prices_per_ml":{"gin":-1}}`, status: 422, want: []string{"must be zero or more"}},
		{name: "unknown diet", body: `{` + draft + `,"diet":["vegan","moonlight"]}`, status: 422, want: []string{"body.diet[1]", "moonlight", "alcohol-free"}},
		{name: "too strong a limit", body: `{` + draft + `,"max_abv_pct":101}`, status: 422, want: []string{"body.max_abv_pct"}},
	} {
		sc.url = "/v1/cover"
		sc.run(t, h)
	}
}

func TestOutsScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	for _, sc := range []scenario{
		{name: "the house", body: `{"out":["falernum"]}`, status: 200, want: []string{`"house":"The Halyard Room"`, `"missing":[{"id":"falernum"`, `"fetch":[{"id":"falernum"`, `"chosen":`}},
		{name: "a menu", body: `{"out":["simple syrup"],"specs":[{"name":"One","pours":[{"ingredient":"gin","amount":2,"unit":"oz"},{"ingredient":"lemon juice","amount":1,"unit":"oz"},{"ingredient":"simple syrup","amount":0.75,"unit":"oz"}]}]}`,
			status: 200, want: []string{`"house":""`, `"name":"One"`}},
		{name: "from the stock that is sent", body: `{"out":["falernum"],"stock":["clove-syrup","ginger-syrup"],"avoid":["tree nuts"]}`, status: 200, want: []string{"ginger syrup", `"if_label_clears"`, `"removed":[{"id":"falernum","name":"falernum"},{"id":"orgeat","name":"orgeat"}`}, wantNot: []string{`"allergen":"tree nuts","from":["orgeat"`}},
		{name: "a bottle that no drink needs", body: `{"out":["soju"]}`, status: 200, want: []string{`"outs":[]`}},
		{name: "no bottle", body: `{"out":[]}`, status: 422, want: []string{"body.out"}},
		{name: "left out", body: `{}`, status: 422, want: []string{"out"}},
		{name: "unknown bottle", body: `{"out":["falernum","moon dust"]}`, status: 422, want: []string{"body.out[1]", "moon dust", "nearest"}},
		{name: "unknown allergen", body: `{"out":["falernum"],"avoid":["dust"]}`, status: 422, want: []string{"body.avoid[0]"}},
		{name: "unknown id in stock", body: `{"out":["falernum"],"stock":["dust"]}`, status: 422, want: []string{"dust"}},
		{name: "a drink that cannot be read", body: `{"out":["falernum"],"specs":[{"pours":[{"ingredient":"moon dust","amount":1,"unit":"oz"}]}]}`, status: 422, want: []string{"specs[0]", "moon dust"}},
		{name: "unknown field", body: `{"out":["falernum"],"uot":1}`, status: 422, want: []string{"body.uot"}},
		{name: "too many parts", body: `{"out":["falernum"],"max_parts":4}`, status: 422, want: []string{"body.max_parts"}},
		{name: "GET", method: "GET", status: 405},
	} {
		sc.url = "/v1/outs"
		sc.run(t, h)
	}
}

func TestCoverageScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	const menu = `"specs":[{"name":"One","pours":[{"ingredient":"gin","amount":2,"unit":"oz"},{"ingredient":"lemon juice","amount":1,"unit":"oz"},{"ingredient":"falernum","amount":0.75,"unit":"oz"}]}]`
	for _, sc := range []scenario{
		{name: "nothing else in stock", body: `{` + menu + `,"stock":["lime-juice"]}`, status: 200, want: []string{`"weak":[`, `"id":"falernum"`, `"drinks":["One"]`, `"good_jnd":4`}},
		{name: "everything in stock", body: `{` + menu + `}`, status: 200, wantNot: []string{`"id":"falernum"`}},
		{name: "unknown id in stock", body: `{` + menu + `,"stock":["dust"]}`, status: 422, want: []string{"dust"}},
		{name: "unknown field", body: `{"menu":1}`, status: 422, want: []string{"body.menu"}},
	} {
		sc.url = "/v1/coverage"
		sc.run(t, h)
	}
}
