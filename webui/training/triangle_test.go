package training_test

import (
	"html"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor/drill/tasting"
	"counterpour/webui/part"
	"counterpour/webui/training"
	"counterpour/webui/webuitest"
)

func triangleValues(pairs ...string) url.Values {
	v := url.Values{"drink": {"Nutcracker"}, "cover": {"almond syrup"}, "each": {"25"}, "tasters": {"6"}, "alpha": {"5"}, "power": {"80"}, "share": {"50"}, "seed": {"2r"}}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return v
}

func triangleOf(pairs ...string) string {
	return training.TrianglePath + "?" + triangleValues(pairs...).Encode()
}

func TestTriangleScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		path   string
		status int
		want   []string
		not    []string
	}{
		{name: "before the first plan", path: training.TrianglePath, status: 200, want: []string{"No test yet. Plan one above", `<option value="Nutcracker">`, `<option value="almond syrup">`, `name="each" value="25"`, webuitest.FootLine}, not: []string{"What they picked"}},
		{name: "a plan", path: triangleOf(), status: 200,
			want: []string{"6 tasters: from 5 right answers on", "still happens in 1.8 of 100", "the test finds it in 35 of 100", "less than the 80 asked for; 16 tasters would do", "25 mL in each glass",
				"Whoever swallows all three takes in 8.6 g of alcohol", "A: Nutcracker", "In what every taster drinks, A and B alike", "tree nuts (orgeat and almond syrup)", "B: with almond syrup", "B pours almond syrup in place of the orgeat", "They look different: white turns straw. Use dark glasses", "Foam does not keep in a batch", "Batch for 10 glasses", "Raw egg", "Taster 6", `name="pick-5"`, "0 of 6 tasters have picked", "The key, for whoever pours", "spit into the cup", "ask every taster about allergies"[1:]},
			not: []string{"Taster 7", "not on the menu", "p-value"}},
		{name: "a number that is worked out", path: triangleOf("tasters", ""), status: 200, want: []string{"16 tasters: from 9 right answers on", "6, 12, 18 … tasters"}, not: []string{"would do"}},
		{name: "things that the house does not know", path: triangleOf("drink", "Somebody's <Punch>", "cover", "moon dust"), status: 200,
			want: []string{"A: Somebody's <Punch>", "if it is as strong as a spirit of 40 % vol", "Not known here", "B: moon dust"}, not: []string{"Batch for", "dark glasses"}},
		{name: "an alarm that nothing can raise", path: triangleOf("alpha", "0.1"), status: 200, want: []string{"6 tasters can show nothing"}},
		{name: "too much for one taster", path: triangleOf("drink", "x", "each", "60"), status: 422, want: []string{"Three glasses of 60 mL at 40 % vol hold 56.8 g of alcohol", "the limit is 28.0 g", "Pour 29 mL each", `name="each" value="60"`}, not: []string{"What they picked"}},
		{name: "no drink", path: triangleOf("drink", " "), status: 422, want: []string{"Name the drink and what is poured in the cover", `value="almond syrup"`}},
		{name: "a crowd", path: triangleOf("tasters", "101"), status: 422, want: []string{"101 tasters, and 100 are the most"}},
		{name: "too few", path: triangleOf("tasters", "2"), status: 422, want: []string{"2 tasters; use 6 to"}},
		{name: "no number of tasters", path: triangleOf("tasters", "some"), status: 422, want: []string{"or leave it out", `value="some"`}},
		{name: "no share", path: triangleOf("share", "half"), status: 422, want: []string{"Write the share who can tell as a number, in %"}},
		{name: "a share of more than all", path: triangleOf("share", "500"), status: 422, want: []string{"The share who can tell must be from 0 to 100 %"}},
		{name: "a power that no test has", path: triangleOf("power", "100"), status: 422, want: []string{"The power must be from 50 to 99 %"}},
		{name: "a false alarm at every other test", path: triangleOf("alpha", "50"), status: 422, want: []string{"The chance of a false alarm must be from 0.1 to 20 %"}},
		{name: "a share of nobody", path: triangleOf("share", "0"), status: 422, want: []string{"must be more than 0 %"}},
		{name: "a drop", path: triangleOf("each", "1"), status: 422, want: []string{"pour 5 to 120 mL"}},
		{name: "a seed made up", path: triangleOf("seed", "?"), status: 400},
		{name: "a test that there is not", path: training.TrianglePath + "?test=triangle-x", status: 404},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Holds(t, webuitest.Ask(t, http.MethodGet, c.path, nil, false), c.status, c.want, c.not)
		})
	}
	w := webuitest.Ask(t, http.MethodGet, strings.Replace(triangleOf(), "seed=2r", "", 1), nil, false)
	assert.Equal(t, http.StatusSeeOther, w.Code)
	assert.Regexp(t, `seed=[0-9a-z]+`, w.Header().Get("Location"))
}

