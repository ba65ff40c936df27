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
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/visit"
	"counterpour/cmd/counterpour/premises"
	"counterpour/data/house"
	"counterpour/data/house/store"
	"counterpour/flavor"
	"counterpour/flavor/ratio"
	"counterpour/webui"
	"counterpour/webui/behind"
)

// keptVisit is a visit to a house whose records are kept in a store of their own.
type keptVisit struct {
	behind.Visit
	store house.Store
}

func (v keptVisit) Store() house.Store { return v.store }

// openPages opens the pages of the demo house over a store in a file.
func openPages(t *testing.T, path string) (http.Handler, house.Store) {
	t.Helper()
	v, done, err := premises.AtHouse(t.Context(), embedded, premises.Demo)
	require.NoError(t, err)
	t.Cleanup(done)
	store, err := store.Open(t.Context(), path, store.Options{})
	require.NoError(t, err)
	pages, err := webui.New(func() behind.Visit { return keptVisit{visit.Of(v), store} }, slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	return pages, store
}

// send sends a form, or asks for a page if there is none.
func send(pages http.Handler, path string, form url.Values, cookies []*http.Cookie) *http.Response {
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

// Results outlive the program, and a round that was open when it ended is graded by
// whichever server is sent it, and counts once.
func TestResultsSurviveARestart(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.db")
	pages, store := openPages(t, path)
	who := send(pages, "/training/progress", url.Values{"name": {"Ada"}, "back": {"/training"}}, nil).Cookies()
	require.Len(t, who, 1)
	open := send(pages, "/training?what=family", nil, who)
	require.Equal(t, http.StatusSeeOther, open.StatusCode, "a round has an address of its own")
	asked := bodyOf(t, send(pages, open.Header.Get("Location"), nil, who))
	m := regexp.MustCompile(`name="round" value="([^"]+)"`).FindStringSubmatch(asked)
	require.NotNil(t, m)
	form := url.Values{"what": {"family"}, "steps": {""}, "round": {m[1]}, "option": {"0"}}
	w := send(pages, "/training", form, who)
	require.Equal(t, http.StatusOK, w.StatusCode)
	graded := bodyOf(t, w)
	played := regexp.MustCompile(`1 round played, [01] right\.`).FindString(graded)
	require.NotEmpty(t, played)
	require.NoError(t, store.Close())

	pages, store = openPages(t, path)
	assert.Contains(t, bodyOf(t, send(pages, "/training/progress", nil, who)), played)
	w = send(pages, "/training", form, who)
	assert.Equal(t, http.StatusOK, w.StatusCode)
	assert.Contains(t, bodyOf(t, w), played)
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
	demo, err := k.Catalogue.Demo()
	require.NoError(t, err)
	planned := 0
	for _, s := range demo.Specs[:6] {
		for _, axis := range ratio.Axes() {
			w := send(pages, "/training/flight?"+url.Values{"drink": {strings.ReplaceAll(flavor.NormaliseName(s.Name), " ", "-")}, "axis": {axis.String()},
				"builds": {"3"}, "step": {"1"}, "tasters": {"3"}, "each": {"30"}, "seed": {"a"}}.Encode(), nil, nil)
			body := bodyOf(t, w)
			switch w.StatusCode {
			case http.StatusOK:
				planned++
				assert.Contains(t, body, "standard drinks of 14 g (United States)")
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
		w := send(pages, "/training/starter?family="+f.ID, nil, nil)
		assert.Equal(t, http.StatusOK, w.StatusCode, f.ID)
		assert.Contains(t, bodyOf(t, w), "When it goes wrong", f.ID)
	}
}
