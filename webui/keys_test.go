package webui_test

import (
	"testing"

	"github.com/chromedp/chromedp"

	"counterpour/webui/webuitest"
)

// A slash finds, a question mark lists the keys, and in a box both are letters.
func TestKeys(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	b := webuitest.NewBrowser(t, 1280)
	b.Open(address, "/specs")
	b.Until(`!document.querySelector('[data-keys]').hidden`)
	b.Press("?")
	b.Until(`document.getElementById('keys').open && document.getElementById('keys').textContent.includes('Find')`)
	b.Accessible(webuitest.Axe(t), "the list of keys")
	b.Click("#keys button")
	b.Until(`!document.getElementById('keys').open`)
	b.Press("/")
	b.Until(`document.activeElement.type === 'search'`)
	b.Press("?", "/")
	b.Until(`document.activeElement.value.endsWith('?/') && !document.getElementById('keys').open`)
	b.Open(address, "/tools")
	b.Until(`!document.querySelector('[data-keys]').hidden`)
	b.Do(chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
	b.Press("/")
	b.Until(`location.pathname === '/specs' && document.activeElement.type === 'search'`)
	b.Quiet()
}
