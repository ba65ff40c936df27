package technique_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/makeup"
	"counterpour/flavor/technique"
)

// read reads a draft whose lines are parted by bars.
func read(t *testing.T, text string) *flavor.Spec {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	return d.Spec(t, strings.ReplaceAll(text, "|", "\n"))
}

// missteps are the faults of a drink as it is written, the worst of each kind, if drinks made of the
// same are stirred.
func missteps(s *flavor.Spec) map[technique.Flaw]technique.Misstep { return misstepsWhere(s, 1) }

// misstepsWhere are those if so large a share of them is stirred.
func misstepsWhere(s *flavor.Spec, stirred float64) map[technique.Flaw]technique.Misstep {
	out := map[technique.Flaw]technique.Misstep{}
	technique.MisstepsOf(s, makeup.PartsIn(s), makeup.AmountsOf(s), func() float64 { return stirred }, func(x technique.Misstep) {
		if x.Edges > out[x.Flaw].Edges {
			out[x.Flaw] = x
		}
	})
	return out
}

// An edge is where a drink is no longer balanced: see [technique.Misstep].
const edge = 1.0

// Each flaw with the pour that suffers, and the same drink made as bars make it, which
// has none at all: common practice, no source.
func TestEachFlawAndItsRemedy(t *testing.T) {
	for _, c := range []struct {
		flaw            technique.Flaw
		pour, bad, well string
	}{
		{technique.Flat, "soda water", "2 oz gin|1 oz lemon juice|3/4 oz simple syrup|3 oz soda water|shake everything with soda, highball",
			"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|top 3 oz soda water|shake, highball"},
		{technique.Flat, "soda water", "3 oz black tea|3/4 oz lemon juice|3/4 oz honey syrup|2 oz soda water|shake everything with soda, highball",
			"3 oz black tea|3/4 oz lemon juice|3/4 oz honey syrup|2 oz soda water|shake the tea, lemon and honey, top, tall on ice"},
		{technique.EggUnshaken, "egg white", "2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|1 egg white|build, rocks",
			"2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|1 egg white|dry shake, up"},
		{technique.Unshaken, "lemon juice", "2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|stir, up",
			"2 oz gin|3/4 oz lemon juice|3/4 oz simple syrup|shake, up"},
		{technique.Uniced, "lemon juice", "2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|build, neat",
			"2 oz bourbon|3/4 oz lemon juice|3/4 oz simple syrup|shake, rocks"},
		{technique.Uniced, "London dry gin", "2 1/2 oz London dry gin|1/2 oz dry vermouth|build, room temperature, no ice",
			"2 1/2 oz London dry gin|1/2 oz dry vermouth|stir, up"},
		{technique.Uniced, "rye whiskey", "1 1/2 oz rye whiskey|1 1/2 oz sweet vermouth|build, room temperature, no ice",
			"1 1/2 oz rye whiskey|1 1/2 oz sweet vermouth|build, rocks"},
		{technique.Uniced, "rye whiskey", "1 1/2 oz rye whiskey|1 1/2 oz sweet vermouth|build, neat",
			"2 oz rye whiskey|1/2 oz maraschino liqueur|1 dash aromatic bitters|build, neat"},
		{technique.HotOnIce, "water", "2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water|shake, up",
			"2 oz scotch|1/2 oz lemon juice|3/4 oz honey syrup|5 oz hot water|build, mug"},
		{technique.FatSet, "butter", "2 oz aged rum|1/2 oz demerara syrup|1 tbsp butter|stir, up",
			"2 oz aged rum|1/2 oz demerara syrup|1 tbsp butter|4 oz hot water|build, mug"},
		{technique.Curdled, "heavy cream", "2 oz white rum|3/4 oz lime juice|3/4 oz simple syrup|1 oz heavy cream|shake, up",
			"2 oz white rum|3/4 oz simple syrup|1 oz heavy cream|shake, up"},
		{technique.Curdled, "heavy cream", "1 1/2 oz Irish whiskey|4 oz filter coffee|2 tsp brown sugar|1/2 oz lemon juice|1 oz heavy cream|build, mug",
			"1 1/2 oz Irish whiskey|4 oz filter coffee|2 tsp brown sugar|1 oz heavy cream|build, mug"},
		{technique.Clouded, "sweet vermouth", "2 oz rye|1 oz sweet vermouth|2 dashes aromatic bitters|shake, up",
			"2 oz rye|1 oz sweet vermouth|2 dashes aromatic bitters|stir, up"},
		{technique.Clouded, "fino sherry", "1 1/2 oz reposado tequila|1 1/2 oz fino sherry|1/4 oz agave nectar|shake, up",
			"1 1/2 oz reposado tequila|1 1/2 oz fino sherry|1/4 oz agave nectar|stir, up"},
		{technique.Clouded, "demerara syrup (1:1)", "2 oz aged rum|1 tsp demerara syrup|2 dashes aromatic bitters|shake, rocks",
			"2 oz aged rum|3/4 oz demerara syrup|shake, rocks"}, // which lacks its lime
		{technique.Clouded, "amaretto", "2 oz bourbon|1/2 oz amaretto|shake, rocks",
			"2 1/2 oz vodka|1/2 oz dry vermouth|shake, up"},
	} {
		bad := missteps(read(t, c.bad))
		require.Contains(t, bad, c.flaw, c.bad)
		assert.GreaterOrEqual(t, bad[c.flaw].Edges, edge, c.bad)
		assert.Equal(t, c.pour, bad[c.flaw].Profile.Name, c.bad)
		for f, x := range missteps(read(t, c.well)) {
			assert.Less(t, x.Edges, edge, "%s: %s", f, c.well)
		}
	}
}

