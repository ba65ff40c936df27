package specs_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/part"
	"counterpour/webui/specs"
	"counterpour/webui/webuitest"
	"counterpour/webui/words"
)

func TestThePageOfASpec(t *testing.T) {
	p := webuitest.PagesOf(t, webuitest.OnSale(t))
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace", ""), 200, "<h1>Mainbrace</h1>", "Tropical; reads as Sour · version 1", "2 oz</span> London dry gin", "1.77\u00a0EUR", "77\u00a0%",
		"<strong>2.29\u00a0EUR</strong>", `role="img"`, "94 of 100, balanced", "No allergen is recorded for these pours", "It is not marked. No spec of the house is marked yet.",
		"Mainbrace\n2 oz London dry gin\n¾ oz lemon juice\n½ oz falernum\nshake, up\n</pre>", "added by Ines", `datetime="2026-04-01T16:00:00Z"`, "1 Apr 2026, 16:00 UTC",
		`href="/bench?spec=mainbrace"`, "/specs/mainbrace/batch", "/specs/mainbrace/card", "/specs/export?as=json-ld&spec=mainbrace", webuitest.FootLine)
	w := webuitest.Get(p, "/specs/nutcracker", "")
	webuitest.Tells(t, w, 200, "at least 2.00\u00a0EUR", "No price for egg white and orgeat.", "Raw egg can carry Salmonella", "tree nuts (orgeat)", "<td class=\"n\">—</td>")
	webuitest.Lacks(t, webuitest.Get(p, "/specs/mainbrace", ""), "Take the last change back", "at least")
	webuitest.Tells(t, webuitest.Get(p, "/specs/nowhere", ""), 404)
	webuitest.Tells(t, webuitest.Get(p, "/specs/Not%20A%20Slug", ""), 404)
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, webuitest.NewHouse()), "/specs/mainbrace", ""), 200, "No bottle has a price yet.")
}

func TestThePourCost(t *testing.T) {
	p := webuitest.PagesOf(t, webuitest.OnSale(t))
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace?price=11,45", ""), 200, "<strong>20.0\u00a0%</strong> of that price", `value="11,45"`)
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace?price=11,45+%E2%82%AC", ""), 200, "<strong>20.0\u00a0%</strong> of that price")
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace?price=%2412", ""), 200, "the house reckons in another currency")
	webuitest.Tells(t, webuitest.Get(p, "/specs/nutcracker?price=10", ""), 200, "<strong>at least 20.0\u00a0%</strong>")
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace?price=20+%25", ""), 200, "For that share ask, without tax: <strong>11.46\u00a0EUR</strong>", `value="20 %"`)
	webuitest.Tells(t, webuitest.Get(p, "/specs/nutcracker?price=20%25", ""), 200, "<strong>at least 9.98\u00a0EUR</strong>")
	for _, typed := range []string{"0%25", "101%25", "x%25"} {
		webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace?price="+typed, ""), 200, "Write the share with digits")
	}
	for _, typed := range []string{"ten", "0", "-3", "1e99", "NaN"} {
		webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace?price="+typed, ""), 200, "Write the price with digits", `value="`+typed+`"`)
	}
}

// Two currencies price nothing, and the page says which bottle to mend.
func TestTwoCurrencies(t *testing.T) {
	h := webuitest.OnSale(t)
	price := 9.0
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Bottle{ID: "dock-orgeat", Name: "Dock orgeat", Ingredient: "orgeat", SizeML: 700, Price: &price, Currency: "GBP"}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	for _, path := range []string{"/specs/mainbrace", "/specs", "/specs/mainbrace/batch"} {
		webuitest.Tells(t, webuitest.Get(p, path, ""), 200, "Bottle dock-orgeat: it is priced in GBP and others in EUR; use one currency.")
	}
}

// act presses a button on the page of a spec and follows where it leads.
func act(t *testing.T, p http.Handler, slug string, pairs ...string) string {
	t.Helper()
	w := webuitest.Post(p, "/specs/"+slug, webuitest.Fields(pairs...), false)
	require.Equal(t, http.StatusSeeOther, w.Code, w.Body.String())
	return webuitest.Get(p, w.Header().Get("Location"), "").Body.String()
}

