package stocksheet_test

import (
	"encoding/csv"
	"fmt"
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
	"counterpour/data/house/exchange"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/stocksheet"
	"counterpour/webui/webuitest"
)

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

// sendFile sends the form of the import: to be read, or to be taken in.
func sendFile(t *testing.T, h http.Handler, file, do, text string) *httptest.ResponseRecorder {
	t.Helper()
	name := "stock.csv"
	if file == "" {
		name = ""
	}
	return webuitest.SendNamed(t, h, stocksheet.Path, name, file, url.Values{"do": {do}, "text": {text}})
}

var boxText = regexp.MustCompile(`(?s)<textarea id="text"[^>]*>\n(.*?)</textarea>`)

// inTheBox is what the import's box holds.
func inTheBox(t *testing.T, w *httptest.ResponseRecorder) string {
	t.Helper()
	m := boxText.FindStringSubmatch(w.Body.String())
	require.NotNil(t, m)
	return html.UnescapeString(m[1])
}

// Three bad rows among 300 are named, and none of the 300 is lost.
func TestThreeHundredBottles(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	text, bad := threeHundred()
	named := []string{"Row 42", "lemon jiuce", "did you mean lemon juice?", "Row 118", `"seven" is not a size`, "Row 277", "row cannot be read"}

	w := sendFile(t, pages, text, "read", "")
	assert.Equal(t, http.StatusOK, w.Code)
	webuitest.Says(t, w, append(named, "297 bottles ready, 3 rows to settle"), nil)
	assert.Equal(t, form.Lines(text), form.Lines(inTheBox(t, w)), "what was sent is still there")
	assert.Empty(t, h.Bottles(t), "nothing is written until it is asked for")

	w = sendFile(t, pages, "", "take", text)
	assert.Equal(t, http.StatusOK, w.Code)
	webuitest.Says(t, w, []string{"297 bottles added, 0 changed, 0 as before", "3 rows to settle"}, nil)
	assert.Equal(t, "name,ingredient,size_ml,stock,note\n"+strings.Join(bad, "\n")+"\n", inTheBox(t, w), "those to mend, and only those")
	assert.Len(t, h.Bottles(t), 297)

	mended := strings.NewReplacer("jiuce", "juice", "seven", "700", `"Bottle 277,`, "Bottle 277,").Replace(inTheBox(t, w))
	w = sendFile(t, pages, "", "take", mended)
	assert.Equal(t, http.StatusOK, w.Code)
	webuitest.Says(t, w, []string{"3 bottles added"}, []string{"to settle"})
	assert.Len(t, h.Bottles(t), 300)
	assert.Empty(t, inTheBox(t, w))
}

var remedy = regexp.MustCompile(`name="remedy" value="([^"]*)"`)
var settledMark = regexp.MustCompile(`name="settled" value="([^"]*)"`)

// Faults are mended one tap after another, by typing or by a remedy; each stays
// mended, whatever is done next, and also once the good rows are in.
func TestNothingIsLostBetweenTries(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	const file = "Item,Kind,Size,Cost,On hand\nHawse,London dry gin,seven,cheap,2\nSnubber,orgeat,70cl,$9,1\nCleat,moon dust,70cl,$9,1\n"
	send := func(do string, more url.Values, last *httptest.ResponseRecorder) *httptest.ResponseRecorder {
		sent := url.Values{"do": {do}, "text": {file}}
		if last != nil {
			sent.Set("text", inTheBox(t, last))
			for _, m := range settledMark.FindAllStringSubmatch(last.Body.String(), -1) {
				sent.Add("settled", html.UnescapeString(m[1]))
			}
		}
		for k, v := range more {
			sent[k] = v
		}
		return webuitest.Post(pages, stocksheet.Path, sent, false)
	}
	w := send("read", nil, nil)
	webuitest.Says(t, w, []string{"1 bottle ready, 2 rows to settle", `"seven" is not a size`, `"cheap" is not a price`, `"moon dust" is not a kind`}, nil)
	taps := remedy.FindAllStringSubmatch(w.Body.String(), -1)
	require.NotEmpty(t, taps)
	assert.Equal(t, "2 size 700 ml", taps[0][1], "the size that the others have")
	w = send("", url.Values{"remedy": {taps[0][1]}}, w)
	webuitest.Says(t, w, []string{`"cheap" is not a price`}, []string{"seven&#34; is not"})
	w = send("take", nil, w)
	webuitest.Says(t, w, []string{"1 bottle added", "2 rows to settle"}, []string{"seven&#34; is not"})
	w = send("read", url.Values{"cell.2.price": {"18.50"}, "cell.3.ingredient": {"falernum"}}, w)
	webuitest.Says(t, w, []string{"2 bottles ready"}, []string{"to settle"})
	w = send("take", nil, w)
	webuitest.Says(t, w, []string{"2 bottles added"}, nil)
	got := map[string]string{}
	for _, b := range h.Bottles(t) {
		got[b.Name] = fmt.Sprintf("%s %g %.2f %s %g", b.Ingredient, b.SizeML, *b.Price, b.Currency, b.Stock)
	}
	assert.Equal(t, map[string]string{"Hawse": "london-dry-gin 700 18.50 USD 2", "Snubber": "orgeat 700 9.00 USD 1", "Cleat": "falernum 700 9.00 USD 1"}, got)
}

