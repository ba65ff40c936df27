package training_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/webuitest"
)

var sealed = regexp.MustCompile(`name="round" value="([^"]+)"`)

// roundOf is the word of the round on a page.
func roundOf(t *testing.T, page string) string {
	t.Helper()
	m := sealed.FindStringSubmatch(page)
	require.NotNil(t, m, "there is a round on the page")
	return m[1]
}

// answered has a round of a drill handed out and answers it.
func answered(t *testing.T, h http.Handler, what string, pairs ...string) *httptest.ResponseRecorder {
	t.Helper()
	form := webuitest.AnswerForm(what, pairs...)
	at, err := url.Parse(webuitest.Get(h, "/training?"+url.Values{"what": {what}, "steps": form["steps"]}.Encode(), "").Header().Get("Location"))
	require.NoError(t, err)
	form.Set("round", at.Query().Get("round"))
	return webuitest.Post(h, "/training", form, false)
}

func TestTrainingScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		path   string
		status int
		want   []string
		not    []string
	}{
		{name: "before the first round", path: "/training", status: 200,
			want: []string{"No round yet", "Order by sweetness", "only until the program\nstops", webuitest.FootLine, ">Start<", "Who are you?"}, not: []string{"Your answer", "How it goes"}},
		{name: "what I need most", path: "/training?what=", status: 200,
			want: []string{"What of the family & its <drink>?", `type="radio" name="option" value="1"> Flip`, "This round is 6.0 steps"}},
		{name: "a kind and a size", path: "/training?what=fault&steps=3", status: 200,
			want: []string{"¼ oz lemon juice", `<option value="fault" selected>`, `name="say" value="sour-much"> <span>sharp <span class="small">too much acid`, "No allergen is recorded"}},
		{name: "mend it", path: "/training?what=mend", status: 200, want: []string{`<label for="pour-1">lemon juice</label>`, `value="¼ oz"`}},
		{name: "order", path: "/training?what=order-sweet", status: 200, want: []string{"<h3>Drink 3</h3>", `name="place-2"`}},
		{name: "cover", path: "/training?what=cover", status: 200, want: []string{"½\u00a0oz orgeat", `name="lost" value="smoke"`}},
		{name: "guess", path: "/training?what=guess", status: 200, want: []string{"Strength, % vol", "Volume, mL"}},
		{name: "no round to be had", path: "/training?what=cover&steps=12", status: 422, want: []string{"Nothing in this stock covers", `<option value="cover" selected>`}},
		{name: "a drill that is not known", path: "/training?what=darts", status: 400},
		{name: "a size that is not offered", path: "/training?what=fault&steps=7", status: 400},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Holds(t, webuitest.Follow(webuitest.NewPages(t), c.path), c.status, c.want, c.not)
		})
	}
}

func TestAnswers(t *testing.T) {
	for _, c := range []struct {
		name   string
		what   string
		answer []string
		status int
		want   []string
		not    []string
	}{
		{name: "right", what: "fault", answer: []string{"say", "sour-little"}, status: 200,
			want: []string{">Right<", "100 of 100 points", "Too little acid.", "It carries 7\u00a0mL of lemon juice. That is too little.", "Next round", `<svg class="bars"`,
				"Hollow is the drink poured properly", "How it goes", "1 round played, 1 right.", "The next round like this is harder: about 5.2 noticeable steps, after 6.0.",
				"The slip: ¼\u00a0oz lemon juice in place of ¾\u00a0oz.", "<strong>¾\u00a0oz lemon juice</strong>"}, not: []string{"Not too much acid", `<svg class="strips"`}},
		{name: "wrong", what: "fault", answer: []string{"say", "sour-much"}, status: 200, want: []string{"Not this time", "1 round played, 0 right.", "is easier: about 8.5 noticeable steps, after 6.0.", "Not too much acid: the other way round."}},
		{name: "two fields of a page of before", what: "fault", answer: []string{"way", "little", "of", "sour"}, status: 200, want: []string{">Right<"}},
		{name: "no answer", what: "fault", answer: []string{"say", "darts"}, status: 422,
			want: []string{"Say what a guest would call it", "aria-describedby"}, not: []string{"How it goes"}},
		{name: "mended", what: "mend", answer: []string{"pour-0", "2 oz", "pour-1", "3/4", "pour-2", "½ oz"}, status: 200, want: []string{">Right<", "the drink after your move"}},
		{name: "mended in ml", what: "mend", answer: []string{"pour-0", "2 oz", "pour-1", "22 ml", "pour-2", "½ oz"}, status: 200, want: []string{">Right<"}},
		{name: "nothing moved", what: "mend", answer: []string{"pour-0", "2 oz", "pour-1", "1/4 oz", "pour-2", "½ oz"}, status: 422, want: []string{"Nothing is changed yet"}},
		{name: "two moved", what: "mend", answer: []string{"pour-0", "1 oz", "pour-1", "1 oz", "pour-2", "½ oz"}, status: 422, want: []string{"Two amounts are changed", `value="1 oz"`}},
		{name: "no amount", what: "mend", answer: []string{"pour-0", "2 oz", "pour-1", "a <lot>", "pour-2", "½ oz"}, status: 422, want: []string{"is no amount of lemon juice", `value="a &lt;lot&gt;"`}},
		{name: "ordered", what: "order-sweet", answer: []string{"place-0", "1", "place-1", "0", "place-2", "2"}, status: 200, want: []string{">Right<", "the least of the three"}, not: []string{`<svg class="strips"`}},
		{name: "a place not given", what: "order-sweet", answer: []string{"place-0", "1"}, status: 422, want: []string{"Give each drink its place"}},
		{name: "a place shared", what: "order-sweet", answer: []string{"place-0", "1", "place-1", "1", "place-2", "2"}, status: 422, want: []string{"Two drinks share a place"}},
		{name: "guessed", what: "guess", answer: []string{"abv", "14,5", "volume", "160"}, status: 200, want: []string{">Right<", `<svg class="strips"`}, not: []string{`<svg class="bars"`}},
		{name: "no guess", what: "guess", answer: []string{"abv", "strong"}, status: 422, want: []string{"Write the strength as a number, in % vol", `value="strong"`}},
		{name: "beyond all strength", what: "guess", answer: []string{"abv", "400", "volume", "1"}, status: 422, want: []string{"That is no strength"}},
		{name: "a cover", what: "cover", answer: []string{"option", "1", "lost", "nut"}, status: 200, want: []string{"Not this time", "its best cover"}},
		{name: "a cover not chosen", what: "cover", answer: []string{"lost", "nut"}, status: 422, want: []string{"Choose one of the answers", `value="nut" checked`}},
		{name: "an aroma that is not known", what: "cover", answer: []string{"option", "1", "lost", "moon"}, status: 400},
		{name: "a family", what: "family", answer: []string{"option", "0"}, status: 200, want: []string{">Right<", "per cent of the whole"}},
		{name: "a trainer that breaks", what: "fault", answer: []string{"steps", "1.5", "say", "sour-much"}, status: 500, want: []string{"Something broke"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Holds(t, answered(t, webuitest.NewPages(t), c.what, c.answer...), c.status, c.want, c.not)
		})
	}
}

