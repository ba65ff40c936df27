package api

import (
	"encoding/json"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
	"counterpour/api/shape/training"
	"counterpour/flavor/drill"
)

func TestTrainingScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	for _, sc := range []scenario{
		{name: "a round", url: "/v1/round", body: `{"kind":"mend","axis":"sweet","seed":"a"}`, status: 200, want: []string{`"round":{"kind":"mend","axis":"sweet"`, `"look":"`, `"drinks":[{"spec":{"name":`, `"allergens":[`}, wantNot: []string{`"sayings"`}},
		{name: "a round of a kind that has no axis", url: "/v1/round", body: `{"kind":"guess","seed":"a"}`, status: 200, want: []string{`"round":{"kind":"guess","size_jnd":`}},
		{name: "what guests say", url: "/v1/round", body: `{"kind":"fault","seed":"a"}`, status: 200, want: []string{`"sayings":[{"axis":"strong","high":true,"plain":"too much strength","guest":"hot, boozy","also":["strong"`}},
		{name: "no such kind", url: "/v1/round", body: `{"kind":"darts"}`, status: 422, want: []string{"body.kind"}},
		{name: "no kind", url: "/v1/round", body: `{}`, status: 422, want: []string{"kind"}},
		{name: "an axis that the kind has not", url: "/v1/round", body: `{"kind":"guess","axis":"sour"}`, status: 422, want: []string{"body.axis", "leave the axis out"}},
		{name: "too easy", url: "/v1/round", body: `{"kind":"fault","size_jnd":30}`, status: 422, want: []string{"body.size_jnd"}},
		{name: "a seed in words", url: "/v1/round", body: `{"kind":"fault","seed":"a seed"}`, status: 422, want: []string{"body.seed", "digits and letters"}},
		{name: "no such allergen", url: "/v1/round", body: `{"kind":"fault","avoid":["gravity"]}`, status: 422, want: []string{"body.avoid[0]", "tree nuts"}},
		{name: "a round that is no more", url: "/v1/round/grade", body: `{"round":{"kind":"guess","size_jnd":6,"seed":"a","menu":false,"look":"00"},"answer":{"abv_pct":12,"volume_ml":150}}`, status: 422, want: []string{"body.round", "ask for another"}},
		{name: "a spoilt round", url: "/v1/round/grade", body: `{"round":{"kind":"guess","size_jnd":6,"seed":"a","menu":false,"look":"xyz"},"answer":{}}`, status: 422, want: []string{"body.round.look", "whole round"}},
		{name: "an aroma that is none", url: "/v1/round/grade", body: `{"round":{"kind":"cover","size_jnd":6,"seed":"a","menu":false,"look":"00"},"answer":{"lost":["moon"]}}`, status: 422, want: []string{"body.answer.lost[0]"}},

		{name: "what was seen before", url: "/v1/round", body: `{"kind":"family","seed":"a","seen":["1"]}`, status: 200, want: []string{`"marks":["`}},
		{name: "no mark", url: "/v1/round", body: `{"kind":"family","seen":["1","!"]}`, status: 422, want: []string{"body.seen[1]"}},
		{name: "a flight of water", url: "/v1/flight", body: `{"text":"2 oz gin\n1/2 oz dry vermouth\nstir, up","axis":"long"}`, status: 200, want: []string{`"watered":true`}},
		{name: "a flight", url: "/v1/flight", body: `{"drink":"ropewalk","axis":"strong","seed":"a"}`, status: 200, want: []string{`"seed":"a"`, `"builds":[{"code":`, `"orders":[[`, `"ethanol_g":`, `"lesson":"`, `"care":[{"key":"`}},
		{name: "a flight of nothing", url: "/v1/flight", body: `{"axis":"strong"}`, status: 422, want: []string{"there is no draft"}},
		{name: "a flight along nothing", url: "/v1/flight", body: `{"drink":"ropewalk","axis":"loud"}`, status: 422, want: []string{"body.axis"}},
		{name: "a flight of two", url: "/v1/flight", body: `{"drink":"ropewalk","axis":"strong","builds":2}`, status: 422, want: []string{"body.builds"}},
		{name: "a flight of too much", url: "/v1/flight", body: `{"drink":"ropewalk","axis":"strong","build_ml":120}`, status: 422, want: []string{"body.build_ml", "ethanol"}},
		{name: "a step too far", url: "/v1/flight", body: `{"text":"2 oz gin\n1/4 oz lemon juice\n1/4 oz simple syrup\nshake","axis":"strong","step_jnd":4,"builds":5}`, status: 422, want: []string{"body.step_jnd"}},

		{name: "a triangle", url: "/v1/triangle", body: `{"drink":"ropewalk","cover":"agave syrup","seed":"a"}`, status: 200, want: []string{`"tasters":`, `"handed":[{"order":"`, `"a":{"spec":`, `"b":{"spec":`, `"instead":{"id":`}},
		{name: "what the house does not know", url: "/v1/triangle", body: `{"drink":"moon punch","cover":"sun dust","glass_ml":10}`, status: 200, want: []string{`"assumed":true`, `"unknown":["moon punch","sun dust"]`}, wantNot: []string{`"a":`, `"instead"`}},
		{name: "a drink against itself", url: "/v1/triangle", body: `{"drink":"ropewalk","cover":"ropewalk"}`, status: 422, want: []string{"body.cover"}},
		{name: "glasses too large", url: "/v1/triangle", body: `{"drink":"moon punch","cover":"sun dust","glass_ml":100}`, status: 422, want: []string{"body.glass_ml", "the limit is"}},
		{name: "too few tasters", url: "/v1/triangle", body: `{"drink":"ropewalk","cover":"agave syrup","tasters":2}`, status: 422, want: []string{"body.tasters"}},

		{name: "a card", url: "/v1/templates/sour/card", status: 200, want: []string{`"id":"sour"`, `"ratio":"8.0 strong`, `"parts":[{"axis":"strong","share_pct":`, `"examples":[{"spec":{"name":`, `"proven":false`, `"allergens":[`, `"cautions":[{`, `"usual":"`}},
		{name: "a card of no family", url: "/v1/templates/cobbler/card", status: 404, want: []string{`"path.id"`, "cobbler", "use ", "sour"}},
		{name: "a card that is sent", method: "POST", url: "/v1/templates/sour/card", status: 405},
	} {
		sc.run(t, h)
	}
}

