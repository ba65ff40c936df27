package stock_test

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/webuitest"
)

func TestASyrupIsMade(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	webuitest.Says(t, webuitest.Get(pages, "/stock/made", ""), []string{"A new syrup or infusion", `<option value="syrup" selected>`, "Once a recipe is written"}, nil)

	form := formOf("name", "House sour", "class", "cordial", "aliases", "the sharp one\n\nno. 2\n", "parts", "300 ml simple syrup\n100ml lemon juice\n1 egg white\n", "yield_ml", "350", "method", "Stir.\nStrain.", "keeps_days", "9")
	w := follow(t, pages, webuitest.Post(pages, "/stock/made", form, false))
	// 300 mL of 615 g/L and 100 mL of 60 g/L, over 350 mL.
	webuitest.Says(t, w, []string{"Added.", "527\u00a0g/L", "17.1\u00a0g/L", "350\u00a0mL", "eggs (egg white)", "The labels decide", "Raw egg can carry Salmonella", "The house keeps it longer", "Local food-safety law comes first",
		"300 ml simple syrup\n100 ml lemon juice\n1 egg white</textarea>", "the sharp one\nno. 2</textarea>"}, nil)
	m := h.Making(t, "house-sour").Item
	assert.Equal(t, []string{"the sharp one", "no. 2"}, m.Aliases)
	assert.Equal(t, house.Pour{Ingredient: "egg-white", Amount: 1, Unit: flavor.Piece}, m.Parts[2])

	// It is an ingredient now, of bottles and of other recipes.
	webuitest.Says(t, webuitest.Get(pages, "/stock", ""), []string{"1 made here", "House sour", "9 days"}, nil)
	w = follow(t, pages, webuitest.Post(pages, "/stock/made", formOf("name", "Double", "class", "cordial", "parts", "2 parts house sour\n1 part the sharp one"), false))
	webuitest.Says(t, w, []string{"2 parts House sour\n1 part House sour</textarea>", "527\u00a0g/L"}, nil)
}

func TestMadeScenarios(t *testing.T) {
	named := []string{"name", "New one", "class", "syrup"}
	for _, c := range []struct {
		name      string
		form      []string
		status    int
		want, not []string
	}{
		{name: "nothing", form: nil, status: 422, want: []string{"Give it a name", "Choose what kind of thing it is", "Write what goes in"}},
		{name: "a kind that is none", form: []string{"name", "x", "class", "soup", "parts", "1 oz orgeat"}, status: 422, want: []string{`Class "soup" is not known`}},
		{name: "names nobody knows", form: append(named, "parts", "1 oz orgeat\n2 oz gnx\n3 buckets orgeat\n<b>"), status: 422,
			want: []string{"line 3: unknown ingredient \"buckets orgeat\"", "line 4", "1 oz orgeat\n2 oz gnx\n3 buckets orgeat\n&lt;b&gt;</textarea>"}, not: []string{"<b>"}},
		{name: "a name nobody knows", form: append(named, "parts", "1 oz orgeat\n2 oz gnx"), status: 422, want: []string{"Line 2:", "write its category"}},
		{name: "a remark", form: append(named, "parts", "1 oz orgeat\n# toast it first"), status: 422, want: []string{"Line 2: a remark is not kept here"}},
		{name: "a method", form: append(named, "parts", "1 oz orgeat\nstir"), status: 422, want: []string{"How it is made has a field of its own"}},
		{name: "of itself", form: append(named, "id", "nut-syrup", "version", "1", "parts", "1 oz nut syrup"), status: 422, want: []string{"cannot be made of itself"}},
		{name: "in a circle", form: []string{"id", "nut-syrup", "version", "1", "name", "Nut syrup", "class", "syrup", "parts", "1 oz ring"}, status: 422, want: []string{"uses itself through the recipes of others"}},
		{name: "brix beside alcohol", form: append(named, "parts", "1 oz London dry gin", "brix", "20"), status: 422, want: []string{"Brix says nothing about sugar"}},
		{name: "half a day", form: append(named, "parts", "1 oz orgeat", "keeps_days", "1.5"), status: 422, want: []string{"is not a whole number of days"}},
		{name: "a name that is taken", form: []string{"name", "Nut syrup", "class", "syrup", "parts", "1 oz orgeat"}, status: 409, want: []string{"There is one of that name already", `href="/stock/made?id=nut-syrup"`}},
		{name: "tried only", form: append(named, "parts", "1 oz orgeat", "do", "try"), status: 200, want: []string{"600\u00a0g/L", "tree nuts (orgeat)", `value="New one"`, `name="version" value="0"`}},
		{name: "tried with faults", form: append(named, "parts", "1 oz orgeat", "do", "try", "yield_ml", "x"), status: 422, want: []string{"600\u00a0g/L"}},
		{name: "measured", form: append(named, "parts", "1 oz orgeat", "do", "try", "sugar", "640"), status: 200, want: []string{"640\u00a0±\u00a032\u00a0g/L"}},
		{name: "in the catalogue's place", form: []string{"name", "Orgeat", "class", "spiced syrup", "parts", "1 oz almond syrup", "id", "orgeat", "do", "try"}, status: 404},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := webuitest.Stocked(t)
			h.KeepAll(t, house.Made{ID: "ring", Name: "Ring", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "nut-syrup", Amount: 1, Unit: flavor.Ounce}}})
			w := webuitest.Post(webuitest.PagesOf(t, h), "/stock/made", formOf(c.form...), false)
			assert.Equal(t, c.status, w.Code)
			webuitest.Says(t, w, c.want, c.not)
			all, err := house.All[house.Made](t.Context(), h.Store())
			require.NoError(t, err)
			assert.Len(t, all, 2, "nothing is written")
			assert.EqualValues(t, 1, h.Making(t, "nut-syrup").Version)
		})
	}
}

