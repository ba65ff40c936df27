package balance_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/balance"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// Good drinks with a split base, a strong accent or a liqueur that leads: common
// practice, no source.
func TestSplitBasesAndStrongAccentsAreBalanced(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 oz mezcal / 1 oz reposado tequila / 1 oz lime juice / 0.5 oz agave syrup / 0.5 oz orange curacao / shake, rocks",
		"1 oz blended scotch / 1 oz peated single malt / 0.75 oz lemon juice / 0.75 oz honey syrup / 2 dashes aromatic bitters / shake, rocks",
		"30 ml cognac / 30 ml dark rum / 22.5 ml lemon juice / 15 ml simple syrup / shake, up",
		"1 oz rye whiskey / 1 oz apple brandy / 2 tsp maple syrup / 2 dashes aromatic bitters / stir, rocks",
		"1 oz mezcal / 0.5 oz gin / 1 oz sweet vermouth / 1 oz red bitter aperitif / stir, rocks",
		"1 oz amaretto / 1 oz cognac / stir, rocks",
		"1 oz medium amaro / 1 oz bourbon / 0.75 oz lemon juice / 0.5 oz simple syrup / shake, rocks",
		"1 oz dark rum / 1 oz mezcal / 0.75 oz pineapple juice / 0.75 oz lime juice / 0.5 oz orgeat / shake, rocks",
		"1.5 oz peated single malt / 0.75 oz cream sherry / 1 tsp honey syrup / 2 dashes aromatic bitters / stir, rocks",
		"1 oz pisco / 1 oz gin / 0.75 oz lemon juice / 0.75 oz simple syrup / 0.5 oz egg white / shake, up",
		"1.25 oz limoncello / 1.25 oz gin / 0.75 oz lemon juice / shake, up",
		"1.5 oz mezcal / 0.75 oz coffee liqueur / 2 dashes mole bitters / stir, rocks",
		"1.5 oz medium amaro / 0.75 oz lemon juice / 0.25 oz simple syrup / 3 oz soda water / build, highball",
		"2 oz gin / 0.25 oz creme de violette / 0.5 oz maraschino liqueur / 0.75 oz lemon juice / shake, up",
		"1.5 oz gin / 0.75 oz green herbal liqueur / 0.75 oz lime juice / 0.25 oz simple syrup / shake, up",
		"1 oz rye whiskey / 1 oz cognac / 0.75 oz sweet vermouth / 0.25 oz honeyed herbal liqueur / 2 dashes aromatic bitters / stir, rocks",
		"2 oz bourbon / 0.75 oz dry vermouth / 0.25 oz medium amaro / 0.25 oz maraschino liqueur / stir, up",
		"45 ml vodka / 22.5 ml coffee liqueur / 30 ml espresso / 7.5 ml simple syrup / shake, up",
		"1 oz amaretto / 1 oz aged rum / 0.75 oz lime juice / shake, rocks",
		"2 oz rye whiskey / 0.25 oz simple syrup / 4 dashes anise bitters / 1 dash absinthe / stir, up",
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(text, " / ", "\n")))
		assert.Equal(t, weigh.Balanced, r.Verdict, "%s: %.0f", text, r.Judgement.Score)
	}
}

// Drinks in which one pour is doubled or tripled, and which one a bartender would pour
// less of: common practice, no source.
func TestDoubledPoursAreNoticed(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text    string
		culprit string // id
	}{
		{"2 oz gin / 0.75 oz lemon juice / 0.5 oz simple syrup / 1.5 oz elderflower liqueur / shake, up", "elderflower-liqueur"},
		{"1.5 oz mezcal / 2.25 oz coffee liqueur / 2 dashes mole bitters / stir, rocks", "coffee-liqueur"},
		{"45 ml vodka / 75 ml coffee liqueur / 30 ml espresso / shake, up", "coffee-liqueur"},
		{"1.5 oz gin / 2.25 oz green herbal liqueur / 0.75 oz lime juice / shake, up", "green-herbal-liqueur"},
		{"0.75 oz gin / 0.75 oz triple sec / 0.75 oz white quinquina / 0.75 oz lemon juice / 0.5 oz absinthe / shake, up", "absinthe"},
		{"1.5 oz white rum / 1.75 oz falernum / 0.75 oz lime juice / shake, up", "falernum"},
		{"2 oz white rum / 0.75 oz lime juice / 1.5 oz simple syrup / shake, up", "simple-syrup"},
		{"2 oz gin / 1.75 oz lemon juice / 0.75 oz simple syrup / shake, up", "lemon-juice"},
		{"2 oz bourbon / 0.75 oz lemon juice / 0.75 oz honey syrup / 0.75 oz ginger syrup / shake, rocks", "honey-syrup"},
		{"1.5 oz blanco tequila / 2 oz triple sec / 0.75 oz lime juice / shake, rocks", "triple-sec"},
		{"2 oz rye whiskey / 0.25 oz simple syrup / 1 oz fernet / 2 dashes aromatic bitters / stir, up", "fernet"},
		{"1.5 oz gin / 0.75 oz white quinquina / 0.75 oz lemon juice / 1.5 oz white creme de cacao / shake, up", "creme-de-cacao"},
		{"1.5 oz white rum / 0.75 oz lime juice / 1 oz maraschino liqueur / 0.5 oz grapefruit juice / shake, up", "maraschino-liqueur"},
	} {
		s := k.read(t, strings.ReplaceAll(c.text, " / ", "\n"))
		r := k.score(t, s)
		require.NotEqual(t, weigh.Balanced, r.Verdict, "%s: %.0f", c.text, r.Judgement.Score)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		assert.True(t, slices.ContainsFunc(fixes[0].Changes, func(x balance.Change) bool {
			return x.Profile.ID == c.culprit && x.ToML < x.FromML
		}), "%s: %s", c.text, fixes[0].Text)
	}
}

