package data

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

func TestSummaryAddsUp(t *testing.T) {
	c := loadCatalogue(t)
	s := c.Summary()
	assert.Equal(t, s, c.Summary(), "the same catalogue, the same summary")
	assert.Equal(t, len(c.Profiles()), s.Ingredients)
	assert.Equal(t, len(c.materials), s.Materials)
	assert.Equal(t, len(c.cautions), s.Cautions)

	inClasses := 0
	for i, class := range flavor.Classes() {
		assert.Equal(t, class, s.Classes[i].Class, "classes come in the order of an inventory")
		inClasses += s.Classes[i].Ingredients
	}
	assert.Equal(t, s.Ingredients, inClasses)

	figures := 0
	for _, p := range c.Profiles() {
		figures += 6 + len(p.Yields) // abv, sugar, acid, bitter, texture and the aroma
		for _, f := range []flavor.Figure{p.Fat, p.Salt, p.Sweeteners, p.Caffeine, p.Tannin} {
			if f.Origin != "" {
				figures++
			}
		}
	}
	assert.Equal(t, figures, s.Figures)
	ofField := map[flavor.Origin]int{}
	inFields := 0
	for i, f := range s.Fields {
		assert.Equal(t, figureFields[i], f.Field)
		checkOrigins(t, f.Figures, f.Origins)
		inFields += f.Figures
		for _, o := range f.Origins {
			ofField[o.Origin] += o.Figures
		}
	}
	assert.Equal(t, s.Figures, inFields)
	checkOrigins(t, s.Figures, s.Origins)
	for _, o := range s.Origins {
		assert.Equal(t, ofField[o.Origin], o.Figures, o.Origin)
		t.Logf("%-16s %5d figures, %4.1f %%", o.Origin, o.Figures, 100*o.Share)
	}
	t.Logf("%d ingredients, %d figures", s.Ingredients, s.Figures)
}

// checkOrigins holds a list of origins to its order and its sum.
func checkOrigins(t *testing.T, total int, origins []OriginCount) {
	t.Helper()
	require.Len(t, origins, len(flavor.Origins()))
	var sum int
	var share float64
	for i, o := range origins {
		assert.Equal(t, flavor.Origins()[i], o.Origin)
		sum += o.Figures
		share += o.Share
	}
	assert.Equal(t, total, sum)
	if total > 0 {
		assert.InDelta(t, 1, share, 1e-12)
	} else {
		assert.Zero(t, share)
	}
}

func TestSummaryOfNothing(t *testing.T) {
	s := (&Catalogue{}).Summary()
	assert.Zero(t, s.Ingredients)
	assert.Zero(t, s.Figures)
	assert.Len(t, s.Classes, len(flavor.Classes()))
	checkOrigins(t, 0, s.Origins)
}

// What a bar can expect to find.
func TestCatalogueIsBroad(t *testing.T) {
	c := loadCatalogue(t)
	count := func(classes ...flavor.Class) (n int) {
		for _, k := range c.Summary().Classes {
			if slices.Contains(classes, k.Class) {
				n += k.Ingredients
			}
		}
		return n
	}
	syrups := []flavor.Class{flavor.ClassSyrup, flavor.ClassSpicedSyrup, flavor.ClassFruitSyrup, flavor.ClassCordial}
	made := 0
	for _, p := range c.Profiles() {
		if slices.Contains(syrups, p.Class) && p.Making != "" {
			made++
		}
	}
	for _, want := range []struct {
		what     string
		got, min int
	}{
		{"ingredients", c.Summary().Ingredients, 400},
		{"amari and bitter aperitifs", count(flavor.ClassAmaro, flavor.ClassBitterAperitif), 40},
		{"vermouths", count(flavor.ClassVermouth), 10},
		{"quinquinas and other aromatised wines", count(flavor.ClassAromatisedWine), 10},
		{"liqueurs", count(flavor.ClassLiqueur, flavor.ClassCreamLiqueur), 60},
		{"syrups and cordials with a making", made, 60},
		{"cocktail bitters and tinctures", count(flavor.ClassCocktailBitters, flavor.ClassTincture), 25},
		{"juices and purées", count(flavor.ClassJuice, flavor.ClassSourJuice, flavor.ClassPuree), 30},
	} {
		assert.GreaterOrEqual(t, want.got, want.min, want.what)
		t.Logf("%s: %d", want.what, want.got)
	}
	for _, k := range c.Summary().Classes {
		assert.Positive(t, k.Ingredients, "no ingredient has the class %s", k.Class)
	}
}

