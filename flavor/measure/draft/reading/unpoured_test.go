package reading_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/reading"
)

const (
	threeBelow = "45 ml aged rum\n15 ml dry curaçao\n20 ml lime juice\nshake, up"
	bareBelow  = "vodka 40\nvanilla syrup 15\nlime 20\nshake, up"
	ouncesOf   = "2 oz gin\n.75 lemon\n.75 simple\nshake, up"
)

// What pours nothing is passed over aloud where the rest of the draft proves it: each draft
// with its pours, its name, and what of it is said to be passed over. Common practice, no source.
func TestWhatPoursNothing(t *testing.T) {
	x := wholeCatalogue(t)
	for _, c := range []struct {
		text   string
		pours  int
		name   string
		passed []string
	}{
		// headings above the name
		{"CARD 22\nHalyard Court\n" + threeBelow, 3, "Halyard Court", []string{"line 1: “CARD 22”"}},
		{"Fig. 4: The Long Halyard\n" + threeBelow, 3, "The Long Halyard", []string{"Fig. 4"}},
		{"COMP SHEET — bartender: J.\nDrink: Halyard\n" + threeBelow, 3, "Halyard", []string{"COMP SHEET", "bartender"}},
		{"Competition entry no. 7 \"Third Halyard\"\n" + threeBelow, 3, "Third Halyard", []string{"Competition entry no. 7"}},
		{"from the training binder, p. 12 – HOT SERVES\nHalyard Blanket: 50 ml dark rum, 15 ml brown sugar syrup, 120 ml hot water. Build in the mug.", 3, "Halyard Blanket", []string{"p. 12"}},
		{"shift sheet pg 2\n\nHALYARD (ea.)\n" + threeBelow, 3, "HALYARD", []string{"shift sheet pg 2"}},
		{"pls copy this out by Fri 3 March:\n\nLow Halyard\n" + threeBelow, 3, "Low Halyard", []string{"by Fri 3 March"}},
		// remarks below the name
		{"HALYARD  —  £12\nShort, loud and grumpy. Sells itself after 11pm.\n" + threeBelow, 3, "HALYARD", []string{"loud and grumpy", "Sells itself after 11pm"}},
		{"Halyard (Jo's, menu drop 3)\nGP 78% / sell £11.50 / cost £2.11\n" + bareBelow, 3, "Halyard", []string{"menu drop 3"}},
		{"Halyard\nautumn list, still in testing\n" + threeBelow, 3, "Halyard", []string{"autumn list"}},
		// counts and references
		{"Table 14 – 2x\n" + bareBelow, 3, "Table 14 – 2x", nil},
		{"La Halyard. Finalist heat 2.\n" + threeBelow, 3, "La Halyard", []string{"Finalist heat 2"}},
		{"BATCH \"Green Halyard\" x10: gin 450, lime cordial 200, water 150. Stored freezer. Pour 95 p.p. into frozen coupe no shake no stir.", 3, "Green Halyard", []string{"x10", "Stored freezer", "Pour 95 p.p"}},
		{"ticket 0231: halyard x1, 2 oz rye, 1 sugar cube, 4 dash bitters", 3, "halyard", []string{"ticket 0231"}},
		{"OUTDOOR BAR / event 12 July\n\"Slow Halyard\"\n" + threeBelow, 3, "Slow Halyard", []string{"line 1: “OUTDOOR BAR / event 12 July”"}},
		{"CONFIDENTIAL - do not post\nThe Halyard\n" + threeBelow, 3, "The Halyard", []string{"CONFIDENTIAL"}},
		{"RUM\nNight Halyard\n45 ml white rum\n15 ml orgeat\n20 ml lime juice", 3, "Night Halyard", []string{"“RUM”"}},
		{"Room 412 — 1x\n" + threeBelow, 3, "Room 412 — 1x", nil},
		{"spec as of 3/11\nLow Halyard\n" + bareBelow, 3, "Low Halyard", []string{"spec as of 3/11"}},
		{"tasting night, 2nd course\nVanilla Halyard\n" + bareBelow, 3, "Vanilla Halyard", []string{"tasting night, 2nd course"}},
		{"CARD 5\nLime Spritz\n" + threeBelow, 3, "Lime Spritz", nil},
		{"for the tasting (6 pax) 45ml gin, 15ml dry vermouth, 5ml fino. stir, up", 3, "for the tasting", []string{"6 pax"}},
		// names of drinks that name what is poured below
		{"what the guest at 9 had: scotch highball, 45ml scotch, barspoon of honey liqueur, soda to top", 3, "scotch highball", []string{"what the guest at 9 had"}},
		{"CARD 3\nRum Halyard\n" + threeBelow, 3, "Rum Halyard", []string{"CARD 3"}},
		{"Menu v3, page 4\nVanilla Halyard\n" + bareBelow, 3, "Vanilla Halyard", []string{"Menu v3, page 4"}},
		// remarks beside and behind the pours
		{"2 oz rye, guest wants rye, 1 sugar cube, 4 dash bitters\nstir, rocks", 3, "", []string{"guest wants rye"}},
		{threeBelow + "\napproved by Jo 4/10", 3, "", []string{"approved by Jo 4/10"}},
		{threeBelow + "\nguest 4 is pregnant - no egg", 3, "", []string{"guest 4 is pregnant"}},
		{threeBelow + "\nBetter than take 1", 3, "", []string{"Better than take 1"}},
		{bareBelow + "\nlime keeps 3 days in the fridge", 3, "", []string{"keeps 3 days"}},
		{"60 ml cold brew, sieved\n40 ml dark rum\n10 ml vanilla syrup\nshake, rocks", 3, "", []string{"sieved"}},
		{bareBelow + "\nCosts us 1.90, sells 12", 3, "", []string{"Costs us 1.90"}},
		{bareBelow + "\nsell for 9", 3, "", []string{"sell for 9"}},
		{threeBelow + "\n(photo on p. 4 of the binder)", 3, "", []string{"(photo on p. 4 of the binder)"}},
		{"1 sugar cube, 4 dash bitters, lemon twist not orange. rye 60", 3, "", []string{"not orange"}},
	} {
		s, err := reading.Read(c.text, x)
		if !assert.NoError(t, err, c.text) {
			continue
		}
		notes := strings.Join(s.Notes, "\n")
		assert.Len(t, s.Pours, c.pours, c.text)
		assert.Equal(t, c.name, s.Name, c.text)
		for _, p := range c.passed {
			assert.Contains(t, notes, p, c.text)
		}
	}
}

