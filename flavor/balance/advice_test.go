package balance_test

import (
	"counterpour/flavor/makeup"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/balance/threshold"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// Drafts and what a bartender would say of them: common practice, no source.
// Fix is the pour that the first fix moves or adds, and which way.
func TestAdvice(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		name, text string
		axis       ratio.Axis
		high       bool
		words      []string
		fix        string
		more       bool
	}{
		{"too much juice", "2 oz gin\n2 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Sour, true,
			[]string{"about ", " oz too much lemon juice for this much simple syrup"}, "lemon-juice", false},
		{"too little juice, in metric", "60 ml gin\n7.5 ml lemon juice\n22.5 ml simple syrup\nshake, up", ratio.Sour, false,
			[]string{"about ", " ml too little lemon juice for this much simple syrup"}, "lemon-juice", true},
		{"far too much honey", "2 oz gin\n3/4 oz lemon juice\n2 1/2 oz honey syrup\nshake, up", ratio.Sweet, true,
			[]string{" oz too much honey syrup for this much lemon juice"}, "honey-syrup", false},
		{"a thimble of gin", "1/2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Strong, false,
			[]string{" oz too little London dry gin"}, "london-dry-gin", true},
		{"the gin is named, not the aperitif", "1/4 oz gin\n1 oz red bitter aperitif\n3/4 oz lemon juice\n1/2 oz simple syrup\nshake, rocks",
			ratio.Strong, false, []string{"too little London dry gin"}, "london-dry-gin", true},
		{"no sugar at all", "2 oz gin\n3/4 oz lemon juice\nshake, up", ratio.Sweet, false,
			[]string{"nothing sweet balances what is sour", "sour"}, "rich-simple-syrup", true},
		{"hardly any sugar", "2 oz bourbon\n2 dashes aromatic bitters\nstir, rocks", ratio.Sweet, false,
			[]string{"too little sweetness altogether, by about ¼ oz of 1:1 syrup"}, "rich-simple-syrup", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := k.read(t, c.text)
			r := k.score(t, s)
			require.NotEmpty(t, r.Faults)
			f := r.Faults[0]
			assert.Equal(t, c.axis, f.Axis)
			assert.Equal(t, c.high, f.High)
			for _, w := range c.words {
				assert.Contains(t, f.Text, w)
			}
			fixes := k.fixes(t, s, r)
			require.NotEmpty(t, fixes)
			assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom)
			first := fixes[0].Changes[0]
			assert.Equal(t, c.fix, first.Profile.ID)
			assert.Equal(t, c.more, first.ToML > first.FromML)
		})
	}
}

// Two things wrong take two moves.
func TestTwoFaultsTwoMoves(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "2 oz gin\n1/8 oz lemon juice\n2 1/2 oz simple syrup\nshake, up")
	r := k.score(t, s)
	require.GreaterOrEqual(t, len(r.Faults), 2)
	fixes := k.fixes(t, s, r)
	require.NotEmpty(t, fixes)
	require.Len(t, fixes[0].Changes, 2)
	assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom)
	assert.Contains(t, fixes[0].Text, ", and ")
}

