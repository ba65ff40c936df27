package stock_test

import (
	"fmt"
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
	"counterpour/webui/webuitest"
)

// onlyRefusals is what the console may say of pages that are meant to be
// refused.
func onlyRefusals(b *webuitest.Browser) {
	b.T.Helper()
	for _, said := range b.Complaints() {
		assert.Regexp(b.T, `status of (409|410|413|422)`, said, "the console should have nothing to say")
	}
}

func TestStockPagesAreAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	h := stocked(t)
	h.Dry = []string{"orgeat"}
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	_, err := h.Store().Write(t.Context(), ana, house.Remove(house.Ref{Kind: house.KindBottle, ID: "odd"}, 1))
	require.NoError(t, err)
	for _, page := range []string{"/stock", "/stock?q=zzz", "/stock?gone=bottle&id=odd&done=2", "/stock/bottle", "/stock/bottle?id=blue&done=1", "/stock/bottle?id=odd",
		"/stock/made", "/stock/made?id=nut-syrup", "/stock/import"} {
		b.Open(address, page)
		b.Accessible(script, page)
	}
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/stock")
	b.Accessible(script, "an empty stock")

	// What is refused is as easy to use: faults, and two people at one bottle.
	b.Open(address, "/stock/bottle?id=blue")
	b.Do(chromedp.SetValue(chromedp.ID("f-abv"), "140"))
	b.Click(".record button.main")
	b.Until(`document.querySelector('.fault')?.textContent.includes('140')`)
	b.Accessible(script, "a bottle with a fault")
	b.Open(address, "/stock/bottle?id=blue")
	theirs := h.bottle(t, "blue").Item
	theirs.Stock, theirs.Note = 7, "in the cellar"
	_, err = h.Store().Write(t.Context(), ana, house.Put(theirs, 1))
	require.NoError(t, err)
	b.Do(chromedp.SetValue(chromedp.ID("f-stock"), "1"))
	b.Click(".record button.main")
	b.Until(`document.body.textContent.includes('Theirs: 7')`)
	b.Accessible(script, "two people at one bottle")
	b.Click(".record button.main")
	b.Until(`document.getElementById('said')?.textContent.includes('7 → 1')`)
	assert.Equal(t, "in the cellar", h.bottle(t, "blue").Item.Note, "what the other one changed is kept")
	onlyRefusals(b)
}

// A bottle is added, and the addition undone, by the keyboard alone.
func TestABottleByKeyboard(t *testing.T) {
	h := laidHouse{webuitest.NewHouse()}
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, h), "/stock/bottle")
	press := func(keys string) { b.Do(chromedp.KeyEvent(keys)) }
	at := func() string {
		id, err := chromedp.Run(b.Ctx, chromedp.Evaluate[string](`document.activeElement.id || document.activeElement.textContent`))
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
	b.Until(`document.querySelector('#n-ingredient button')?.textContent === 'London dry gin'`)
	press(kb.Tab)
	press(kb.Enter)
	b.Until(`document.getElementById('f-ingredient').value === 'London dry gin' && document.activeElement.id === 'f-ingredient'`)
	tabTo("f-size_ml")
	press("700")
	press(kb.Enter)
	b.Until(`document.activeElement.id === 'said'`)
	assert.Equal(t, 700.0, h.bottle(t, "blue-cap").Item.SizeML)
	tabTo("Undo: take it out again")
	press(kb.Enter)
	b.Until(`document.getElementById('said')?.textContent.includes('no longer in the house')`)
	assert.Empty(t, h.bottles(t))
	b.Quiet()
}

// inView says where an element ends on the screen, above its lower edge.
func inView(css string) string {
	return `(() => { const box = document.querySelector('` + css + `')?.getBoundingClientRect(); return !!box && box.top >= 0 && box.bottom <= innerHeight; })()`
}

// A list as a manager keeps it goes in at the first try: the file is chosen, what
// was made of it is in view on a phone, and one tap takes it in.
func TestAManagersListAtTheFirstTry(t *testing.T) {
	h := laidHouse{webuitest.NewHouse()}
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), "/stock/import")
	path := filepath.Join(t.TempDir(), "bottles.csv")
	list := "Back bar count,,,,,,\n\nItem,Bottle,Size,Cost,Par,On hand,Supplier\nGIN,,,,,,\nHawse dry,London dry gin,70cl,$18.50,4,2 btl,Quay\nSnubber dry,London dry gin,1L,$24,2,1½,Quay\nSYRUPS,,,,,,\nCleat nut,Orgeat,10oz,$9.90,2,1,Quay\nTotal,,,,,4.5,\n"
	require.NoError(t, os.WriteFile(path, []byte(list), 0o600))
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path})) // first tap: the file
	b.Until(`document.getElementById('report')?.textContent === '3 bottles ready'`)
	b.Until(inView("#report"))
	b.Until(inView(`button[value="take"]`))
	assert.Empty(t, h.bottles(t))
	b.Fits()
	b.Accessible(webuitest.Axe(t), "what a list was read as")
	b.Click(`button[value="take"]`) // second tap
	b.Until(`document.getElementById('said')?.textContent.includes('3 bottles added')`)
	b.Until(inView("#said"))
	var got []string
	for _, bottle := range h.bottles(t) {
		got = append(got, fmt.Sprintf("%s %s %.6g %.2f %s %g", bottle.Name, bottle.Ingredient, bottle.SizeML, *bottle.Price, bottle.Currency, bottle.Stock))
	}
	assert.Equal(t, []string{"Cleat nut orgeat 295.735 9.90 USD 1", "Hawse dry london-dry-gin 700 18.50 USD 2", "Snubber dry london-dry-gin 1000 24.00 USD 1.5"}, got)
	b.Quiet()
}

