package bench_test

import (
	"html"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// A syrup of 50 °Bx has 1.2296 g/mL at 20 °C (ICUMSA, from memory); the alcohol
// of a spirit stays when water is added.
func TestToolsScenarios(t *testing.T) {
	q := func(pairs ...string) string {
		v := url.Values{}
		for i := 0; i < len(pairs); i += 2 {
			v.Set(pairs[i], pairs[i+1])
		}
		return "/tools?" + v.Encode()
	}
	for _, c := range []struct {
		name, path string
		status     int
		want, not  []string
	}{
		{name: "nothing asked", path: "/tools", status: 200, want: []string{"A syrup", `value="orange juice"`, "Diluted spirit", webuitest.FootLine}, not: []string{"Makes", `class="worked"`}},
		{name: "a syrup", path: q("tool", "syrup", "brix", "50", "yield", "1000"), status: 200,
			want: []string{"<dt>Sugar</dt><dd>615\u00a0g", "<dt>Water</dt><dd>615\u00a0g", "1000 mL weigh 1230\u00a0g at 1.230 g/mL", "Keeps 14 to 28 days"}, not: []string{"crystallises out"}},
		{name: "a litre of syrup", path: q("tool", "syrup", "brix", "50 °Bx", "yield", "1L"), status: 200, want: []string{"<dt>Sugar</dt><dd>615\u00a0g", "1000 mL weigh", `value="1L"`}},
		{name: "a syrup by weights", path: q("tool", "syrup", "brix", "1:1", "yield", "1000"), status: 200, want: []string{"<dt>Sugar</dt><dd>615\u00a0g", `value="1:1"`}},
		{name: "a rich one by weights", path: q("tool", "syrup", "brix", "2 : 1", "yield", "1000"), status: 200, want: []string{"66.7 % of that is sugar"}},
		{name: "of no water", path: q("tool", "syrup", "brix", "2:0", "yield", "1000"), status: 422, want: []string{"sugar to water by weight"}},
		{name: "a fruit is its juice", path: q("tool", "acid", "juice", "lemon", "amount", "500", "target", "lime"), status: 422, want: []string{"already holds"}},
		{name: "a syrup that crystallises", path: q("tool", "syrup", "brix", "70", "yield", "500"), status: 200, want: []string{"Above 66.6 °Bx"}},
		{name: "a syrup too thick", path: q("tool", "syrup", "brix", "90", "yield", "500"), status: 422, want: []string{"90 °Bx is out of range; use 0 to 85", `value="90"`, `role="alert"`}},
		{name: "no yield", path: q("tool", "syrup", "brix", "50", "yield", "0"), status: 422, want: []string{"0 mL must be more than 0"}},
		{name: "no number", path: q("tool", "syrup", "brix", "<thick>", "yield", "1"), status: 422, want: []string{"Write the sugar as a number, in °Bx", `value="&lt;thick&gt;"`}},
		{name: "not a number", path: q("tool", "syrup", "brix", "NaN", "yield", "1"), status: 422},
		{name: "a spirit", path: q("tool", "dilute", "amount", "700", "from", "57", "to", "40", "basis", "spirit"), status: 200,
			want: []string{"<dt>Makes</dt><dd>998\u00a0mL", "700\u00a0mL at 57 % vol holds as much as 998\u00a0mL at 40 % vol", "measured separately they are"}, not: []string{"is read as"}},
		{name: "a spirit in what may be litres", path: q("tool", "dilute", "amount", "0,7", "from", "57", "to", "40"), status: 200,
			want: []string{"0.70\u00a0mL at 57 % vol holds as much as 1.00\u00a0mL at 40 % vol", "0,7 is read as 0,7 mL. If litres are meant, write 0,7 L."}},
		{name: "a spirit in litres", path: q("tool", "dilute", "amount", "0,7 L", "from", "57", "to", "40"), status: 200, want: []string{"<dt>Makes</dt><dd>998\u00a0mL"}, not: []string{"is read as"}},
		{name: "a syrup in what may be litres", path: q("tool", "syrup", "brix", "50", "yield", "1"), status: 200, want: []string{"1 mL weigh 1.23\u00a0g", "1 is read as 1 mL"}},
		{name: "a spirit for a volume", path: q("tool", "dilute", "amount", "1000", "from", "60", "to", "30", "basis", "final"), status: 200,
			want: []string{"<dt>Spirit</dt><dd>500\u00a0mL", "<dt>Makes</dt><dd>1000\u00a0mL", `<option value="final" selected>`}},
		{name: "a spirit made stronger", path: q("tool", "dilute", "amount", "700", "from", "40", "to", "57"), status: 422, want: []string{"cannot be reached"}},
		{name: "a juice that is too sour", path: q("tool", "acid", "juice", "lemon juice", "amount", "500", "target", "lime"), status: 422, want: []string{"already holds"}},
		{name: "a juice that is not known", path: q("tool", "acid", "juice", "moon juice", "amount", "500"), status: 422, want: []string{"moon juice", "nearest: lemon juice"}},
		{name: "no juice", path: q("tool", "acid", "juice", "", "amount", "500"), status: 422, want: []string{"Name a juice"}},
		{name: "what is no juice", path: q("tool", "acid", "juice", "gin", "amount", "500"), status: 422, want: []string{"London dry gin is no juice"}},
		{name: "two lines", path: q("tool", "acid", "juice", "gin\n2 oz gin", "amount", "500"), status: 422},
		{name: "a tool that is not known", path: "/tools?tool=saw", status: 400},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := webuitest.Ask(t, http.MethodGet, c.path, nil, false)
			assert.Equal(t, c.status, w.Code)
			said := w.Body.String() + html.UnescapeString(w.Body.String())
			for _, s := range c.want {
				assert.True(t, strings.Contains(said, s), "should hold %q", s)
			}
			for _, s := range c.not {
				assert.False(t, strings.Contains(said, s), "should not hold %q", s)
			}
		})
	}
}

// A night adds up what is prepared for the drinks that can be poured, evenly.
func TestPrepForANight(t *testing.T) {
	h := webuitest.NewHouse()
	p := webuitest.PagesOf(t, h)
	webuitest.Tells(t, webuitest.Get(p, "/tools?tool=night&drinks=40", ""), http.StatusOK, "40 drinks, evenly over the", "<dt>Lemon juice</dt>")
	for _, drinks := range []string{"", "0", "-3", "2.5", "many", "1e9"} {
		webuitest.Tells(t, webuitest.Get(p, "/tools?tool=night&drinks="+drinks, ""), http.StatusUnprocessableEntity, `id="night-fault"`)
	}
	h.Dry = []string{"lemon-juice"}
	webuitest.Lacks(t, webuitest.Get(p, "/tools?tool=night&drinks=40", ""), "<dt>Lemon juice</dt>")
}
