package stock_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/desk"
	"counterpour/webui/stock"
	"counterpour/webui/webuitest"
)

// form makes a form of pairs.
func formOf(pairs ...string) url.Values {
	v := url.Values{}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return v
}

// follow opens the page that a form leads to.
func follow(t *testing.T, h http.Handler, w *httptest.ResponseRecorder) *httptest.ResponseRecorder {
	t.Helper()
	require.Equal(t, http.StatusSeeOther, w.Code, w.Body.String())
	path, _, _ := strings.Cut(w.Header().Get("Location"), "#")
	return webuitest.Get(h, path, "")
}

// The form takes what a stock list may hold, and asks where two fields disagree.
func TestABottleAsAStockListHasIt(t *testing.T) {
	for _, c := range []struct {
		size, abv, price, currency string
		want                       house.Bottle // empty if something is asked
		asks                       string
	}{
		{size: "70cl", abv: "40 %", price: "$18.50", want: house.Bottle{SizeML: 700, Currency: "USD"}},
		{size: "0,7 L", abv: "80 proof", price: "$18.50", currency: "AUD", want: house.Bottle{SizeML: 700, Currency: "AUD"}},
		{size: "1 ltr", abv: "40", price: "18,50 €", want: house.Bottle{SizeML: 1000, Currency: "EUR"}},
		{size: "70cl", abv: "40", price: "€18.50", currency: "USD", asks: "The price is in EUR, the field beside it says USD: which is it?"},
		{size: "58 L", abv: "40", price: "18.50", currency: "USD", want: house.Bottle{SizeML: 58000, Currency: "USD"}},
		{size: "70 L", abv: "40", price: "18.50", currency: "USD", asks: "That is 70 L, more than the largest keg holds. Is it 700 mL?"},
		{size: "1 kg", abv: "40", price: "18.50", currency: "USD", asks: `is not a number; write digits alone, in mL`},
	} {
		h := webuitest.NewLaid()
		w := webuitest.Post(webuitest.PagesOf(t, h), "/stock/bottle", formOf("name", "Blue cap", "ingredient", "London dry gin", "abv", c.abv, "size_ml", c.size, "stock", "2 bottles", "price", c.price, "currency", c.currency), false)
		if c.asks != "" {
			webuitest.Says(t, w, []string{c.asks}, nil)
			assert.Empty(t, h.Bottles(t))
			continue
		}
		require.Equal(t, http.StatusSeeOther, w.Code, w.Body.String())
		got := h.Bottle(t, "blue-cap").Item
		assert.Equal(t, c.want, house.Bottle{SizeML: got.SizeML, Currency: got.Currency}, c.size)
		assert.InDelta(t, 40, *got.ABVPct, 1e-9)
		assert.InDelta(t, 18.5, *got.Price, 1e-9)
		assert.InDelta(t, 2, got.Stock, 1e-9)
	}
}

