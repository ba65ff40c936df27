package webuitest

import (
	"context"
	"errors"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/behind"
)

// Press sends keys to whatever has the focus.
func (b *Browser) Press(keys ...string) {
	b.T.Helper()
	for _, k := range keys {
		b.Do(chromedp.KeyEvent(k))
	}
}

// TabTo presses Tab until the element with an id has the focus.
func (b *Browser) TabTo(id string) {
	b.T.Helper()
	for range 80 {
		at, err := chromedp.Run(b.Ctx, chromedp.Evaluate[string](`document.activeElement.id`))
		require.NoError(b.T, err)
		if at == id {
			return
		}
		b.Press(kb.Tab)
	}
	require.Fail(b.T, "not reached by Tab", id)
}

// Adds types at the end of the draft.
func (b *Browser) Adds(text string) {
	b.T.Helper()
	b.Do(chromedp.Evaluate[chromedp.Void](`{ const t = document.getElementById('text'); t.focus(); t.setSelectionRange(t.value.length, t.value.length); }`))
	b.Press(text)
}

// Reads waits for the draft to read as wanted.
func (b *Browser) Reads(text string) {
	b.T.Helper()
	if !assert.Eventually(b.T, func() bool { return b.Text() == text }, Patience, often) {
		require.Fail(b.T, "the draft reads otherwise", "%q", b.Text())
	}
}

// Browser is a page of the bench in a real browser.
type Browser struct {
	T   *testing.T
	Ctx context.Context

	mu   sync.Mutex
	said []string // by the console
}

// OpenBrowser opens the bench.
func OpenBrowser(t *testing.T, width int64) *Browser {
	t.Helper()
	b := NewBrowser(t, width)
	b.Open(Serve(t, NewHouse()), "/bench")
	return b
}

// Serve serves the pages of a house until the test ends.
func Serve(t *testing.T, h behind.House) (address string) {
	t.Helper()
	server := httptest.NewServer(PagesOf(t, h))
	t.Cleanup(func() {
		server.CloseClientConnections() // a page that is told of changes holds its line open
		server.Close()
	})
	return server.URL
}

// NewBrowser skips the test where there is no browser, but not in CI.
func NewBrowser(t *testing.T, width int64) *Browser {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes seconds; not with -short")
	}
	if _, err := program(); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal(err)
		}
		t.Skip("the pages are not tried in a browser: ", err)
	}
	process, err := chromium()
	require.NoError(t, err)
	// A context of its own shares no cookie and nothing stored with other tests.
	ctx, cancel := chromedp.NewContext(process, chromedp.WithNewBrowserContext())
	t.Cleanup(cancel)
	ctx, expire := context.WithTimeout(ctx, 10*time.Minute)
	t.Cleanup(expire)
	b := &Browser{T: t, Ctx: ctx}
	b.Do(chromedp.EmulateViewport(width, 800))
	b.listen()
	return b
}

// program finds Chromium on PATH: its shell without a window, which spends half the time on
// a page, or else the whole browser. The pages are the same in both.
func program() (string, error) {
	for _, name := range []string{"chromium-headless-shell", "chromium"} {
		if found, err := exec.LookPath(name); err == nil {
			return found, nil
		}
	}
	return "", errors.New("no Chromium is on PATH; install it (Debian: apt-get install chromium-headless-shell)")
}

// chromium starts a browser, one for all tests of a package; [Main] stops it.
var chromium = sync.OnceValues(func() (context.Context, error) {
	program, err := program()
	if err != nil {
		return nil, err
	}
	allocator, _ := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program))...)
	ctx, _ := chromedp.NewContext(allocator)
	started.Store(&ctx)
	return ctx, chromedp.Do(ctx)
})

// started is the browser that runs, nil if no test has asked for one.
var started atomic.Pointer[context.Context]

// Main runs the tests of a package over pages so made, and stops the browser that they shared.
func Main(m *testing.M, pages Builder) {
	build = pages
	code := m.Run()
	if ctx := started.Load(); ctx != nil {
		if err := chromedp.Cancel(*ctx); err != nil && code == 0 {
			fmt.Fprintln(os.Stderr, "the browser did not stop:", err)
			code = 1
		}
	}
	os.Exit(code)
}

// Tab opens another tab in the same browser.
func (b *Browser) Tab(width int64) *Browser {
	b.T.Helper()
	ctx, cancel := chromedp.NewContext(b.Ctx)
	b.T.Cleanup(cancel)
	other := &Browser{T: b.T, Ctx: ctx}
	other.Do(chromedp.EmulateViewport(width, 800))
	other.listen()
	return other
}

// Open goes to a page of a server.
func (b *Browser) Open(address, path string) {
	b.T.Helper()
	b.Do(chromedp.Navigate(address + path))
}

