package webui

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const listed = `document.querySelectorAll('.riffs > li').length === `

// The bench's draft and guest come along, past htmx and without scripts alike.
func TestFromTheBenchToRiffs(t *testing.T) {
	for name, prepare := range map[string]func(b *browser){"with scripts": func(*browser) {}, "without": func(b *browser) { b.withoutScripts() }} {
		t.Run(name, func(t *testing.T) {
			b := newBrowser(t, 360)
			prepare(b)
			b.open(serve(t, newFakeHouse()), "/")
			b.typed("2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat")
			b.click(".guest > summary")
			b.click(`input[value="tree nuts"]`)
			b.click("#riff-on")
			b.until(`location.pathname === '/riffs'`)
			b.until(listed + `1`)
			b.until(`document.querySelector('.riffs h3').textContent.includes('clove syrup')`)
			b.until(`document.querySelector('input[value="tree nuts"]').checked`)
			assert.Equal(t, "2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat", b.text())
			b.fits()

			b.click(".riffs a.button")
			b.until(`location.pathname === '/' && document.getElementById('text').value.includes('clove syrup')`)
			b.until(`document.querySelector('input[value="tree nuts"]').checked`)
			b.quiet()
		})
	}
}

// A list is asked for, wished for and asked for again by the keyboard alone.
func TestRiffsByKeyboard(t *testing.T) {
	b := newBrowser(t, 1280)
	b.open(serve(t, newFakeHouse()), "/riffs?from=all")
	press := func(keys string) { b.do(chromedp.KeyEvent(keys)) }
	tabTo := func(what string) {
		t.Helper()
		for range 90 {
			press(kb.Tab)
			ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](what))
			require.NoError(t, err)
			if ok {
				return
			}
		}
		t.Fatal("never came to " + what)
	}
	tabTo(`document.activeElement.id === 'text'`)
	b.typed("2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup")
	tabTo(`document.activeElement.value === 'drier'`)
	press(" ")
	tabTo(`document.activeElement.id === 'words'`)
	press("no smoke")
	press(kb.Enter)
	b.until(listed + `3`)
	b.until(`document.querySelector('input[value="drier"]').checked && document.getElementById('words').value === 'no smoke'`)
	tabTo(`document.activeElement.name === 'others'`)
	press(kb.Enter)
	b.until(`location.search.includes('others=1') && document.body.textContent.includes('Seed 1')`)
	b.until(`document.getElementById('words').value === 'no smoke'`)
	b.quiet()
}

// Bottles are sifted as one types; what is ticked stays, and a return does not
// send the form.
func TestBottlesAreSifted(t *testing.T) {
	b := newBrowser(t, 360)
	b.open(serve(t, newFakeHouse()), "/riffs/use-up")
	const shown = `[...document.querySelectorAll('#bottles label')].filter((l) => l.getClientRects().length > 0).map((l) => l.textContent.trim()).join() === `
	b.click("#bottles summary")
	b.click(`input[value="london-dry-gin"]`)
	b.do(chromedp.SendKeys(chromedp.ID("filter"), "SYRÚP"))
	b.until(shown + `'London dry gin,simple syrup,almond syrup,clove syrup'`)
	b.do(chromedp.SendKeys(chromedp.ID("filter"), kb.Enter))
	b.click(`input[value="clove-syrup"]`)
	b.until(`location.search === ''`)
	b.fits()
	b.click("#use-up button.main")
	b.until(listed + `2`)
	b.fits()
	b.quiet()
}

func TestBottlesAreSiftedWithoutScripts(t *testing.T) {
	b := newBrowser(t, 360)
	b.withoutScripts()
	b.open(serve(t, newFakeHouse()), "/riffs/use-up?bottle=london-dry-gin")
	b.do(chromedp.SendKeys(chromedp.ID("filter"), "clove"))
	b.click(`button[name="show"]`)
	b.until(`[...document.querySelectorAll('#bottles input')].map((i) => i.value).join() === 'london-dry-gin,clove-syrup'`)
	b.until(`document.querySelector('input[value="london-dry-gin"]').checked`)
	b.quiet()
}

// Every page of riffs passes the checker, fits its screen and keeps the console
// quiet.
func TestRiffPagesAreAccessible(t *testing.T) {
	script := axe(t)
	address := serve(t, newFakeHouse())
	b := newBrowser(t, 360)
	for _, page := range []string{
		"/riffs", query("/riffs", "text", "Nut Sour\n"+nutDraft, "from", "all", "toward", "drier"), query("/riffs", "text", goodDraft, "toward", "longer"),
		query("/riffs", "text", "2 oz gni", "words", "crunchy", "cost", "x", "avoid", "eggs"),
		"/riffs/use-up", query("/riffs/use-up", "bottle", "almond-syrup", "bottle", "spare-bitters", "avoid", "eggs"), query("/riffs/use-up", "names", "moon dust", "filter", "zzz"),
		"/riffs/walk", query("/riffs/walk", "from", "halyard-sour", "to", "nutcracker"), query("/riffs/walk", "from", "halyard-sour", "to-text", "2 oz gni"),
	} {
		b.do(chromedp.EmulateViewport(360, 800))
		b.open(address, page)
		b.accessible(script, page)
	}
	for _, said := range b.complaints() {
		// A page that is meant to be refused is told of by the browser.
		assert.Regexp(t, `status of 422`, said, "the console should have nothing to say")
	}
}
