package api

import (
	"encoding/json"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
)

// laid is what is on a sour, by what it has to be found to bring; common practice, no source.
var laid = []struct{ line, brings string }{
	{"garnish: toasted hazelnuts", "tree nuts"}, {"rim: crushed almonds", "tree nuts"}, {"garnish: almonds", "tree nuts"}, {"garnish: salted peanuts", "peanuts"}, {"garnish: marzipan", "tree nuts"},
	{"garnish: grated chocolate with peanuts", "peanuts"}, {"garnish: whipped cream", "milk"}, {"garnish: egg white foam", "eggs"}, {"rim: celery salt", "celery"},
	{"garnish: blue cheese olive and prosciutto", "milk"}, {"Garnish with crushed pistachios", "tree nuts"}, {"garnish: dragon dust", "tree nuts"},
	{"garnish: mint sprig, candied walnuts", "tree nuts"}, {"garnish: lime wheel (almond dust)", "tree nuts"}, {"garnish: squid ink salt", "molluscs"}, {"garnish: anchovy on a pick", "fish"}, {"rim: graham cracker crumbs", "gluten"},
}

const sourText = `Laid Sour\n2 oz gin\n.75 oz lime juice\n.75 oz simple syrup\nshake, up\n`

// What is laid on a drink is in its allergens; a cover and a riff for a guest leave it off and
// say so.
func TestWhatIsLaidOnADrinkCounts(t *testing.T) {
	s, _ := serverFor(t, Options{})
	ask := func(url, body string, into any) {
		w := httptest.NewRecorder()
		sc := scenario{url: url, body: body}
		s.Handler().ServeHTTP(w, sc.request())
		require.Equal(t, 200, w.Code, "%s: %s", body, w.Body)
		require.NoError(t, json.Unmarshal(w.Body.Bytes(), into))
	}
	for i, l := range laid {
		text := `{"text":"` + sourText + l.line + `"`
		var scored shape.ScoreAnswer
		ask("/v1/score", text+"}", &scored)
		assert.True(t, holds(scored.Allergens, l.brings), "%s: %v", l.line, scored.Allergens)
		if i%3 > 0 { // a search takes long
			continue
		}
		var covered shape.CoverAnswer
		ask("/v1/cover", text+`,"missing":"gin","limit":2,"avoid":["`+l.brings+`"]}`, &covered)
		assert.NotEmpty(t, covered.Covers, l.line)
		for _, c := range covered.Covers {
			assert.False(t, holds(c.Allergens, l.brings), "%s: %v", l.line, c.Allergens)
			assert.Contains(t, c.Text, "leave off", l.line)
			assert.NotEmpty(t, c.Spec.LeaveOff, l.line)
		}
	}
	var riffs shape.RiffAnswer
	ask("/v1/riff", `{"text":"`+sourText+laid[0].line+`","limit":2,"avoid":["tree nuts"]}`, &riffs)
	assert.NotEmpty(t, riffs.Riffs)
	for _, r := range riffs.Riffs {
		assert.False(t, holds(r.Allergens, "tree nuts"), "%v", r.Allergens)
		assert.Contains(t, r.Text, "eave off")
	}
	for _, line := range []string{"garnish: lime wheel", "garnish: mint sprig", "garnish: 3 coffee beans", "garnish: grated nutmeg", "rim: salt", "garnish: edible flower", "garnish: umbrella and straw"} {
		var scored shape.ScoreAnswer
		ask("/v1/score", `{"text":"`+sourText+line+`"}`, &scored)
		assert.False(t, holds(scored.Allergens, "tree nuts"), "%s: %v", line, scored.Allergens)
	}
}

func holds(marks []shape.Allergen, a string) bool {
	for _, m := range marks {
		if m.Allergen == a {
			return true
		}
	}
	return false
}
