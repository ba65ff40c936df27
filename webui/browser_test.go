package webui_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// Print holds the cards and no way about.
func TestPrint(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	b := webuitest.NewBrowser(t, 800)
	b.Media("print", "light")
	const hidden = `[...document.querySelectorAll('nav, header, footer, button, .screen')].every((e) => e.getClientRects().length === 0)`
	for _, path := range []string{"/specs/nutcracker/card", "/specs/print"} {
		b.Open(address, path)
		b.Until(hidden)
		b.Until(`document.querySelector('.sheet').innerText.includes('Contains')`)
	}
	b.Open(address, "/specs/nutcracker/card")
	pdf, err := chromedp.Run(b.Ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	// A PDF is too long to be printed for every fault.
	assert.Len(t, webuitest.AnyBox.FindAllString(string(pdf), -1), 1, "a card is one page")
	assert.Len(t, webuitest.BoxOfA6.FindAllString(string(pdf), -1), 1, "of A6")
	b.Quiet()
}

// Every page passes the checker, fits its screen and keeps the console quiet.
func TestEveryPageIsAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat"}
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	pages := []string{"/", "/?text=2+oz+gin%0A1/4+oz+lemon+juice%0A1/2+oz+orgeat&missing=orgeat&avoid=tree+nuts", "/?text=2+oz+gni", "/board", "/board?avoid=eggs",
		"/specs", "/specs?q=zzz", "/specs/nutcracker/card", "/specs/print", "/map", "/map?spec=nutcracker&missing=orgeat", "/map?bottle=orgeat", "/training", "/training?what=fault", "/training?what=mend",
		"/training?what=order-sweet", "/training?what=guess", "/training?what=cover", "/training?what=cover&steps=12",
		"/tools", "/tools?tool=dilute&amount=700&from=57&to=40", "/tools?tool=syrup&brix=90&yield=5", "/nowhere"}
	check := func(page string) { b.Accessible(script, page) }
	for _, page := range pages {
		b.Do(chromedp.EmulateViewport(360, 800))
		b.Open(address, page)
		check(page)
	}
	b.Open(address, "/training?what=fault")
	b.Click(`input[value="little"]`)
	b.Click(`input[value="sour"]`)
	b.Click(".round button.main")
	b.Until(`!!document.querySelector('.graded')`)
	check("a graded round")
	for _, said := range b.Complaints() {
		// A page that is meant to be refused is told of by the browser.
		assert.Regexp(t, `status of (404|422)`, said, "the console should have nothing to say")
	}
}
