package stock_test

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

func TestStockPagesAreAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	h := webuitest.Stocked(t)
	h.Dry = []string{"orgeat"}
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	_, err := h.Store().Write(t.Context(), webuitest.Ana, house.Remove(house.Ref{Kind: house.KindBottle, ID: "odd"}, 1))
	require.NoError(t, err)
	for _, page := range []string{"/stock", "/stock?q=zzz", "/stock?gone=bottle&id=odd&done=2", "/stock/bottle", "/stock/bottle?id=blue&done=1", "/stock/bottle?id=odd",
		"/stock/made", "/stock/made?id=nut-syrup", "/stock/order"} {
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
	theirs := h.Bottle(t, "blue").Item
	theirs.Stock, theirs.Note = 7, "in the cellar"
	_, err = h.Store().Write(t.Context(), webuitest.Ana, house.Put(theirs, 1))
	require.NoError(t, err)
	b.Do(chromedp.SetValue(chromedp.ID("f-stock"), "1"))
	b.Click(".record button.main")
	b.Until(`document.body.textContent.includes('Theirs: 7')`)
	b.Accessible(script, "two people at one bottle")
	b.Click(".record button.main")
	b.Until(`document.getElementById('said')?.textContent.includes('7 → 1')`)
	assert.Equal(t, "in the cellar", h.Bottle(t, "blue").Item.Note, "what the other one changed is kept")
	b.OnlyRefusals()
}

// A bottle is added, and the addition undone, by the keyboard alone.
func TestABottleByKeyboard(t *testing.T) {
	h := webuitest.NewLaid()
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
	assert.Equal(t, 700.0, h.Bottle(t, "blue-cap").Item.SizeML)
	tabTo("Undo: take it out again")
	press(kb.Enter)
	b.Until(`document.getElementById('said')?.textContent.includes('no longer in the house')`)
	assert.Empty(t, h.Bottles(t))
	b.Quiet()
}

func TestTheStockIsFoundAsItIsTyped(t *testing.T) {
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, webuitest.Stocked(t)), "/stock")
	const names = `[...document.querySelectorAll('.stock tbody th[scope="row"] > a, .makes h3')].map((r) => r.textContent).join() === `
	b.Do(chromedp.SendKeys(chromedp.ID("q"), "cap"))
	b.Until(names + `'Blue cap,Red cap'`)
	b.Until(`document.getElementById('told').textContent === '2 bottles.' && document.activeElement.id === 'q'`)
	b.Until(`document.querySelector('#mark [name=list]').value === '/stock?q=cap'`) // a mark leads back to what was found
	b.Do(chromedp.SendKeys(chromedp.ID("q"), strings.Repeat(kb.Backspace, len("cap"))+"nut"))
	b.Until(names + `'Nut syrup'`)
	b.Quiet()
}

func TestARecipeInABrowser(t *testing.T) {
	h := webuitest.NewLaid()
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
	assert.Len(t, h.Making(t, "house-sour").Item.Parts, 2)
	b.Quiet()
}

func TestTheStockWithoutScripts(t *testing.T) {
	h := webuitest.Stocked(t)
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	address := webuitest.Serve(t, h)
	b.Open(address, "/stock?q=blue")
	b.Until(`document.querySelectorAll('.makes h3, .stock tbody th[scope="row"] > a').length === 1`)
	b.Click(`.stock tbody th[scope="row"] > a`)
	b.Until(`document.readyState === 'complete' && document.getElementById('f-stock') !== null`)
	b.Do(chromedp.SetValue(chromedp.ID("f-stock"), "9"))
	b.Click(".record button.main")
	b.Until(`document.getElementById('said').textContent.includes('2.5 → 9')`)
	b.Click(".said button")
	b.Until(`document.getElementById('said').textContent.includes('9 → 2.5')`)
	assert.Equal(t, 2.5, h.Bottle(t, "blue").Item.Stock)
	b.Open(address, "/stock/bottle")
	b.Until(`document.getElementById('f-ingredient').list.options.length > 5`)
	b.Quiet()
}

// On a phone a bottle is marked out with one tap once it is found, and the answer,
// with its undo, is in view.
func TestABottleRunsOutInTheList(t *testing.T) {
	h := webuitest.Stocked(t)
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, h), "/stock?q=almond")
	b.Fits()
	b.Click(`.stock button[name="out"]`)
	b.Until(`document.getElementById('said')?.textContent.includes('orgeat is out')`)
	b.Until(webuitest.InView("#said button"))
	b.Accessible(webuitest.Axe(t), "a bottle marked out")
	b.Click("#said button")
	b.Until(`document.getElementById('said')?.textContent.includes('orgeat is back')`)
	b.Fits()
	b.Quiet()
}