// A fix goes no further than the fault: what drinks have a little of stays in, the
// drink stays what it is, and what was said to be hot is said to be again. Common
// practice, no source.
func TestFixesGoNoFurtherThanTheFault(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text, fix string
		most      float64 // what is poured instead, mL; 0 if the fix says it
		least     float64
	}{
		{"1 1/2 oz cognac\n1 oz dark creme de cacao\n3 oz heavy cream\nshake, up", "heavy cream instead of 3 oz", 75, 35},
		{"3 oz vodka\n1 oz orange juice\nbuild, long", "orange juice instead of 1 oz", 0, 0},
		{"3/4 oz gin\n3/4 oz dry vermouth\n3/4 oz triple sec\n3/4 oz lemon juice\n3/4 oz absinthe\nshake, up", "absinthe instead of ¾ oz", 8, 0.5},
		{"1 1/2 oz brandy\n3 oz whole milk\n3/4 oz simple syrup\n1 whole egg\n4 g ground nutmeg\nshake, rocks", "nutmeg instead of 4 g", 2, 0.05},
		{"3 oz gin\n1/4 oz lemon juice\n1/4 oz simple syrup\nshake, up", "gin instead of 3 oz, and pour ½ oz simple syrup", 0, 0},
		{"1/2 oz light orange bitter aperitif\n2 oz prosecco\n6 oz soda water\nbuild, long", "soda water instead of 6 oz", 75, 40},
		{"60 ml japanese whisky\n5 ml demerara syrup\n20 ml soy sauce\nstir, rocks", "leave out the soy sauce, and add 2 dashes aromatic bitters", 0, 0},
	} {
		s := k.read(t, c.text)
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, c.text)
		assert.Contains(t, fixes[0].Text, c.fix)
		assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom, c.text)
		if c.most > 0 {
			assert.LessOrEqual(t, fixes[0].Changes[0].ToML, c.most, fixes[0].Text)
			assert.GreaterOrEqual(t, fixes[0].Changes[0].ToML, c.least, fixes[0].Text)
		}
	}
	cold := k.read(t, "50 ml scotch\n15 ml honey syrup\n15 ml lemon juice\n40 ml hot water\nbuild, hot")
	fixes := k.fixes(t, cold, k.score(t, cold))
	require.NotEmpty(t, fixes)
	assert.Contains(t, fixes[0].Text, "ml hot water instead of 40 ml")
}

// While a fix mends a draft, none that does not is told; and none makes two standard
// drinks half as strong again.
func TestFixesMendAndDoNotFloor(t *testing.T) {
	k := newKitchen(t)
	const standardDrinkG, ethanolGPerML = 14, 0.789
	ethanol := func(s *flavor.Spec) (g float64) {
		for i := range s.Pours {
			g += s.Pours[i].ML * s.Pours[i].Profile.ABV.Value / 100 * ethanolGPerML
		}
		return g
	}
	rapid.Check(t, func(t *rapid.T) {
		s := k.draft(t)
		fixes := k.fixes(t, s, k.score(t, s))
		for _, f := range fixes {
			if fixes[0].Score >= weigh.BalancedFrom {
				assert.GreaterOrEqual(t, f.Score, weigh.BalancedFrom, f.Text)
			}
			if g := ethanol(&f.Spec); g > 2.01*standardDrinkG {
				assert.LessOrEqual(t, g, 1.51*ethanol(s), f.Text)
			}
		}
	})
}

// What swamps a drink leaves nothing else in it too much or too little.
func TestSideFaultsAreOfTheRest(t *testing.T) {
	k := newKitchen(t)
	r := k.score(t, k.read(t, "2 1/2 oz gin\n1/2 oz dry vermouth\n2 oz olive brine\nstir, up"))
	require.NotEmpty(t, r.Faults)
	assert.Equal(t, "olive-brine", r.Faults[0].Profile.ID)
	for _, f := range r.Faults {
		assert.NotContains(t, f.Text, "dry vermouth")
	}
}

// Nothing that the draft brings already is added, and nothing that no fault
// asks for.
func TestAdditionsAreAskedFor(t *testing.T) {
	k := newKitchen(t)
	for _, p := range k.book {
		r := k.score(t, &p.Spec)
		for _, f := range k.fixes(t, &p.Spec, r) {
			for _, c := range f.Changes {
				if c.FromML > 0 {
					continue
				}
				for _, pour := range p.Spec.Pours {
					assert.NotEqual(t, pour.Profile.Class, c.Profile.Class, "%s: %s", p.Spec.Name, f.Text)
				}
				assert.NotEmpty(t, r.Faults, "%s: %s", p.Spec.Name, f.Text)
			}
		}
	}
}

func TestEmptyPantryAddsNothing(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "2 oz gin\n3/4 oz lemon juice\nshake, up")
	bare := balance.NewJudge(k.mixer, k.set, balance.Pantry{})
	r, err := bare.Score(s)
	require.NoError(t, err)
	fixes, err := bare.Fixes(s, r, balance.MaxFixes)
	require.NoError(t, err)
	for _, f := range fixes {
		for _, c := range f.Changes {
			assert.Greater(t, c.FromML, 0.0, f.Text)
		}
	}
	none, err := k.judge.Fixes(s, r, 0)
	require.NoError(t, err)
	assert.Empty(t, none)
}

