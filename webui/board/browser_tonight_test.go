package board_test

import (
	"testing"

	"counterpour/webui/webuitest"
)

// inView is whether an element lies whole in what the screen shows.
const inView = `((e) => { const r = e.getBoundingClientRect(); return r.top >= 0 && r.bottom <= innerHeight; })`

// On a phone, what can be poured now takes no tap, what becomes of it when a
// bottle runs out takes one, and so does taking that back.
func TestTonightOnAPhone(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	b := webuitest.NewBrowser(t, 360)
	b.Open(address, "/")
	b.Until(inView + `(document.querySelector('.evening .word'))`)
	b.Until(inView + `(document.querySelector('.choices'))`)
	b.Fits()

	b.Click("button[name=out][value=falernum]")
	b.Until(`!!document.getElementById('back-falernum')`)
	b.Until(inView + `(document.querySelector('.evening .cover'))`)
	b.Until(`document.querySelector('.evening .notice').textContent.startsWith('A guest may notice')`)
	b.Fits()
	b.Accessible(webuitest.Axe(t), "tonight")

	b.Click("#back-falernum")
	b.Until(`!document.getElementById('back-falernum')`)
	b.Quiet()
}

// Two taps and a tick show what a guest who avoids nuts may be poured.
func TestTonightForAGuest(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/tonight")
	b.Click("#guest summary")
	b.Click(`input[name=avoid][value="tree nuts"]`)
	b.Click("#guest button")
	b.Until(inView + `(document.querySelector('.for-guest'))`)
	b.Until(`![...document.querySelectorAll('.evening li')].some((e) => e.textContent.includes('orgeat'))`)
	b.Fits()
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
