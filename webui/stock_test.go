package webui

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"html"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// laidHouse is a fake house whose records lie over its shelf, as those of a
// real one do.
type laidHouse struct{ *fakeHouse }

var _ catalogued = laidHouse{}

// Catalogue has the profiles of the fake, with densities that go with what is
// in them.
func (h laidHouse) Catalogue() *house.Shelf {
	var list []*flavor.Profile
	for _, p := range h.fakeHouse.Shelf().Profiles() {
		c := *p
		if err := mix.Complete(&c); err != nil {
			panic(err)
		}
		list = append(list, &c)
	}
	return house.NewShelf(list)
}

func (h laidHouse) Shelf() *house.Shelf {
	entries, err := h.Store().List(context.Background(), house.KindBottle, house.KindMade)
	if err != nil {
		panic(err)
	}
	var bottles []house.Bottle
	var made []house.Made
	for _, e := range entries {
		switch item := e.Item.(type) {
		case house.Bottle:
			bottles = append(bottles, item)
		case house.Made:
			made = append(made, item)
		}
	}
	list, _ := house.Overlay(h.Catalogue().Profiles(), bottles, made)
	return house.NewShelf(list)
}

var ana = house.By{Actor: "ana", At: time.Date(2024, 5, 6, 20, 0, 0, 0, time.UTC)}

func number(v float64) *float64 { return &v }

// stocked is a house with some bottles and a syrup.
func stocked(t *testing.T) laidHouse {
	t.Helper()
	h := laidHouse{newFakeHouse()}
	h.keepAll(t,
		house.Bottle{ID: "blue", Name: "Blue label", Ingredient: "london-dry-gin", Measured: house.Measured{ABVPct: number(43.1)}, Price: number(24.9), Currency: "EUR", SizeML: 700, Stock: 2.5, Note: "behind the till"},
		house.Bottle{ID: "red", Name: "Red label", Ingredient: "london-dry-gin", Well: true, SizeML: 1000, Stock: 1},
		house.Bottle{ID: "lemons", Name: "Lemons of the day", Ingredient: "lemon-juice", Measured: house.Measured{Brix: number(8.1), AcidGPerL: number(62)}, SizeML: 1000},
		house.Bottle{ID: "almond", Name: "Almond syrup", Ingredient: "orgeat", SizeG: 1000, Price: number(10), Currency: "EUR", Stock: 3},
		house.Bottle{ID: "odd", Name: "Odd one", Ingredient: "moon-dust", SizeML: 500, Stock: 1},
		house.Made{ID: "nut-syrup", Name: "Nut syrup", Aliases: []string{"the brown one"}, Class: flavor.ClassSpicedSyrup, KeepsDays: 14,
			Parts: []house.Pour{{Ingredient: "simple-syrup", Amount: 300, Unit: flavor.Millilitre}, {Ingredient: "orgeat", Amount: 100, Unit: flavor.Millilitre}, {Ingredient: "unlabelled-liqueur", Amount: 100, Unit: flavor.Millilitre}}},
	)
	return h
}

func (h laidHouse) keepAll(t *testing.T, items ...house.Item) {
	t.Helper()
	var edits []house.Edit
	for _, it := range items {
		edits = append(edits, house.Put(it, 0))
	}
	_, err := h.Store().Write(t.Context(), ana, edits...)
	require.NoError(t, err)
}

// holds checks what a page says, as it is sent or as a browser reads it.
func holds(t *testing.T, w *httptest.ResponseRecorder, want, not []string) {
	t.Helper()
	said := w.Body.String() + html.UnescapeString(w.Body.String())
	for _, s := range want {
		assert.True(t, strings.Contains(said, s), "should hold %q", s)
	}
	for _, s := range not {
		assert.False(t, strings.Contains(w.Body.String(), s), "should not hold %q", s)
	}
}

