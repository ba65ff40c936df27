package main

import (
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/drill"
	"counterpour/flavor/template"
	"counterpour/webui"
)

func newTestCoach(t *testing.T) *coach {
	t.Helper()
	k, err := sharedKitchen()
	require.NoError(t, err)
	return newCoach(func() *service.Kitchen { return k })
}

// Every kind can be had, and its request makes the same round again.
func TestCoachMakesEveryKind(t *testing.T) {
	c := newTestCoach(t)
	for _, kind := range append(drill.Kinds(), "") {
		r, err := c.Next(drill.Learner{}, webui.RoundWish{Kind: kind})
		require.NoError(t, err, kind)
		again, err := c.Again(r.Request)
		require.NoError(t, err, kind)
		assert.Equal(t, r.Question, again.Question)
		assert.Equal(t, r.Options, again.Options)
	}
	r, err := c.Next(drill.Learner{}, webui.RoundWish{Kind: drill.KindOrder, Axis: template.Sweet, HasAxis: true, Size: 3})
	require.NoError(t, err)
	assert.Equal(t, template.Sweet, r.Request.Axis)
	assert.Equal(t, 3.0, r.Request.Size)
	_, err = c.Next(drill.Learner{}, webui.RoundWish{Kind: "darts"})
	assert.Error(t, err)
}

// The size of the next round is what the learner's results ask for.
func TestCoachFollowsTheLearner(t *testing.T) {
	c := newTestCoach(t)
	var l drill.Learner
	play := func(right bool) drill.Skill {
		r, err := c.Next(l, webui.RoundWish{Kind: drill.KindGuess})
		require.NoError(t, err)
		d, err := sharedDrink(r)
		require.NoError(t, err)
		a := drill.Answer{ABV: d.abv, Volume: d.volume}
		if !right {
			a.ABV = 99
		}
		g, err := c.Grade(r, a)
		require.NoError(t, err)
		assert.Equal(t, right, g.Right)
		l, err = l.After(drill.ResultOf(r, g, c.now()))
		require.NoError(t, err)
		return l.Skills[0]
	}
	play(true)
	after := play(true)
	assert.Equal(t, 2, after.Rounds)
	r, err := c.Next(l, webui.RoundWish{Kind: drill.KindGuess})
	require.NoError(t, err)
	assert.Equal(t, after.Stairs.Next(), r.Request.Size)
	assert.Greater(t, play(false).Stairs.Next(), r.Request.Size)
}

type finished struct{ abv, volume float64 }

func sharedDrink(r *drill.Round) (finished, error) {
	k, err := sharedKitchen()
	if err != nil {
		return finished{}, err
	}
	scored, err := k.Judge.Score(&r.Specs[0])
	if err != nil {
		return finished{}, err
	}
	return finished{scored.Drink.ABV, scored.Drink.VolumeML}, nil
}

// What is due or new comes before the rest.
func TestSkillsToTry(t *testing.T) {
	now := time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC)
	l := drill.Learner{Skills: []drill.Skill{{Kind: drill.KindOrder, Axis: "sweet", Rounds: 1, Repeat: drill.Repeat{Due: now.Add(time.Hour)}}}}
	for range 10 {
		got := skillsToTry(l, drill.KindOrder, now)
		require.Len(t, got, 2)
		assert.Equal(t, "strong", got[0].Axis)
		assert.Equal(t, 1, got[1].Rounds)
	}
	assert.Len(t, skillsToTry(l, drill.KindFault, now), template.NumAxes)
}

// A flight and a card come from the same kitchen as the rounds.
func TestCoachPlans(t *testing.T) {
	c := newTestCoach(t)
	k, err := sharedKitchen()
	require.NoError(t, err)
	spec, err := k.Read(draft)
	require.NoError(t, err)
	f, err := c.Flight(drill.FlightRequest{Spec: &spec, Axis: template.Sweet, Builds: 3, Step: 1, BuildML: 30, Tasters: 2})
	require.NoError(t, err)
	assert.Len(t, f.Builds, 3)
	card, err := c.Card("sour", nil)
	require.NoError(t, err)
	assert.Len(t, card.Examples, 3)
	_, err = c.Card("nothing", nil)
	assert.ErrorIs(t, err, flavor.ErrUnknown)
}

func TestCoachIsSafeForAll(t *testing.T) {
	c := newTestCoach(t)
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			r, err := c.Next(drill.Learner{}, webui.RoundWish{Kind: drill.KindFamily})
			if assert.NoError(t, err) {
				_, err = c.Grade(r, drill.Answer{})
				assert.NoError(t, err)
			}
		})
	}
	all.Wait()
}

