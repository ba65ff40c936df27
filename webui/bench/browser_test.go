package bench_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

func TestBenchInABrowser(t *testing.T) {
	for name, width := range map[string]int64{"telephone": 360, "bar top": 1280} {
		t.Run(name, func(t *testing.T) {
			b := webuitest.OpenBrowser(t, width)
			b.Fits()

			// Half a line is a fault beside the box, and names are offered.
			b.Typed("Halyard Sour\n2 oz gin\n1/4 oz lemo")
			b.Until(`document.querySelector('#faults .where a')?.textContent === 'Line 3'`)
			b.Fits()
			b.Click("#names button")
			b.Until(webuitest.Shown + `'Out of balance'`)
			assert.Equal(t, "Halyard Sour\n2 oz gin\n1/4 oz lemon juice", b.Text())
			b.Until(`document.querySelector('#faults').childElementCount === 0`)
			b.Fits()

			// A fix is applied, taken back, and made again.
			b.Click(".cards button")
			b.Until(webuitest.Shown + `'Balanced'`)
			assert.Equal(t, "Halyard Sour\n2 oz gin\n¾ oz lemon juice", b.Text())
			b.Until(webuitest.Focus + `'Undo the change'`)
			b.Click("#undo button")
			b.Until(webuitest.Shown + `'Out of balance'`)
			assert.Equal(t, "Halyard Sour\n2 oz gin\n1/4 oz lemon juice", b.Text())
			b.Click("#redo button")
			b.Until(webuitest.Shown + `'Balanced'`)

			// Something ran out; the cover is poured.
			b.Adds("\n1/2 oz orgeat")
			b.Until(`!!document.getElementById('out-orgeat')`)
			b.Click("#out-orgeat")
			b.Until(`document.activeElement.id === 'covers-title'`)
			b.Fits()
			b.Click("#covers .cards button")
			b.Until(`!document.getElementById('covers')`)
			assert.Contains(t, b.Text(), "½ oz sesame orgeat")

			// A guest's allergy flags the drink at once.
			b.Click(".guest > summary")
			b.Click("input[value=sesame]")
			b.Until(`!!document.querySelector('.clash')`)
			b.Fits()

			// A draft that cannot be read shows no score and no allergens of another drink.
			b.Until(`(box => { box.value = 'quite another drink'; return box.dispatchEvent(new Event('input', {bubbles: true})) })(document.getElementById('text'))`)
			b.Until(`document.querySelectorAll('#faults li').length > 0 && !document.querySelector('.result .verdict, .result .carries')`)
			b.Until(`document.querySelector('.result h2').textContent === 'Nothing scored yet'`)
			b.Quiet()
		})
	}
}

func TestADraftOutlivesThePage(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.Typed("2 oz gin\n3/4 oz lemon juice")
	b.Until(webuitest.Shown + `'Balanced'`)
	b.Do(chromedp.Reload())
	b.Until(webuitest.Shown + `'Balanced'`)
	assert.Equal(t, "2 oz gin\n3/4 oz lemon juice", b.Text())
	b.Quiet()
}

// The answer to an undo brings back who waits for it, and nobody who has gone on.
func TestUndoCallsNobodyBackWhoHasGoneOn(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.Typed("2 oz gin\n1/4 oz lemon juice")
	b.Until(webuitest.Shown + `'Out of balance'`)
	b.Click(".cards button")
	b.Until(webuitest.Focus + `'Undo the change'`)

	b.Do(chromedp.Evaluate[chromedp.Void](`{ const ask = window.fetch; window.held = []; window.fetch = (...a) => new Promise(done => held.push(() => done(ask(...a)))); }`))
	b.Click("#undo button")
	b.Until(`held.length === 1`)
	b.Do(chromedp.Evaluate[chromedp.Void](`document.getElementById('text').focus(); held.pop()()`))
	b.Until(webuitest.Shown + `'Out of balance'`)
	b.Until(`document.activeElement.id === 'text'`)

	// What the strip would write goes once the draft is another.
	b.Until(`!!document.querySelector('.strip [name=become]')`)
	b.Press(" ")
	b.Until(`!document.querySelector('.strip [name=become]') && held.length > 0`)
	// Completions are asked for as well, before or after the score.
	b.Until(`(held.splice(0).forEach((go) => go()), !!document.querySelector('.strip [name=become]'))`)

	b.Click("#redo button")
	b.Until(`held.length === 1`)
	b.Do(chromedp.Evaluate[chromedp.Void](`held.pop()()`))
	b.Until(webuitest.Focus + `'Undo the change'`)
	b.Quiet()
}

// A server that is gone costs nothing that was typed.
func TestABarThatDoesNotAnswer(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.Do(chromedp.Evaluate[chromedp.Void](`window.fetch = () => Promise.reject(new TypeError("gone"))`))
	b.Typed("2 oz gin")
	b.Until(`document.getElementById('trouble').textContent.includes('Your draft is safe')`)
	assert.Equal(t, "2 oz gin", b.Text())
}

// Without scripts the same form posts itself, and the page comes back whole.
func TestBenchWithoutScripts(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.WithoutScripts()
	b.Do(chromedp.Reload())
	b.Typed("2 oz gin\n1/4 oz lemon juice")
	b.Click("button.main")
	b.Until(webuitest.Shown + `'Out of balance'`)
	b.Click(".cards button")
	b.Until(webuitest.Shown + `'Balanced'`)
	assert.Equal(t, "2 oz gin\n¾ oz lemon juice", b.Text())
	b.Click("#undo button")
	b.Until(webuitest.Shown + `'Out of balance'`)
	assert.Equal(t, "2 oz gin\n1/4 oz lemon juice", b.Text())
	b.Fits()
	b.Quiet()
}
