package webui

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
)

// onSale is a fake house with prices for gin, lemon and falernum.
func onSale(t *testing.T) *fakeHouse {
	t.Helper()
	h := newFakeHouse()
	price := func(id string, v float64, currency string) house.Edit {
		return house.Put(house.Bottle{ID: id, Name: id, Ingredient: id, SizeML: 700, Stock: 1, Price: &v, Currency: currency}, 0)
	}
	_, err := h.Store().Write(t.Context(), opening, price("london-dry-gin", 21, "EUR"), price("lemon-juice", 7, "EUR"), price("falernum", 14, "EUR"))
	require.NoError(t, err)
	return h
}

func TestThePageOfASpec(t *testing.T) {
	p := pagesOf(t, onSale(t))
	tells(t, get(p, "/specs/mainbrace", ""), 200, "<h1>Mainbrace</h1>", "Tropical; reads as Sour · version 1", "2 oz</span> London dry gin", "1.77\u00a0EUR", "77\u00a0%",
		"<strong>2.29\u00a0EUR</strong>", `role="img"`, "94 of 100, balanced", "None is recorded for these pours", "It is not marked. No spec of the house is marked yet.",
		"Mainbrace\n2 oz London dry gin\n¾ oz lemon juice\n½ oz falernum\nshake, up\n</pre>", "added by Ines", `datetime="2026-04-01T16:00:00Z"`, "1 Apr 2026, 16:00 UTC",
		`href="/?spec=mainbrace"`, "/specs/mainbrace/batch", "/specs/mainbrace/card", "/specs/export?as=json-ld&spec=mainbrace", footLine)
	w := get(p, "/specs/nutcracker", "")
	tells(t, w, 200, "at least 2.00\u00a0EUR", "No price for egg white and orgeat.", "Raw egg can carry Salmonella", "tree nuts (orgeat)", "<td class=\"n\">—</td>")
	lacks(t, get(p, "/specs/mainbrace", ""), "Take the last change back", "at least")
	tells(t, get(p, "/specs/nowhere", ""), 404)
	tells(t, get(p, "/specs/Not%20A%20Slug", ""), 404)
	tells(t, get(pagesOf(t, newFakeHouse()), "/specs/mainbrace", ""), 200, "No bottle has a price yet.")
}

func TestThePourCost(t *testing.T) {
	p := pagesOf(t, onSale(t))
	tells(t, get(p, "/specs/mainbrace?price=11,45", ""), 200, "<strong>20.0\u00a0%</strong> of that price", `value="11,45"`)
	tells(t, get(p, "/specs/nutcracker?price=10", ""), 200, "<strong>at least 20.0\u00a0%</strong>")
	for _, typed := range []string{"ten", "0", "-3", "1e99", "NaN"} {
		tells(t, get(p, "/specs/mainbrace?price="+typed, ""), 200, "Write the price with digits", `value="`+typed+`"`)
	}
}

// Two currencies price nothing, and the page says which bottle to mend.
func TestTwoCurrencies(t *testing.T) {
	h := onSale(t)
	price := 9.0
	_, err := h.Store().Write(t.Context(), opening, house.Put(house.Bottle{ID: "dock-orgeat", Name: "Dock orgeat", Ingredient: "orgeat", SizeML: 700, Price: &price, Currency: "GBP"}, 0))
	require.NoError(t, err)
	p := pagesOf(t, h)
	for _, path := range []string{"/specs/mainbrace", "/specs", "/specs/mainbrace/batch"} {
		tells(t, get(p, path, ""), 200, "Bottle dock-orgeat: it is priced in GBP and others in EUR; use one currency.")
	}
}

// act presses a button on the page of a spec and follows where it leads.
func act(t *testing.T, p http.Handler, slug string, pairs ...string) string {
	t.Helper()
	w := post(p, "/specs/"+slug, fields(pairs...), false)
	require.Equal(t, http.StatusSeeOther, w.Code, w.Body.String())
	return get(p, w.Header().Get("Location"), "").Body.String()
}

