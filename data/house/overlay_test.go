package house_test

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

func catalogue(t *testing.T) *data.Catalogue {
	t.Helper()
	c, err := data.Embedded()
	require.NoError(t, err)
	return c
}

func ptr(v float64) *float64 { return &v }

func TestOverlayPutsMeasuredValuesInPlace(t *testing.T) {
	c := catalogue(t)
	before, _ := c.ByID("lemon-juice")
	was := *before
	list, faults := house.Overlay(c.Profiles(), []house.Bottle{
		{ID: "a", Name: "The blue cap", Ingredient: "london-dry-gin", Measured: house.Measured{ABVPct: ptr(47.3)}, SizeML: 700, Stock: 1},
		{ID: "b", Name: "The red cap", Ingredient: "london-dry-gin", Measured: house.Measured{ABVPct: ptr(40)}, SizeML: 700, Stock: 1},
		{ID: "c", Name: "Lemons, squeezed at noon", Ingredient: "lemon-juice", Measured: house.Measured{Brix: ptr(8.1), AcidGPerL: ptr(62)}, SizeML: 1000},
	}, nil)
	require.Empty(t, faults)
	assert.Len(t, list, len(c.Profiles()))
	shelf := house.NewShelf(list)

	gin, _, err := shelf.Resolve("the blue cap")
	require.NoError(t, err)
	assert.Equal(t, "london-dry-gin", gin.ID)
	assert.Equal(t, 47.3, gin.ABV.Value, "the first by id of two in stock")
	perML := mix.PerML(gin)
	assert.InDelta(t, 47.3, perML.ABV(), 0.01, "completed anew")

	lemon, _ := shelf.ByID("lemon-juice")
	// 8.1 °Bx is 81 g in a kilogram; at 1.031 g/mL 83.5 g in a litre, of which 62 are acid.
	assert.InDelta(t, 21.5, lemon.Sugar.Value, 0.5)
	assert.Equal(t, 62.0, lemon.Acid.Value)
	assert.Equal(t, was, *before, "the catalogue is not written to")
	other, _ := c.ByID("vodka")
	kept, _ := shelf.ByID("vodka")
	assert.Same(t, other, kept, "what nothing overlays is shared")
}

// A label that states 0.0 settles what the record of the kind leaves open.
func TestALabelStatesThatThereIsNoAlcohol(t *testing.T) {
	c := catalogue(t)
	kind, _ := c.ByID("alcohol-free-red-bitter")
	require.False(t, kind.StatesNoAlcohol(), "0 ± 0.3 by the market")
	for abv, want := range map[float64]bool{0: true, 0.05: false, 0.5: false} {
		list, faults := house.Overlay(c.Profiles(), []house.Bottle{{ID: "a", Name: "Red, none", Ingredient: kind.ID, Measured: house.Measured{ABVPct: ptr(abv)}, SizeML: 700}}, nil)
		require.Empty(t, faults)
		bottle, _ := house.NewShelf(list).ByID(kind.ID)
		assert.Equal(t, want, bottle.StatesNoAlcohol(), "%v %% vol", abv)
	}
}

func TestWells(t *testing.T) {
	out := time.Date(2026, 5, 1, 22, 0, 0, 0, time.UTC)
	empty := house.Bottle{ID: "a", Ingredient: "vodka"}
	full, well := house.Bottle{ID: "b", Ingredient: "vodka", Stock: 1}, house.Bottle{ID: "c", Ingredient: "vodka", Stock: 1, Well: true}
	dry, gone := well, well
	dry.Stock, gone.OutSince = 0, &out
	for _, c := range []struct {
		shelf []house.Bottle
		want  string
	}{
		{[]house.Bottle{empty}, "a"},
		{[]house.Bottle{empty, full}, "b"},
		{[]house.Bottle{empty, full, well}, "c"},
		{[]house.Bottle{empty, full, dry}, "b"},
		{[]house.Bottle{empty, full, gone}, "b"},
		{[]house.Bottle{empty, gone}, "c"},
	} {
		assert.Equal(t, c.want, house.Wells(c.shelf)["vodka"].ID)
	}
}