func TestFiguresAreSound(t *testing.T) {
	odourless := func(p *flavor.Profile) bool { return len(p.Materials) == 0 }
	for _, p := range loadCatalogue(t).Profiles() {
		for _, f := range figuresOf(p) {
			assert.NoError(t, f.Check(), "%s: %s", p.ID, f.field)
			if f.Origin == flavor.OriginMemory && f.Value > 0 {
				assert.Positive(t, f.Spread, "%s: %s: a number recalled is never sure", p.ID, f.field)
			}
		}
		if odourless(p) {
			assert.Zero(t, p.Aroma.Total(), p.ID)
			continue
		}
		assert.Positive(t, p.Aroma.Total(), p.ID)
		assert.Positive(t, p.AromaSpread, p.ID)
		assert.Positive(t, p.DensityGPerML, p.ID)
		assert.GreaterOrEqual(t, p.WaterGPerML, 0.0, p.ID)
	}
}

// band is a range of what a class may hold.
type band struct{ lo, hi float64 }

// plausible is what a class can hold, in the units of the fields; what falls
// outside is a slip of the pen. Judged from the trade, from memory.
var plausible = map[flavor.Class]struct{ abv, sugar, acid, bitter band }{
	flavor.ClassGin:             {band{35, 60}, band{0, 80}, band{0, 2}, band{0, 5}},
	flavor.ClassVodka:           {band{37.5, 60}, band{0, 30}, band{0, 2}, band{0, 5}},
	flavor.ClassWhiskey:         {band{40, 70}, band{0, 0.5}, band{0, 2}, band{0, 10}},
	flavor.ClassRum:             {band{35, 80}, band{0, 30}, band{0, 2}, band{0, 10}},
	flavor.ClassAgaveSpirit:     {band{35, 55}, band{0, 10}, band{0, 2}, band{0, 5}},
	flavor.ClassBrandy:          {band{36, 62}, band{0, 20}, band{0, 2}, band{0, 10}},
	flavor.ClassFruitSpirit:     {band{37.5, 55}, band{0, 10}, band{0, 1}, band{0, 5}},
	flavor.ClassAniseSpirit:     {band{35, 75}, band{0, 350}, band{0, 1}, band{0, 20}},
	flavor.ClassOtherSpirit:     {band{15, 96.5}, band{0, 20}, band{0, 3}, band{0, 20}},
	flavor.ClassLiqueur:         {band{10, 60}, band{100, 600}, band{0, 15}, band{0, 150}},
	flavor.ClassCreamLiqueur:    {band{10, 20}, band{150, 350}, band{0, 2}, band{0, 40}},
	flavor.ClassBitterAperitif:  {band{10, 45}, band{80, 300}, band{0, 6}, band{40, 300}},
	flavor.ClassAmaro:           {band{15, 50}, band{5, 330}, band{0, 6}, band{40, 500}},
	flavor.ClassVermouth:        {band{14.5, 22}, band{0, 220}, band{3, 7}, band{5, 120}},
	flavor.ClassAromatisedWine:  {band{13, 22}, band{30, 250}, band{3, 8}, band{0, 200}},
	flavor.ClassFortifiedWine:   {band{15, 22}, band{0, 450}, band{3, 9}, band{0, 20}},
	flavor.ClassWine:            {band{0, 17}, band{0, 250}, band{1, 12}, band{0, 25}},
	flavor.ClassSparklingWine:   {band{0, 14}, band{0, 120}, band{2, 10}, band{0, 15}},
	flavor.ClassBeer:            {band{0, 14}, band{0, 90}, band{1, 12}, band{0, 90}},
	flavor.ClassCider:           {band{0, 12}, band{0, 200}, band{3, 14}, band{0, 40}},
	flavor.ClassCocktailBitters: {band{0, 60}, band{0, 120}, band{0, 10}, band{150, 6000}},
	flavor.ClassTincture:        {band{0, 90}, band{0, 80}, band{0, 5}, band{0, 15000}},
	flavor.ClassSyrup:           {band{0, 0}, band{300, 1250}, band{0, 10}, band{0, 30}},
	flavor.ClassSpicedSyrup:     {band{0, 0}, band{300, 900}, band{0, 15}, band{0, 300}},
	flavor.ClassFruitSyrup:      {band{0, 0}, band{300, 950}, band{0, 130}, band{0, 60}},
	flavor.ClassCordial:         {band{0, 0}, band{200, 800}, band{10, 80}, band{0, 40}},
	flavor.ClassSugar:           {band{0, 0}, band{1200, 1600}, band{0, 5}, band{0, 10}},
	flavor.ClassSourJuice:       {band{0, 0}, band{0, 130}, band{12, 75}, band{0, 50}},
	flavor.ClassJuice:           {band{0, 0}, band{5, 200}, band{0, 45}, band{0, 60}},
	flavor.ClassPuree:           {band{0, 0}, band{10, 320}, band{0, 45}, band{0, 20}},
	flavor.ClassFruit:           {band{0, 0}, band{0, 650}, band{0, 65}, band{0, 80}},
	flavor.ClassFreshHerb:       {band{0, 0}, band{0, 10}, band{0, 10}, band{0, 60}},
	flavor.ClassSpice:           {band{0, 0}, band{0, 50}, band{0, 10}, band{0, 300}},
	flavor.ClassDairy:           {band{0, 1}, band{0, 800}, band{0, 20}, band{0, 2}},
	flavor.ClassPlantMilk:       {band{0, 0}, band{0, 750}, band{0, 3}, band{0, 10}},
	flavor.ClassEgg:             {band{0, 0}, band{0, 500}, band{0, 1}, band{0, 1}}, // to sweetened batter
	flavor.ClassFoam:            {band{0, 0}, band{0, 20}, band{0, 2}, band{0, 60}},
	flavor.ClassSoda:            {band{0, 1.2}, band{0, 140}, band{0, 10}, band{0, 100}},
	flavor.ClassTea:             {band{0, 0}, band{0, 5}, band{0, 6}, band{0, 150}},
	flavor.ClassCoffee:          {band{0, 0}, band{0, 5}, band{0.5, 12}, band{20, 300}},
	flavor.ClassWater:           {band{0, 0}, band{0, 0}, band{0, 0}, band{0, 0}},
	flavor.ClassVinegar:         {band{0, 1}, band{0, 300}, band{35, 90}, band{0, 10}},
	flavor.ClassShrub:           {band{0, 1}, band{200, 600}, band{10, 45}, band{0, 50}},
	flavor.ClassAcid:            {band{0, 0}, band{0, 0}, band{30, 300}, band{0, 10}},
	flavor.ClassSaline:          {band{0, 0}, band{0, 0}, band{0, 0}, band{0, 5}},
	flavor.ClassSavoury:         {band{0, 3}, band{0, 250}, band{0, 60}, band{0, 60}},
	flavor.ClassAlcoholFree:     {band{0, 0.5}, band{0, 400}, band{0, 10}, band{0, 250}},
}

