package bench_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// A draft is written in rows by the keyboard alone: names are offered, arrows
// pour by the jigger, and the text says the same at every moment.
func TestRowsByKeyboard(t *testing.T) {
	for name, width := range map[string]int64{"telephone": 360, "bar top": 1280} {
		t.Run(name, func(t *testing.T) {
			b := webuitest.OpenBrowser(t, width)
			b.Do(chromedp.Focus(chromedp.CSS("button[value=rows]")))
			b.Press(kb.Enter)
			b.Until(`document.getElementById('draft').dataset.view === 'rows' && document.getElementById('text').getClientRects().length === 0`)
			b.Fits()
			b.TabTo("row-drink")
			b.Press("Halyard Sour", kb.Enter)
			b.Until(`document.activeElement.id === 'row-1-name'`)
			b.Press("lond")
			b.Until(`document.querySelector('#row-1-options [role=option]')?.textContent === 'London dry gin'`)
			b.Until(`document.activeElement.getAttribute('aria-expanded') === 'true'`)
			b.Press(kb.ArrowDown, kb.Enter)
			b.Reads("Halyard Sour\nLondon dry gin")
			b.Until(`document.activeElement.id === 'row-1-amount'`)
			b.Press("2")
			b.Reads("Halyard Sour\n2 oz London dry gin")
			b.Until(`!!document.getElementById('row-2-name')`)
			b.Press(kb.Enter)
			b.Until(`document.activeElement.id === 'row-2-name'`)
			b.Press("lemon juice", kb.Enter, "1", kb.ArrowDown, kb.ArrowDown, kb.ArrowDown)
			b.Reads("Halyard Sour\n2 oz London dry gin\n¼ oz lemon juice")
			b.Until(webuitest.Shown + `'Out of balance'`)
			b.Until(`document.activeElement.id === 'row-2-amount' && document.activeElement.value === '¼'`)
			b.Press(kb.ArrowUp, kb.ArrowUp)
			b.Until(webuitest.Shown + `'Balanced'`)
			b.Until(`document.querySelector('.compare .moved')?.textContent === 'lemon juice1 oz¾ oz'`)
			b.Fits()

			// Buttons do the same, and what they do can be undone.
			b.TabTo("row-2-more")
			b.Press(kb.Enter)
			b.Reads("Halyard Sour\n2 oz London dry gin\n1 oz lemon juice")
			b.Until(`document.activeElement.id === 'row-2-more'`)
			b.TabTo("row-2-drop")
			b.Press(kb.Enter)
			b.Reads("Halyard Sour\n2 oz London dry gin")
			b.Click("#undo button")
			b.Reads("Halyard Sour\n2 oz London dry gin\n1 oz lemon juice")
			b.Until(`document.getElementById('row-2-name')?.value === 'lemon juice'`)
			b.Quiet()
		})
	}
}

// Text and rows keep in step both ways, and a line that is no pour stays.
func TestTextAndRowsKeepInStep(t *testing.T) {
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/?view=rows&text=Halyard+Sour%0A2+oz+gin%0A%23+pressed+now%0A3/4+oz+lemon+juice%0Ashake,+up")
	b.Until(`document.getElementById('row-2-name')?.value === 'lemon juice'`)
	b.Do(chromedp.Evaluate[chromedp.Void](`const u = document.getElementById('row-2-unit'); u.value = 'dash'; u.dispatchEvent(new Event('input', {bubbles: true}))`))
	b.Reads("Halyard Sour\n2 oz gin\n# pressed now\n¾ dash lemon juice\nshake, up")
	b.Do(chromedp.Evaluate[chromedp.Void](`const m = document.getElementById('row-method'); m.value = 'stir'; m.dispatchEvent(new Event('input', {bubbles: true}))`))
	b.Reads("Halyard Sour\n2 oz gin\n# pressed now\n¾ dash lemon juice\nstir, up")
	b.Click("button[name=view][value=text]")
	b.Adds("\n1/2 oz orgeat")
	b.Click("button[name=view][value=rows]")
	b.Until(`document.getElementById('row-3-name')?.value === 'orgeat' && document.getElementById('row-3-amount').value === '½'`)
	b.Do(chromedp.Reload())
	b.Until(`document.getElementById('draft').dataset.view === 'rows'`)

	// In the text, Alt and an arrow step the line at the caret.
	b.Click("button[name=view][value=text]")
	b.Do(chromedp.Evaluate[chromedp.Void](`const t = document.getElementById('text'); t.focus(); t.setSelectionRange(15, 15)`))
	b.Do(chromedp.KeyEvent(kb.ArrowUp, chromedp.KeyModifiers(1)))
	b.Until(`document.getElementById('text').value.split("\n")[1] === '2¼ oz gin'`)
	b.Quiet()
}

// Two people have one spec on the bench. The second is told, sees what is there
// now, and loses nothing.
func TestSavingInABrowser(t *testing.T) {
	h := webuitest.NewHouse()
	address := webuitest.Serve(t, h)
	one := webuitest.NewBrowser(t, 360)
	one.Open(address, "/?spec=mainbrace")
	two := one.Tab(1280)
	two.Open(address, "/?spec=mainbrace")
	const asked = `document.getElementById('asked')?.textContent.replace(/\s+/g, ' ').trim()`

	one.Adds("1/2 oz orgeat")
	one.Click("button[name=save]")
	one.Until(asked + ` === 'Saved as version 2: Mainbrace. Undo'`)
	one.Until(`document.activeElement.id === 'asked'`)
	one.Fits()
	two.Adds("1/4 oz simple syrup")
	two.Click("button[name=save]")
	two.Until(asked + `?.startsWith('Not saved: Mainbrace has changed meanwhile.')`)
	two.Until(asked + `?.includes('½ oz orgeat taken out')`)
	two.Fits()
	two.Do(chromedp.SendKeys(chromedp.ID("called"), "Foremast"+kb.Enter))
	two.Until(asked + ` === 'Saved as version 1: Foremast. Undo'`)
	two.Until(`document.getElementById('text').value.startsWith('Foremast\n2 oz London dry gin')`)
	two.Click("#asked a")
	two.Until(`document.querySelector('h1').textContent === 'Foremast'`)

	// What was said goes once the draft is another.
	one.Adds("\n2 oz of nobody knows what")
	one.Until(`!document.getElementById('asked')`)
	one.Click("button[name=save]")
	one.Until(asked + `?.includes('A draft with faults is not saved')`)
	assert.Equal(t, int64(2), webuitest.KeptSpec(t, h, "mainbrace").Version)
	one.Quiet()
	two.Quiet()
}

// A draft is brought to a volume, and the change can be undone.
func TestAVolumeInABrowser(t *testing.T) {
	b := webuitest.OpenBrowser(t, 360)
	b.Typed("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.Until(webuitest.Shown + `'Balanced'`)
	b.Click(".sized summary")
	b.Do(chromedp.SendKeys(chromedp.ID("volume"), "333"+kb.Enter))
	b.Reads("Halyard Sour\n4 oz gin\n1½ oz lemon juice")
	b.Until(`document.querySelector('.compare') !== null`)
	b.Click("#undo button")
	b.Reads("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.Do(chromedp.SendKeys(chromedp.ID("volume"), "x"+kb.Enter))
	b.Until(`document.getElementById('volume-fault').textContent.startsWith('Write the volume')`)
	b.Reads("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.Quiet()
}