// What bars have proven is well made, if others do as they do.
func TestProvenDrinksAreWellMade(t *testing.T) {
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	for i := range d.Proven {
		for f, x := range misstepsWhere(&d.Proven[i].Spec, 0) {
			assert.Less(t, x.Edges, edge, "%s: %s", d.Proven[i].Spec.Name, f)
		}
	}
}

// A title says nothing of how a drink is made; a step does, unless it warns.
func TestOnlyStepsClarify(t *testing.T) {
	const sour = "2 oz gin\n1 oz heavy cream\n1 oz lime juice\n1/2 oz white creme de cacao\nshake, up"
	curdles := func(name string, steps ...string) bool {
		s := read(t, sour)
		s.Name, s.Steps = name, steps
		return missteps(s)[technique.Curdled].Edges >= edge
	}
	for _, name := range []string{"", "Lemon Curd Gin", "Cream and lime: curdles", "Clarity", "Clarified Milk Punch", "Milk-Washed"} {
		assert.True(t, curdles(name), name)
	}
	for _, step := range []string{"Strain off the curds.", "Clarify through a paper filter.", "Let it stand until it curdles, then filter.", "Milk-wash overnight."} {
		assert.False(t, curdles("", step), step)
	}
	for _, step := range []string{"Don't let it curdle.", "Use clarified lime juice.", "Shake hard."} {
		assert.True(t, curdles("", step), step)
	}
}

// More of what curdles never curdles less, nor does more of what turns it. Common practice, no source.
func TestCurdlingIsMonotone(t *testing.T) {
	worst := func(text string) float64 { return missteps(read(t, text))[technique.Curdled].Edges }
	amounts := []string{"1/4", "1/2", "3/4", "1", "1 1/2", "2", "3"}
	for _, of := range []string{
		"2 oz white rum|3/4 oz lime juice|3/4 oz simple syrup|# oz heavy cream|shake, up",
		"2 oz white rum|# oz lime juice|3/4 oz simple syrup|1 oz heavy cream|shake, up",
		"2 oz cognac|3 oz whole milk|1 oz simple syrup|# oz lemon juice|shake, rocks",
		"2 oz bourbon|1 oz whole milk|# oz cola|build, highball",
	} {
		last := 0.0
		for _, a := range amounts {
			x := worst(strings.ReplaceAll(of, "#", a))
			assert.GreaterOrEqual(t, x, last-0.02, "%s oz in %s", a, of)
			last = x
		}
	}
	assert.Greater(t, worst("2 oz white rum|3/4 oz lime juice|3/4 oz simple syrup|1/4 oz heavy cream|shake, up"), edge)
}

// What is said to be added after the shake is not judged as shaken, and the other way round.
// Common practice, no source.
func TestWhatIsReadAsAddedAfterIsNotShaken(t *testing.T) {
	for _, c := range []struct {
		text  string
		after bool
	}{
		{"3 oz black tea|3/4 oz lemon juice|3/4 oz honey syrup|2 oz soda water|shake, highball", true},
		{"3 oz black tea|3/4 oz lemon juice|3/4 oz honey syrup|2 oz soda water|shake the tea, lemon and honey, top, tall on ice", true},
		{"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|2 oz soda water|top 1/2 oz ruby port|shake, highball", true},
		{"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|10 oz soda water|shake, highball", false},
		{"2 oz gin|4 oz tonic water|shake, highball", false},
		{"2 oz gin|1 oz lemon juice|3/4 oz simple syrup|2 oz soda water|shake everything with soda, highball", false},
	} {
		s := read(t, c.text)
		said := slices.ContainsFunc(s.Notes, func(n string) bool { return strings.Contains(n, "is taken as added after the shake") })
		assert.Equal(t, c.after, said, c.text)
		_, flat := missteps(s)[technique.Flat]
		assert.Equal(t, !c.after, flat, c.text)
	}
}