// A column may be given to another field, and one currency holds for all.
func TestColumnsAndCurrencyAreSettled(t *testing.T) {
	h := webuitest.NewLaid()
	sent := url.Values{"do": {"take"}, "text": {"A,B,C,D\nHawse,orgeat,70cl,9\n"}, "col.0": {"name"}, "col.1": {"ingredient"}, "col.2": {"size"}, "col.3": {"price"}, "currency": {"eur"}}
	w := webuitest.Post(webuitest.PagesOf(t, h), stocksheet.Path, sent, false)
	webuitest.Says(t, w, []string{"1 bottle added"}, nil)
	require.Len(t, h.Bottles(t), 1)
	assert.Equal(t, "EUR", h.Bottles(t)[0].Currency)
}

func TestImportScenarios(t *testing.T) {
	for _, c := range []struct {
		name, file, text, do string
		status               int
		wrote                bool
		want, not            []string
	}{
		{name: "a slip", text: "id,name,ingredient,size_ml,stock,price,currency\nblue,Blue cap,gin,700,9,24.9,EUR\nred,Red cap,London dry gin,1000,1,,\n", status: 200, want: []string{"Row 2", "London dry gin", "1 bottle ready, 1 row to settle"}},
		{name: "changed and as before", do: "take", text: "id,name,ingredient,stock\nblue,Blue cap,london-dry-gin,9\nred,Red cap,London dry gin,1\n", status: 200, wrote: true, want: []string{"0 bottles added, 1 changed, 1 as before"}},
		{name: "nothing", status: 422, want: []string{"Choose a file, or paste"}},
		{name: "both", file: "name,ingredient\n", text: "<b>,x\n", status: 422, want: []string{"There is a file, and text in the box too", "&lt;b&gt;,x"}},
		{name: "no table", text: "hello there\n", status: 200, want: []string{"he name does not say which kind it is", "hello there\n</textarea>"}},
		{name: "no names", text: "size,cost\n700 ml,18.50\n", status: 422, want: []string{"no column holds the names of the bottles", "Nothing was written"}},
		{name: "a spreadsheet", file: "PK\x03\x04...", status: 422, want: []string{"save it as CSV"}},
		{name: "not UTF-8", file: "name,ingredient\nCr\xe8me,x\n", status: 200, want: []string{`"x" is not a kind known here`, "Crème"}},
		{name: "markup in a row", text: "name,ingredient,size_ml\n<i>,<u>,1\n", status: 200, want: []string{"&lt;u&gt;"}, not: []string{"<u>,1"}},
		{name: "a name that says no kind", text: "name,size_ml,abv_pct\nHawse,700,41\n", status: 200, want: []string{"the first letters of its kind", `name="remedy" value="2 ingredient London dry gin"`}, not: []string{"2 ingredient falernum"}},
		{name: "only bad rows", do: "take", text: "name,ingredient,size_ml\nx,moon dust,1\n", status: 200, want: []string{"0 bottles added", "moon dust,1"}},
		{name: "a quarter too much", text: strings.Repeat("name,ingredient\n", 80000), status: 413, want: []string{"more than 1 MiB"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.Stocked(t)
			w := sendFile(t, webuitest.PagesOf(t, h), c.file, c.do, c.text)
			assert.Equal(t, c.status, w.Code)
			webuitest.Says(t, w, c.want, c.not)
			if !c.wrote {
				assert.Len(t, h.Bottles(t), 5, "nothing is written")
			}
		})
	}
}