func TestStockScenarios(t *testing.T) {
	for _, c := range []struct {
		name, path string
		status     int
		want, not  []string
	}{
		{name: "all", path: "/stock", status: 200,
			want: []string{"5 bottles and 1 made here", ">Blue label</a>", "2.5 × 700\u00a0mL", "43.1\u00a0%\u00a0vol", "40.0\u00a0%\u00a0vol by the catalogue", "24.90\u00a0EUR", "1.07\u00a0EUR for 30\u00a0mL",
				"Red label is poured", `<p class="mark">Poured</p>`, "none of 1000\u00a0mL", "(8.1\u00a0°Bx)", "62.0\u00a0g/L", "60.0\u00a0g/L by the catalogue",
				"Contains tree nuts; may contain soybeans.", "None on record for London dry gin.", "Out now", "Of no known category", "anything may be in it",
				"Nut syrup", "tree nuts (orgeat)", "Not stated", "14 days", "The label on the bottle decides", footLine},
			not: []string{"Show all", "Page 1"}},
		{name: "by name", path: "/stock?q=BLUE", status: 200, want: []string{"1 bottle<", "Blue label", "Show all 6", `value="BLUE"`}, not: []string{">Red label</a>", "Nut syrup"}},
		{name: "by category", path: "/stock?q=dry+gin", status: 200, want: []string{"2 bottles"}},
		{name: "by note", path: "/stock?q=till", status: 200, want: []string{"1 bottle<"}},
		{name: "by another name", path: "/stock?q=brown", status: 200, want: []string{"Nut syrup", "0 bottles and 1 made here"}},
		{name: "by kind", path: "/stock?class=gin", status: 200, want: []string{"2 bottles", `value="gin" selected`}, not: []string{"Lemons"}},
		{name: "for an ounce", path: "/stock?per=oz", status: 200, want: []string{"1.05\u00a0EUR for 1\u00a0oz", `value="oz" selected`}},
		{name: "none", path: "/stock?q=zzz", status: 200, want: []string{"Nothing answers to that", "show all 6"}},
		{name: "markup", path: "/stock?q=%3Cscript%3E", status: 200, want: []string{"&lt;script&gt;"}, not: []string{`value="<script`}},
		{name: "a kind that is none", path: "/stock?class=gni", status: 400},
		{name: "a pour that is none", path: "/stock?per=pint", status: 400},
		{name: "no page", path: "/stock?page=0", status: 400},
		{name: "a page too far", path: "/stock?page=9", status: 200, want: []string{"Blue label"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := stocked(t)
			h.outs = []string{"orgeat"}
			w := get(pagesOf(t, h), c.path, "")
			assert.Equal(t, c.status, w.Code)
			holds(t, w, c.want, c.not)
		})
	}
}

func TestAnEmptyStockSaysWhatToDo(t *testing.T) {
	w := get(newPages(t), "/stock", "")
	assert.Equal(t, http.StatusOK, w.Code)
	holds(t, w, []string{"Nothing in stock yet", `href="/stock/bottle"`, `href="/stock/import"`, "names the\ncolumns"}, []string{"Show all", "stock.csv", `name="q"`})
}

// A script gets the list alone.
func TestTheStockAsAnAnswer(t *testing.T) {
	r := httptest.NewRequest(http.MethodGet, "/stock?q=blue", nil)
	r.Header.Set("HX-Request", "true")
	w := httptest.NewRecorder()
	pagesOf(t, stocked(t)).ServeHTTP(w, r)
	holds(t, w, []string{"Blue label", "1 bottle."}, []string{"<html", "<form"})
}

// Without a catalogue beside the shelf, the shelf is the catalogue.
func TestAHouseThatLaysNothingOver(t *testing.T) {
	h := stocked(t)
	holds(t, get(pagesOf(t, h.fakeHouse), "/stock?q=blue", ""), []string{"40.0\u00a0%\u00a0vol by the catalogue"}, nil)
}

