package specs_test

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// A spec is marked, removed and put back by the keyboard alone, with scripts or
// without.
func TestASpecByKeyboard(t *testing.T) {
	for _, scripts := range []bool{true, false} {
		h := webuitest.NewHouse()
		b := webuitest.NewBrowser(t, 360)
		if !scripts {
			b.WithoutScripts()
		}
		b.Open(webuitest.Serve(t, h), "/specs/mainbrace")
		button := func(value string) {
			b.Until(`document.readyState === 'complete' && !!document.querySelector('button[value=` + value + `]')`)
			b.Do(chromedp.Focus(chromedp.CSS("button[value=" + value + "]")))
			b.Press(kb.Enter)
		}
		button("right")
		b.Until(`document.querySelector('.done')?.textContent.startsWith('Marked as right')`)
		button("remove")
		b.Until(`document.querySelector('.motto').textContent === 'Removed from the specs.'`)
		b.Fits()
		button("undo")
		b.Until(`document.querySelector('.done')?.textContent === 'The last change is taken back.'`)
		_, err := house.Get[house.Spec](t.Context(), h.Store(), "mainbrace")
		require.NoError(t, err)
		b.Until(`[...document.querySelectorAll('[data-copy]')].every((e) => e.hidden === ` + map[bool]string{true: "false", false: "true"}[scripts] + `)`)
		for _, said := range b.Complaints() {
			assert.Contains(t, said, "410", "the browser tells of a page that is gone")
		}
	}
}

// Every page of the specs passes the checker, fits its screen and is quiet.
func TestSpecPagesAreAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	h := webuitest.OnSale(t)
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	check := func(page string) { b.Accessible(script, page) }
	draft := "&text=Halyard+Sour%0A2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat%0Ashake,+up"
	for _, page := range []string{"/specs/nutcracker?price=12", "/specs/mainbrace?price=x", "/specs/mainbrace/batch?make=bottle", "/specs/nutcracker/batch?from=freezer", "/specs/mainbrace/batch?serves=x",
		"/specs/import", "/?view=rows" + draft, "/?view=rows&text=2+oz+gni", "/bench?spec=nutcracker", "/?view=text&before=Halyard+Sour%0A1+oz+gin%0A3/4+oz+lemon+juice" + draft, "/card?text=2+oz+gin"} {
		b.Open(address, page)
		check(page)
	}
	b.Open(address, "/specs/import")
	b.Typed(pasted)
	b.Click("button.main")
	b.Until(`document.getElementById('bad-title') !== null`)
	check("specs that were pasted")
	b.Open(address, "/?"+webuitest.Fields("text", "Mainbrace\n1 oz gin\n1 oz lemon juice\nstir").Encode())
	b.Click("button[name=save]")
	b.Until(`document.getElementById('asked') !== null`)
	check("a name that is taken")
	b.Open(address, "/?view=rows"+draft)
	b.Do(chromedp.SendKeys(chromedp.ID("row-4-name"), "lem"))
	b.Until(`document.querySelectorAll('#row-4-options [role=option]').length > 0`)
	b.Press(kb.ArrowDown)
	b.Do(chromedp.Evaluate[chromedp.Void](script))
	found, err := chromedp.Run(b.Ctx, chromedp.Evaluate[[]string](webuitest.AxeRun, chromedp.EvalAwaitPromise))
	require.NoError(t, err)
	assert.Empty(t, found, "names offered in a row")
	for _, said := range b.Complaints() {
		assert.Regexp(t, `status of 422`, said, "the console should have nothing to say")
	}
}

// In print a batch and a spec hold what is needed at the bench, and no way about.
func TestSpecPagesInPrint(t *testing.T) {
	address := webuitest.Serve(t, webuitest.OnSale(t))
	b := webuitest.NewBrowser(t, 800)
	b.Media("print", "light")
	b.Open(address, "/specs/nutcracker/batch")
	b.Until(`[...document.querySelectorAll('nav, header, footer, button, form, .screen, .term')].every((e) => e.getClientRects().length === 0)`)
	b.Until(`document.querySelector('.plan').innerText.includes('By the jug') && document.querySelector('.plan').innerText.includes('Made on')`)
	b.Until(`document.querySelector('main').innerText.includes('Contains') && document.querySelector('main').innerText.includes('Salmonella')`)
	b.Open(address, "/specs/nutcracker")
	b.Until(`[...document.querySelectorAll('nav, button, form, .history')].every((e) => e.getClientRects().length === 0)`)
	b.Quiet()
}
