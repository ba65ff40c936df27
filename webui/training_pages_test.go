package webui

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/drill"
)

// trainedHouse has two people on record, a test under way and one closed.
func trainedHouse(t *testing.T) (h *fakeHouse, under, closed string) {
	t.Helper()
	h = newFakeHouse()
	l := newLearners(h.Store())
	for i, s := range drill.Skills() {
		playRound(t, l, person{Name: "Ada"}, s, uint64(i), i%3 > 0, time.Now().AddDate(0, 0, -i))
		playRound(t, l, person{Name: "Bo van der Zee"}, s, uint64(i), true, time.Now())
	}
	pages, plan := pagesOf(t, h), plannedTest(t)
	some := send(pages, picked(triangleValues(), plan, map[int]bool{0: true, 3: false}), keepPicks, 0)
	all := send(pages, picked(triangleValues("cover", "clove syrup"), plan, map[int]bool{0: true, 1: true, 2: true, 3: true, 4: false, 5: true}), closeTest, 0)
	require.Equal(t, http.StatusSeeOther, some.Code)
	require.Equal(t, http.StatusSeeOther, all.Code)
	return h, some.Header().Get("Location"), all.Header().Get("Location")
}

// trainingPages are the pages of training in every state they have.
func trainingPages(under, closed string) []string {
	return []string{trainingPath, "/training?what=fault", progressPath, flightPath, flightOf(), flightOf("builds", "5"), flightOf("drink", "", "text", "2 oz gni"), trianglePath, triangleOf(), triangleOf("share", "x"),
		under, closed, starterPath, starterPath + "?family=grog"}
}

// Every link of the pages leads somewhere, and no id is there twice.
func TestTrainingPagesHangTogether(t *testing.T) {
	h, under, closed := trainedHouse(t)
	pages := pagesOf(t, h)
	bodies := []string{answered(t, pages, "fault", "way", "much", "of", "sour").Body.String(), answered(t, pages, "mend", "pour-1", "1 oz").Body.String()}
	for _, path := range trainingPages(under, closed) {
		bodies = append(bodies, get(pages, path, "").Body.String())
	}
	linked := map[string]bool{}
	for _, body := range bodies {
		seen := map[string]bool{}
		for _, m := range ids.FindAllStringSubmatch(body, -1) {
			assert.False(t, seen[m[1]], "id %q twice", m[1])
			seen[m[1]] = true
		}
		for _, m := range links.FindAllStringSubmatch(body, -1) {
			linked[html.UnescapeString(m[1])] = true
		}
	}
	for link := range linked {
		if id, ok := strings.CutPrefix(link, "#"); ok {
			assert.Equal(t, "main", id)
			continue
		}
		assert.Equal(t, http.StatusOK, get(pages, link, "").Code, link)
	}
	for _, path := range []string{trainingPath, progressPath, flightPath, trianglePath, starterPath} {
		assert.True(t, linked[path], path)
	}
}

func TestTrainingPagesAreLight(t *testing.T) {
	h, under, closed := trainedHouse(t)
	pages := pagesOf(t, h)
	for _, path := range trainingPages(under, closed) {
		w := get(pages, path, "")
		weight := w.Body.Len()
		for _, m := range loads.FindAllStringSubmatch(w.Body.String(), -1) {
			weight += get(pages, m[1], "").Body.Len()
		}
		t.Logf("%s: %d bytes", path, weight)
		assert.Less(t, weight, maxLoad, path)
	}
}

// The pages of training pass the checker, fit their screens and keep the console
// quiet.
func TestTrainingPagesAreAccessible(t *testing.T) {
	script := axe(t)
	h, under, closed := trainedHouse(t)
	address := serve(t, h)
	b := newBrowser(t, 360)
	b.open(address, progressPath) // as somebody with a name
	b.do(chromedp.SendKeys(chromedp.ID("name"), "Ada"))
	b.click(".named button")
	b.until(`document.querySelector('.who strong')?.textContent === 'Ada'`)
	for _, path := range []string{progressPath, flightOf(), flightOf("drink", "", "text", "2 oz gni"), triangleOf(), under, closed, starterPath} {
		b.do(chromedp.EmulateViewport(360, 800))
		b.open(address, path)
		b.accessible(script, path)
	}
	for _, said := range b.complaints() {
		assert.Contains(t, said, "status of 422", "a page that is meant to be refused, and nothing else")
	}
}

