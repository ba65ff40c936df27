package riffs_test

import (
	"net/url"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

const listed = `document.querySelectorAll('.riffs > li').length === `

// The bench's draft and guest come along, past htmx and without scripts alike.
func TestFromTheBenchToRiffs(t *testing.T) {
	for name, prepare := range map[string]func(b *webuitest.Browser){"with scripts": func(*webuitest.Browser) {}, "without": func(b *webuitest.Browser) { b.WithoutScripts() }} {
		t.Run(name, func(t *testing.T) {
			b := webuitest.NewBrowser(t, 360)
			prepare(b)
			b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench")
			b.Typed("2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat")
			b.Click(".guest > summary")
			b.Click(`input[value="tree nuts"]`)
			b.Click("#riff-on")
			b.Until(`location.pathname === '/riffs'`)
			b.Until(listed + `1`)
			b.Until(`document.querySelector('.riffs h3').textContent.includes('clove syrup')`)
			b.Until(`document.querySelector('input[value="tree nuts"]').checked`)
			assert.Equal(t, "2 oz gin\n3/4 oz lemon juice\n1/2 oz orgeat", b.Text())
			b.Fits()

			b.Click(".riffs a.button")
			b.Until(`location.pathname === '/bench' && document.getElementById('text').value.includes('clove syrup')`)
			b.Until(`document.querySelector('input[value="tree nuts"]').checked`)
			b.Quiet()
		})
	}
}

// A list is asked for, wished for and asked for again by the keyboard alone.
func TestRiffsByKeyboard(t *testing.T) {
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/riffs?from=all")
	press := func(keys string) { b.Do(chromedp.KeyEvent(keys)) }
	tabTo := func(what string) {
		t.Helper()
		for range 90 {
			press(kb.Tab)
			ok, err := chromedp.Run(b.Ctx, chromedp.Evaluate[bool](what))
			require.NoError(t, err)
			if ok {
				return
			}
		}
		t.Fatal("never came to " + what)
	}
	tabTo(`document.activeElement.id === 'text'`)
	b.Typed("2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup")
	tabTo(`document.activeElement.textContent === 'It should be …'`)
	press(kb.Enter)
	tabTo(`document.activeElement.value === 'drier'`)
	press(" ")
	tabTo(`document.activeElement.id === 'words'`)
	press("no smoke")
	press(kb.Enter)
	b.Until(listed + `3`)
	b.Until(`document.querySelector('input[value="drier"]').checked && document.getElementById('words').value === 'no smoke'`)
	tabTo(`document.activeElement.name === 'others'`)
	press(kb.Enter)
	b.Until(`location.search.includes('others=1')`)
	b.Until(`document.getElementById('words').value === 'no smoke'`)
	b.Quiet()
}

// Bottles are sifted as one types; what is ticked stays, and a return does not
// send the form.
func TestBottlesAreSifted(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/riffs/use-up")
	const shown = `[...document.querySelectorAll('#bottles label')].filter((l) => l.getClientRects().length > 0).map((l) => l.textContent.trim()).join() === `
	b.Click("#bottles summary")
	b.Click(`input[value="london-dry-gin"]`)
	b.Do(chromedp.SendKeys(chromedp.ID("filter"), "SYRÚP"))
	b.Until(shown + `'London dry gin,simple syrup,almond syrup,clove syrup'`)
	b.Do(chromedp.SendKeys(chromedp.ID("filter"), kb.Enter))
	b.Click(`input[value="clove-syrup"]`)
	b.Until(`location.search === ''`)
	b.Fits()
	b.Click("#use-up button.main")
	b.Until(listed + `2`)
	b.Fits()
	b.Quiet()
}

func TestBottlesAreSiftedWithoutScripts(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/riffs/use-up?bottle=london-dry-gin")
	b.Do(chromedp.SendKeys(chromedp.ID("filter"), "clove"))
	b.Click(`button[name="show"]`)
	b.Until(`[...document.querySelectorAll('#bottles input')].map((i) => i.value).join() === 'london-dry-gin,clove-syrup'`)
	b.Until(`document.querySelector('input[value="london-dry-gin"]').checked`)
	b.Quiet()
}

// Every page of riffs passes the checker, fits its screen and keeps the console
// quiet.
func TestRiffPagesAreAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	address := webuitest.Serve(t, webuitest.NewHouse())
	b := webuitest.NewBrowser(t, 360)
	for _, page := range []string{
		"/riffs", query("/riffs", "text", "Nut Sour\n"+webuitest.NutDraft, "from", "all", "toward", "drier"), query("/riffs", "text", webuitest.GoodDraft, "toward", "longer"),
		query("/riffs", "text", "2 oz gnx", "words", "crunchy", "cost", "x", "avoid", "eggs"),
		"/riffs/use-up", query("/riffs/use-up", "bottle", "almond-syrup", "bottle", "spare-bitters", "avoid", "eggs"), query("/riffs/use-up", "names", "moon dust", "filter", "zzz"),
		"/riffs/walk", query("/riffs/walk", "from", "halyard-sour", "to", "nutcracker"), query("/riffs/walk", "from", "halyard-sour", "to-text", "2 oz gnx"),
	} {
		b.Do(chromedp.EmulateViewport(360, 800))
		b.Open(address, page)
		b.Accessible(script, page)
	}
	for _, said := range b.Complaints() {
		// A page that is meant to be refused is told of by the browser.
		assert.Regexp(t, `status of 422`, said, "the console should have nothing to say")
	}
}

// From the bench, riffs take a tap, and the first, with whether a guest notices
// it, stands on the screen; one more tap takes it to the bench.
func TestRiffsOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench?"+url.Values{"text": {webuitest.GoodDraft}}.Encode())
	p.Until(webuitest.Shown + `'Balanced'`)
	p.Tap("#riff-on")
	p.Until(`location.pathname === '/riffs' && !!document.querySelector('.riffs > li')`)
	p.Within(1, ".riffs > li:first-child h3")
	p.Within(1, ".riffs > li:first-child .notice")
	p.Within(1, ".riffs > li:first-child .shifts")
	p.Fits()
	p.Tap(".riffs > li:first-child a.button")
	p.Until(`location.pathname === '/bench' && document.getElementById('text').value.includes('almond syrup')`)
	p.Within(2, ".strip .points")
	p.Quiet()
}

// What uses bottles up takes a tap on the shelf, one for each bottle and one that asks,
// on a button that stands on the screen; so does the first draft.
func TestBottlesAreUsedUpOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/riffs/use-up")
	p.Within(0, "#use-up button.main")
	p.Tap("#bottles summary")
	p.Tap(`input[value="london-dry-gin"]`)
	p.Within(2, "#use-up button.main")
	p.Tap("#use-up button.main")
	p.Until(`!!document.querySelector(".riffs > li")`)
	p.Within(3, ".riffs > li:first-child h3")
	p.Within(3, ".riffs > li:first-child .build")
	p.Fits()
	p.Quiet()
}

// A walk takes two choices and a tap, and its sum and first drink stand on the screen.
func TestAWalkOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/riffs/walk")
	p.Within(0, "#to")
	p.Within(0, "#walk button.main")
	p.Do(chromedp.SetValue(chromedp.ID("from"), "halyard-sour"), chromedp.SetValue(chromedp.ID("to"), "nutcracker"))
	p.Tap("#walk button.main")
	p.Until(`!!document.querySelector(".walk-sum")`)
	p.Within(1, ".walk-sum")
	p.Within(1, ".riffs > li:first-child h3")
	p.Fits()
	p.Quiet()
}
