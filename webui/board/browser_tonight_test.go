package board_test

import (
	"github.com/stretchr/testify/assert"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"counterpour/webui/webuitest"
)

// inView is whether an element lies whole in what the screen shows.
const inView = `((e) => { const r = e.getBoundingClientRect(); return r.top >= 0 && r.bottom <= innerHeight; })`

// On a phone, what can be poured now takes no tap, what becomes of it when a
// bottle runs out takes two, and taking that back one.
func TestTonightOnAPhone(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	b := webuitest.NewBrowser(t, 360)
	b.Open(address, "/")
	b.Until(inView + `(document.querySelector('.evening .word'))`)
	b.Until(inView + `(document.querySelector('.choices'))`)
	b.Fits()

	b.Click("#drink-mainbrace summary")
	b.Click("#drink-mainbrace button[value=falernum]")
	b.Until(`!!document.getElementById('back-falernum')`)
	b.Until(inView + `(document.getElementById('back-falernum'))`) // what mends a wrong tap
	b.Until(inView + `(document.querySelector('.evening .cover'))`)
	b.Until(`document.querySelector('.evening .notice').textContent.includes('A guest may notice')`)
	b.Fits()
	b.Accessible(webuitest.Axe(t), "tonight")

	b.Click("#back-falernum")
	b.Until(`!document.getElementById('back-falernum')`)
	b.Quiet()
}

// Two taps and a tick show what a guest who avoids something else may be poured.
func TestTonightForAGuest(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/tonight")
	b.Click("#guest summary")
	b.Click(`input[name=avoid][value="tree nuts"]`)
	b.Until(inView + `(document.querySelector('#guest button'))`)
	b.Click("#guest button")
	b.Until(inView + `(document.querySelector('.for-guest'))`)
	b.Until(`![...document.querySelectorAll('.evening li')].some((e) => e.textContent.includes('orgeat'))`)
	b.Fits()
}

// A drink and the bottle that ran out of it: two taps show every drink that it was
// in with its cover and whether a guest notices; one more how one of them is poured
// now; what a nut-free guest may be poured takes two.
func TestTonightIsFewTaps(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/tonight")
	p.Within(0, ".evening .word")
	p.Tap("#drink-mainbrace summary")
	p.Tap("#drink-mainbrace button[value=falernum]")
	p.Until(`document.querySelectorAll('.evening .covered').length === 2`)
	p.Within(2, ".evening .covered .cover")
	p.Within(2, ".evening .covered .notice")
	p.Within(2, "#drink-mainbrace .notice")
	p.Within(2, "#drink-spindrift .notice")
	p.Until(`document.activeElement.id === "back-falernum"`)
	p.Tap("#drink-mainbrace summary")
	p.Within(3, "#drink-mainbrace .pours-line")
	p.Until(`!!document.querySelector("#drink-mainbrace .shifts")`)
	p.Fits()
	p.Quiet()

	guest := webuitest.NewPhone(t)
	guest.Open(webuitest.Serve(t, webuitest.NewHouse()), "/tonight")
	guest.Within(0, "#guest summary")
	guest.Tap("#guest summary")
	guest.Within(1, ".usual a")
	guest.Within(1, "#guest button")
	guest.Tap(".usual a") // no nuts
	guest.Until(`!!document.querySelector('.for-guest')`)
	guest.Within(2, ".for-guest")
	guest.Within(2, ".evening .word")
	guest.Until(`![...document.querySelectorAll('.evening li')].some((e) => e.textContent.includes('orgeat'))`)
	guest.Fits()
	guest.Quiet()
}

// What to offer in place of a drink that nothing keeps stands beside it once its
// bottle is tapped, and its card is one tap more.
func TestAnOfferOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/tonight")
	p.Tap("#drink-nutcracker summary")
	p.Tap(`.evening button[value="orgeat"]`)
	p.Until(`!!document.querySelector('.evening .missing .offer')`)
	p.Within(2, ".evening .missing .offer a")
	p.Fits()
	p.Tap(".evening .missing .offer a")
	p.Until(`location.pathname === '/specs/halyard-sour'`)
	p.Quiet()
}

// On paper the board is black on white, with the pours of every drink.
func TestTheBoardOnPaper(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	b := webuitest.NewBrowser(t, 800)
	b.Open(webuitest.Serve(t, h), "/board")
	b.Media("print", "dark")
	b.Do(chromedp.Evaluate[chromedp.Void](`dispatchEvent(new Event("beforeprint"))`))
	b.Until(`getComputedStyle(document.body).backgroundColor === 'rgb(255, 255, 255)'`)
	b.Until(`[...document.querySelectorAll('.drinks details')].every((d) => d.open)`)
	b.Until(`document.querySelector('.drinks').innerText.includes('½ oz almond syrup')`)
	b.Quiet()
}

