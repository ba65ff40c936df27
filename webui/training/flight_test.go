package training_test

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/training"
	"counterpour/webui/webuitest"
)

// flightOf is the address of a flight of the menu, changed by pairs.
func flightOf(pairs ...string) string {
	v := url.Values{"drink": {"nutcracker"}, "axis": {"sweet"}, "builds": {"3"}, "step": {"1,5"}, "tasters": {"2"}, "each": {"60"}, "seed": {"2r"}}
	for i := 0; i < len(pairs); i += 2 {
		v.Set(pairs[i], pairs[i+1])
	}
	return training.FlightPath + "?" + v.Encode()
}

func TestFlightScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		path   string
		status int
		want   []string
		not    []string
	}{
		{name: "before the first plan", path: training.FlightPath, status: 200,
			want: []string{"No flight yet", `<option value="nutcracker"`, `<option value="halyard-sour" selected>`, `name="each" value=""`, webuitest.FootLine}, not: []string{"for whoever pours", "Print it"}},
		{name: "a drink of the menu", path: flightOf(), status: 200,
			want: []string{"Nutcracker: for whoever pours", "20.0 g of alcohol, 1.4 standard drinks of 14 g (United States)", "tree nuts (orgeat)", "Raw egg can carry Salmonella",
				"−1.5 steps", "as it is poured", "+1.5 steps", "In the glass: 8.00 g of sucrose per 100 ml.", "Its acid moves with it, by 0.4 steps", "Foam does not keep in a batch", "More sugar hides the acid.", "Batch for 3",
				"makes, shaken</th><td class=\"n\">60 mL</td><td class=\"n\">180 mL", "Taster 2", "Number them by sweetness, 1 the least", "Taste, then spit", "Other codes and orders", "Plan it again", "Ask every taster about allergies"},
			not: []string{"Taster 3", "No flight yet", "water, for the ice"}},
		{name: "a drink of one's own", path: flightOf("drink", "", "text", webuitest.GoodDraft), status: 200, want: []string{"Halyard Sour: for whoever pours", "2 oz gin\n"}},
		{name: "a drink without a name", path: flightOf("drink", "", "text", "2 oz gin\nstir, up"), status: 200, want: []string{"the drink in the box: for whoever pours"}},
		{name: "too much for one taster", path: flightOf("builds", "5"), status: 422,
			want: []string{"41.0 g of ethanol for each taster", "the limit is 2.0: pour 40 ml each", `<option value="5" selected>`, `name="each" value="60"`}, not: []string{"for whoever pours"}},
		{name: "a slip of the pen in the box", path: flightOf("drink", "", "text", "2 oz gin\n3/4 oz lemmon jooce\nstir"), status: 422, want: []string{"Unknown ingredient", "3/4 oz lemmon"}},
		{name: "two drinks", path: flightOf("text", webuitest.GoodDraft), status: 422, want: []string{"empty the box, or choose the one in it", "Halyard Sour"}},
		{name: "no drink", path: flightOf("drink", ""), status: 422, want: []string{"Choose a drink of the menu, or write one in the box"}},
		{name: "a drink that has left the menu", path: flightOf("drink", "grog"), status: 422, want: []string{`The menu has no drink "grog" any more`}},
		{name: "no number", path: flightOf("tasters", "a <few>"), status: 422, want: []string{"Write the number of tasters as a whole number", `value="a &lt;few&gt;"`}},
		{name: "an axis that brings another along", path: flightOf("axis", "strong"), status: 200, want: []string{"water, for the ice</th><td class=\"n\">10.0 mL</td><td class=\"n\">30 mL", "makes</th><td class=\"n\">60 mL</td><td class=\"n\">180 mL", "The sweetness moves too, by up to 2.4 steps: more than one step of strength. To taste strength alone, choose another drink."}},
		{name: "nothing but water", path: flightOf("axis", "long"), status: 200, want: []string{"Nothing differs but the water: stirred or shaken too short"}},
		{name: "no step", path: flightOf("step", ""), status: 422, want: []string{"Write the step as a number, in noticeable steps"}},
		{name: "as much as is safe", path: flightOf("each", ""), status: 200, want: []string{"Nutcracker: for whoever pours"}},
		{name: "nothing in the glass", path: flightOf("each", "0"), status: 422, want: []string{"write more than 0 mL"}},
		{name: "an axis made up", path: flightOf("axis", "blue"), status: 400},
		{name: "a seed made up", path: flightOf("seed", "-"), status: 400},
		{name: "a trainer that breaks", path: flightOf("axis", "bitter"), status: 500},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Holds(t, webuitest.Ask(t, http.MethodGet, c.path, nil, false), c.status, c.want, c.not)
		})
	}
}

// A plan without a seed goes on to an address that has one, and that address
// always shows the same.
func TestAFlightIsTheSameAgain(t *testing.T) {
	pages := webuitest.NewPages(t)
	w := webuitest.Get(pages, strings.Replace(flightOf("text", "2 oz gin\nstir, up", "drink", ""), "seed=2r", "", 1), "")
	require.Equal(t, http.StatusSeeOther, w.Code)
	to := w.Header().Get("Location")
	assert.Regexp(t, `seed=[0-9a-z]+`, to)
	first := webuitest.Get(pages, to, "")
	require.Equal(t, http.StatusOK, first.Code)
	// The link to other codes and the seed that the next plan would have differ.
	same := func(body string) string { i := strings.Index(body, `class="for-pourer"`); return body[i:] }
	assert.Equal(t, same(first.Body.String()), same(webuitest.Get(pages, to, "").Body.String()))
	assert.Equal(t, same(first.Body.String()), same(webuitest.Get(webuitest.NewPages(t), to, "").Body.String()))
}

func TestFlightOfAHouseWithoutAMenu(t *testing.T) {
	webuitest.Holds(t, webuitest.Get(webuitest.PagesOf(t, &webuitest.House{}), training.FlightPath, ""), 200, []string{"No flight yet", "the one in the box"}, nil)
}
