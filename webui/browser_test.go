package webui_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// Paper holds the cards and no way about: a card is one sheet of A6, and what is read
// from the PDF has the name, every pour, the allergens and what the law asks to be said.
func TestPrint(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	b := webuitest.NewBrowser(t, 800)
	b.Open(address, "/specs/nutcracker/card")
	card := b.Printed()
	require.Len(t, card, 1, "a card is one sheet")
	assert.Equal(t, "A6", card[0].Size)
	b.Open(address, "/specs/print")
	menu := b.Printed()
	assert.Equal(t, "A4", menu[0].Size)
	for _, text := range []string{card[0].Text, webuitest.OnPaper(menu)} {
		for _, want := range []string{"Nutcracker", "2 oz London dry gin", "¾ oz lemon juice", "½ oz orgeat", "Contains eggs (egg white) , tree nuts (orgeat)", "% vol", "harms an unborn child", "the label decides"} {
			assert.Contains(t, text, want)
		}
		for _, way := range []string{"All pages", "Cover board", "Print", "Keys", "Settings of the house"} {
			assert.NotContains(t, text, way)
		}
	}
	b.Quiet()
}

// A board goes on paper with the pours of its covers, closed though they were on the
// screen, and without buttons.
func TestTheBoardOnPaper(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, h), "/board")
	text := webuitest.OnPaper(b.Printed())
	assert.Contains(t, text, "Mainbrace")
	assert.Contains(t, text, "2 oz London dry gin")
	assert.NotContains(t, text, "Undo")
	b.Quiet()
}

// Every page passes the checker, fits its screen and keeps the console quiet.
func TestEveryPageIsAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat"}
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	pages := []string{"/", "/?text=2+oz+gin%0A1/4+oz+lemon+juice%0A1/2+oz+orgeat&missing=orgeat&avoid=tree+nuts", "/?text=2+oz+gnx", "/board", "/board?avoid=eggs", "/tonight/ahead",
		"/specs", "/costs", "/specs?q=zzz", "/specs?q=spindirft", "/specs?list=removed", "/tonight?q=haylard", "/specs/nutcracker/card", "/specs/print", "/menu", "/map", "/map?spec=nutcracker&missing=orgeat", "/map?bottle=orgeat", "/training", "/training?what=fault", "/training?what=mend",
		"/training?what=order-sweet", "/training?what=guess", "/training?what=cover", "/training?what=cover&steps=12",
		"/tools", "/tools?tool=dilute&amount=700&from=57&to=40", "/tools?tool=syrup&brix=90&yield=5", "/nowhere"}
	check := func(page string) { b.Accessible(script, page) }
	for _, page := range pages {
		b.Do(chromedp.EmulateViewport(360, 800))
		b.Open(address, page)
		check(page)
	}
	b.Open(address, "/training?what=fault")
	b.Click(`input[value="sour-little"]`)
	b.Click(".round button.main")
	b.Until(`!!document.querySelector('.graded')`)
	check("a graded round")
	for _, said := range b.Complaints() {
		// A page that is meant to be refused is told of by the browser.
		assert.Regexp(t, `status of (404|422)`, said, "the console should have nothing to say")
	}
}
