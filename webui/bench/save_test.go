package bench_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/webuitest"
)

const berth = "Quiet Berth\n2 oz gin\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, up"

func TestADraftIsSaved(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	w := webuitest.Post(p, "/", webuitest.Fields("text", berth, "save", "save"), false)
	webuitest.Tells(t, w, http.StatusOK, "<strong>Saved</strong> as version 1", `href="/specs/quiet-berth"`, `name="spec" value="quiet-berth"`, `name="version" value="1"`, berth)
	assert.Equal(t, "london-dry-gin", webuitest.KeptSpec(t, h, "quiet-berth").Item.Pours[0].Ingredient)
	webuitest.Tells(t, webuitest.Get(p, "/specs/quiet-berth", ""), http.StatusOK, "added by bar")

	// The same once more is nothing; changed, it is the next version.
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", berth, "save", "save", "spec", "quiet-berth", "version", "1"), false), http.StatusOK, "There is nothing to save")
	more := strings.Replace(berth, "1/2 oz simple", "3/4 oz simple", 1)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", more, "save", "save", "spec", "quiet-berth", "version", "1"), true), http.StatusOK, "as version 2", `id="save" data-hx-swap-oob`)
	webuitest.Tells(t, webuitest.Get(p, "/specs/quiet-berth", ""), http.StatusOK, "simple syrup from ½ oz to ¾ oz")

	webuitest.Lacks(t, webuitest.Post(p, "/", webuitest.Fields("text", berth), true), `id="save"`)
	require.Equal(t, int64(2), webuitest.KeptSpec(t, h, "quiet-berth").Version)
}

func TestWhatStandsInTheWayOfSaving(t *testing.T) {
	changed := strings.Replace(webuitest.GoodDraft, "1/2 oz simple syrup", "3/4 oz simple syrup\n1/2 oz orgeat", 1)
	nameless := strings.TrimPrefix(berth, "Quiet Berth\n")
	for _, c := range []struct {
		name   string
		form   url.Values
		status int
		want   []string
		not    []string
	}{
		{"a draft with faults", webuitest.Fields("text", "2 oz gnx", "save", "save"), 422, []string{"A draft with faults is not saved", "2 oz gnx"}, nil},
		{"no draft", webuitest.Fields("text", "", "save", "save"), 422, []string{"There is no draft yet"}, nil},
		{"nothing to weigh", webuitest.Fields("text", "Weightless\n2 oz gin\nstir", "save", "save"), 422, []string{"A draft with faults is not saved"}, nil},
		{"no name", webuitest.Fields("text", nameless, "save", "save"), 422, []string{"It needs a name to be saved", `name="called"`}, nil},
		{"a name that is taken", webuitest.Fields("text", changed, "save", "save"), 409, []string{"Halyard Sour is in the specs already", "at version 1, by Ines, 1 Apr 2026, 16:00 UTC",
			"simple syrup from ½ oz to ¾ oz", "½ oz orgeat added", "Replace it, as version 2", `name="seen" value="1"`, "Or keep it under another name"}, []string{"Saved"}},
		{"a name that is taken, to a script", webuitest.Fields("text", changed, "save", "save"), 200, []string{"in the specs already", `id="save" data-hx-swap-oob`}, nil},
		{"another name that is taken", webuitest.Fields("text", changed, "save", "save", "called", "Mainbrace"), 409, []string{"Mainbrace is in the specs already", "Mainbrace\n2 oz gin"}, nil},
		{"opened from another", webuitest.Fields("text", berth, "save", "save", "spec", "halyard-sour", "version", "1"), 409,
			[]string{"Is this still Halyard Sour?", "the name from Halyard Sour to Quiet Berth", `name="called" value="Quiet Berth"`}, nil},
		{"nothing known is asked", webuitest.Fields("text", berth, "save", "burn"), 400, []string{"could not be read"}, nil},
		{"replace nothing", webuitest.Fields("text", berth, "save", "replace"), 400, []string{"could not be read"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.NewHouse()
			w := webuitest.Post(webuitest.PagesOf(t, h), "/", c.form, strings.HasSuffix(c.name, "script"))
			webuitest.Tells(t, w, c.status, c.want...)
			webuitest.Lacks(t, w, c.not...)
			changes, err := h.Store().Changes(t.Context(), 0, 100)
			require.NoError(t, err)
			assert.Len(t, changes, 4, "nothing was written")
		})
	}
}

