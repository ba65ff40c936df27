package bench_test

import (
	"html"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/frame"
	"counterpour/webui/webuitest"
)

func TestBenchScenarios(t *testing.T) {
	form := func(pairs ...string) url.Values {
		v := url.Values{}
		for i := 0; i < len(pairs); i += 2 {
			v.Add(pairs[i], pairs[i+1])
		}
		return v
	}
	for _, c := range []struct {
		name     string
		method   string
		path     string
		form     url.Values
		fragment bool
		status   int
		want     []string
		not      []string
	}{
		{name: "an empty bench", path: "/bench", status: 200,
			want: []string{"<!doctype html>", "Nothing poured yet", "Halyard Sour", "Score it", webuitest.FootLine}, not: []string{"of 100"}},
		{name: "a draft in the address", path: "/?text=" + url.QueryEscape(webuitest.GoodDraft), status: 200,
			want: []string{"Balanced", ">94<", "<textarea"}},
		{name: "a good draft, without scripts", method: "POST", path: "/", form: form("text", webuitest.GoodDraft), status: 200,
			want: []string{"How the score is worked out", "<li>2\u00a0oz gin count as 60.6\u00a0mL of 40\u00a0% spirit.</li>", "Ratio 23.", "17 more lines follow in the same way, the last of them: Ratio 40.",
				"<!doctype html>", ">94<", "of 100", "Balanced", "96\u00a0% likely", "Daisy 3\u00a0%", "About 6 in 10",
				"3/4 oz lemon juice", "written as gin", "It ran out", "167", "± 6 mL", "14.5", "± 0.6 % vol", "−6", webuitest.FootLine,
				"No allergen is recorded for these pours", `role="img"`, "<caption>",
				"Halyard Sour\n4 oz gin\n1½ oz lemon juice\n1 oz simple syrup\nshake, up\"", "Halyard Sour\n60 ml gin\n22.5 ml lemon juice\n15 ml simple syrup", "In mL", "Copy as text"},
			not: []string{"What is off", "Not for this guest", "covers-title", "In oz"}},
		{name: "the same, to a script", method: "POST", path: "/", form: form("text", webuitest.GoodDraft), fragment: true, status: 200,
			want: []string{">94<", `id="faults" data-hx-swap-oob`, "Score 94 of 100, balanced. Sour."}, not: []string{"<!doctype", "<textarea"}},
		{name: "too sweet", method: "POST", path: "/", form: form("text", webuitest.SweetDraft), status: 200,
			want: []string{"Out of balance", ">26<", "too little lemon juice", "4.8 ± 0.5 noticeable steps short", "Apply",
				"2 oz gin\n# pressed this morning\n¾ oz lemon juice\n1/2 oz simple syrup\nshake, up\"", "Sour is below the range",
				"Almost no known drink"}},
		{name: "the fix applied, without scripts", method: "POST", path: "/", form: form("text", webuitest.SweetDraft, "become", webuitest.GoodDraft), status: 200,
			want: []string{"Balanced", "Undo the change", "1/4 oz lemon juice"}, not: []string{`class="undo" hidden>` + "\n<button type=\"submit\""}},
		{name: "line ends of a form", method: "POST", path: "/", form: form("text", strings.ReplaceAll(webuitest.GoodDraft, "\n", "\r\n")), status: 200,
			want: []string{"Halyard Sour\n2 oz gin\n"}, not: []string{"\r"}},
		{name: "a slip of the pen", method: "POST", path: "/", form: form("text", "2 oz gin\n3/4 oz lemmon jooce\nshake"), status: 422,
			want: []string{"To fix in the draft", "Line 2", "3/4 oz lemmon jooce", "Unknown ingredient", "2 oz gin\n3/4 oz lemon juice\nshake\"", "2 oz gin\n3/4 oz lemmon jooce\nshake</textarea>",
				"Incomplete: this leaves out line 2.", "Not scored yet", "Anything may be in the lines"},
			not: []string{"How to fix it", "It ran out", "Keep this one", "Print it", "In mL"}},
		{name: "a guest, while a line cannot be read", method: "POST", path: "/", form: form("text", "2 oz gin\n3/4 oz lemmon jooce\nshake", "avoid", "celery"), status: 422,
			want: []string{"Not for this guest", "may hold anything in line 2, which could not be read"}},
		{name: "no line can be read", method: "POST", path: "/", form: form("text", "2 oz gnx\n3/4 oz lemmon jooce"), status: 422,
			want: []string{"Line 1", "Line 2"}, not: []string{"of 100"}},
		{name: "half typed, to a script", method: "POST", path: "/", form: form("text", "2 oz gin\n3/4 oz lemm"), fragment: true, status: 200,
			want: []string{"Line 2", "1 thing to fix", "Incomplete: this leaves out line 2.", "Not scored yet"}, not: []string{"Nothing poured"}},
		{name: "everything rubbed out", method: "POST", path: "/", form: form("text", " \n "), fragment: true, status: 200,
			want: []string{"Nothing poured yet"}, not: []string{"Line 1"}},
		{name: "nothing to weigh", method: "POST", path: "/", form: form("text", "Weightless\n2 oz gin\nstir"), status: 422,
			want: []string{"There is nothing in the drink to weigh", "Weightless\n2 oz gin"}},
		{name: "markup in a draft", method: "POST", path: "/", form: form("text", "<script>alert(1)</script>\n2 oz gin\nstir"), status: 200,
			want: []string{"&lt;script&gt;alert(1)"}, not: []string{"<script>alert"}},
		{name: "allergens and cautions", method: "POST", path: "/", form: form("text", webuitest.NutDraft), status: 200,
			want: []string{"<strong>Contains</strong>", "eggs (egg white)", "tree nuts (orgeat)", "<strong>May contain</strong>", "soybeans (orgeat)",
				"Raw egg can carry Salmonella", "A food agency"}, not: []string{"Not for this guest"}},
		{name: "a guest who must not have nuts", method: "POST", path: "/", form: form("text", webuitest.NutDraft, "avoid", "tree nuts"), status: 200,
			want: []string{"Not for this guest", "contains tree nuts (orgeat)", `value="tree nuts" checked`,
				`<strong>Not for this guest:</strong> contains tree nuts (orgeat).</p>`, `name="missing" value="orgeat" aria-label="Cover it: pour something instead of orgeat">Cover it</button>`}, not: []string{"May contain</strong> <span class=\"avoided\""}},
		{name: "a guest who drinks no alcohol", method: "POST", path: "/", form: form("text", webuitest.GoodDraft, "diet", "alcohol-free"), status: 200,
			want: []string{"Not for this guest", "holds alcohol (London dry gin)", `value="alcohol-free" checked`, "For one guest: <strong>alcohol-free (at most 0.5 % vol)</strong>"}},
		{name: "a guest with a limit on strength", method: "POST", path: "/", form: form("text", webuitest.GoodDraft, "strength", "low"), status: 200,
			want: []string{"Not for this guest", "comes to 14.5\u00a0% vol"}},
		{name: "a diet that is not known", method: "POST", path: "/", form: form("text", webuitest.GoodDraft, "diet", "carnivore"), status: 400,
			want: []string{"That could not be read"}},
		{name: "a bottle that nobody has stated", method: "POST", path: "/", form: form("text", "2 oz gin\n1 oz unlabelled liqueur\nstir", "avoid", "celery"), status: 200,
			want: []string{"Not for this guest", "not on record (unlabelled liqueur)", "Not stated"}},
		{name: "something ran out", method: "POST", path: "/", form: form("text", webuitest.NutDraft, "missing", "orgeat"), status: 200,
			want: []string{"Instead of orgeat", "New allergen:", "sesame (sesame orgeat)", "½ oz sesame orgeat", "Less nutty; more green.", "−0.2\u00a0% vol and +1\u00a0mL",
				`<p class="notice">A guest may notice</p>`, `class="shifts"`, "Drier by 1.8 noticeable steps: a guest may notice", "more clove", "Straw turns amber.", "1.3 noticeable steps away", "Pour this", `name="covering" value="orgeat"`}},
		{name: "covers stay open", method: "POST", path: "/", form: form("text", webuitest.NutDraft, "covering", "orgeat"), fragment: true, status: 200,
			want: []string{"Instead of orgeat", "1 cover for orgeat"}},
		{name: "covers closed", method: "POST", path: "/", form: form("text", webuitest.NutDraft, "covering", "orgeat", "close", "covers"), fragment: true, status: 200,
			not: []string{"Instead of orgeat"}},
		{name: "nothing covers it", method: "POST", path: "/", form: form("text", webuitest.NutDraft, "missing", "orgeat", "avoid", "sesame"), status: 200,
			want: []string{"Nothing here keeps this drink.", "Sesame orgeat will not do for orgeat: contains sesame.", "Not safe until a label is read:", "if the label of orgeat names no sesame.", "For one guest: without sesame", `Nearest on the menu: <a href="/specs/halyard-sour?avoid=sesame">Halyard Sour</a>. A guest will notice.`,
				`Nearest riff: <a href="/bench?avoid=sesame&amp;text=`, "Pour simple syrup. A guest will notice."}, not: []string{"Pour this", "Offer the guest another one", "Pour it without"}},
		{name: "the drink can do without it", method: "POST", path: "/", form: form("text", webuitest.NutDraft, "missing", "orgeat"), status: 200,
			want: []string{"Or pour it without orgeat. A guest will notice; it scores 71.", "Pour it without</button>"}, not: []string{"Nothing here keeps this drink"}},
		{name: "out of what is not in the drink", method: "POST", path: "/", form: form("text", webuitest.GoodDraft, "missing", "orgeat"), status: 200,
			want: []string{"Orgeat is not a pour of this drink", ">94<"}},
		{name: "an allergen that is not known", method: "POST", path: "/", form: form("text", webuitest.GoodDraft, "avoid", "nutz"), status: 400,
			want: []string{"That could not be read", webuitest.FootLine}},
		{name: "the bar breaks", method: "POST", path: "/", form: form("text", "Broken\n2 oz gin\nstir"), status: 500,
			want: []string{"Something broke behind the bar", webuitest.FootLine}, not: []string{"pump"}},
		{name: "the bar breaks, to a script", method: "POST", path: "/", form: form("text", "Broken\n2 oz gin\nstir"), fragment: true, status: 500,
			want: []string{"Something broke"}, not: []string{"<!doctype", "pump"}},
		{name: "too long", method: "POST", path: "/", form: form("text", strings.Repeat("x", frame.MaxBody)), status: 413,
			want: []string{"more than a page takes"}},
		{name: "no such page", path: "/nowhere", status: 404, want: []string{"There is no such page", `href="/tonight">What can be poured tonight</a>`, `href="/bench">To the bench</a>`, webuitest.FootLine}},
		{name: "wrong method", method: "PUT", path: "/", status: 405, want: []string{"not how this page works"}},
		{name: "names for a line", path: "/names?line=2+oz+lon", fragment: true, status: 200,
			want: []string{`data-line="2 oz London dry gin"`}, not: []string{"lemon"}},
		{name: "a line that is no pour", path: "/names?line=shake", fragment: true, status: 200, not: []string{"<li>"}},
		{name: "a name that is whole", path: "/names?line=2+oz+lemon+juice", fragment: true, status: 200, not: []string{"<li>"}},
		{name: "names break", path: "/names?line=2+oz+broken", fragment: true, status: 500, want: []string{"Something broke"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := webuitest.Ask(t, c.method, c.path, c.form, c.fragment)
			body := w.Body.String()
			assert.Equal(t, c.status, w.Code)
			assert.Equal(t, frame.ContentPolicy, w.Header().Get("Content-Security-Policy"))
			assert.Equal(t, "nosniff", w.Header().Get("X-Content-Type-Options"))
			assert.Contains(t, w.Header().Get("Vary"), "HX-Request")
			// The page is too long to be printed for every fault.
			said := body + html.UnescapeString(body)
			for _, s := range c.want {
				assert.True(t, strings.Contains(said, s), "should hold %q", s)
			}
			for _, s := range c.not {
				assert.False(t, strings.Contains(body, s), "should not hold %q", s)
			}
			if c.fragment && c.status >= 400 {
				assert.Equal(t, "#trouble", w.Header().Get("HX-Retarget"))
			}
		})
	}
}

func TestHeadHasNoBody(t *testing.T) {
	w := webuitest.Ask(t, http.MethodHead, "/", nil, false)
	require.Equal(t, http.StatusOK, w.Code)
	assert.Empty(t, w.Body.String())
}
