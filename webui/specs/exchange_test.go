package specs_test

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/webui/frame"
	"counterpour/webui/webuitest"
)

func TestSpecsGoOut(t *testing.T) {
	p := webuitest.NewPages(t)
	for _, c := range []struct {
		query, kind, file string
		want, not         []string
	}{
		{"as=text", "text/plain; charset=utf-8", "specs.txt", []string{"Halyard Sour\n2 oz London dry gin\n", "Nutcracker\n"}, nil},
		{"as=text&spec=mainbrace", "text/plain; charset=utf-8", "mainbrace.txt", []string{"Mainbrace\n"}, []string{"Nutcracker"}},
		{"as=csv", "text/csv; charset=utf-8", "specs.csv", []string{"id,name,method,service,amount,unit,ingredient,note,after,hot_c,glass,garnish,rim,steps\n", "halyard-sour,Halyard Sour,shake,up,2,oz,london-dry-gin,,,,,,,\n"}, nil},
		{"as=json-ld&spec=mainbrace", "application/ld+json; charset=utf-8", "mainbrace.json", []string{`"@type": "Recipe"`, `"½ oz falernum"`}, []string{"@graph"}},
		{"as=json-ld", "application/ld+json; charset=utf-8", "specs.json", []string{"@graph"}, nil},
	} {
		w := webuitest.Get(p, "/specs/export?"+c.query, "")
		webuitest.Tells(t, w, 200, c.want...)
		webuitest.Lacks(t, w, c.not...)
		assert.Equal(t, c.kind, w.Header().Get("Content-Type"))
		assert.Equal(t, `attachment; filename="`+c.file+`"`, w.Header().Get("Content-Disposition"))
	}
	webuitest.Tells(t, webuitest.Get(p, "/specs/export?as=stone", ""), 400, "could not be read")
	webuitest.Tells(t, webuitest.Get(p, "/specs/export", ""), 400)
	webuitest.Tells(t, webuitest.Get(p, "/specs/export?as=text&spec=nowhere", ""), 404)
	assert.Empty(t, webuitest.Ask(t, http.MethodHead, "/specs/export?as=csv", nil, false).Body.String())
}

// What goes out comes in again as the same.
func TestSpecsComeBackAsTheyWent(t *testing.T) {
	for _, form := range []string{"text", "csv", "json-ld"} {
		p := webuitest.NewPages(t)
		text := webuitest.Get(p, "/specs/export?as="+form, "").Body.String()
		w := webuitest.Post(p, "/specs/import", webuitest.Fields("as", form, "text", text), false)
		webuitest.Tells(t, w, 200, "in the house already, and the same", "There is nothing to import")
		other := webuitest.PagesOf(t, &webuitest.House{})
		webuitest.Tells(t, webuitest.Post(other, "/specs/import", webuitest.Fields("as", form, "text", text), false), 200, "Import all 4", "Halyard Sour: new")
		webuitest.Tells(t, webuitest.Post(other, "/specs/import", webuitest.Fields("as", form, "text", text, "do", "all"), false), 200, "4 new, 0 changed, 0 as they were", `href="/specs/nutcracker"`, ">\n</textarea>")
		assert.Equal(t, text, webuitest.Get(other, "/specs/export?as="+form, "").Body.String(), form)
	}
}

// What is laid on a drink stands in what was read, since it may be what a guest avoids.
func TestThePreviewTellsTheGarnish(t *testing.T) {
	w := webuitest.Post(webuitest.NewPages(t), "/specs/import", webuitest.Fields("as", "text", "text", "Dogwatch\n2 oz London dry gin\n1 oz lemon juice\nshake, up\ngarnish: crushed pistachios\nrim: salt"), false)
	webuitest.Tells(t, w, 200, `<p class="small">shake, up · crushed pistachios · rim of salt</p>`)
}

const pasted = "Halyard Sour\n2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up\n\nDogwatch\n2 oz gin\n1 oz lemmon juice\nshake\n\nQuiet Berth\n2 oz gin\n1 oz lemon juice\nshake\n"

