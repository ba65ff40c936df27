package specs_test

import (
	"html"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/webuitest"
)

// Every page of the specs is light, names nothing twice, and leads somewhere.
func TestSpecPagesHoldTogether(t *testing.T) {
	h := webuitest.OnSale(t)
	p := webuitest.PagesOf(t, h)
	act(t, p, "spindrift", "do", "right", "version", "1")
	webuitest.Post(p, "/", webuitest.Fields("text", strings.Replace(webuitest.GoodDraft, "1/2 oz", "3/4 oz", 1), "save", "replace", "over", "halyard-sour", "seen", "1"), false)
	rows := "/?view=rows&before=Halyard+Sour%0A1+oz+gin%0A3/4+oz+lemon+juice&" + webuitest.Fields("text", webuitest.GoodDraft).Encode()
	pages := map[string]string{"taken": webuitest.Post(p, "/", webuitest.Fields("text", webuitest.SweetDraft, "save", "save"), false).Body.String(),
		"pasted": webuitest.Post(p, "/specs/import", webuitest.Fields("as", "text", "text", pasted), false).Body.String()}
	for _, path := range []string{"/specs/halyard-sour?price=12", "/specs/nutcracker", "/specs/nutcracker/batch?from=freezer", "/specs/import", "/card?text=2+oz+gin", rows} {
		w := webuitest.Get(p, path, "")
		require.Equal(t, http.StatusOK, w.Code, path)
		pages[path] = w.Body.String()
	}
	for name, page := range pages {
		weight, seen := len(page), map[string]bool{}
		for _, m := range webuitest.Ids.FindAllStringSubmatch(page, -1) {
			assert.False(t, seen[m[1]], "%s: id %q twice", name, m[1])
			seen[m[1]] = true
		}
		for _, m := range webuitest.Links.FindAllStringSubmatch(page, -1) {
			link := html.UnescapeString(m[1])
			if id, ok := strings.CutPrefix(link, "#"); ok {
				assert.True(t, seen[id], "%s: %s", name, link)
				continue
			}
			if link == part.UndoPath {
				continue // which takes only forms
			}
			to, _, _ := strings.Cut(link, "#")
			w := webuitest.Get(p, to, "")
			assert.Equal(t, http.StatusOK, w.Code, "%s: %s", name, link)
			if strings.HasPrefix(link, "/static/") {
				weight += w.Body.Len()
				assert.Equal(t, frame.KeepForever, w.Header().Get("Cache-Control"), link)
			}
		}
		t.Logf("%s: %d bytes", name, weight)
		assert.Less(t, weight, webuitest.MaxLoad, name)
	}
}
