package wording

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/drill/handling"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// Nothing that training can speak of is without words.
func TestEverythingHasWords(t *testing.T) {
	for m, words := range mistakes {
		assert.NotEmpty(t, words, "mistake %d", m)
	}
	for w, said := range ways {
		assert.NotEmpty(t, said.did, "way %d", w)
		assert.Regexp(t, `^[A-Z].*\.$`, said.mend, "way %d", w)
	}
	for l := handling.Still; l <= handling.Flat; l++ {
		assert.NotEmpty(t, looks[l], "look %d", l)
	}
	for _, a := range ratio.Axes() {
		for _, high := range []bool{true, false} {
			assert.NotEmpty(t, Guest(a, high), "%v %t", a, high)
		}
		assert.NotEmpty(t, glassUnits[a], a)
	}
}

func TestSlip(t *testing.T) {
	b := bartest.New(t)
	proper := b.Spec(t, "2 oz London dry gin\n3/4 oz lemon juice\n1/2 oz simple syrup\n2 dashes orange bitters\nshake, up")
	moved := func(at int, amount float64) slip.Moved {
		return slip.Moved{At: at, Amount: amount, Profile: proper.Pours[at].Profile}
	}
	for _, c := range []struct {
		slip slip.Slip
		want string
	}{
		{slip.Slip{Mistake: slip.Misread, Moved: []slip.Moved{moved(1, 1.5)}}, "1½ oz lemon juice in place of ¾ oz: another mark of the jigger was read"},
		{slip.Slip{Mistake: slip.Miscount, Moved: []slip.Moved{moved(3, 3)}}, "3 dashes orange bitters in place of 2 dashes: it was counted wrong"},
		{slip.Slip{Mistake: slip.Forgotten, Moved: []slip.Moved{moved(2, 0)}}, "½ oz simple syrup (1:1) is missing: it was forgotten"},
		{slip.Slip{Mistake: slip.Strength, Moved: []slip.Moved{{At: 2, Amount: 0.5, Profile: b.Bottle(t, "rich simple syrup")}}},
			"½ oz rich simple syrup (2:1) in place of ½ oz simple syrup (1:1): syrup of another strength was poured"},
		{slip.Slip{Mistake: slip.Swapped, Moved: []slip.Moved{moved(1, 0.5), moved(2, 0.75)}},
			"½ oz lemon juice and ¾ oz simple syrup (1:1) in place of ¾ oz lemon juice and ½ oz simple syrup (1:1): the two amounts were swapped"},
	} {
		assert.Equal(t, c.want, Slip(&c.slip, proper))
	}
}

func TestParts(t *testing.T) {
	b := bartest.New(t)
	for text, want := range map[string]string{
		"2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up":                          "2 spirit : ¾ sour juice : ¾ syrup",
		"3 oz London dry gin\n1 oz lemon juice\n1 oz simple syrup\nshake, up":                              "3 spirit : 1 sour juice : 1 syrup",
		"2 oz rye whiskey\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up":                       "2 spirit : 1 vermouth or wine, with a little bitters",
		"56 ml brandy\n50 ml cream\nshake, up":                                                             "2 spirit : 1¾ milk or cream",
		"2 oz London dry gin\n7/8 oz lemon juice\n3/4 oz simple syrup\nshake, up":                          "2 spirit : ⅞ sour juice : ¾ syrup",
		"2 oz white rum\n1/2 oz simple syrup\n12 leaves mint\nbuild, crushed":                              "4 spirit : 1 syrup, with a little herb",
		"2 oz London dry gin\n4 oz soda water\nbuild, long":                                                "2 soda : 1 spirit",
		"1 oz rye whiskey\n1 1/2 oz artichoke amaro\n3/4 oz lemon juice\n1/4 oz honey syrup\nshake, rocks": "1½ bitter liqueur : 1 spirit : ¾ sour juice : ¼ syrup",
		"50 ml rye whiskey\n20 ml sweet vermouth\nstir, up":                                                "5 spirit : 2 vermouth or wine",
		"3 oz prosecco\n2 oz cranberry juice\n1 1/2 oz vodka\n1/2 oz triple sec\nbuild, long":              "3 sparkling wine : 2 juice : 1½ spirit : ½ liqueur",
		"45 ml London dry gin\n22.5 ml lemon juice\n22.5 ml simple syrup\nshake, up":                       "2 spirit : 1 sour juice : 1 syrup",
		"3 oz lager\n3 oz ginger beer\nbuild, long":                                                        "1 beer and soda",
	} {
		assert.Equal(t, want, Parts(b.Spec(t, text)))
	}
	e := ratio.Equivalents{ratio.Strong: 60, ratio.Sweet: 22.5, ratio.Sour: 0.5}
	assert.Equal(t, "8.0 strong : 3.0 sweet", Ratio(&e, 0.02))
}

func TestServed(t *testing.T) {
	for _, c := range []struct {
		served handling.Served
		want   string
	}{
		{handling.Served{ABV: 14.24, VolumeML: 166.6, TemperatureC: -4.4, Look: handling.Airy}, "14.2 % vol, 167 ml, −4 °C, full of fine air"},
		{handling.Served{ABV: 21, VolumeML: 90, TemperatureC: -0.2, Look: handling.Flat}, "21.0 % vol, 90 ml, 0 °C, flat, without a bubble"},
	} {
		assert.Equal(t, c.want, Served(&c.served))
	}
	wrong := handling.Mishap{Way: handling.OnSlush, Served: handling.Served{WaterPct: 61, Look: handling.Still}}
	assert.Equal(t, "Properly made it takes 38 % of water from the ice, here 61 %. Tip the water off and take fresh ice: water on the ice goes into the drink and cools nothing.",
		Watered(&handling.Served{WaterPct: 38}, &wrong))
}

