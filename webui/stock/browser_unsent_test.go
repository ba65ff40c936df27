package stock_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// Without the network a tap on the stock is kept on the device, outlives the page, and is sent
// when the bar answers; a second tap takes it back.
func TestMarksOfTheStockWaitForTheNetwork(t *testing.T) {
	h := webuitest.Stocked(t)
	address := webuitest.Serve(t, h)
	p := webuitest.NewPhone(t)
	p.Open(address, "/stock")
	p.Do(chromedp.Evaluate[chromedp.Void](`window.fetch = () => Promise.reject(new TypeError("gone"))`))
	const orgeat = `.stock button[name="out"][value="orgeat"]`
	p.Click(orgeat)
	p.Until(`/^Not sent yet: orgeat is out \(\d\d:\d\d/.test(document.getElementById('line').textContent)`)
	p.Until(`!document.getElementById('line').hidden && !!document.querySelector('` + orgeat + `[data-unsent]')`)
	p.Until(webuitest.InView("#line"))
	p.Fits()
	p.Accessible(webuitest.Axe(t), "a mark that waits")
	p.Click(orgeat) // a slip
	p.Until(`document.getElementById('line').hidden && !document.querySelector('[data-unsent]')`)
	p.Click(orgeat)
	p.Until(`!document.getElementById('line').hidden`)
	require.Empty(t, h.Marked())

	p.Open(address, "/stock")
	p.Until(`localStorage.getItem('counterpour-unsent') === '[]' && document.getElementById('line').hidden`)
	p.Until(`!!document.querySelector('.stock button[name="back"][value="orgeat"]')`) // the list says so
	require.Len(t, h.Marked(), 1)
	assert.Equal(t, []string{"orgeat"}, h.Marked()[0].Out)
	assert.NotNil(t, h.Marked()[0].Tapped)
	p.Quiet()
}

// What the bar refuses is shown as a page, and nothing waits.
func TestAMarkThatIsRefused(t *testing.T) {
	h := webuitest.Stocked(t)
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, h), "/stock")
	p.Do(chromedp.Evaluate[chromedp.Void](`document.querySelector('.stock button[name="out"][value="orgeat"]').value = "no-such-bottle"`))
	p.Click(`.stock button[value="no-such-bottle"]`)
	p.Until(`!!document.querySelector('main .problem, main h1') && !document.querySelector('.stock')`)
	p.Until(`(localStorage.getItem('counterpour-unsent') ?? '[]') === '[]'`)
	require.Empty(t, h.Marked())
}
