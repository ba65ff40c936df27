package sister_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/cover/sister"
)

// bottles of a small bar, by their ids.
var bottles = map[string]*flavor.Profile{}

func bottle(id string, c flavor.Class) *flavor.Profile {
	if bottles[id] == nil {
		bottles[id] = &flavor.Profile{ID: id, Name: id, Class: c}
	}
	return bottles[id]
}

var (
	gin, vodka      = bottle("gin", flavor.ClassGin), bottle("vodka", flavor.ClassVodka)
	rye, bourbon    = bottle("rye", flavor.ClassWhiskey), bottle("bourbon", flavor.ClassWhiskey)
	scotch, tequila = bottle("scotch", flavor.ClassWhiskey), bottle("tequila", flavor.ClassAgaveSpirit)
	red, sweet, dry = bottle("red", flavor.ClassBitterAperitif), bottle("sweet", flavor.ClassVermouth), bottle("dry", flavor.ClassVermouth)
	lemon, lime     = bottle("lemon", flavor.ClassSourJuice), bottle("lime", flavor.ClassSourJuice)
	sugar, bubbles  = bottle("sugar", flavor.ClassSyrup), bottle("bubbles", flavor.ClassSparklingWine)
	bitters, creole = bottle("bitters", flavor.ClassCocktailBitters), bottle("creole", flavor.ClassCocktailBitters)
	ml              = func(p *flavor.Profile, ml float64) flavor.Pour { return flavor.Pour{Profile: p, ML: ml} }
	dash            = func(p *flavor.Profile) flavor.Pour { return ml(p, 0.8) }
	mixed           = func(name string, pours ...flavor.Pour) *flavor.Spec { return &flavor.Spec{Name: name, Pours: pours} }
	hot             = func(s *flavor.Spec) *flavor.Spec { s.Service = flavor.Hot; return s }
	negroni         = mixed("Negroni", ml(gin, 30), ml(red, 30), ml(sweet, 30))
	manhattan       = mixed("Manhattan", ml(rye, 60), ml(sweet, 30), dash(bitters))
	martini         = mixed("Martini", ml(gin, 60), ml(dry, 10))
	sour            = mixed("Gin Sour", ml(gin, 60), ml(lemon, 22), ml(sugar, 22))
	proven          = []sister.Drink{{Spec: negroni}, {Spec: manhattan}, {Spec: martini}, {Spec: sour},
		{Spec: mixed("Boulevardier", ml(bourbon, 45), ml(red, 30), ml(sweet, 30)), Current: true},
		{Spec: mixed("Boulevardier, equal parts", ml(bourbon, 30), ml(red, 30), ml(sweet, 30))},
		{Spec: mixed("Sbagliato", ml(red, 30), ml(sweet, 30), ml(bubbles, 30))},
		{Spec: mixed("tequila, red bitter and vermouth", ml(tequila, 30), ml(red, 30), ml(sweet, 30))},
		{Spec: mixed("Rob Roy", ml(scotch, 60), ml(sweet, 30), dash(bitters))},
		{Spec: mixed("Kangaroo", ml(vodka, 45), ml(dry, 8))},
		{Spec: hot(mixed("Hot Sour", ml(rye, 60), ml(lemon, 20), ml(sugar, 20)))},
		{Spec: mixed("Daisy", ml(tequila, 60), ml(lime, 22), ml(sugar, 22))},
		{Spec: mixed("Whiskey Sour", ml(bourbon, 60), ml(lemon, 20), ml(sugar, 24))},
		{Spec: mixed("Dry Sherry-like", ml(bubbles, 90), ml(dry, 10))},
	}
)

func customs() *flavor.Customs {
	c := &flavor.Customs{}
	c.Add("bourbon", []string{"rye"}, 1)
	c.Add("rye", []string{"bourbon"}, 1)
	return c
}

func TestSisters(t *testing.T) {
	b := sister.NewBook(proven, customs())
	for _, c := range []struct {
		what string
		of   *flavor.Spec
		gone *flavor.Profile
		want []string // id and name
	}{
		{"what guests ask for today comes first, then names, then what has none", negroni, gin,
			[]string{"bourbon Boulevardier", "bubbles Sbagliato", "tequila "}},
		{"no other bottle makes the drink that it is", manhattan, rye, []string{"scotch Rob Roy"}},
		{"one thing stays: its measure and its dashes tell the drink", martini, gin, []string{"vodka Kangaroo"}},
		{"the same with bitters is none", mixed("x", ml(gin, 60), ml(dry, 10), dash(bitters)), gin, []string{}},
		{"other bitters are the same kind", mixed("x", ml(rye, 60), ml(sweet, 30), dash(creole)), rye, []string{"scotch Rob Roy"}},
		{"lemon is not lime, and hot is not cold", sour, gin, []string{"bourbon Whiskey Sour"}},
		{"what stays is poured otherwise", mixed("x", ml(gin, 30), ml(red, 10), ml(sweet, 40)), gin, []string{}},
		{"a spirit in a quarter of its measure is another drink", mixed("x", ml(gin, 15), ml(lemon, 22), ml(sugar, 22)), gin, []string{}},
		{"a dash", manhattan, bitters, nil},
		{"what is not in it", negroni, lemon, nil},
		{"nothing stays", mixed("x", ml(gin, 60)), gin, nil},
	} {
		got := b.Of(c.of, c.gone)
		if c.want == nil {
			assert.Nil(t, got, c.what)
			continue
		}
		told := []string{}
		for _, x := range got {
			told = append(told, x.Profile.ID+" "+x.Name)
		}
		assert.Equal(t, c.want, told, c.what)
	}
	var none *sister.Book
	assert.Empty(t, none.Of(negroni, gin), "no book")
	const within = 1e-9 // mL
	assert.InDelta(t, 45, b.Of(negroni, gin)[0].ML, within, "as much as the proven drink pours of it")
}

func TestSame(t *testing.T) {
	b := sister.NewBook(nil, customs())
	assert.True(t, b.Same(rye, bourbon))
	assert.True(t, b.Same(gin, gin))
	assert.False(t, b.Same(scotch, bourbon), "no custom")
	assert.False(t, b.Same(lemon, lime), "they make other drinks")
}