func TestGrades(t *testing.T) {
	lemon := &flavor.Pour{Profile: bartest.New(t).Bottle(t, "lemon juice"), Amount: 0.5, Unit: flavor.Ounce}
	for _, c := range []struct{ got, want string }{
		{Side(ratio.Sour, true), "too much acid (sharp)"},
		{Slipped(ratio.Sour, 22.5, 7.5) + Times(1.0/3, 4.25, 0.2),
			"Poured properly, its acid is as much as 22 ml of lemon juice; here it is 7.5 ml. That is 33 % of what it should be, or 4.2 noticeable steps, each of which changes it by 20 %."},
		{Stretched(&mix.Drink{VolumeML: 188.2, ABV: 13.3}, &mix.Drink{VolumeML: 250, ABV: 10}) + Times(1.5, 4, 0.1),
			"Poured properly it is 188 ml of 13.3 % vol; here it is 250 ml of 10.0 % vol, by what lengthens it. That is 1.5 times as much, or 4.0 noticeable steps, each of which changes it by 10 %."},
		{NowStretched(&mix.Drink{VolumeML: 188.2, ABV: 13.3}, &mix.Drink{VolumeML: 250, ABV: 10}), "It is now 188 ml of 13.3 % vol; poured properly it is 250 ml of 10.0 % vol."},
		{Times(2, 3, 0.25), "That is 2 times as much, or 3.0 noticeable steps, each of which changes it by 25 %."},
		{NotSo(ratio.Sour, true, 0.62, 0.6) + NobodyTells, "Not too much acid: in the glass it has 0.6 g of acid (as citric) in 100 ml, poured properly 0.6, which nobody tells apart."},
		{NotSo(ratio.Long, true, 22.3, 18) + OtherWay,
			"Not too much length: the further it is stretched, the weaker it is; in the glass it has 22 % vol, poured properly 18.0, so it is the other way round."},
		{Mended(lemon, 0.25, 71, 44, 82) + Now(ratio.Sour, 15, 22.5),
			"With ½ oz of lemon juice instead of ¼ oz the drink scores 71 of 100; as it was it scored 44, and poured properly it scores 82. Its acid is now as much as 15 ml of lemon juice; poured properly it is 22 ml."},
		{Covered("1 oz rye whiskey", "bourbon", 1.25, 4, nil, [ratio.NumAxes]int{}), "1 oz rye whiskey for bourbon moves the drink by 1.2 noticeable steps, the next by 4.0. What is lost: nothing that a guest would notice."},
		{Covered("1 oz rye whiskey", "bourbon", 1.25, 4, []flavor.AromaFamily{0}, [ratio.NumAxes]int{ratio.Strong: 1, ratio.Sweet: -1}),
			"1 oz rye whiskey for bourbon moves the drink by 1.2 noticeable steps, the next by 4.0. What is lost: " + flavor.AromaFamily(0).String() + "; it leaves more strength and less sweetness."},
		{Gaps(ratio.Sweet, [3]float64{4, 6, 9}, [2]float64{2, 2}, 0.2), "They finish at 4.0, 6.0 and 9.0 g of sugar per 100 mL. The gaps are 2.0 and 2.0 noticeable steps, each of which changes it by 20 %."},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

func TestTastings(t *testing.T) {
	for _, a := range ratio.Axes() {
		assert.NotEmpty(t, Unit(a), a)
		assert.Regexp(t, `^[A-Z].*\.$`, Lesson(a), a)
	}
	for _, c := range []struct{ got, want string }{
		{Cautions(21.34, 1.524)[0], "Whoever swallows all of it takes in 21.3 g of ethanol, 1.5 standard drinks (United States, 14 g)."},
		{strings.Join(Cautions(0.04, 0.003), " "), "Nobody has to swallow, and nobody has to say why. Water before each glass, and a minute between them; plain crackers if the drink is bitter."},
		{Glass(417, -1, []flavor.Pour{{Profile: bartest.New(t).Bottle(t, "lemon juice"), Amount: 12.25, Unit: flavor.Millilitre}}), "417: -1.0 steps, 12.25 ml lemon juice"},
		{Found(16, 30, 0.0188, true) + CanTell(0.3, 0.03, 0.57, 0.95),
			"16 of 30 found the odd one; guessing alone does that with p = 0.019: the cover can be told apart. About 30 % can tell, between 3 and 57 % with 95 % confidence."},
		{Found(11, 30, 0.4152, false) + CanTell(0.05, 0, 0.33, 0.95),
			"11 of 30 found the odd one; guessing alone does that with p = 0.42: the test does not show that the cover can be told apart. That is no proof that it cannot: about 5 % can tell, between 0 and 33 % with 95 % confidence."},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

func TestLearners(t *testing.T) {
	skill := Skill("mend", "sour")
	for _, c := range []struct{ got, want string }{
		{Untried("Ada", Skill("guess", "")), "Ada has not tried guess yet"},
		{Notices("Ada", skill, 4.25, 7, 9) + Overdue(3), "Ada notices mend of sour from 4.2 noticeable steps on, 7 of 9 right; 3 days overdue"},
		{Guesses("Ada", 0.5, 1, 2) + Unsure, "Ada guesses to within 0.50 noticeable steps, 1 of 2 right; too few rounds to be sure"},
	} {
		assert.Equal(t, c.want, c.got)
	}
}