func TestOverlayReportsUnusableRecords(t *testing.T) {
	c := catalogue(t)
	list, faults := house.Overlay(c.Profiles(), []house.Bottle{
		{ID: "a", Name: "a", Ingredient: "triple-sec", Measured: house.Measured{Brix: ptr(30)}, SizeML: 700},
		{ID: "b", Name: "b", Ingredient: "vodka", Measured: house.Measured{ABVPct: ptr(96), SugarGPerL: ptr(900)}, SizeML: 700},
		{ID: "c", Name: "c", Ingredient: "no-such-thing", SizeML: 700},
	}, []house.Made{
		{ID: "egg", Name: "x", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "hen", Amount: 1, Unit: "ml"}}},
		{ID: "hen", Name: "y", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "egg", Amount: 1, Unit: "ml"}}},
	})
	assert.Len(t, list, len(c.Profiles()))
	require.Len(t, faults, 5)
	for i, want := range []string{"alcohol makes the reading wrong", "leaves no room", "uses itself through the recipes of others", "uses itself through the recipes of others", "no ingredient \"no-such-thing\""} {
		assert.ErrorIs(t, faults[i], house.ErrInvalid)
		assert.ErrorContains(t, faults[i], want)
	}
}

// What goes wrong with numbers takes no allergen away.
func TestAllergensOfUnusableRecordsAreKept(t *testing.T) {
	c := catalogue(t)
	read := &house.Label{Contains: []flavor.Allergen{flavor.Milk}, ReadBy: "Ines", ReadAt: time.Date(2026, 4, 1, 16, 0, 0, 0, time.UTC)}
	list, faults := house.Overlay(c.Profiles(), []house.Bottle{
		{ID: "b", Name: "Milk-washed", Ingredient: "vodka", Measured: house.Measured{ABVPct: ptr(96), SugarGPerL: ptr(900)}, Label: read, SizeML: 700},
	}, []house.Made{
		{ID: "simple-syrup", Name: "Our syrup", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "no-such-thing", Amount: 1, Unit: "ml"}}},
		{ID: "grenadine", Name: "Our grenadine", Class: flavor.ClassFruitSyrup, Parts: []house.Pour{{Ingredient: "grenadine", Amount: 1, Unit: "ml"}}},
	})
	require.Len(t, faults, 3)
	shelf := house.NewShelf(list)
	vodka, _, err := shelf.Resolve("milk-washed")
	require.NoError(t, err)
	assert.Equal(t, flavor.Present, vodka.Clear([]flavor.Allergen{flavor.Milk}))
	plain, _ := c.ByID("vodka")
	assert.Equal(t, plain.ABV, vodka.ABV)
	for _, id := range []string{"simple-syrup", "grenadine"} {
		stood, _ := c.ByID(id)
		require.Equal(t, flavor.Free, stood.Clear([]flavor.Allergen{flavor.TreeNuts}), id)
		syrup, ok := shelf.ByID(id)
		require.True(t, ok)
		assert.Equal(t, flavor.NotStated, syrup.Clear([]flavor.Allergen{flavor.TreeNuts}), "%s of the house may hold any", id)
	}
}

// What breaks a rule of a triangle test is a fault that names its field.
func TestTriangleFaultsNameTheField(t *testing.T) {
	sound := func() house.Triangle {
		return house.Triangle{ID: "a", At: time.Date(2026, 4, 1, 16, 0, 0, 0, time.UTC), Drink: "a", Cover: "b", GlassML: 30, Alpha: 0.05, Share: 0.5,
			Servings: []house.TriangleServing{{Order: "AAB", Codes: [3]int{101, 202, 303}, Picked: 303}}}
	}
	require.NoError(t, house.Check(sound()))
	for field, spoil := range map[string]func(*house.Triangle){
		"servings":           func(x *house.Triangle) { x.Servings = nil },
		"servings[0].order":  func(x *house.Triangle) { x.Servings[0].Order = "AAA" },
		"servings[0].codes":  func(x *house.Triangle) { x.Servings[0].Codes[1] = 101 },
		"servings[0].picked": func(x *house.Triangle) { x.Servings[0].Picked = 404 },
		"alpha":              func(x *house.Triangle) { x.Alpha = 1 },
	} {
		x := sound()
		spoil(&x)
		err := house.Check(x)
		require.ErrorIs(t, err, house.ErrInvalid, field)
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, field)
		assert.Equal(t, field, faults[0].Field)
		assert.Contains(t, err.Error(), field)
	}
}

