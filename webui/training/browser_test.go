package training_test

import (
	"html"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/flavor/drill"
	"counterpour/webui/part"
	"counterpour/webui/training"
	"counterpour/webui/webuitest"
)

// trainedHouse has two people on record, a test under way and one closed.
func trainedHouse(t *testing.T) (h *webuitest.House, under, closed string) {
	t.Helper()
	h = webuitest.NewHouse()
	l := coaching.NewLearners(h.Store())
	for i, s := range drill.Skills() {
		playRound(t, l, coaching.Trainee{Name: "Ada"}, s, uint64(i), i%3 > 0, time.Now().AddDate(0, 0, -i))
		playRound(t, l, coaching.Trainee{Name: "Bo van der Zee"}, s, uint64(i), true, time.Now())
	}
	pages, plan := webuitest.PagesOf(t, h), plannedTest(t)
	some := send(pages, picked(triangleValues(), plan, map[int]bool{0: true, 3: false}), training.KeepPicks, 0)
	all := send(pages, picked(triangleValues("cover", "clove syrup"), plan, map[int]bool{0: true, 1: true, 2: true, 3: true, 4: false, 5: true}), training.CloseTest, 0)
	require.Equal(t, http.StatusSeeOther, some.Code)
	require.Equal(t, http.StatusSeeOther, all.Code)
	return h, some.Header().Get("Location"), all.Header().Get("Location")
}

// trainingPages are the pages of training in every state they have.
func trainingPages(under, closed string) []string {
	return []string{training.TrainingPath, "/training?what=fault", training.ProgressPath, training.FlightPath, flightOf(), flightOf("builds", "5"), flightOf("drink", "", "text", "2 oz gnx"), training.TrianglePath, triangleOf(), triangleOf("share", "x"),
		under, closed, training.StarterPath, training.StarterPath + "?family=grog"}
}

// Every link of the pages leads somewhere, and no id is there twice.
func TestTrainingPagesHangTogether(t *testing.T) {
	h, under, closed := trainedHouse(t)
	pages := webuitest.PagesOf(t, h)
	bodies := []string{answered(t, pages, "fault", "say", "sour-much").Body.String(), answered(t, pages, "mend", "pour-1", "1 oz").Body.String()}
	for _, path := range trainingPages(under, closed) {
		bodies = append(bodies, webuitest.Get(pages, path, "").Body.String())
	}
	linked := map[string]bool{}
	for _, body := range bodies {
		seen := map[string]bool{}
		for _, m := range webuitest.Ids.FindAllStringSubmatch(body, -1) {
			assert.False(t, seen[m[1]], "id %q twice", m[1])
			seen[m[1]] = true
		}
		for _, m := range webuitest.Links.FindAllStringSubmatch(body, -1) {
			linked[html.UnescapeString(m[1])] = true
		}
	}
	for link := range linked {
		if id, ok := strings.CutPrefix(link, "#"); ok {
			assert.Equal(t, "main", id)
			continue
		}
		if link == part.UndoPath {
			continue // which takes only forms
		}
		assert.Equal(t, http.StatusOK, webuitest.Get(pages, link, "").Code, link)
	}
	for _, path := range []string{training.TrainingPath, training.ProgressPath, training.FlightPath, training.TrianglePath, training.StarterPath} {
		assert.True(t, linked[path], path)
		assert.Contains(t, webuitest.Get(pages, path, "").Body.String(), `<a href="/training" aria-current="page">Training</a>`, "the bar says where %s stands", path)
	}
}

func TestTrainingPagesAreLight(t *testing.T) {
	h, under, closed := trainedHouse(t)
	pages := webuitest.PagesOf(t, h)
	for _, path := range trainingPages(under, closed) {
		assert.Less(t, webuitest.FirstLoad(t, pages, path), webuitest.MaxLoad, path)
	}
}

// The pages of training pass the checker, fit their screens and keep the console
// quiet.
func TestTrainingPagesAreAccessible(t *testing.T) {
	script := webuitest.Axe(t)
	h, under, closed := trainedHouse(t)
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 360)
	b.Open(address, training.ProgressPath) // as somebody with a name
	b.Do(chromedp.SendKeys(chromedp.ID("name"), "Ada"))
	b.Click(".named button")
	b.Until(`document.querySelector('.who strong')?.textContent === 'Ada'`)
	for _, path := range []string{training.ProgressPath, flightOf(), flightOf("drink", "", "text", "2 oz gnx"), triangleOf(), under, closed, training.StarterPath} {
		b.Do(chromedp.EmulateViewport(360, 800))
		b.Open(address, path)
		b.Accessible(script, path)
	}
	for _, said := range b.Complaints() {
		assert.Contains(t, said, "status of 422", "a page that is meant to be refused, and nothing else")
	}
}