// What a page says of a round gives neither its axis nor its seed away, and a
// round that another house handed out cannot be answered.
func TestRoundsAreSealed(t *testing.T) {
	h := webuitest.NewPages(t)
	page := webuitest.Follow(h, "/training?what=fault").Body.String()
	one, two := roundOf(t, page), roundOf(t, webuitest.Follow(h, "/training?what=fault").Body.String())
	assert.NotEqual(t, one, two, "the same round is never the same word")
	for _, leak := range []string{`name="axis"`, `name="seed"`, `name="kind"`} {
		assert.NotContains(t, page, leak)
	}
	assert.Len(t, one, len(roundOf(t, webuitest.Follow(h, "/training?what=order-strong").Body.String())), "its length says nothing")

	form := webuitest.AnswerForm("fault", "say", "sour-little", "round", one)
	webuitest.Holds(t, webuitest.Post(h, "/training", form, false), 200, []string{">Right<"}, nil)
	started := webuitest.NewPages(t)
	webuitest.Holds(t, webuitest.Post(started, "/training", form, false), http.StatusGone, []string{"This round cannot be graded any more: its address is not whole, or this house did not hand it out", "Start a new one", ">Start<"}, []string{">Right<"})
	for _, word := range []string{"", "x", "%", one[:len(one)-2], strings.ToUpper(one), strings.Repeat("A", len(one))} {
		form.Set("round", word)
		webuitest.Holds(t, webuitest.Post(h, "/training", form, false), http.StatusGone, []string{"Start a new one"}, []string{">Right<"})
	}
}