func TestRightIsMarkedAndUnmarked(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	body := act(t, p, "mainbrace", "do", "right", "version", "1")
	assert.Contains(t, body, "Version 1 is marked as right.")
	assert.Contains(t, body, "One spec of the house is marked.")
	mark, err := house.Get[house.Right](t.Context(), h.Store(), "mainbrace")
	require.NoError(t, err)
	assert.Equal(t, house.Right{Spec: "mainbrace", SpecVersion: 1}, mark.Item)

	// The mark stays with the version that was tasted.
	k := webuitest.KeptSpec(t, h, "mainbrace")
	k.Item.Pours[0].Amount = 1.5
	_, err = h.Store().Write(t.Context(), webuitest.Opening, house.Put(k.Item, 1))
	require.NoError(t, err)
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace", ""), 200, "Version 1 is marked as right; this is version 2.", "Mark version 2 as right", "Take the mark off")
	webuitest.Tells(t, webuitest.Post(p, "/specs/mainbrace", webuitest.Fields("do", "right", "version", "1"), false), http.StatusConflict, "It is now at version 2, and you saw version 1")
	assert.Contains(t, act(t, p, "mainbrace", "do", "right", "version", "2"), "Version 2 is marked as right.")
	assert.Contains(t, act(t, p, "mainbrace", "do", "unright", "version", "2"), "It is not marked.")
	assert.Contains(t, act(t, p, "mainbrace", "do", "unright", "version", "2"), "It is not marked.")
}

func TestChangesAreTakenBack(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	webuitest.Post(p, "/", webuitest.Fields("text", strings.Replace(webuitest.GoodDraft, "1/2 oz", "3/4 oz", 1), "save", "replace", "over", "halyard-sour", "seen", "1"), false)
	webuitest.Tells(t, webuitest.Get(p, "/specs/halyard-sour", ""), 200, "Take the last change back", `href="/bench?at=1&spec=halyard-sour"`)
	body := act(t, p, "halyard-sour", "do", "undo", "version", "2")
	assert.Contains(t, body, "The last change is taken back.")
	assert.Contains(t, body, "simple syrup from ¾ oz to ½ oz")
	assert.Equal(t, 0.5, webuitest.KeptSpec(t, h, "halyard-sour").Item.Pours[2].Amount)
	webuitest.Tells(t, webuitest.Post(p, "/specs/halyard-sour", webuitest.Fields("do", "undo", "version", "2"), false), http.StatusConflict, "Nothing was changed.", "read it again")

	assert.Contains(t, act(t, p, "halyard-sour", "do", "note", "version", "3", "note", "lemon twist\r\nsmall coupe"), "lemon twist\nsmall coupe</p>")
	w := webuitest.Post(p, "/specs/halyard-sour", webuitest.Fields("do", "note", "version", "3", "note", "orange twist"), false)
	webuitest.Tells(t, w, http.StatusConflict, "orange twist</textarea>", "lemon twist\nsmall coupe</p>")
	webuitest.Tells(t, webuitest.Post(p, "/specs/halyard-sour", webuitest.Fields("do", "note", "version", "4", "note", strings.Repeat("x", house.MaxNote+1)), false), 422, "Note is longer")
}

// A search that finds nothing offers what may have been meant, on every list.
func TestSearchesOfferWhatMayBeMeant(t *testing.T) {
	p := webuitest.NewPages(t)
	webuitest.Tells(t, webuitest.Get(p, "/specs?q=spindirft", ""), 200, "Did you mean", `<a href="/specs?q=spindrift">spindrift</a>`)
	webuitest.Tells(t, webuitest.Get(p, "/tonight?q=haylard+sour&avoid=milk", ""), 200, "Did you mean", `<a href="/tonight?avoid=milk&amp;q=halyard&#43;sour">halyard sour</a>`)
	webuitest.Lacks(t, webuitest.Get(p, "/tonight?q=halyard", ""), "Did you mean")
	webuitest.Lacks(t, webuitest.Get(p, "/specs?q=zorble", ""), "Did you mean")
}

// What a guest may not have is told to be there, and not as something that no drink holds.
func TestASearchForAGuestTellsWhatIsBarred(t *testing.T) {
	p := webuitest.NewPages(t)
	w := webuitest.Get(p, "/specs?q=halyard&diet=alcohol-free", "")
	webuitest.Tells(t, w, 200, "and not for this guest", `<a href="/specs?q=halyard">`)
	webuitest.Lacks(t, w, "No name and no pour holds")
	webuitest.Lacks(t, w, "Did you mean")
	webuitest.Tells(t, webuitest.Get(p, "/specs?q=zorble&avoid=tree+nuts", ""), 200, "No name and no pour holds")
}