func TestRightIsMarkedAndUnmarked(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	body := act(t, p, "mainbrace", "do", "right", "version", "1")
	assert.Contains(t, body, "Version 1 is marked as right.")
	assert.Contains(t, body, "One spec of the house is marked.")
	mark, err := house.Get[house.Right](t.Context(), h.Store(), "mainbrace")
	require.NoError(t, err)
	assert.Equal(t, house.Right{Spec: "mainbrace", SpecVersion: 1}, mark.Item)

	// The mark stays with the version that was tasted.
	k := keptSpec(t, h, "mainbrace")
	k.Item.Pours[0].Amount = 1.5
	_, err = h.Store().Write(t.Context(), opening, house.Put(k.Item, 1))
	require.NoError(t, err)
	tells(t, get(p, "/specs/mainbrace", ""), 200, "Version 1 is marked as right; this is version 2.", "Mark version 2 as right", "Take the mark off")
	tells(t, post(p, "/specs/mainbrace", fields("do", "right", "version", "1"), false), http.StatusConflict, "It is at version 2 now, and version 1 was on the page")
	assert.Contains(t, act(t, p, "mainbrace", "do", "right", "version", "2"), "Version 2 is marked as right.")
	assert.Contains(t, act(t, p, "mainbrace", "do", "unright", "version", "2"), "It is not marked.")
	assert.Contains(t, act(t, p, "mainbrace", "do", "unright", "version", "2"), "It is not marked.")
}

func TestChangesAreTakenBack(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	post(p, "/", fields("text", strings.Replace(goodDraft, "1/2 oz", "3/4 oz", 1), "save", "replace", "over", "halyard-sour", "seen", "1"), false)
	tells(t, get(p, "/specs/halyard-sour", ""), 200, "Take the last change back", `href="/?at=1&spec=halyard-sour"`)
	body := act(t, p, "halyard-sour", "do", "undo", "version", "2")
	assert.Contains(t, body, "The last change is taken back.")
	assert.Contains(t, body, "simple syrup from ¾ oz to ½ oz")
	assert.Equal(t, 0.5, keptSpec(t, h, "halyard-sour").Item.Pours[2].Amount)
	tells(t, post(p, "/specs/halyard-sour", fields("do", "undo", "version", "2"), false), http.StatusConflict, "Nothing was changed.", "read it again")

	assert.Contains(t, act(t, p, "halyard-sour", "do", "note", "version", "3", "note", "lemon twist\r\nsmall coupe"), "lemon twist\nsmall coupe</p>")
	w := post(p, "/specs/halyard-sour", fields("do", "note", "version", "3", "note", "orange twist"), false)
	tells(t, w, http.StatusConflict, "orange twist</textarea>", "lemon twist\nsmall coupe</p>")
	tells(t, post(p, "/specs/halyard-sour", fields("do", "note", "version", "4", "note", strings.Repeat("x", house.MaxNote+1)), false), 422, "Note is longer")
}

