package balance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/weigh"
)

// called reads a drink whose first line is its name, if no amount begins it.
func (k *kitchen) called(t *testing.T, text string) *flavor.Spec {
	if title, pours, ok := strings.Cut(text, "\n"); ok && !strings.ContainsAny(title[:1], "0123456789") {
		s := k.read(t, pours)
		s.Name = title
		return s
	}
	return k.read(t, text)
}

// leaves reports whether a fix leaves an ingredient out.
func leaves(x *balance.Fix, id string) bool {
	for i := range x.Changes {
		if c := &x.Changes[i]; c.Profile.ID == id && c.ToML == 0 {
			return true
		}
	}
	return false
}

// adds reports whether a fix adds an ingredient.
func adds(x *balance.Fix, id string) bool {
	for i := range x.Changes {
		if c := &x.Changes[i]; c.Profile.ID == id && c.FromML == 0 {
			return true
		}
	}
	return false
}

// One pour that does not belong takes a drink to another family, or curdles what does belong: it is
// told, and goes, and nothing else does. Common practice, no source.
func TestMisplacedPourGoes(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct{ text, odd string }{
		{"White Russian\n2 oz vodka\n1 oz coffee liqueur\n1 oz heavy cream\n3/4 oz lime juice\nshake, rocks", "lime-juice"},
		{"2 oz vodka\n1 oz coffee liqueur\n1 oz heavy cream\n1/2 oz lemon juice\nbuild, rocks", "lemon-juice"},
		{"Alexander\n45 ml cognac\n30 ml dark creme de cacao\n30 ml heavy cream\n20 ml lemon juice\nshake, up", "lemon-juice"},
		{"Grasshopper\n1 oz creme de menthe\n1 oz white creme de cacao\n1 oz heavy cream\n3/4 oz lime juice\nshake, up", "lime-juice"},
		{"Negroni\n1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\n1 oz lime juice\nstir, rocks", "lime-juice"},
		{"Negroni\n30 ml gin\n30 ml red bitter aperitif\n30 ml sweet vermouth\n45 ml tomato juice\nstir, rocks", "tomato-juice"},
		{"Manhattan\n2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\n3/4 oz white wine vinegar\nstir, up", "white-wine-vinegar"},
		{"Negroni\n45 ml gin\n45 ml red bitter aperitif\n45 ml sweet vermouth\n45 ml lemon juice\nstir, rocks", "lemon-juice"}, // though a sour is made of it
		{"Martini\n75 ml gin\n15 ml dry vermouth\n15 ml simple syrup\nstir, up", "simple-syrup"},
		{"2 oz rye\n1 oz sweet vermouth\n2 dashes aromatic bitters\n1 oz cider vinegar\nstir, up", "cider-vinegar"},
	} {
		s := k.called(t, c.text)
		r := k.score(t, s)
		require.NotEqual(t, weigh.Balanced, r.Verdict, c.text)
		require.NotNil(t, r.Faults[0].Profile, c.text)
		assert.Equal(t, c.odd, r.Faults[0].Profile.ID, c.text)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, c.text)
		assert.True(t, leaves(&fixes[0], c.odd) && len(fixes[0].Changes) == 1, "%s: %s", c.text, fixes[0].Text)
		for _, f := range r.Faults[1:] {
			assert.NotEqual(t, "out of place", f.Word(), c.text)
		}
	}
}

// What stands in the place of what the drink of that name has goes out for it. Common practice, no
// source.
func TestWhatStandsInThePlaceOfAnother(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct{ text, odd, meant string }{
		{"Daiquiri\n2 oz white rum\n1 oz lime juice\n3/4 oz olive brine\nshake, up", "olive-brine", "simple-syrup"},
		{"Manhattan\n2 oz rye\n1 oz cider vinegar\n2 dashes aromatic bitters\nstir, up", "cider-vinegar", "sweet-vermouth"},
		{"Mojito\n2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\n8 mint leaves\n3 oz milk\nbuild, long", "whole-milk", "soda-water"},
	} {
		s := k.called(t, c.text)
		fixes := k.fixes(t, s, k.score(t, s))
		require.NotEmpty(t, fixes, c.text)
		assert.True(t, leaves(&fixes[0], c.odd) && adds(&fixes[0], c.meant), "%s: %s", c.text, fixes[0].Text)
	}
}

