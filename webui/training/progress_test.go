package training_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/pace"
	"counterpour/webui/access"
	"counterpour/webui/training"
	"counterpour/webui/webuitest"
)

// requestBy is a request of somebody who gave a name.
func requestBy(method, path string, form url.Values, who coaching.Trainee) *http.Request {
	r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	if who.Name != "" {
		r.AddCookie(&http.Cookie{Name: training.NameCookie, Value: training.AsText.EncodeToString([]byte(who.Name))})
	}
	return r
}

func serveOne(h http.Handler, r *http.Request) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

// A name is taken, kept in a cookie, shown, and forgotten again.
func TestWhoAreYou(t *testing.T) {
	pages := webuitest.NewPages(t)
	name := func(typed, back string) *httptest.ResponseRecorder {
		return serveOne(pages, requestBy(http.MethodPost, training.ProgressPath, url.Values{"name": {typed}, "back": {back}}, coaching.Trainee{}))
	}
	w := name("  Zoë  van <b>  ", training.TrainingPath)
	require.Equal(t, http.StatusSeeOther, w.Code)
	assert.Equal(t, training.TrainingPath, w.Header().Get("Location"))
	cookies := w.Result().Cookies()
	require.Len(t, cookies, 1)
	assert.True(t, cookies[0].HttpOnly)
	assert.Equal(t, http.SameSiteLaxMode, cookies[0].SameSite)
	assert.Equal(t, training.NameSeconds, cookies[0].MaxAge)
	r := requestBy(http.MethodGet, training.TrainingPath, nil, coaching.Trainee{})
	r.AddCookie(cookies[0])
	assert.Contains(t, serveOne(pages, r).Body.String(), "You train as <strong>Zoë van &lt;b&gt;</strong>")

	gone := name(" ", training.ProgressPath).Result().Cookies()
	require.Len(t, gone, 1)
	assert.Negative(t, gone[0].MaxAge)

	long := strings.Repeat("é", training.MaxName+1)
	webuitest.Holds(t, name(long, training.ProgressPath), 422, []string{"A name has up to 60 letters, this one 61", `value="` + long + `"`, "name-amiss"}, nil)
	webuitest.Holds(t, name("a\x00b", training.ProgressPath), 422, []string{"letters that can be read; write"}, nil)
	webuitest.Holds(t, name("Ada", "//elsewhere"), 400, nil, nil)
	for _, bad := range []string{"%%%", training.AsText.EncodeToString([]byte(long)), training.AsText.EncodeToString([]byte("\xff")), ""} {
		r := requestBy(http.MethodGet, training.TrainingPath, nil, coaching.Trainee{})
		r.AddCookie(&http.Cookie{Name: training.NameCookie, Value: bad})
		assert.Equal(t, coaching.Trainee{}, training.PersonOf(r), "%q", bad)
	}
}

// A named learner's rounds are records of the house, one for each round however
// often it is sent, with all that progress needs.
func TestRoundsOfANamedLearnerAreKept(t *testing.T) {
	h := webuitest.NewHouse()
	pages, ada := webuitest.PagesOf(t, h), coaching.Trainee{Name: "Ada"}
	form := webuitest.AnswerForm("fault", "way", "little", "of", "sour", "round", roundOf(t, webuitest.Follow(pages, "/training?what=fault&steps=6").Body.String()))
	webuitest.Holds(t, serveOne(pages, requestBy(http.MethodPost, training.TrainingPath, form, ada)), 200, []string{"1 round played, 1 right.", "You train as"}, []string{"not kept"})
	form.Set("way", "much") // sent again, with what the grade gave away undone
	webuitest.Holds(t, serveOne(pages, requestBy(http.MethodPost, training.TrainingPath, form, ada)), 200, []string{"1 round played, 1 right."}, nil)

	kept, err := house.All[house.Training](t.Context(), h.Store())
	require.NoError(t, err)
	require.Len(t, kept, 1)
	got := kept[0].Item
	assert.WithinDuration(t, time.Now(), got.At, time.Minute)
	assert.Equal(t, []any{"Ada", "fault", "sour", 6.0, 5, true, "too little acid", "too little acid", "fault:sour:6:2r"},
		[]any{got.Person, got.Kind, got.Axis, *got.SizeJND, *got.Quality, got.Right, got.Given, got.Wanted, got.Drill})
	assert.Equal(t, 1.0, *got.Score)

	bo := serveOne(pages, requestBy(http.MethodPost, training.TrainingPath, form, coaching.Trainee{Name: "Bo"}))
	webuitest.Holds(t, bo, 200, []string{"1 round played, 0 right."}, nil)
	assert.Empty(t, bo.Result().Cookies(), "who has a name needs no other word")
	webuitest.Holds(t, serveOne(webuitest.PagesOf(t, h), requestBy(http.MethodGet, training.ProgressPath, nil, ada)), 200, []string{"1 round played, 1 right.", "Bo"}, nil)
}

