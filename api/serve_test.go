package api

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/api/service/servicetest"
)

func TestScoreScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	const url = "/v1/score"
	for _, sc := range []scenario{
		{name: "text", body: quote(goodText), status: 200, want: []string{
			`"name":"Halyard Sour"`, `"id":"london-dry-gin"`, `"match":{"asked":"gin","how":"alias"}`, `"ml":59.15`,
			`"template":{"id":"sour"`, `"verdict":"`, `"key":"alcohol"`, `"key":"medicines"`, `"plus_minus":{"abv_pct":`},
			headers: map[string]string{"Content-Type": mediaJSON, "Cache-Control": "no-store"}},
		{name: "explained", body: `{"explain":true,"text":"2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"}`, status: 200,
			want: []string{`"explanation":[{"stage":"pour"`, `"stage":"mean"`, `"glass":"fills a 150 mL coupe`, `"country":"United States"`}},
		{name: "fields", body: `{"spec":{"name":"A","method":"shake","service":"up","pours":[{"ingredient":"london-dry-gin","amount":2,"unit":"oz"},{"ingredient":"Lemon juice","amount":22.5,"unit":"ml"},{"ingredient":"simple syrup","amount":15,"unit":"ml"}]}}`,
			status: 200, want: []string{`"name":"A"`, `"how":"exact"`, `"method":"shake"`}},
		{name: "assumed method", body: `{"spec":{"pours":[{"ingredient":"gin","amount":2,"unit":"oz"},{"ingredient":"lemon juice","amount":1,"unit":"oz"}]}}`,
			status: 200, want: []string{`"method":"shake"`, "no method stated"}},
		{name: "no unit for an egg white", body: `{"spec":{"pours":[{"ingredient":"gin","amount":2,"unit":"oz"},{"ingredient":"egg white","amount":1}]}}`,
			status: 200, want: []string{`"unit":"piece"`, `"allergen":"eggs"`, `"certainty":"contains"`, `"key":"raw egg"`}},
		{name: "words for a method", body: `{"spec":{"method":"shaken hard","service":"on the rocks","pours":[{"ingredient":"gin","amount":2,"unit":"oz"}]}}`,
			status: 200, want: []string{`"method":"shake"`, `"service":"rocks"`}},
		{name: "a slip of the pen", body: quote("2 oz Lodnon dry gin\n3/4 oz lemon juice"), status: 200, want: []string{`"how":"fuzzy"`, "“Lodnon dry gin” is read as London dry gin"}},
		{name: "a slip in a short word", body: quote("2 oz London dry gni"), status: 422, want: []string{`"suggest":["London dry gin"`}},
		{name: "without alcohol", body: quote("4 oz orange juice\n1 oz lime juice"), status: 200, wantNot: []string{`"key":"alcohol"`}},
		{name: "far out", body: quote("2 oz gin\n2 oz honey syrup\n1/4 oz lemon juice\nshake, up"), status: 200,
			want: []string{`"verdict":"off"`, `"direction":"high"`, `"faults":[{`}},
		{name: "charset", media: "application/json; charset=UTF-8", body: quote(goodText), status: 200},

		{name: "unknown ingredient", body: quote("2 oz gin\n1 oz moon dust"), status: 422,
			want: []string{`"location":"line 2"`, `"value":"moon dust"`, "unknown ingredient", `"suggest":[`}},
		{name: "unknown ingredient in fields", body: pourJSON(`{"ingredient":"lemn juise","amount":1,"unit":"oz"},{"ingredient":"moon dust","amount":1,"unit":"oz"}`), status: 422,
			want: []string{`"location":"body.spec.pours[1].ingredient"`, "moon dust"}},
		{name: "nearest names", body: quote("2 oz ginn and lemon"), status: 422, want: []string{"nearest: "}},
		{name: "unknown unit", body: quote("2 tsbp gin"), status: 422, want: []string{`"tsbp\" is no unit`, `"line 1"`}},
		{name: "unknown unit in fields", body: pourJSON(`{"ingredient":"gin","amount":1,"unit":"bucket"}`), status: 422,
			want: []string{"body.spec.pours[0].unit", `"value":"bucket"`}},
		{name: "no unit on a liquid", body: quote("2 gin"), status: 200, want: []string{`"inferred":["unit"]`, "bare numbers are read as ounces"}},
		{name: "no unit that can be told", body: quote("20 gin\n1 oz rum"), status: 422, want: []string{"no unit"}},
		{name: "everything at once", body: quote("2 oz moon dust\n1 oz vermouth\nshake, throw"), status: 422, want: []string{"moon dust", "sweet vermouth, dry vermouth or bianco vermouth", "throw", "3 things are wrong"}},
		{name: "no unit on a liquid in fields", body: pourJSON(`{"ingredient":"gin","amount":1}`), status: 422, want: []string{"pours[0].unit"}},
		{name: "a slip in the method", body: quote("2 oz gin\nsheke"), status: 200, want: []string{"“sheke” is read as shake"}},
		{name: "unknown method in fields", body: `{"spec":{"method":"explode","service":"moon","pours":[{"ingredient":"gin","amount":2,"unit":"oz"}]}}`, status: 422,
			want: []string{"body.spec.method", "body.spec.service", "dry shake", "2 things are wrong"}},
		{name: "negative amount", body: quote("-2 oz gin"), status: 422, want: []string{"below zero"}},
		{name: "negative amount in fields", body: pourJSON(`{"ingredient":"gin","amount":-2,"unit":"oz"}`), status: 422, want: []string{"body.spec.pours[0].amount"}},
		{name: "no amount", body: pourJSON(`{"ingredient":"gin","unit":"oz"}`), status: 422, want: []string{"amount"}},
		{name: "nothing of it", body: pourJSON(`{"ingredient":"gin","amount":0,"unit":"oz"}`), status: 422, want: []string{"above zero"}},
		{name: "absurd amount", body: quote("4000 oz gin"), status: 422, want: []string{"more than one drink holds"}},
		{name: "absurd amount in fields", body: pourJSON(`{"ingredient":"gin","amount":1e300,"unit":"ml"}`), status: 422},
		{name: "a number beyond numbers", body: pourJSON(`{"ingredient":"gin","amount":1e999,"unit":"ml"}`), status: 422, want: []string{"body.spec.pours[0].amount", "1e999"}},
		{name: "not a number", body: pourJSON(`{"ingredient":"gin","amount":NaN,"unit":"ml"}`), status: 400, want: []string{"not JSON", "column"}},
		{name: "a number in words", body: pourJSON(`{"ingredient":"gin","amount":"2","unit":"oz"}`), status: 422, want: []string{"expected number", "body.spec.pours[0].amount"}},
		{name: "every fault at once", body: quote("2 oz moon dust\n1 oz sun dust\n3 g gin\n2 slices of lemon juice"), status: 422, want: []string{`"line 1"`, `"line 2"`, `"line 4"`, "3 things are wrong"}},

		{name: "text and spec", body: `{"text":"2 oz gin","spec":{"pours":[]}}`, status: 422, want: []string{"text and spec are both given"}},
		{name: "neither", body: `{}`, status: 422, want: []string{"there is no draft"}},
		{name: "empty text", body: `{"text":""}`, status: 422, want: []string{"there is no pour"}},
		{name: "a null text", body: `{"text":null}`, status: 422, want: []string{"there is no draft"}},
		{name: "no pours", body: `{"spec":{"pours":[]}}`, status: 422, want: []string{"body.spec.pours", "there is no pour"}},
		{name: "no list of pours", body: `{"spec":{"name":"x"}}`, status: 422, want: []string{"pours"}},
		{name: "too many pours", body: pourJSON(strings.TrimSuffix(strings.Repeat(`{"ingredient":"gin","amount":1,"unit":"ml"},`, 41), ",")), status: 422, want: []string{"40"}},
		{name: "unknown field", body: `{"text":"2 oz gin","txet":"x"}`, status: 422, want: []string{"body.txet", `\"txet\" is no field here`, "use explain, partial, spec or text"}},
		{name: "unknown field deep down", body: pourJSON(`{"ingredient":"gin","amount":1,"unit":"oz","litres":30}`), status: 422,
			want: []string{"body.spec.pours[0].litres", "use after, amount, id, ingredient, ml, name or unit"}},
		{name: "a pour as answers have it", body: pourJSON(`{"ingredient":"London dry gin","id":"london-dry-gin","name":"London dry gin","amount":2,"unit":"oz","ml":59.15}`), status: 200},
		{name: "a pour by its id alone", body: pourJSON(`{"id":"london-dry-gin","amount":2,"unit":"oz"}`), status: 200, want: []string{`"id":"london-dry-gin"`}},
		{name: "another id", body: pourJSON(`{"ingredient":"gin","id":"vodka","amount":2,"unit":"oz"}`), status: 422, want: []string{"body.spec.pours[0].id", "london-dry-gin"}},
		{name: "another name", body: pourJSON(`{"ingredient":"gin","name":"vodka","amount":2,"unit":"oz"}`), status: 422, want: []string{"body.spec.pours[0].name"}},
		{name: "other millilitres", body: pourJSON(`{"ingredient":"gin","amount":2,"unit":"oz","ml":45}`), status: 422, want: []string{"body.spec.pours[0].ml", "59.15"}},
		{name: "no ingredient", body: pourJSON(`{"amount":2,"unit":"oz"}`), status: 422, want: []string{"body.spec.pours[0]"}},
		{name: "a field in capitals", body: `{"Text":"2 oz gin"}`, status: 422, want: []string{"body.Text"}},
		{name: "a field twice", body: `{"text":"2 oz gin","text":"1 oz gin"}`, status: 422, want: []string{"body.text", "given twice"}},
		{name: "a field twice deep down", body: pourJSON(`{"ingredient":"gin","amount":1,"amount":2,"unit":"oz"}`), status: 422, want: []string{"body.spec.pours[0].amount"}},
		{name: "wrong type", body: `{"text":7}`, status: 422, want: []string{"expected string"}},
		{name: "a list", body: `[]`, status: 422, want: []string{"expected object"}},
		{name: "a word", body: `"2 oz gin"`, status: 422},
		{name: "a null", body: `null`, status: 422},
		{name: "malformed", body: "{\"text\":\n \"2 oz gin\"", status: 400, want: []string{"not JSON", "line 2"}},
		{name: "a field twice in a list of lists", body: `{"a":[[1],[{"b":{"1":0,"1":0}}]]}`, status: 422, want: []string{"body.a[1][0].b.1", "given twice"}},
		{name: "a number in a list beyond numbers", body: `{"a":[1,[2,-1e999]]}`, status: 422, want: []string{"body.a[1][1]", "-1e999"}},
		{name: "rubbish after it", body: `{"text":"2 oz gin"} x`, status: 400, want: []string{"not JSON", "column 21"}},
		{name: "a second object", body: `{"text":"2 oz gin"} {}`, status: 400, want: []string{"more after its end"}},
		{name: "blank", body: "  \n ", status: 400, want: []string{"empty"}},
		{name: "empty", method: "POST", status: 400, want: []string{"empty"}},
		{name: "deep", body: strings.Repeat("[", 9000) + strings.Repeat("]", 9000), status: 422},
		{name: "deeper", body: strings.Repeat(`{"a":`, 20000) + "1" + strings.Repeat("}", 20000), status: 400},
		{name: "deep in a field", body: `{"text":` + strings.Repeat("[", 5000) + strings.Repeat("]", 5000) + `}`, status: 422},
		{name: "not UTF-8", body: "{\"text\":\"2 oz gin \xff\"}", status: 400, want: []string{"not UTF-8"}},
		{name: "half a surrogate", body: `{"text":"2 oz gi\ud800\ud800n"}`, status: 422, want: []string{"unknown ingredient"}},
		{name: "control character", body: `{"text":"2 oz gin\u0007"}`, status: 422, want: []string{"control character"}},
		{name: "control character in a name", body: `{"spec":{"name":"a\u0007b","pours":[{"ingredient":"gin","amount":1,"unit":"oz"}]}}`, status: 422, want: []string{"body.spec.name"}},
		{name: "huge text", body: quote(strings.Repeat("2 oz gin\n", 9000)), status: 422},
		{name: "just small enough", body: quote(strings.Repeat("x", MaxBody-len(quote("")))), status: 422},
		{name: "too large", body: quote(strings.Repeat("x", MaxBody)), status: 413, want: []string{"1048576"}},
		{name: "a form", media: "application/x-www-form-urlencoded", body: "text=x", status: 415, want: []string{"application/json"}},
		{name: "no type", media: "-", body: quote(goodText), status: 415},
		{name: "another charset", media: "application/json; charset=latin1", body: quote(goodText), status: 415},
		{name: "GET", method: "GET", status: 405, want: []string{"takes POST and not GET"}, headers: map[string]string{"Allow": "POST"}},
		{name: "DELETE", method: "DELETE", status: 405},
		{name: "a method of their own", method: "BREW", status: 405},
		{name: "unknown parameter", url: url + "?verbose=1", body: quote(goodText), status: 422, want: []string{"query.verbose", "leave it out"}},
	} {
		if sc.url == "" {
			sc.url = url
		}
		sc.run(t, h)
	}
}

func TestRiffScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	const draft = `"text":"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"`
	for _, sc := range []scenario{
		{name: "a draft", body: `{` + draft + `,"limit":3}`, status: 200, want: []string{`"riffs":[{"spec":`, `"distance_jnd":`, `"relatives":[{"name":`, `"least_jnd":3`}},
		{name: "a wish", body: `{` + draft + `,"toward":["more bitter","below 20 %"],"limit":2,"seed":7}`, status: 200},
		{name: "no nuts", body: `{` + draft + `,"avoid":["tree nuts"],"limit":20}`, status: 200, wantNot: []string{"almond", "orgeat", "tree nuts"}},
		{name: "a wish that nobody understands", body: `{` + draft + `,"toward":["more moon"]}`, status: 422, want: []string{"body.toward[0]", "moon"}},
		{name: "too many", body: `{` + draft + `,"limit":101}`, status: 422, want: []string{"body.limit"}},
		{name: "no draft", body: `{"limit":1}`, status: 422, want: []string{"there is no draft"}},
		{name: "unknown field", body: `{` + draft + `,"twoard":[]}`, status: 422, want: []string{"body.twoard"}},
	} {
		sc.url = "/v1/riff"
		sc.run(t, h)
	}
}

func TestHouseScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	for _, sc := range []scenario{
		{name: "the cost of a drink", url: "/v1/cost", body: `{"drinks":["ropewalk"]}`, status: 200, want: []string{`"name":"Ropewalk"`, `"share_pct":`, `"unpriced":[`}},
		{name: "the cost of the menu", url: "/v1/cost", body: `{}`, status: 200, want: []string{`"name":"Ropewalk"`, `"name":"Brass Chronometer"`}},
		{name: "the cost of nothing known", url: "/v1/cost", body: `{"drinks":["ropewalk","ropey"]}`, status: 422, want: []string{"body.drinks[1]", "no drink of the house", "Ropewalk"}},
		{name: "a batch", url: "/v1/batch", body: `{"drink":"ropewalk","servings":10}`, status: 200, want: []string{`"servings":10`, `"lines":[{"name":`, `"keep_days":`}},
		{name: "a bottle", url: "/v1/batch", body: `{"drink":"ropewalk","bottle_ml":750,"from":"freezer"}`, status: 200, want: []string{`"total_ml":750`}},
		{name: "a batch of a draft", url: "/v1/batch", body: `{"text":"2 oz gin\n1 oz dry vermouth\nstir, up","servings":10}`, status: 200, want: []string{`"id":"","name":""`, `"servings":10`}},
		{name: "a batch without its juice", url: "/v1/batch", body: `{"text":"2 oz gin\n1 oz lemon juice\n1 oz simple syrup\nshake, up","servings":10,"juice_apart":true}`, status: 200, want: []string{`"apart":[{"name":"lemon juice","amount":1,"unit":"oz"}]`}},
		{name: "a batch of two drinks", url: "/v1/batch", body: `{"drink":"ropewalk","text":"2 oz gin\nstir","servings":10}`, status: 422, want: []string{"send one of them"}},
		{name: "a batch of what cannot be read", url: "/v1/batch", body: `{"text":"2 oz moon dust\nstir","servings":10}`, status: 422, want: []string{`"location":"line 1"`, "moon dust"}},
		{name: "a batch of no drink", url: "/v1/batch", body: `{"servings":10}`, status: 422, want: []string{"there is no draft"}},
		{name: "a batch of no size", url: "/v1/batch", body: `{"drink":"ropewalk"}`, status: 422, want: []string{"body.servings", "one of servings, bottle_ml and keg_litres"}},
		{name: "a batch of two sizes", url: "/v1/batch", body: `{"drink":"ropewalk","servings":10,"keg_litres":19}`, status: 422, want: []string{"body.servings"}},
		{name: "a lake", url: "/v1/batch", body: `{"drink":"ropewalk","servings":1e9}`, status: 422, want: []string{"body.servings", "100000"}},
		{name: "from the cellar", url: "/v1/batch", body: `{"drink":"ropewalk","servings":10,"from":"cellar"}`, status: 422, want: []string{"body.from"}},
		{name: "a batch of nothing known", url: "/v1/batch", body: `{"drink":"moon dust","servings":10}`, status: 422, want: []string{"body.drink"}},
		{name: "the palate", url: "/v1/palate", status: 200, want: []string{`{"right":[],"palates":[]}`}},
		{name: "a drink is right", url: "/v1/palate", body: `{"drink":"ropewalk"}`, status: 200, want: []string{`{"right":[],"palates":[]}`}},
		{name: "no drink is right", url: "/v1/palate", body: `{}`, status: 422, want: []string{"drink"}},
		{name: "one that is not marked", url: "/v1/palate", body: `{"drink":"unmarked","undo":true}`, status: 422, want: []string{"body.drink"}},
	} {
		sc.run(t, h)
	}
	mark := scenario{name: "by who may not", url: "/v1/palate", body: `{"drink":"ropewalk"}`, status: 403, want: []string{"lead"}}
	s, _ = serverFor(t, Options{Keeper: noted{}, Editor: func(context.Context) Editor { return Editor{MayNote: true} }})
	mark.run(t, s.Handler())
	for _, sc := range []scenario{
		{name: "the floor names nothing", url: "/v1/names", body: `{"words":"Old Harbour","kind":"vodka"}`, status: 403, want: []string{"lead"}},
		{name: "the floor marks", url: "/v1/marks", body: `{"out":["mint"]}`, status: 200, want: []string{`"stock":[{"id":`}},
		{name: "the floor tastes", url: "/v1/tastings", body: quoteServed("falernum"), status: 200, want: []string{`"tastings":[`}},
	} {
		sc.run(t, s.Handler())
	}
	s, _ = serverFor(t, Options{Keeper: noted{}, Editor: func(context.Context) Editor { return Editor{} }})
	for _, sc := range []scenario{
		{name: "nobody names", url: "/v1/names", body: `{"words":"Old Harbour","kind":"vodka"}`, status: 403, want: []string{"lead"}},
		{name: "everybody reads names", url: "/v1/names", status: 200, want: []string{`"names":[]`}},
		{name: "nobody marks", url: "/v1/marks", body: `{"out":["mint"]}`, status: 403, want: []string{"floor"}},
		{name: "nobody tastes", url: "/v1/tastings", body: quoteServed("falernum"), status: 403, want: []string{"floor"}},
		{name: "everybody reads marks", url: "/v1/marks", status: 200},
		{name: "everybody reads tastings", url: "/v1/tastings", status: 200},
	} {
		sc.run(t, s.Handler())
	}
	bare, err := NewServer(always(servicetest.Demo(t)), Options{})
	require.NoError(t, err)
	mark.name, mark.want = "where nothing is kept", []string{"no changes"}
	mark.run(t, bare.Handler())
}

