package specs_test

import (
	"fmt"
	"strings"
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
		b.Until(`document.querySelector('.done')?.textContent.startsWith('The last change is taken back.')`)
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
	for _, page := range []string{"/specs/nutcracker?price=12", "/specs/mainbrace?price=x", "/specs/mainbrace/batch?amount=2&of=bottles-750", "/specs/nutcracker/batch?from=freezer", "/specs/mainbrace/batch?amount=x",
		"/specs/import", "/?view=rows" + draft, "/?view=rows&text=2+oz+gnx", "/bench?spec=nutcracker", "/?view=text&before=Halyard+Sour%0A1+oz+gin%0A3/4+oz+lemon+juice" + draft, "/card?text=2+oz+gin"} {
		b.Open(address, page)
		check(page)
	}
	b.Open(address, "/specs/import")
	b.Typed(pasted)
	b.Click("button.main")
	b.Until(`document.getElementById('bad-title') !== null`)
	check("specs that were pasted")
	b.Open(address, "/costs")
	b.Do(chromedp.Evaluate[chromedp.Void](`{ const e = document.querySelector('.menu-costs input'); e.value = 'abc'; e.form.requestSubmit() }`))
	b.Until(`document.querySelector('.mend') !== null && document.querySelector('.menu-costs').getBoundingClientRect().right <= innerWidth`)
	check("a price that is none")
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
	b.Until(`document.querySelector('.plan').innerText.includes('By volume') && document.querySelector('.plan').innerText.includes('Made on')`)
	b.Until(`document.querySelector('main').innerText.includes('Contains') && document.querySelector('main').innerText.includes('Salmonella')`)
	b.Open(address, "/specs/nutcracker")
	b.Until(`[...document.querySelectorAll('nav, button, form, .history')].every((e) => e.getClientRects().length === 0)`)
	b.Quiet()
}

// The list is sifted as one types, by name and by what is poured, and each drink
// shows its pours, how it is served and its allergens without a tap.
func TestSpecsAreSiftedOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/specs")
	p.Within(0, "#specs > li:first-child .marks-line")
	const shown = `[...document.querySelectorAll('#specs > li')].filter((e) => !e.hidden).map((e) => e.querySelector('h2').textContent).join() === `
	p.Do(chromedp.SendKeys(chromedp.ID("q"), "falernum ma"))
	p.Until(shown + `'Mainbrace'`)
	p.Within(0, "#specs > li:not([hidden]) .in-line")
	p.Until(`!document.querySelector('#specs > li:not([hidden]) .facts').checkVisibility({ contentVisibilityAuto: true })`)
	p.Tap("#specs > li:not([hidden]) summary")
	p.Within(1, "#specs > li:not([hidden]) .facts")
	p.Do(chromedp.SendKeys(chromedp.ID("q"), "zz"))
	p.Until(shown + `''`)
	p.Within(1, "#none")
	p.Fits()
	p.Quiet()
}

// Five litres are five litres, and the first thing to pour stands on the screen.
func TestFiveLitresOnAPhone(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/specs/mainbrace/batch")
	p.Do(chromedp.SetValue(chromedp.ID("amount"), "5 L"))
	p.Tap("form .main")
	p.Until(`document.querySelector('#plan-title')?.textContent.startsWith('For 5\u00a0litres')`)
	p.Within(1, ".batch tbody tr:first-child")
	p.Until(`document.querySelector('.plan .facts dd').textContent === '5000\u00a0mL'`)
	p.Fits()
	p.Quiet()
}

// A card is one page of A6, and a menu prints full: a spec takes no more than a
// fifteenth of a page of A4, and nothing is lost on the way.
func TestCardAndMenuPrintFull(t *testing.T) {
	h := webuitest.NewHouse()
	var edits []house.Edit
	const drinks = 30
	for i := range drinks {
		id := fmt.Sprintf("sour-%02d", i+1)
		edits = append(edits, house.Put(house.Spec{ID: id, Name: "Sour " + id[5:], Method: "shake", Service: "up", Glass: "coupe", Garnish: "lemon twist",
			Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 0.75, Unit: "oz"}, {Ingredient: "orgeat", Amount: 0.5, Unit: "oz"}}}, 0))
	}
	_, err := h.Store().Write(t.Context(), webuitest.Opening, edits...)
	require.NoError(t, err)
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 800)
	b.Open(address, "/specs/sour-01/card")
	assert.Len(t, b.Printed(), 1)
	b.Open(address, "/specs/print")
	sheets := b.Printed()
	assert.LessOrEqual(t, len(sheets), 1+drinks/15)
	for i, s := range sheets[:len(sheets)-1] {
		assert.GreaterOrEqual(t, strings.Count(s.Text, "% vol"), 10, "drinks on sheet %d: three columns, less the head", i+1)
	}
	text := webuitest.OnPaper(sheets)
	for i := range drinks {
		assert.Equal(t, 1, strings.Count(text, fmt.Sprintf("Sour %02d ", i+1)), "each drink is there once")
	}
	// The house pours two drinks with orgeat of its own beside these.
	assert.GreaterOrEqual(t, strings.Count(text, "½ oz orgeat"), drinks)
	assert.GreaterOrEqual(t, strings.Count(text, "Contains tree nuts (orgeat)"), drinks)
	b.Open(address, "/menu")
	sheets = b.Printed()
	assert.LessOrEqual(t, len(sheets), 2, "the menu for guests stands in two columns")
	text = webuitest.OnPaper(sheets)
	assert.Equal(t, drinks, strings.Count(text, "London dry gin, lemon juice, orgeat Contains tree nuts."))
	assert.NotContains(t, text, "Print it")
	b.Quiet()
}