func TestASpecIsRemovedAndPutBack(t *testing.T) {
	h := newFakeHouse()
	p := pagesOf(t, h)
	act(t, p, "spindrift", "do", "right", "version", "1")
	w := post(p, "/specs/spindrift", fields("do", "remove", "version", "1"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	w = get(p, w.Header().Get("Location"), "")
	tells(t, w, http.StatusGone, "<h1>Spindrift</h1>", "Removed from the specs", "Put it back", "removed by bar")
	_, err := house.Get[house.Right](t.Context(), h.Store(), "spindrift")
	assert.ErrorIs(t, err, house.ErrNotFound, "its mark goes with it")
	lacks(t, get(p, "/specs", ""), "Spindrift")
	tells(t, post(p, "/specs/spindrift", fields("do", "remove", "version", "2"), false), http.StatusConflict, "There is no such record")
	tells(t, get(p, "/specs/spindrift/batch", ""), 404)
	tells(t, get(p, "/?spec=spindrift", ""), 200, "Spindrift\n1 oz London dry gin")
	assert.Contains(t, act(t, p, "spindrift", "do", "undo", "version", "2"), "Version 3")
	tells(t, get(p, "/specs", ""), 200, "Spindrift")
}

func TestFormsOfASpecThatMakeNoSense(t *testing.T) {
	p := newPages(t)
	for _, form := range []url.Values{fields("do", "burn", "version", "1"), fields("do", "remove"), fields("do", "remove", "version", "x"), fields("version", "1")} {
		tells(t, post(p, "/specs/mainbrace", form, false), 400, "could not be read")
	}
	tells(t, post(p, "/specs/nowhere", fields("do", "remove", "version", "1"), false), 404)
}

// A spec of something that the house no longer makes keeps its page.
func TestASpecThatCannotBePoured(t *testing.T) {
	h := newFakeHouse()
	_, err := h.Store().Write(t.Context(), opening, house.Put(house.Spec{ID: "lost", Name: "Lost", Method: "stir", Service: "up",
		Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "our-cordial", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	p := pagesOf(t, h)
	tells(t, get(p, "/specs/lost", ""), 200, "<h1>Lost</h1>", `there is no ingredient "our-cordial"`, "2 oz</span> London dry gin", "Lost\n2 oz london-dry-gin\n1 oz our-cordial\nstir, up")
	tells(t, get(p, "/?spec=lost", ""), 422, "1 oz our-cordial", "Unknown ingredient")
	tells(t, get(p, "/specs/lost/batch", ""), 422, "our-cordial")
	tells(t, get(p, "/specs/export?as=text", ""), 422, "Spec lost: pours[1]", "take CSV")
	tells(t, get(p, "/specs/export?as=csv", ""), 200, "our-cordial")
}

func TestHistoryInWords(t *testing.T) {
	shelf := newFakeHouse().Shelf()
	was := house.Spec{ID: "x", Name: "X", Method: "shake", Service: "up", Note: "a", Pours: []house.Pour{
		{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 0.75, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 1, Unit: "dash"}}}
	is := house.Spec{ID: "x", Name: "Y", Method: "stir", Service: "rocks", Pours: []house.Pour{
		{Ingredient: "lemon-juice", Amount: 22.5, Unit: "ml"}, {Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "gone", Amount: 1, Unit: "piece"}}}
	assert.Equal(t, []string{"the name from X to Y", "lemon juice from ¾ oz to 22.5 ml", "1 gone added", "1 dash lemon juice taken out", "the order of the pours",
		"from shake to stir", "served rocks in place of up", "the note taken out"}, specChanges(&was, &is, shelf))
	assert.Empty(t, specChanges(&was, &was, shelf))
	assert.Equal(t, "2 Jan 2027, 23:04 UTC", moment(time.Date(2027, 1, 3, 0, 4, 0, 0, time.FixedZone("", 3600))))
	for _, action := range []house.Action{house.Added, house.Changed, house.Removed, house.Undone} {
		assert.NotEmpty(t, actionWords[action])
	}
}

// A cover is held against the drink that it stands for.
func TestWhatACoverCosts(t *testing.T) {
	h := onSale(t)
	p := pagesOf(t, h)
	text := "X\n2 oz gin\n1/2 oz orgeat\nshake, up"
	tells(t, post(p, "/", fields("text", text, "missing", "orgeat"), false), 200, "not known: no price for orgeat and sesame orgeat.")
	lacks(t, post(newPages(t), "/", fields("text", text, "missing", "orgeat"), false), "to pour,", "not known")
	for id, v := range map[string]float64{"orgeat": 7, "sesame-orgeat": 10.5} {
		_, err := h.Store().Write(t.Context(), opening, house.Put(house.Bottle{ID: id, Name: id, Ingredient: id, SizeML: 700, Price: &v, Currency: "EUR"}, 0))
		require.NoError(t, err)
	}
	tells(t, post(p, "/", fields("text", text, "missing", "orgeat"), false), 200, "Costs 2.00\u00a0EUR to pour, 0.07\u00a0EUR more than the drink itself.")
}