// What nobody has stated stays unknown, whatever else goes in.
func TestUnknownAllergensStayUnknown(t *testing.T) {
	w := webuitest.Get(webuitest.PagesOf(t, webuitest.Stocked(t)), "/stock/made?id=nut-syrup", "")
	webuitest.Says(t, w, []string{"<strong>Contains</strong> <span>tree nuts (orgeat)</span>", "<strong>May contain</strong> <span>soybeans (orgeat)</span>", "<strong>Not stated</strong>, so it counts as there: <span>any allergen (unlabelled liqueur)</span>"}, nil)
}

// A script asks what comes of a recipe while it is typed, and writes nothing.
func TestARecipeAsItIsTyped(t *testing.T) {
	h := webuitest.NewLaid()
	pages := webuitest.PagesOf(t, h)
	w := webuitest.Post(pages, "/stock/made", formOf("name", "x", "class", "syrup", "parts", "300 g simple syrup\n100 g or"), true)
	assert.Equal(t, http.StatusOK, w.Code)
	webuitest.Says(t, w, []string{"What it gives"}, []string{"<html", "<form"})
	w = webuitest.Post(pages, "/stock/made", formOf("name", "x", "class", "syrup", "parts", "300 g simple syrup\n100 g orgeat"), true)
	webuitest.Says(t, w, []string{"611\u00a0g/L", "tree nuts (orgeat)"}, []string{"<html"})
	all, err := h.Store().List(t.Context(), house.KindMade)
	require.NoError(t, err)
	assert.Empty(t, all)
}

// What is poured in a recipe or a spec does not go without warning, by removal or by undo.
func TestWhatIsPouredDoesNotGo(t *testing.T) {
	h := webuitest.Stocked(t)
	h.KeepAll(t, house.Spec{ID: "squall", Name: "Squall", Method: flavor.Shake, Service: flavor.Up, Pours: []house.Pour{{Ingredient: "nut-syrup", Amount: 1, Unit: flavor.Ounce}}},
		house.Made{ID: "ring", Name: "Ring", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "nut-syrup", Amount: 1, Unit: flavor.Ounce}}},
		house.Made{ID: "orgeat", Name: "Our orgeat", Class: flavor.ClassSpicedSyrup, Parts: []house.Pour{{Ingredient: "almond-syrup", Amount: 1, Unit: flavor.Ounce}}})
	pages := webuitest.PagesOf(t, h)
	remove := formOf("id", "nut-syrup", "version", "1", "do", "remove", "name", "Nut syrup", "class", "syrup", "parts", "1 oz orgeat")
	for path, form := range map[string]map[string][]string{"/stock/made": remove, "/stock/undo": formOf("kind", "made", "id", "nut-syrup", "version", "1")} {
		w := webuitest.Post(pages, path, form, false)
		assert.Equal(t, http.StatusUnprocessableEntity, w.Code, path)
		webuitest.Says(t, w, []string{"It is poured in Ring and Squall"}, nil)
		assert.EqualValues(t, 1, h.Making(t, "nut-syrup").Version)
	}
	webuitest.Says(t, webuitest.Get(pages, "/stock/made?id=orgeat", ""), []string{"yours is used in its place"}, nil)
	w := follow(t, pages, webuitest.Post(pages, "/stock/made", formOf("id", "orgeat", "version", "1", "do", "remove"), false))
	webuitest.Says(t, w, []string{"Our orgeat is no longer in the house"}, nil)
}

// Nuts by weight steep: the page tells their allergen, how the sugar comes out, and keeps the line.
func TestNutsSteepInWhatTheHouseMakes(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	form := webuitest.Fields("version", "0", "name", "Dock almond syrup", "class", "syrup", "parts", "300 g blanched almonds\n500 ml simple syrup", "do", "try")
	webuitest.Holds(t, webuitest.Post(pages, "/stock/made", form, false), 200,
		[]string{"Contains", "tree nuts", "300 g blanched almonds", "Blanched almonds steep and are strained out", "within 5 days"}, []string{"unknown ingredient"})
}

// What is sugar itself keeps a syrup as white sugar does; what the house makes in its place, maybe
// of fresh things, does not.
func TestASyrupKeepsByTheSugarOfItsSyrups(t *testing.T) {
	h := webuitest.Stocked(t)
	pages := webuitest.PagesOf(t, h)
	const sugar = "The trade keeps it"
	says := func(parts, want string) {
		w := webuitest.Post(pages, "/stock/made", webuitest.Fields("version", "0", "name", "Dock syrup", "class", "syrup", "parts", parts, "do", "try"), false)
		webuitest.Holds(t, w, 200, []string{want}, nil)
		assert.Equal(t, want == sugar, strings.Contains(w.Body.String(), sugar), parts)
	}
	says("500 ml simple syrup", sugar)
	says("500 ml simple syrup\n50 ml lemon juice", "juice turns within hours")
	h.KeepAll(t, house.Made{ID: "simple-syrup", Name: "Own syrup", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "orgeat", Amount: 300, Unit: flavor.Millilitre}}})
	says("500 ml simple syrup", "It has no alcohol to keep it")
}