// A house that no longer follows its store is not ready, but still answers.
func TestLostHouseIsNotReady(t *testing.T) {
	s, _ := serverFor(t, Options{Ready: func() error { return service.ErrLost }})
	for _, sc := range []scenario{
		{name: "ready", url: "/readyz", status: 503, want: []string{"start it again"}},
		{name: "health", url: "/healthz", status: 200},
		{name: "find", url: "/v1/ingredients?q=gin", status: 200},
	} {
		sc.run(t, s.Handler())
	}
}

func TestReadingScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	for _, sc := range []scenario{
		{name: "find", url: "/v1/ingredients?q=lemon+juice", status: 200, want: []string{`{"hits":[{"id":"lemon-juice"`, `"total":`, `"classes":[{`},
			headers: map[string]string{"Cache-Control": "max-age=60"}},
		{name: "find all", url: "/v1/ingredients", status: 200},
		{name: "an empty form", url: "/v1/ingredients?q=&class=&family=&bitter_min=&abv_max=&avoid=&limit=", status: 200},
		{name: "filters", url: "/v1/ingredients?class=liqueur&family=orange&bitter_min=5&abv_max=45&avoid=milk&avoid=eggs&limit=5", status: 200, want: []string{`"class":"liqueur"`}},
		{name: "what nobody has stated", url: "/v1/ingredients?class=amaro&avoid=milk", status: 200, want: []string{`"hits":[]`}},
		{name: "like", url: "/v1/ingredients?like=orgeat&limit=3", status: 200, wantNot: []string{`"id":"orgeat"`}},
		{name: "nothing", url: "/v1/ingredients?q=zzzzzzzz", status: 200, want: []string{`"hits":[]`, `"total":0`}},
		{name: "an abv of 0", url: "/v1/ingredients?abv_max=0&limit=100", status: 200, wantNot: []string{`"class":"gin"`}},
		{name: "limit 0", url: "/v1/ingredients?limit=0", status: 422, want: []string{"query.limit"}},
		{name: "limit 101", url: "/v1/ingredients?limit=101", status: 422},
		{name: "limit in words", url: "/v1/ingredients?limit=ten", status: 422, want: []string{"integer", `"value":"ten"`}},
		{name: "unknown class", url: "/v1/ingredients?class=potion", status: 422, want: []string{"query.class", "amaro"}},
		{name: "unknown family", url: "/v1/ingredients?family=potion", status: 422, want: []string{"query.family", "citrus"}},
		{name: "unknown allergen", url: "/v1/ingredients?avoid=gravity", status: 422, want: []string{"query.avoid[0]", "gravity"}},
		{name: "allergens in one word", url: "/v1/ingredients?avoid=milk,eggs", status: 422},
		{name: "unknown like", url: "/v1/ingredients?like=moon-dust", status: 422, want: []string{"query.like"}},
		{name: "bitter NaN", url: "/v1/ingredients?bitter_min=NaN", status: 422, want: []string{"query.bitter_min"}},
		{name: "bitter Inf", url: "/v1/ingredients?abv_max=Inf", status: 422, want: []string{"query.abv_max"}},
		{name: "bitter below zero", url: "/v1/ingredients?bitter_min=-1", status: 422, want: []string{"query.bitter_min"}},
		{name: "unknown parameter", url: "/v1/ingredients?classs=gin", status: 422, want: []string{"query.classs", "use q, class"}},
		{name: "twice", url: "/v1/ingredients?q=gin&q=rum", status: 422, want: []string{"query.q", "2 times"}},
		{name: "a broken query", url: "/v1/ingredients?q=%zz", status: 400, want: []string{"%25"}},
		{name: "a long query", url: "/v1/ingredients?q=" + strings.Repeat("x", 201), status: 422, want: []string{"query.q"}},
		{name: "profile", url: "/v1/ingredients/orgeat", status: 200, want: []string{`"id":"orgeat"`, `"sugar_g_per_l":`, `"tree nuts"`, `"provenance":{"abv_pct":`, `"unit":"oz"`, `"leads":[{"material":"almond"`, `"name":"benzaldehyde","importance":1,"threshold_ug_per_l":350`, `"colour":{"rgb":"#`}},
		{name: "the tannin of a tea", url: "/v1/ingredients/black-tea", status: 200, want: []string{`"tannin_g_per_l":1.1`, `"tannin_g_per_l":{"value":1.1,"spread":0.2,"origin":"computed"`}},
		{name: "what is stated of a profile", url: "/v1/ingredients/cola", status: 200, want: []string{`"caffeine_mg_per_l":93.3`, `"water_g_per_l":9`, `"stated":{"abv_pct":{"value":0,"spread":0,"origin":"published"`, `"caffeine_mg_per_l":{"value":93.3`}, wantNot: []string{`"fat_g_per_l":{"value":1`}},
		{name: "what sweetens without sugar", url: "/v1/ingredients/diet-tonic-water", status: 200, want: []string{`"sweeteners_g_per_l":80`, `"sweet_g_per_l":80.6`, `"origin":"computed from memory"`}},
		{name: "unknown profile", url: "/v1/ingredients/moon-dust", status: 404, want: []string{`"path.id"`, "moon-dust"}},
		{name: "profile by its alias", url: "/v1/ingredients/gin", status: 404, want: []string{"london-dry-gin"}},
		{name: "a long id", url: "/v1/ingredients/" + strings.Repeat("x", 300), status: 422},
		{name: "families", url: "/v1/templates", status: 200, want: []string{`"id":"sour"`, `"axes":["strong","sweet","sour"]`, `"ratio":{"sour":3`, `"ratio_fitted":{`, `"drinks":`}},
		{name: "health", url: "/healthz", status: 200, want: []string{`{"status":"ok"}`}},
		{name: "health, HEAD", method: "HEAD", url: "/healthz", status: 200},
		{name: "ready", url: "/readyz", status: 200, want: []string{`"ready"`, `"ingredients":`}},
		{name: "OpenAPI", url: "/openapi.json", status: 200, want: []string{`"openapi":"3.1.0"`}},
		{name: "metrics", url: "/metrics", status: 200, want: []string{`counterpour_http_requests_total{method="GET",route="/v1/ingredients/{id}"`[:60], "counterpour_ingredients", `route="/v1/ingredients/:id"`}},
		{name: "no docs", url: "/docs", status: 404},
		{name: "no schemas", url: "/schemas/ScoreAnswer.json", status: 404},
		{name: "unknown under v1", url: "/v1/nothing", status: 404, want: []string{"/openapi.json"}},
		{name: "a slash too many", url: "/v1/templates/", status: 404},
		{name: "the root", url: "/", status: 404},
		{name: "POST to a GET", method: "POST", url: "/v1/templates", status: 405, headers: map[string]string{"Allow": "GET"}},
		{name: "HEAD of a POST", method: "HEAD", url: "/v1/score", status: 405},
	} {
		if sc.method == "HEAD" {
			w := httptest.NewRecorder()
			h.ServeHTTP(w, sc.request())
			assert.Equal(t, sc.status, w.Code, sc.name)
			assert.Empty(t, w.Body.String(), sc.name)
			continue
		}
		sc.run(t, h)
	}
}

