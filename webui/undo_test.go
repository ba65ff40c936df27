package webui_test

import (
	"html"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/webuitest"
)

// What an offer to undo looks like: a form with one button that says so.
var (
	undoForm = regexp.MustCompile(`(?s)<form[^>]*action="([^"]*)"[^>]*>(.*?)</form>`)
	hidden   = regexp.MustCompile(`<input type="hidden" name="([^"]*)" value="([^"]*)"`)
	undoes   = regexp.MustCompile(`<button type="submit"(?: form="([^"]*)")?(?: name="([^"]*)" value="([^"]*)")?[^>]*>(?:Undo|Put it back|Back)[^<]*</button>`)
)

// undoOf presses the first button of a page that undoes.
func undoOf(t *testing.T, pages http.Handler, page string) *httptest.ResponseRecorder {
	t.Helper()
	send := func(to string, fields url.Values) *httptest.ResponseRecorder {
		return webuitest.Post(pages, to, fields, false)
	}
	for _, m := range undoForm.FindAllStringSubmatch(page, -1) {
		button := undoes.FindStringSubmatch(m[2])
		if button == nil || button[1] != "" || button[2] == "become" { // the last is of the draft in the browser
			continue
		}
		fields := url.Values{}
		for _, f := range hidden.FindAllStringSubmatch(m[2], -1) {
			fields.Add(f[1], html.UnescapeString(f[2]))
		}
		if button[2] != "" {
			fields.Set(button[2], html.UnescapeString(button[3]))
		}
		return send(html.UnescapeString(m[1]), fields)
	}
	// A button beside its form.
	for _, button := range undoes.FindAllStringSubmatch(page, -1) {
		if button[1] == "" {
			continue
		}
		assert.Contains(t, page, `<form id="`+button[1]+`" method="post" action="/undo"`)
		return send("/undo", url.Values{button[2]: {html.UnescapeString(button[3])}})
	}
	require.Fail(t, "no button undoes it")
	return nil
}

// standing is what the house holds, and what is out.
func standing(t *testing.T, h *webuitest.House) []any {
	t.Helper()
	list, err := h.Store().List(t.Context(), house.KindBottle, house.KindMade, house.KindSpec, house.KindSettings, house.KindRight, house.KindName)
	require.NoError(t, err)
	var out []any
	for _, e := range list {
		out = append(out, e.Item)
	}
	outs, err := h.RunOut(t.Context())
	require.NoError(t, err)
	return append(out, strings.Join(outs, " "))
}

// isUndone sends a form that writes, and presses the button that undoes it.
func isUndone(t *testing.T, pages http.Handler, h *webuitest.House, path string, form url.Values) {
	t.Helper()
	before := standing(t, h)
	w := webuitest.Post(pages, path, form, false)
	if to, _, _ := strings.Cut(w.Header().Get("Location"), "#"); to != "" {
		w = webuitest.Get(pages, to, "")
	}
	require.Contains(t, []int{http.StatusOK, http.StatusGone}, w.Code)
	require.NotEqual(t, before, standing(t, h), "it was written")
	require.Contains(t, []int{http.StatusOK, http.StatusSeeOther}, undoOf(t, pages, w.Body.String()).Code)
	assert.Equal(t, before, standing(t, h), "it is as before")
}

