package webui

import (
	"compress/gzip"
	"crypto/sha512"
	"encoding/base64"
	"io"
	"os"
	"regexp"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

const (
	drinkShown = `[...document.querySelectorAll('.drinks h3')].map((h) => h.textContent).join() === `
	isOut      = `!!document.getElementById('back-falernum')`
)

// What one screen marks, another shows within a second.
func TestTwoScreensOfTheBoard(t *testing.T) {
	address := serve(t, newFakeHouse())
	one := newBrowser(t, 360)
	one.open(address, "/board")
	two := one.tab(1280)
	two.open(address, "/board?avoid=tree+nuts")
	two.until(`!document.getElementById('back-falernum')`)
	time.Sleep(300 * time.Millisecond) // the second screen is being told by now

	one.click("#out-falernum")
	marked := time.Now()
	two.until(isOut)
	assert.Less(t, time.Since(marked), time.Second)
	two.until(drinkShown + `'Mainbrace,Spindrift'`)
	two.until(`document.querySelector('.cover').textContent.includes('clove syrup')`)
	two.until(`!document.body.textContent.includes('almond')`)

	one.until(`document.activeElement.id === 'drinks-title'`)
	one.until(`document.querySelector('.new').textContent === 'New allergen: tree nuts'`)
	one.until(`parseFloat(getComputedStyle(document.querySelector('.cover')).fontSize) >= 22`)
	one.fits()
	two.fits()

	// What stands open stays open when the other screen marks something.
	one.click("#full-mainbrace summary")
	two.click("#out-simple-syrup")
	one.until(`!!document.getElementById('back-simple-syrup') && document.getElementById('full-mainbrace').open`)
	two.click("#back-falernum")
	one.until(`!document.getElementById('back-falernum')`)
	one.until(`document.getElementById('line').hidden`)
	one.quiet()
	two.quiet()
}

// The board is dark whatever the scheme.
func TestTheBoardIsDark(t *testing.T) {
	b := newBrowser(t, 360)
	b.media("", "light")
	b.open(serve(t, newFakeHouse()), "/board")
	b.until(`getComputedStyle(document.body).backgroundColor === 'rgb(13, 12, 11)'`)
}

// A bottle is marked and its cover opened by the keyboard alone.
func TestTheBoardByKeyboard(t *testing.T) {
	b := newBrowser(t, 1280)
	b.open(serve(t, newFakeHouse()), "/board")
	press := func(keys string) { b.do(chromedp.KeyEvent(keys)) }
	for range 60 {
		press(kb.Tab)
		at, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](`document.activeElement.id`))
		require.NoError(t, err)
		if at == "out-falernum" {
			break
		}
	}
	press(kb.Enter)
	b.until(`document.activeElement.id === 'drinks-title'`)
	press(kb.Tab)
	press(kb.Enter)
	b.until(`document.getElementById('full-mainbrace').open`)
	b.quiet()
}

func TestTheBoardWithoutScripts(t *testing.T) {
	b := newBrowser(t, 360)
	b.withoutScripts()
	b.open(serve(t, newFakeHouse()), "/board?avoid=tree+nuts")
	b.click("#out-falernum")
	b.until(drinkShown + `'Mainbrace,Spindrift'`)
	b.until(`location.hash === '#drinks' && location.search === '?avoid=tree+nuts'`)
	b.until(`document.body.textContent.includes('Look again')`)
	b.click("#back-falernum")
	b.until(`document.body.textContent.includes('Nothing is out')`)
	b.quiet()
}

// A board whose server is gone says that it may be old.
func TestABoardThatIsNotTold(t *testing.T) {
	h := newFakeHouse()
	b := newBrowser(t, 360)
	b.open(serve(t, h), "/board")
	b.do(chromedp.Evaluate[chromedp.Void](`window.fetch = () => Promise.reject(new TypeError("gone"))`))
	require.NoError(t, h.Mark(t.Context(), house.By{}, "falernum", true))
	b.until(`!document.getElementById('line').hidden`)
}

// The sizes of a PDF's pages, in points.
var (
	anyBox  = regexp.MustCompile(`/MediaBox \[`)
	boxOfA6 = regexp.MustCompile(`/MediaBox \[0 0 29[78][.\d]* (?:419|420)`)
)

