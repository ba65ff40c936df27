package webui

import (
	"context"
	"html"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// tells asserts on the text of a page, which is too long to be printed.
func tells(t *testing.T, w *httptest.ResponseRecorder, status int, want ...string) {
	t.Helper()
	assert.Equal(t, status, w.Code)
	said := w.Body.String() + html.UnescapeString(w.Body.String())
	for _, s := range want {
		assert.True(t, strings.Contains(said, s), "should hold %q", s)
	}
}

func lacks(t *testing.T, w *httptest.ResponseRecorder, not ...string) {
	t.Helper()
	for _, s := range not {
		assert.False(t, strings.Contains(w.Body.String(), s), "should not hold %q", s)
	}
}

func fields(pairs ...string) url.Values {
	v := url.Values{}
	for i := 0; i < len(pairs); i += 2 {
		v.Add(pairs[i], pairs[i+1])
	}
	return v
}

// keptSpec is a spec as the store has it.
func keptSpec(t *testing.T, h *fakeHouse, slug string) house.Kept[house.Spec] {
	t.Helper()
	k, err := house.Get[house.Spec](context.Background(), h.Store(), slug)
	require.NoError(t, err)
	return k
}

const berth = "Quiet Berth\n2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"

func TestADraftIsSaved(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	w := post(p, "/", fields("text", berth, "save", "save"), false)
	tells(t, w, http.StatusOK, "<strong>Saved</strong> as version 1", `href="/specs/quiet-berth"`, `name="spec" value="quiet-berth"`, `name="version" value="1"`, berth)
	assert.Equal(t, "london-dry-gin", keptSpec(t, h, "quiet-berth").Item.Pours[0].Ingredient)
	tells(t, get(p, "/specs/quiet-berth", ""), http.StatusOK, "added by bar")

	// The same once more is nothing; changed, it is the next version.
	tells(t, post(p, "/", fields("text", berth, "save", "save", "spec", "quiet-berth", "version", "1"), false), http.StatusOK, "There is nothing to save")
	more := strings.Replace(berth, "1/2 oz simple", "3/4 oz simple", 1)
	tells(t, post(p, "/", fields("text", more, "save", "save", "spec", "quiet-berth", "version", "1"), true), http.StatusOK, "as version 2", `id="save" data-hx-swap-oob`)
	tells(t, get(p, "/specs/quiet-berth", ""), http.StatusOK, "simple syrup from ½ oz to ¾ oz")

	lacks(t, post(p, "/", fields("text", berth), true), `id="save"`)
	require.Equal(t, int64(2), keptSpec(t, h, "quiet-berth").Version)
}

func TestWhatStandsInTheWayOfSaving(t *testing.T) {
	changed := strings.Replace(goodDraft, "1/2 oz simple syrup", "3/4 oz simple syrup\n1/2 oz orgeat", 1)
	nameless := strings.TrimPrefix(berth, "Quiet Berth\n")
	for _, c := range []struct {
		name   string
		form   url.Values
		status int
		want   []string
		not    []string
	}{
		{"a draft with faults", fields("text", "2 oz gni", "save", "save"), 422, []string{"A draft with faults is not kept", "2 oz gni"}, nil},
		{"no draft", fields("text", "", "save", "save"), 422, []string{"There is no draft yet"}, nil},
		{"nothing to weigh", fields("text", "Weightless\n2 oz gin\nstir", "save", "save"), 422, []string{"A draft with faults is not kept"}, nil},
		{"no name", fields("text", nameless, "save", "save"), 422, []string{"It needs a name to be saved", `name="called"`}, nil},
		{"a name that is taken", fields("text", changed, "save", "save"), 409, []string{"Halyard Sour is in the specs already", "at version 1, by Ines, 1 Apr 2026, 16:00 UTC",
			"simple syrup from ½ oz to ¾ oz", "½ oz orgeat added", "Replace it, as version 2", `name="seen" value="1"`, "Or keep it under another name"}, []string{"Saved"}},
		{"a name that is taken, to a script", fields("text", changed, "save", "save"), 200, []string{"in the specs already", `id="save" data-hx-swap-oob`}, nil},
		{"another name that is taken", fields("text", changed, "save", "save", "called", "Mainbrace"), 409, []string{"Mainbrace is in the specs already", "Mainbrace\n2 oz gin"}, nil},
		{"opened from another", fields("text", berth, "save", "save", "spec", "halyard-sour", "version", "1"), 409,
			[]string{"Is this still Halyard Sour?", "the name from Halyard Sour to Quiet Berth", `name="called" value="Quiet Berth"`}, nil},
		{"nothing known is asked", fields("text", berth, "save", "burn"), 400, []string{"could not be read"}, nil},
		{"replace nothing", fields("text", berth, "save", "replace"), 400, []string{"could not be read"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := newFakeHouse()
			w := post(pagesOf(t, h), "/", c.form, strings.HasSuffix(c.name, "script"))
			tells(t, w, c.status, c.want...)
			lacks(t, w, c.not...)
			changes, err := h.Store().Changes(t.Context(), 0, 100)
			require.NoError(t, err)
			assert.Len(t, changes, 4, "nothing was written")
		})
	}
}

func TestReplacingAndRenaming(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	k := keptSpec(t, h, "halyard-sour")
	k.Item.Note = "lemon twist"
	_, err := h.Store().Write(t.Context(), opening, house.Put(k.Item, 1))
	require.NoError(t, err)

	changed := strings.Replace(goodDraft, "1/2 oz", "3/4 oz", 1)
	w := post(p, "/", fields("text", changed, "save", "replace", "over", "halyard-sour", "seen", "2", "called", "Ignored"), false)
	tells(t, w, http.StatusOK, "as version 3")
	lacks(t, w, "Ignored")
	assert.Equal(t, "lemon twist", keptSpec(t, h, "halyard-sour").Item.Note, "the note stays")

	// Opened from one, with another name now: that one renamed, or a new one.
	renamed := strings.Replace(changed, "Halyard Sour", "Jackstay Sour", 1)
	tells(t, post(p, "/", fields("text", renamed, "save", "replace", "over", "halyard-sour", "seen", "3", "spec", "halyard-sour", "version", "3"), false), 200, "as version 4", "Jackstay Sour</a>")
	tells(t, post(p, "/", fields("text", berth, "save", "save", "called", "Quiet Berth", "spec", "halyard-sour", "version", "4"), false), 200, "as version 1")
	tells(t, post(p, "/", fields("text", strings.TrimPrefix(berth, "Quiet Berth\n"), "save", "save", "called", "  Slack   Water "), false), 200, "Slack Water</a>", "Slack Water\n2 oz gin")
	tells(t, post(p, "/", fields("text", strings.TrimPrefix(berth, "Quiet Berth\n"), "save", "save", "called", "Neap"), true), 200, `<input type="hidden" value="Neap`)

	// The names of pages are no addresses of specs.
	tells(t, post(p, "/", fields("text", strings.Replace(berth, "Quiet Berth", "Print", 1), "save", "save"), false), 200, `href="/specs/print-spec"`)
}

// Two people open one version; who comes second is told and loses nothing.
func TestSavingOverAnothersChange(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	first, second := strings.Replace(goodDraft, "1/2 oz", "3/4 oz", 1), strings.Replace(goodDraft, "1/2 oz", "1 oz", 1)
	tells(t, post(p, "/", fields("text", first, "save", "save", "spec", "halyard-sour", "version", "1"), false), 200, "as version 2")
	w := post(p, "/", fields("text", second, "save", "save", "spec", "halyard-sour", "version", "1"), false)
	tells(t, w, http.StatusConflict, "Halyard Sour has changed meanwhile", "You had version 1; bar made version 2", "simple syrup from ¾ oz to 1 oz", `name="seen" value="2"`, second)
	assert.Equal(t, 0.75, keptSpec(t, h, "halyard-sour").Item.Pours[2].Amount)
	tells(t, post(p, "/", fields("text", second, "save", "replace", "over", "halyard-sour", "seen", "2"), false), 200, "as version 3")

	// Someone removed it: the draft can be kept anew.
	_, err := h.Store().Write(t.Context(), opening, house.Remove(house.Ref{Kind: house.KindSpec, ID: "halyard-sour"}, 3))
	require.NoError(t, err)
	w = post(p, "/", fields("text", first, "save", "save", "spec", "halyard-sour", "version", "3"), false)
	tells(t, w, 422, "<strong>Not saved.</strong> It is gone", first)
	lacks(t, w, `name="spec"`)
	tells(t, post(p, "/", fields("text", first, "save", "save"), false), 200, "as version 5")
}

func TestASpecIsOpenedOnTheBench(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	changed := strings.Replace(goodDraft, "1/2 oz", "3/4 oz", 1)
	post(p, "/", fields("text", changed, "save", "save", "spec", "halyard-sour", "version", "1"), false)
	tells(t, get(p, "/?spec=halyard-sour", ""), 200, "¾ oz simple syrup\nshake, up\n</textarea>", `name="version" value="2"`, "version 2, that you have on the bench")
	tells(t, get(p, "/?spec=halyard-sour&at=1", ""), 200, "½ oz simple syrup\nshake, up\n</textarea>", `name="version" value="2"`)
	tells(t, get(p, "/?spec=halyard-sour&at=7", ""), 404)
	tells(t, get(p, "/?spec=nowhere", ""), 404)

	// What is linked to is not kept by the link.
	w := get(p, "/?"+fields("text", berth, "save", "save").Encode(), "")
	tells(t, w, 200, "Quiet Berth")
	lacks(t, w, "Saved")
	_, err := house.Get[house.Spec](t.Context(), h.Store(), "quiet-berth")
	assert.ErrorIs(t, err, house.ErrNotFound)
}

// A store that takes no writes is told of in its own words.
func TestAStoreThatIsClosed(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	require.NoError(t, h.Store().Close())
	w := post(p, "/", fields("text", berth, "save", "save"), false)
	tells(t, w, http.StatusInternalServerError, "Something broke behind the bar")
}
