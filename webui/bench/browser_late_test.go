package bench_test

import (
	"testing"

	"github.com/chromedp/chromedp"

	"counterpour/webui/webuitest"
)

// While the answer to a changed draft is on its way, nothing on a phone passes for one: the
// old points are gone, what is left says that it is old, and the next answer clears that.
func TestAnOldAnswerDoesNotPassForANewOne(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.Typed("2 oz gin\n3/4 oz lemon juice")
	b.Until(webuitest.Shown + `'Balanced'`)
	b.Do(chromedp.Evaluate[chromedp.Void](`{ const answer = window.fetch; window.answers = () => { window.fetch = answer; }; window.fetch = () => new Promise(() => {}); }`))
	b.Adds("\n1/2 oz orgeat")
	b.Until(`document.querySelector('.strip .points').textContent === '…'`)
	b.Until(`document.querySelector('.strip').textContent.includes('The draft has changed') && !document.querySelector('.strip button')`)
	b.Until(`getComputedStyle(document.querySelector('.result .carries .marks')).textDecorationLine === 'line-through'`)
	b.Until(`document.getElementById('result').getAttribute('aria-busy') === 'true'`)
	b.Fits()
	b.Accessible(webuitest.Axe(t), "an old answer")

	b.Do(chromedp.Evaluate[chromedp.Void](`window.answers()`))
	b.Adds(" ")
	b.Until(`document.querySelector('.result .carries').textContent.includes('sesame') || document.querySelector('.result .carries').textContent.includes('tree nuts')`)
	b.Until(`!document.querySelector('.result.outdated') && !document.getElementById('result').hasAttribute('aria-busy')`)
	b.Quiet()
}

// The draft as it stands is handed on in two taps, and a guest's ticks with it.
func TestADraftIsSharedFromAPhone(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.Typed("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.Until(webuitest.Shown + `'Balanced'`)
	b.Click(".guest > summary")
	b.Click("input[value=sesame]")
	b.Until(`document.querySelector('#for-guest')?.textContent.includes('without sesame')`)
	b.Fits()
	b.Click(".result > .ways a[href^='/bench/share']")
	b.Until(`location.pathname === '/bench/share'`)
	b.Until(`document.getElementById('address').textContent.includes('/bench?avoid=sesame&text=Halyard+Sour')`)
	b.Until(`document.querySelector('.for-guest').textContent.includes('without sesame')`)
	b.Fits()
	b.Accessible(webuitest.Axe(t), "share")
	b.Quiet()
}
