package main

import (
	"html"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/visit"
	"counterpour/cmd/counterpour/premises"
	"counterpour/webui"
	"counterpour/webui/behind"
)

func demoPages(t testing.TB) http.Handler {
	t.Helper()
	v, done, err := premises.AtHouse(t.Context(), embedded, premises.Demo)
	require.NoError(t, err)
	t.Cleanup(done)
	h, err := webui.New(func() behind.Visit { return visit.Of(v) }, slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	return h
}

// The pages of riffs over the real kitchen: who avoids tree nuts reads of
// nothing made of them, and what the demo house has run out of is not poured.
func TestRiffPagesOverTheKitchen(t *testing.T) {
	h := demoPages(t)
	for _, c := range []struct {
		path  string
		query url.Values
		want  []string
	}{
		{"/riffs", url.Values{"text": {"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"}, "toward": {"more nut"}, "limit": {"40"}}, []string{"riffs on the draft", "Its nearest proven relatives"}},
		{"/riffs", url.Values{"text": {"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"}, "words": {"nuttier, below 18 %"}, "from": {"all"}, "limit": {"20"}}, []string{"riffs on the draft"}},
		{"/riffs", url.Values{"text": {"1 1/4 oz gin\n3/4 oz lemon juice\n1/2 oz passion fruit syrup\nshake, up"}, "diet": {"vegan"}}, []string{"For a guest: vegan, without tree nuts.", "Take to the bench"}},
		{"/riffs/use-up", url.Values{"bottle": {"fino-sherry", "mezcal"}, "names": {"orgeat, grenadine"}}, []string{"<strong>orgeat.</strong> The guest must not have it", "must move"}},
		{"/riffs/walk", url.Values{"from": {"tide-table"}, "to-text": {"2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up"}}, []string{"A walk of 5 drinks", "g of alcohol", "harms an unborn child"}},
	} {
		c.query.Add("avoid", "tree nuts")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, c.path+"?"+c.query.Encode(), nil))
		require.Equal(t, http.StatusOK, w.Code, c.path)
		_, list, _ := strings.Cut(w.Body.String(), `id="list"`)
		list, form, _ := strings.Cut(list, `class="riff-form"`) // which names every bottle of the house
		_, foot, _ := strings.Cut(form, "</form>")
		list += foot
		list = html.UnescapeString(list)
		for _, s := range c.want {
			assert.True(t, strings.Contains(list, s), "%s should hold %q", c.path, s)
		}
		list = strings.ReplaceAll(list, "+", " ")
		list = strings.NewReplacer("<strong>orgeat.</strong>", "", "orgeat%2C grenadine", "", // the names as they were written
			"sesame orgeat", "", "oat orgeat", "", // made of seed and grain
			"Kernels of apricot, peach, cherry and bitter almond release cyanide", "").Replace(list) // a caution
		for _, nut := range []string{"almond", "orgeat", "amaretto", "walnut", "hazelnut", "pistachio", "macadamia"} {
			assert.False(t, strings.Contains(list, nut), "%s holds %s", c.path, nut)
		}
		if c.path == "/riffs" && !c.query.Has("from") {
			assert.False(t, strings.Contains(list, "oz triple sec"), "it has run out")
		}
	}
}

// BenchmarkRiffPages is the time of a page, from the address to the last byte.
func BenchmarkRiffPages(b *testing.B) {
	h := demoPages(b)
	const draft = "text=2+oz+gin%0A3/4+oz+lemon+juice%0A3/4+oz+simple+syrup%0Ashake%2C+up"
	for name, path := range map[string]string{
		"house": "/riffs?" + draft, "catalogue": "/riffs?from=all&" + draft, "catalogue with wishes": "/riffs?from=all&toward=more+bitter&toward=less+sweet&" + draft,
		"use-up": "/riffs/use-up?bottle=fino-sherry&bottle=mezcal&bottle=apricot-liqueur&bottle=ruby-port", "walk": "/riffs/walk?from=ropewalk&to=brass-chronometer",
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				w := httptest.NewRecorder()
				h.ServeHTTP(w, httptest.NewRequest(http.MethodGet, path, nil))
				if w.Code != http.StatusOK {
					b.Fatal(w.Code)
				}
			}
		})
	}
}