// Three times the accent of a drink is told where its name says what it should be, and what bars vary
// is not: published amounts (IBA, recalled), the rest common practice, no source.
func TestANamePromises(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		name, text string
		balanced   bool
	}{
		{"Aviation", "2 oz gin / 0.75 oz lemon juice / 0.5 oz maraschino liqueur / 0.75 oz creme de violette / shake, up", false},
		{"Martinez", "1.5 oz gin / 1.5 oz sweet vermouth / 0.75 oz maraschino liqueur / 2 dashes aromatic bitters / stir, up", false},
		{"Aviation", "2 oz gin / 0.75 oz lemon juice / 0.25 oz maraschino liqueur / 0.25 oz creme de violette / shake, up", true},
		{"Martinez", "2 oz gin / 1 oz sweet vermouth / 1 barspoon maraschino liqueur / 2 dashes aromatic bitters / stir, up", true},
		{"Dry Martini", "2 oz gin / 1 oz dry vermouth / stir, up", true},
		{"Negroni", "1.5 oz gin / 1 oz sweet vermouth / 1 oz red bitter aperitif / stir, rocks", true},
	} {
		s := k.read(t, strings.ReplaceAll(c.text, " / ", "\n"))
		s.Name = c.name
		r := k.score(t, s)
		assert.Equal(t, c.balanced, r.Verdict == weigh.Balanced, "%s: %s: %.0f", c.name, c.text, r.Judgement.Score)
	}
}

// What modifies a drink goes back to what is usual, not to what would just pass: mL,
// common practice, no source.
func TestFixesGoToTheUsualDose(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text    string
		culprit string // id
		most    float64
	}{
		{"2 oz gin / 0.75 oz lemon juice / 0.5 oz maraschino liqueur / 1.5 oz creme de violette / shake, up", "creme-de-violette", 15},
		{"1.5 oz mezcal / 2.25 oz coffee liqueur / 2 dashes mole bitters / stir, rocks", "coffee-liqueur", 30},
		{"2 oz blanco tequila / 2.5 oz triple sec / 0.75 oz lime juice / shake, rocks", "triple-sec", 30},
		{"2 oz rye whiskey / 0.25 oz simple syrup / 1 oz fernet / 2 dashes aromatic bitters / stir, up", "fernet", 7.5},
		{"30 ml gin / 30 ml sweet vermouth / 90 ml red bitter aperitif / stir, rocks", "red-bitter-aperitif", 40},
		{"2 oz rye whiskey / 1 oz sweet vermouth / 1 oz maraschino liqueur / 2 dashes aromatic bitters / stir, up", "maraschino-liqueur", 10},
	} {
		s := k.read(t, strings.ReplaceAll(c.text, " / ", "\n"))
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, c.text)
		first := fixes[0].Changes[0]
		assert.Equal(t, c.culprit, first.Profile.ID, "%s: %s", c.text, fixes[0].Text)
		assert.LessOrEqual(t, first.ToML, c.most, "%s: %s", c.text, fixes[0].Text)
	}
}

// Too much of a pour is told by what it tastes of, before how large or strong it makes the
// drink; common practice, no source.
func TestFaultsNameTheTaste(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text    string
		culprit string // id
		axis    ratio.Axis
	}{
		{"40 ml vodka / 20 ml coffee liqueur / 10 ml simple syrup / 150 ml espresso / shake, up", "espresso", ratio.Bitter},
		{"1.5 oz dark rum / 3 oz red bitter aperitif / 1.5 oz pineapple juice / 0.5 oz lime juice / 0.5 oz simple syrup / shake, rocks", "red-bitter-aperitif", ratio.Bitter},
		{"2 oz blanco tequila / 2.5 oz triple sec / 0.75 oz lime juice / shake, up", "triple-sec", ratio.Sweet},
		{"30 ml gin / 30 ml sweet vermouth / 90 ml red bitter aperitif / stir, rocks", "red-bitter-aperitif", ratio.Bitter},
	} {
		r := k.score(t, k.read(t, strings.ReplaceAll(c.text, " / ", "\n")))
		named := slices.ContainsFunc(r.Faults[:min(2, len(r.Faults))], func(f balance.Fault) bool {
			return f.Profile != nil && f.Profile.ID == c.culprit && f.Axis == c.axis && f.High
		})
		assert.True(t, named, "%s: %+v", c.text, r.Faults)
	}
}