func TestASpecIsRemovedAndPutBack(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	act(t, p, "spindrift", "do", "right", "version", "1")
	w := webuitest.Post(p, "/specs/spindrift", webuitest.Fields("do", "remove", "version", "1"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	webuitest.Tells(t, webuitest.Get(p, w.Header().Get("Location"), ""), http.StatusOK, "Removed.")
	webuitest.Tells(t, webuitest.Get(p, "/specs/spindrift", ""), http.StatusGone, "<h1>Spindrift</h1>", "Removed from the specs", "Put it back", "removed by bar",
		"As it was", "Spindrift\n1 oz London dry gin")
	_, err := house.Get[house.Right](t.Context(), h.Store(), "spindrift")
	assert.ErrorIs(t, err, house.ErrNotFound, "its mark goes with it")
	webuitest.Lacks(t, webuitest.Get(p, "/specs", ""), "Spindrift")
	webuitest.Tells(t, webuitest.Post(p, "/specs/spindrift", webuitest.Fields("do", "remove", "version", "2"), false), http.StatusConflict, "There is no such record")
	webuitest.Tells(t, webuitest.Get(p, "/specs/spindrift/batch", ""), 404)
	webuitest.Tells(t, webuitest.Get(p, "/bench?spec=spindrift", ""), 200, "Spindrift\n1 oz London dry gin")
	webuitest.Tells(t, webuitest.Get(p, "/specs?list=removed", ""), 200, `<a href="/specs/spindrift">Spindrift</a>`, `name="version" value="2"`, "Put back: Spindrift")
	assert.Contains(t, act(t, p, "spindrift", "do", "undo", "version", "2"), "Version 3")
	webuitest.Tells(t, webuitest.Get(p, "/specs?list=removed", ""), 200, "No spec was removed, or all are back.")
	webuitest.Tells(t, webuitest.Get(p, "/specs", ""), 200, "Spindrift")
}

func TestFormsOfASpecThatMakeNoSense(t *testing.T) {
	p := webuitest.NewPages(t)
	for _, form := range []url.Values{webuitest.Fields("do", "burn", "version", "1"), webuitest.Fields("do", "remove"), webuitest.Fields("do", "remove", "version", "x"), webuitest.Fields("version", "1")} {
		webuitest.Tells(t, webuitest.Post(p, "/specs/mainbrace", form, false), 400, "could not be read")
	}
	webuitest.Tells(t, webuitest.Post(p, "/specs/nowhere", webuitest.Fields("do", "remove", "version", "1"), false), 404)
}

// A spec of something that the house no longer makes keeps its page.
func TestASpecThatCannotBePoured(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Spec{ID: "lost", Name: "Lost", Method: "stir", Service: "up",
		Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "our-cordial", Amount: 1, Unit: "oz"}}}, 0))
	require.NoError(t, err)
	p := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(p, "/specs/lost", ""), 200, "<h1>Lost</h1>", `there is no ingredient "our-cordial"`, "2 oz</span> London dry gin", "Lost\n2 oz london-dry-gin\n1 oz our-cordial\nstir, up")
	webuitest.Tells(t, webuitest.Get(p, "/bench?spec=lost", ""), 422, "1 oz our-cordial", "Unknown ingredient")
	webuitest.Tells(t, webuitest.Get(p, "/specs/lost/batch", ""), 422, "our-cordial")
	webuitest.Tells(t, webuitest.Get(p, "/specs/export?as=text", ""), 422, "Spec lost: pours[1]", "take CSV")
	webuitest.Tells(t, webuitest.Get(p, "/specs/export?as=csv", ""), 200, "our-cordial")
}

func TestHistoryInWords(t *testing.T) {
	shelf := webuitest.NewHouse().Shelf()
	was := house.Spec{ID: "x", Name: "X", Method: "shake", Service: "up", Note: "a", Pours: []house.Pour{
		{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 0.75, Unit: "oz"}, {Ingredient: "lemon-juice", Amount: 1, Unit: "dash"}}}
	is := house.Spec{ID: "x", Name: "Y", Method: "stir", Service: "rocks", Pours: []house.Pour{
		{Ingredient: "lemon-juice", Amount: 22.5, Unit: "ml"}, {Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "gone", Amount: 1, Unit: "piece"}}}
	assert.Equal(t, []string{"the name from X to Y", "lemon juice from ¾ oz to 22.5 mL", "1 gone added", "1 dash lemon juice taken out", "the order of the pours",
		"from shake to stir", "served rocks in place of up", "the note taken out"}, part.SpecChanges(&was, &is, shelf))
	assert.Empty(t, part.SpecChanges(&was, &was, shelf))
	assert.Equal(t, "2 Jan 2027, 23:04 UTC", words.Moment(time.Date(2027, 1, 3, 0, 4, 0, 0, time.FixedZone("", 3600))))
	for _, action := range []house.Action{house.Added, house.Changed, house.Removed, house.Undone} {
		assert.NotEmpty(t, specs.DidOf(action))
	}
}

