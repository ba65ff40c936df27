package board_test

import (
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/marking"
	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

const (
	drinkShown = `[...document.querySelectorAll('.drinks h3')].map((h) => h.textContent).join() === `
	isOut      = `!!document.getElementById('back-falernum')`
)

// What one screen marks, another shows by itself.
func TestTwoScreensOfTheBoard(t *testing.T) {
	h := webuitest.NewHouse()
	address := webuitest.Serve(t, h)
	one := webuitest.NewBrowser(t, 360)
	one.Open(address, "/board")
	two := one.Tab(1280)
	two.Open(address, "/board?avoid=tree+nuts")
	two.Until(`!document.getElementById('back-falernum')`)
	require.Eventually(t, func() bool { return h.Listeners() == 2 }, webuitest.Patience, 20*time.Millisecond, "both screens are being told")

	one.Click("#out-falernum")
	two.Until(isOut)
	two.Until(drinkShown + `'Mainbrace,Spindrift'`)
	two.Until(`document.querySelector('.cover').textContent.includes('clove syrup')`)
	two.Until(`!document.body.textContent.includes('almond')`)

	one.Until(`document.activeElement.id === 'drinks-title'`)
	one.Until(`document.querySelector('.new').textContent === 'New allergen: tree nuts'`)
	one.Until(`parseFloat(getComputedStyle(document.querySelector('.cover')).fontSize) >= 22`)
	one.Fits()
	two.Fits()

	// What stands open stays open when the other screen marks something.
	one.Click("#full-mainbrace summary")
	two.Click("#out-simple-syrup")
	one.Until(`!!document.getElementById('back-simple-syrup') && document.getElementById('full-mainbrace').open`)
	two.Click("#back-falernum")
	one.Until(`!document.getElementById('back-falernum')`)
	one.Until(`document.getElementById('line').hidden`)
	one.Quiet()
	two.Quiet()
}

// The board is dark whatever the scheme.
func TestTheBoardIsDark(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Media("", "light")
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/board")
	b.Until(`getComputedStyle(document.body).backgroundColor === 'rgb(13, 12, 11)'`)
}

// A bottle is marked and its cover opened by the keyboard alone, and what another
// screen marks meanwhile takes nobody's place from him.
func TestTheBoardByKeyboard(t *testing.T) {
	h := webuitest.NewHouse()
	b := webuitest.NewBrowser(t, 1280)
	b.Open(webuitest.Serve(t, h), "/board")
	press := func(keys string) { b.Do(chromedp.KeyEvent(keys)) }
	for range 60 {
		press(kb.Tab)
		at, err := chromedp.Run(b.Ctx, chromedp.Evaluate[string](`document.activeElement.id`))
		require.NoError(t, err)
		if at == "out-falernum" {
			break
		}
	}
	press(kb.Enter)
	b.Until(`document.activeElement.id === 'drinks-title'`)
	press(kb.Tab)
	b.Until(`document.activeElement.matches('#full-mainbrace > summary')`)
	press(kb.Enter)
	b.Until(`document.getElementById('full-mainbrace').open`)
	require.NoError(t, h.Mark(t.Context(), house.By{}, marking.Request{Out: []string{"simple-syrup"}}))
	b.Until(`!!document.getElementById('back-simple-syrup')`)
	b.Until(`document.activeElement.matches('#full-mainbrace > summary')`)
	b.Quiet()
}

func TestTheBoardWithoutScripts(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/board?avoid=tree+nuts")
	b.Click("#out-falernum")
	b.Until(drinkShown + `'Mainbrace,Spindrift'`)
	b.Until(`location.hash === '#drinks' && location.search === '?avoid=tree+nuts'`)
	b.Until(`document.body.textContent.includes('Reload')`)
	b.Click("#back-falernum")
	b.Until(`document.body.textContent.includes('Nothing is out')`)
	b.Quiet()
}

// A page whose server is gone says so where the thumb is, with what was tapped and is not
// marked, until that is marked; and it asks for the line ever more rarely.
func TestATapThatTheServerDoesNotHear(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.NewPhone(t)
	p.Open(webuitest.Serve(t, h), "/tonight")
	p.Click("#drink-spindrift summary")
	p.Do(chromedp.Evaluate[chromedp.Void](`window.heard = window.fetch; window.fetch = () => Promise.reject(new TypeError("gone"))`))
	p.Click("#drink-spindrift button[value=falernum]")
	p.Until(`document.getElementById('unmarked').textContent.startsWith('Not sent yet: falernum is out (')`)
	p.Until(`!!document.querySelector('#drink-spindrift button[value=falernum][data-unsent]')`)
	p.Within(0, "#line")
	p.Fits()
	p.Until(`getComputedStyle(document.getElementById('line')).position === 'fixed'`)

	p.Click("#drink-spindrift button[value=falernum]") // takes the tap back
	p.Until(`document.getElementById('unmarked').textContent === ''`)
	p.Click("#drink-spindrift button[value=falernum]")
	p.Until(`document.getElementById('unmarked').textContent !== ''`)
	p.Do(chromedp.Evaluate[chromedp.Void](`window.fetch = window.heard; dispatchEvent(new Event('online'))`))
	p.Until(isOut)
	p.Until(`document.getElementById('line').hidden && document.getElementById('unmarked').textContent === ''`)
	p.Quiet()
}

// What cannot be reached is not asked for all the time.
func TestALostLineIsAskedForEverMoreRarely(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/about:blank")
	b.Do(chromedp.Evaluate[chromedp.Void](`(() => {
		window.asked = []; window.waits = [];
		window.EventSource = class extends EventTarget {
			constructor() { super(); window.asked.push(1); queueMicrotask(() => this.dispatchEvent(new Event('error'))); }
			close() {}
		};
		const later = window.setTimeout;
		window.setTimeout = (f, ms) => { if (f.name === 'listen') window.waits.push(ms); return later(f, f.name === 'listen' ? 1 : ms); };
		document.body.innerHTML = '<p id="line" hidden><strong id="unmarked"></strong><span id="old"></span></p><p id="said"></p><div id="board" data-from="/tonight" data-events="/board/events"><div class="state" data-version="x"></div></div>';
		const script = document.createElement('script');
		script.src = '/static/board.js';
		document.head.append(script);
	})()`))
	b.Until(`window.waits.length > 12`)
	b.Until(`window.waits[0] < 500 && window.waits[3] > 1000 && window.waits.slice(8).every((ms) => ms > 10000 && ms < 20000)`)
}

// A browser opens six lines to a server at most. A page that is behind others holds none,
// so that the next page opens however many there are, and is told what it missed when it
// comes to the front.
func TestPagesBehindOthersHoldNoLine(t *testing.T) {
	h := webuitest.NewHouse()
	address := webuitest.Serve(t, h)
	first := webuitest.NewBrowser(t, 360)
	turns := func(b *webuitest.Browser, hidden string) {
		b.Do(chromedp.Evaluate[chromedp.Void](`Object.defineProperty(document, 'hidden', { configurable: true, get: () => ` + hidden + ` });
			document.dispatchEvent(new Event('visibilitychange'))`))
	}
	for tab := range 7 {
		b := first
		if tab > 0 {
			b = first.Tab(360)
		}
		b.Open(address, []string{"/tonight", "/board"}[tab%2])
		require.Eventually(t, func() bool { return h.Listeners() == 1 }, webuitest.Patience, 20*time.Millisecond, "the page in front is told")
		turns(b, "true")
		require.Eventually(t, func() bool { return h.Listeners() == 0 }, webuitest.Patience, 20*time.Millisecond, "the page behind is not")
	}
	require.NoError(t, h.Mark(t.Context(), house.By{}, marking.Request{Out: []string{"falernum"}}))
	turns(first, "false")
	first.Until(isOut)
	require.Eventually(t, func() bool { return h.Listeners() == 1 }, webuitest.Patience, 20*time.Millisecond)
	first.Until(`document.getElementById('line').hidden`)
	first.Quiet()
}

// contrast is the ratio of WCAG 2.2, 1.4.3, between the words of an element and what they
// stand on.
const contrast = `((e) => {
	const light = (c) => c.match(/[\d.]+/g).slice(0, 3).map((v) => v / 255)
		.map((v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)
		.reduce((sum, v, i) => sum + v * [0.2126, 0.7152, 0.0722][i], 0);
	const solid = (e) => { const c = getComputedStyle(e).backgroundColor; return c === 'rgba(0, 0, 0, 0)' ? solid(e.parentElement) : c; };
	const [a, b] = [light(getComputedStyle(e).color), light(solid(e))];
	return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
})`

// The word under the pointer, which takes a wrong tap back, can be read as any other.
func TestUndoCanBeReadUnderThePointer(t *testing.T) {
	for _, width := range []int64{360, 1280} {
		for _, page := range []string{"/board", "/tonight"} {
			h := webuitest.NewHouse()
			h.Dry = []string{"falernum"}
			b := webuitest.NewBrowser(t, width)
			b.Open(webuitest.Serve(t, h), page)
			b.Click("#back-falernum")
			b.Until(`document.querySelector('.outs button')?.textContent === 'Undo'`)
			// The page may still be on its way to where the mark stands, so the pointer follows it.
			require.Eventually(t, func() bool {
				at, err := chromedp.Run(b.Ctx, chromedp.Evaluate[[]float64](`(() => {
					const r = document.querySelector('.outs button')?.getBoundingClientRect() ?? new DOMRect();
					return [r.x + r.width / 2, r.y + r.height / 2];
				})()`))
				if err != nil {
					return false
				}
				b.Do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0], at[1]))
				over, err := chromedp.Run(b.Ctx, chromedp.Evaluate[bool](`document.querySelector('.outs button')?.matches(':hover') ?? false`))
				return err == nil && over
			}, 30*time.Second, 100*time.Millisecond)
			b.Until(contrast + `(document.querySelector('.outs button')) >= 4.5`)
			b.Quiet()
		}
	}
}
