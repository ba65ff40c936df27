package reading_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/index"
)

// readBy reads a text as a spec, by the names of an index.
func readBy(t *testing.T, x *index.Index, text string) flavor.Spec {
	t.Helper()
	s, err := reading.Read(text, x)
	require.NoError(t, err, text)
	return s
}

// What bars clip and run together is read as what it stands for; common practice, no source.
func TestShorthandIsWrittenOut(t *testing.T) {
	type pour struct {
		name string
		ml   float64
	}
	x := wholeCatalogue(t)
	for text, want := range map[string]struct {
		pours   []pour
		method  flavor.Method
		service flavor.Service
	}{
		"1.5vod 1oj 2cran bld":                 {[]pour{{"vodka", 44.4}, {"orange juice", 29.6}, {"cranberry juice cocktail", 59.1}}, flavor.Build, ""},
		"1.5 gin\n1 blanc\n.5 gentian":         {[]pour{{"London dry gin", 44.4}, {"blanc vermouth", 29.6}, {"gentian liqueur", 14.8}}, flavor.Stir, flavor.Up}, // no egg's white
		"cog 30 rum 30 t.sec 20 lem 20 shk up": {[]pour{{"cognac", 30}, {"white rum", 30}, {"triple sec", 20}, {"lemon juice", 20}}, flavor.Shake, flavor.Up},   // no 30 teaspoons
		"gin 45\nlemon 20\nraspberry syrup 15\negg white 15\nOne long hard shake. Coupe.": {[]pour{{"London dry gin", 45}, {"lemon juice", 20}, {"raspberry syrup", 15}, {"egg white", 15}}, flavor.Shake, flavor.Up},
		"1 oz dark rum\n.75 lime\n.5 org":                                                 {[]pour{{"dark rum", 29.6}, {"lime juice", 22.2}, {"orgeat", 14.8}}, flavor.Shake, flavor.Up}, // no orange: nothing else sweetens it
		"2oz bourban .75 lemmon .75 simpl eggwhite shk rox":                               {[]pour{{"bourbon", 59.1}, {"lemon juice", 22.2}, {"simple syrup (1:1)", 22.2}, {"egg white", 31}}, flavor.Shake, flavor.Rocks},
		"2 dk rum half oz lime gingerbeer top, build":                                     {[]pour{{"dark rum", 59.1}, {"lime juice", 14.8}, {"ginger beer", 90}}, flavor.Build, ""},
		"gin 2 / lemon 1 / simple 3/4 / e/w / dry shk / up":                               {[]pour{{"London dry gin", 59.1}, {"lemon juice", 29.6}, {"simple syrup (1:1)", 22.2}, {"egg white", 31}}, flavor.DryShake, flavor.Up},
		"gin 2 lem.75 ss.75 mint shk up":                                                  {[]pour{{"London dry gin", 59.1}, {"lemon juice", 22.2}, {"simple syrup (1:1)", 22.2}, {"mint", 2}}, flavor.Shake, flavor.Up},
		"pinaple 3 lime 1 wht rum 2 shk up":                                               {[]pour{{"pineapple juice", 88.7}, {"lime juice", 29.6}, {"white rum", 59.1}}, flavor.Shake, flavor.Up},
		"45 pisco 30 lime 20 gomme ew shake up":                                           {[]pour{{"pisco", 45}, {"lime juice", 30}, {"gum syrup", 20}, {"egg white", 31}}, flavor.Shake, flavor.Up},
		"1½ blanco ¾ triple ¾ lime shk rocks no salt":                                     {[]pour{{"blanco tequila", 44.4}, {"triple sec", 22.2}, {"lime juice", 22.2}}, flavor.Shake, flavor.Rocks},
	} {
		spec := readBy(t, x, text)
		require.Len(t, spec.Pours, len(want.pours), text)
		for i, p := range want.pours {
			require.Equal(t, p.name, spec.Pours[i].Profile.Name, text)
			require.InDelta(t, p.ml, spec.Pours[i].ML, 0.1, text)
		}
		require.Equal(t, want.method, spec.Method, text)
		if want.service != "" {
			require.Equal(t, want.service, spec.Service, text)
		}
	}
}

// A thread of messages says who wrote each line, which is no pour and no name.
func TestSpeakersOfAThread(t *testing.T) {
	x := wholeCatalogue(t)
	spec := readBy(t, x, "Sam: ok so its 2 gin 1 lemon 3/4 raspberry syrup\nSam: and an egg white\nSam: shake it, serve up")
	require.Len(t, spec.Pours, 4)
	require.Empty(t, spec.Name)
	spec = readBy(t, x, "[22:41] Mo: try 1 oz aquavit 1 oz fino 3/4 lemon 1/2 orgeat, shake up\n[22:42] Jo: 3/4 orgeat is too much yeah")
	require.Len(t, spec.Pours, 4)
	require.InDelta(t, 14.8, spec.Pours[3].ML, 0.1)
}

// What is taken back, struck out or changed above is not poured.
func TestTakenBackElsewhere(t *testing.T) {
	x := wholeCatalogue(t)
	spec := readBy(t, x, "made it w 2oz vodka 1oz lime .75 simple but too sour so make it .75 lime instead, shake, up")
	require.Len(t, spec.Pours, 3)
	require.InDelta(t, 22.2, spec.Pours[2].ML, 0.1)
	spec = readBy(t, x, "gin 1.5oz\nblanc vermouth .75oz\ngentian liqueur 2 dashes -- CUT, not in final\norange bitters 1 dash\nstir, up")
	require.Len(t, spec.Pours, 3)
	spec = readBy(t, x, "50 ml gin\n25 ml lime\n20 ml simple\n5 ml absinthe <- removed\nshake, up")
	require.Len(t, spec.Pours, 3)
	spec = readBy(t, x, "Ana: 50 gin 25 lemon 20 simple?\nBen: make it 15 simple\nAna: ok. shake, up")
	require.InDelta(t, 15, spec.Pours[2].ML, 0.1)
	spec = readBy(t, x, "gin 45 ml, lemon goes 15 to 20 ml, simple stays at 10 ml, shake up")
	require.InDelta(t, 20, spec.Pours[1].ML, 0.1)
	spec = readBy(t, x, "Replace the gin with vodka in this one: 50 gin, 25 lime, 20 simple, shake, up")
	require.Equal(t, "vodka", spec.Pours[0].Profile.Name)
	require.InDelta(t, 50, spec.Pours[0].ML, 0.1)
}

// What stands behind the service, or in columns for a batch, is read or refused, and not lost;
// common practice, no source.
func TestNothingIsLostBehindTheService(t *testing.T) {
	x := wholeCatalogue(t)
	spec := readBy(t, x, "gin45 lemon25 sugar15 shk hb soda top")
	require.Len(t, spec.Pours, 4)
	spec = readBy(t, x, "Ingredient\t1x\t10x\nGin\t45\t450\nLemon juice\t22\t220\nSimple syrup\t22\t220\nshake, up")
	require.InDelta(t, 45, spec.Pours[0].ML, 0.1)
	for text, first := range map[string]string{ // its amounts stand behind the names
		"my way gin 50 lemon 25 ss 20 soda fill, collins, ice":         "London dry gin",
		"white rum 1 jam rum 1 lime ¾ falernum ½ gren bsp shk crushed": "white rum",
	} {
		s, err := reading.Read(text, x)
		require.True(t, err != nil || s.Pours[0].Profile.Name == first, text)
	}
}