// plannedTest is the test of triangleOf.
func plannedTest(t *testing.T) *tasting.Triangle {
	t.Helper()
	seed, err := training.ReadSeed("2r")
	require.NoError(t, err)
	plan, err := tasting.PlanTriangle(tasting.TriangleRequest{Tasters: 6, Alpha: 0.05, Power: 0.8, Share: 0.5, Seed: seed})
	require.NoError(t, err)
	return plan
}

// picks adds what tasters picked to a form: the odd one, or a wrong one.
func picked(form url.Values, plan *tasting.Triangle, right map[int]bool) url.Values {
	for i, ok := range right {
		at := plan.Servings[i].Odd
		if !ok {
			at = (at + 1) % 3
		}
		form.Set(training.PickField(i), strconv.Itoa(plan.Servings[i].Codes[at]))
	}
	return form
}

func send(pages http.Handler, form url.Values, do string, version int) *httptest.ResponseRecorder {
	form.Set("do", do)
	form.Set("version", strconv.Itoa(version))
	return webuitest.Post(pages, training.TrianglePath, form, false)
}

// A test is planned, its picks are kept as they come in, and it is judged once it
// is closed and not before.
func TestATriangleTestFromPlanToVerdict(t *testing.T) {
	h := webuitest.NewHouse()
	pages, plan := webuitest.PagesOf(t, h), plannedTest(t)
	w := send(pages, picked(triangleValues(), plan, map[int]bool{0: true, 1: true}), training.KeepPicks, 0)
	require.Equal(t, http.StatusSeeOther, w.Code)
	at := w.Header().Get("Location")
	id := testIn(t, at)
	webuitest.Holds(t, webuitest.Get(pages, at, ""), 200, []string{"2 of 6 tasters have picked", `name="test" value="` + id + `"`, `name="version" value="1"`, "under way: 2 of 6 have picked",
		`value="` + strconv.Itoa(plan.Servings[0].Codes[plan.Servings[0].Odd]) + `" checked`}, []string{"p-value", "right, p ="})

	form := picked(url.Values{"test": {id}}, plan, map[int]bool{0: true, 1: true, 2: true, 3: true, 4: true, 5: false})
	require.Equal(t, http.StatusSeeOther, send(pages, form, training.CloseTest, 1).Code)
	// 5 of 6 with p = 13/729, and its interval, worked by hand from the binomial
	// and Clopper and Pearson for 5 of 6 at 95 %, 0.359 to 0.996 (from memory).
	webuitest.Holds(t, webuitest.Get(pages, at, ""), 200, []string{"They can be told apart", "5 of 6 found the odd one", "<dd>0.018</dd>", "<dd>4 to 99 %</dd>", "they can be told apart: 5 of 6 right, p = 0.018"}, []string{"What they picked"})

	kept, err := house.Get[house.Triangle](t.Context(), h.Store(), id)
	require.NoError(t, err)
	assert.True(t, kept.Item.Closed)
	assert.Equal(t, []any{"Nutcracker", "almond syrup", 25.0, 0.05, 0.5}, []any{kept.Item.Drink, kept.Item.Cover, kept.Item.GlassML, kept.Item.Alpha, kept.Item.Share})
	for i, s := range kept.Item.Servings {
		assert.Equal(t, plan.Servings[i].Order, s.Order)
		assert.Equal(t, plan.Servings[i].Codes, s.Codes)
	}
	webuitest.Holds(t, send(pages, form, training.KeepPicks, 2), http.StatusConflict, []string{"This test is closed; its verdict stands"}, nil)
	webuitest.Holds(t, webuitest.Get(webuitest.PagesOf(t, h), training.TrianglePath, ""), 200, []string{"Nutcracker</a>", "5 of 6 right"}, []string{"None yet"})
}

// testIn is the test that an address leads to.
func testIn(t *testing.T, address string) string {
	t.Helper()
	at, err := url.Parse(address)
	require.NoError(t, err)
	return at.Query().Get("test")
}

