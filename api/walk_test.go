package api

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

const walkTo = `"to":{"text":"2 oz blanco tequila\n1 oz triple sec\n3/4 oz lime juice\nshake, up"}`

// Invented.
const walkPrices = `"prices_per_ml":{"london-dry-gin":0.02,"lemon-juice":0.01,"simple-syrup":0.002,"blanco-tequila":0.03,"triple-sec":0.03,"lime-juice":0.01}`

func TestWalkScenarios(t *testing.T) {
	s, _ := serverFor(t, Options{})
	h := s.Handler()
	from := `"from":{` + sourDraft + `},`
	for _, sc := range []scenario{
		{name: "two drafts", body: `{` + from + walkTo + `,"steps":2}`, status: 200,
			want: []string{`"stops":[{"spec":`, `"hop_jnd":0,`, `"pour_ml":60`, `"ethanol_g":`, `"country":"United States"`, `"key":"alcohol"`, `"key":"medicines"`, "The first drink"}},
		{name: "from a drink of the house", body: `{"from":{"drink":"ropewalk"},` + walkTo + `}`, status: 200, want: []string{`"name":"Ropewalk"`}},
		{name: "from fields", body: `{"from":{"spec":{"method":"shake","service":"up","pours":[{"ingredient":"gin","amount":2,"unit":"oz"},{"ingredient":"lemon juice","amount":0.75,"unit":"oz"},{"ingredient":"simple syrup","amount":0.75,"unit":"oz"}]}},` + walkTo + `}`, status: 200},
		{name: "in larger pours", body: `{` + from + walkTo + `,"steps":1,"pour_ml":90}`, status: 200, want: []string{`"pour_ml":90`}},
		{name: "an end that the guest must not have", body: `{"from":{"text":"2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\nshake, up"},` + walkTo + `,"avoid":["tree nuts"]}`, status: 422,
			want: []string{"body.from.pours[2]", "orgeat is not for this guest"}},
		{name: "weaker than its ends", body: `{` + from + walkTo + `,"max_abv_pct":10}`, status: 422, want: []string{"body.from", "body.to", "above the limit of 10.0"}},
		{name: "dearer than its ends may be", body: `{` + from + walkTo + `,"max_cost":0.05,` + walkPrices + `}`, status: 422, want: []string{"body.from", "above the limit of 0.05"}},
		{name: "within both", body: `{` + from + walkTo + `,"max_abv_pct":40,"max_cost":100,` + walkPrices + `}`, status: 200, want: []string{`"stops":[`}},
		{name: "a label decides", body: `{"from":{"text":"2 oz bourbon\n1 tsp demerara syrup\n2 dashes aromatic bitters\nstir, rocks"},` + walkTo + `,"diet":["vegan"]}`, status: 200, want: []string{`"stops":[],`, `"if_label_clears":{"read":[{"id":"aromatic-bitters"`}},
		{name: "an alcohol-free guest", body: `{` + from + walkTo + `,"diet":["alcohol-free"]}`, status: 422, want: []string{"body.from.pours[0]", "body.to.pours[0]"}},
		{name: "from a drink and itself", body: `{` + from + `"to":{` + sourDraft + `}}`, status: 422, want: []string{"body.steps", "serve one or the other"}},
		{name: "no drink of the house", body: `{"from":{"drink":"rope walkway"},` + walkTo + `}`, status: 422, want: []string{"body.from.drink", "nearest: Ropewalk"}},
		{name: "nothing like it", body: `{"from":{"drink":"zzz"},` + walkTo + `}`, status: 422, want: []string{"body.from.drink", "as the menu names it"}, wantNot: []string{"nearest"}},
		{name: "a drink and a text", body: `{"from":{"drink":"Ropewalk",` + sourDraft + `},` + walkTo + `}`, status: 422, want: []string{"body.from", "both given"}},
		{name: "half an end", body: `{"from":{},` + walkTo + `}`, status: 422, want: []string{"body.from", "there is no draft"}},
		{name: "no end", body: `{` + from[:len(from)-1] + `}`, status: 422, want: []string{"to"}},
		{name: "faults at both ends", body: `{"from":{"text":"2 oz moon dust"},"to":{"text":"2 oz sun dust"}}`, status: 422, want: []string{"body.from.line 1", "moon dust", "body.to.line 1", "sun dust"}},
		{name: "no steps", body: `{` + from + walkTo + `,"steps":0}`, status: 422, want: []string{"body.steps"}},
		{name: "too many steps", body: `{` + from + walkTo + `,"steps":9}`, status: 422, want: []string{"body.steps"}},
		{name: "a bucket of each", body: `{` + from + walkTo + `,"pour_ml":1000}`, status: 422, want: []string{"body.pour_ml"}},
		{name: "unknown allergen", body: `{` + from + walkTo + `,"avoid":["gravity"]}`, status: 422, want: []string{"body.avoid[0]"}},
		{name: "unknown field", body: `{` + from + walkTo + `,"stpes":3}`, status: 422, want: []string{"body.stpes"}},
		{name: "unknown field at an end", body: `{"from":{"drnk":"x"},` + walkTo + `}`, status: 422, want: []string{"body.from.drnk"}},
		{name: "GET", method: "GET", status: 405},
	} {
		sc.url = "/v1/walk"
		sc.run(t, h)
	}
}

// The alcohol of the walk is that of its small pours: 60 mL of each drink, at
// 0.789 g/mL of ethanol (20 °C).
func TestAlcoholOfAWalk(t *testing.T) {
	s, _ := serverFor(t, Options{})
	var a shape.WalkAnswer
	require.NoError(t, json.Unmarshal([]byte(sent(t, s, "/v1/walk", `{"from":{`+sourDraft+`},`+walkTo+`,"steps":3}`)), &a))
	require.Len(t, a.Stops, 5)
	var grams float64
	for _, x := range a.Stops {
		assert.InDelta(t, 60*x.ABVPct/100*0.789, x.EthanolG, 0.02)
		grams += x.EthanolG
	}
	assert.InDelta(t, grams, a.EthanolG, 0.03)
	assert.InDelta(t, 5*60, a.VolumeML, 1e-9)
	for _, x := range a.Servings {
		assert.InDelta(t, a.EthanolG/x.Grams, x.Count, 0.01, x.Country)
	}

	require.NoError(t, json.Unmarshal([]byte(sent(t, s, "/v1/walk", `{"from":{`+sourDraft+`},`+walkTo+`,"steps":1,"pour_ml":200}`)), &a))
	var volume float64
	for _, x := range a.Stops {
		volume += min(200, x.VolumeML)
	}
	assert.InDelta(t, volume, a.VolumeML, 0.02, "no more than there is of a drink")
	assert.Less(t, a.VolumeML, 600.0)
}