// What may be poured is asked for, wherever it stands: dropping it would change the drink
// unseen. Common practice, no source.
func TestWhatMayBePouredIsAskedFor(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		// an unknown name with an amount
		"CARD 22\n2 oz umeboshi brandywine\n" + threeBelow,
		"CARD 22\n2 umeboshi\n" + threeBelow,
		"CARD 22\numeboshi wash 20\n" + bareBelow,
		"umeboshi wash 20 ml, 45 ml rum, 20 ml lime juice",
		"45 ml rum, 20 ml lime juice, 20 ml umeboshi wash",
		"CARD 22\nsplash of umeboshi wash\n" + threeBelow,
		"CARD 22\nhandful umeboshi leaves\n" + threeBelow,
		"45 ml rum, 20 ml lime juice\npour 95 umeboshi wash",
		"45 ml rum, 20 ml lime juice\nalso 3 umeboshi",
		"45 ml rum, 20 ml lime juice\numeboshi 3",
		"CARD 22\nmaybe 2 umeboshi\n" + threeBelow,
		"60 ml cold brew, spiced\n40 ml dark rum\n10 ml vanilla syrup",
		"CARD 5\numeboshi wash 3/4\n" + ouncesOf,
		"an ounce and a half of umeboshi wash, three quarters lemon, three quarters honey",
		"umeboshi wash x1, red bitter x1, sweet vermouth x1",
		"gin 60\nsweet vermouth 60\numeboshi wash 2 d",
		"CARD 22\njuice of 1 umeboshi wash\n60 ml white rum\n2 tsp sugar",
		"CARD 22\numeboshi wash\n60ml\nSugar syrup\n7.5ml\nAromatic bitters\n2 dashes",
		// a name without an amount above, where no spirit is poured else
		"Halyard\numeboshi wash\n20 lemon\n20 lavender syrup",
		// an ingredient without an amount above, between or behind the pours
		"CARD 22\nfernet\n" + threeBelow,
		"CARD 22\nHalyard Court\nlemon juice\n" + threeBelow,
		"CARD 22\nrum\n" + threeBelow,
		"CARD 22\nhouse lime cordial\n" + threeBelow,
		"CARD 22\nfernett\n" + threeBelow,
		"CARD 22\nginger beer and fernet\n" + threeBelow,
		"2 oz gin, fernet, 1 oz lime",
		"2 oz gin, umeboshi, 1 oz lime",
		"2 oz gin, umeboshi wash\n1 oz lime",
		"2 oz gin\nwashed umeboshi\n1 oz lime",
		"2 oz gin, 1 oz lime\nfernet",
		"2 oz gin\nshiso leaf, clapped in\n1 oz lime",
		// a number that may be an amount
		"Umeboshi 20\n" + bareBelow,
		"CARD 22\nthree umeboshi, 15\n" + ouncesOf,
		"2 oz gin\nno. 3 umeboshi\n1 oz lime",
		// too few amounts to tell by
		"CARD 22\nHalyard Court\ngin",
		"gin, lime, CARD 22",
	} {
		_, err := reading.Read(text, x)
		assert.Error(t, err, text)
	}
}