// listen keeps what the console says of faults: errors, warnings, what the
// content policy refuses, and files that fail to load.
func (b *Browser) listen() {
	console := chromedp.Console(b.Ctx)
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

// Do takes steps in order. One that was looking for an element while the page
// was exchanged for another looks again.
func (b *Browser) Do(steps ...chromedp.Action[chromedp.Void]) {
	b.T.Helper()
	for _, step := range steps {
		err := chromedp.Do(b.Ctx, step)
		for again := 0; err != nil && again < 5 && strings.Contains(err.Error(), "Could not find node"); again++ {
			time.Sleep(100 * time.Millisecond)
			err = chromedp.Do(b.Ctx, step)
		}
		require.NoError(b.T, err)
	}
}

// Typed types into the box of a draft.
func (b *Browser) Typed(text string) {
	b.T.Helper()
	b.Do(chromedp.SendKeys(chromedp.ID("text"), text))
}

// Click clicks on the first element that a selector finds, once it lies still in view: while
// a page scrolls or an answer moves it, a click lands beside it.
func (b *Browser) Click(css string) {
	b.T.Helper()
	b.settle(css)
	b.Do(chromedp.Click(chromedp.CSS(css)))
}

// settle brings an element into view and waits for it to lie where it lay a few frames before.
func (b *Browser) settle(css string) {
	b.T.Helper()
	place := fmt.Sprintf(`(e => {
		e?.scrollIntoView({block: 'nearest', behavior: 'instant'});
		return e ? JSON.stringify(e.getBoundingClientRect()) : '';
	})(document.querySelector(%q))`, css)
	before := ""
	require.Eventually(b.T, func() bool {
		at, err := chromedp.Run(b.Ctx, chromedp.Evaluate[string](place))
		still := err == nil && at != "" && at == before
		before = at
		return still
	}, Patience, often, "%s does not lie still", css)
}

// Patience is how long what is waited for may take on a busy machine before a test
// gives it up, with all that would have followed; no test passes or fails by less.
const Patience = time.Minute

// often is how long a test waits before it looks again: more than a frame, and little, since
// most of the time of a test of pages is such waits.
const often = 20 * time.Millisecond

// Until waits for an expression to hold of a page that is whole: while one is on its way, its
// scripts have not run yet, and what it lacks proves nothing.
func (b *Browser) Until(expression string) {
	b.T.Helper()
	whole := `document.readyState === 'complete' && (` + expression + `)`
	require.Eventually(b.T, func() bool {
		ok, err := chromedp.Run(b.Ctx, chromedp.Evaluate[bool](whole))
		return err == nil && ok
	}, Patience, often, expression)
}

// Text is what stands in the box of a draft.
func (b *Browser) Text() string {
	b.T.Helper()
	s, err := chromedp.Run(b.Ctx, chromedp.Evaluate[string](`document.getElementById('text')?.value ?? ''`))
	require.NoError(b.T, err)
	return s
}

// Fits asserts that the page does not scroll sideways.
func (b *Browser) Fits() {
	b.T.Helper()
	b.Until(`document.documentElement.scrollWidth <= document.documentElement.clientWidth`)
}

// Quiet asserts that the console has said nothing.
func (b *Browser) Quiet() {
	b.T.Helper()
	assert.Empty(b.T, b.Complaints(), "the console should have nothing to say")
}

// OnlyRefusals asserts that the console has told of pages that were meant to be
// refused, and of nothing else.
func (b *Browser) OnlyRefusals() {
	b.T.Helper()
	for _, said := range b.Complaints() {
		assert.Regexp(b.T, `status of (409|410|413|422)`, said, "the console should have nothing to say")
	}
}

// Complaints is what the console has said.
func (b *Browser) Complaints() []string {
	time.Sleep(100 * time.Millisecond)
	b.mu.Lock()
	defer b.mu.Unlock()
	return slices.Clone(b.said)
}

const (
	Shown = `document.querySelector('.verdict .word')?.textContent === `
	Focus = `document.activeElement.textContent.trim() === `
)

// WithoutScripts turns scripts off, from the next page on.
func (b *Browser) WithoutScripts() {
	b.T.Helper()
	b.Do(chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		return err
	}))
}

// Media makes the page believe in a medium, such as print, and a colour scheme.
func (b *Browser) Media(medium, scheme string) {
	b.T.Helper()
	b.Do(chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: medium,
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}})
		return err
	}))
}

// InView says where an element ends on the screen, above its lower edge.
func InView(css string) string {
	return `(() => { const box = document.querySelector('` + css + `')?.getBoundingClientRect(); return !!box && box.top >= 0 && box.bottom <= innerHeight; })()`
}