// A bar whose house is kept in a store of its own.
type keptBar struct {
	bar
	house webui.House
}

func (b keptBar) House() webui.House { return b.house }

type keptHouse struct {
	webui.House
	store house.Store
}

func (h keptHouse) Store() house.Store { return h.store }

// openPages opens the pages of the demo house over a store in a file.
func openPages(t *testing.T, path string) (http.Handler, house.Store) {
	t.Helper()
	v, done, err := atHouse(t.Context(), embedded, demoHouse)
	require.NoError(t, err)
	t.Cleanup(done)
	store, err := house.Open(t.Context(), path, house.Options{})
	require.NoError(t, err)
	b := newBar(v)
	pages, err := webui.New(keptBar{b, keptHouse{b.House(), store}}, slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	return pages, store
}

// visit sends a form, or asks for a page if there is none.
func visit(pages http.Handler, path string, form url.Values, cookies []*http.Cookie) *http.Response {
	method := http.MethodGet
	if form != nil {
		method = http.MethodPost
	}
	r := httptest.NewRequest(method, path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	for _, c := range cookies {
		r.AddCookie(c)
	}
	w := httptest.NewRecorder()
	pages.ServeHTTP(w, r)
	return w.Result()
}

func bodyOf(t *testing.T, r *http.Response) string {
	t.Helper()
	raw, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return string(raw)
}

// Results outlive the program, a round that was open when it ended does not.
func TestResultsSurviveARestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	pages, store := openPages(t, path)
	who := visit(pages, "/training/progress", url.Values{"name": {"Ada"}, "back": {"/training"}}, nil).Cookies()
	require.Len(t, who, 1)
	asked := bodyOf(t, visit(pages, "/training?what=family", nil, who))
	m := regexp.MustCompile(`name="round" value="([^"]+)"`).FindStringSubmatch(asked)
	require.NotNil(t, m)
	form := url.Values{"what": {"family"}, "steps": {""}, "round": {m[1]}, "option": {"0"}}
	w := visit(pages, "/training", form, who)
	require.Equal(t, http.StatusOK, w.StatusCode)
	graded := bodyOf(t, w)
	played := regexp.MustCompile(`1 round played, [01] right\.`).FindString(graded)
	require.NotEmpty(t, played)
	require.NoError(t, store.Close())

	pages, store = openPages(t, path)
	assert.Contains(t, bodyOf(t, visit(pages, "/training/progress", nil, who)), played)
	w = visit(pages, "/training", form, who)
	assert.Equal(t, http.StatusGone, w.StatusCode)
	assert.Contains(t, bodyOf(t, w), "Start a new one")
	records, err := house.All[house.Training](t.Context(), store)
	require.NoError(t, err)
	assert.Len(t, records, 1)
	require.NoError(t, store.Check(t.Context()))
	require.NoError(t, store.Close())
}

// The pages of training over the real catalogue: every axis of a menu drink is
// stepped or refused with a reason, and every family has a card.
func TestTrainingPagesOverTheKitchen(t *testing.T) {
	pages, store := openPages(t, filepath.Join(t.TempDir(), "house.db"))
	defer store.Close()
	k, err := sharedKitchen()
	require.NoError(t, err)
	planned := 0
	for _, s := range k.House.Specs[:6] {
		for _, axis := range template.Axes() {
			w := visit(pages, "/training/flight?"+url.Values{"drink": {strings.ReplaceAll(flavor.NormaliseName(s.Name), " ", "-")}, "axis": {axis.String()},
				"builds": {"3"}, "step": {"1"}, "tasters": {"3"}, "each": {"30"}, "seed": {"a"}}.Encode(), nil, nil)
			body := bodyOf(t, w)
			switch w.StatusCode {
			case http.StatusOK:
				planned++
				assert.Contains(t, body, "US standard drinks")
			case http.StatusUnprocessableEntity:
				assert.Contains(t, body, `role="alert"`)
			default:
				assert.Fail(t, "neither planned nor refused", "%s, %v: %d", s.Name, axis, w.StatusCode)
			}
		}
	}
	assert.Greater(t, planned, 12)
	families, _ := k.Set.Families()
	for _, f := range families {
		w := visit(pages, "/training/starter?family="+f.ID, nil, nil)
		assert.Equal(t, http.StatusOK, w.StatusCode, f.ID)
		assert.Contains(t, bodyOf(t, w), "When it goes wrong", f.ID)
	}
}
