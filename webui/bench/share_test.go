package bench_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// A draft is shared at the name by which this browser reached the server, for its guest;
// what is too long for the camera of a phone is left to be sent.
func TestADraftIsShared(t *testing.T) {
	pages := webuitest.NewPages(t)
	share := func(text string) *httptest.ResponseRecorder {
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "http://bar.example/bench/share?"+url.Values{"text": {text}, "avoid": {"sesame"}}.Encode(), nil))
		return w
	}
	w := share("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	assert.Equal(t, http.StatusOK, w.Code)
	webuitest.Says(t, w, []string{"http://bar.example/bench?avoid=sesame&amp;text=Halyard&#43;Sour%0A2&#43;oz&#43;gin%0A3%2F4&#43;oz&#43;lemon&#43;juice</pre>", `<svg class="code"`, "A code that opens Halyard Sour", "without sesame"}, nil)

	w = share("2 oz quite another gin")
	webuitest.Says(t, w, []string{"A drink without a name", `<svg class="code"`}, nil) // a colleague may know what it is

	w = share("2 oz gin" + strings.Repeat("\n# as poured before the war", 40))
	webuitest.Says(t, w, []string{"too long for a code"}, []string{`<svg class="code"`})

	assert.Equal(t, http.StatusSeeOther, share(" \n").Code)
}
