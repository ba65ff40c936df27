package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
	"counterpour/flavor/weigh"
)

// Every axis and every flaw has its word.
func TestEveryFaultHasAWord(t *testing.T) {
	for a := ratio.Strong; a <= ratio.Method; a++ {
		for _, high := range []bool{true, false} {
			assert.NotEmpty(t, wording.Word(a, high), "%v %t", a, high)
		}
	}
	for _, f := range []technique.Flaw{technique.EggUnshaken, technique.Unshaken, technique.Uniced, technique.Curdled, technique.Flat,
		technique.HotOnIce, technique.FatSet, technique.Clouded} {
		assert.NotEmpty(t, wording.Flaw(f), f)
	}
}

func TestMethod(t *testing.T) {
	b := bartest.New(t)
	cream, lemon, soda := b.Bottle(t, "heavy cream"), b.Bottle(t, "lemon juice"), b.Bottle(t, "soda water")
	for _, c := range []struct {
		method flavor.Method
		slip   technique.Misstep
		want   string
	}{
		{flavor.Shake, technique.Misstep{Flaw: technique.Curdled, Profile: cream, With: lemon}, "heavy cream curdles with this much lemon juice"},
		{flavor.Shake, technique.Misstep{Flaw: technique.Flat, Profile: soda}, "soda water goes flat in the shaker: add it after"},
		{flavor.Blend, technique.Misstep{Flaw: technique.Flat, Profile: soda}, "soda water goes flat in the blender: add it after"},
		{flavor.Stir, technique.Misstep{Flaw: technique.HotOnIce, Profile: cream}, "hot heavy cream only melts the ice"},
		{flavor.Shake, technique.Misstep{Flaw: technique.HotOnIce, Profile: cream}, "hot heavy cream bursts a closed tin: never shake or blend it"},
		{flavor.Blend, technique.Misstep{Flaw: technique.Clouded, Profile: lemon}, "nothing beside the lemon juice needs blending: stirred, it stays clear and silky"},
	} {
		assert.Equal(t, c.want, wording.Method(c.method, &c.slip))
	}
}

// Every action has words but that nothing is done.
func TestMaking(t *testing.T) {
	soda := []*flavor.Profile{bartest.New(t).Bottle(t, "soda water")}
	for do, want := range map[technique.Action]string{
		technique.Stay:                "",
		technique.UseHot:              "use hot soda water",
		technique.AddAfterShake:       "add the soda water after the shake",
		technique.AddAfterBlend:       "blend the rest, and add the soda water after",
		technique.AddHotAfterShake:    "shake the rest, and add the hot soda water after, in the mug",
		technique.BuildInPlaceOfStir:  "build it hot, without ice",
		technique.BuildInPlaceOfShake: "build it hot, without shaking",
		technique.ShakeIt:             "shake it, and add the soda water after the shake",
		technique.ShakeTwice:          "shake it, first without ice, then with ice, and add the soda water after the shake",
		technique.StirIt:              "stir it",
		technique.StirWithoutJuice:    "stir it, if no juice is meant to be in it",
		technique.PourInto:            "pour it into a highball glass, over ice",
	} {
		assert.Equal(t, want, wording.Making(&technique.Making{Do: do, After: soda, Hot: soda, Glass: "highball glass", Service: flavor.Long}))
	}
}

