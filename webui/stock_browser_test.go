package webui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/form"
)

// onlyRefusals is what the console may say of pages that are meant to be
// refused.
func (b *browser) onlyRefusals() {
	b.t.Helper()
	for _, said := range b.complaints() {
		assert.Regexp(b.t, `status of (409|410|413|422)`, said, "the console should have nothing to say")
	}
}

func TestStockPagesAreAccessible(t *testing.T) {
	script := axe(t)
	h := stocked(t)
	h.outs = []string{"orgeat"}
	address := serve(t, h)
	b := newBrowser(t, 360)
	_, err := h.Store().Write(t.Context(), ana, house.Remove(house.Ref{Kind: house.KindBottle, ID: "odd"}, 1))
	require.NoError(t, err)
	for _, page := range []string{"/stock", "/stock?q=zzz", "/stock?gone=bottle&id=odd&done=2", "/stock/bottle", "/stock/bottle?id=blue&done=1", "/stock/bottle?id=odd",
		"/stock/made", "/stock/made?id=nut-syrup", "/stock/import"} {
		b.open(address, page)
		b.accessible(script, page)
	}
	b.open(serve(t, newFakeHouse()), "/stock")
	b.accessible(script, "an empty stock")

	// What is refused is as easy to use: faults, and two people at one bottle.
	b.open(address, "/stock/bottle?id=blue")
	b.do(chromedp.SetValue(chromedp.ID("f-abv"), "140"))
	b.click(".record button.main")
	b.until(`document.querySelector('.fault')?.textContent.includes('140')`)
	b.accessible(script, "a bottle with a fault")
	b.open(address, "/stock/bottle?id=blue")
	theirs := h.bottle(t, "blue").Item
	theirs.Stock, theirs.Note = 7, "in the cellar"
	_, err = h.Store().Write(t.Context(), ana, house.Put(theirs, 1))
	require.NoError(t, err)
	b.do(chromedp.SetValue(chromedp.ID("f-stock"), "1"))
	b.click(".record button.main")
	b.until(`document.body.textContent.includes('Theirs: 7')`)
	b.accessible(script, "two people at one bottle")
	b.click(".record button.main")
	b.until(`document.getElementById('said')?.textContent.includes('7 → 1')`)
	assert.Equal(t, "in the cellar", h.bottle(t, "blue").Item.Note, "what the other one changed is kept")
	b.onlyRefusals()
}

// A bottle is added, and the addition undone, by the keyboard alone.
func TestABottleByKeyboard(t *testing.T) {
	h := laidHouse{newFakeHouse()}
	b := newBrowser(t, 1280)
	b.open(serve(t, h), "/stock/bottle")
	press := func(keys string) { b.do(chromedp.KeyEvent(keys)) }
	at := func() string {
		id, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`document.activeElement.id || document.activeElement.textContent`))
		require.NoError(t, err)
		return id
	}
	tabTo := func(id string) {
		for range 40 {
			if at() == id {
				return
			}
			press(kb.Tab)
		}
		require.Fail(t, "the keyboard does not get there", id)
	}
	tabTo("f-name")
	press("Blue cap")
	press(kb.Tab)
	press("london")
	b.until(`document.querySelector('#n-ingredient button')?.textContent === 'London dry gin'`)
	press(kb.Tab)
	press(kb.Enter)
	b.until(`document.getElementById('f-ingredient').value === 'London dry gin' && document.activeElement.id === 'f-ingredient'`)
	tabTo("f-size_ml")
	press("700")
	press(kb.Enter)
	b.until(`document.activeElement.id === 'said'`)
	assert.Equal(t, 700.0, h.bottle(t, "blue-cap").Item.SizeML)
	tabTo("Undo: take it out again")
	press(kb.Enter)
	b.until(`document.getElementById('said')?.textContent.includes('no longer in the house')`)
	assert.Empty(t, h.bottles(t))
	b.quiet()
}