func TestWhatIsAmissWithTheStock(t *testing.T) {
	h := stocked(t)
	h.keepAll(t, house.Bottle{ID: "green", Name: "Green label", Ingredient: "london-dry-gin", Well: true, SizeML: 700, Price: number(20), Currency: "USD"},
		house.Bottle{ID: "nuts", Name: "Sweet liqueur", Ingredient: "falernum", Measured: house.Measured{Brix: number(30)}, SizeML: 700})
	h.keepAll(t, house.Bottle{ID: "own", Name: "Own, bottled", Ingredient: "nut-syrup", SizeML: 700, Measured: house.Measured{Brix: number(60)}})
	holds(t, get(pagesOf(t, h), "/stock?q=own", ""), []string{"the house makes this", "489\u00a0g/L by its recipe"}, nil)
	holds(t, get(pagesOf(t, h), "/stock", ""), []string{"priced in EUR and USD", "More than one bottle of London dry gin is marked to be poured; Red label is",
		"What was measured is not used: brix says nothing about sugar"}, nil)
}

// Sixty bottles a page; a page of them stays light.
func TestTheStockInPages(t *testing.T) {
	h := laidHouse{newFakeHouse()}
	text, _ := threeHundred()
	pages := pagesOf(t, h)
	sendFile(t, pages, text, "good", "")
	w := get(pages, "/stock?q=bottle&page=2", "")
	holds(t, w, []string{"297 bottles", "Page 2 of 5", `href="/stock?q=bottle"`, `href="/stock?page=3&q=bottle"`}, nil)
	assert.Equal(t, 60, strings.Count(w.Body.String(), "<h3>"))
	assert.Less(t, w.Body.Len(), 100_000)
	holds(t, get(pages, "/stock?page=5", ""), []string{"Page 5 of 5"}, []string{`rel="next"`})
}

// threeHundred is a file of 300 bottles, and its three bad rows.
func threeHundred() (text string, bad []string) {
	rows := []string{"name,ingredient,size_ml,stock,note"}
	for n := 2; n <= 301; n++ {
		row := fmt.Sprintf(`Bottle %d,gin,700,1,"shelf %d, left"`, n, n)
		switch n {
		case 42:
			row = "Bottle 42,lemon jiuce,700,1,"
		case 118:
			row = "Bottle 118,gin,seven,1,"
		case 277:
			row = `"Bottle 277,gin,700,1,`
		}
		if n == 42 || n == 118 || n == 277 {
			bad = append(bad, row)
		}
		rows = append(rows, strings.Replace(row, ",gin,", ",London dry gin,", 1))
	}
	for i, row := range bad {
		bad[i] = strings.Replace(row, ",gin,", ",London dry gin,", 1)
	}
	return strings.Join(rows, "\r\n") + "\r\n", bad
}

