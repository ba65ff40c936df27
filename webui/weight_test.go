package webui

import (
	"net/http"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// maxLoad is the most that the first visit to a page may weigh, in bytes, all
// files counted and nothing packed.
const maxLoad = 200_000

var loads = regexp.MustCompile(`(?:href|src)="(/static/[^"]*)"`)

func TestFirstLoadIsLight(t *testing.T) {
	h := newFakeHouse()
	h.outs = []string{"falernum"}
	pages := pagesOf(t, h)
	for _, path := range []string{"/", "/board", "/specs", "/specs/nutcracker/card", "/specs/print", "/training?what=cover", "/tools", "/map?spec=nutcracker&missing=orgeat"} {
		w := get(pages, path, "")
		require.Equal(t, http.StatusOK, w.Code, path)
		weight := w.Body.Len()
		for _, m := range loads.FindAllStringSubmatch(w.Body.String(), -1) {
			weight += get(pages, m[1], "").Body.Len()
		}
		t.Logf("%s: %d bytes", path, weight)
		assert.Less(t, weight, maxLoad, path)
	}
}