func TestFiguresArePlausible(t *testing.T) {
	for _, class := range flavor.Classes() {
		assert.Contains(t, plausible, class)
	}
	for _, p := range loadCatalogue(t).Profiles() {
		b := plausible[p.Class]
		for _, f := range []struct {
			field string
			value float64
			band
		}{{"abv", p.ABV.Value, b.abv}, {"sugar", p.Sugar.Value, b.sugar}, {"acid", p.Acid.Value, b.acid}, {"bitter", p.Bitter.Value, b.bitter}} {
			assert.True(t, f.value >= f.lo && f.value <= f.hi, "%s (%s): %s %v is outside %v to %v", p.ID, p.Class, f.field, f.value, f.lo, f.hi)
		}
		switch p.Class {
		case flavor.ClassSparklingWine, flavor.ClassBeer, flavor.ClassSoda:
			assert.True(t, p.Carbonated, "%s: a %s sparkles", p.ID, p.Class)
		case flavor.ClassCider, flavor.ClassWine:
		default:
			assert.False(t, p.Carbonated, "%s: a %s does not sparkle", p.ID, p.Class)
		}
		if p.ABV.Value >= 60 {
			assert.Contains(t, p.Cautions, "overproof", p.ID)
		}
	}
}

// allergenWords are words in the name of a material that give its allergen
// away. The exceptions are no food of that allergen: the grain of a spirit is
// excepted by the Annex, and the others only share a word.
var allergenWords = []struct {
	allergen flavor.Allergen
	words    []string
	except   []string
}{
	{flavor.TreeNuts, []string{"almond", "hazelnut", "walnut", "pecan", "pistachio", "macadamia", "cashew"}, nil},
	{flavor.Peanuts, []string{"peanut"}, nil},
	{flavor.Milk, []string{"milk", "cream", "butter", "yoghurt"}, nil},
	{flavor.Eggs, []string{"egg"}, nil},
	{flavor.Soybeans, []string{"soy"}, nil},
	{flavor.Gluten, []string{"barley", "wheat", "oat", "malt", "beer", "bread"}, []string{"malt spirit", "root beer spices"}},
	{flavor.Fish, []string{"anchovy", "fish"}, []string{"shellfish stock"}},
	{flavor.Crustaceans, []string{"shellfish", "prawn"}, nil},
	{flavor.Molluscs, []string{"shellfish", "clam", "oyster"}, nil},
	{flavor.Celery, []string{"celery"}, nil},
	{flavor.Mustard, []string{"mustard"}, nil},
	{flavor.Sesame, []string{"sesame"}, nil},
	{flavor.Sulphites, []string{"white wine", "red wine"}, nil},
}