func TestScoreFaults(t *testing.T) {
	k := newKitchen(t)
	good := k.read(t, "2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	for name, spoil := range map[string]func(*flavor.Spec){
		"no pours":      func(s *flavor.Spec) { s.Pours = nil },
		"no ingredient": func(s *flavor.Spec) { s.Pours[0].Profile = nil },
		"nothing of it": func(s *flavor.Spec) { s.Pours[0].ML = 0 },
		"less than nil": func(s *flavor.Spec) { s.Pours[0].ML = -1 },
	} {
		s := good.Clone()
		spoil(&s)
		_, err := k.judge.Score(&s)
		assert.ErrorIs(t, err, flavor.ErrInvalid, name)
	}
}

// Two pours of one bottle share its spread: the acid of two pours of lemon
// strays together, so two halves are no surer than the whole; the hand, which
// errs twice, hardly counts beside the fruit.
func TestPlusMinusOfABottleIsShared(t *testing.T) {
	k := newKitchen(t)
	whole := k.read(t, "2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	halves := k.read(t, "2 oz gin\n1/2 oz lemon juice\n1/2 oz lemon juice\n3/4 oz simple syrup\nshake, up")
	one, two := makeup.Spreads(whole), makeup.Spreads(halves)
	lemon, ok := k.catalogue.ByID("lemon-juice")
	require.True(t, ok)
	fruit := lemon.Acid.Spread / lemon.Acid.Value
	assert.GreaterOrEqual(t, two[ratio.Sour], fruit, "as much as the fruit strays")
	assert.InEpsilon(t, one[ratio.Sour], two[ratio.Sour], 0.02)
	assert.InDelta(t, one[ratio.Strong], two[ratio.Strong], same)
}

// JND counts steps that multiply by 1 + Weber: two steps of 15 % are a factor
// of 1.3225.
func TestJND(t *testing.T) {
	assert.InDelta(t, 2, threshold.JND(ratio.Sweet, 0.27952), 1e-4)
	assert.InDelta(t, 2, threshold.JND(ratio.Sweet, -0.27952), 1e-4)
	for _, a := range ratio.Axes() {
		assert.InDelta(t, 0, threshold.JND(a, 0), 0)
		assert.Greater(t, threshold.Weber(a), 0.0)
	}
}

// What was forgotten is named before all else and put back, as the drinks with the
// same rest have it; what is right without is let alone. Common practice, no source.
func TestWhatIsForgotten(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text, add string // empty for what lacks nothing
		axis      ratio.Axis
	}{
		{"1 oz lemon juice\n3/4 oz honey syrup\nshake, up", "add ", ratio.Strong},
		{"1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up", "add ", ratio.Strong},
		{"2 oz white rum\n3/4 oz simple syrup\n8 mint leaves\n3 oz soda water\nbuild, long", "lime juice", ratio.Sour},
		{"1 1/2 oz lemon juice\n1 oz simple syrup\n5 oz water\nbuild, long", "", 0},
		{"2 oz bourbon\n8 mint leaves\n1/2 oz simple syrup\nbuild, crushed", "", 0},
		{"50 ml gin\n150 ml tonic water\nbuild, long", "", 0},
		{"2 oz amaretto\n1 oz lemon juice\n1 egg white\nshake, rocks", "", 0},
		{"3 oz sweet vermouth\n3 oz soda water\nbuild, long", "", 0},
	} {
		s := k.read(t, c.text)
		r := k.score(t, s)
		forgotten := len(r.Faults) > 0 && !r.Faults[0].High && r.Faults[0].Profile == nil && r.Faults[0].Axis == c.axis
		assert.Equal(t, c.add != "", forgotten, "%s: %.1f %+v", c.text, r.Judgement.Score, r.Faults)
		if c.add == "" {
			continue
		}
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		assert.Contains(t, fixes[0].Text, c.add, c.text)
		assert.GreaterOrEqual(t, fixes[0].Score, weigh.BalancedFrom, c.text)
	}
}

