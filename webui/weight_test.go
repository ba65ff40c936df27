package webui_test

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

func TestFirstLoadIsLight(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	pages := webuitest.PagesOf(t, h)
	for _, path := range []string{"/", "/bench?text=2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat&missing=orgeat", "/riffs?from=all&text=2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat", "/tonight", "/board", "/specs", "/specs/nutcracker/card", "/specs/print", "/training?what=cover", "/tools", "/map?spec=nutcracker&missing=orgeat"} {
		w := webuitest.Follow(pages, path)
		require.Equal(t, http.StatusOK, w.Code, path)
		weight := w.Body.Len()
		for _, m := range webuitest.Loads.FindAllStringSubmatch(w.Body.String(), -1) {
			weight += webuitest.Get(pages, m[1], "").Body.Len()
		}
		t.Logf("%s: %d bytes", path, weight)
		assert.Less(t, weight, webuitest.MaxLoad, path)
	}
}
