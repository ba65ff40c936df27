package board_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/webuitest"
)

// The drinks of the invented bar are alike in all that orders a flight, so names order them:
// a drink of 166.6 mL is made once for two guests of 40 mL, and holds 19.1 g of ethanol.
func TestFlights(t *testing.T) {
	for _, c := range []struct {
		name, path string
		out        []string
		status     int
		want, not  []string
	}{
		{name: "drinks to choose from", path: "/tonight/flight", status: 200, want: []string{`value="mainbrace"> <span>Mainbrace <span class="small">Ready`, `value="40"`, `value="2"`}, not: []string{"Make 1", `role="alert"`}},
		{name: "two drinks", path: "/tonight/flight?drink=mainbrace&drink=halyard-sour&each=40&guests=2", status: 200,
			want: []string{"2 guests, 40\u00a0mL of each drink", "Make 1, in all 167\u00a0mL; about 87\u00a0mL is left.", `value="mainbrace" checked`, "has 0.7 standard drinks (United States)", `<span class="amount">2 oz</span> London dry gin`}, not: []string{"Salmonella"}},
		{name: "raw egg is said once", path: "/tonight/flight?drink=mainbrace&drink=nutcracker", status: 200, want: []string{"Raw egg can carry Salmonella."}},
		{name: "more guests than one drink serves", path: "/tonight/flight?drink=mainbrace&drink=halyard-sour&each=40&guests=5", status: 200, want: []string{"Make 2, in all 333\u00a0mL; about 133\u00a0mL is left."}},
		{name: "with a cover, as it is poured now", path: "/tonight/flight?drink=mainbrace&drink=halyard-sour", out: []string{"falernum"}, status: 200,
			want: []string{`<span class="amount">½ oz</span> almond syrup</strong> (instead)`, "New allergen: tree nuts", "Contains tree nuts.", "<s>falernum</s> A guest may notice."}, not: []string{"½ oz</span> falernum"}},
		{name: "what a guest must not have is no choice", path: "/tonight/flight?avoid=tree+nuts&drink=nutcracker&drink=mainbrace&drink=halyard-sour", status: 200,
			want: []string{"For a guest: <strong>", "1 of the ticked drinks cannot be poured now, or not for this guest.", "Make 1"}, not: []string{"orgeat", "almond", `value="nutcracker"`}},
		{name: "one drink is no flight", path: "/tonight/flight?drink=mainbrace", status: 422, want: []string{"Take 2 to 6 drinks that can be poured now."}, not: []string{"Make 1"}},
		{name: "nothing that is known", path: "/tonight/flight?drink=zorble&drink=nothing", status: 422, want: []string{"2 of the ticked drinks cannot be poured now"}},
		{name: "figures that are none", path: "/tonight/flight?drink=mainbrace&drink=halyard-sour&each=much&guests=some", status: 422, want: []string{"is not a number", "Write how many guests there are, 1 to 60", `value="much"`}},
		{name: "a flood", path: "/tonight/flight?drink=mainbrace&drink=halyard-sour&each=1000&guests=0", status: 422, want: []string{"A glass of a flight holds 10 to 120", "1 to 60"}},
		{name: "an allergen that is not known", path: "/tonight/flight?avoid=nutz", status: 400},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.NewHouse()
			h.Dry = c.out
			webuitest.Holds(t, webuitest.Get(webuitest.PagesOf(t, h), c.path, ""), c.status, c.want, c.not)
		})
	}
	body := webuitest.Get(webuitest.PagesOf(t, webuitest.NewHouse()), "/tonight/flight?drink=mainbrace&drink=halyard-sour", "").Body.String()
	assert.Less(t, strings.Index(body, "<h3>Halyard Sour"), strings.Index(body, "<h3>Mainbrace"))
	assert.Equal(t, http.StatusMethodNotAllowed, webuitest.Post(webuitest.PagesOf(t, webuitest.NewHouse()), "/tonight/flight", nil, false).Code)
}
