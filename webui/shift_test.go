package webui_test

import (
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// everyPage is an address of each page, on a house with bottles out.
var everyPage = []string{
	"/tonight", "/tonight?avoid=tree+nuts", "/tonight/ahead", "/tonight/wall", "/tonight/flight?drink=mainbrace&drink=halyard-sour", "/board", "/bench", "/bench?text=2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat&missing=orgeat", "/tools",
	"/riffs?from=all&text=2+oz+gin%0A3/4+oz+lemon+juice%0A1/2+oz+orgeat", "/riffs/use-up", "/riffs/walk",
	"/specs", "/costs", "/specs/mainbrace", "/specs/mainbrace/batch", "/specs/mainbrace/card", "/specs/print", "/menu", "/specs/import",
	"/stock", "/stock/bottle", "/stock/label?of=orgeat", "/stock/made", "/stock/house", "/stock/import", "/stock/order", "/start", "/map", "/map?spec=nutcracker&missing=orgeat", "/map?bottle=orgeat",
	"/training?what=cover", "/training/progress", "/training/flight", "/training/triangle", "/training/starter",
}

// mostShift is the layout shift from which a page moves under the reader's hand: a
// tenth of what is called good (Web Vitals, Cumulative Layout Shift: 0.1), so that not
// one line may move.
const mostShift = 0.01

// shifted sums the layout shifts since the page was opened.
const shifted = `new Promise((done) => {
	let sum = 0;
	const add = (list) => { for (const e of list) sum += e.value; };
	const observer = new PerformanceObserver((l) => add(l.getEntries()));
	observer.observe({ type: "layout-shift", buffered: true });
	setTimeout(() => { add(observer.takeRecords()); done(sum); }, 400);
})`

// sideways is how many pixels a page goes beyond its screen once its text has twice its size, as
// who sees little sets it (WCAG 2.2, 1.4.4 and 1.4.10).
const sideways = `(() => {
	const page = document.documentElement;
	page.style.fontSize = "200%";
	const beyond = page.scrollWidth - page.clientWidth;
	page.style.fontSize = "";
	return beyond;
})()`

// What is read stays where it is while scripts and styles arrive, and fits a phone in letters of
// twice the size.
func TestPagesDoNotMove(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat"}
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	sum := func() float64 {
		moved, err := chromedp.Run(b.Ctx, chromedp.Evaluate[float64](shifted, chromedp.EvalAwaitPromise))
		require.NoError(t, err)
		return moved
	}
	for _, page := range everyPage {
		b.Open(address, page)
		assert.Less(t, sum(), mostShift, page)
		beyond, err := chromedp.Run(b.Ctx, chromedp.Evaluate[int](sideways))
		require.NoError(t, err)
		assert.Zero(t, beyond, "%s at twice the size", page)
	}
	// The measure does see a page that moves.
	b.Do(chromedp.Evaluate[chromedp.Void](`document.querySelector("main").style.paddingTop = "300px"`))
	assert.Eventually(t, func() bool { return sum() > mostShift }, webuitest.Patience, 50*time.Millisecond)
}