// The name tells what was forgotten beside the base, though another amount of the rest would make another
// drink of it. Common practice, no source.
func TestNameTellsWhatIsForgotten(t *testing.T) {
	k := newKitchen(t)
	for text, lacks := range map[string]string{
		"Negroni\n1 1/2 oz gin\n1 1/2 oz red bitter aperitif\nstir, rocks":             "sweet-vermouth",
		"Margarita\n2 oz blanco tequila\n1 oz lime juice\nshake, up":                   "triple-sec",
		"White Lady\n2 oz gin\n1 oz lemon juice\nshake, up":                            "triple-sec",
		"Cosmopolitan\n2 oz vodka\n1/2 oz lime juice\n1 oz cranberry juice\nshake, up": "triple-sec",
		// In balance without, as another drink.
		"Negroni\n1 oz gin\n1 oz sweet vermouth\nstir, rocks":                            "red-bitter-aperitif",
		"Mai Tai\n2 oz aged rum\n1 oz lime juice\n1/2 oz orange curacao\nshake, crushed": "orgeat",
		// Water in its place, or a splash.
		"Moscow Mule\n45 ml vodka\n15 ml lime juice\n120 ml soda water\nbuild, long":                      "ginger-beer",
		"Gin and Tonic\n50 ml gin\n150 ml soda water\nbuild, long":                                        "tonic-water",
		"White Lady\n2 oz gin\n1 oz triple sec\n1/4 oz orange juice\n1 egg white\nshake, up":              "lemon-juice",
		"Our Boulevardier\n45 ml bourbon\n30 ml sweet vermouth\nstir, up":                                 "red-bitter-aperitif",
		"Tom Collins\n2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\nshake, rocks":                      "soda-water",
		"Bramble\n60 ml gin\n30 ml lemon juice\n15 ml simple syrup\nshake, crushed":                       "creme-de-mure",
		"French 75\n1 oz gin\n1/2 oz lemon juice\n1/2 oz simple syrup\nshake, up":                         "brut-champagne",
		"Jungle Bird\n45 ml dark rum\n45 ml pineapple juice\n15 ml lime juice\n15 ml simple syrup\nshake": "red-bitter-aperitif",
	} {
		s := k.called(t, text)
		r := k.score(t, s)
		require.NotEqual(t, weigh.Balanced, r.Verdict, text)
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, text)
		assert.True(t, adds(&fixes[0], lacks), "%s: %s", text, fixes[0].Text)
		require.NotEmpty(t, r.Faults, text)
		if strings.HasPrefix(text, "Gin and Tonic") || strings.HasPrefix(text, "White Lady\n2 oz gin\n1 oz triple sec") { // what is poured in its place is told before it
			r.Faults = r.Faults[1:]
			require.NotEmpty(t, r.Faults, text)
		}
		assert.True(t, r.Faults[0].Missing, text)
	}
	whole := k.called(t, "Whiskey Sour\n2 oz bourbon\n1 oz lemon juice\n1/4 oz simple syrup\nshake, up") // it has all
	for _, f := range k.score(t, whole).Faults {
		assert.False(t, f.Missing, f.Text)
	}
}

// What makes another drink of it lacks nothing of the drink whose name it has a word of, nor does what pours
// something else in the place of what is in that, nor one of the ways to pour a drink. Common practice, no
// source.
func TestOtherDrinksLackNothingByName(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 oz gin\n1 oz sweet vermouth\nstir, rocks",
		"Negroni Verde\n1 oz gin\n1 oz sweet vermouth\nstir, rocks",
		"Dry Bramble\n60 ml gin\n30 ml lemon juice\n15 ml simple syrup\nshake, crushed",
		"Margarita\n2 oz tequila\n1 oz lime juice\n3/4 oz agave syrup\nshake, rocks",
		"Negroni\n1 oz gin\n1 oz sweet vermouth\n1 oz amaro\nstir, rocks",
		"Gimlet\n2 oz gin\n1 oz lime cordial\nshake, up",
		"Old Fashioned\n2 oz rye\n1 barspoon maraschino liqueur\n2 dashes aromatic bitters\nstir, rocks",
		"Tom Collins\n2 oz gin\n1 oz lemon juice\n3/4 oz simple syrup\n3 oz tonic water\nbuild, long",
		"Mint Julep\n2 oz bourbon\n1/2 oz simple syrup\n8 mint leaves\nbuild, crushed",
	} {
		r := k.score(t, k.called(t, text))
		assert.Zero(t, k.lacking(t, text), text)
		for _, f := range r.Faults {
			assert.False(t, f.Missing, "%s: %s", text, f.Text)
		}
	}
}

// lacking returns how far out a drink is by what its name says that it lacks.
func (k *kitchen) lacking(t *testing.T, text string) float64 {
	build, err := k.judge.Prepare(k.called(t, text))
	require.NoError(t, err)
	defer build.Done()
	return build.Incomplete()
}

// The name tells which base was forgotten, where others go with the rest as well. Common practice,
// no source.
func TestNameTellsTheForgottenBase(t *testing.T) {
	k := newKitchen(t)
	for text, base := range map[string]string{
		"Daiquiri\n1 oz lime juice\n3/4 oz simple syrup\nshake, up":           "white-rum",
		"Our Daiquiri\n30 ml lime juice\n20 ml simple syrup\nshake, up":       "white-rum",
		"Margarita\n1 oz lime juice\n3/4 oz triple sec\nshake, up":            "blanco-tequila",
		"Manhattan\n1 oz sweet vermouth\n2 dashes aromatic bitters\nstir, up": "rye-whiskey",
		"Whiskey Sour\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up":    "bourbon",
		"Negroni\n1 oz red bitter aperitif\n1 oz sweet vermouth\nstir, rocks": "london-dry-gin",
	} {
		s := k.called(t, text)
		r := k.score(t, s)
		if r.Verdict == weigh.Balanced {
			continue // it is a drink of its own without
		}
		fixes := k.fixes(t, s, r)
		require.NotEmpty(t, fixes, text)
		assert.True(t, adds(&fixes[0], base), "%s: %s", text, fixes[0].Text)
	}
}

// What may as well be meant is no misplaced pour: a sour that is stirred by mistake, a known drink
// with more of what belongs in it. Common practice, no source.
func TestWhatBelongsIsNotMisplaced(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 oz gin\n1 oz red bitter aperitif\n1 oz sweet vermouth\n3/4 oz lemon juice\nstir, rocks",
		"Pina Colada\n2 oz white rum\n3 oz cream of coconut\n1 1/2 oz pineapple juice\n1/2 oz lime juice\nblend",
		"Mai Tai\n2 oz aged rum\n1 oz lime juice\n1/2 oz orange curacao\n1 1/4 oz orgeat\nshake, crushed",
		"Margarita\n2 oz tequila\n2 oz lime juice\n3/4 oz triple sec\n1/4 oz agave syrup\nshake, rocks",
	} {
		for _, f := range k.score(t, k.called(t, text)).Faults {
			assert.NotEqual(t, "out of place", f.Word(), text)
		}
	}
}
