package webui_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/access"
	"counterpour/webui/webuitest"
)

// The floor marks, tastes and trains; what the house keeps is a lead's to
// change, and nothing is written for who may not.
func TestWhatARoleMayDo(t *testing.T) {
	sends := func(pages http.Handler, role access.Role, path string, form url.Values) *httptest.ResponseRecorder {
		r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, r.WithContext(access.With(r.Context(), access.Person{Name: "Wren", Role: role})))
		return w
	}
	for path, form := range map[string]url.Values{
		"/stock/bottle":       {"name": {"Dock gin"}, "category": {"London dry gin"}, "size": {"700"}, "stock": {"1"}},
		"/stock/made":         {"name": {"Dock syrup"}},
		"/stock/undo":         {"id": {"x"}},
		"/stock/label":        {"of": {"orgeat"}, "none": {"yes"}, "by": {"Wren"}},
		"/stock/import":       {"do": {"take"}, "text": {"name,ingredient,size_ml\nDock gin,London dry gin,700"}},
		"/specs/import":       {"text": {webuitest.GoodDraft}},
		"/specs/halyard-sour": {"do": {"remove"}, "version": {"1"}},
	} {
		h := webuitest.NewHouse()
		before, err := h.Store().List(t.Context())
		require.NoError(t, err)
		w := sends(webuitest.PagesOf(t, h), access.Floor, path, form)
		assert.Equal(t, http.StatusForbidden, w.Code, path)
		assert.Contains(t, w.Body.String(), "Only a lead may do that", path)
		after, err := h.Store().List(t.Context())
		require.NoError(t, err)
		assert.Equal(t, before, after, path)
		assert.NotEqual(t, http.StatusForbidden, sends(webuitest.PagesOf(t, h), access.Lead, path, form).Code, path)
	}
	h := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, h)
	kept := sends(pages, access.Floor, "/stock/bottle", url.Values{"name": {"Dock gin"}, "ingredient": {"London dry gin"}, "size_ml": {"700"}, "note": {"left of the till"}})
	webuitest.Says(t, kept, []string{`value="Dock gin"`, "left of the till", "What you typed is still here"}, nil)
	kept = sends(pages, access.Floor, "/stock/import", url.Values{"do": {"take"}, "text": {"name,ingredient,size_ml\nDock gin,London dry gin,700"}})
	webuitest.Says(t, kept, []string{"Dock gin,London dry gin,700", "1 bottle ready"}, nil)
	read := sends(pages, access.Floor, "/stock/import", url.Values{"do": {"read"}, "text": {"Dock gin 70cl 2 btl"}})
	assert.Equal(t, http.StatusForbidden, read.Code, "a preview that nothing can follow")
	webuitest.Says(t, read, []string{"Only a lead may do that", "Dock gin 70cl 2 btl"}, nil)
	w := sends(pages, access.Floor, "/", url.Values{"text": {"New Sour\n" + strings.SplitN(webuitest.GoodDraft, "\n", 2)[1]}, "save": {"save"}})
	assert.Contains(t, w.Body.String(), "Ask a lead to change this")
	_, err := house.Get[house.Spec](t.Context(), h.Store(), "new-sour")
	assert.ErrorIs(t, err, house.ErrNotFound)
	assert.Equal(t, http.StatusSeeOther, sends(pages, access.Floor, "/board", url.Values{"out": {"falernum"}}).Code)
	assert.Equal(t, []string{"falernum"}, h.Dry)
}

// Nobody is shown a button that would be refused.
func TestTheFloorSeesNoButtonThatIsRefused(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Bottle{ID: "dock-gin", Name: "Dock gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1}, 0))
	require.NoError(t, err)
	spec, err := house.Get[house.Spec](t.Context(), h.Store(), "spindrift")
	require.NoError(t, err)
	_, err = h.Store().Write(t.Context(), webuitest.Opening, house.Remove(spec.Item.Ref(), spec.Version))
	require.NoError(t, err)
	pages := webuitest.PagesOf(t, h)
	sees := func(role access.Role, path string) string {
		r := httptest.NewRequest(http.MethodGet, path, nil)
		w := httptest.NewRecorder()
		pages.ServeHTTP(w, r.WithContext(access.With(r.Context(), access.Person{Name: "Wren", Role: role})))
		require.Equal(t, http.StatusOK, w.Code, path)
		return w.Body.String()
	}
	for path, buttons := range map[string][]string{
		"/stock":                    {"/stock/import", "Add a bottle"},
		"/stock/bottle?id=dock-gin": {"Save it", `value="remove"`, "/stock/undo"},
		"/stock/made":               {"Save it"},
		"/stock/import":             {"Read it", `name="file"`},
		"/specs":                    {"/specs/import"},
		"/specs?list=removed":       {`value="undo"`},
		"/specs/import":             {"Read it"},
		"/specs/halyard-sour":       {`value="remove"`, `value="note"`, `value="right"`},
		"/bench":                    {`value="save"`},
	} {
		for _, button := range buttons {
			assert.True(t, strings.Contains(sees(access.Lead, path), button), "a lead has %s on %s", button, path)
			assert.False(t, strings.Contains(sees(access.Floor, path), button), "the floor has no %s on %s", button, path)
		}
	}
	assert.Contains(t, sees(access.Floor, "/stock"), "ran out", "the floor marks what ran out")
}