func TestMadeProfile(t *testing.T) {
	c := catalogue(t)
	made := []house.Made{
		{ID: "our-syrup", Name: "Our syrup", Class: flavor.ClassSyrup, Parts: []house.Pour{
			{Ingredient: "white-sugar", Amount: 500, Unit: flavor.Gram}, {Ingredient: "water", Amount: 500, Unit: flavor.Gram}}},
		{ID: "our-falernum", Name: "Our spiced syrup", Class: flavor.ClassSpicedSyrup, Parts: []house.Pour{ // uses the other
			{Ingredient: "our-syrup", Amount: 300, Unit: flavor.Millilitre}, {Ingredient: "white-overproof-rum", Amount: 100, Unit: flavor.Millilitre},
			{Ingredient: "orgeat", Amount: 100, Unit: flavor.Millilitre}}},
		{ID: "lime-cordial-of-ours", Name: "Lime, boiled down", Class: flavor.ClassCordial, YieldML: 100, Parts: []house.Pour{
			{Ingredient: "lime-juice", Amount: 200, Unit: flavor.Millilitre}}},
	}
	for _, m := range made {
		require.NoError(t, house.Check(m))
	}
	list, faults := house.Overlay(c.Profiles(), nil, made)
	require.Empty(t, faults)
	shelf := house.NewShelf(list)

	syrup, ok := shelf.ByID("our-syrup")
	require.True(t, ok)
	// Half sugar by mass: 50 °Bx, which holds 614.8 g in a litre (ICUMSA SPS-4, from memory).
	assert.InDelta(t, 614.8, syrup.Sugar.Value, 3)
	assert.InDelta(t, 1.2296, syrup.DensityGPerML, 0.003)
	assert.Equal(t, flavor.OriginComputed, syrup.Sugar.Origin)
	assert.True(t, syrup.AllergensKnown)

	spiced, _ := shelf.ByID("our-falernum")
	_, nuts := spiced.Allergen(flavor.TreeNuts)
	assert.True(t, nuts, "orgeat brings its almonds along")
	rum, _ := shelf.ByID("white-overproof-rum")
	assert.InDelta(t, rum.ABV.Value/5, spiced.ABV.Value, 0.5, "a fifth of it")
	assert.NoError(t, spiced.ABV.Check())

	cola, _ := shelf.ByID("diet-cola")
	halved, err := house.Made{ID: "halved-cola", Name: "Halved cola", Class: flavor.ClassSoda, Parts: []house.Pour{
		{Ingredient: "diet-cola", Amount: 100, Unit: flavor.Millilitre}, {Ingredient: "water", Amount: 100, Unit: flavor.Millilitre}}}.Profile(shelf)
	require.NoError(t, err)
	assert.InDelta(t, cola.Sweeteners.Value/2, halved.Sweeteners.Value, 0.5, "half as sweet, though neither holds sugar")

	lime, _ := shelf.ByID("lime-juice")
	boiled, _ := shelf.ByID("lime-cordial-of-ours")
	assert.InDelta(t, 2*lime.Acid.Value, boiled.Acid.Value, 1e-9)
}

// A label that says vegan settles what dyed a bottle, and no other does.
func TestAVeganLabelSettlesTheDye(t *testing.T) {
	c := catalogue(t)
	for vegan, want := range map[bool]bool{true: false, false: true} {
		list, faults := house.Overlay(c.Profiles(), []house.Bottle{{ID: "red", Name: "Red", Ingredient: "red-bitter-aperitif", SizeML: 700,
			Label: &house.Label{Vegan: vegan, ReadBy: "Ines"}}}, nil)
		require.Empty(t, faults)
		red, ok := house.NewShelf(list).ByID("red-bitter-aperitif")
		require.True(t, ok)
		assert.Equal(t, want, slices.Contains(red.Animal, flavor.Insect))
		assert.Equal(t, want, red.MayHoldInsect())
	}
}

