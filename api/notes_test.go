package api

import (
	"context"
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/api/service/servicetest"
	"counterpour/data/house"
	"counterpour/data/house/storetest"
)

// quoteServed is a cover that a guest kept.
func quoteServed(missing string) string {
	body, _ := json.Marshal(map[string]string{"text": exampleServed, "missing": missing, "verdict": "kept"}) // words alone
	return string(body)
}

// workingHouse is a server over the demo house in a store.
func workingHouse(t *testing.T) *Server {
	t.Helper()
	k := servicetest.Demo(t).Kitchen
	s := storetest.Memory(t)
	h, err := k.Catalogue.Demo()
	require.NoError(t, err)
	require.NoError(t, service.Fill(t.Context(), s, h, time.Now()))
	v, err := service.Open(t.Context(), k, s, service.About{}, nil)
	require.NoError(t, err)
	t.Cleanup(v.Close)
	server, err := NewServer(v.Now, Options{Keeper: v, Editor: func(context.Context) Editor {
		return Editor{By: house.By{Actor: "Wren", At: time.Now()}, MayNote: true, MayEdit: true}
	}})
	require.NoError(t, err)
	return server
}

// Marks and tastings sent to the API are in the answer, and stored.
func TestMarksAndTastings(t *testing.T) {
	h := workingHouse(t).Handler()
	const out = `"out":[`
	for _, sc := range []scenario{
		{name: "as it opens", url: "/v1/marks", status: 200, want: []string{out, `{"id":"falernum","name":"falernum"}`}},
		{name: "back by its name", url: "/v1/marks", body: `{"back":["Falernum"],"out":["mint"]}`, status: 200, want: []string{`"out":[{"id":"artichoke-amaro"`, `{"id":"mint"`}},
		{name: "once more", url: "/v1/marks", body: `{"out":["mint"]}`, status: 200, want: []string{`{"id":"mint"`}},
		{name: "nothing", url: "/v1/marks", body: `{}`, status: 422, want: []string{"body.out", "nothing is marked"}},
		{name: "unknown, not kept, and both ways", url: "/v1/marks", body: `{"out":["moon dust","mint"],"back":["mint"]}`, status: 422,
			want: []string{"body.out[0]", "moon dust", "body.back[0]", "out and back at once"}},
		{name: "a verdict", url: "/v1/tastings", body: quoteServed("falernum"), status: 200,
			want: []string{`{"missing":{"id":"falernum","name":"falernum"},"parts":[{"id":"allspice-dram","name":"allspice dram"}],"liked":1}`}},
		{name: "a score", url: "/v1/tastings", body: `{"text":"Leeward Almanac\n2 oz aged rum","missing":"falernum","score":5}`, status: 200, want: []string{`"parts":[],"liked":0.5`}},
		{name: "both", url: "/v1/tastings", body: `{"text":"Leeward Almanac\n2 oz aged rum","missing":"falernum","score":5,"verdict":"kept"}`, status: 422, want: []string{"body.verdict"}},
		{name: "neither", url: "/v1/tastings", body: `{"text":"Leeward Almanac\n2 oz aged rum","missing":"falernum"}`, status: 422, want: []string{"body.verdict"}},
		{name: "a score beyond", url: "/v1/tastings", body: `{"text":"Leeward Almanac\n2 oz aged rum","missing":"falernum","score":11}`, status: 422, want: []string{"body.score"}},
		{name: "a verdict nobody knows", url: "/v1/tastings", body: `{"text":"Leeward Almanac\n2 oz aged rum","missing":"falernum","verdict":"unknown"}`, status: 422, want: []string{"body.verdict"}},
		{name: "no drink of the house", url: "/v1/tastings", body: `{"text":"Nowhere\n2 oz aged rum","missing":"falernum","verdict":"kept"}`, status: 422, want: []string{"Nowhere"}},
		{name: "what was missing is unknown", url: "/v1/tastings", body: quoteServed("moon dust"), status: 422, want: []string{"body.missing"}},
		{name: "it stays", url: "/v1/tastings", status: 200, want: []string{`"liked":1`, `"liked":0.5`}},
	} {
		sc.run(t, h)
	}
}

// A word of the house is used by the draft reader until it is forgotten.
func TestNames(t *testing.T) {
	h := workingHouse(t).Handler()
	const draft = `{"text":"2 oz Old Harbour\n1 oz lime juice\n3/4 oz simple syrup"}`
	for _, sc := range []scenario{
		{name: "no words yet", url: "/v1/names", status: 200, want: []string{`"names":[]`}},
		{name: "a draft that asks", url: "/v1/score", body: draft, status: 422, want: []string{"Old Harbour"}},
		{name: "words that mean another", url: "/v1/names", body: `{"words":"rye","kind":"vodka"}`, status: 422, want: []string{"body.words", "means rye whiskey already"}},
		{name: "an unknown kind", url: "/v1/names", body: `{"words":"Old Harbour","kind":"moon dust"}`, status: 422, want: []string{"body.kind", "moon dust"}},
		{name: "nothing to forget", url: "/v1/names", body: `{"words":"Old Harbour","undo":true}`, status: 422, want: []string{"body.words"}},
		{name: "named", url: "/v1/names", body: `{"words":"Old Harbour","kind":"London dry gin"}`, status: 200, want: []string{`"names":[{"words":"Old Harbour","id":"london-dry-gin","name":"London dry gin"}]`}},
		{name: "a draft that knows", url: "/v1/score", body: draft, status: 200, want: []string{`"id":"london-dry-gin"`}},
		{name: "forgotten", url: "/v1/names", body: `{"words":"old harbour","undo":true}`, status: 200, want: []string{`"names":[]`}},
	} {
		sc.run(t, h)
	}
}