// How large, and how strong, one glass of a kind is: common practice, no source.
func TestOneGlass(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct{ text, fix string }{ // empty for what is right
		{"2 1/2 oz gin\n1/2 oz dry vermouth\n1 dash orange bitters\nstir, up", ""},
		{"2 1/2 oz bourbon\n1/4 oz simple syrup\n2 dashes aromatic bitters\nstir, rocks", ""},
		{"2 oz gin\n1 oz lemon juice\n1 oz simple syrup\n1 egg white\ndry shake, up", ""},
		{"2 oz aged rum\n1 oz lime juice\n1 oz orange juice\n3/4 oz orgeat\nshake, crushed", ""},
		{"2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n4 oz water\nshake, up", "water instead of 4 oz"},
		{"4 oz bourbon\n1/2 oz simple syrup\n4 dashes aromatic bitters\nstir, rocks", "half of everything"}, // it is two drinks
		{"120 ml Irish whiskey\n120 ml hot coffee\n15 ml demerara syrup\n30 ml heavy cream\nbuild, hot", "pour 55 ml Irish blended whiskey instead of 120 ml"},
		{"120 ml gin\n150 ml tonic water\nbuild, long", "pour 60 ml London dry gin instead of 120 ml"},
		{"60 ml white rum\n90 ml pineapple juice\n45 ml cream of coconut\n15 ml lime juice\nblend", ""},
		{"4 oz aged rum\n3 oz whole milk\n3/4 oz simple syrup\nshake, rocks", "aged rum instead of 4 oz"},
		{"4 oz blanco tequila\n1/2 oz lime juice\n4 oz grapefruit soda\nbuild, long", "blanco tequila instead of 4 oz"},
	} {
		s := k.read(t, c.text)
		r := k.score(t, s)
		assert.Equal(t, c.fix == "", r.Verdict == weigh.Balanced, "%s: %.1f %+v", c.text, r.Judgement.Score, r.Faults)
		if c.fix != "" {
			fixes := k.fixes(t, s, r)
			require.NotEmpty(t, fixes, c.text)
			assert.Contains(t, fixes[0].Text, c.fix, c.text)
		}
	}
}

// An orange liqueur that few drinks name may be poured as the others are. Common
// practice, no source.
func TestOrangeLiqueursArePouredAlike(t *testing.T) {
	k := newKitchen(t)
	for _, liqueur := range []string{"triple sec", "cognac orange liqueur", "dry orange curaçao", "blue curaçao", "mandarin liqueur"} {
		for _, sour := range []string{"50 ml blanco tequila\n25 ml lime juice\n25 ml %s\nshake, up", "50 ml cognac\n20 ml lemon juice\n25 ml %s\nshake, up"} {
			r := k.score(t, k.read(t, fmt.Sprintf(sour, liqueur)))
			assert.NotEqual(t, weigh.Off, r.Verdict, "%s in %q", liqueur, sour)
		}
	}
}

// A syrup goes out of a kind of drink that has none, and is poured less of where it
// belongs; it comes from no dasher. Common practice, no source.
func TestStrangeSyrup(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct{ text, fix string }{
		{"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\n1 oz cinnamon syrup\nstir, rocks", "leave out the cinnamon syrup"},
		{"2 1/2 oz gin\n1/2 oz dry vermouth\n1/2 oz simple syrup\nstir, up", "leave out the simple syrup"},
		{"2 oz vodka\n4 oz tomato juice\n1/2 oz lemon juice\n1 oz simple syrup\n3 dashes worcestershire sauce\nroll, long", "leave out the simple syrup"},
		{"60 ml reposado tequila\n22.5 ml lime juice\n60 ml agave syrup\nshake, rocks", "agave syrup (1:1) instead of 60 ml"},
		{"2 oz bourbon\n1 oz simple syrup\n2 dashes aromatic bitters\nstir, rocks", "simple syrup (1:1) instead of 1 oz"},
	} {
		s := k.read(t, c.text)
		r := k.score(t, s)
		require.NotEmpty(t, r.Faults, c.text)
		assert.Equal(t, ratio.Sweet, r.Faults[0].Axis, c.text)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		assert.Contains(t, fixes[0].Text, c.fix, c.text)
		for _, f := range r.Faults {
			assert.NotRegexp(t, `dash(es)? (too|of) .*syrup`, f.Text)
		}
	}
}