func TestBound(t *testing.T) {
	for _, c := range []struct {
		bound weigh.OutOfBounds
		want  string
	}{
		{weigh.OutOfBounds{Axis: ratio.Volume, High: true, Amount: 248, Bound: 247, Edges: 1}, "248 ml in the glass is as much as the largest of its kind have"},
		{weigh.OutOfBounds{Axis: ratio.Volume, High: true, Amount: 250, Bound: 140, Glass: mix.Glass{Name: "coupe"}}, "250 ml does not go into a coupe, which takes about 140 ml of it"},
		{weigh.OutOfBounds{Axis: ratio.Volume, High: true, Amount: 250, Bound: 140, Edges: 2}, "250 ml in the glass is large for its kind: about 140 ml is usual"},
		{weigh.OutOfBounds{Axis: ratio.Volume, Amount: 12, Bound: 30, Edges: 2}, "12 ml in the glass is less than a drink holds: at least 30 ml"},
		{weigh.OutOfBounds{Axis: ratio.Strong, High: true, Amount: 40.2, Bound: 40, Edges: 1}, "40.2 % vol in the glass is stronger than any drink: at most 40 %"},
		{weigh.OutOfBounds{Axis: ratio.Strong, High: true, Grams: true, Amount: 61, Bound: 45, Edges: 1}, "61 g of alcohol in one glass is more than drinks of its kind have: at most about 45 g"},
		{weigh.OutOfBounds{Axis: ratio.Long, High: true, Amount: 64, Bound: 58, Edges: 1.4}, "juice is 64 % of it: served up it is a long drink without ice, and drinks served so have less than 58 %"},
		{weigh.OutOfBounds{Axis: ratio.Long, High: true, Amount: 50, Bound: 58, Edges: 0.2}, "juice is 50 % of it, a lot for a drink served up"},
		{weigh.OutOfBounds{Axis: ratio.Sweet, High: true, Amount: 30, Bound: 34, Edges: 0.5}, "30 g of sugar in 100 ml is a lot for any drink"},
		{weigh.OutOfBounds{Axis: ratio.Strong, Amount: 0, Bound: 1}, "it has no alcohol, and nearly every drink made like this has some"},
		{weigh.OutOfBounds{Axis: ratio.Strong, Amount: 5, Bound: 1}, "it has no base, and nearly every drink made like this has one"},
		{weigh.OutOfBounds{Axis: ratio.Sour}, "it has nothing sour, and nearly every drink made like this has something"},
		{weigh.OutOfBounds{Axis: ratio.Temperature, Amount: 31, Bound: 50}, "31 °C in the mug is too cold for a hot drink: at least 50 °C"},
		{weigh.OutOfBounds{Axis: ratio.Temperature, High: true, Amount: 88, Bound: 80, Edges: 1}, "88 °C scalds: a hot drink is served at 80 °C at most"},
	} {
		assert.Equal(t, c.want, wording.Bound(&c.bound))
	}
}

func TestBeyond(t *testing.T) {
	brine := bartest.New(t).Bottle(t, "olive brine")
	for _, c := range []struct {
		beyond weigh.Beyond
		most   string
		want   string
	}{
		{weigh.Beyond{Edges: 2, Own: true}, "¼ oz", "1 oz of olive brine is too much: drinks like this have ¼ oz at most"},
		{weigh.Beyond{Edges: 2}, "¼ oz", "1 oz of olive brine is too much: hardly any drink like this has it at all, and none more than ¼ oz"},
		{weigh.Beyond{Edges: 2, Own: true}, "1 oz", "1 oz of olive brine is a little more than drinks like this have"},
		{weigh.Beyond{Edges: 2, Own: true, Usual: 0.1}, "1 oz", "1 oz of olive brine is more than nearly all drinks like this have: about ¼ oz is usual"},
		{weigh.Beyond{Edges: 0.5, Own: true}, "¼ oz", "1 oz of olive brine is a lot for a drink like this"},
		{weigh.Beyond{Edges: 2, Foreign: true}, "", "1 oz of olive brine is out of place: hardly any drink like this has it at all"},
	} {
		c.beyond.Profile = brine
		assert.Equal(t, c.want, wording.Beyond(&c.beyond, &wording.Amounts{Poured: "1 oz", Most: c.most, Usual: "¼ oz"}, false))
	}
}

func TestFaultsAndFixes(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{wording.About("½ oz", true, "lemon juice") + wording.ForThisMuch("gin"), "about ½ oz too much lemon juice for this much gin"},
		{wording.About("½ oz", false, "lemon juice") + wording.HaveAbout("1 oz"), "about ½ oz too little lemon juice: drinks like this have about 1 oz"},
		{wording.Far(false, "gin"), "far too little gin"},
		{wording.Altogether(ratio.Sour, true, "1 oz"), "too much acid altogether, by about 1 oz of lemon juice"},
		{wording.NoBase("Sour"), "there is no base in it, which drinks of this kind (sour) have"},
		{wording.Lacks(ratio.Sour, "Sour"), "nothing here brings acid, which drinks of this kind (sour) have"},
		{wording.Missing("dry vermouth"), "something is missing: drinks made of this have dry vermouth too"},
		{wording.FarFromAll("Flip"), "it is far from all drinks that are known: the nearest kind is flip"},
		{wording.InPlace("¾ oz", "simple syrup", "saline"), "pour ¾ oz simple syrup instead of the saline"},
		{wording.All([]string{wording.Add("1 oz", "gin"), wording.LeaveOut("rum"), wording.Instead("1 oz", "hot water", "3 oz")}), "add 1 oz gin, and leave out the rum, and pour 1 oz hot water instead of 3 oz"},
		{wording.OfEverything(2, 3), "pour two thirds of everything"},
	} {
		assert.Equal(t, c.want, c.got)
	}
}
