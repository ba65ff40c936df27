package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
)

func TestTrainingCommands(t *testing.T) {
	for _, c := range []struct {
		name    string
		input   string
		args    []string
		code    int
		out     []string
		not     []string
		message []string
	}{
		{name: "every kind", input: "1\n1\n1 2\n1 2 3\n14 150\n1, nut\n1\n", args: []string{"drill", "--rounds", "7", "--seed", "a"},
			out: []string{"Which family", "What would a guest say of it?", "hot, boozy", "Change one pour", "the least first", "How strong", "keeps the", "of 100 points: ", "of 7 right"}},
		{name: "what cannot be read is asked again", input: "many\nmany 2\n0 2\n99 2\n1 banana\n1 2 g\n1 2\n", args: []string{"drill", "--kind", "mend", "--seed", "b"},
			out: []string{"words of its name", "such as 2 3/4", "write the amount in oz", "of 1 right"}},
		{name: "a pour by its name", input: "3/4 oz lemon\n", args: []string{"drill", "--kind", "mend", "--seed", "q3"}, out: []string{"With ¾ oz of lemon juice instead of", "of 1 right"}},
		{name: "a pour by its name, in mL", input: "lemon juice to 22.5 ml\n", args: []string{"drill", "--kind", "mend", "--seed", "q3"}, out: []string{"of lemon juice instead of", "of 1 right"}},
		{name: "a pour left out", input: "leave out the honey\n", args: []string{"drill", "--kind", "mend", "--seed", "q3"}, out: []string{"Without its honey syrup", "of 1 right"}},
		{name: "none of a pour", input: "4: 0\n", args: []string{"drill", "--kind", "mend", "--seed", "q3"}, out: []string{"Without its honey syrup", "of 1 right"}},
		{name: "an order by names", input: "low water, low water, brass\nbilge alarm, brass, low water\n", args: []string{"drill", "--kind", "order", "--seed", "sceptic11"}, out: []string{"Low Water Mark is there twice", "1 of 1 right"}},
		{name: "an order run together", input: "312\n", args: []string{"drill", "--kind", "order", "--seed", "sceptic11"}, out: []string{"1 of 1 right"}},
		{name: "a guess in ounces", input: "about 13 percent, 6 oz\n", args: []string{"drill", "--kind", "guess", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "a guess, its volume first", input: "150 ml at 14 %\n", args: []string{"drill", "--kind", "guess", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "in a whole sentence", input: "It's too sweet\n", args: []string{"drill", "--kind", "fault", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "no ice", input: "no ice\n", args: []string{"drill", "--kind", "hand", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "a guess that is none", input: "strong\n14\n400 150\n14 150\n", args: []string{"drill", "--kind", "guess", "--seed", "b"}, out: []string{"write two numbers", "is no strength", "of 1 right"}},
		{name: "in the words of a guest", input: "sharp\n", args: []string{"drill", "--kind", "fault", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "words of several", input: "too\n1\n", args: []string{"drill", "--kind", "fault", "--seed", "b"}, out: []string{`"too" is none of these`, "of 1 right"}},
		{name: "words of an option", input: "without ice\n", args: []string{"drill", "--kind", "hand", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "an order with commas", input: "1, 2,3\n", args: []string{"drill", "--kind", "order", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "a guess with its units", input: "14 % vol, 150 ml\n", args: []string{"drill", "--kind", "guess", "--seed", "b"}, out: []string{"of 1 right"}},
		{name: "an order with one too few", input: "1 2\n1 2 3\n", args: []string{"drill", "--kind", "order", "--seed", "b"}, out: []string{"write all 3 drinks once each", "of 1 right"}},
		{name: "the input ends", input: "", args: []string{"drill", "--rounds", "3"}, out: []string{"0 of 0 right"}},
		{name: "for whoever avoids eggs", input: "\n", args: []string{"drill", "--kind", "guess", "--avoid", "eggs"}, out: []string{"How strong"}},
		{name: "no such kind", args: []string{"drill", "--kind", "darts"}, code: 2, message: []string{"--kind", "darts", "family"}},
		{name: "too many", args: []string{"drill", "--rounds", "1000"}, code: 2, message: []string{"--rounds", "1 to 100"}},
		{name: "too hard", args: []string{"drill", "--kind", "fault", "--size", "0.1"}, code: 2, message: []string{"--size"}},
		{name: "an axis that it has not", args: []string{"drill", "--kind", "guess", "--axis", "sour"}, code: 2, message: []string{"--axis"}},
		{name: "unknown allergen", args: []string{"drill", "--avoid", "gravity"}, code: 2, message: []string{"--avoid", "tree nuts"}},
		{name: "no seed", args: []string{"drill", "--seed", "!"}, code: 2, message: []string{"--seed"}},

		{name: "a flight", args: []string{"flight", "Ropewalk", "--axis", "sour", "--tasters", "2", "--seed", "a"},
			out: []string{"3 glasses of Ropewalk, the least sour first (seed a)", "lemon juice", "water, in place of the ice", "-1.5 noticeable steps", "+1.5", "To each taster", "Before the first sip", "artichoke-amaro"}},
		{name: "a flight of a proven drink", args: []string{"flight", "daiquiri", "--axis", "sour", "--seed", "a"}, out: []string{"3 glasses of Daiquiri, the least sour first", "lime juice"}, not: []string{".02 g"}},
		{name: "a hot flight", args: []string{"flight", "Galley Lamp", "--axis", "sweet"}, out: []string{"Keep every batch hot"}, not: []string{"in place of the ice"}},
		{name: "a flight of nothing", args: []string{"flight", "moon punch", "--axis", "sour"}, code: 2, message: []string{"moon punch"}},
		{name: "a triangle of a proven drink", args: []string{"triangle", "Daiquiri", "gold rum", "--tasters", "6"}, out: []string{"A: Daiquiri", "B: Daiquiri, without its white rum"}, not: []string{"Nobody here knows"}},
		{name: "a flight with raw egg", args: []string{"flight", "Bosun's Errand", "--axis", "sweet"},
			out: []string{"Foam does not keep in a batch", "Raw egg can carry Salmonella", "Ask every taster about allergies", "contains: eggs (egg-white)"}, not: []string{"in place of the ice"}},
		{name: "a flight without alcohol", input: "1 oz lime juice\n4 oz ginger beer\nbuild, long", args: []string{"flight", "-", "--axis", "sour"},
			out: []string{"nobody has to say why"}, not: []string{"driving", "ethanol"}},
		{name: "a flight of water", input: "2 1/2 oz London dry gin\n1/2 oz dry vermouth\nstir, up", args: []string{"flight", "-", "--axis", "long"},
			out: []string{"Nothing differs but the water", "the least long first", "water, in place of the ice"}},
		{name: "a flight of a draft", input: draft, args: []string{"flight", "-", "--axis", "sweet"}, out: []string{"the least sweet first"}},
		{name: "a flight of a bad draft", input: "2 oz moon dust", args: []string{"flight", "-", "--axis", "sweet"}, code: 2, message: []string{"line 1", "moon dust"}},
		{name: "a flight of several drinks", args: []string{"tonight", "flight", "Wicker Lee", "Tide Table", "--guests", "4"},
			out: []string{"For 4 guests, 40 mL of each drink", "1. Tide Table", "2. Wicker Lee", "make 2", "Ask every taster about allergies", "standard drinks"}},
		{name: "a flight of several that is too strong", args: []string{"tonight", "flight", "Tide Table", "Wicker Lee", "Fog Signal", "Bow Spring", "--each", "120"}, code: 2, message: []string{"--each", "pour 75 ml each"}},
		{name: "a flight of several for a guest", args: []string{"tonight", "flight", "Tide Table", "Tarred Line", "--avoid", "tree nuts"}, code: 2, message: []string{"Tarred Line", "contains tree nuts"}},
		{name: "tonight for a guest", args: []string{"tonight", "--avoid", "tree nuts"}, out: []string{"Bow Spring", "not for this guest: orgeat contains tree nuts", "wash the tins"}},
		{name: "no axis", args: []string{"flight", "Ropewalk"}, code: 2, message: []string{"--axis", "strong"}},
		{name: "two builds", args: []string{"flight", "Ropewalk", "--axis", "sour", "--builds", "2"}, code: 2, message: []string{"--builds", "3 or 5"}},
		{name: "too much of it", args: []string{"flight", "Ropewalk", "--axis", "strong", "--build", "120"}, code: 2, message: []string{"--build", "ethanol"}},

		{name: "a triangle", args: []string{"triangle", "Ropewalk", "agave syrup", "--tasters", "6", "--seed", "a"},
			out: []string{"6 tasters", "count as different (seed a)", "if 50 % of people can tell", "A: Ropewalk, for 10 glasses", "then spit into the cup", "without its honey syrup", "not for their eyes"}},
		{name: "every taster drinks both", args: []string{"triangle", "Middle Watch Milk", "oat drink", "--tasters", "6"},
			out: []string{"In what every taster drinks, A and B alike\n  contains: gluten (oat-drink), milk (whole-milk)"}},
		{name: "nothing the house knows", args: []string{"triangle", "moon punch", "sun dust", "--glass", "10"}, out: []string{"as of a neat spirit", "Nobody here knows moon punch: any allergen may be in it", "Nobody here knows sun dust"}},
		{name: "a cover nobody knows", args: []string{"triangle", "Tide Table", "vodkaaa"}, out: []string{"Nobody here knows vodkaaa"}},
		{name: "what is known of an unknown drink", args: []string{"triangle", "moon punch", "orgeat", "--glass", "10"}, out: []string{"Of what is known", "contains: tree nuts (orgeat)"}},
		{name: "a triangle with raw egg", args: []string{"triangle", "Galley Stove", "demerara rum"}, out: []string{"Raw egg can carry Salmonella", "Ask every taster about allergies"}, not: []string{"in place of the ice"}},
		{name: "more tasters than are recorded", args: []string{"triangle", "Ropewalk", "agave syrup", "--tasters", "101"}, code: 2, message: []string{"--tasters", "100"}},
		{name: "against itself", args: []string{"triangle", "Ropewalk", "Ropewalk"}, code: 2, message: []string{"COVER", "from itself"}},
		{name: "large glasses", args: []string{"triangle", "moon punch", "sun dust", "--glass", "100"}, code: 2, message: []string{"--glass", "the limit is"}},
		{name: "one name", args: []string{"triangle", "Ropewalk"}, code: 2, message: []string{"DRINK COVER"}},

		{name: "a card", args: []string{"card", "sour"}, out: []string{"Sour: 8.0 strong", "Each part, by itself", "% in proven drinks", "of the house, score", "When it goes wrong", "Cautions"}},
		{name: "a card of no family", args: []string{"card", "cobbler sour"}, code: 2, message: []string{"FAMILY", "cobbler sour", "use ", "sour"}},
		{name: "a card of nothing", args: []string{"card"}, code: 2, message: []string{"card FAMILY"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			code, out, message := try(t, c.input, c.args...)
			require.Equal(t, c.code, code, message+out)
			for _, want := range c.out {
				assert.Contains(t, out, want)
			}
			for _, unwanted := range c.not {
				assert.NotContains(t, out, unwanted)
			}
			for _, want := range c.message {
				assert.Contains(t, message, want)
			}
			for line := range strings.Lines(out) {
				assert.Equal(t, strings.TrimRight(line, " \n"), strings.TrimRight(line, "\n"), "no blanks at the end of a line")
			}
		})
	}
}

// A sitting asks nothing twice.
func TestASittingAsksNothingTwice(t *testing.T) {
	code, out, message := try(t, strings.Repeat("1\n", 6), "drill", "--kind", "family", "--rounds", "6", "--seed", "trial7")
	require.Equal(t, terminal.ExitDone, code, message)
	had := map[string]bool{}
	for line := range strings.Lines(out) {
		if strings.HasPrefix(line, "Which family") {
			assert.False(t, had[line], line)
			had[line] = true
		}
	}
	assert.Len(t, had, 6)
}

// With --json a command of training prints what its endpoint answers.
func TestTrainingJSONEqualsTheEndpoint(t *testing.T) {
	url := startService(t)
	for _, c := range []struct {
		args      []string
		url, body string
	}{
		{[]string{"drill", "--kind", "order", "--seed", "a", "--avoid", "eggs", "--json"}, "/v1/round", `{"kind":"order","seed":"a","avoid":["eggs"]}`},
		{[]string{"flight", "Ropewalk", "--axis", "strong", "--seed", "a", "--json"}, "/v1/flight", `{"drink":"Ropewalk","axis":"strong","seed":"a"}`},
		{[]string{"triangle", "Ropewalk", "agave syrup", "--seed", "a", "--json"}, "/v1/triangle", `{"drink":"Ropewalk","cover":"agave syrup","seed":"a"}`},
		{[]string{"tonight", "--avoid", "eggs", "--json"}, "/v1/tonight", `{"avoid":["eggs"]}`},
		{[]string{"tonight", "flight", "Tide Table", "Wicker Lee", "--guests", "5", "--json"}, "/v1/tonight/flight", `{"drinks":["Tide Table","Wicker Lee"],"guests":5}`},
		{[]string{"likeness", "orgeat", "falernum", "--json"}, "/v1/likeness", `{"of":"ingredients","names":["orgeat","falernum"]}`},
		{[]string{"card", "sour", "--json"}, "/v1/templates/sour/card", ""},
	} {
		code, out, message := try(t, "", c.args...)
		require.Equal(t, terminal.ExitDone, code, message)
		assert.Equal(t, fetch(t, url+c.url, c.body), out)
	}
}