// A label settles what the category leaves open, never what it contains, and
// what the house makes of the bottle knows it too.
func TestLabelStatesAllergens(t *testing.T) {
	c := catalogue(t)
	read := &house.Label{Contains: []flavor.Allergen{flavor.Milk}, MayContain: []flavor.Allergen{flavor.Celery}, ReadBy: "Ines", ReadAt: time.Date(2026, 4, 1, 16, 0, 0, 0, time.UTC)}
	bottle := func(id, of string, l *house.Label) house.Bottle {
		b := house.Bottle{ID: id, Name: id, Ingredient: of, SizeML: 700, Label: l}
		require.NoError(t, house.Check(b))
		return b
	}
	infused := house.Made{ID: "infused-amaro", Name: "Infused amaro", Class: flavor.ClassAmaro, Parts: []house.Pour{
		{Ingredient: "medium-amaro", Amount: 700, Unit: flavor.Millilitre}, {Ingredient: "mint", Amount: 5, Unit: flavor.Sprig}}}
	certainty := func(list []*flavor.Profile, id string, a flavor.Allergen) flavor.Certainty {
		p, ok := house.NewShelf(list).ByID(id)
		require.True(t, ok, id)
		got, _ := p.Allergen(a)
		return got
	}
	unread, faults := house.Overlay(c.Profiles(), []house.Bottle{bottle("ours", "medium-amaro", nil)}, []house.Made{infused})
	require.Empty(t, faults)
	labelled, faults := house.Overlay(c.Profiles(), []house.Bottle{bottle("ours", "medium-amaro", read), bottle("white", "dry-white-wine", &house.Label{ReadBy: "Ines", ReadAt: read.ReadAt})}, []house.Made{infused})
	require.Empty(t, faults)
	for _, id := range []string{"medium-amaro", "infused-amaro"} {
		assert.Equal(t, flavor.Unstated, certainty(unread, id, flavor.Eggs), id)
		assert.Equal(t, flavor.Certainty(""), certainty(labelled, id, flavor.Eggs), id)
		assert.Equal(t, flavor.Contains, certainty(labelled, id, flavor.Milk), id)
		assert.Equal(t, flavor.MayContain, certainty(labelled, id, flavor.Celery), id)
	}
	assert.Equal(t, flavor.MayContain, certainty(unread, "dry-white-wine", flavor.Milk))
	assert.Equal(t, flavor.Certainty(""), certainty(labelled, "dry-white-wine", flavor.Milk), "this one was not fined with it")
	assert.Equal(t, flavor.Contains, certainty(labelled, "dry-white-wine", flavor.Sulphites), "a label that is silent does not unmake wine")

	for _, bad := range []house.Label{
		{Contains: []flavor.Allergen{"moonlight"}, ReadBy: "Ines", ReadAt: read.ReadAt},
		{ReadAt: read.ReadAt},
		{ReadBy: "Ines"},
	} {
		assert.Error(t, house.Check(house.Bottle{ID: "b", Name: "b", Ingredient: "vodka", SizeML: 700, Label: &bad}))
	}
}

// The day of a label is that of UTC, as on every page, wherever its reader's clock stands.
func TestLabelsAreDatedInUTC(t *testing.T) {
	early := time.Date(2026, 4, 2, 0, 30, 0, 0, time.FixedZone("two hours ahead", 2*60*60))
	assert.Equal(t, "read by Ines on 2026-04-01", (&house.Label{ReadBy: "Ines", ReadAt: early}).String())
}

// A recipe finds the one that it uses, whichever of their ids comes first.
func TestNestedRecipes(t *testing.T) {
	made := func(id, of string) house.Made {
		return house.Made{ID: id, Name: id, Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: of, Amount: 100, Unit: flavor.Millilitre}}}
	}
	list, faults := house.Overlay(catalogue(t).Profiles(), nil, []house.Made{made("m-2", "m-1"), made("m-1", "simple-syrup"), made("m-0", "m-2"), made("m-3", "m-2")})
	require.Empty(t, faults)
	shelf := house.NewShelf(list)
	syrup, _ := shelf.ByID("simple-syrup")
	for _, id := range []string{"m-0", "m-1", "m-2", "m-3"} {
		p, ok := shelf.ByID(id)
		require.True(t, ok, id)
		assert.InDelta(t, syrup.Sugar.Value, p.Sugar.Value, 1e-6, id)
	}
}

func TestSpecsKeepAmountsUnitsAndOrder(t *testing.T) {
	c := catalogue(t)
	shelf := house.NewShelf(c.Profiles())
	read, err := c.ReadSpec("Halyard Sour", "¾ oz lemon juice\n2 oz gin\n6 mint leaves\n2 dashes aromatic bitters\ndry shake, rocks")
	require.NoError(t, err)
	kept := house.FromSpec("", read)
	assert.Equal(t, "halyard-sour", kept.ID)
	require.NoError(t, house.Check(kept))
	back, err := kept.Flavor(shelf)
	require.NoError(t, err)
	assert.Equal(t, kept, house.FromSpec("", back))
	assert.InDelta(t, read.VolumeML(), back.VolumeML(), 1e-9)
	kept.Pours[0].Ingredient = "nowhere"
	_, err = kept.Flavor(shelf)
	assert.ErrorIs(t, err, house.ErrInvalid)
}

func TestNamesInAnyScriptHaveAnID(t *testing.T) {
	assert.Equal(t, "creme-de-cassis-no-2", house.IDOf(house.KindSpec, "Crème de Cassis No. 2"))
	assert.Regexp(t, "^spec-[0-9a-f]{8}$", house.IDOf(house.KindSpec, "夜の海"))
	assert.Empty(t, house.IDOf(house.KindSpec, ""))
}