// One tap from tonight is the sheet for the wall, which follows the marks of other screens
// and prints on one page, each drink once, with nothing that can only be tapped.
func TestTonightOnAWall(t *testing.T) {
	h := webuitest.NewHouse()
	address := webuitest.Serve(t, h)
	p := webuitest.NewPhone(t)
	p.Open(address, "/tonight")
	p.Within(0, ".to-wall a")
	p.Within(0, ".to-wall a[href='/tonight/flight']")
	p.Tap(`.to-wall a[href="/tonight/wall"]`)
	p.Until(`document.querySelectorAll('.wall > .ready').length === 4`)
	p.Fits()
	p.Accessible(webuitest.Axe(t), "the sheet for the wall")
	webuitest.Post(webuitest.PagesOf(t, h), "/tonight", url.Values{"out": {"falernum"}}, true)
	p.Until(`document.querySelectorAll('.wall > .covered').length === 2`)
	sheets := p.Printed()
	assert.Len(t, sheets, 1)
	text := webuitest.OnPaper(sheets)
	for _, once := range []string{"Mainbrace", "Halyard Sour", "Spindrift", "Nutcracker"} {
		assert.Equal(t, 1, strings.Count(text, once), once)
	}
	assert.Contains(t, text, "almond syrup")
	assert.NotContains(t, text, "Print it")
	p.Quiet()
}

// A phone shows score, first fault and first fix while the draft fills it.
func TestTheAnswerStaysInView(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench")
	b.Click("#text")
	b.Typed(webuitest.SweetDraft)
	b.Until(`!!document.querySelector('.strip button')`)
	b.Until(inView + `(document.querySelector('.strip'))`)
	b.Click(".strip button")
	b.Until(`document.querySelector('.strip p').textContent.includes('Balanced')`)
	b.Fits()
}

// With half the rail out, the first drink still stands with its name and what to offer
// on a phone; and nothing is said to be ticked before anything is.
func TestManyBottlesOutOnAPhone(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat", "almond-syrup", "spare-bitters"}
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, h), "/tonight")
	p.Within(0, ".outs button")
	p.Within(0, ".evening > li h2")
	p.Within(0, ".evening > li .offer")
	p.Until(`!getComputedStyle(document.querySelector('#guest summary'), '::after').content.includes('ticked')`)
	p.Fits()
	p.Do(chromedp.EmulateViewport(740, 360)) // on its side
	p.Within(0, "#guest summary")
	p.Within(0, ".evening > li h2")
	p.Within(0, ".evening > li .offer")
	p.Until(`[...document.querySelectorAll('.to-wall a')].every((a) => {
		const r = a.getBoundingClientRect();
		return document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2) === a;
	})`) // nothing lies over a link
	p.Fits()
	p.Quiet()
}

// A drink is found while its name is typed, and stays found when a bottle of it is marked.
func TestTonightIsSiftedAsOneTypes(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/tonight")
	b.Do(chromedp.SendKeys(chromedp.ID("q"), "mainbr"))
	const shown = `[...document.querySelectorAll('.evening > li')].filter((e) => !e.hidden).map((e) => e.querySelector('h2').textContent).join()`
	b.Until(shown + ` === 'Mainbrace'`)
	b.Until(`document.getElementById('sifted').textContent === '1 of the 4 listed here.'`)
	b.Fits()
	b.Click("#drink-mainbrace summary")
	b.Click("#drink-mainbrace button[value=falernum]")
	b.Until(`!!document.getElementById('back-falernum') && ` + shown + ` === 'Mainbrace'`)
	b.Until(`document.querySelector('.outs .many').textContent.startsWith('1 out')`)
	b.Accessible(webuitest.Axe(t), "tonight, sifted")
	b.Quiet()
}

// One tap on a pour marks the bottle that is poured, and the next one is poured at once: on a
// phone that is said in view, with what takes it back and what says that all of it is out.
func TestOneBottleOfSeveralOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.Stocked(t)), "/tonight")
	const gin = "#drink-mainbrace .pours-line button[value=red]"
	p.Tap("#drink-mainbrace summary")
	p.Tap(gin)
	p.Until(`!!document.querySelector('.outs .just') && document.querySelector('.outs .just').textContent.includes('Blue cap is poured')`)
	p.Within(2, "#back-red")
	p.Within(2, ".outs button[value=london-dry-gin]")
	p.Fits()
	p.Accessible(webuitest.Axe(t), "tonight, one bottle of two out")
	p.Tap("#back-red")
	p.Until(`!document.querySelector('#back-red') && document.querySelector('.outs').textContent.includes('Red cap is back')`)
	p.Tap(".outs button[value=red]")
	p.Until(`!!document.querySelector('#back-red')`)
	p.Tap(".outs button[value=london-dry-gin]")
	p.Until(`!!document.querySelector('#back-london-dry-gin') && !document.querySelector('#back-red')`)
	p.Quiet()
}

// What was marked as back can be taken back, also where another screen marks something in
// between.
func TestUndoOutlivesTheMarksOfOthers(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, h), "/tonight")
	p.Tap("#back-falernum")
	p.Until(`document.querySelector('.outs .just')?.textContent.includes('falernum is back')`)
	webuitest.Post(webuitest.PagesOf(t, h), "/tonight", url.Values{"out": {"orgeat"}}, true)
	p.Until(`!!document.querySelector('#back-orgeat')`)
	p.Until(`document.querySelector('.outs .just')?.textContent.includes('falernum is back')`)
	p.Tap(".outs .just button")
	p.Until(`!!document.querySelector('#back-falernum')`)
	p.Quiet()
}