// sendFile sends the form of the import.
func sendFile(t *testing.T, h http.Handler, file, mode, text string) *httptest.ResponseRecorder {
	t.Helper()
	var b bytes.Buffer
	m := multipart.NewWriter(&b)
	for name, value := range map[string]string{"mode": mode, "text": text} {
		require.NoError(t, m.WriteField(name, value))
	}
	if file != "" {
		part, err := m.CreateFormFile("file", "stock.csv")
		require.NoError(t, err)
		_, err = part.Write([]byte(file))
		require.NoError(t, err)
	}
	require.NoError(t, m.Close())
	r := httptest.NewRequest(http.MethodPost, "/stock/import", &b)
	r.Header.Set("Content-Type", m.FormDataContentType())
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

var boxText = regexp.MustCompile(`(?s)<textarea id="text"[^>]*>\n(.*?)</textarea>`)

// inTheBox is what the import's box holds.
func inTheBox(t *testing.T, w *httptest.ResponseRecorder) string {
	t.Helper()
	m := boxText.FindStringSubmatch(w.Body.String())
	require.NotNil(t, m)
	return html.UnescapeString(m[1])
}

func (h laidHouse) bottles(t *testing.T) []house.Bottle {
	t.Helper()
	list, err := house.All[house.Bottle](t.Context(), h.Store())
	require.NoError(t, err)
	return house.Items(list)
}

// Three bad rows among 300 are named, and none of the 300 is lost.
func TestThreeHundredBottles(t *testing.T) {
	h := laidHouse{newFakeHouse()}
	pages := pagesOf(t, h)
	text, bad := threeHundred()
	named := []string{"Row 42", "lemon jiuce", "did you mean lemon juice?", "Row 118", `"seven" is not a number`, "Row 277", "the row cannot be read"}

	w := sendFile(t, pages, text, "all", "")
	assert.Equal(t, http.StatusUnprocessableEntity, w.Code)
	holds(t, w, append(named, "Nothing was written", "3 rows are bad", "297 rows are good"), nil)
	assert.Equal(t, plainLines(text), plainLines(inTheBox(t, w)), "what was sent is still there")
	assert.Empty(t, h.bottles(t))

	w = sendFile(t, pages, "", "good", text)
	assert.Equal(t, http.StatusOK, w.Code)
	holds(t, w, append(named, "297 bottles added, 0 bottles changed, 0 bottles as before", `value="good" checked`), nil)
	assert.Equal(t, "name,ingredient,size_ml,stock,note\n"+strings.Join(bad, "\n")+"\n", inTheBox(t, w), "those to mend, and only those")
	assert.Len(t, h.bottles(t), 297)

	mended := strings.NewReplacer("jiuce", "juice", "seven", "700", `"Bottle 277,`, "Bottle 277,").Replace(inTheBox(t, w))
	w = sendFile(t, pages, "", "all", mended)
	assert.Equal(t, http.StatusOK, w.Code)
	holds(t, w, []string{"3 bottles added"}, []string{"Row"})
	assert.Len(t, h.bottles(t), 300)
	assert.Empty(t, inTheBox(t, w))
}

func TestImportScenarios(t *testing.T) {
	for _, c := range []struct {
		name, file, text, mode string
		status                 int
		want, not              []string
	}{
		{name: "again", text: "id,name,ingredient,size_ml,stock,price,currency\nblue,Blue label,gin,700,9,24.9,EUR\nred,Red label,London dry gin,1000,1,,\n", status: 422, want: []string{"Row 2", "did you mean London dry gin?"}},
		{name: "changed and as before", text: "id,name,ingredient,stock\nblue,Blue label,london-dry-gin,9\nred,Red label,London dry gin,1\n", status: 200, want: []string{"0 bottles added, 1 bottle changed, 1 bottle as before"}},
		{name: "nothing", status: 422, want: []string{"Choose a file, or paste"}},
		{name: "both", file: "name,ingredient\n", text: "<b>,x\n", status: 422, want: []string{"There is a file, and text in the box too", "&lt;b&gt;,x"}},
		{name: "no table", text: "hello there\n", status: 422, want: []string{`Row 1: column "hello there" is not known`, "Nothing was written", "hello there\n</textarea>"}},
		{name: "not UTF-8", file: "name,ingredient\nCr\xe8me,x\n", status: 422, want: []string{"not in UTF-8", "Cr\uFFFDme"}},
		{name: "markup in a row", text: "name,ingredient,size_ml\n<i>,<u>,1\n", status: 422, want: []string{"&lt;u&gt;"}, not: []string{"<u>,1"}},
		{name: "only bad rows", text: "name,ingredient,size_ml\nx,moon dust,1\n", mode: "good", status: 200, want: []string{"0 bottles added", "moon dust,1"}},
		{name: "a quarter too much", text: strings.Repeat("name,ingredient\n", 80000), status: 413, want: []string{"more than 1 MiB"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := stocked(t)
			w := sendFile(t, pagesOf(t, h), c.file, c.mode, c.text)
			assert.Equal(t, c.status, w.Code)
			holds(t, w, c.want, c.not)
			if c.status != http.StatusOK {
				assert.Len(t, h.bottles(t), 5, "nothing is written")
			}
		})
	}
}

// A form that is too long by its own account is told so as a plain form, too.
func TestATextThatIsTooLong(t *testing.T) {
	w := post(newPages(t), "/stock/import", url.Values{"text": {strings.Repeat("x", maxBody)}}, false)
	assert.Equal(t, http.StatusRequestEntityTooLarge, w.Code)
	holds(t, w, []string{"more than 1 MiB", "Split the file"}, nil)
}

// What is saved as CSV is the same house when it is imported again.
func TestStockGoesOutAndIn(t *testing.T) {
	h := stocked(t)
	h.keepAll(t, house.Bottle{ID: "trick", Name: `=HYPERLINK("http://x","y")`, Ingredient: "lemon-juice", SizeML: 700, Note: "+1\n'-2"})
	w := get(pagesOf(t, h), "/stock/stock.csv", "")
	require.Equal(t, http.StatusOK, w.Code)
	assert.Equal(t, `attachment; filename="stock.csv"`, w.Header().Get("Content-Disposition"))
	assert.Contains(t, w.Header().Get("Content-Type"), "text/csv; charset=utf-8")
	text, ok := strings.CutPrefix(w.Body.String(), "\uFEFF")
	require.True(t, ok, "spreadsheets are told that it is UTF-8")
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, exchange.StockColumns(), rows[0])
	assert.Equal(t, `'=HYPERLINK("http://x","y")`, rows[6][1], "no spreadsheet runs it")

	other := laidHouse{newFakeHouse()}
	w = sendFile(t, pagesOf(t, other), strings.ReplaceAll(w.Body.String(), "moon-dust", "falernum"), "all", "")
	require.Equal(t, http.StatusOK, w.Code, inTheBox(t, w))
	want := h.bottles(t)
	for i := range want {
		if want[i].Ingredient == "moon-dust" { // no catalogue has it
			want[i].Ingredient = "falernum"
		}
	}
	assert.Equal(t, want, other.bottles(t))
}

