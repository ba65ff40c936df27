package webui

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// press sends keys to whatever has the focus.
func (b *browser) press(keys ...string) {
	b.t.Helper()
	for _, k := range keys {
		b.do(chromedp.KeyEvent(k))
	}
}

// tabTo presses Tab until the element with an id has the focus.
func (b *browser) tabTo(id string) {
	b.t.Helper()
	for range 80 {
		at, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`document.activeElement.id`))
		require.NoError(b.t, err)
		if at == id {
			return
		}
		b.press(kb.Tab)
	}
	require.Fail(b.t, "not reached by Tab", id)
}

// adds types at the end of the draft.
func (b *browser) adds(text string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](`{ const t = document.getElementById('text'); t.focus(); t.setSelectionRange(t.value.length, t.value.length); }`))
	b.press(text)
}

// reads waits for the draft to read as wanted.
func (b *browser) reads(text string) {
	b.t.Helper()
	if !assert.Eventually(b.t, func() bool { return b.text() == text }, patience, 50*time.Millisecond) {
		b.t.Logf("the draft reads %q", b.text())
	}
}

// A draft is written in rows by the keyboard alone: names are offered, arrows
// pour by the jigger, and the text says the same at every moment.
func TestRowsByKeyboard(t *testing.T) {
	for name, width := range map[string]int64{"telephone": 360, "bar top": 1280} {
		t.Run(name, func(t *testing.T) {
			b := openBrowser(t, width)
			b.do(chromedp.Focus(chromedp.CSS("button[value=rows]")))
			b.press(kb.Enter)
			b.until(`document.getElementById('draft').dataset.view === 'rows' && document.getElementById('text').getClientRects().length === 0`)
			b.fits()
			b.tabTo("row-drink")
			b.press("Halyard Sour", kb.Enter)
			b.until(`document.activeElement.id === 'row-1-name'`)
			b.press("lond")
			b.until(`document.querySelector('#row-1-options [role=option]')?.textContent === 'London dry gin'`)
			b.until(`document.activeElement.getAttribute('aria-expanded') === 'true'`)
			b.press(kb.ArrowDown, kb.Enter)
			b.reads("Halyard Sour\nLondon dry gin")
			b.press(kb.Enter, "2")
			b.reads("Halyard Sour\n2 oz London dry gin")
			b.until(`!!document.getElementById('row-2-name')`)
			b.press(kb.Enter)
			b.until(`document.activeElement.id === 'row-2-name'`)
			b.press("lemon juice", kb.Enter, "1", kb.ArrowDown, kb.ArrowDown, kb.ArrowDown)
			b.reads("Halyard Sour\n2 oz London dry gin\n¼ oz lemon juice")
			b.until(shown + `'Out of balance'`)
			b.until(`document.activeElement.id === 'row-2-amount' && document.activeElement.value === '¼'`)
			b.press(kb.ArrowUp, kb.ArrowUp)
			b.until(shown + `'Balanced'`)
			b.until(`document.querySelector('.compare .moved')?.textContent === 'lemon juice1 oz¾ oz'`)
			b.fits()

			// Buttons do the same, and what they do can be undone.
			b.tabTo("row-2-more")
			b.press(kb.Enter)
			b.reads("Halyard Sour\n2 oz London dry gin\n1 oz lemon juice")
			b.until(`document.activeElement.id === 'row-2-more'`)
			b.tabTo("row-2-drop")
			b.press(kb.Enter)
			b.reads("Halyard Sour\n2 oz London dry gin")
			b.click("#undo button")
			b.reads("Halyard Sour\n2 oz London dry gin\n1 oz lemon juice")
			b.until(`document.getElementById('row-2-name')?.value === 'lemon juice'`)
			b.quiet()
		})
	}
}

