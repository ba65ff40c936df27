package likeness_test

import (
	"net/http"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

func TestNeighboursOfABottle(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"almond-syrup"}
	pages := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(pages, "/map?bottle=orgeat", ""), http.StatusOK, "Most like orgeat, of what the house keeps",
		`<a href="/map?bottle=almond-syrup#near">almond syrup</a> <strong>out now</strong> <span class="how">much the same</span>`, "more clove", `<option value="orgeat" selected>`, "<title>orgeat, chosen</title>", "<title>almond syrup, like it</title>")
	assert.Equal(t, http.StatusNotFound, webuitest.Get(pages, "/map?bottle=moonshine", "").Code)
	assert.NotContains(t, webuitest.Get(pages, "/map", "").Body.String(), "Most like")
}

// On a phone the neighbours of a bottle are chosen in two taps, the list stands on
// the screen, and each of them leads to its own.
func TestNeighboursOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/map")
	p.Do(chromedp.SetValue(chromedp.ID("bottle"), "orgeat")) // a tap, and one in the list that the phone opens
	p.Tap(".sift button")
	p.Within(1, "#near-title")
	p.Within(1, "#near li:first-of-type .how")
	p.Fits()
	p.Tap("#near li:first-of-type a")
	p.Until(`document.getElementById('near-title').textContent.includes('almond syrup')`)
	p.Within(2, "#near-title")
	p.Quiet()
}
