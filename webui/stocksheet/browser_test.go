package stocksheet_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/form"
	"counterpour/webui/stocksheet"
	"counterpour/webui/webuitest"
)

func TestThePageOfASheetIsAccessible(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.Stocked(t)), stocksheet.Path)
	b.Accessible(webuitest.Axe(t), stocksheet.Path)
	b.Quiet()
}

// A list as a manager keeps it goes in at the first try: the file is chosen, what
// was made of it is in view on a phone, and one tap takes it in.
func TestAManagersListAtTheFirstTry(t *testing.T) {
	h := webuitest.NewLaid()
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), stocksheet.Path)
	path := filepath.Join(t.TempDir(), "bottles.csv")
	list := "Back bar count,,,,,,\n\nItem,Bottle,Size,Cost,Par,On hand,Supplier\nGIN,,,,,,\nHawse dry,London dry gin,70cl,$18.50,4,2 btl,Quay\nSnubber dry,London dry gin,1L,$24,2,1½,Quay\nSYRUPS,,,,,,\nCleat nut,Orgeat,10oz,$9.90,2,1,Quay\nTotal,,,,,4.5,\n"
	require.NoError(t, os.WriteFile(path, []byte(list), 0o600))
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path})) // first tap: the file
	b.Until(`document.getElementById('report')?.textContent === '3 bottles ready'`)
	b.Until(webuitest.InView("#report"))
	b.Until(webuitest.InView(`button[value="take"]`))
	assert.Empty(t, h.Bottles(t))
	b.Fits()
	b.Accessible(webuitest.Axe(t), "what a list was read as")
	b.Click(`button[value="take"]`) // second tap
	b.Until(`document.getElementById('said')?.textContent.includes('3 bottles added')`)
	b.Until(webuitest.InView("#said"))
	var got []string
	for _, bottle := range h.Bottles(t) {
		got = append(got, fmt.Sprintf("%s %s %.6g %.2f %s %g", bottle.Name, bottle.Ingredient, bottle.SizeML, *bottle.Price, bottle.Currency, bottle.Stock))
	}
	assert.Equal(t, []string{"Cleat nut orgeat 295.735 9.90 USD 1", "Hawse dry london-dry-gin 700 18.50 USD 2", "Snubber dry london-dry-gin 1000 24.00 USD 1.5"}, got)
	b.Quiet()
}

// A file of 300 bottles with three bad rows is sent; the good ones are taken in,
// and the others mended by taps and in their boxes.
func TestAFileOfBottles(t *testing.T) {
	h := webuitest.NewLaid()
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), stocksheet.Path)
	text, _ := threeHundred()
	path := filepath.Join(t.TempDir(), "bottles.csv")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	const rows = `[...document.querySelectorAll('.mend h3')].map((r) => /Row \d+/.exec(r.textContent)[0]).join() === `
	b.Until(rows + `'Row 42,Row 118,Row 277'`)
	b.Until(`document.getElementById('report').textContent === '297 bottles ready, 3 rows to settle'`)
	assert.Empty(t, h.Bottles(t))
	assert.Equal(t, form.Lines(text), b.Text(), "the file is in the box")
	b.Fits()
	b.Accessible(webuitest.Axe(t), "rows to settle")

	b.Click(`button[value="take"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('297 bottles added')`)
	b.Until(webuitest.InView("#said"))
	b.Until(webuitest.InView("#said button")) // which undoes it
	b.Until(rows + `'Row 2,Row 3,Row 4'`)
	assert.Len(t, h.Bottles(t), 297)
	assert.Equal(t, 4, strings.Count(b.Text(), "\n"))

	b.Click(`button[name="remedy"][value="2 ingredient lemon juice"]`)
	b.Until(rows + `'Row 3,Row 4'`)
	b.Click(`button[name="remedy"][value="3 size 700 ml"]`)
	b.Until(rows + `'Row 4'`)
	b.Click(`button[value="take"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('2 bottles added')`)
	assert.Equal(t, 299, len(h.Bottles(t)))
	b.Quiet()
}

// A file that is too long says so, before it is sent or after.
func TestAFileThatIsTooLong(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewLaid())
	path := filepath.Join(t.TempDir(), "long.csv")
	require.NoError(t, os.WriteFile(path, []byte("name,ingredient\n"+strings.Repeat("x,orgeat\n", 400_000)), 0o600))
	b := webuitest.NewBrowser(t, 360)
	b.Open(address, stocksheet.Path)
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.Until(`!document.getElementById('too-long').hidden`)
	b.Click("button.main")
	b.Until(`document.activeElement.id === 'file' && !document.querySelector('.faults')`)
	b.Quiet()

	b.WithoutScripts()
	b.Open(address, stocksheet.Path)
	b.Do(chromedp.SetUploadFiles(chromedp.ID("file"), []string{path}))
	b.Click("button.main")
	b.Until(`document.querySelector('.faults')?.textContent.includes('more than 1 MiB')`)
	b.OnlyRefusals()
}

// Two rows of one unknown name are settled by one word, typed and chosen on a phone; until
// somebody says that they read the labels, what they carry is not stated.
func TestAnUnknownNameIsSettledOnce(t *testing.T) {
	h := webuitest.NewLaid()
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), stocksheet.Path)
	b.Typed("Item;Size;Price;Qty\nStrangebrand;70cl;€20,00;1\nStrangebrand 1l;;€27,00;1\nHawse London dry gin;0,7l;€14,90;3\n")
	b.Click(`form.takes .press button[value="read"].main`)
	b.Until(`document.getElementById('report')?.textContent === '1 bottle ready, 2 rows to settle'`)
	b.Until(`document.querySelectorAll('.mend input[type="text"]').length === 1`)
	b.Fits()
	b.Do(chromedp.SendKeys(chromedp.CSS(`.mend input[type="text"]`), "lond"))
	b.Until(`document.querySelector('.names button')?.textContent.toLowerCase().includes("london")`)
	b.Click(`.names button`)
	b.Click(`section.report button[value="read"]`)
	b.Until(`document.getElementById('report')?.textContent === '3 bottles ready'`)
	b.Until(`document.getElementById('by-hand')?.textContent.includes('Strangebrand')`)
	b.Fits()
	b.Accessible(webuitest.Axe(t), "kinds chosen by hand")
	b.Click(`button[value="take"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('3 bottles added')`)
	for _, bottle := range h.Bottles(t) {
		assert.Equal(t, strings.HasPrefix(bottle.Name, "Strangebrand"), bottle.Unread, bottle.Name)
	}
	b.Quiet()
}
