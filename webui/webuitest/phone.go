package webuitest

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// A phone as it is held at a bar, in CSS pixels.
const (
	phoneWidth  = 360
	phoneHeight = 740
)

// Phone is a browser of a phone's size, which counts the taps.
type Phone struct {
	*Browser
	taps int
}

// NewPhone skips the test as [NewBrowser] does.
func NewPhone(t *testing.T) *Phone {
	t.Helper()
	p := &Phone{Browser: NewBrowser(t, phoneWidth)}
	p.Do(chromedp.EmulateViewport(phoneWidth, phoneHeight))
	return p
}

// Tap taps the first element that a selector finds, wherever the page has to be
// pushed for it.
func (p *Phone) Tap(css string) {
	p.T.Helper()
	p.taps++
	p.Click(css)
}

// Within asserts that so many taps were enough, and that what was asked for lies
// whole on the screen, below the row of pages and above the strip at the bottom.
func (p *Phone) Within(taps int, css string) {
	p.T.Helper()
	assert.LessOrEqual(p.T, p.taps, taps, "taps to %s", css)
	p.Until(fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		if (!e) return false;
		const bar = document.querySelector(".top"), strip = document.querySelector(".strip"), r = e.getBoundingClientRect();
		const top = bar && getComputedStyle(bar).position === "sticky" ? bar.getBoundingClientRect().bottom : 0;
		const shown = strip && strip !== e && !strip.contains(e) && strip.getClientRects().length > 0;
		return r.width > 0 && r.top >= top - 1 && r.bottom <= (shown ? strip.getBoundingClientRect().top : innerHeight) + 1;
	})()`, css))
}