// Text and rows keep in step both ways, and a line that is no pour stays.
func TestTextAndRowsKeepInStep(t *testing.T) {
	b := newBrowser(t, 1280)
	b.open(serve(t, newFakeHouse()), "/?view=rows&text=Halyard+Sour%0A2+oz+gin%0A%23+pressed+now%0A3/4+oz+lemon+juice%0Ashake,+up")
	b.until(`document.getElementById('row-2-name')?.value === 'lemon juice'`)
	b.do(chromedp.Evaluate[chromedp.Void](`const u = document.getElementById('row-2-unit'); u.value = 'dash'; u.dispatchEvent(new Event('input', {bubbles: true}))`))
	b.reads("Halyard Sour\n2 oz gin\n# pressed now\n¾ dash lemon juice\nshake, up")
	b.do(chromedp.Evaluate[chromedp.Void](`const m = document.getElementById('row-method'); m.value = 'stir'; m.dispatchEvent(new Event('input', {bubbles: true}))`))
	b.reads("Halyard Sour\n2 oz gin\n# pressed now\n¾ dash lemon juice\nstir, up")
	b.click("button[name=view][value=text]")
	b.adds("\n1/2 oz orgeat")
	b.click("button[name=view][value=rows]")
	b.until(`document.getElementById('row-3-name')?.value === 'orgeat' && document.getElementById('row-3-amount').value === '½'`)
	b.do(chromedp.Reload())
	b.until(`document.getElementById('draft').dataset.view === 'rows'`)

	// In the text, Alt and an arrow step the line at the caret.
	b.click("button[name=view][value=text]")
	b.do(chromedp.Evaluate[chromedp.Void](`const t = document.getElementById('text'); t.focus(); t.setSelectionRange(15, 15)`))
	b.do(chromedp.KeyEvent(kb.ArrowUp, chromedp.KeyModifiers(1)))
	b.until(`document.getElementById('text').value.split("\n")[1] === '2¼ oz gin'`)
	b.quiet()
}

// Two people have one spec on the bench. The second is told, sees what is there
// now, and loses nothing.
func TestSavingInABrowser(t *testing.T) {
	h := newFakeHouse()
	address := serve(t, h)
	one := newBrowser(t, 360)
	one.open(address, "/?spec=mainbrace")
	two := one.tab(1280)
	two.open(address, "/?spec=mainbrace")
	const asked = `document.getElementById('asked')?.textContent.replace(/\s+/g, ' ').trim()`

	one.adds("1/2 oz orgeat")
	one.click("button[name=save]")
	one.until(asked + ` === 'Saved as version 2: Mainbrace.'`)
	one.until(`document.activeElement.id === 'asked'`)
	one.fits()
	two.adds("1/4 oz simple syrup")
	two.click("button[name=save]")
	two.until(asked + `?.startsWith('Not saved: Mainbrace has changed meanwhile.')`)
	two.until(asked + `?.includes('½ oz orgeat taken out')`)
	two.fits()
	two.do(chromedp.SendKeys(chromedp.ID("called"), "Foremast"+kb.Enter))
	two.until(asked + ` === 'Saved as version 1: Foremast.'`)
	two.until(`document.getElementById('text').value.startsWith('Foremast\n2 oz London dry gin')`)
	two.click("#asked a")
	two.until(`document.querySelector('h1').textContent === 'Foremast'`)

	// What was said goes once the draft is another.
	one.adds("\nx")
	one.until(`!document.getElementById('asked')`)
	one.click("button[name=save]")
	one.until(asked + `?.includes('A draft with faults is not kept')`)
	assert.Equal(t, int64(2), keptSpec(t, h, "mainbrace").Version)
	one.quiet()
	two.quiet()
}

// A spec is marked, removed and put back by the keyboard alone, with scripts or
// without.
func TestASpecByKeyboard(t *testing.T) {
	for _, scripts := range []bool{true, false} {
		h := newFakeHouse()
		b := newBrowser(t, 360)
		if !scripts {
			b.withoutScripts()
		}
		b.open(serve(t, h), "/specs/mainbrace")
		button := func(value string) {
			b.until(`document.readyState === 'complete' && !!document.querySelector('button[value=` + value + `]')`)
			b.do(chromedp.Focus(chromedp.CSS("button[value=" + value + "]")))
			b.press(kb.Enter)
		}
		button("right")
		b.until(`document.querySelector('.done')?.textContent.startsWith('Marked as right')`)
		button("remove")
		b.until(`document.querySelector('.motto').textContent === 'Removed from the specs.'`)
		b.fits()
		button("undo")
		b.until(`document.querySelector('.done')?.textContent === 'The last change is taken back.'`)
		_, err := house.Get[house.Spec](t.Context(), h.Store(), "mainbrace")
		require.NoError(t, err)
		b.until(`[...document.querySelectorAll('[data-copy]')].every((e) => e.hidden === ` + map[bool]string{true: "false", false: "true"}[scripts] + `)`)
		for _, said := range b.complaints() {
			assert.Contains(t, said, "410", "the browser tells of a page that is gone")
		}
	}
}