func TestABottleComesAndGoes(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle", ""), []string{"A new bottle", `name="version" value="0"`, `<datalist id="categories">`, `<option value="London dry gin">`}, []string{"Take it out", "History"})

	w := follow(t, pages, webuitest.Post(pages, "/stock/bottle", formOf("name", "  Blue   cap ", "ingredient", "london dry GIN", "abv", "43,1", "size_ml", "700", "stock", "2.5",
		"price", "24.90", "currency", "eur", "note", "behind\r\nthe till"), false))
	webuitest.Says(t, w, []string{"Added.", "Undo: take it out again", "by bar", `value="43.1"`, `value="EUR"`, "London dry gin by the catalogue", "40.0\u00a0%\u00a0vol", "No allergen on record"}, nil)
	blue := h.Bottle(t, "blue-cap")
	assert.Equal(t, house.Bottle{ID: "blue-cap", Name: "Blue cap", Ingredient: "london-dry-gin", Measured: house.Measured{ABVPct: stock.Number(43.1)},
		Price: stock.Number(24.9), Currency: "EUR", SizeML: 700, Stock: 2.5, Note: "behind\nthe till"}, blue.Item)

	// The currency of the house is filled in for the next one.
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle", ""), []string{`name="currency" value="EUR"`}, nil)

	change := formOf("id", "blue-cap", "version", "1", "name", "Blue cap", "ingredient", "London dry gin", "abv", "43.1", "size_ml", "700", "stock", "1", "price", "26", "currency", "EUR", "note", "behind\nthe till")
	w = follow(t, pages, webuitest.Post(pages, "/stock/bottle", change, false))
	webuitest.Says(t, w, []string{"Changed.", "In stock, bottles: 2.5 → 1", "Price: 24.9 → 26", "Undo the last change"}, []string{"Note:"})
	change.Set("version", "2")
	w = follow(t, pages, webuitest.Post(pages, "/stock/bottle", change, false))
	webuitest.Says(t, w, []string{"what you sent is the same"}, nil)
	assert.EqualValues(t, 2, h.Bottle(t, "blue-cap").Version, "and nothing is written")

	undo := formOf("kind", "bottle", "id", "blue-cap", "version", "2")
	w = follow(t, pages, webuitest.Post(pages, "/stock/undo", undo, false))
	webuitest.Says(t, w, []string{"Undone.", "In stock, bottles: 1 → 2.5", "Undo that too"}, nil)
	assert.Equal(t, blue.Item, h.Bottle(t, "blue-cap").Item)

	change.Set("version", "3")
	change.Set("do", "remove")
	w = follow(t, pages, webuitest.Post(pages, "/stock/bottle", change, false))
	webuitest.Says(t, w, []string{"Blue cap is no longer in the house", "Put it back", `name="version" value="4"`}, nil)
	assert.Empty(t, h.Bottles(t))
	w = webuitest.Get(pages, "/stock/bottle?id=blue-cap", "")
	assert.Equal(t, http.StatusGone, w.Code)
	webuitest.Says(t, w, []string{"It is no longer in the house", "Removed.", `value="2.5"`}, nil)

	undo.Set("version", "4")
	w = follow(t, pages, webuitest.Post(pages, "/stock/undo", undo, false))
	webuitest.Says(t, w, []string{"Undone."}, nil)
	assert.Equal(t, blue.Item, h.Bottle(t, "blue-cap").Item)
	assert.Equal(t, http.StatusOK, webuitest.Get(pages, "/stock?gone=bottle&id=blue-cap&done=4", "").Code, "an old address says nothing of it")
}