// Print holds the cards and no way about.
func TestPrint(t *testing.T) {
	address := serve(t, newFakeHouse())
	b := newBrowser(t, 800)
	b.media("print", "light")
	const hidden = `[...document.querySelectorAll('nav, header, footer, button, .screen')].every((e) => e.getClientRects().length === 0)`
	for _, path := range []string{"/specs/nutcracker/card", "/specs/print"} {
		b.open(address, path)
		b.until(hidden)
		b.until(`document.querySelector('.sheet').innerText.includes('Contains')`)
	}
	b.open(address, "/specs/nutcracker/card")
	pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	require.NoError(t, err)
	// A PDF is too long to be printed for every fault.
	assert.Len(t, anyBox.FindAllString(string(pdf), -1), 1, "a card is one page")
	assert.Len(t, boxOfA6.FindAllString(string(pdf), -1), 1, "of A6")
	b.quiet()
}

// axe is the accessibility checker, see testdata/README.md.
func axe(t *testing.T) string {
	t.Helper()
	f, err := os.Open("testdata/axe-4.14.1.min.js.gz")
	require.NoError(t, err)
	defer f.Close()
	z, err := gzip.NewReader(f)
	require.NoError(t, err)
	text, err := io.ReadAll(z)
	require.NoError(t, err)
	readme, err := os.ReadFile("testdata/README.md")
	require.NoError(t, err)
	sum := sha512.Sum384(text)
	require.Contains(t, string(readme), base64.StdEncoding.EncodeToString(sum[:]), "the file is the stated one")
	return string(text)
}

const axeRun = `axe.run().then((r) => r.violations.map((v) => v.id + ": " + v.help + ": " + v.nodes.map((n) => n.html.slice(0, 160) + " " + n.any.map((a) => a.message)).join(" | ")))`

// accessible asserts that the page passes the checker and fits its screen, light
// and dark, narrow and wide, with everything opened that can be; closed, it fits
// as well.
func (b *browser) accessible(script, page string) {
	b.t.Helper()
	b.do(chromedp.EmulateViewport(360, 800), chromedp.Evaluate[chromedp.Void](script))
	b.fits()
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelectorAll("details").forEach((d) => { d.open = true; })`))
	for _, width := range []int64{360, 1280} {
		b.do(chromedp.EmulateViewport(width, 800))
		b.fits()
		for _, scheme := range []string{"light", "dark"} {
			b.media("", scheme)
			found, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](axeRun, chromedp.EvalAwaitPromise))
			require.NoError(b.t, err, page)
			assert.Empty(b.t, found, "%s at %d px, %s", page, width, scheme)
		}
	}
}

// Every page passes the checker, fits its screen and keeps the console quiet.
func TestEveryPageIsAccessible(t *testing.T) {
	script := axe(t)
	h := newFakeHouse()
	h.outs = []string{"falernum", "orgeat"}
	address := serve(t, h)
	b := newBrowser(t, 360)
	pages := []string{"/", "/?text=2+oz+gin%0A1/4+oz+lemon+juice%0A1/2+oz+orgeat&missing=orgeat&avoid=tree+nuts", "/?text=2+oz+gni", "/board", "/board?avoid=eggs",
		"/specs", "/specs?q=zzz", "/specs/nutcracker/card", "/specs/print", "/map", "/map?spec=nutcracker&missing=orgeat", "/training", "/training?what=fault", "/training?what=mend",
		"/training?what=order-sweet", "/training?what=guess", "/training?what=cover", "/training?what=cover&steps=12",
		"/tools", "/tools?tool=dilute&amount=700&from=57&to=40", "/tools?tool=syrup&brix=90&yield=5", "/nowhere"}
	check := func(page string) { b.accessible(script, page) }
	for _, page := range pages {
		b.do(chromedp.EmulateViewport(360, 800))
		b.open(address, page)
		check(page)
	}
	b.open(address, "/training?what=fault")
	b.click(`input[value="little"]`)
	b.click(`input[value="sour"]`)
	b.click(".round button.main")
	b.until(`!!document.querySelector('.graded')`)
	check("a graded round")
	for _, said := range b.complaints() {
		// A page that is meant to be refused is told of by the browser.
		assert.Regexp(t, `status of (404|422)`, said, "the console should have nothing to say")
	}
}