func TestWhatCannotBeReadIsNamed(t *testing.T) {
	h := webuitest.NewHouse()
	for _, p := range h.Shelf().Profiles() {
		if p == webuitest.Gin {
			p.Aliases = []string{"gin"}
			t.Cleanup(func() { p.Aliases = nil })
		}
	}
	p := webuitest.PagesOf(t, h)
	unchanged := func() {
		t.Helper()
		changes, err := h.Store().Changes(t.Context(), 0, 100)
		require.NoError(t, err)
		assert.Len(t, changes, 4)
	}
	reads := []string{"line 7: Dogwatch", "line 9:", `unknown ingredient "lemmon juice"`, "replaces version 1", "simple syrup from ½ oz to ¾ oz", "Quiet Berth: new</p>\n<ul class=\"build\"><li>2 oz London dry gin</li><li>1 oz lemon juice</li></ul>", "Import the 2 that can be read", pasted + "</textarea>"}
	webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", "text", "text", pasted), false), 200, reads...)
	unchanged()
	webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", "text", "text", pasted, "do", "all"), false), 422, append(reads, "Nothing was imported")...)
	unchanged()
	w := webuitest.Post(p, "/specs/import", webuitest.Fields("as", "text", "text", pasted, "do", "good"), false)
	webuitest.Tells(t, w, 200, "1 new, 1 changed, 0 as they were, 1 left out", "line 7: Dogwatch", pasted+"</textarea>")
	assert.Equal(t, int64(2), webuitest.KeptSpec(t, h, "halyard-sour").Version)
	assert.Equal(t, "bar", lastActor(t, h, "quiet-berth"))

	webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", "csv", "text", "name,method,service,amount,unit,ingredient\nX,stir,up,two,oz,lemon juice\nY,stir,up,1,oz,lemon juice\nZ,,,1,oz,lemon juice\n"), false), 200,
		"row 2: x", "is not a number", "row 4: z", "is not known; use one of", "Import the 1 that can be read")
	for _, c := range []struct{ as, text, want string }{
		{"text", "", "There is no spec here"},
		{"csv", "", "The file is empty"},
		{"csv", "nonsense,more\n", `column "nonsense" is not known`},
		{"json-ld", "{", "This is not JSON: line 1"},
		{"json-ld", "{}", "There is no Recipe in this document"},
		{"text", "\xff\xfe", "not text in UTF-8"},
	} {
		webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", c.as, "text", c.text), false), 422, c.want)
	}
	webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", "stone"), false), 400)
	webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", "text", "text", pasted, "do", "burn"), false), 400)
	webuitest.Tells(t, webuitest.Post(p, "/specs/import", webuitest.Fields("as", "text", "text", "Print\n1 oz lemon juice\nshake", "do", "all"), false), 200, `href="/specs/print-spec"`)
}

func lastActor(t *testing.T, h *webuitest.House, slug string) string {
	t.Helper()
	history, err := h.Store().History(t.Context(), house.Ref{Kind: house.KindSpec, ID: slug})
	require.NoError(t, err)
	return history[len(history)-1].Actor
}

func TestAFileIsSent(t *testing.T) {
	p := webuitest.NewPages(t)
	csv := "name,method,service,amount,unit,ingredient\nDogwatch,stir,up,2,oz,lemon juice\n"
	w := webuitest.SendNamed(t, p, "/specs/import", "Menu.CSV", "\ufeff"+csv, webuitest.Fields("as", "text", "text", ""))
	webuitest.Tells(t, w, 200, "Dogwatch: new", csv+"</textarea>", `value="csv" selected`)
	webuitest.Tells(t, webuitest.SendNamed(t, p, "/specs/import", "notes", "Dogwatch\n2 oz lemon juice\nshake", webuitest.Fields("as", "text")), 200, "Dogwatch: new")
	// A form with an empty file keeps what was pasted.
	webuitest.Tells(t, webuitest.SendNamed(t, p, "/specs/import", "", "", webuitest.Fields("as", "text", "text", "Dogwatch\n2 oz lemon juice\nshake")), 200, "Dogwatch: new")
	webuitest.Tells(t, webuitest.SendNamed(t, p, "/specs/import", "wrong.csv", "PK\x03\x04\xff\xff", webuitest.Fields("as", "text")), 422, "not text in UTF-8")
	webuitest.Tells(t, webuitest.SendNamed(t, p, "/specs/import", "big.csv", strings.Repeat("x", frame.MaxBody), webuitest.Fields("as", "csv")), 413, "more than a page takes")
	r := httptest.NewRequest(http.MethodPost, "/specs/import", strings.NewReader("--x\r\nbroken"))
	r.Header.Set("Content-Type", "multipart/form-data; boundary=x")
	w = httptest.NewRecorder()
	p.ServeHTTP(w, r)
	webuitest.Tells(t, w, 400)
	webuitest.Tells(t, webuitest.Get(p, "/specs/import", ""), 200, "Paste them here", "Reading changes nothing")
}
