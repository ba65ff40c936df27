package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
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
		slip   technique.Slip
		want   string
	}{
		{flavor.Shake, technique.Slip{Flaw: technique.Curdled, Profile: cream, With: lemon}, "heavy cream curdles with this much lemon juice"},
		{flavor.Shake, technique.Slip{Flaw: technique.Flat, Profile: soda}, "soda water goes flat in the shaker: add it after"},
		{flavor.Blend, technique.Slip{Flaw: technique.Flat, Profile: soda}, "soda water goes flat in the blender: add it after"},
		{flavor.Stir, technique.Slip{Flaw: technique.HotOnIce, Profile: cream}, "hot heavy cream only melts the ice"},
		{flavor.Shake, technique.Slip{Flaw: technique.HotOnIce, Profile: cream}, "hot heavy cream bursts a closed tin: never shake or blend it"},
		{flavor.Blend, technique.Slip{Flaw: technique.Clouded, Profile: lemon}, "nothing beside the lemon juice needs blending: stirred, it stays clear and silky"},
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
		{wording.All([]string{wording.Add("1 oz", "gin"), wording.LeaveOut("rum"), wording.Instead("1 oz", "hot water", "3 oz")}), "add 1 oz gin, and leave out the rum, and pour 1 oz hot water instead of 3 oz"},
		{wording.OfEverything(2, 3), "pour two thirds of everything"},
	} {
		assert.Equal(t, c.want, c.got)
	}
}