// What is passed over stays in the draft, as it was written.
func TestWhatPoursNothingIsKept(t *testing.T) {
	const text = "CARD 22, in testing\nHalyard Court (ea.)\n2x\n" + threeBelow
	r, err := reading.Resolve(draft.Parse(text), wholeCatalogue(t))
	require.NoError(t, err)
	require.NoError(t, r.Err())
	assert.Equal(t, text, r.Draft.String())
	assert.Equal(t, "Halyard Court", r.Spec.Name)
	var remarks []string
	for i, e := range r.Draft.Entries {
		if e.Kind == draft.KindRemark {
			remarks = append(remarks, strings.TrimSpace(text[e.Span.Start:e.Span.End]))
		}
		if i > 0 {
			assert.GreaterOrEqual(t, e.Span.Start, r.Draft.Entries[i-1].Span.End, "in order")
		}
	}
	assert.Equal(t, []string{"CARD 22, in testing", "(ea.)", "2x"}, remarks)
}

// What colleagues say to one another around the pours is passed over, and said to be: common
// practice, no source.
func TestWhatColleaguesSayIsPassedOver(t *testing.T) {
	x := wholeCatalogue(t)
	for _, c := range []struct {
		text   string
		pours  int
		passed []string
	}{
		{"hey! ok so tonight we do 50 gin 20 lemon 15 raspberry syrup, shaken, top w prosecco 40, coupe. dont forget the coupes in freezer", 4, []string{"tonight we do", "dont forget the coupes in freezer"}},
		{"marta its 45 rye 30 sweet verm 2 dashes arom, STIRRED not shaken. up. new guy keeps shaking it lol", 3, []string{"marta its", "new guy keeps shaking it lol"}},
		{"sorry wrong msg before. correct is 40 calvados 20 apple juice 15 lemon. shake. rocks. ok?", 3, []string{"sorry wrong msg before"}},
		{"hiya Tom, for the terrace tonight: 45 gin 20 lime 20 elderflower liqueur, shake, coupe. see you at 5", 3, []string{"hiya Tom", "see you at 5"}},
		{"each one gets 30 lemon, 20 ginger syrup, 60 cold jasmine tea, soda to the top of a collins. No alcohol obvs", 4, nil},
	} {
		s, err := reading.Read(c.text, x)
		if !assert.NoError(t, err, c.text) {
			continue
		}
		assert.Len(t, s.Pours, c.pours, c.text)
		for _, p := range c.passed {
			assert.Contains(t, strings.Join(s.Notes, "\n"), p, c.text)
		}
	}
}

// A sentence that tells to pour something, or names what no amount states, is asked for.
func TestWhatColleaguesSayOfPoursIsAskedFor(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"guys dont forget the egg white: 45 gin 20 lemon 15 simple",
		"45 gin 20 lemon 15 simple. the guest wants egg white too",
		"the boss wants a splash of umeboshi. 45 gin 20 lemon 15 simple",
		"ok guys fernet, then 45 gin 20 lemon 15 simple, lol",
		"hey its 2 umeboshi 45 gin 20 lemon 15 simple",
		"hiya its 45 gin and umeboshi, 20 lemon",
		"who drank it? 45 gin 20 lemon 15 simple, orgeat is a must",
		"can someone tell the day shift its 20 lemon not 30. full spec 50 gin 20 lemon 15 simple",
	} {
		_, err := reading.Read(text, x)
		assert.Error(t, err, text)
	}
}

// What one portion of a batch is, and how it is served, pours nothing: common practice, no source.
func TestOnePortionUp(t *testing.T) {
	for _, text := range []string{
		"mezcal 400 ml, sweet vermouth 200 ml, water 100 ml, bottle, fridge, pour 80 ml up",
		"mezcal 400 ml\nsweet vermouth 200 ml\nwater 100 ml\nserve 90 ml up",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 3, text)
		assert.Equal(t, flavor.Up, s.Service, text)
	}
}
