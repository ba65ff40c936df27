package board_test

import (
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

// slowly serves the pages of a house, which answer a mark, and tell of the marks of others, only
// after a while.
func slowly(t *testing.T, h *webuitest.House, after time.Duration) (address string) {
	t.Helper()
	pages := webuitest.PagesOf(t, h)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method == http.MethodPost || r.URL.Path == "/board/events" {
			time.Sleep(after)
		}
		pages.ServeHTTP(w, r)
	}))
	t.Cleanup(func() {
		server.CloseClientConnections()
		server.Close()
	})
	return server.URL
}

// overhears keeps every line that the page shows from now on, and the buttons that were shown
// as being marked.
const overhears = `(() => {
	const line = document.getElementById('line');
	window.lines = [];
	window.going = new Set();
	new MutationObserver((all) => all.forEach(({ target }) => { if (target.dataset.marking === 'being marked') window.going.add(target.value); }))
		.observe(document.getElementById('board'), { attributes: true, subtree: true, attributeFilter: ['data-marking'] });
	new MutationObserver(() => { if (!line.hidden) window.lines.push(line.innerText); }).observe(line, { attributes: true, childList: true, subtree: true });
})()`

// What is tapped while another mark is on its way is shown as being marked, and marked after
// it, in the order of the taps; a bar that is slow is not told as one that does not answer.
func TestQuickTapsAreAllMarked(t *testing.T) {
	const slow = 2500 * time.Millisecond
	for _, c := range []struct {
		page, in string // the drink that is opened first, if any
		taps     []string
	}{
		{"/board", "", []string{"lemon-juice", "simple-syrup", "falernum", "orgeat"}},
		{"/tonight", "#drink-mainbrace", []string{"london-dry-gin", "lemon-juice", "falernum"}},
	} {
		t.Run(c.page, func(t *testing.T) {
			h := webuitest.NewHouse()
			p := webuitest.NewPhone(t)
			p.Open(slowly(t, h, slow), c.page)
			if c.in != "" {
				p.Click(c.in + " summary")
			}
			p.Do(chromedp.Evaluate[chromedp.Void](overhears))
			for _, id := range c.taps {
				p.Click(c.in + ` button[name=out][value="` + id + `"]`)
			}
			require.Eventually(t, func() bool { return len(h.Marked()) == len(c.taps) }, webuitest.Patience, 20*time.Millisecond, "every tap is marked")
			for _, id := range c.taps {
				p.Until(`!!document.getElementById('back-` + id + `')`)
			}
			p.Until(`[...window.going].sort().join() === '` + strings.Join(slices.Sorted(slices.Values(c.taps)), ",") + `'`)
			p.Until(`localStorage.getItem('counterpour-unsent') === '[]' && document.getElementById('line').hidden`)
			marked := []string{}
			for _, m := range h.Marked() {
				marked = append(marked, m.Out...)
			}
			assert.Equal(t, c.taps, marked)
			lines, err := chromedp.Run(p.Ctx, chromedp.Evaluate[[]string](`window.lines`))
			require.NoError(t, err)
			for _, line := range lines {
				assert.Regexp(t, `^Being marked: `, line)
				assert.NotContains(t, line, "No connection")
			}
			p.Fits()
			p.Quiet()
		})
	}
}

// A board that comes while a finger is down waits until it has lifted, so that the tap counts.
func TestANewBoardDoesNotEatATap(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.NewPhone(t)
	p.Open(slowly(t, h, time.Second), "/board")
	p.Click("#out-falernum")
	p.Do(chromedp.Evaluate[chromedp.Void](`(() => {
		const button = document.getElementById('out-lemon-juice');
		button.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
		setTimeout(() => {
			window.held = button.isConnected;
			button.dispatchEvent(new PointerEvent('pointerup', { bubbles: true }));
			button.click();
		}, 1700);
	})()`))
	p.Until(`window.held === true`)
	p.Until(`!!document.getElementById('back-falernum') && !!document.getElementById('back-lemon-juice')`)
	p.Quiet()
}
