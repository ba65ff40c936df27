package bench_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/bench"
	"counterpour/webui/webuitest"
)

func TestBeforeAndAfter(t *testing.T) {
	p := webuitest.NewPages(t)
	shown := []string{"Before and after", `<tr class="moved"><th scope="row">lemon juice</th><td>¼ oz</td><td>¾ oz</td></tr>`,
		`<th scope="row">score of 100</th><td>94, balanced</td><td>94, balanced</td>`, `<th scope="row">London dry gin</th><td>2 oz</td><td>2 oz</td>`}
	w := webuitest.Post(p, "/", webuitest.Fields("text", webuitest.SweetDraft, "become", webuitest.GoodDraft), false)
	webuitest.Tells(t, w, 200, append(shown, `name="before" value="`+webuitest.SweetDraft)...)

	// It stays while the draft is typed in, and until it is let go.
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "before", webuitest.SweetDraft), true), 200, shown...)
	w = webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "before", webuitest.SweetDraft, "compare", "stop"), false)
	webuitest.Tells(t, w, 200, "Keep this one to compare with", `name="before" value=""`)
	webuitest.Lacks(t, w, "Before and after")
	w = webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "before", webuitest.SweetDraft, "compare", "hold"), false)
	webuitest.Tells(t, w, 200, `name="before" value="`+webuitest.GoodDraft)
	webuitest.Lacks(t, w, "Before and after")

	// What is another drink is not compared, nor what cannot be read.
	webuitest.Lacks(t, webuitest.Post(p, "/", webuitest.Fields("text", "Mainbrace\n2 oz gin\nstir", "become", webuitest.GoodDraft), false), "Before and after")
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "before", "2 oz gnx"), false), 200, "Keep this one")
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.NutDraft, "before", webuitest.GoodDraft), false), 200,
		"<th scope=\"row\">simple syrup</th><td>½ oz</td><td>—</td>", "<th scope=\"row\">orgeat</th><td>—</td><td>½ oz</td>", "<td>shake</td><td>dry shake</td>")
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "before", "Broken\n2 oz gin\nstir"), false), 500)
}

func TestADraftIsBroughtToAVolume(t *testing.T) {
	p := webuitest.NewPages(t)
	// The fake drink is 166.6 mL whatever is poured, so 333.2 mL is twice of it.
	w := webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "scale", "volume", "volume", "333,2"), false)
	webuitest.Tells(t, w, 200, "Halyard Sour\n4 oz gin\n1½ oz lemon juice\n1 oz simple syrup\nshake, up</textarea>", "Undo the change", "Before and after", `value="333,2"`)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "scale", "volume", "volume", "200"), true), 200, `<input type="hidden" value="Halyard Sour
2½ oz gin
1 oz lemon juice
1/2 oz simple syrup
shake, up">`)
	for _, typed := range []string{"", "lots", "-5", "0", "1e9", "NaN"} {
		w = webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "scale", "volume", "volume", typed), false)
		webuitest.Tells(t, w, 422, "Write the volume in mL, 20 to 10000", webuitest.GoodDraft, ">94<")
	}
	webuitest.Lacks(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft, "volume", "300"), false), "4 oz gin\n1½ oz lemon juice\n1 oz simple syrup\nshake, up</textarea>")
}

func TestRowsWithoutScripts(t *testing.T) {
	p := webuitest.NewPages(t)
	form := formOfRows(bench.RowsOf(webuitest.GoodDraft, 3))
	form["row-amount"][1] = "¼"
	form.Set("text", webuitest.GoodDraft)
	form.Set("view", bench.ViewRows)
	w := webuitest.Post(p, "/", form, false)
	webuitest.Tells(t, w, 200, "Out of balance", "Halyard Sour\n2 oz gin\n¼ oz lemon juice\n1/2 oz simple syrup\nshake, up</textarea>", `data-view="rows"`)

	// In the text, what the hidden rows hold is of no account.
	form.Set("view", bench.ViewText)
	webuitest.Tells(t, webuitest.Post(p, "/", form, false), 200, "Balanced", `data-view="text"`)
	// Asked for as rows, the text still counts; asked for as text, the rows do.
	form["view"] = []string{bench.ViewText, bench.ViewRows}
	webuitest.Tells(t, webuitest.Post(p, "/", form, false), 200, "Balanced", `data-view="rows"`)
	form["view"] = []string{bench.ViewRows, bench.ViewText}
	webuitest.Tells(t, webuitest.Post(p, "/", form, false), 200, "Out of balance", `data-view="text"`)
}

func TestNamesForARow(t *testing.T) {
	w := webuitest.Get(webuitest.NewPages(t), "/names?name=lem", "")
	webuitest.Tells(t, w, 200, `<li role="option" id="option-0" aria-selected="false">lemon juice</li>`)
	assert.NotContains(t, w.Body.String(), "<button")
	assert.Empty(t, strings.TrimSpace(webuitest.Get(webuitest.NewPages(t), "/names?name=l", "").Body.String()))
}

func TestADraftAsACard(t *testing.T) {
	p := webuitest.NewPages(t)
	webuitest.Tells(t, webuitest.Post(p, "/", webuitest.Fields("text", webuitest.GoodDraft), false), 200, `href="/card?text=Halyard`)
	webuitest.Tells(t, webuitest.Get(p, "/card?"+webuitest.Fields("text", webuitest.NutDraft).Encode(), ""), 200, "A drink without a name", "½ oz orgeat", "tree nuts (orgeat)", `class="sheet a6"`, `<p class="kin">Sour</p>`, "Raw egg")
	w := webuitest.Get(p, "/card?"+webuitest.Fields("text", "2 oz gnx").Encode(), "")
	assert.Equal(t, 303, w.Code)
	assert.Equal(t, "/bench?text=2+oz+gnx", w.Header().Get("Location"))
	webuitest.Tells(t, webuitest.Get(p, "/card", ""), 303)
}