func TestGivenAnswersInWords(t *testing.T) {
	for what, c := range map[string]struct {
		form []string
		want string
	}{
		"mend":        {[]string{"pour-0", "2 oz", "pour-1", "3/4", "pour-2", "½ oz"}, "3/4 of lemon juice"},
		"order-sweet": {[]string{"place-0", "1", "place-1", "0", "place-2", "2"}, "Drink 2; Drink 1; Drink 3"},
		"guess":       {[]string{"abv", "14,5", "volume", "160"}, "14,5 % vol, 160 mL"},
		"cover":       {[]string{"option", "1", "lost", "nut"}, "½ oz orgeat; lost: nut"},
		"family":      {[]string{"option", "1"}, "Flip"},
	} {
		h := webuitest.NewHouse()
		pages := webuitest.PagesOf(t, h)
		form := webuitest.AnswerForm(what, append(c.form, "round", roundOf(t, webuitest.Follow(pages, "/training?what="+what).Body.String()))...)
		require.Equal(t, http.StatusOK, serveOne(pages, requestBy(http.MethodPost, training.TrainingPath, form, coaching.Trainee{Name: "Ada"})).Code, what)
		kept, err := house.All[house.Training](t.Context(), h.Store())
		require.NoError(t, err)
		require.Len(t, kept, 1)
		assert.Equal(t, c.want, kept[0].Item.Given)
	}
}

func TestProgressOfNobody(t *testing.T) {
	webuitest.Holds(t, webuitest.Get(webuitest.NewPages(t), training.ProgressPath, ""), 200,
		[]string{"No round played yet", "Nobody has trained under a name yet", "(Wozniak, Optimization of learning, 1990)", "Who are you?", webuitest.FootLine}, []string{"<table"})
}

// The rows that a learner and their lead see, worked by hand.
func TestProgressRows(t *testing.T) {
	h := webuitest.NewHouse()
	l := coaching.NewLearners(h.Store())
	now := time.Now()
	sour, guess := drill.Skill{Kind: drill.KindFault, Axis: "sour"}, drill.Skill{Kind: drill.KindGuess}
	for i := range 4 { // the first three days apart, so that it is 6 days until the next
		playRound(t, l, coaching.Trainee{Name: "Ada"}, sour, uint64(i), i > 0, now.AddDate(0, 0, -30+i))
	}
	playRound(t, l, coaching.Trainee{Name: "Ada"}, guess, 1, true, now.Add(-time.Hour))
	for i, s := range drill.Skills() { // Bo has tried all there is, today
		playRound(t, l, coaching.Trainee{Name: "Bo"}, s, uint64(20+9*i+9), true, now)
	}
	w := serveOne(webuitest.PagesOf(t, h), requestBy(http.MethodGet, training.ProgressPath, nil, coaching.Trainee{Name: "Ada"}))
	webuitest.Holds(t, w, 200, []string{"5 rounds played, 4 right.", "Name the fault: acid", `<td class="n">75` + "\u00a0%</td>", "not known yet", "within a day", "days late", "Not tried yet: Read the family; Name the fault: sweetness",
		`<th scope="row">Ada</th><td>Name the fault: acid</td><td>75` + "\u00a0% right of 4 rounds, ", `<th scope="row">Bo</th>`}, []string{"Nobody has trained under a name"})
	body := w.Body.String()
	assert.Less(t, strings.Index(body, `<th scope="row">Ada`), strings.Index(body, `<th scope="row">Bo`), "who needs it most stands first")
}

func TestDueInWords(t *testing.T) {
	for _, c := range []struct {
		in   time.Duration
		want string
	}{{0, "now"}, {-time.Hour, "now"}, {-25 * time.Hour, "now, 1 day late"}, {-73 * time.Hour, "now, 3 days late"}, {time.Hour, "within a day"}, {25 * time.Hour, "in 2 days"}, {6 * training.Day, "in 6 days"}} {
		assert.Equal(t, c.want, training.DueText(evening.Add(c.in), evening), c.in)
	}
	assert.Equal(t, "–", training.PercentOf(0, 0))
}

// The threshold of a drill carries its standard error, and a guess is told in the
// steps that it is out by.
func TestThresholdsInWords(t *testing.T) {
	s := drill.Skill{Kind: drill.KindFault, Axis: "sour", Rounds: 40, Right: 28, Stairs: pace.Staircase{Size: 4, Reversals: []float64{4, 4.8, 4, 4.8}}, Repeat: pace.Repeat{Due: evening}}
	row := training.SkillRowOf(&s, evening)
	assert.Equal(t, training.SkillRow{Name: "Name the fault: acid", Tells: "4.4 ± 0.2 steps", Rounds: "40", Right: "70\u00a0%", Next: "4.0 steps", Due: "now"}, row)
	s.Kind, s.Axis = drill.KindGuess, ""
	assert.Equal(t, "0.37 ± 0.02 steps", training.SkillRowOf(&s, evening).Tells)
}

