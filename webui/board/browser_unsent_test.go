package board_test

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/marking"
	"counterpour/webui/webuitest"
)

// What is tapped while the bar does not answer outlives the page, is sent in the order of the
// taps and with their times when the bar answers, and is not sent again; what the bar refuses
// is told.
func TestTapsThatWaitForTheBar(t *testing.T) {
	h := webuitest.NewHouse()
	h.Overtakes = func(r *marking.Request) bool { return len(r.Out) > 0 && r.Out[0] == "lemon-juice" }
	address := webuitest.Serve(t, h)
	p := webuitest.NewPhone(t)
	p.Open(address, "/board")
	p.Do(chromedp.Evaluate[chromedp.Void](`window.fetch = () => Promise.reject(new TypeError("gone"))`))
	before := time.Now()
	for _, id := range []string{"simple-syrup", "falernum", "lemon-juice"} {
		p.Click("#out-" + id)
		p.Until(`!!document.querySelector('#out-` + id + `[data-unsent]')`)
	}
	p.Until(`/^Not sent yet: simple syrup is out \(\d\d:\d\d.*falernum is out.*lemon juice is out/.test(document.getElementById('unmarked').textContent)`)
	p.Until(`!document.getElementById('line').hidden`)
	p.Fits()
	require.Empty(t, h.Marked())
	p.Do(chromedp.Evaluate[chromedp.Void](`{ const taps = JSON.parse(localStorage.getItem('counterpour-unsent')); taps[0].at -= 600000; localStorage.setItem('counterpour-unsent', JSON.stringify(taps)); }`))

	p.Open(address, "/tonight") // another page sends them, with the line that it opens
	p.Until(`!!document.getElementById('back-falernum') && !!document.getElementById('back-simple-syrup')`)
	p.Until(`/^Refused: lemon juice is out \(\d\d:\d\d.*somebody has marked the same since/.test(document.getElementById('unmarked').textContent)`)
	p.Until(`localStorage.getItem('counterpour-unsent') === '[]'`)
	p.Fits()
	marks := h.Marked()
	require.Len(t, marks, 2)
	assert.Equal(t, []string{"simple-syrup"}, marks[0].Out)
	assert.Equal(t, []string{"falernum"}, marks[1].Out)
	assert.WithinDuration(t, before.Add(-10*time.Minute), marks[0].Tapped, time.Minute, "as long ago as the device says")
	assert.WithinDuration(t, before, marks[1].Tapped, time.Minute)
}