// TestConcurrentRequests checks that answers do not depend on other requests at the same
// time.
func TestConcurrentRequests(t *testing.T) {
	s, _ := serverFor(t, Options{})
	requests := []scenario{
		{url: "/v1/score", body: quote(goodText)},
		{url: "/v1/score", body: quote("2 oz gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up")},
		{url: "/v1/cover", body: strings.TrimSuffix(quote(goodText), "}") + `,"missing":"simple syrup","max_parts":1}`},
		{url: "/v1/ingredients?q=lemon"}, {url: "/v1/ingredients/orgeat"}, {url: "/v1/templates"}, {url: "/v1/nothing"},
		{url: "/v1/score", body: `{"txet":1}`},
	}
	ask := func(i int) string {
		w := httptest.NewRecorder()
		s.Handler().ServeHTTP(w, requests[i].request())
		return w.Body.String()
	}
	want := make([]string, len(requests))
	for i := range requests {
		want[i] = ask(i)
	}
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for i := range requests {
				assert.Equal(t, want[i], ask(i))
			}
		})
	}
	all.Wait()
}

func TestCompressedBodiesAreRefused(t *testing.T) {
	s, _ := serverFor(t, Options{})
	r := httptest.NewRequest("POST", "/v1/score", strings.NewReader(quote(goodText)))
	r.Header.Set("Content-Type", mediaJSON)
	r.Header.Set("Content-Encoding", "gzip")
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, r)
	assert.Equal(t, http.StatusUnsupportedMediaType, w.Code)
	checkProblem(t, http.StatusUnsupportedMediaType, w)
}

