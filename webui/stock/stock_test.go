package stock_test

import (
	"fmt"
	"html"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui"
	"counterpour/webui/part"
	"counterpour/webui/stock"
	"counterpour/webui/webuitest"
)

func TestStockScenarios(t *testing.T) {
	for _, c := range []struct {
		name, path string
		status     int
		want, not  []string
	}{
		{name: "all", path: "/stock", status: 200,
			want: []string{"5 bottles and 1 made here", ">Blue cap</a>", "2.5 × 700\u00a0mL", "43.1\u00a0%\u00a0vol", "40.0\u00a0%\u00a0vol by the catalogue", "24.90\u00a0EUR a full one", "1.07\u00a0EUR for 30\u00a0mL",
				"Red cap is poured", `<span class="mark">Poured</span>`, "none of 1000\u00a0mL", "(8.1\u00a0°Bx)", "62.0\u00a0g/L", "60.0\u00a0g/L by the catalogue",
				"Contains tree nuts; may contain soybeans.", "No allergen on record for London dry gin.", "Out now", "Of no known category", "anything may be in it",
				"Nut syrup", "tree nuts (orgeat)", "Not stated", "14 days", "The label on the bottle decides", webuitest.FootLine},
			not: []string{"Show all", "Page 1"}},
		{name: "by name", path: "/stock?q=BLUE", status: 200, want: []string{"1 bottle<", "Blue cap", "Show all 6", `value="BLUE"`}, not: []string{">Red cap</a>", "Nut syrup"}},
		{name: "by category", path: "/stock?q=dry+gin", status: 200, want: []string{"2 bottles"}},
		{name: "by note", path: "/stock?q=till", status: 200, want: []string{"1 bottle<"}},
		{name: "by another name", path: "/stock?q=brown", status: 200, want: []string{"Nut syrup", "0 bottles and 1 made here"}},
		{name: "by kind", path: "/stock?class=gin", status: 200, want: []string{"2 bottles", `value="gin" selected`}, not: []string{"Lemons"}},
		{name: "for an ounce", path: "/stock?per=oz", status: 200, want: []string{"1.05\u00a0EUR for 1\u00a0oz", `value="oz" selected`}},
		{name: "none", path: "/stock?q=zzz", status: 200, want: []string{"Nothing found", "show all 6"}},
		{name: "markup", path: "/stock?q=%3Cscript%3E", status: 200, want: []string{"&lt;script&gt;"}, not: []string{`value="<script`}},
		{name: "by price", path: "/stock?sort=price", status: 200, want: []string{`aria-sort="ascending"`, `href="/stock?sort=-price"`}, not: []string{`class="shelf"`}},
		{name: "an order that is none", path: "/stock?sort=moon", status: 400},
		{name: "a kind that is none", path: "/stock?class=gni", status: 400},
		{name: "a pour that is none", path: "/stock?per=pint", status: 400},
		{name: "no page", path: "/stock?page=0", status: 400},
		{name: "a page too far", path: "/stock?page=9", status: 200, want: []string{"Blue cap"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.Stocked(t)
			h.Dry = []string{"orgeat"}
			w := webuitest.Get(webuitest.PagesOf(t, h), c.path, "")
			assert.Equal(t, c.status, w.Code)
			webuitest.Says(t, w, c.want, c.not)
		})
	}
}

// A bottle below its par says how many to order, and the list to print holds all of them; one that ran
// out counts as none.
func TestWhatToOrder(t *testing.T) {
	h := webuitest.Stocked(t)
	h.Dry = []string{"orgeat"}
	for _, b := range h.Bottles(t) {
		b.Par = 4
		_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(b, 1))
		require.NoError(t, err)
	}
	pages := webuitest.PagesOf(t, h)
	webuitest.Says(t, webuitest.Get(pages, "/stock", ""), []string{"2.5 × 700\u00a0mL <strong class=\"mark\">order 2</strong>", `<a href="/stock/order">What to order (`}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/stock/order", ""), []string{`<td class="n">2</td><th scope="row"><a href="/stock/bottle?id=blue">Blue cap</a>`, `<td class="n">4</td>`, "Almond syrup", "Print it", "In all"}, []string{"nobody has said"})
	webuitest.Says(t, webuitest.Get(pages, "/stock/bottle?id=blue", ""), []string{`name="par" value="4"`}, nil)
}

