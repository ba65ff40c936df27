package webui

import (
	"html"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// answer is the form of a round with an answer in it.
func answerForm(kind string, pairs ...string) url.Values {
	v := url.Values{"what": {""}, "steps": {"6"}, "kind": {kind}, "axis": {"sour"}, "size": {"6"}, "seed": {"2r"}}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return v
}

func TestTrainingScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		path   string
		form   url.Values
		status int
		want   []string
		not    []string
	}{
		{name: "before the first round", path: "/training", status: 200,
			want: []string{"No round yet", "Order by sweetness", "only until the program stops", footLine, ">Start<"}, not: []string{"Your answer", "How it goes"}},
		{name: "what I need most", path: "/training?what=", status: 200,
			want: []string{"What of the family & its <drink>?", `type="radio" name="option" value="1"> Flip`, `name="seed" value="2r"`, "This round is 6.0 steps"}},
		{name: "a kind and a size", path: "/training?what=fault&steps=3", status: 200,
			want: []string{"¼ oz lemon juice", `name="size" value="3"`, `<option value="fault" selected>`, `name="of" value="bitter"`, "too little"}},
		{name: "mend it", path: "/training?what=mend", status: 200, want: []string{`<label for="pour-1">lemon juice</label>`, `value="¼ oz"`}},
		{name: "order", path: "/training?what=order-sweet", status: 200, want: []string{"<h3>Drink 3</h3>", `name="axis" value="sweet"`, `name="place-2"`}},
		{name: "cover", path: "/training?what=cover", status: 200, want: []string{"½ oz orgeat", `name="lost" value="smoke"`}},
		{name: "guess", path: "/training?what=guess", status: 200, want: []string{"Strength, % vol", "Volume, ml"}},
		{name: "no round to be had", path: "/training?what=cover&steps=12", status: 422, want: []string{"Nothing in this stock covers", `<option value="cover" selected>`}},
		{name: "a drill that is not known", path: "/training?what=darts", status: 400},
		{name: "a size that is not offered", path: "/training?what=fault&steps=7", status: 400},

		{name: "right", path: "/training", form: answerForm("fault", "way", "little", "of", "sour"), status: 200,
			want: []string{">Right<", "100 of 100 points", "Too little acid.", "It carries 7 ml of lemon juice. That is too little.", "Next round", `<svg class="bars"`, `<svg class="strips"`,
				"Hollow is the classic", "How it goes", "1 of 1", "4.5 steps", "not known yet", "Name the fault: strength"}},
		{name: "wrong", path: "/training", form: answerForm("fault", "way", "much", "of", "sour"), status: 200, want: []string{"Not this time", "0 of 1"}},
		{name: "half an answer", path: "/training", form: answerForm("fault", "way", "much"), status: 422,
			want: []string{"Say whether there is too much or too little", `value="much" checked`, "aria-describedby"}, not: []string{"How it goes"}},
		{name: "mended", path: "/training", form: answerForm("mend", "pour-0", "2 oz", "pour-1", "3/4", "pour-2", "½ oz"), status: 200, want: []string{">Right<", "the drink after your move"}},
		{name: "mended in ml", path: "/training", form: answerForm("mend", "pour-0", "2 oz", "pour-1", "22 ml", "pour-2", "½ oz"), status: 200, want: []string{">Right<"}},
		{name: "nothing moved", path: "/training", form: answerForm("mend", "pour-0", "2 oz", "pour-1", "1/4 oz", "pour-2", "½ oz"), status: 422, want: []string{"Nothing is moved yet"}},
		{name: "two moved", path: "/training", form: answerForm("mend", "pour-0", "1 oz", "pour-1", "1 oz", "pour-2", "½ oz"), status: 422, want: []string{"Two pours are moved", `value="1 oz"`}},
		{name: "no amount", path: "/training", form: answerForm("mend", "pour-0", "2 oz", "pour-1", "a <lot>", "pour-2", "½ oz"), status: 422, want: []string{"is no amount of lemon juice", `value="a &lt;lot&gt;"`}},
		{name: "ordered", path: "/training", form: answerForm("order", "place-0", "1", "place-1", "0", "place-2", "2"), status: 200, want: []string{">Right<", "the least of the three"}, not: []string{`<svg class="strips"`}},
		{name: "a place not given", path: "/training", form: answerForm("order", "place-0", "1"), status: 422, want: []string{"Give each drink its place"}},
		{name: "a place shared", path: "/training", form: answerForm("order", "place-0", "1", "place-1", "1", "place-2", "2"), status: 422, want: []string{"Two drinks share a place"}},
		{name: "guessed", path: "/training", form: answerForm("guess", "abv", "14,5", "volume", "160"), status: 200, want: []string{">Right<", `<svg class="strips"`}, not: []string{`<svg class="bars"`}},
		{name: "no guess", path: "/training", form: answerForm("guess", "abv", "strong"), status: 422, want: []string{"Write the strength as a number, in % vol", `value="strong"`}},
		{name: "beyond all strength", path: "/training", form: answerForm("guess", "abv", "400", "volume", "1"), status: 422, want: []string{"That is no strength"}},
		{name: "a cover", path: "/training", form: answerForm("cover", "option", "1", "lost", "nut"), status: 200, want: []string{"Not this time", "its best cover"}},
		{name: "a cover not chosen", path: "/training", form: answerForm("cover", "lost", "nut"), status: 422, want: []string{"Choose one of the answers", `value="nut" checked`}},
		{name: "an aroma that is not known", path: "/training", form: answerForm("cover", "option", "1", "lost", "moon"), status: 400},
		{name: "a family", path: "/training", form: answerForm("family", "option", "0"), status: 200, want: []string{">Right<", "per cent of the whole"}},

		{name: "a kind made up", path: "/training", form: answerForm("darts"), status: 400},
		{name: "an axis made up", path: "/training", form: answerForm("fault", "axis", "blue"), status: 400},
		{name: "a size made up", path: "/training", form: answerForm("fault", "size", "huge"), status: 400},
		{name: "a size out of range", path: "/training", form: answerForm("fault", "size", "1e9"), status: 400},
		{name: "a seed made up", path: "/training", form: answerForm("fault", "seed", "-1"), status: 400},
		{name: "a trainer that breaks", path: "/training", form: answerForm("fault", "seed", "dw"), status: 500, want: []string{"Something broke"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			method := http.MethodGet
			if c.form != nil {
				method = http.MethodPost
			}
			w := ask(t, method, c.path, c.form, false)
			assert.Equal(t, c.status, w.Code)
			said := w.Body.String() + html.UnescapeString(w.Body.String())
			for _, s := range c.want {
				assert.True(t, strings.Contains(said, s), "should hold %q", s)
			}
			for _, s := range c.not {
				assert.False(t, strings.Contains(said, s), "should not hold %q", s)
			}
		})
	}
}

