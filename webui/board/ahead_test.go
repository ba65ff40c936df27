package board_test

import (
	"net/http"
	"testing"
	"time"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// What the menu leans on stands in order, with what is out now told apart, and what could be
// bought with what it covers; what is out comes first.
func TestLookingAhead(t *testing.T) {
	h := webuitest.NewHouse()
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, h), "/tonight/ahead", ""), http.StatusOK, "<title>Looking ahead",
		"<strong>London dry gin</strong>", "3 drinks: Halyard Sour, Mainbrace and Spindrift", "<strong>falernum</strong>", "1 drink: Mainbrace",
		"<strong>spare bitters</strong> for London dry gin in Mainbrace", "Time ran out for lemon juice", "At most 4 noticeable steps")
	webuitest.Lacks(t, webuitest.Get(webuitest.PagesOf(t, h), "/tonight/ahead", ""), "out now", "bring back first")
	h.Dry = []string{"falernum"}
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, h), "/tonight/ahead", ""), http.StatusOK, "Out now: bring back first", "makes 2 drinks complete again", ">out now<")
}

// A house without a menu leans on nothing, and who is asked for is kept on the way.
func TestLookingAheadOfNothing(t *testing.T) {
	h := webuitest.NewHouse()
	h.Drinks = nil
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, h), "/tonight/ahead?avoid=milk", ""), http.StatusOK, "There is no menu yet", `href="/tonight?avoid=milk"`)
}

// The board says since when a bottle is out, as tonight does.
func TestTheBoardSaysSinceWhen(t *testing.T) {
	h := webuitest.Stocked(t)
	h.Dry = []string{"falernum"}
	h.KeepAll(t, house.Out{Ingredient: "falernum", Since: time.Now().Add(-20 * time.Minute)})
	pages := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(pages, "/tonight", ""), http.StatusOK, `falernum is out <span class="small">for 20 minutes</span>`)
	webuitest.Tells(t, webuitest.Get(pages, "/board", ""), http.StatusOK, `falernum <span class="small">out for 20 minutes, in`)
}

// From tonight and from the board it is one tap away, and what leans most stands on the
// screen of a phone.
func TestLookingAheadOnAPhone(t *testing.T) {
	address := webuitest.Serve(t, webuitest.NewHouse())
	for _, from := range []string{"/tonight", "/board"} {
		p := webuitest.NewPhone(t)
		p.Open(address, from)
		p.Fits()
		p.Within(0, `.to-wall a[href="/tonight/ahead"]`)
		p.Tap(`.to-wall a[href="/tonight/ahead"]`)
		p.Until(`location.pathname === "/tonight/ahead"`)
		p.Within(1, ".ahead li strong")
		p.Within(1, ".ahead li span:last-child")
		p.Fits()
		p.Quiet()
	}
}