func TestBottleScenarios(t *testing.T) {
	good := []string{"name", "New one", "ingredient", "orgeat", "size_ml", "700"}
	for _, c := range []struct {
		name      string
		form      []string
		status    int
		want, not []string
	}{
		{name: "all at once", form: []string{"name", " ", "ingredient", "lemon jiuce", "abv", "140", "brix", "<thick>", "sugar", "1,000", "stock", "-1", "size_ml", "1e3", "price", "3", "currency", "euro"}, status: 422,
			want: []string{"Give it a name", "did you mean lemon juice?", "140\u00a0%\u00a0vol cannot be; write 0\u00a0%\u00a0vol to 100\u00a0%\u00a0vol", `"<thick>" is not a number; write digits alone, in °Bx`, "can be read two ways; write 1000 or 1.000",
				"−1\u00a0bottles cannot be; write 0\u00a0bottles to 1000000\u00a0bottles", `"1e3" is not a number`, "Currency must be three capital letters", `value="lemon jiuce"`, `value="&lt;thick&gt;"`, `value="euro"`, `aria-invalid="true"`, "To fix before it is saved"}, not: []string{"<thick>"}},
		{name: "no size", form: []string{"name", "x", "ingredient", "orgeat"}, status: 422, want: []string{"Say what a full one holds"}},
		{name: "two sizes", form: append(good, "size_g", "900"), status: 422, want: []string{"size_g are two ways to say one thing"}},
		{name: "brix and sugar", form: append(good, "brix", "60", "sugar", "700"), status: 422, want: []string{"Brix and sugar are two ways"}},
		{name: "brix beside alcohol", form: []string{"name", "x", "ingredient", "falernum", "size_ml", "700", "brix", "30"}, status: 422, want: []string{"Brix says nothing about sugar at 11"}},
		{name: "no room for the sugar", form: []string{"name", "x", "ingredient", "London dry gin", "size_ml", "700", "abv", "96", "sugar", "900"}, status: 422, want: []string{"no room", `id="f-abv" name="abv" value="96" maxlength="200" autocomplete="off" aria-describedby="h-abv" aria-invalid="true"`}},
		{name: "price without a currency", form: append(good, "price", "9"), status: 422, want: []string{"Currency must be three capital letters"}},
		{name: "a currency alone", form: append(good, "currency", "EUR"), status: 303},
		{name: "a name of signs", form: []string{"name", "夜", "ingredient", "orgeat", "size_ml", "700"}, status: 303},
		{name: "by weight", form: []string{"name", "x", "ingredient", "orgeat", "size_g", "900"}, status: 303},
		{name: "a name that is taken", form: []string{"name", "Blue!", "ingredient", "orgeat", "size_ml", "333"}, status: 409,
			want: []string{"There is one of that name already", `value="333"`, `href="/stock/bottle?id=blue"`, `name="version" value="0"`}},
		{name: "two names on a line", form: []string{"name", "x", "ingredient", "gin\n2 oz rum", "size_ml", "1"}, status: 422},
		{name: "a version that is none", form: append(good, "version", "x"), status: 400},
		{name: "an id that is not there", form: append(good, "id", "nowhere", "version", "1"), status: 404},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.Stocked(t)
			w := webuitest.Post(webuitest.PagesOf(t, h), "/stock/bottle", formOf(c.form...), false)
			assert.Equal(t, c.status, w.Code)
			webuitest.Says(t, w, c.want, c.not)
			if c.status != http.StatusSeeOther {
				assert.Len(t, h.Bottles(t), 5, "nothing is written")
			}
		})
	}
}

func TestRecordsThatAreNotThere(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Stocked(t))
	for _, path := range []string{"/stock/bottle?id=nowhere", "/stock/made?id=blue", "/stock?gone=bottle&id=nowhere"} {
		assert.Equal(t, http.StatusNotFound, webuitest.Get(pages, path, "").Code, path)
	}
	assert.Equal(t, http.StatusNotFound, webuitest.Post(pages, "/stock/undo", formOf("kind", "bottle", "id", "nowhere", "version", "1"), false).Code)
	assert.Equal(t, http.StatusBadRequest, webuitest.Post(pages, "/stock/undo", formOf("kind", "spec", "id", "x", "version", "1"), false).Code)
	assert.Equal(t, http.StatusMethodNotAllowed, webuitest.Get(pages, "/stock/undo", "").Code)
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle?id=odd", ""), []string{"No such category", "anything may be in it", `value="moon-dust"`}, nil)
}

// edited is the form of the blue bottle with some fields typed over.
func edited(version string, pairs ...string) url.Values {
	v := formOf("id", "blue", "version", version, "name", "Blue cap", "ingredient", "London dry gin", "abv", "43.1", "size_ml", "700", "stock", "2.5", "price", "24.9", "currency", "EUR", "note", "behind the till")
	for name, value := range formOf(pairs...) {
		v[name] = value
	}
	return v
}

