package webui_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// On a phone the row of pages shows the one that is open, and any other is two taps
// away.
func TestThePagesOnAPhone(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	p := webuitest.NewPhone(t)
	for _, page := range []string{"/tonight", "/bench", "/riffs", "/board", "/specs", "/stock", "/map", "/training", "/tools"} {
		p.Open(address, page)
		p.Until(`(() => {
			const row = document.querySelector(".top .places").getBoundingClientRect(), here = document.querySelector(".top .places [aria-current]").getBoundingClientRect();
			return here.left >= row.left - 1 && here.right <= row.right + 1 && here.top >= 0;
		})()`)
		p.Fits()
	}
	p.Open(address, "/map")
	p.Until(`(pan => pan.scrollWidth > pan.clientWidth && pan.scrollLeft > 0)(document.querySelector(".pan.drawn"))`) // the middle of the map, not its corner
	p.Tap(".to-all")
	p.Until(`document.getElementById("all-places").matches(":popover-open")`)
	p.Tap(`#all-places a[href="/map"]`)
	p.Until(`location.pathname === "/map"`)
	p.Quiet()
}

// On a tablet every page stands in the row with its whole name, and the stock is a table.
func TestThePagesOnATablet(t *testing.T) {
	b := webuitest.NewBrowser(t, 768)
	b.Open(webuitest.Serve(t, webuitest.Stocked(t)), "/stock")
	b.Until(`(row => row.scrollWidth <= row.clientWidth && [...row.querySelectorAll("a")].every(a => a.getBoundingClientRect().right <= innerWidth))(document.querySelector(".top .places"))`)
	b.Until(`document.querySelector(".to-all").getClientRects().length === 0`)
	b.Until(`getComputedStyle(document.querySelector(".stock tbody tr:not(.shelf)")).display === "table-row"`)
	b.Fits()
	b.Quiet()
}

// Without scripts a phone reaches every page as well.
func TestThePagesOnAPhoneWithoutScripts(t *testing.T) {
	p := webuitest.NewPhone(t)
	p.WithoutScripts()
	p.Open(webuitest.Serve(t, webuitest.NewHouse()), "/bench")
	p.Tap(".to-all")
	p.Tap(`#all-places a[href="/tools"]`)
	p.Until(`location.pathname === "/tools"`)
	p.Quiet()
}

// What a page is for stands on the screen of a phone before anything is tapped.
func TestWhatAPageIsForStandsOnAPhone(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	address := webuitest.Serve(t, h)
	p := webuitest.NewPhone(t)
	for _, c := range []struct{ page, shows string }{
		{"/tonight", ".evening > li:nth-child(2) .word"},
		{"/tonight", "#guest summary"},
		{"/tonight?avoid=tree+nuts", ".evening .word"},
		{"/tonight?diet=vegan", ".evening .word"},
		{"/board", ".touched .cover"},
		{"/board", ".touched .notice"},
		{"/board?avoid=milk", ".touched .cover"},
		{"/specs", "#specs > li:nth-child(2) .in-line"},
		{"/map?spec=nutcracker", "#pours li:nth-child(2) .how"},
		{"/training?what=family", "#question"},
	} {
		p.Open(address, c.page)
		t.Run(strings.TrimPrefix(c.page, "/")+" "+c.shows, func(t *testing.T) {
			p.T = t
			p.Within(0, c.shows)
		})
		p.T = t
	}
	p.Open(webuitest.Serve(t, webuitest.Stocked(t)), "/stock")
	p.Within(0, "#found .stock tbody tr:not(.shelf) button")
	p.Quiet()
}

// A bottle that was marked as out by a slip is back with one tap, on a button that
// stands on the screen.
func TestASlipIsUndoneOnAPhone(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	p := webuitest.NewPhone(t)
	p.Open(address, "/board")
	p.Tap("#out-falernum")
	p.Until(`document.getElementById("back-falernum")?.textContent === "Undo"`)
	p.Within(1, "#back-falernum")
	p.Within(1, ".touched .cover")
	p.Tap("#back-falernum")
	p.Until(`!document.getElementById("back-falernum")`)
	p.Open(address, "/tonight")
	p.Tap("#drink-mainbrace summary")
	p.Tap("#drink-mainbrace button[value=falernum]")
	p.Until(`document.getElementById("back-falernum")?.textContent === "Undo"`)
	p.Within(4, "#back-falernum")
	p.Quiet()
}

// A letter leads to the drinks that begin with it.
func TestALetterLeadsToItsDrinks(t *testing.T) {
	h := webuitest.NewHouse()
	var edits []house.Edit
	for _, letter := range "ABCDEFGHIJKLMNOP" {
		edits = append(edits, house.Put(house.Spec{ID: "draught-" + strings.ToLower(string(letter)), Name: string(letter) + " Draught", Method: "shake", Service: "up",
			Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 0.75, Unit: "oz"}, {Ingredient: "orgeat", Amount: 0.5, Unit: "oz"}}}, 0))
	}
	_, err := h.Store().Write(t.Context(), webuitest.Opening, edits...)
	require.NoError(t, err)
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, h), "/specs")
	p.Within(0, ".letters a")
	p.Tap(`.letters a[href="#spec-draught-p"]`)
	p.Within(1, "#spec-draught-p h2")
	p.Within(1, "#spec-draught-p .in-line")
	p.Fits()
	p.Quiet()
}
