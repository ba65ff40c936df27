package webui_test

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// linkAndWords is a link, and what it says.
var linkAndWords = regexp.MustCompile(`(?s)<a [^>]*?href="([^"]*)"[^>]*>(.*?)</a>`)

// Every link to a page that knows of guests keeps the guest, but for those that say
// that they leave it, and those of the frame.
func TestLinksKeepTheGuest(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat"}
	pages := webuitest.PagesOf(t, h)
	knows := map[string]bool{"/bench": true, "/tonight": true, "/tonight/ahead": true, "/tonight/wall": true, "/tonight/flight": true, "/board": true, "/specs": true, "/specs/print": true, "/menu": true}
	found := 0
	guests := []string{"avoid=sesame&diet=no+honey", "avoid=tree+nuts&diet=no+honey&strength=12"}
	for _, guest := range guests {
		want, err := url.ParseQuery(guest)
		require.NoError(t, err)
		for _, page := range []string{"/tonight?", "/tonight?show=missing&", "/tonight/ahead?", "/board?", "/specs?", "/specs?q=sour&", "/specs/print?", "/bench?text=2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat&missing=orgeat&",
			"/riffs?from=all&text=2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat&"} {
			w := webuitest.Get(pages, page+guest, "")
			require.Equal(t, http.StatusOK, w.Code, page)
			_, main, _ := strings.Cut(w.Body.String(), "<main")
			main, _, _ = strings.Cut(main, "</main>")
			for _, m := range linkAndWords.FindAllStringSubmatch(main, -1) {
				at, err := url.Parse(html.UnescapeString(m[1]))
				require.NoError(t, err, m[1])
				if !knows[at.Path] || strings.Contains(m[2], "for everyone") || strings.Contains(m[2], "how all") || strings.HasPrefix(page, "/riffs") && at.Path != "/bench" {
					continue
				}
				found++
				asked := at.Query()
				usual := strings.HasPrefix(m[2], "No ") || m[2] == "Vegan" || strings.HasPrefix(m[2], "Alcohol-free") // which asks for one thing more
				for _, field := range []string{"avoid", "diet", "strength"} {
					if usual {
						assert.Subset(t, asked[field], want[field], "%s: %s of %s", page, field, m[0])
						continue
					}
					assert.Equal(t, want[field], asked[field], "%s: %s of %s", page, field, m[0])
				}
			}
		}
	}
	assert.Greater(t, found, 15, "the pages have such links")
}
