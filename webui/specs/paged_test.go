package specs_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/frame"
	"counterpour/webui/webuitest"
)

// A long list is shown page by page, and nothing of it is lost.
func TestSpecsByThePage(t *testing.T) {
	h := webuitest.NewHouse()
	menu, err := h.Menu(t.Context())
	require.NoError(t, err)
	var edits []house.Edit
	for i := range 150 {
		spec := menu[0].Spec.Clone()
		spec.Name = fmt.Sprintf("Draught %03d", i)
		edits = append(edits, house.Put(house.FromSpec(fmt.Sprintf("draught-%03d", i), spec), 0))
	}
	_, err = h.Store().Write(t.Context(), frame.By(httptest.NewRequest(http.MethodGet, "/", nil)), edits...)
	require.NoError(t, err)
	pages := webuitest.PagesOf(t, h)
	seen := map[string]int{}
	for page := 1; page <= 3; page++ {
		body := webuitest.Get(pages, fmt.Sprintf("/specs?q=draught&page=%d", page), "").Body.String()
		for i := range 150 {
			if strings.Contains(body, fmt.Sprintf(`<a href="/specs/draught-%03d">`, i)) {
				seen[fmt.Sprint(i)]++
			}
		}
		assert.Contains(t, body, "of 150")
		assert.Equal(t, page > 1, strings.Contains(body, `rel="prev"`))
		assert.Equal(t, page < 3, strings.Contains(body, `rel="next"`))
	}
	assert.Len(t, seen, 150, "every spec is on a page")
	for name, times := range seen {
		assert.Equal(t, 1, times, name)
	}
	assert.Equal(t, http.StatusBadRequest, webuitest.Get(pages, "/specs?page=x", "").Code)
	assert.NotContains(t, webuitest.Get(pages, "/specs?q=mainbrace", "").Body.String(), `class="pager"`)
}