func TestMaterialsCarryTheirAllergens(t *testing.T) {
	c := loadCatalogue(t)
	found := map[flavor.Allergen]int{}
	for _, name := range sortedKeys(c.materials) {
		for _, w := range allergenWords {
			if slices.Contains(w.except, name) || !slices.ContainsFunc(w.words, func(word string) bool { return strings.Contains(name, word) }) {
				continue
			}
			found[w.allergen]++
			assert.Contains(t, c.materials[name].Allergens, w.allergen, "material %q", name)
		}
	}
	for _, w := range allergenWords {
		assert.Positive(t, found[w.allergen], "no material brings %s", w.allergen)
	}
	// What a material carries, every record made with it carries.
	for _, p := range c.Profiles() {
		for _, m := range p.Contents {
			for _, a := range c.materials[m].Allergens {
				certainty, has := p.Allergen(a)
				assert.True(t, has && certainty == flavor.Contains, "%s: %s of %s", p.ID, a, m)
			}
			assert.Subset(t, append([]string{""}, p.Animal...), c.materials[m].Animal, p.ID)
			assert.Subset(t, append([]string{""}, p.Cautions...), c.materials[m].Cautions, p.ID)
		}
	}
}

// A record that smells of nuts, milk or grain holds them unless it is named
// here: a smell that comes from elsewhere is rare, and a key left out by
// oversight would be a guest unprotected.
func TestSmellsOfAllergensAreContents(t *testing.T) {
	c := loadCatalogue(t)
	// The soy sauce of a sauce without fish may be one without wheat, which its label tells. Else
	// there is none: the nut of sherry is given as flor and rancio.
	elsewhere := []string{"fishless-worcestershire-style-sauce"}
	seen := 0
	for _, p := range c.Profiles() {
		for _, m := range p.Materials {
			for _, a := range c.materials[m.Material].Allergens {
				seen++
				certainty, _ := p.Allergen(a)
				assert.True(t, certainty == flavor.Contains || slices.Contains(elsewhere, p.ID), "%s smells of %s: list it in made_with, or here", p.ID, m.Material)
			}
		}
	}
	assert.Greater(t, seen, 100)
}

