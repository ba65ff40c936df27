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
	for _, path := range append([]string{"/"}, everyPage...) {
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
