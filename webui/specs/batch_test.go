package specs_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor/measure"
	"counterpour/webui/specs"
	"counterpour/webui/webuitest"
)

func TestBatchScenarios(t *testing.T) {
	p := webuitest.PagesOf(t, webuitest.OnSale(t))
	for _, c := range []struct {
		name, path string
		status     int
		want, not  []string
	}{
		{"as it is first shown", "/specs/mainbrace/batch", 200, []string{"A batch of Mainbrace", "For 10 servings", "London dry gin", "590\u00a0mL", "559\u00a0g", "591.5\u00a0mL",
			"water, in place of the ice", "22.92\u00a0EUR", "At most 1 day: fresh juice", "Local food-safety law comes first", "No allergen is recorded for these pours", webuitest.FootLine}, []string{"To each drink"}},
		{"bottles to open, and those that lack", "/specs/mainbrace/batch?amount=5&of=litres", 200, []string{"<span class=\"small opened\">3 bottles of 700\u00a0mL</span> <strong class=\"gone\">only 1 here</strong>", "<span class=\"small opened\">1 bottle of 700\u00a0mL</span></th>"}, nil},
		{"a bottle", "/specs/mainbrace/batch?amount=1&of=bottles-1000", 200, []string{"For 1\u00a0bottle of 1 litre: ", "1000\u00a0mL", `value="bottles-1000" selected`}, nil},
		{"a keg", "/specs/mainbrace/batch?amount=19,5&of=litres", 200, []string{"For 19,5\u00a0litres: ", "19500\u00a0mL", `value="19,5"`}, nil},
		{"five litres, as one types it", "/specs/mainbrace/batch?amount=5+L", 200, []string{"For 5\u00a0litres: 33 servings", "<dd>5000\u00a0mL</dd>", `value="litres" selected`, `name="amount" value="5"`}, nil},
		{"half a litre", "/specs/mainbrace/batch?amount=1/2+L", 200, []string{"For 1/2\u00a0litres: ", "<dd>49", `value="litres" selected`}, nil},
		{"half a litre, in one sign", "/specs/mainbrace/batch?amount=½&of=litres", 200, []string{"<dd>49"}, nil},
		{"bottles, as one types them", "/specs/mainbrace/batch?amount=3+bottles", 200, []string{"For 3\u00a0bottles of 700 mL: ", "<dd>2100\u00a0mL</dd>"}, nil},
		{"bottles of the size that is chosen", "/specs/mainbrace/batch?amount=3+bottles&of=bottles-1000", 200, []string{"<dd>3000\u00a0mL</dd>"}, nil},
		{"a gallon", "/specs/mainbrace/batch?amount=1+gallon", 200, []string{"For 3785\u00a0mL: "}, nil},
		{"without the juice", "/specs/mainbrace/batch?amount=5&of=litres&juice=apart", 200, []string{"<dd>5000\u00a0mL</dd>", "¾ oz lemon juice <span class=\"small\">as it is made", "pressed the same day",
			"The water for it is in the batch", `value="apart" checked`}, []string{"At most 1 day", `<th scope="row">lemon juice</th>`}},
		{"to order", "/specs/mainbrace/batch?from=to+order", 200, []string{"No water: shake or stir each serving with ice."}, []string{"in place of the ice"}},
		{"from the freezer", "/specs/mainbrace/batch?from=freezer", 200, []string{"Ice forms at about", "Too weak for a freezer", "it turns to slush"}, []string{"in the glass</span>"}},
		{"egg stays out", "/specs/nutcracker/batch", 200, []string{"To each drink", "1 egg white <span class=\"small\">as it is made", "pasteurised egg", "shake without ice", "Raw egg can carry Salmonella",
			"eggs (egg white)", "at least 19.96\u00a0EUR", "No price for egg white and orgeat."}, nil},
		{"no number", "/specs/mainbrace/batch?amount=lots", 422, []string{"“lots” cannot be made; write a number above zero", `value="lots"`, "No allergen is recorded"}, []string{"By volume"}},
		{"nothing typed", "/specs/mainbrace/batch?amount=&of=litres", 422, []string{"Say how much to make"}, []string{"By volume"}},
		{"too much", "/specs/mainbrace/batch?amount=1000&of=litres", 422, []string{"at most 200 litres"}, nil},
		{"nothing", "/specs/mainbrace/batch?amount=0", 422, []string{"“0” cannot be made"}, nil},
		{"for nobody knows what", "/specs/mainbrace/batch?of=hay", 422, []string{"Say what to count"}, nil},
		{"from nowhere", "/specs/mainbrace/batch?from=moon", 422, []string{"place"}, nil},
		{"of no spec", "/specs/nowhere/batch", 404, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := webuitest.Get(p, c.path, "")
			webuitest.Tells(t, w, c.status, c.want...)
			webuitest.Lacks(t, w, c.not...)
		})
	}
}

// What goes into each drink is told in the units of the house.
func TestABatchInMillilitres(t *testing.T) {
	h := webuitest.OnSale(t)
	_, err := h.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Units: measure.Metric}, 0))
	require.NoError(t, err)
	w := webuitest.Get(webuitest.PagesOf(t, h), "/specs/mainbrace/batch?juice=apart", "")
	webuitest.Tells(t, w, 200, "<li>22.5 mL lemon juice <span class=\"small\">as it is made")
	webuitest.Lacks(t, w, " oz ", "\u00a0oz")
}

// A batch of a drink whose bottle ran out says so.
func TestABatchOfWhatRanOut(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"lemon-juice"}
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, h), "/specs/mainbrace/batch", ""), 200, "Out now: lemon juice.", `href="/tonight#drink-mainbrace"`)
}

// What the house makes keeps no longer than the house says.
func TestABatchOfHouseSyrup(t *testing.T) {
	h := webuitest.NewHouse()
	_, err := h.Store().Write(t.Context(), webuitest.Opening,
		house.Put(house.Made{ID: "simple-syrup", Name: "our syrup", Class: "syrup", Parts: []house.Pour{{Ingredient: "lemon-juice", Amount: 5, Unit: "ml"}}, KeepsDays: 5}, 0),
		house.Put(house.Spec{ID: "plain", Name: "Plain", Method: "stir", Service: "up", Pours: []house.Pour{{Ingredient: "london-dry-gin", Amount: 2, Unit: "oz"}, {Ingredient: "simple-syrup", Amount: 1, Unit: "tsp"}}}, 0))
	require.NoError(t, err)
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, h), "/specs/plain/batch", ""), 200, "At most 5 days: our syrup")
	webuitest.Tells(t, webuitest.Get(webuitest.PagesOf(t, h), "/specs/plain/batch?from=freezer", ""), 200, "With all its water it would freeze", "cold water <span class=\"small\">in the glass</span>")
}

func TestEveryPlaceOfABatchIsOffered(t *testing.T) {
	var offered []string
	for _, o := range specs.BatchPlaces() {
		offered = append(offered, o.Value)
	}
	assert.Equal(t, []string{string(prep.Fridge), string(prep.Freezer), string(prep.ToOrder)}, offered)
}