// A name is given, a triangle test planned, recorded and closed by the keyboard,
// without scripts.
func TestATriangleTestByKeyboard(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), triangleOf("drink", "Halyard Sour", "cover", "clove syrup"))
	b.Until(`!!document.querySelector('.picks')`)
	odd := plannedTest(t).Servings[0].Odd
	b.Do(chromedp.Focus(chromedp.CSS(`input[name="pick-0"][value=""]`)))
	for range 3 - odd {
		b.Do(chromedp.KeyEvent(kb.ArrowLeft))
	}
	b.Do(chromedp.KeyEvent(kb.Enter)) // keeps, since that is the first button of the form
	b.Until(`document.querySelector('.picks p').textContent.startsWith('1 of 6 tasters have picked')`)
	b.Until(`new URL(location).searchParams.get('test').startsWith('triangle-')`)
	b.Fits()
	b.Do(chromedp.Focus(chromedp.CSS(`button[value="close"]`)), chromedp.KeyEvent(kb.Enter))
	b.Until(`document.querySelector('.graded .word')?.textContent === 'No difference shown'`)
	b.Until(`document.querySelector('.sums').textContent.startsWith('1 of 1 found the odd one')`)
	b.Fits()
	b.Quiet()
}

// On paper there is no way about; the key stands apart from what the tasters get,
// and a card is one page of A5.
func TestTrainingOnPaper(t *testing.T) {
	h, under, closed := trainedHouse(t)
	address := webuitest.Serve(t, h)
	b := webuitest.NewBrowser(t, 800)
	b.Media("print", "light")
	const hidden = `[...document.querySelectorAll('nav, header, footer, button, form, .screen')].every((e) => e.getClientRects().length === 0)`
	for path, c := range map[string]struct {
		size   string
		sheets int
	}{flightOf(): {"A4", 2}, under: {"A4", 3}, closed: {"A4", 4}, training.StarterPath: {"A5", 1}} {
		b.Open(address, path)
		b.Until(hidden)
		sheets := b.Printed()
		assert.Len(t, sheets, c.sheets, path)
		for _, s := range sheets {
			assert.Equal(t, c.size, s.Size, path)
			assert.NotEmpty(t, s.Text, path)
		}
	}
	b.Open(address, flightOf())
	b.Until(`!document.querySelector('.for-tasters').innerText.includes('steps')`)
	b.Until(`getComputedStyle(document.querySelector('.for-tasters')).breakBefore === 'page'`)
	b.Open(address, under)
	b.Until(`!/[0-9]: [AB]/.test(document.querySelector('.for-tasters').innerText) && /[0-9]: [AB]/.test(document.querySelector('.for-pourer .paper').innerText)`)
	b.Quiet()
}

// A name is typed, a round played under it, and the page of progress shows both.
func TestProgressInABrowser(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	address := webuitest.Serve(t, webuitest.NewHouse())
	b.Open(address, training.TrainingPath)
	b.Do(chromedp.SendKeys(chromedp.ID("name"), "Zoë"), chromedp.KeyEvent(kb.Enter))
	b.Until(`document.querySelector('.who strong')?.textContent === 'Zoë' && location.pathname === '/training'`)
	b.Open(address, "/training?"+url.Values{"what": {"family"}}.Encode())
	b.Click(`input[name="option"][value="0"]`)
	b.Click(".round button.main")
	b.Until(`document.querySelector('.graded .word')?.textContent === 'Right'`)
	b.Click(".kept a")
	b.Until(`document.getElementById('own').textContent === 'Zoë'`)
	b.Until(`[...document.querySelectorAll('table')].map((t) => t.rows[1].cells[0].textContent).join() === 'Read the family,Zoë'`)
	b.Fits()
	b.Quiet()
}

// Five rounds on a phone: a reload keeps each question, no two in a row are of one
// kind, and the grade with the score of the sitting is in view after one tap.
func TestFiveRoundsInABrowser(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.Do(chromedp.EmulateViewport(360, 740))
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/training")
	b.Click(".sift button.main")
	last := ""
	for n := 1; n <= 5; n++ {
		b.Until(`!!document.getElementById('question')`)
		asked, err := chromedp.Run(b.Ctx, chromedp.Evaluate[string](`document.getElementById('question').textContent`))
		require.NoError(t, err)
		assert.NotEqual(t, last, asked)
		last = asked
		if n == 1 {
			b.Do(chromedp.Reload())
			b.Until(`document.getElementById('question')?.textContent === ` + strconv.Quote(asked))
		}
		for _, name := range []string{"option", "say"} {
			b.Do(chromedp.Evaluate[chromedp.Void](`document.querySelector('input[name="` + name + `"]')?.click()`))
		}
		b.Click(".round button.main")
		b.Until(`document.querySelector('.sitting')?.textContent.includes('of ` + strconv.Itoa(n) + ` round')`)
		b.Until(`(() => { const box = document.getElementById('graded').getBoundingClientRect(); return box.top >= 0 && box.bottom <= innerHeight; })()`)
		b.Until(`!!document.querySelector('.set-done') === ` + strconv.FormatBool(n == 5))
		b.Fits()
		b.Click(".graded button.main")
	}
	b.Quiet()
}