// A name is given, a triangle test planned, recorded and closed by the keyboard,
// without scripts.
func TestATriangleTestByKeyboard(t *testing.T) {
	b := newBrowser(t, 360)
	b.withoutScripts()
	b.open(serve(t, newFakeHouse()), triangleOf("drink", "Halyard Sour", "cover", "clove syrup"))
	b.until(`!!document.querySelector('.picks')`)
	odd := plannedTest(t).Servings[0].Odd
	b.do(chromedp.Focus(chromedp.CSS(`input[name="pick-0"][value=""]`)))
	for range 3 - odd {
		b.do(chromedp.KeyEvent(kb.ArrowLeft))
	}
	b.do(chromedp.KeyEvent(kb.Enter)) // keeps, since that is the first button of the form
	b.until(`document.querySelector('.picks p').textContent.startsWith('1 of 6 tasters have picked')`)
	b.until(`new URL(location).searchParams.get('test').startsWith('triangle-')`)
	b.fits()
	b.do(chromedp.Focus(chromedp.CSS(`button[value="close"]`)), chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector('.graded .word')?.textContent === 'No difference shown'`)
	b.until(`document.querySelector('.sums').textContent.startsWith('1 of 1 found the odd one')`)
	b.fits()
	b.quiet()
}

// boxOf matches a page of a PDF by its size in points.
func boxOf(width, height string) *regexp.Regexp {
	return regexp.MustCompile(`/MediaBox \[0 0 ` + width + `[.\d]* ` + height)
}

var (
	boxOfA4 = boxOf("59[45]", "84[12]")
	boxOfA5 = boxOf("(?:419|420)", "59[45]")
)

// On paper there is no way about; the key stands apart from what the tasters get,
// and a card is one page of A5.
func TestTrainingOnPaper(t *testing.T) {
	h, under, closed := trainedHouse(t)
	address := serve(t, h)
	b := newBrowser(t, 800)
	b.media("print", "light")
	const hidden = `[...document.querySelectorAll('nav, header, footer, button, form, .screen')].every((e) => e.getClientRects().length === 0)`
	for path, c := range map[string]struct {
		box   *regexp.Regexp
		pages int
	}{flightOf(): {boxOfA4, 2}, under: {boxOfA4, 3}, closed: {boxOfA4, 4}, starterPath: {boxOfA5, 1}} {
		b.open(address, path)
		b.until(hidden)
		pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
		require.NoError(t, err)
		assert.Len(t, anyBox.FindAllString(string(pdf), -1), c.pages, path)
		assert.Len(t, c.box.FindAllString(string(pdf), -1), c.pages, path)
	}
	b.open(address, flightOf())
	b.until(`!document.querySelector('.for-tasters').innerText.includes('steps')`)
	b.until(`getComputedStyle(document.querySelector('.for-tasters')).breakBefore === 'page'`)
	b.open(address, under)
	b.until(`!/[0-9]: [AB]/.test(document.querySelector('.for-tasters').innerText) && /[0-9]: [AB]/.test(document.querySelector('.for-pourer .paper').innerText)`)
	b.quiet()
}

// A name is typed, a round played under it, and the page of progress shows both.
func TestProgressInABrowser(t *testing.T) {
	b := newBrowser(t, 360)
	address := serve(t, newFakeHouse())
	b.open(address, trainingPath)
	b.do(chromedp.SendKeys(chromedp.ID("name"), "Zoë"), chromedp.KeyEvent(kb.Enter))
	b.until(`document.querySelector('.who strong')?.textContent === 'Zoë' && location.pathname === '/training'`)
	b.open(address, "/training?"+url.Values{"what": {"family"}}.Encode())
	b.click(`input[name="option"][value="0"]`)
	b.click(".round button.main")
	b.until(`document.querySelector('.graded .word')?.textContent === 'Right'`)
	b.click(".kept a")
	b.until(`document.getElementById('own').textContent === 'Zoë'`)
	b.until(`[...document.querySelectorAll('table')].map((t) => t.rows[1].cells[0].textContent).join() === 'Read the family,Zoë'`)
	b.fits()
	b.quiet()
}
