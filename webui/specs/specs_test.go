package specs_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

func TestSpecsScenarios(t *testing.T) {
	for _, c := range []struct {
		name, path string
		status     int
		want, not  []string
	}{
		{name: "all", path: "/specs", status: 200,
			want: []string{"4 specs", "Halyard Sour", "94 of 100, balanced", "14.5\u00a0±\u00a00.6\u00a0%\u00a0vol", "167\u00a0±\u00a06\u00a0mL", "1.4",
				"tree nuts (orgeat)", "/bench?spec=halyard-sour", `<a href="/specs/halyard-sour">Halyard Sour</a>`, "No costs: No bottle has a price yet.", "/specs/import", "/specs/halyard-sour/card", "Tropical; reads as Sour", `<option value="tiki">`, webuitest.FootLine},
			not: []string{"Flip", "Show all"}},
		{name: "by name", path: "/specs?q=main", status: 200, want: []string{"1 of 4 specs with “main”<", "Mainbrace", "Show all 4", `value="main"`}, not: []string{"Spindrift"}},
		{name: "by family", path: "/specs?family=tiki", status: 200, want: []string{"2 of 4 specs", `value="tiki" selected`, "/specs/print?family=tiki"}, not: []string{"Nutcracker"}},
		{name: "for a guest", path: "/specs?avoid=eggs", status: 200, want: []string{"3 of 4 specs</strong> for a guest: without eggs"}, not: []string{"Nutcracker"}},
		{name: "none", path: "/specs?q=zzz", status: 200, want: []string{"Nothing found", "show all 4"}},
		{name: "markup", path: "/specs?q=%3Cscript%3E", status: 200, want: []string{"&lt;script&gt;"}, not: []string{`value="<script`}},
		{name: "an allergen that is not known", path: "/specs?avoid=nutz", status: 400, want: []string{"could not be read"}},
		{name: "a card", path: "/specs/nutcracker/card", status: 200,
			want: []string{"Card of Nutcracker", "½ oz orgeat", "1 egg white", "Dry shake, up. <span class=\"stands\">Amber, without ice, in a 150 mL coupe: 10 mL under the rim.", "<strong>Contains</strong> <span>eggs (egg white)</span>, <span>tree nuts (orgeat)</span>",
				"Raw egg can carry Salmonella", "standard&nbsp;drinks (United States)", `class="sheet a6"`}},
		{name: "no such card", path: "/specs/nowhere/card", status: 404, want: []string{"There is no such page"}},
		{name: "the collection", path: "/specs/print", status: 200, want: []string{`class="sheet a4"`, "<h2>Spindrift</h2>", "Raw egg"}},
		{name: "part of the collection", path: "/specs/print?q=spin", status: 200, want: []string{"<h2>Spindrift</h2>"}, not: []string{"<h2>Mainbrace</h2>"}},
		{name: "the map", path: "/map", status: 200, want: []string{`<svg class="map"`, "Everything on the map", `<option value="mainbrace"`, "9 ingredients"}, not: []string{"When it runs out"}},
		{name: "a drink on the map", path: "/map?spec=halyard-sour", status: 200, want: []string{"The pours of Halyard Sour, and what is most like each", "If it runs out", "<td>poured</td>", "with the pours of Halyard Sour"}},
		{name: "a cover on the map", path: "/map?spec=nutcracker&missing=orgeat", status: 200, want: []string{"Instead of orgeat", "New allergen: sesame. ½\u00a0oz sesame orgeat", "<td>ran out</td>"}},
		{name: "out of what is not in the drink", path: "/map?spec=halyard-sour&missing=orgeat", status: 200, want: []string{"Orgeat is not a pour"}},
		{name: "no such drink on the map", path: "/map?spec=nowhere", status: 404},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := webuitest.Get(webuitest.NewPages(t), c.path, "")
			assert.Equal(t, c.status, w.Code)
			for _, s := range c.want {
				assert.True(t, strings.Contains(w.Body.String(), s), "should hold %q", s)
			}
			for _, s := range c.not {
				assert.False(t, strings.Contains(w.Body.String(), s), "should not hold %q", s)
			}
		})
	}
}

// A spec that cannot be scored keeps its pours; a bar that breaks is no page.
func TestSpecsThatCannotBeScored(t *testing.T) {
	h := webuitest.NewHouse()
	h.Drinks[0].Spec.Name = "Weightless"
	w := webuitest.Get(webuitest.PagesOf(t, h), "/specs", "")
	assert.Equal(t, http.StatusOK, w.Code)
	assert.Contains(t, w.Body.String(), "There is nothing in the drink to weigh")
	h = webuitest.NewHouse()
	h.Drinks[0].Spec.Name = "Broken"
	assert.Equal(t, http.StatusInternalServerError, webuitest.Get(webuitest.PagesOf(t, h), "/specs", "").Code)
}