// Nothing follows from a smell: a malt that smells of seaweed holds none, and a
// spice among twenty of an amaro is no caution on cinnamon.
func TestSmellsCarryNoCaution(t *testing.T) {
	c := loadCatalogue(t)
	smells := func(p *flavor.Profile, material string) bool {
		return slices.ContainsFunc(p.Materials, func(m flavor.MaterialShare) bool { return m.Material == material })
	}
	for _, x := range []struct {
		id, material, caution string
		held                  bool
	}{
		{"medium-amaro", "cinnamon", "cassia", false},
		{"aromatic-bitters", "cinnamon", "cassia", false},
		{"cinnamon-syrup", "cinnamon", "cassia", true},
		{"india-pale-ale", "grapefruit", "grapefruit", false},
		{"grapefruit-juice", "grapefruit", "grapefruit", true},
		{"sweet-vermouth", "wormwood", "wormwood", false},
		{"wormwood-tincture", "wormwood", "wormwood", true},
		{"decaf-coffee", "coffee", "caffeine", false},
		{"coffee", "coffee", "caffeine", true},
		{"tonic-water", "cinchona", "quinine", true},
	} {
		p, ok := c.ByID(x.id)
		require.True(t, ok, x.id)
		assert.True(t, smells(p, x.material), "%s smells of %s", x.id, x.material)
		assert.Equal(t, x.held, slices.Contains(p.Contents, x.material), x.id)
		assert.Equal(t, x.held, slices.Contains(p.Cautions, x.caution), "%s: %s", x.id, x.caution)
	}
	malt, _ := c.ByID("peated-malt")
	assert.Empty(t, malt.Contents)
}

// What a class is made of, it must warn of, whatever its aroma is made of.
func TestClassesCarryTheirAllergens(t *testing.T) {
	c := loadCatalogue(t)
	must := func(p *flavor.Profile, a flavor.Allergen) {
		t.Helper()
		certainty, has := p.Allergen(a)
		assert.True(t, has && certainty == flavor.Contains, "%s (%s) contains %s", p.ID, p.Class, a)
	}
	may := func(p *flavor.Profile, a flavor.Allergen) {
		t.Helper()
		_, has := p.Allergen(a)
		assert.True(t, has, "%s (%s) may contain %s", p.ID, p.Class, a)
	}
	noGrain := []string{"alcoholic-ginger-beer"}                                           // fermented from sugar
	noGrapes := []string{"sake", "nigori-sake", "aromatic-sake", "sparkling-sake", "mead"} // rice and honey; mead may
	ofPlants := []string{"oat-liqueur"}
	for _, p := range c.Profiles() {
		switch p.Class {
		case flavor.ClassDairy:
			must(p, flavor.Milk)
			assert.Contains(t, p.Animal, "milk", p.ID)
		case flavor.ClassEgg:
			must(p, flavor.Eggs)
			assert.Contains(t, p.Animal, "egg", p.ID)
		case flavor.ClassCreamLiqueur:
			_, egg := p.Allergen(flavor.Eggs)
			if !egg && !slices.Contains(ofPlants, p.ID) {
				must(p, flavor.Milk)
			}
		case flavor.ClassBeer:
			if !slices.Contains(noGrain, p.ID) {
				must(p, flavor.Gluten)
			}
		case flavor.ClassWine, flavor.ClassSparklingWine, flavor.ClassVermouth, flavor.ClassAromatisedWine, flavor.ClassFortifiedWine:
			if !slices.Contains(noGrapes, p.ID) {
				may(p, flavor.Sulphites)
			}
		case flavor.ClassCider:
			may(p, flavor.Sulphites)
		}
		if called(p, "dairy-free", "vegan", "plant-based") {
			_, milk := p.Allergen(flavor.Milk)
			assert.False(t, milk, "%s is sold as free of milk", p.ID)
			assert.Empty(t, p.Animal, "%s is sold as free of animals", p.ID)
		}
	}
	// By what the record goes by: each word, the allergen, and who only shares the word.
	for _, w := range []struct {
		words    []string
		allergen flavor.Allergen
		except   []string
	}{
		{[]string{"orgeat", "falernum"}, flavor.TreeNuts,
			[]string{"sesame-orgeat", "tiger-nut-syrup", "oat-orgeat", "nut-free-falernum-syrup"}},
		{[]string{"amaretto", "almond", "hazelnut", "walnut", "pistachio", "macadamia", "pecan", "cashew"}, flavor.TreeNuts,
			[]string{"nut-free-falernum-syrup"}},
		{[]string{"peanut"}, flavor.Peanuts, nil},
		{[]string{"celery"}, flavor.Celery, nil},
		{[]string{"mustard"}, flavor.Mustard, nil},
		{[]string{"sesame", "tahini"}, flavor.Sesame, nil},
		{[]string{"soy", "soya", "tamari", "miso"}, flavor.Soybeans, []string{"sauce-aroma-baijiu"}}, // an aroma of it, from sorghum
		{[]string{"fish sauce", "worcestershire"}, flavor.Fish, []string{"fishless-worcestershire-style-sauce"}},
		{[]string{"clam"}, flavor.Molluscs, nil},
		{[]string{"oat", "malt vinegar"}, flavor.Gluten, nil},
		{[]string{"eggnog", "egg liqueur", "advocaat"}, flavor.Eggs, nil},
	} {
		for _, p := range c.Profiles() {
			if called(p, w.words...) && !slices.Contains(w.except, p.ID) {
				may(p, w.allergen)
			}
		}
	}
	honeyed := 0
	for _, p := range c.Profiles() {
		if slices.Contains(p.Contents, "honey") || p.Sugars.Name == "honey" {
			honeyed++
			assert.Contains(t, p.Animal, "honey", p.ID)
			assert.Contains(t, p.Cautions, "honey", p.ID)
		}
	}
	assert.GreaterOrEqual(t, honeyed, 10)
}

