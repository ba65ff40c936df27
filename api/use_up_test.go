package api

import (
	"strings"
	"testing"
)

func TestUseUpScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	many := strings.TrimSuffix(strings.Repeat(`"mezcal",`, 25), ",")
	for _, sc := range []scenario{
		{name: "three bottles", body: `{"bottles":["fino sherry","Apricot liqueur","mezcal"],"limit":5}`, status: 200,
			want: []string{`"house":"The Halyard Room"`, `"invented":true`, `"drafts":[{"spec":`, `"uses":[{"id":"`, `"unused":[]`, `"least_jnd":3`, `"unit":"oz"`}, wantNot: []string{`"unit":"ml"`}},
		{name: "in millilitres, from the stock that is sent", body: `{"bottles":["mezcal"],"stock":["lime-juice","agave-syrup","pineapple-juice"],"unit":"ml","limit":2}`, status: 200,
			want: []string{`"house":""`, `"unit":"ml"`}, wantNot: []string{`"unit":"oz"`}},
		{name: "for a guest", body: `{"bottles":["orgeat","mezcal"],"avoid":["tree nuts"]}`, status: 200,
			want: []string{`"unused":[{"id":"orgeat","name":"orgeat","why":"guest"`, "must not have it"}, wantNot: []string{`"ingredient":"orgeat"`, "almond", "amaretto"}},
		{name: "one bottle that nobody knows", body: `{"bottles":["mezcal","cucumber foam"],"limit":3}`, status: 422, want: []string{"body.bottles[1]", "cucumber foam"}},
		{name: "a bottle that nothing moves", body: `{"bottles":["mezcal"],"stock":["soda-water"],"families":["flip"]}`, status: 200, want: []string{`"drafts":[]`, `"why":"place"`}},
		{name: "in one family", body: `{"bottles":["mezcal","blanco tequila"],"families":["sour"],"limit":4}`, status: 200, want: []string{`"drafts":[{`}},
		{name: "within a limit", body: `{"bottles":["mezcal"],"toward":["below 8 %"],"limit":3}`, status: 200},
		{name: "what has run out is not poured beside it", body: `{"bottles":["mezcal"],"limit":60}`, status: 200, wantNot: []string{`"ingredient":"triple sec"`, `"ingredient":"falernum"`}},
		{name: "no bottle", body: `{"bottles":[]}`, status: 422, want: []string{"body.bottles"}},
		{name: "left out", body: `{}`, status: 422, want: []string{"bottles"}},
		{name: "too many bottles", body: `{"bottles":[` + many + `]}`, status: 422, want: []string{"body.bottles"}},
		{name: "unknown bottles", body: `{"bottles":["moon dust","sun dust"],"avoid":["gravity"]}`, status: 422, want: []string{"body.bottles[0]", "body.bottles[1]", "body.avoid[0]", "nearest"}},
		{name: "a direction without a drink", body: `{"bottles":["mezcal"],"toward":["more bitter"]}`, status: 422, want: []string{"body.toward", "limits only"}},
		{name: "unknown family", body: `{"bottles":["mezcal"],"families":["potion"]}`, status: 422, want: []string{"body.families", "potion"}},
		{name: "unknown unit", body: `{"bottles":["mezcal"],"unit":"bucket"}`, status: 422, want: []string{"body.unit"}},
		{name: "unknown id in stock", body: `{"bottles":["mezcal"],"stock":["dust"]}`, status: 422, want: []string{"body.stock[0]"}},
		{name: "no drafts", body: `{"bottles":["mezcal"],"limit":0}`, status: 422, want: []string{"body.limit"}},
		{name: "a limit without prices", body: `{"bottles":["mezcal"],"max_cost":1}`, status: 422, want: []string{"body.max_cost"}},
		{name: "unknown field", body: `{"bottles":["mezcal"],"botles":[]}`, status: 422, want: []string{"body.botles"}},
		{name: "GET", method: "GET", status: 405},
	} {
		sc.url = "/v1/use-up"
		sc.run(t, h)
	}
}
