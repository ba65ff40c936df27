package webui

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBeforeAndAfter(t *testing.T) {
	p := newPages(t)
	shown := []string{"Before and after", `<tr class="moved"><th scope="row">lemon juice</th><td>¼ oz</td><td>¾ oz</td></tr>`,
		`<th scope="row">score of 100</th><td>94, balanced</td><td>94, balanced</td>`, `<th scope="row">London dry gin</th><td>2 oz</td><td>2 oz</td>`}
	w := post(p, "/", fields("text", sweetDraft, "become", goodDraft), false)
	tells(t, w, 200, append(shown, `name="before" value="`+sweetDraft)...)

	// It stays while the draft is typed in, and until it is let go.
	tells(t, post(p, "/", fields("text", goodDraft, "before", sweetDraft), true), 200, shown...)
	w = post(p, "/", fields("text", goodDraft, "before", sweetDraft, "compare", "stop"), false)
	tells(t, w, 200, "Hold this one to compare with", `name="before" value=""`)
	lacks(t, w, "Before and after")
	w = post(p, "/", fields("text", goodDraft, "before", sweetDraft, "compare", "hold"), false)
	tells(t, w, 200, `name="before" value="`+goodDraft)
	lacks(t, w, "Before and after")

	// What is another drink is not compared, nor what cannot be read.
	lacks(t, post(p, "/", fields("text", "Mainbrace\n2 oz gin\nstir", "become", goodDraft), false), "Before and after")
	tells(t, post(p, "/", fields("text", goodDraft, "before", "2 oz gni"), false), 200, "Hold this one")
	tells(t, post(p, "/", fields("text", nutDraft, "before", goodDraft), false), 200,
		"<th scope=\"row\">simple syrup</th><td>½ oz</td><td>—</td>", "<th scope=\"row\">orgeat</th><td>—</td><td>½ oz</td>", "<td>shake</td><td>dry shake</td>")
	tells(t, post(p, "/", fields("text", goodDraft, "before", "Broken\n2 oz gin\nstir"), false), 500)
}

func TestADraftIsBroughtToAVolume(t *testing.T) {
	p := newPages(t)
	// The fake drink is 166.6 mL whatever is poured, so 333.2 mL is twice of it.
	w := post(p, "/", fields("text", goodDraft, "scale", "volume", "volume", "333,2"), false)
	tells(t, w, 200, "Halyard Sour\n4 oz London dry gin\n1½ oz lemon juice\n1 oz simple syrup\nshake, up</textarea>", "Undo the change", "Before and after", `value="333,2"`)
	tells(t, post(p, "/", fields("text", goodDraft, "scale", "volume", "volume", "200"), true), 200, `<input type="hidden" value="Halyard Sour
2½ oz London dry gin
1 oz lemon juice
1/2 oz simple syrup
shake, up">`)
	for _, typed := range []string{"", "lots", "-5", "0", "1e9", "NaN"} {
		w = post(p, "/", fields("text", goodDraft, "scale", "volume", "volume", typed), false)
		tells(t, w, 422, "Write the volume in mL, 20 to 10000", goodDraft, ">94<")
	}
	topped := strings.Replace(goodDraft, "shake, up", "top lemon juice\nshake, long", 1)
	tells(t, post(p, "/", fields("text", topped, "scale", "volume", "volume", "60"), false), 422, "What tops it up is 90 mL alone")
	tells(t, post(p, "/", fields("text", topped, "scale", "volume", "volume", "243.2"), false), 200, "4 oz London dry gin", "top lemon juice\nshake, long</textarea>")
	lacks(t, post(p, "/", fields("text", goodDraft, "volume", "300"), false), "4 oz London dry gin\n1½ oz lemon juice\n1 oz simple syrup\nshake, up</textarea>")
}

func TestRowsWithoutScripts(t *testing.T) {
	p := newPages(t)
	form := formOfRows(rowsOf(goodDraft, 3))
	form["row-amount"][1] = "¼"
	form.Set("text", goodDraft)
	form.Set("view", viewRows)
	w := post(p, "/", form, false)
	tells(t, w, 200, "Out of balance", "Halyard Sour\n2 oz gin\n¼ oz lemon juice\n1/2 oz simple syrup\nshake, up</textarea>", `data-view="rows"`)

	// In the text, what the hidden rows hold is of no account.
	form.Set("view", viewText)
	tells(t, post(p, "/", form, false), 200, "Balanced", `data-view="text"`)
	// Asked for as rows, the text still counts; asked for as text, the rows do.
	form["view"] = []string{viewText, viewRows}
	tells(t, post(p, "/", form, false), 200, "Balanced", `data-view="rows"`)
	form["view"] = []string{viewRows, viewText}
	tells(t, post(p, "/", form, false), 200, "Out of balance", `data-view="text"`)
}

func TestNamesForARow(t *testing.T) {
	w := get(newPages(t), "/names?name=lem", "")
	tells(t, w, 200, `<li role="option" id="option-0" aria-selected="false">lemon juice</li>`)
	assert.NotContains(t, w.Body.String(), "<button")
	assert.Empty(t, strings.TrimSpace(get(newPages(t), "/names?name=l", "").Body.String()))
}

func TestADraftAsACard(t *testing.T) {
	p := newPages(t)
	tells(t, post(p, "/", fields("text", goodDraft), false), 200, `href="/card?text=Halyard`)
	tells(t, get(p, "/card?"+fields("text", nutDraft).Encode(), ""), 200, "A drink without a name", "½ oz orgeat", "tree nuts (orgeat)", `class="sheet a6"`, `<p class="kin">Sour</p>`, "Raw egg")
	w := get(p, "/card?"+fields("text", "2 oz gni").Encode(), "")
	assert.Equal(t, 303, w.Code)
	assert.Equal(t, "/?text=2+oz+gni", w.Header().Get("Location"))
	tells(t, get(p, "/card", ""), 303)
}