// Every kind of round is answered, and graded by what was asked for: the same round gives the
// same question, one right answer is called so, and a grade names its solution.
func TestRoundsAreGraded(t *testing.T) {
	s, _ := serverFor(t, Options{})
	ask := func(path string, body, into any) {
		t.Helper()
		sent, err := json.Marshal(body)
		require.NoError(t, err)
		sc, w := scenario{url: path, body: string(sent)}, httptest.NewRecorder()
		s.Handler().ServeHTTP(w, sc.request())
		require.Equal(t, 200, w.Code, w.Body.String())
		require.NoError(t, json.Unmarshal(w.Body.Bytes(), into))
	}
	for _, kind := range drill.Kinds() {
		var round, again training.RoundAnswer
		body := training.RoundBody{Kind: string(kind), Seed: "7", Avoid: []string{"eggs"}}
		ask("/v1/round", body, &round)
		ask("/v1/round", body, &again)
		assert.Equal(t, round, again, kind)
		for _, d := range round.Drinks {
			assert.False(t, slices.ContainsFunc(d.Allergens, func(a shape.Allergen) bool { return a.Allergen == "eggs" }), "%s holds what is avoided", d.Spec.Name)
		}
		right := 0
		for _, answer := range answersTo(&round) {
			var g training.GradeAnswer
			ask("/v1/round/grade", training.GradeBody{Round: round.Round, Answer: answer}, &g)
			assert.NotEmpty(t, g.Solution, kind)
			assert.Equal(t, g.Right, g.Points == 100 || g.Right, kind)
			if g.Right {
				right++
			}
			assert.Equal(t, kind == drill.KindFault || kind == drill.KindMend, g.Proper != nil, kind)
		}
		if kind != drill.KindGuess && kind != drill.KindMend && kind != drill.KindCover { // of these not every answer is tried
			assert.Positive(t, right, "%s: no answer is right", kind)
		}
	}
}

// answersTo lists the answers there are to a round; one of those to a guess and to a mend.
func answersTo(r *training.RoundAnswer) (out []training.GuessedBody) {
	for i := range r.Options {
		out = append(out, training.GuessedBody{Option: i})
	}
	for _, said := range r.Sayings {
		out = append(out, training.GuessedBody{Axis: said.Axis, High: said.High})
	}
	switch drill.Kind(r.Round.Kind) {
	case drill.KindOrder:
		for _, order := range [][]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}} {
			out = append(out, training.GuessedBody{Order: order})
		}
	case drill.KindGuess:
		out = append(out, training.GuessedBody{ABVPct: 12, VolumeML: 150})
	case drill.KindMend:
		out = append(out, training.GuessedBody{Pour: 0, Amount: 2})
	}
	return out
}

// Grading and planning say nothing of the answer before it is given.
func TestARoundDoesNotTellItsAnswer(t *testing.T) {
	s, _ := serverFor(t, Options{})
	sc, w := scenario{url: "/v1/round", body: `{"kind":"fault","axis":"sour","seed":"7"}`}, httptest.NewRecorder()
	s.Handler().ServeHTTP(w, sc.request())
	require.Equal(t, 200, w.Code)
	var all map[string]json.RawMessage
	require.NoError(t, json.Unmarshal(w.Body.Bytes(), &all))
	delete(all, "round")
	delete(all, "sayings") // lists every answer
	shown, err := json.Marshal(all)
	require.NoError(t, err)
	for _, leak := range []string{`"axis"`, `"seed"`, `"solution"`, `"proper"`, `"slip"`} {
		assert.False(t, strings.Contains(string(shown), leak), leak)
	}
}