// A form that is too long by its own account is told so as a plain form, too.
func TestATextThatIsTooLong(t *testing.T) {
	w := webuitest.Post(webuitest.NewPages(t), stocksheet.Path, url.Values{"text": {strings.Repeat("x", frame.MaxBody)}}, false)
	assert.Equal(t, http.StatusRequestEntityTooLarge, w.Code)
	webuitest.Says(t, w, []string{"more than 1 MiB", "Split the file"}, nil)
}

// What is saved as CSV is the same house when it is imported again.
func TestStockGoesOutAndIn(t *testing.T) {
	h := webuitest.Stocked(t)
	h.KeepAll(t, house.Bottle{ID: "trick", Name: `=HYPERLINK("http://x","y")`, Ingredient: "lemon-juice", SizeML: 700, Note: "+1\n'-2"})
	w := webuitest.Get(webuitest.PagesOf(t, h), "/stock/stock.csv", "")
	require.Equal(t, http.StatusOK, w.Code)
	assert.Equal(t, `attachment; filename="stock.csv"`, w.Header().Get("Content-Disposition"))
	assert.Contains(t, w.Header().Get("Content-Type"), "text/csv; charset=utf-8")
	text, ok := strings.CutPrefix(w.Body.String(), "\uFEFF")
	require.True(t, ok, "spreadsheets are told that it is UTF-8")
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, exchange.StockColumns(), rows[0])
	assert.Equal(t, `'=HYPERLINK("http://x","y")`, rows[6][1], "no spreadsheet runs it")

	other := webuitest.NewLaid()
	w = sendFile(t, webuitest.PagesOf(t, other), "", "take", strings.ReplaceAll(w.Body.String(), "moon-dust", "falernum"))
	require.Equal(t, http.StatusOK, w.Code, inTheBox(t, w))
	want := h.Bottles(t)
	for i := range want {
		if want[i].Ingredient == "moon-dust" { // no catalogue has it
			want[i].Ingredient = "falernum"
		}
	}
	assert.Equal(t, want, other.Bottles(t))
}

func TestAWriteThatIsRefused(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.Laid{House: webuitest.Full(webuitest.Stocked(t).House)})
	w := sendFile(t, pages, "", "take", "name,ingredient,size_ml\nx,orgeat,1\n")
	assert.Equal(t, http.StatusServiceUnavailable, w.Code)
	webuitest.Says(t, w, []string{"no room left on the disk", "x,orgeat,1"}, nil)
}

func TestEveryColumnIsExplained(t *testing.T) {
	var names []string
	for _, c := range stocksheet.ColumnNotes() {
		names = append(names, c.Name)
		assert.NotEmpty(t, c.Holds, c.Name)
	}
	assert.Equal(t, exchange.StockColumns(), names)
	page := webuitest.Get(webuitest.NewPages(t), stocksheet.Path, "")
	sample := regexp.MustCompile(`(?s)<code>(name,.*?)</code>`).FindStringSubmatch(page.Body.String())
	require.NotNil(t, sample)
	read, err := exchange.ReadSheet(strings.NewReader(sample[1]), webuitest.Bar{}, nil, exchange.Settled{})
	require.NoError(t, err)
	r := read.Reading()
	assert.Empty(t, r.Bad, "the file to start from can be read")
	assert.Len(t, r.Items, 2)
}

// What nobody drinks is left out by default, named, and taken in when somebody says that it is
// a bottle.
func TestWhatNobodyDrinksIsLeftOut(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	const list = "Item,Size,On hand\nHawse London dry gin,70cl,2\norange bin bags,1L,4\nBlue roll,1L,1\n"
	w := webuitest.Post(pages, stocksheet.Path, url.Values{"do": {"read"}, "text": {list}}, false)
	webuitest.Says(t, w, []string{"1 bottle ready", "2 rows are not bottles: left out", "<span>orange bin bags</span>", `aria-label="Blue roll is a bottle"`}, []string{"to settle", "Row 3", "Row 4"})
	w = webuitest.Post(pages, stocksheet.Path, url.Values{"do": {"read"}, "text": {list}, "remedy": {"4 row take in"}}, false)
	webuitest.Says(t, w, []string{"1 row is not a bottle: left out", "Row 4", "does not say which kind"}, []string{"Row 3"})
	w = webuitest.Post(pages, stocksheet.Path, url.Values{"do": {"take"}, "text": {list}}, false)
	webuitest.Says(t, w, []string{"1 bottle added"}, []string{"to settle"})
	assert.Len(t, h.Bottles(t), 1)
}