// A learner is known again by a cookie that says nothing of them, and one that
// was made up is not taken.
func TestLearnersAreKnownAgain(t *testing.T) {
	h := newPages(t)
	send := func(cookie string) *http.Response {
		r := httptest.NewRequest(http.MethodPost, "/training", strings.NewReader(answerForm("family", "option", "0").Encode()))
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
	assert.Empty(t, get(h, "/training?what=", "").Result().Cookies(), "who only looks gets none")
}

// A round is played to its end and the next one begun, by keyboard, without
// scripts.
func TestTrainingInABrowser(t *testing.T) {
	b := newBrowser(t, 360)
	b.withoutScripts()
	b.open(serve(t, newFakeHouse()), "/training")
	b.do(chromedp.SetValue(chromedp.ID("what"), "fault"))
	b.click(".sift button")
	b.until(`!!document.querySelector('.round')`)
	b.fits()
	b.click(`.round button.main`)
	b.until(`document.getElementById('amiss')?.textContent.startsWith('Say whether')`)
	b.do(chromedp.Focus(chromedp.CSS(`input[name="way"][value="little"]`)))
	for _, key := range []string{" ", kb.Tab, kb.ArrowDown, kb.ArrowDown, kb.Enter} {
		b.do(chromedp.KeyEvent(key))
	}
	b.until(`document.querySelector('.graded .word')?.textContent === 'Right'`)
	b.fits()
	b.click(".graded button.main")
	b.until(`!!document.querySelector('.round') && document.getElementById('what').value === 'fault'`)
	b.until(`document.getElementById('progress').textContent === 'How it goes'`)
	for _, said := range b.complaints() {
		assert.Contains(t, said, "status of 422", "half an answer, and nothing else")
	}
}