func TestReplacingAndRenaming(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	k := webuitest.KeptSpec(t, h, "halyard-sour")
	k.Item.Note = "lemon twist"
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(k.Item, 1))
	require.NoError(t, err)

	changed := strings.Replace(webuitest.GoodDraft, "1/2 oz", "3/4 oz", 1)
	w := webuitest.Post(p, "/", webuitest.Fields("text", changed, "save", "replace", "over", "halyard-sour", "seen", "2", "called", "Ignored"), false)
	webuitest.Tells(t, w, http.StatusOK, "as version 3")
	webuitest.Lacks(t, w, "Ignored")
	assert.Equal(t, "lemon twist", webuitest.KeptSpec(t, h, "halyard-sour").Item.Note, "the note stays")

	// Opened from one, with another name now: that one renamed, or a new one.
	renamed := strings.Replace(changed, "Halyard Sour", "Jackstay Sour", 1)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", renamed, "save", "replace", "over", "halyard-sour", "seen", "3", "spec", "halyard-sour", "version", "3"), false), 200, "as version 4", "Jackstay Sour</a>")
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", berth, "save", "save", "called", "Quiet Berth", "spec", "halyard-sour", "version", "4"), false), 200, "as version 1")
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", strings.TrimPrefix(berth, "Quiet Berth\n"), "save", "save", "called", "  Slack   Water "), false), 200, "Slack Water</a>", "Slack Water\n2 oz gin")
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", strings.TrimPrefix(berth, "Quiet Berth\n"), "save", "save", "called", "Neap"), true), 200, `<input type="hidden" value="Neap`)

	// The names of pages are no addresses of specs.
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", strings.Replace(berth, "Quiet Berth", "Print", 1), "save", "save"), false), 200, `href="/specs/print-spec"`)
}

// Two people open one version; who comes second is told and loses nothing.
func TestSavingOverAnothersChange(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	first, second := strings.Replace(webuitest.GoodDraft, "1/2 oz", "3/4 oz", 1), strings.Replace(webuitest.GoodDraft, "1/2 oz", "1 oz", 1)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", first, "save", "save", "spec", "halyard-sour", "version", "1"), false), 200, "as version 2")
	w := webuitest.Post(p, "/", webuitest.Fields("text", second, "save", "save", "spec", "halyard-sour", "version", "1"), false)
	webuitest.Tells(t, w, http.StatusConflict, "Halyard Sour has changed meanwhile", "You had version 1; bar made version 2", "simple syrup from ¾ oz to 1 oz", `name="seen" value="2"`, second)
	assert.Equal(t, 0.75, webuitest.KeptSpec(t, h, "halyard-sour").Item.Pours[2].Amount)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", second, "save", "replace", "over", "halyard-sour", "seen", "2"), false), 200, "as version 3")

	// Someone removed it: the draft can be kept anew.
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Remove(house.Ref{Kind: house.KindSpec, ID: "halyard-sour"}, 3))
	require.NoError(t, err)
	w = webuitest.Post(p, "/", webuitest.Fields("text", first, "save", "save", "spec", "halyard-sour", "version", "3"), false)
	webuitest.Tells(t, w, 422, "<strong>Not saved.</strong> It is gone", first)
	webuitest.Lacks(t, w, `name="spec"`)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", first, "save", "save"), false), 200, "as version 5")
}

func TestASpecIsOpenedOnTheBench(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	changed := strings.Replace(webuitest.GoodDraft, "1/2 oz", "3/4 oz", 1)
	webuitest.Post(p, "/", webuitest.Fields("text", changed, "save", "save", "spec", "halyard-sour", "version", "1"), false)
	webuitest.Tells(t, webuitest.Get(p, "/?spec=halyard-sour", ""), 200, "¾ oz simple syrup\nshake, up\n</textarea>", `name="version" value="2"`, "version 2, that you have on the bench")
	webuitest.Tells(t, webuitest.Get(p, "/?spec=halyard-sour&at=1", ""), 200, "½ oz simple syrup\nshake, up\n</textarea>", `name="version" value="2"`)
	webuitest.Tells(t, webuitest.Get(p, "/?spec=halyard-sour&at=7", ""), 404)
	webuitest.Tells(t, webuitest.Get(p, "/?spec=nowhere", ""), 404)

	// What is linked to is not kept by the link.
	w := webuitest.Get(p, "/?"+webuitest.Fields("text", berth, "save", "save").Encode(), "")
	webuitest.Tells(t, w, 200, "Quiet Berth")
	webuitest.Lacks(t, w, "Saved")
	_, err := house.Get[house.Spec](t.Context(), h.Store(), "quiet-berth")
	assert.ErrorIs(t, err, house.ErrNotFound)
}

// A store that takes no writes is told of in its own words.
func TestAStoreThatIsClosed(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	require.NoError(t, h.Store().Close())
	w := webuitest.Post(p, "/", webuitest.Fields("text", berth, "save", "save"), false)
	webuitest.Tells(t, w, http.StatusInternalServerError, "Something broke behind the bar")
}

// A spec in ounces opens in millilitres in a house that pours these, and saving it unchanged keeps
// it as it was written; only the pour that is changed is kept in the other unit.
func TestASpecOpensInTheUnitsOfTheHouse(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Units: measure.Metric}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	webuitest.Holds(t, webuitest.Get(p, "/bench?spec=halyard-sour", ""), http.StatusOK, []string{"60 ml London dry gin", "22.5 ml lemon juice", "15 ml simple syrup", `placeholder="60 ml London dry gin`}, nil)

	opened := "Halyard Sour\n60 ml London dry gin\n22.5 ml lemon juice\n15 ml simple syrup\nshake, up"
	was := webuitest.KeptSpec(t, h, "halyard-sour")
	webuitest.Post(p, "/", webuitest.Fields("text", opened, "save", "save", "spec", "halyard-sour", "version", "1"), false)
	assert.Equal(t, was.Item.Pours[0], webuitest.KeptSpec(t, h, "halyard-sour").Item.Pours[0])

	more := strings.Replace(opened, "15 ml simple", "20 ml simple", 1)
	webuitest.Post(p, "/", webuitest.Fields("text", more, "save", "save", "spec", "halyard-sour", "version", "1"), false)
	now := webuitest.KeptSpec(t, h, "halyard-sour").Item.Pours
	assert.Equal(t, []flavor.Unit{flavor.Ounce, flavor.Ounce, flavor.Millilitre}, []flavor.Unit{now[0].Unit, now[1].Unit, now[2].Unit})
}