// A learner is known again by a cookie that says nothing of them, and one that
// was made up is not taken.
func TestLearnersAreKnownAgain(t *testing.T) {
	h := webuitest.NewPages(t)
	send := func(cookie string) *http.Response {
		form := webuitest.AnswerForm("family", "option", "0", "round", roundOf(t, webuitest.Follow(h, "/training?what=family").Body.String()))
		r := httptest.NewRequest(http.MethodPost, "/training", strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		if cookie != "" {
			r.Header.Set("Cookie", "learner="+cookie)
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		require.Equal(t, http.StatusOK, w.Code)
		return w.Result()
	}
	given := send("").Cookies()
	require.Len(t, given, 1)
	assert.Regexp(t, `^[0-9a-f]{32}$`, given[0].Value)
	assert.True(t, given[0].HttpOnly)
	assert.Equal(t, http.SameSiteLaxMode, given[0].SameSite)
	assert.Zero(t, given[0].MaxAge, "it goes with the browser")
	assert.Empty(t, send(given[0].Value).Cookies())
	assert.Len(t, send("me").Cookies(), 1)
	assert.Empty(t, webuitest.Follow(h, "/training?what=").Result().Cookies(), "who only looks gets none")
}

// A round is played to its end and the next one begun, by keyboard, without
// scripts.
func TestTrainingInABrowser(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	b.WithoutScripts()
	b.Open(webuitest.Serve(t, webuitest.NewHouse()), "/training")
	b.Do(chromedp.SetValue(chromedp.ID("what"), "fault"))
	b.Click(".sift button")
	b.Until(`!!document.querySelector('.round')`)
	b.Fits()
	b.Click(`.round button.main`)
	b.Until(`document.getElementById('amiss')?.textContent.startsWith('Say what a guest')`)
	b.Do(chromedp.Focus(chromedp.CSS(`input[name="say"][value="sour-much"]`)))
	for _, key := range []string{" ", kb.ArrowDown, kb.Enter} {
		b.Do(chromedp.KeyEvent(key))
	}
	b.Until(`document.querySelector('.graded .word')?.textContent === 'Right'`)
	b.Fits()
	b.Click(".graded button.main")
	b.Until(`!!document.querySelector('.round') && document.getElementById('what').value === 'fault'`)
	b.Until(`document.querySelector('.kept')?.textContent.includes('1 round played, 1 right')`)
	for _, said := range b.Complaints() {
		assert.Contains(t, said, "status of 422", "half an answer, and nothing else")
	}
}

// A reload asks the same question, the sitting is counted, and what is needed most is
// never of one kind twice in a row.
func TestASitting(t *testing.T) {
	h := webuitest.NewPages(t)
	w := webuitest.Get(h, "/training?what=", "")
	require.Equal(t, http.StatusSeeOther, w.Code)
	at := w.Header().Get("Location")
	first := webuitest.Get(h, at, "").Body.String()
	assert.Equal(t, first, webuitest.Get(h, at, "").Body.String(), "a reload keeps the question")
	assert.NotContains(t, first, "This sitting")

	form := webuitest.AnswerForm("", "option", "0", "round", roundOf(t, first))
	w = webuitest.Post(h, "/training", form, false)
	webuitest.Says(t, w, []string{"This sitting: 1 of 1 round right.", `name="sitting" value="1-1.1.family.`}, nil)
	second := webuitest.Follow(h, "/training?what=&sitting=1-1.1.family").Body.String()
	assert.Contains(t, second, "What of the fault", "another kind")
	form = webuitest.AnswerForm("", "say", "sour-much", "round", roundOf(t, second), "sitting", "1-1.1.family")
	webuitest.Says(t, webuitest.Post(h, "/training", form, false), []string{"This sitting: 1 of 2 rounds right.", `value="1-1.2.fault.`}, nil)
	for _, odd := range []string{"1.1.family.+", "1.1.family.zzzz" + strings.Repeat(".1", 24), "2.1.family", "1.1", "x.1.family", "1.1.darts", "1.100000.family"} {
		webuitest.Says(t, webuitest.Follow(h, "/training?what=&sitting="+odd), []string{"What of the family"}, []string{"This sitting"})
	}
	assert.Equal(t, http.StatusGone, webuitest.Get(h, "/training?what=&round=old", "").Code)
}

// What a guest must avoid goes with the sitting: into the address of the question, its form
// and the next one; a word that is no allergen is refused.
func TestAvoidingGoesWithTheSitting(t *testing.T) {
	h := webuitest.NewPages(t)
	w := webuitest.Get(h, "/training?what=fault&avoid=eggs&avoid=milk", "")
	require.Equal(t, http.StatusSeeOther, w.Code)
	at := w.Header().Get("Location")
	assert.Contains(t, at, "avoid=eggs&avoid=milk")
	kept := []string{`<input type="hidden" name="avoid" value="eggs">`, `value="milk" checked`, "Without eggs, milk"}
	page := webuitest.Get(h, at, "")
	webuitest.Says(t, page, kept, nil)
	form := webuitest.AnswerForm("fault", "say", "sour-little", "round", roundOf(t, page.Body.String()))
	form["avoid"] = []string{"eggs", "milk"}
	webuitest.Says(t, webuitest.Post(h, "/training", form, false), kept, nil)
	assert.Equal(t, http.StatusBadRequest, webuitest.Get(h, "/training?what=fault&avoid=egs", "").Code)
}

// Five rounds are a set: each says its number, and the fifth says how it went.
func TestASetOfFiveRoundsEnds(t *testing.T) {
	h := webuitest.NewPages(t)
	fifth := webuitest.Follow(h, "/training?what=family&sitting=3-3.4.fault").Body.String()
	assert.Contains(t, fifth, "Round 5 of 5")
	form := webuitest.AnswerForm("family", "option", "0", "round", roundOf(t, fifth), "sitting", "3-3.4.fault")
	w := webuitest.Post(h, "/training", form, false)
	webuitest.Holds(t, w, 200, []string{"This set is done:", "of 5 right.", "Another set of 5"}, []string{"Next round"})
	webuitest.Tells(t, webuitest.Follow(h, "/training?what=family&sitting=4-4.5.family"), 200, "Round 1 of 5")
}