// A cover is held against the drink that it stands for.
func TestWhatACoverCosts(t *testing.T) {
	h := webuitest.OnSale(t)
	p := webuitest.PagesOf(t, h)
	text := "X\n2 oz gin\n1/2 oz orgeat\nshake, up"
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", text, "missing", "orgeat"), false), 200, "not known: no price for orgeat and sesame orgeat.")
	webuitest.Lacks(t, webuitest.Post(webuitest.NewPages(t), "/", webuitest.Fields("text", text, "missing", "orgeat"), false), "to pour,", "not known")
	for id, v := range map[string]float64{"orgeat": 7, "sesame-orgeat": 10.5} {
		_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Bottle{ID: id, Name: id, Ingredient: id, SizeML: 700, Price: &v, Currency: "EUR"}, 0))
		require.NoError(t, err)
	}
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", text, "missing", "orgeat"), false), 200, "Costs 2.00\u00a0EUR to pour, 0.07\u00a0EUR more than the drink itself.")
}

// A spec says which of its bottles have run out, and leads to what is poured instead.
func TestASpecWhoseBottleIsOut(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	p := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(p, "/specs/mainbrace", ""), 200, "Out now: falernum.", `href="/tonight#drink-mainbrace"`)
	webuitest.Lacks(t, webuitest.Get(p, "/specs/halyard-sour", ""), "Out now")
}

// The page of a spec is for the guest that it was opened for: it says what that guest is
// poured, every way on is for that guest, and one leads to everybody.
func TestASpecForAGuest(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	const forNuts = "?avoid=tree+nuts"
	webuitest.Says(t, webuitest.Get(p, "/specs/nutcracker"+forNuts, ""), []string{"For a guest: <strong>without tree nuts</strong>", "wash the tins", `<a href="/specs/nutcracker">Show for everyone</a>`,
		"Not for this guest as it is: orgeat contains tree nuts.", `</s> <strong class="gone">contains tree nuts</strong>`, `action="/specs/nutcracker?avoid=tree&#43;nuts"`, `href="/bench?avoid=tree&#43;nuts&amp;spec=nutcracker"`,
		`<a href="/tonight?avoid=tree&#43;nuts">Tonight</a>`}, nil)
	webuitest.Says(t, webuitest.Get(p, "/specs/halyard-sour"+forNuts, ""), []string{"Poured as it is written."}, []string{`class="gone"`})
	webuitest.Says(t, webuitest.Get(p, "/specs/halyard-sour", ""), nil, []string{"Poured as it is written", "For a guest"})

	h.Dry = []string{"falernum"}
	webuitest.Says(t, webuitest.Get(p, "/specs/mainbrace"+forNuts, ""), []string{"For this guest", `<strong class="gone">missing</strong>`, "clove syrup <span class=\"small\">instead</span>", `href="/tonight?avoid=tree&#43;nuts#drink-mainbrace"`}, []string{"almond"})
	webuitest.Says(t, webuitest.Get(p, "/specs/mainbrace", ""), []string{"<h2 id=\"now-title\">Tonight</h2>", "almond syrup <span class=\"small\">instead</span>", "The pours, as written", "not as it is poured now", "As it is poured now: <strong>"}, nil)
	_, now, _ := strings.Cut(webuitest.Get(p, "/specs/mainbrace", "").Body.String(), `class="now`)
	assert.Less(t, strings.Index(now, "Poured instead"), strings.Index(now, "Or pour it without falernum"), "what is poured stands before what else could be")
	webuitest.Says(t, webuitest.Get(p, "/specs/mainbrace?strength=30", ""), []string{"at most 30\u00a0% vol"}, []string{"wash the tins"})
	assert.Equal(t, http.StatusBadRequest, webuitest.Get(p, "/specs/mainbrace?avoid=nutz", "").Code, "an unknown allergen is refused")

	w := webuitest.Post(p, "/specs/mainbrace"+forNuts, webuitest.Fields("do", "right", "version", "1"), false)
	assert.Equal(t, "/specs/mainbrace?avoid=tree+nuts&said=right", w.Header().Get("Location"))
}