func TestPages(t *testing.T) {
	pages := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		_, _ = io.WriteString(w, "page "+r.URL.Path) // without a status
	})
	s, _ := serverFor(t, Options{Pages: pages})
	for _, sc := range []scenario{
		{name: "root", url: "/", status: 200, want: []string{"page /"}},
		{name: "anything else", url: "/score?x=1&x=2", status: 200, want: []string{"page /score"}},
		{name: "never under v1", url: "/v1/nothing", status: 404, wantNot: []string{"page"}},
		{name: "v1 itself", url: "/v1", status: 404, wantNot: []string{"page"}},
		{name: "a wrong method of an endpoint", method: "PUT", url: "/v1/score", status: 405},
		{name: "endpoints first", url: "/healthz", status: 200, want: []string{"ok"}},
	} {
		sc.run(t, s.Handler())
	}
	w := httptest.NewRecorder()
	s.Handler().ServeHTTP(w, httptest.NewRequest("GET", "/", nil))
	assert.Empty(t, w.Header().Get("Content-Security-Policy"), "pages say for themselves what they load")
}

func TestStarting(t *testing.T) {
	for _, sc := range []scenario{
		{name: "health", url: "/healthz", status: 200, want: []string{"ok"}},
		{name: "ready", url: "/readyz", status: 503, want: []string{"being opened"}, headers: map[string]string{"Retry-After": "1"}},
		{name: "score", url: "/v1/score", body: quote(goodText), status: 503},
	} {
		sc.run(t, Starting())
	}
	r := httptest.NewRequest(http.MethodGet, "/board", nil)
	r.Header.Set("Accept", "text/html")
	w := httptest.NewRecorder()
	Starting().ServeHTTP(w, r)
	assert.Equal(t, http.StatusServiceUnavailable, w.Code)
	assert.Contains(t, w.Body.String(), "asks again by itself")
}
