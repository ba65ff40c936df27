package webui

import (
	"context"
	"net/http/httptest"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// browser is a page of the bench in a real browser.
type browser struct {
	t   *testing.T
	ctx context.Context

	mu   sync.Mutex
	said []string // by the console
}

// openBrowser opens the bench.
func openBrowser(t *testing.T, width int64) *browser {
	t.Helper()
	b := newBrowser(t, width)
	b.open(serve(t, newFakeHouse()), "/")
	return b
}

// serve serves the pages of a house until the test ends.
func serve(t *testing.T, h House) (address string) {
	t.Helper()
	server := httptest.NewServer(pagesOf(t, h))
	t.Cleanup(server.Close)
	return server.URL
}

// newBrowser skips the test where there is no browser, but not in CI.
func newBrowser(t *testing.T, width int64) *browser {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds; not with -short")
	}
	if _, err := exec.LookPath("chromium"); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal("chromium is not on PATH; install it (Debian: apt-get install chromium)")
		}
		t.Skip("chromium is not on PATH, so the pages are not tried in a browser (Debian: apt-get install chromium)")
	}
	allocator, stop := chromedp.NewExecAllocator(t.Context(), append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath("chromium"))...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(allocator)
	t.Cleanup(cancel)
	ctx, expire := context.WithTimeout(ctx, 3*time.Minute)
	t.Cleanup(expire)
	b := &browser{t: t, ctx: ctx}
	b.do(chromedp.EmulateViewport(width, 800))
	b.listen()
	return b
}

// tab opens another tab in the same browser.
func (b *browser) tab(width int64) *browser {
	b.t.Helper()
	ctx, cancel := chromedp.NewContext(b.ctx)
	b.t.Cleanup(cancel)
	other := &browser{t: b.t, ctx: ctx}
	other.do(chromedp.EmulateViewport(width, 800))
	other.listen()
	return other
}

func (b *browser) open(address, path string) {
	b.t.Helper()
	b.do(chromedp.Navigate(address + path))
}

// listen keeps what the console says of faults: errors, warnings, what the
// content policy refuses, and files that fail to load.
func (b *browser) listen() {
	console := chromedp.Console(b.ctx)
	go func() {
		for m, err := range console {
			if err != nil {
				return
			}
			switch m.Type {
			case chromedp.ConsoleError, chromedp.ConsoleException, chromedp.ConsoleWarning:
				b.mu.Lock()
				b.said = append(b.said, m.Text)
				b.mu.Unlock()
			}
		}
	}()
}

// do takes steps in order. One that was looking for an element while the page
// was exchanged for another looks again.
func (b *browser) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	for _, step := range steps {
		err := chromedp.Do(b.ctx, step)
		for again := 0; err != nil && again < 5 && strings.Contains(err.Error(), "Could not find node"); again++ {
			time.Sleep(100 * time.Millisecond)
			err = chromedp.Do(b.ctx, step)
		}
		require.NoError(b.t, err)
	}
}

func (b *browser) typed(text string) {
	b.t.Helper()
	b.do(chromedp.SendKeys(chromedp.ID("text"), text))
}
func (b *browser) click(css string) { b.t.Helper(); b.do(chromedp.Click(chromedp.CSS(css))) }

// patience is how long a browser on a busy machine may take to get anywhere.
const patience = 30 * time.Second

// until waits for an expression to hold.
func (b *browser) until(expression string) {
	b.t.Helper()
	assert.Eventually(b.t, func() bool {
		ok, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](expression))
		return err == nil && ok
	}, patience, 50*time.Millisecond, expression)
}

func (b *browser) text() string {
	b.t.Helper()
	s, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`document.getElementById('text')?.value ?? ''`))
	require.NoError(b.t, err)
	return s
}

// fits asserts that the page does not scroll sideways.
func (b *browser) fits() {
	b.t.Helper()
	b.until(`document.documentElement.scrollWidth <= document.documentElement.clientWidth`)
}

func (b *browser) quiet() {
	b.t.Helper()
	assert.Empty(b.t, b.complaints(), "the console should have nothing to say")
}