func TestNeedsInWords(t *testing.T) {
	row := training.TeamRowOf(&drill.Learner{Name: "Ada"}, nil)
	assert.Equal(t, training.TeamRow{Name: "Ada"}, row)
	needs := []drill.Need{{Kind: drill.KindMend, Axis: "sweet", Threshold: 5.2, Share: 0.5, Rounds: 12, Overdue: 9}, {Kind: drill.KindGuess}, {Kind: drill.KindCover}, {Kind: drill.KindFamily}}
	row = training.TeamRowOf(&drill.Learner{Name: "Ada"}, needs)
	assert.Equal(t, "Fix it: sweetness", row.Next)
	assert.Equal(t, "notices 5.2 steps, 50\u00a0% right of 12 rounds, 9 days late", row.Why)
	assert.Equal(t, "Guess strength and volume, Pick the cover and 1 more", row.Then)
	assert.Equal(t, "not tried yet", training.WhyText(&needs[1]))
}

// Who has signed in trains under that name and no other, and only a lead sees
// how the others do.
func TestWhoHasSignedInTrains(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.NewHouse())
	as := func(p access.Person) string {
		r := httptest.NewRequest(http.MethodGet, training.ProgressPath, nil)
		r.AddCookie(&http.Cookie{Name: training.NameCookie, Value: training.AsText.EncodeToString([]byte("Somebody Else"))})
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, r.WithContext(access.With(r.Context(), p)))
		return w.Body.String()
	}
	floor := as(access.Person{Name: "Wren", Role: access.Floor})
	assert.Contains(t, floor, "You train as <strong>Wren</strong>")
	assert.NotContains(t, floor, "Somebody Else")
	assert.NotContains(t, floor, `name="name"`)
	assert.NotContains(t, floor, "Who needs which drill next")
	assert.Contains(t, as(access.Person{Name: "Ana", Role: access.Lead}), "Who needs which drill next")
}

// A house that can keep nothing does not keep the grade from being shown, and
// says so.
func TestAResultThatIsNotKept(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Full(webuitest.NewHouse()))
	form := webuitest.AnswerForm("family", "option", "0", "round", roundOf(t, webuitest.Follow(pages, "/training?what=family").Body.String()))
	webuitest.Holds(t, serveOne(pages, requestBy(http.MethodPost, training.TrainingPath, form, coaching.Trainee{Name: "Ada"})), 200,
		[]string{">Right<", "This result was not kept: there is no room left on the disk."}, []string{"round played"})
	webuitest.Holds(t, webuitest.Post(pages, training.TrainingPath, form, false), 200, []string{">Right<", "1 round played"}, []string{"not kept:"})

	h := webuitest.NewHouse()
	pages = webuitest.PagesOf(t, h)
	require.NoError(t, h.Store().Close())
	w := serveOne(pages, requestBy(http.MethodGet, training.TrainingPath, nil, coaching.Trainee{Name: "Ada"}))
	webuitest.Holds(t, w, http.StatusInternalServerError, []string{"Something broke behind the bar"}, nil)
}

// From the second round of a drill on, its page of progress and the grade draw how it
// went, with as many marks as rounds.
func TestProgressIsDrawn(t *testing.T) {
	h := webuitest.NewHouse()
	pages, ada, learners := webuitest.PagesOf(t, h), coaching.Trainee{Name: "Ada"}, coaching.NewLearners(h.Store())
	progress := func() string {
		return serveOne(pages, requestBy(http.MethodGet, training.ProgressPath, nil, ada)).Body.String()
	}
	playRound(t, learners, ada, drill.Skill{Kind: drill.KindFault, Axis: "sour"}, 1, true, evening)
	assert.NotContains(t, progress(), `class="curve"`, "one round is no curve")
	playRound(t, learners, ada, drill.Skill{Kind: drill.KindFault, Axis: "sour"}, 2, false, evening.Add(time.Minute))
	page := progress()
	assert.Equal(t, 1, strings.Count(page, `class="curve"`))
	assert.Equal(t, 2, strings.Count(page, `<circle class="dot`))
	assert.Contains(t, page, "2 rounds, 1 right: from 2.0 steps in the first to 3.0 in the last")

	form := webuitest.AnswerForm("fault", "way", "little", "of", "sour", "round", roundOf(t, webuitest.Follow(pages, "/training?what=fault&steps=6").Body.String()))
	graded := serveOne(pages, requestBy(http.MethodPost, training.TrainingPath, form, ada)).Body.String()
	_, curve, found := strings.Cut(graded, `class="curve"`)
	assert.True(t, found)
	curve, _, _ = strings.Cut(curve, "</svg>")
	assert.Equal(t, 3, strings.Count(curve, `<circle class="dot`))
}