// Two people change one bottle: the second one is told, and what they typed,
// and what the first one changed, are both there.
func TestTwoPeopleAtOneBottle(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	theirs := h.Bottle(t, "blue").Item
	theirs.Price, theirs.Stock, theirs.Note = stock.Number(30), 7, "in the cellar"
	_, err := h.Store().Write(t.Context(), webuitest.Ana, house.Put(theirs, 1))
	require.NoError(t, err)

	w := webuitest.Post(pages, "/stock/bottle", edited("1", "stock", "1", "abv", "44"), false)
	assert.Equal(t, http.StatusConflict, w.Code)
	webuitest.Says(t, w, []string{"It has changed since you opened it", "by ana", `name="version" value="2"`,
		`name="stock" value="1"`, "Theirs: 7", `name="abv" value="44"`, `name="price" value="30"`, "Filled in as the other person changed it", "in the cellar</textarea>"}, []string{"Theirs: 30"})
	assert.EqualValues(t, 2, h.Bottle(t, "blue").Version)

	follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("2", "stock", "1", "abv", "44", "price", "30", "note", "in the cellar"), false))
	now := h.Bottle(t, "blue").Item
	assert.Equal(t, []float64{1, 44, 30}, []float64{now.Stock, *now.ABVPct, *now.Price})

	for _, late := range []url.Values{edited("1", "do", "remove"), formOf("kind", "bottle", "id", "blue", "version", "1")} {
		path := "/stock/bottle"
		if late.Has("kind") {
			path = "/stock/undo"
		}
		w = webuitest.Post(pages, path, late, false)
		assert.Equal(t, http.StatusConflict, w.Code)
		webuitest.Says(t, w, []string{"It has changed since you opened it"}, nil)
		assert.EqualValues(t, 3, h.Bottle(t, "blue").Version)
	}
}

func TestABottleThatIsGoneMeanwhile(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	_, err := h.Store().Write(t.Context(), webuitest.Ana, house.Remove(house.Ref{Kind: house.KindBottle, ID: "blue"}, 1))
	require.NoError(t, err)
	w := webuitest.Post(pages, "/stock/bottle", edited("1", "stock", "9"), false)
	assert.Equal(t, http.StatusConflict, w.Code)
	webuitest.Says(t, w, []string{"It has been removed meanwhile", `name="version" value="0"`, `name="stock" value="9"`}, nil)
	follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("0", "stock", "9"), false))
	assert.Equal(t, 9.0, h.Bottle(t, "blue").Item.Stock)

	// Somebody may put it back in between.
	w = webuitest.Post(pages, "/stock/bottle", edited("0", "stock", "8"), false)
	assert.Equal(t, http.StatusConflict, w.Code)
	webuitest.Says(t, w, []string{`name="stock" value="8"`, "Theirs: 9"}, nil)
}

// One bottle of a category is the one that is poured.
func TestTheMarkOfTheWellMoves(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle?id=blue", ""), []string{`<a href="/stock/bottle?id=red">Red cap</a> is the one that is poured`}, nil)
	w := follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("1", "well", "yes"), false))
	webuitest.Says(t, w, []string{"Pour this one: nothing → yes", `<a href="/stock/bottle?id=red">Red cap</a> is no longer the one that is poured`}, nil)
	assert.True(t, h.Bottle(t, "blue").Item.Well)
	assert.False(t, h.Bottle(t, "red").Item.Well)
}

// A bottle that is new takes no pour by its name alone, and the page says which one stays.
func TestANewBottleTakesNoPour(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	w := follow(t, pages, webuitest.Post(pages, "/stock/bottle", webuitest.Fields("version", "0", "name", "Aardvark almond", "ingredient", "orgeat", "size_ml", "700", "stock", "1"), false))
	webuitest.Says(t, w, []string{`<a href="/stock/bottle?id=almond">Almond syrup</a> stays the one that is poured`}, nil)
	assert.True(t, h.Bottle(t, "almond").Item.Well)
}