// After each thing that a page writes it says so with a button that undoes it, and
// the button does.
func TestEveryChangeCanBeUndone(t *testing.T) {
	laid := webuitest.Fields("name", "Ropery gin", "ingredient", "London dry gin", "size_ml", "700", "stock", "2")
	for _, c := range []struct {
		name, path string
		form       url.Values
	}{
		{"a bottle runs out, in the stock", "/stock/mark", webuitest.Fields("out", "falernum")},
		{"a bottle runs out, tonight", "/tonight", webuitest.Fields("out", "falernum")},
		{"a bottle runs out, on the board", "/board", webuitest.Fields("out", "falernum")},
		{"a bottle is back, in the stock", "/stock/mark", webuitest.Fields("back", "orgeat")},
		{"a bottle is back, tonight", "/tonight", webuitest.Fields("back", "orgeat")},
		{"a bottle is back, on the board", "/board", webuitest.Fields("back", "orgeat")},
		{"a new bottle", "/stock/bottle", laid},
		{"words of the house, in the stock", "/stock/words", webuitest.Fields("words", "Ropery No 3", "kind", "London dry gin")},
		{"the settings", "/stock/house", webuitest.Fields("version", "0", "name", "The Ropery")},
		{"the first settings", "/start", webuitest.Fields("do", "house", "version", "0", "name", "The Ropery")},
		{"usual bottles", "/start", webuitest.Fields("do", "bottles", "bottle", "london-dry-gin", "bottle", "orgeat")},
		{"a starter menu", "/start", webuitest.Fields("do", "menu", "drink", "Halyard Sour")},
		{"a list of bottles", "/stock/import", webuitest.Fields("do", "take", "text", "Name,Kind,Size,On hand\nRopery gin,London dry gin,70cl,2\nCapstan orgeat,orgeat,1L,1\n")},
		{"specs brought in", "/specs/import", webuitest.Fields("do", "all", "as", "text", "text", "Capstan\n2 oz London dry gin\n3/4 oz lemon juice\nshake, up\n")},
		{"a draft that is saved", "/bench", webuitest.Fields("save", "save", "text", "Capstan\n2 oz gin\n3/4 oz lemon juice\nshake, up")},
		{"a note on a spec", "/specs/mainbrace", webuitest.Fields("do", "note", "version", "1", "note", "a tall glass")},
		{"a spec that is right", "/specs/mainbrace", webuitest.Fields("do", "right", "version", "1")},
		{"a spec that goes", "/specs/mainbrace", webuitest.Fields("do", "remove", "version", "1")},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.NewHouse()
			h.Dry = []string{"orgeat"}
			if strings.Contains(c.path, "start") && c.form.Get("do") == "menu" {
				h.Drinks = h.Drinks[:0]
			}
			isUndone(t, webuitest.PagesOf(t, h), h, c.path, c.form)
		})
	}
}

// So does what changes a record of the stock that is there.
func TestEveryChangeOfTheStockCanBeUndone(t *testing.T) {
	for _, c := range []struct {
		name, path string
		form       url.Values
	}{
		{"a bottle that changes", "/stock/bottle", webuitest.Fields("id", "red", "version", "1", "name", "Red cap", "ingredient", "London dry gin", "size_ml", "1000", "stock", "7")},
		{"a bottle that goes", "/stock/bottle", webuitest.Fields("do", "remove", "id", "red", "version", "1")},
		{"a syrup that goes", "/stock/made", webuitest.Fields("do", "remove", "id", "nut-syrup", "version", "1")},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.Stocked(t)
			isUndone(t, webuitest.PagesOf(t, h), h.House, c.path, c.form)
		})
	}
}

// Only what pages write is taken back, and the way back leads to this house.
func TestUndoRefuses(t *testing.T) {
	pages := webuitest.NewPages(t)
	for _, mark := range []string{"", "spec", "spec x mainbrace", "spec 0 mainbrace", "training 1 x", "out 1 gin"} {
		assert.Equal(t, http.StatusBadRequest, webuitest.Post(pages, "/undo", webuitest.Fields("undo", mark), false).Code, mark)
	}
	assert.Equal(t, http.StatusConflict, webuitest.Post(pages, "/undo", webuitest.Fields("undo", "spec 9 mainbrace"), false).Code)
	assert.Equal(t, http.StatusMethodNotAllowed, webuitest.Get(pages, "/undo", "").Code)
	for _, back := range []string{"//elsewhere.example", "https://elsewhere.example/specs", "javascript:alert(1)", ""} {
		fresh := webuitest.NewPages(t)
		require.Equal(t, http.StatusOK, webuitest.Post(fresh, "/specs/import", webuitest.Fields("do", "all", "as", "text", "text", "Capstan\n2 oz London dry gin\nstir\n"), false).Code)
		w := webuitest.Post(fresh, "/undo", webuitest.Fields("undo", "spec 1 capstan", "back", back), false)
		webuitest.Holds(t, w, http.StatusOK, []string{"1 record is as before.", `<p><a href="/">Go back</a></p>`}, nil)
	}
}