// A draft is brought to a volume, and the change can be undone.
func TestAVolumeInABrowser(t *testing.T) {
	b := openBrowser(t, 360)
	b.typed("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.until(shown + `'Balanced'`)
	b.click(".sized summary")
	b.do(chromedp.SendKeys(chromedp.ID("volume"), "333"+kb.Enter))
	b.reads("Halyard Sour\n4 oz London dry gin\n1½ oz lemon juice")
	b.until(`document.querySelector('.compare') !== null`)
	b.click("#undo button")
	b.reads("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.do(chromedp.SendKeys(chromedp.ID("volume"), "x"+kb.Enter))
	b.until(`document.getElementById('volume-fault').textContent.startsWith('Write the volume')`)
	b.reads("Halyard Sour\n2 oz gin\n3/4 oz lemon juice")
	b.quiet()
}

// Every page of the specs passes the checker, fits its screen and is quiet.
func TestSpecPagesAreAccessible(t *testing.T) {
	script := axe(t)
	h := onSale(t)
	address := serve(t, h)
	b := newBrowser(t, 360)
	check := func(page string) { b.accessible(script, page) }
	draft := "&text=Halyard+Sour%0A2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat%0Ashake,+up"
	for _, page := range []string{"/specs/nutcracker?price=12", "/specs/mainbrace?price=x", "/specs/mainbrace/batch?make=bottle", "/specs/nutcracker/batch?from=freezer", "/specs/mainbrace/batch?serves=x",
		"/specs/import", "/?view=rows" + draft, "/?view=rows&text=2+oz+gni", "/?spec=nutcracker", "/?view=text&before=Halyard+Sour%0A1+oz+gin%0A3/4+oz+lemon+juice" + draft, "/card?text=2+oz+gin"} {
		b.open(address, page)
		check(page)
	}
	b.open(address, "/specs/import")
	b.typed(pasted)
	b.click("button.main")
	b.until(`document.getElementById('bad-title') !== null`)
	check("specs that were pasted")
	b.open(address, "/?"+fields("text", "Mainbrace\n1 oz gin\n1 oz lemon juice\nstir").Encode())
	b.click("button[name=save]")
	b.until(`document.getElementById('asked') !== null`)
	check("a name that is taken")
	b.open(address, "/?view=rows"+draft)
	b.do(chromedp.SendKeys(chromedp.ID("row-4-name"), "lem"))
	b.until(`document.querySelectorAll('#row-4-options [role=option]').length > 0`)
	b.press(kb.ArrowDown)
	b.do(chromedp.Evaluate[chromedp.Void](script))
	found, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](axeRun, chromedp.EvalAwaitPromise))
	require.NoError(t, err)
	assert.Empty(t, found, "names offered in a row")
	for _, said := range b.complaints() {
		assert.Regexp(t, `status of 422`, said, "the console should have nothing to say")
	}
}

// In print a batch and a spec hold what is needed at the bench, and no way about.
func TestSpecPagesInPrint(t *testing.T) {
	address := serve(t, onSale(t))
	b := newBrowser(t, 800)
	b.media("print", "light")
	b.open(address, "/specs/nutcracker/batch")
	b.until(`[...document.querySelectorAll('nav, header, footer, button, form, .screen, .term')].every((e) => e.getClientRects().length === 0)`)
	b.until(`document.querySelector('.plan').innerText.includes('By the jug') && document.querySelector('.plan').innerText.includes('Made on')`)
	b.until(`document.querySelector('main').innerText.includes('Contains') && document.querySelector('main').innerText.includes('Salmonella')`)
	b.open(address, "/specs/nutcracker")
	b.until(`[...document.querySelectorAll('nav, button, form, .history')].every((e) => e.getClientRects().length === 0)`)
	b.quiet()
}