// Makers of these keep their recipes, so that no record may claim to know all
// that is in them. Wine is fined with egg or milk, and nobody has said which
// bottle is not; sulphites belong to it. What is fermented from rice, honey, apples or sap is
// not fined so.
func TestSecretRecipesAreUnstated(t *testing.T) {
	unfined := []string{"sake", "nigori-sake", "aromatic-sake", "sparkling-sake", "mead", "makgeolli", "palm-wine", "apple-mistelle"}
	for _, p := range loadCatalogue(t).Profiles() {
		switch p.Class {
		case flavor.ClassAmaro, flavor.ClassBitterAperitif, flavor.ClassCocktailBitters, flavor.ClassVermouth,
			flavor.ClassAromatisedWine, flavor.ClassAlcoholFree:
			assert.False(t, p.AllergensKnown, p.ID)
		}
		switch p.Class {
		case flavor.ClassVermouth, flavor.ClassAromatisedWine, flavor.ClassWine, flavor.ClassSparklingWine, flavor.ClassFortifiedWine:
			if slices.Contains(unfined, p.ID) {
				continue
			}
			for _, a := range []flavor.Allergen{flavor.Eggs, flavor.Milk} {
				c, _ := p.Allergen(a)
				assert.Equal(t, flavor.MayContain, c, "%s: %s", p.ID, a)
			}
			c, _ := p.Allergen(flavor.Sulphites)
			assert.Equal(t, flavor.Contains, c, p.ID)
		}
	}
}

// properNames are the first words that keep their capital.
var properNames = []string{"London", "Irish", "Japanese-style", "Canadian", "Calabrian-style", "Sicilian-style",
	"Baltic-style", "Bohemian-style", "American-style", "Spanish-style", "Swedish", "Tennessee-style", "Turkish-style",
	"Thai", "Hungarian-style", "India", "Corsican-style", "Batavia", "Meyer", "Key", "Worcestershire-style", "Pedro", "Central"}

// Names stand in sentences: lower case but for proper names, no stray space, and
// never the name of another record.
func TestNamesAreFit(t *testing.T) {
	c := loadCatalogue(t)
	owner := map[string]string{}
	for _, p := range c.Profiles() {
		if first, _, _ := strings.Cut(p.Name, " "); first != strings.ToLower(first) {
			assert.Contains(t, properNames, first, "%s: name %q", p.ID, p.Name)
		}
		for _, name := range append([]string{p.Name}, p.Aliases...) {
			assert.Equal(t, strings.Join(strings.Fields(name), " "), name, p.ID)
			assert.NotContains(t, name, "®", p.ID)
			assert.NotContains(t, name, "™", p.ID)
			key := flavor.NormaliseName(name)
			if other, taken := owner[key]; taken {
				assert.Equal(t, other, p.ID, "name %q", name)
			}
			owner[key] = p.ID
		}
	}
}