// What nothing in the draft brings is added, and no other pour is moved where that is
// enough. Common practice, no source.
func TestWhatIsWantedIsAddedAlone(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"2 oz bourbon\n1 tsp rich demerara syrup\nstir, rocks",
		"2 oz rye\n1 tsp rich demerara syrup\nstir, rocks",
	} {
		s := k.read(t, text)
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, text)
		assert.Regexp(t, `^add \d dash(es)? aromatic bitters$`, fixes[0].Text, text)
	}
}

// What is said to be too much is what the fix takes away, as near as a jigger measures.
func TestFixDoesWhatTheFaultSays(t *testing.T) {
	k := newKitchen(t)
	s := k.read(t, "50 ml vodka\n20 ml coffee liqueur\n30 ml espresso\n45 ml simple syrup\nshake, up")
	r := k.score(t, s)
	require.NotEmpty(t, r.Faults)
	assert.Contains(t, r.Faults[0].Text, "27.5 ml too much simple syrup")
	fixes := k.fixes(t, s, r)
	require.NotEmpty(t, fixes)
	assert.Contains(t, fixes[0].Text, "pour 17.5 ml simple syrup (1:1) instead of 45 ml")
}

// A glass that is too large by something odd is told by that, before what the odd pour
// does to the ratio. Common practice, no source.
func TestOddPourMakesTheGlassTooLarge(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 1/2 oz cognac\n3/4 oz triple sec\n3/4 oz lemon juice\n3 whole eggs\nshake, up",
		"2 oz blanco tequila\n1 oz lime juice\n3/4 oz agave syrup\n3 whole eggs\nshake, up",
	} {
		s := k.read(t, text)
		r := k.score(t, s)
		require.NotEmpty(t, r.Faults, text)
		require.NotNil(t, r.Faults[0].Profile, text)
		assert.Equal(t, "whole-egg", r.Faults[0].Profile.ID, text)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, text)
		assert.Contains(t, fixes[0].Text, "egg", text)
	}
}

// A spirit on its own may lack two things at once. Both are added, each as a pour of its own.
func TestTwoThingsAreAddedAtOnce(t *testing.T) {
	k := newKitchen(t)
	both := 0
	for _, p := range k.catalogue.Profiles() {
		if p.Class.Part() != flavor.PartBase {
			continue
		}
		s := k.read(t, "1 1/2 oz "+p.Name+"\nstir, up")
		r := k.score(t, s)
		for _, f := range k.fixes(t, s, r) {
			again := k.score(t, &f.Spec)
			assert.InDelta(t, again.Judgement.Score, f.Score, 0.5, "%s: %s", p.Name, f.Text)
			if len(f.Changes) > 1 && len(f.Spec.Pours) == 3 {
				both++
			}
		}
	}
	assert.Positive(t, both, "no spirit lacks two things")
}

// What is hot is lengthened by water, and by nothing that sparkles.
func TestNothingSparklingGoesIntoAHotDrink(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{"2 oz gin\n2 dashes aromatic bitters\n2 sugar cubes\nbuild, hot", "2 oz dark rum\n1/2 oz lime juice\n1/2 oz demerara syrup\nbuild, hot", "45 ml bourbon\n20 ml honey syrup\nbuild, hot"} {
		s := k.read(t, text)
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, text)
		lengthened := false
		for _, f := range fixes {
			for _, c := range f.Changes {
				assert.False(t, c.Profile.Carbonated || c.Profile.Class.Sparkles(), "%s: %s", text, f.Text)
				lengthened = lengthened || c.Profile.Class.Part() == flavor.PartLength
			}
		}
		assert.True(t, lengthened, "%s is short: %v", text, fixes)
	}
}
