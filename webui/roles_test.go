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
		"/stock/import":       {"text": {"name,ingredient,size_ml\nDock gin,London dry gin,700"}},
		"/specs/import":       {"text": {webuitest.GoodDraft}},
		"/specs/halyard-sour": {"do": {"remove"}, "version": {"1"}},
	} {
		h := webuitest.NewHouse()
		before, err := h.Store().List(t.Context())
		require.NoError(t, err)
		w := sends(webuitest.PagesOf(t, h), access.Floor, path, form)
		assert.Equal(t, http.StatusForbidden, w.Code, path)
		assert.Contains(t, w.Body.String(), "That is for a lead", path)
		after, err := h.Store().List(t.Context())
		require.NoError(t, err)
		assert.Equal(t, before, after, path)
		assert.NotEqual(t, http.StatusForbidden, sends(webuitest.PagesOf(t, h), access.Lead, path, form).Code, path)
	}
	h := webuitest.NewHouse()
	pages := webuitest.PagesOf(t, h)
	w := sends(pages, access.Floor, "/", url.Values{"text": {"New Sour\n" + strings.SplitN(webuitest.GoodDraft, "\n", 2)[1]}, "save": {"save"}})
	assert.Contains(t, w.Body.String(), "Ask a lead to change this")
	_, err := house.Get[house.Spec](t.Context(), h.Store(), "new-sour")
	assert.ErrorIs(t, err, house.ErrNotFound)
	assert.Equal(t, http.StatusSeeOther, sends(pages, access.Floor, "/board", url.Values{"out": {"falernum"}}).Code)
	assert.Equal(t, []string{"falernum"}, h.Dry)
}