// A file of 300 bottles with three bad rows is sent, and mended in the box.
func TestAFileOfBottles(t *testing.T) {
	h := laidHouse{newFakeHouse()}
	b := newBrowser(t, 360)
	b.open(serve(t, h), "/stock/import")
	text, _ := threeHundred()
	path := filepath.Join(t.TempDir(), "bottles.csv")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	b.do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.click("button.main")
	const rows = `[...document.querySelectorAll('.bad strong')].map((r) => r.textContent).join() === `
	b.until(rows + `'Row 42,Row 118,Row 277'`)
	b.until(`document.getElementById('report').textContent === 'Nothing was written'`)
	assert.Empty(t, h.bottles(t))
	assert.Equal(t, form.Lines(text), b.text(), "the file is in the box")
	b.fits()

	b.click(`input[value="good"]`)
	b.click("button.main")
	b.until(`document.getElementById('report').textContent === 'The stock is written'`)
	b.until(rows + `'Row 42,Row 118,Row 277'`)
	assert.Len(t, h.bottles(t), 297)
	assert.Equal(t, 4, strings.Count(b.text(), "\n"))
	b.accessible(axe(t), "rows to mend")

	b.do(chromedp.SetValue(chromedp.ID("text"), strings.NewReplacer("jiuce", "juice", "seven", "700", `"Bottle 277,`, "Bottle 277,").Replace(b.text())))
	b.click("button.main")
	b.until(`document.querySelector('.report').textContent.includes('3 bottles added') && !document.querySelector('.bad')`)
	assert.Len(t, h.bottles(t), 300)
	b.onlyRefusals()
}

// A file that is too long says so, before it is sent or after.
func TestAFileThatIsTooLong(t *testing.T) {
	address := serve(t, laidHouse{newFakeHouse()})
	path := filepath.Join(t.TempDir(), "long.csv")
	require.NoError(t, os.WriteFile(path, []byte("name,ingredient\n"+strings.Repeat("x,orgeat\n", 400_000)), 0o600))
	b := newBrowser(t, 360)
	b.open(address, "/stock/import")
	b.do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.until(`!document.getElementById('too-long').hidden`)
	b.click("button.main")
	b.until(`document.activeElement.id === 'file' && !document.querySelector('.faults')`)
	b.quiet()

	b.withoutScripts()
	b.open(address, "/stock/import")
	b.do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.click("button.main")
	b.until(`document.querySelector('.faults')?.textContent.includes('more than 1 MiB')`)
	b.onlyRefusals()
}

func TestTheStockIsFoundAsItIsTyped(t *testing.T) {
	b := newBrowser(t, 1280)
	b.open(serve(t, stocked(t)), "/stock")
	const names = `[...document.querySelectorAll('.stock h3')].map((r) => r.textContent).join() === `
	b.do(chromedp.SendKeys(chromedp.ID("q"), "cap"))
	b.until(names + `'Blue cap,Red cap'`)
	b.until(`document.getElementById('told').textContent === '2 bottles.' && document.activeElement.id === 'q'`)
	b.do(chromedp.SendKeys(chromedp.ID("q"), strings.Repeat(kb.Backspace, len("cap"))+"nut"))
	b.until(names + `'Nut syrup'`)
	b.quiet()
}

func TestARecipeInABrowser(t *testing.T) {
	h := laidHouse{newFakeHouse()}
	b := newBrowser(t, 1280)
	b.open(serve(t, h), "/stock/made")
	b.do(chromedp.SendKeys(chromedp.ID("f-name"), "House sour"), chromedp.SendKeys(chromedp.ID("f-parts"), "300 ml simple syrup\n100 ml lem"))
	b.until(`document.querySelector('#n-parts button')?.textContent === 'lemon juice'`)
	b.click("#n-parts button")
	b.until(`document.getElementById('f-parts').value === '300 ml simple syrup\n100 ml lemon juice'`)
	b.until(`document.getElementById('worked').textContent.includes('462')`) // 300 mL of 615 g/L in just under 400 mL
	b.fits()
	b.click(".record button.main")
	b.until(`document.getElementById('said')?.textContent.includes('Added')`)
	assert.Len(t, h.making(t, "house-sour").Item.Parts, 2)
	b.quiet()
}

func TestTheStockWithoutScripts(t *testing.T) {
	h := stocked(t)
	b := newBrowser(t, 360)
	b.withoutScripts()
	address := serve(t, h)
	b.open(address, "/stock?q=blue")
	b.until(`document.querySelectorAll('.stock h3').length === 1`)
	b.click(".stock h3 a")
	b.do(chromedp.SetValue(chromedp.ID("f-stock"), "9"))
	b.click(".record button.main")
	b.until(`document.getElementById('said').textContent.includes('2.5 → 9')`)
	b.click(".said button")
	b.until(`document.getElementById('said').textContent.includes('9 → 2.5')`)
	assert.Equal(t, 2.5, h.bottle(t, "blue").Item.Stock)
	b.open(address, "/stock/bottle")
	b.until(`document.getElementById('f-ingredient').list.options.length > 5`)
	b.quiet()
}