// A file of 300 bottles with three bad rows is sent; the good ones are taken in,
// and the others mended by taps and in their boxes.
func TestAFileOfBottles(t *testing.T) {
	h := laidHouse{webuitest.NewHouse()}
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, h), "/stock/import")
	text, _ := threeHundred()
	path := filepath.Join(t.TempDir(), "bottles.csv")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	const rows = `[...document.querySelectorAll('.mend h3')].map((r) => /Row \d+/.exec(r.textContent)[0]).join() === `
	b.Until(rows + `'Row 42,Row 118,Row 277'`)
	b.Until(`document.getElementById('report').textContent === '297 bottles ready, 3 rows to settle'`)
	assert.Empty(t, h.bottles(t))
	assert.Equal(t, form.Lines(text), b.Text(), "the file is in the box")
	b.Fits()
	b.Accessible(webuitest.Axe(t), "rows to settle")

	b.Click(`button[value="take"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('297 bottles added')`)
	b.Until(rows + `'Row 2,Row 3,Row 4'`)
	assert.Len(t, h.bottles(t), 297)
	assert.Equal(t, 4, strings.Count(b.Text(), "\n"))

	b.Click(`button[name="remedy"][value="2 ingredient lemon juice"]`)
	b.Until(rows + `'Row 3,Row 4'`)
	b.Click(`button[name="remedy"][value="3 size 700 ml"]`)
	b.Until(rows + `'Row 4'`)
	b.Click(`button[value="take"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('2 bottles added')`)
	assert.Equal(t, 299, len(h.bottles(t)))
	b.Quiet()
}

// A file that is too long says so, before it is sent or after.
func TestAFileThatIsTooLong(t *testing.T) {
	address := webuitest.Serve(t, laidHouse{webuitest.NewHouse()})
	path := filepath.Join(t.TempDir(), "long.csv")
	require.NoError(t, os.WriteFile(path, []byte("name,ingredient\n"+strings.Repeat("x,orgeat\n", 400_000)), 0o600))
	b := webuitest.NewBrowser(t, 360)
	b.Open(address, "/stock/import")
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.Until(`!document.getElementById('too-long').hidden`)
	b.Click("button.main")
	b.Until(`document.activeElement.id === 'file' && !document.querySelector('.faults')`)
	b.Quiet()

	b.WithoutScripts()
	b.Open(address, "/stock/import")
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.Click("button.main")
	b.Until(`document.querySelector('.faults')?.textContent.includes('more than 1 MiB')`)
	onlyRefusals(b)
}

func TestTheStockIsFoundAsItIsTyped(t *testing.T) {
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, stocked(t)), "/stock")
	const names = `[...document.querySelectorAll('.stock tbody th[scope="row"] > a, .makes h3')].map((r) => r.textContent).join() === `
	b.Do(chromedp.SendKeys(chromedp.ID("q"), "cap"))
	b.Until(names + `'Blue cap,Red cap'`)
	b.Until(`document.getElementById('told').textContent === '2 bottles.' && document.activeElement.id === 'q'`)
	b.Do(chromedp.SendKeys(chromedp.ID("q"), strings.Repeat(kb.Backspace, len("cap"))+"nut"))
	b.Until(names + `'Nut syrup'`)
	b.Quiet()
}

func TestARecipeInABrowser(t *testing.T) {
	h := laidHouse{webuitest.NewHouse()}
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, h), "/stock/made")
	b.Do(chromedp.SendKeys(chromedp.ID("f-name"), "House sour"), chromedp.SendKeys(chromedp.ID("f-parts"), "300 ml simple syrup\n100 ml lem"))
	b.Until(`document.querySelector('#n-parts button')?.textContent === 'lemon juice'`)
	b.Click("#n-parts button")
	b.Until(`document.getElementById('f-parts').value === '300 ml simple syrup\n100 ml lemon juice'`)
	b.Until(`document.getElementById('worked').textContent.includes('462')`) // 300 mL of 615 g/L in just under 400 mL
	b.Fits()
	b.Click(".record button.main")
	b.Until(`document.getElementById('said')?.textContent.includes('Added')`)
	assert.Len(t, h.making(t, "house-sour").Item.Parts, 2)
	b.Quiet()
}

func TestTheStockWithoutScripts(t *testing.T) {
	h := stocked(t)
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	address := webuitest.Serve(t, h)
	b.Open(address, "/stock?q=blue")
	b.Until(`document.querySelectorAll('.makes h3, .stock tbody th[scope="row"] > a').length === 1`)
	b.Click(`.stock tbody th[scope="row"] > a`)
	b.Do(chromedp.SetValue(chromedp.ID("f-stock"), "9"))
	b.Click(".record button.main")
	b.Until(`document.getElementById('said').textContent.includes('2.5 → 9')`)
	b.Click(".said button")
	b.Until(`document.getElementById('said').textContent.includes('9 → 2.5')`)
	assert.Equal(t, 2.5, h.bottle(t, "blue").Item.Stock)
	b.Open(address, "/stock/bottle")
	b.Until(`document.getElementById('f-ingredient').list.options.length > 5`)
	b.Quiet()
}

// On a phone a bottle is marked out with one tap once it is found, and the answer,
// with its undo, is in view.
func TestABottleRunsOutInTheList(t *testing.T) {
	h := stocked(t)
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), "/stock?q=almond")
	b.Fits()
	b.Click(`.stock button[name="out"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('orgeat is out')`)
	b.Until(inView("#said button"))
	b.Accessible(webuitest.Axe(t), "a bottle marked out")
	b.Click("#said button")
	b.Until(`document.getElementById('said')?.textContent.includes('orgeat is back')`)
	b.Fits()
	b.Quiet()
}
