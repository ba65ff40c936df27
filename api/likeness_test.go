package api

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

func TestLikenessScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	many := strings.Repeat(`"gin",`, 200)
	for _, sc := range []scenario{
		{name: "materials", body: `{"of":"materials","names":["lemon peel","Single malt whisky","violets"]}`, status: 200,
			want: []string{`{"asked":"violets","id":"violet","name":"violet"}`, `"unknown":[]`, `"aroma":[[1,`}},
		{name: "a material that is a bottle too", body: `{"of":"materials","names":["cognac","gin"]}`, status: 200,
			want: []string{`"id":"cognac"`, `"id":"london-dry-gin"`}},
		{name: "ingredients by alias and slip", body: `{"of":"ingredients","names":["dry gin","orgeatt","new charred oak"]}`, status: 200,
			want: []string{`"id":"london-dry-gin"`, `"id":"orgeat"`, `"id":"new charred oak"`}},
		{name: "one", body: `{"of":"ingredients","names":["gin"]}`, status: 200, want: []string{`"aroma":[[1]]`}},
		{name: "unknown", body: `{"of":"materials","names":["moon dust","rose"]}`, status: 422, want: []string{"body.names[0]", "moon dust"}},
		{name: "unknown skipped", body: `{"of":"materials","names":["moon dust","rose"],"skip_unknown":true}`, status: 200,
			want: []string{`"unknown":["moon dust"]`, `"aroma":[[1]]`}},
		{name: "all skipped", body: `{"of":"materials","names":["moon dust"],"skip_unknown":true}`, status: 200, want: []string{`"names":[]`, `"aroma":[]`}},
		{name: "no names", body: `{"of":"materials","names":[]}`, status: 422, want: []string{"body.names"}},
		{name: "too many", body: `{"of":"materials","names":[` + many + `"gin"]}`, status: 422, want: []string{"body.names"}},
		{name: "of what", body: `{"names":["gin"]}`, status: 422, want: []string{"of"}},
		{name: "of spirits", body: `{"of":"spirits","names":["gin"]}`, status: 422, want: []string{"body.of"}},
		{name: "unknown field", body: `{"of":"materials","names":["rose"],"nmaes":[]}`, status: 422, want: []string{"body.nmaes"}},
		{name: "GET", method: "GET", status: 405},
	} {
		sc.url = "/v1/likeness"
		sc.run(t, h)
	}
}

// The table is symmetric, in the order of the names, whatever that order is.
func TestLikenessDoesNotDependOnOrder(t *testing.T) {
	s, _ := serverFor(t, Options{})
	ask := func(names ...string) [][]float64 {
		quoted := make([]string, len(names))
		for i, n := range names {
			quoted[i] = fmt.Sprintf("%q", n)
		}
		var a shape.LikenessAnswer
		require.NoError(t, json.Unmarshal([]byte(sent(t, s, "/v1/likeness", `{"of":"ingredients","names":[`+strings.Join(quoted, ",")+`]}`)), &a))
		return a.Aroma
	}
	there, back := ask("gin", "mezcal", "orgeat", "soda water"), ask("soda water", "orgeat", "mezcal", "gin")
	for i := range there {
		for j := range there {
			assert.InDelta(t, there[i][j], there[j][i], 0)
			assert.InDelta(t, there[i][j], back[3-i][3-j], 1e-4)
			assert.GreaterOrEqual(t, there[i][j], 0.0)
			assert.LessOrEqual(t, there[i][j], 1.0)
		}
	}
}
