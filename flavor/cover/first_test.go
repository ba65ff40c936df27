package cover

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/sense"
)

// found is what is poured for one thing out of a drink, from a few bottles.
func (b *bench) found(t *testing.T, drink, out string, g guest.Guest, shelf ...string) *Result {
	t.Helper()
	spec, err := b.catalogue.ReadSpec("", drink)
	require.NoError(t, err)
	got, err := b.finder.Find(context.Background(), Request{Spec: &spec, Missing: b.profiles(t, out), Candidates: b.profiles(t, shelf...), Guest: g})
	require.NoError(t, err)
	return got
}

// Common practice, no source: the label of the bitters is read before they are done without.
func TestTheLabelOfWhatIsPouredAnywayIsReadFirst(t *testing.T) {
	b := newBench(t)
	eggs := guest.Guest{Avoid: []flavor.Allergen{flavor.Eggs}}
	sour := "2 oz bourbon\n3/4 oz lemon juice\n3/4 oz simple syrup\n3/4 oz egg white\n"
	got := b.found(t, sour+"3 dashes aromatic bitters\ndry shake, up", "egg-white", eggs, "chickpea-water", "allspice-tincture")
	require.NotEmpty(t, got.IfLabelClears)
	require.NotEmpty(t, got.Covers)
	assert.True(t, got.LabelsLead)
	assert.True(t, got.LabelFirst)
	first := got.IfLabelClears[0]
	assert.Equal(t, []string{"chickpea-water"}, poured([]Cover{first}))
	assert.Equal(t, b.profiles(t, "aromatic-bitters"), first.Read)
	for _, c := range got.Covers {
		assert.Empty(t, c.Read, c.Text)
	}
	plain := b.found(t, sour+"dry shake, up", "egg-white", eggs, "chickpea-water", "allspice-tincture")
	assert.False(t, plain.LabelsLead, "nothing else in the drink has a label to read")
}

// Common practice, no source.
func TestWhatFlavoursADrinkIsNotDoubled(t *testing.T) {
	b := newBench(t)
	got := b.found(t, "2 oz London dry gin\n1/2 oz maraschino liqueur\n3/4 oz lemon juice\n1/4 oz crème de violette\nshake, up",
		"maraschino-liqueur", guest.Guest{}, "kirsch-cherry-liqueur", "cherry-liqueur", "kirsch", "simple-syrup")
	require.NotEmpty(t, got.Covers)
	for _, c := range got.Covers {
		for _, ch := range c.Changes {
			assert.NotEqual(t, "creme-de-violette", ch.Profile.ID, c.Text)
		}
	}
}

// Common practice, no source: a guest who avoids milk is poured as much of what stands for it.
func TestAMilkStandsForAsMuchOfAnother(t *testing.T) {
	b := newBench(t)
	got := b.found(t, "2 oz vodka\n1 oz coffee liqueur\n1 oz heavy cream\nbuild, rocks", "heavy-cream", guest.Guest{Avoid: []flavor.Allergen{flavor.Milk}}, "oat-drink")
	require.NotEmpty(t, got.Covers)
	assert.Empty(t, got.Covers[0].Changes, got.Covers[0].Text)
	assert.InDelta(t, 1, got.Covers[0].Parts[0].Amount, 1e-9)
}

// Common practice, no source: a rinse is what a drink is known by, and a pinch of salt is not.
func TestWhatIsDashedForItsSmellIsMissed(t *testing.T) {
	b := newBench(t)
	drink := "2 oz rye whiskey\n1 tsp simple syrup\n4 dashes anise bitters\n1 dash absinthe\nstir, up"
	alone := b.found(t, drink, "absinthe", guest.Guest{})
	require.NotNil(t, alone.LeftOut)
	assert.NotEqual(t, sense.WontNotice, alone.LeftOut.Notice, alone.LeftOut.Text)
	assert.NotContains(t, alone.LeftOut.Text, "the same drink")
	assert.Nil(t, b.found(t, drink, "absinthe", guest.Guest{}, "pastis").LeftOut, "pastis stands for it")
}

// Common practice, no source: orgeat for amaretto wants more whiskey, and what sparkles is filled up.
func TestWhatIsLeftTakesTheRoom(t *testing.T) {
	b := newBench(t)
	got := b.found(t, "1 1/2 oz amaretto\n3/4 oz bourbon\n1 oz lemon juice\n1/4 oz rich simple syrup\nshake, rocks", "amaretto", guest.Guest{}, "orgeat")
	require.NotEmpty(t, got.Covers)
	assert.False(t, got.Unbalanced)
	assert.Contains(t, got.Covers[0].Text, "bourbon to")
	spritz := b.found(t, "3 oz prosecco\n2 oz light orange bitter aperitif\n1 oz soda water\nbuild, long", "prosecco", guest.Guest{}, "cola")
	require.NotNil(t, spritz.LeftOut)
	assert.True(t, spritz.LeftOutBest)
	assert.True(t, strings.HasPrefix(spritz.LeftOut.Text, "leave it out, soda water to 4 oz"), spritz.LeftOut.Text)
	assert.Nil(t, b.found(t, "4 oz lager\n3 oz sparkling lemonade\nbuild, long", "lager", guest.Guest{}, "honey-syrup").LeftOut, "lemonade is no shandy")
}

// Common practice, no source: cacao is no almond.
func TestNothingWithoutTheFlavourOfALiqueurStandsForADrinkOnIt(t *testing.T) {
	b := newBench(t)
	got := b.found(t, "1 1/2 oz amaretto\n1 oz lemon juice\n1/2 oz simple syrup\nshake, rocks", "amaretto", guest.Guest{Avoid: []flavor.Allergen{flavor.TreeNuts}}, "creme-de-cacao", "elderflower-liqueur")
	assert.Empty(t, got.Covers)
}
