package api

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/servicetest"
	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// TestPoursOfEveryAnswer checks that pours have id, name, amount, unit and millilitres in
// every answer.
func TestPoursOfEveryAnswer(t *testing.T) {
	s, _ := serverFor(t, Options{})
	nutSour := `"text":"2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat\n6 mint leaves\nshake, up"`
	for _, c := range []struct{ url, body, list string }{
		{"/v1/riff", `{` + sourDraft + `,"limit":3}`, "riffs"},
		{"/v1/use-up", `{"bottles":["mezcal"],"limit":3}`, "drafts"},
		{"/v1/walk", `{"from":{` + nutSour + `},` + walkTo + `,"steps":1}`, "stops"},
		{"/v1/cover", `{` + nutSour + `,"missing":"orgeat","limit":3,"max_parts":1}`, "covers"},
	} {
		var answer map[string]json.RawMessage
		require.NoError(t, json.Unmarshal([]byte(sent(t, s, c.url, c.body)), &answer))
		var drinks []struct {
			Spec struct{ Pours []map[string]any }
		}
		require.NoError(t, json.Unmarshal(answer[c.list], &drinks))
		require.NotEmpty(t, drinks, c.url)
		for _, d := range drinks {
			require.NotEmpty(t, d.Spec.Pours, c.url)
			for _, p := range d.Spec.Pours {
				checkPour(t, c.url, p)
			}
		}
	}
}

func checkPour(t *testing.T, url string, p map[string]any) {
	t.Helper()
	id, _ := p["id"].(string)
	profile, ok := servicetest.Demo(t).Catalogue.ByID(id)
	require.True(t, ok, "%s: %v", url, p)
	assert.Equal(t, profile.Name, p["name"], url)
	unit, _ := p["unit"].(string)
	amount, _ := p["amount"].(float64)
	assert.Positive(t, amount, "%s: %v", url, p)
	ml, err := measure.ToML(amount, flavor.Unit(unit), profile)
	require.NoError(t, err, "%s: %v", url, p)
	assert.InDelta(t, ml, p["ml"], 0.005+1e-9, "%s: rounded to 0.01 mL: %v", url, p)
}