// What a form does not ask for stays as it is: nothing of a bottle is lost when
// another thing of it is changed.
func TestAnEditLosesNothing(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	before := h.Bottle(t, "blue").Item
	out := time.Date(2026, 5, 2, 22, 0, 0, 0, time.UTC)
	before.Well, before.OutSince, before.Par, before.Unread = true, &out, 6, true
	before.Label = &house.Label{Contains: []flavor.Allergen{flavor.Sulphites}, MayContain: []flavor.Allergen{flavor.Milk}, Vegan: true, ReadBy: "Ines", ReadAt: time.Date(2026, 5, 1, 12, 0, 0, 0, time.UTC)}
	_, err := h.Store().Write(t.Context(), webuitest.Ana, house.Put(before, 1))
	require.NoError(t, err)
	label := []string{"label", "yes", "label_contains", "sulphites", "label_may_contain", "milk", "label_vegan", "yes", "label_by", "Ines", "unread", "yes"}
	webuitest.Tells(t, follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("2", append(label, "well", "yes", "par", "6", "note", "moved")...), false)), 200, "moved")
	after := h.Bottle(t, "blue").Item
	assert.Equal(t, "moved", after.Note)
	after.Note = before.Note
	assert.Equal(t, before, after)
	given := reflect.ValueOf(before)
	for i := range given.NumField() {
		if name := given.Type().Field(i).Name; name != "SizeG" && name != "Measured" { // a size is one of two; a measured sugar is in another bottle
			assert.False(t, given.Field(i).IsZero(), "%s is not tried here", name)
		}
	}
}

// What the label says stands in place of the category, once somebody has read it.
func TestALabelIsRead(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Post(pages, "/stock/bottle", edited("1", "label_contains", "milk, dairy; nuts"), false), 422, "Say who read the label.", "milk, dairy; nuts")
	webuitest.Tells(t, webuitest.Post(pages, "/stock/bottle", edited("1", "label_contains", "moon dust", "label_by", "Bo"), false), 422, "is not an allergen known here")
	before := time.Now().Add(-time.Minute)
	w := follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("1", "label_contains", "milk, dairy; nuts", "label_by", "Bo"), false))
	webuitest.Tells(t, w, 200, "Contains: nothing → milk, tree nuts", "Read by: nothing → Bo", `value="milk, tree nuts"`)
	kept := h.Bottle(t, "blue").Item.Label
	require.NotNil(t, kept)
	assert.Equal(t, []flavor.Allergen{flavor.Milk, flavor.TreeNuts}, kept.Contains)
	assert.True(t, kept.ReadAt.After(before))
	webuitest.Tells(t, webuitest.Get(pages, "/stock", ""), 200, "tree nuts")

	w = follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("2", "label", "yes", "label_by", "Bo"), false))
	webuitest.Tells(t, w, 200, "Contains: milk, tree nuts → nothing")
	require.NotNil(t, h.Bottle(t, "blue").Item.Label, "a label that names none has been read")
	follow(t, pages, webuitest.Post(pages, "/stock/bottle", edited("3"), false))
	assert.Nil(t, h.Bottle(t, "blue").Item.Label)
}

func TestAWriteThatIsRefused(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Laid{House: webuitest.Full(webuitest.Stocked(t).House)})
	for _, form := range []url.Values{edited("1", "stock", "9"), edited("1", "stock", "9", "do", "remove")} {
		w := webuitest.Post(pages, "/stock/bottle", form, false)
		assert.Equal(t, http.StatusServiceUnavailable, w.Code)
		webuitest.Says(t, w, []string{"Nothing was written", "There is no room left on the disk", `name="stock" value="9"`}, nil)
	}
}

func TestFormsGiveBackWhatTheyShow(t *testing.T) {
	stock.CheckForms(t, webuitest.Bar{}, webuitest.NewHouse())
}

// A long history shows its end.
func TestALongHistory(t *testing.T) {
	h := webuitest.Stocked(t)
	b := h.Bottle(t, "blue").Item
	for v := range int64(desk.MaxChanges + 4) {
		b.Stock = float64(v)
		_, err := h.Store().Write(t.Context(), webuitest.Ana, house.Put(b, v+1))
		require.NoError(t, err)
	}
	w := webuitest.Get(webuitest.PagesOf(t, h), "/stock/bottle?id=blue", "")
	webuitest.Says(t, w, []string{"And 5 before that", "In stock, bottles: 32 → 33"}, []string{"2.5 → 0"})
	assert.Equal(t, desk.MaxChanges, strings.Count(w.Body.String(), "<time datetime"), strconv.Itoa(desk.MaxChanges))
}