func TestEveryColumnIsExplained(t *testing.T) {
	var names []string
	for _, c := range columnNotes {
		names = append(names, c.Name)
		assert.NotEmpty(t, c.Holds, c.Name)
	}
	assert.Equal(t, exchange.StockColumns(), names)
	page := get(newPages(t), "/stock/import", "")
	sample := regexp.MustCompile(`(?s)<code>(name,.*?)</code>`).FindStringSubmatch(page.Body.String())
	require.NotNil(t, sample)
	r, err := exchange.ReadStock(strings.NewReader(sample[1]), fakeBar{})
	require.NoError(t, err)
	assert.Empty(t, r.Bad, "the file to start from can be read")
	assert.Len(t, r.Items, 2)
}

// Pages load no more than the others do, and keep to the content policy.
func TestStockPagesAreLight(t *testing.T) {
	pages := pagesOf(t, stocked(t))
	for _, path := range []string{"/stock", "/stock/bottle?id=blue", "/stock/made?id=nut-syrup", "/stock/import"} {
		w := get(pages, path, "")
		require.Equal(t, http.StatusOK, w.Code, path)
		weight := w.Body.Len()
		for _, m := range loads.FindAllStringSubmatch(w.Body.String(), -1) {
			weight += get(pages, m[1], "").Body.Len()
		}
		assert.Less(t, weight, maxLoad, path)
		seen := map[string]bool{}
		for _, m := range ids.FindAllStringSubmatch(w.Body.String(), -1) {
			assert.False(t, seen[m[1]], "%s: id %q twice", path, m[1])
			seen[m[1]] = true
		}
		for _, m := range links.FindAllStringSubmatch(w.Body.String(), -1) {
			link := html.UnescapeString(m[1])
			if id, ok := strings.CutPrefix(link, "#"); ok {
				assert.Contains(t, w.Body.String(), `id="`+id+`"`, path)
			} else if link != "/stock/undo" { // which takes only forms
				assert.Equal(t, http.StatusOK, get(pages, link, "").Code, "%s: %s", path, link)
			}
		}
	}
	for _, name := range []string{"static/stock.css", "static/stock.js"} {
		body, err := embedded.ReadFile(name)
		require.NoError(t, err)
		for what, pattern := range forbidden {
			if what != "a handler attribute" || !strings.HasSuffix(name, ".js") {
				assert.False(t, pattern.Match(body), "%s holds %s", name, what)
			}
		}
	}
}
