package stock_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// A word of the house is kept, listed, forgotten and taken back on the page of the stock.
func TestOwnWords(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Stocked(t))
	webuitest.Says(t, webuitest.Get(pages, "/stock?words=Old+Harbour", ""), []string{"The house's own words", "There are none yet.", `name="words" value="Old Harbour"`}, nil)

	w := webuitest.Post(pages, "/stock/words", webuitest.Fields("words", "Old Harbour", "kind", "London dry gin"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	assert.Equal(t, "/stock?named=Old+Harbour#said", w.Header().Get("Location"))
	webuitest.Says(t, webuitest.Get(pages, "/stock?named=Old+Harbour", ""), []string{"“Old Harbour” means London dry gin from now on", `name="do" value="forget">Undo`, "Forget Old Harbour"}, nil)

	w = webuitest.Post(pages, "/stock/words", webuitest.Fields("words", "Old Harbour", "do", "forget"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	back := strings.TrimSuffix(w.Header().Get("Location"), "#said")
	webuitest.Says(t, webuitest.Get(pages, back, ""), []string{"“Old Harbour” is forgotten.", `name="kind" value="London dry gin">`, "There are none yet."}, nil)

	w = webuitest.Post(pages, "/stock/words", webuitest.Fields("words", "Old Harbour", "kind", "moon dust"), false)
	assert.Equal(t, http.StatusUnprocessableEntity, w.Code)
	webuitest.Says(t, w, []string{"No ingredient is called that", `value="moon dust"`, `aria-describedby="own-fault"`}, nil)
}