// What was just kept can be taken back: a test that was closed too early is open again.
func TestPicksAreTakenBack(t *testing.T) {
	h := webuitest.NewHouse()
	pages, plan := webuitest.PagesOf(t, h), plannedTest(t)
	id := testIn(t, send(pages, picked(triangleValues(), plan, map[int]bool{0: true}), training.KeepPicks, 0).Header().Get("Location"))
	at := send(pages, picked(url.Values{"test": {id}}, plan, map[int]bool{0: true}), training.CloseTest, 1).Header().Get("Location")
	page := webuitest.Get(pages, at, "").Body.String()
	button := regexp.MustCompile(`name="undo" value="([^"]+)"`).FindStringSubmatch(page)
	require.NotNil(t, button)
	w := webuitest.Post(pages, part.UndoPath, url.Values{"undo": {html.UnescapeString(button[1])}, "back": {at}}, false)
	require.Equal(t, http.StatusOK, w.Code)
	kept, err := house.Get[house.Triangle](t.Context(), h.Store(), id)
	require.NoError(t, err)
	assert.False(t, kept.Item.Closed)
}

// Nothing that somebody picked is lost, whoever else records.
func TestTwoWhoRecordAtOnce(t *testing.T) {
	h := webuitest.NewHouse()
	pages, plan := webuitest.PagesOf(t, h), plannedTest(t)
	code := func(i int, right bool) string {
		return picked(url.Values{}, plan, map[int]bool{i: right}).Get(training.PickField(i))
	}
	first := send(pages, picked(triangleValues(), plan, map[int]bool{0: true, 1: true}), training.KeepPicks, 0)
	id := testIn(t, first.Header().Get("Location"))
	assert.Equal(t, http.StatusSeeOther, send(pages, picked(triangleValues(), plan, map[int]bool{0: true, 1: true}), training.KeepPicks, 0).Code, "the page sent twice")

	w := send(pages, picked(url.Values{"test": {id}}, plan, map[int]bool{1: false, 2: true}), training.KeepPicks, 0)
	webuitest.Holds(t, w, http.StatusConflict, []string{"Somebody else recorded at the same time", `value="` + code(0, true) + `" checked`, `value="` + code(1, false) + `" checked`, `value="` + code(2, true) + `" checked`, `name="version" value="1"`}, nil)
	assert.Equal(t, http.StatusSeeOther, send(pages, picked(url.Values{"test": {id}}, plan, map[int]bool{0: true, 1: false, 2: true}), training.CloseTest, 1).Code)
	w = send(pages, picked(url.Values{"test": {id}}, plan, map[int]bool{3: true}), training.KeepPicks, 1)
	webuitest.Holds(t, w, http.StatusConflict, []string{"This test is closed"}, nil)
}

func TestPicksThatAreRefused(t *testing.T) {
	h := webuitest.NewHouse()
	pages, plan := webuitest.PagesOf(t, h), plannedTest(t)
	webuitest.Holds(t, send(pages, triangleValues(), training.CloseTest, 0), 422, []string{"Nobody has picked yet", "What they picked"}, nil)
	for about, form := range map[string]url.Values{
		"a glass of another": triangleValues(training.PickField(0), "99"),
		"no code":            triangleValues(training.PickField(0), "left"),
		"no such test":       {"test": {"triangle-x"}},
		"no such id":         {"test": {"?"}},
		"no drink":           triangleValues("drink", ""),
		"no seed":            triangleValues("seed", ""),
	} {
		assert.Equal(t, http.StatusBadRequest, send(pages, form, training.KeepPicks, 0).Code, about)
	}
	assert.Equal(t, http.StatusBadRequest, send(pages, picked(triangleValues(), plan, map[int]bool{0: true}), "burn", 0).Code)
	form := triangleValues()
	form.Set("do", training.KeepPicks)
	assert.Equal(t, http.StatusBadRequest, webuitest.Post(pages, training.TrianglePath, form, false).Code, "no version")
	past, err := house.All[house.Triangle](t.Context(), h.Store())
	require.NoError(t, err)
	assert.Empty(t, past, "nothing of it was kept")

	w := send(webuitest.PagesOf(t, webuitest.Full(webuitest.NewHouse())), picked(triangleValues(), plan, map[int]bool{0: true}), training.CloseTest, 0)
	webuitest.Holds(t, w, http.StatusServiceUnavailable, []string{"The picks were not kept: there is no room left on the disk.", "1 of 6 tasters have picked", "checked> " + strconv.Itoa(plan.Servings[0].Codes[plan.Servings[0].Odd]), `name="drink" value="Nutcracker"`}, []string{"p-value"})
}