// complaints is what the console has said.
func (b *browser) complaints() []string {
	time.Sleep(100 * time.Millisecond)
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.said)
}

const (
	shown = `document.querySelector('.verdict .word')?.textContent === `
	focus = `document.activeElement.textContent.trim() === `
)

func TestBenchInABrowser(t *testing.T) {
	for name, width := range map[string]int64{"telephone": 360, "bar top": 1280} {
		t.Run(name, func(t *testing.T) {
			b := openBrowser(t, width)
			b.fits()

			// Half a line is a fault beside the box, and names are offered.
			b.typed("Halyard Sour\n2 oz gin\n1/4 oz lem")
			b.until(`document.querySelector('#faults .where a')?.textContent === 'Line 3'`)
			b.fits()
			b.click("#names button")
			b.until(shown + `'Out of balance'`)
			assert.Equal(t, "Halyard Sour\n2 oz gin\n1/4 oz lemon juice", b.text())
			b.until(`document.querySelector('#faults').childElementCount === 0`)
			b.fits()

			// A fix is applied, taken back, and made again.
			b.click(".cards button")
			b.until(shown + `'Balanced'`)
			assert.Equal(t, "Halyard Sour\n2 oz gin\n¾ oz lemon juice", b.text())
			b.until(focus + `'Undo the change'`)
			b.click("#undo button")
			b.until(shown + `'Out of balance'`)
			assert.Equal(t, "Halyard Sour\n2 oz gin\n1/4 oz lemon juice", b.text())
			b.click("#redo button")
			b.until(shown + `'Balanced'`)

			// Something ran out; the cover is poured.
			b.typed("\n1/2 oz orgeat")
			b.until(`!!document.getElementById('out-orgeat')`)
			b.click("#out-orgeat")
			b.until(`document.activeElement.id === 'covers-title'`)
			b.fits()
			b.click("#covers .cards button")
			b.until(`!document.getElementById('covers')`)
			assert.Contains(t, b.text(), "½ oz sesame orgeat")

			// A guest's allergy flags the drink at once.
			b.click(".guest > summary")
			b.click("input[value=sesame]")
			b.until(`!!document.querySelector('.clash')`)
			b.fits()
			b.quiet()
		})
	}
}

func TestADraftOutlivesThePage(t *testing.T) {
	b := openBrowser(t, 360)
	b.typed("2 oz gin\n3/4 oz lemon juice")
	b.until(shown + `'Balanced'`)
	b.do(chromedp.Reload())
	b.until(shown + `'Balanced'`)
	assert.Equal(t, "2 oz gin\n3/4 oz lemon juice", b.text())
	b.quiet()
}

// A server that is gone costs nothing that was typed.
func TestABarThatDoesNotAnswer(t *testing.T) {
	b := openBrowser(t, 360)
	b.do(chromedp.Evaluate[chromedp.Void](`window.fetch = () => Promise.reject(new TypeError("gone"))`))
	b.typed("2 oz gin")
	b.until(`document.getElementById('trouble').textContent.includes('Your draft is safe')`)
	assert.Equal(t, "2 oz gin", b.text())
}

// withoutScripts turns scripts off, from the next page on.
func (b *browser) withoutScripts() {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		return err
	}))
}

// media makes the page believe in a medium, such as print, and a colour scheme.
func (b *browser) media(medium, scheme string) {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium,
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	}))
}

// Without scripts the same form posts itself, and the page comes back whole.
func TestBenchWithoutScripts(t *testing.T) {
	b := openBrowser(t, 360)
	b.withoutScripts()
	b.do(chromedp.Reload())
	b.typed("2 oz gin\n1/4 oz lemon juice")
	b.click("button.main")
	b.until(shown + `'Out of balance'`)
	b.click(".cards button")
	b.until(shown + `'Balanced'`)
	assert.Equal(t, "2 oz gin\n¾ oz lemon juice", b.text())
	b.click("#undo button")
	b.until(shown + `'Out of balance'`)
	assert.Equal(t, "2 oz gin\n1/4 oz lemon juice", b.text())
	b.fits()
	b.quiet()
}