// What is ordered costs its price so often, in a sum for each currency; what has none is named, and so is
// what ran out without a par.
func TestWhatAnOrderCosts(t *testing.T) {
	h := webuitest.Stocked(t)
	h.Dry = []string{"orgeat"}
	euros := 20.5
	_, err := h.Store().Write(t.Context(), webuitest.Opening,
		house.Put(house.Bottle{ID: "a", Name: "Anchor gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1, Par: 3, Price: &euros, Currency: "EUR"}, 0),
		house.Put(house.Bottle{ID: "b", Name: "Bollard gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 1, Par: 2}, 0))
	require.NoError(t, err)
	w := webuitest.Get(webuitest.PagesOf(t, h), "/stock/order", "")
	webuitest.Says(t, w, []string{"20.50\u00a0EUR each", "41.00\u00a0EUR", "Without a price, and so in no sum: Bollard gin.", "Out: how many to order up to?", `<label for="par-almond">Almond syrup`, "Lemons of the day"}, nil)
	webuitest.Says(t, webuitest.Get(webuitest.NewPages(t), "/stock/order", ""), []string{"Nothing to order"}, []string{"Print it"})
}

// What ran out without a par gets one on the list of what to order; what is no number is said at its
// field, and nothing is written then.
func TestAParIsWrittenWhereItIsMissing(t *testing.T) {
	h := webuitest.Stocked(t)
	h.Dry = []string{"orgeat"}
	pages := webuitest.PagesOf(t, h)
	var gone house.Bottle
	for _, b := range h.Bottles(t) {
		if b.Name == "Almond syrup" {
			gone = b
		}
	}
	for _, wrong := range []string{"lots", "-2", "5000"} {
		w := webuitest.Post(pages, "/stock/order", url.Values{"par-" + gone.ID: {wrong}}, false)
		assert.Equal(t, http.StatusUnprocessableEntity, w.Code, wrong)
		webuitest.Says(t, w, []string{`value="` + wrong + `"`, `id="par-` + gone.ID + `-fault" role="alert"`}, nil)
	}
	w := webuitest.Post(pages, "/stock/order", url.Values{"par-" + gone.ID: {"6"}, "par-nowhere": {"3"}}, false)
	assert.Equal(t, http.StatusSeeOther, w.Code)
	kept, err := house.Get[house.Bottle](t.Context(), h.Store(), gone.ID)
	require.NoError(t, err)
	assert.InDelta(t, 6, kept.Item.Par, 0)
	webuitest.Says(t, webuitest.Get(pages, "/stock/order", ""), []string{`<td class="n">6</td><th scope="row"><a href="/stock/bottle?id=` + gone.ID + `">Almond syrup`}, []string{`name="par-` + gone.ID})
}

func TestAnEmptyStockSaysWhatToDo(t *testing.T) {
	w := webuitest.Get(webuitest.NewPages(t), "/stock", "")
	assert.Equal(t, http.StatusOK, w.Code)
	webuitest.Says(t, w, []string{"Nothing in stock yet", `href="/stock/bottle"`, `href="/stock/import"`, "import your own list", `href="/start#bottles"`, `id="own-words"`}, []string{"Show all", "stock.csv", `name="q"`})
}

// A script gets the list alone.
func TestTheStockAsAnAnswer(t *testing.T) {
	r := httptest.NewRequest(http.MethodGet, "/stock?q=blue", nil)
	r.Header.Set("HX-Request", "true")
	w := httptest.NewRecorder()
	webuitest.PagesOf(t, webuitest.Stocked(t)).ServeHTTP(w, r)
	webuitest.Says(t, w, []string{"Blue cap", "1 bottle.", `name="list" value="/stock?q=blue"`}, []string{"<html", "<form"})
}

// Without a catalogue beside the shelf, the shelf is the catalogue.
func TestAHouseThatLaysNothingOver(t *testing.T) {
	h := webuitest.Stocked(t)
	webuitest.Says(t, webuitest.Get(webuitest.PagesOf(t, h.House), "/stock?q=blue", ""), []string{"40.0\u00a0%\u00a0vol by the catalogue"}, nil)
}

func TestWhatIsAmissWithTheStock(t *testing.T) {
	h := webuitest.Stocked(t)
	h.KeepAll(t, house.Bottle{ID: "green", Name: "Green cap", Ingredient: "london-dry-gin", Well: true, SizeML: 700, Price: stock.Number(20), Currency: "USD"},
		house.Bottle{ID: "nuts", Name: "Sweet liqueur", Ingredient: "falernum", Measured: house.Measured{Brix: stock.Number(30)}, SizeML: 700})
	h.KeepAll(t, house.Bottle{ID: "own", Name: "Own, bottled", Ingredient: "nut-syrup", SizeML: 700, Measured: house.Measured{Brix: stock.Number(60)}})
	webuitest.Says(t, webuitest.Get(webuitest.PagesOf(t, h), "/stock?q=own", ""), []string{"the house makes this", "489\u00a0g/L by its recipe"}, nil)
	webuitest.Says(t, webuitest.Get(webuitest.PagesOf(t, h), "/stock", ""), []string{"Green cap is priced in USD, the other bottles in EUR", "More than one bottle of London dry gin is marked to be poured; Red cap is",
		"What was measured is not used: brix says nothing about sugar"}, nil)
}

// Sixty bottles a page; a page of them stays light.
func TestTheStockInPages(t *testing.T) {
	h := webuitest.NewLaid()
	for n := range 297 {
		h.KeepAll(t, house.Bottle{ID: fmt.Sprint("bottle-", n), Name: fmt.Sprint("Bottle ", n), Ingredient: "london-dry-gin", SizeML: 700, Stock: 1})
	}
	pages := webuitest.PagesOf(t, h)
	w := webuitest.Get(pages, "/stock?q=bottle&page=2", "")
	webuitest.Says(t, w, []string{"297 bottles", "Page 2 of 5", `href="/stock?q=bottle"`, `href="/stock?page=3&q=bottle"`}, nil)
	assert.Equal(t, 60, strings.Count(w.Body.String(), `<th scope="row">`))
	assert.Less(t, w.Body.Len(), 100_000)
	webuitest.Says(t, webuitest.Get(pages, "/stock?page=5", ""), []string{"Page 5 of 5"}, []string{`rel="next"`})
}

// Pages load no more than the others do, and keep to the content policy.
func TestStockPagesAreLight(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Stocked(t))
	for _, path := range []string{"/stock", "/stock/bottle?id=blue", "/stock/made?id=nut-syrup", "/stock/import"} {
		w := webuitest.Get(pages, path, "")
		require.Equal(t, http.StatusOK, w.Code, path)
		assert.Less(t, webuitest.FirstLoad(t, pages, path), webuitest.MaxLoad, path)
		seen := map[string]bool{}
		for _, m := range webuitest.Ids.FindAllStringSubmatch(w.Body.String(), -1) {
			assert.False(t, seen[m[1]], "%s: id %q twice", path, m[1])
			seen[m[1]] = true
		}
		for _, m := range webuitest.Links.FindAllStringSubmatch(w.Body.String(), -1) {
			link := html.UnescapeString(m[1])
			if id, ok := strings.CutPrefix(link, "#"); ok {
				assert.Contains(t, w.Body.String(), `id="`+id+`"`, path)
			} else if link != "/stock/undo" && link != "/stock/mark" && link != part.UndoPath && link != stock.OwnWordsPath { // which takes only forms
				asked, _, _ := strings.Cut(link, "#")
				assert.Equal(t, http.StatusOK, webuitest.Get(pages, asked, "").Code, "%s: %s", path, link)
			}
		}
	}
}

// BenchmarkStock is the list of 300 bottles, found anew by a script.
func BenchmarkStock(b *testing.B) {
	h := webuitest.NewLaid()
	var edits []house.Edit
	for n := range 300 {
		edits = append(edits, house.Put(house.Bottle{ID: fmt.Sprint("bottle-", n), Name: fmt.Sprint("Bottle ", n), Ingredient: "london-dry-gin",
			Measured: house.Measured{ABVPct: stock.Number(40)}, Price: stock.Number(20), Currency: "EUR", SizeML: 700, Stock: 1}, 0))
	}
	_, err := h.Store().Write(b.Context(), webuitest.Ana, edits...)
	require.NoError(b, err)
	p, err := webui.New(webuitest.Visit(h.House), slog.New(slog.DiscardHandler))
	require.NoError(b, err)
	for b.Loop() {
		r := httptest.NewRequest(http.MethodGet, "/stock?q=bottle", nil)
		r.Header.Set("HX-Request", "true")
		p.ServeHTTP(httptest.NewRecorder(), r)
	}
}

// The list is sorted by a column, and what is not known comes last either way.
func TestTheStockSorted(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Stocked(t))
	for sort, want := range map[string][]string{
		"name":      {"Almond syrup", "Blue cap", "Lemons of the day", "Odd one", "Red cap"},
		"-name":     {"Red cap", "Odd one", "Lemons of the day", "Blue cap", "Almond syrup"},
		"stock":     {"Lemons of the day", "Red cap", "Odd one", "Blue cap", "Almond syrup"},
		"price":     {"Almond syrup", "Blue cap"},
		"-price":    {"Blue cap", "Almond syrup"},
		"-strength": {"Blue cap", "Red cap"},
	} {
		said := webuitest.Get(pages, "/stock?sort="+sort, "").Body.String()
		at := -1
		for _, name := range want {
			next := strings.Index(said, ">"+name+"</a>")
			assert.Greater(t, next, at, "%s: %s", sort, name)
			at = next
		}
		if strings.TrimLeft(sort, "-") != "name" && sort != "stock" {
			assert.Greater(t, strings.Index(said, ">Odd one</a>"), at, "%s: what is not known comes last", sort)
		}
	}
}

// A bottle is marked out in the list and taken back by the notice that says so.
func TestMarkedInTheList(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	w := webuitest.Post(pages, "/stock/mark", webuitest.Fields("out", "orgeat", "list", "/stock?q=almond"), false)
	require.Equal(t, http.StatusSeeOther, w.Code)
	assert.Equal(t, "/stock?marked=orgeat&q=almond#said", w.Header().Get("Location"))
	assert.Equal(t, []string{"orgeat"}, h.Dry)
	w = webuitest.Get(pages, "/stock?marked=orgeat&q=almond", "")
	webuitest.Says(t, w, []string{"orgeat is out.", `name="back" value="orgeat">Undo`, "Out now"}, nil)
	w = webuitest.Post(pages, "/stock/mark", webuitest.Fields("back", "orgeat", "list", "https://elsewhere.example/stock"), false)
	assert.Equal(t, "/stock?marked=orgeat#said", w.Header().Get("Location"))
	assert.Empty(t, h.Dry)
	assert.Equal(t, http.StatusConflict, webuitest.Post(pages, "/stock/mark", webuitest.Fields("out", "moon-rock"), false).Code)
	assert.Equal(t, http.StatusBadRequest, webuitest.Post(pages, "/stock/mark", webuitest.Fields(), false).Code)
}
