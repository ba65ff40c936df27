package reading_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/measure/draft/reading"
)

// Where one pour ends and the next begins, in the layouts that bars write: common practice, no source.
func TestLayouts(t *testing.T) {
	x := wholeCatalogue(t)
	const sour = "london-dry-gin 45, lemon-juice 20, simple-syrup 15"
	for text, want := range map[string]string{
		// fields
		"name=Low Tide, base=gin 45ml, citrus=lemon 20ml, sweet=simple 15ml":                          "Low Tide: " + sour,
		"name=Low Tide; gin=45ml; lemon=20ml; simple=15ml; method=shake; glass=coupe":                 "Low Tide: " + sour,
		"Name: Low Tide, Spirit: gin 45ml, Citrus: lemon 20ml, Sweetener: simple 15ml, Method: shake": "Low Tide: " + sour,
		"{\"base\": \"gin 45 ml\", \"citrus\": \"lemon 20 ml\", \"sweet\": \"simple 15 ml\"}":         ": " + sour,
		// the amount behind a comma
		"Low Tide\nGin, 45 ml; lemon juice, 20 ml; simple syrup, 15 ml; shaken":                  "Low Tide: " + sour,
		"Alexander\nCognac, one ounce. Cream, one ounce. Dark crème de cacao, one ounce. Shake.": "Alexander: cognac 29.6, heavy-cream 29.6, dark-creme-de-cacao 29.6",
		// one amount for all
		"equal 20s: gin, lemon, simple. Shake.":          ": london-dry-gin 20, lemon-juice 20, simple-syrup 20",
		"Fair. equal ¾s: gin, lemon, simple. Shake. Up.": "Fair: london-dry-gin 22.2, lemon-juice 22.2, simple-syrup 22.2",
		// tables
		"ingredient,ml,cost\ngin,45,1.20\nlemon juice,20,0.16\nsimple syrup,15,0.08\nTOTAL,,1.44":                                             ": " + sour,
		"Ingredient | per drink | batch (20)\ngin | 45 ml | 900 ml\nlemon | 20 ml | 400 ml\nsimple | 15 ml | 300 ml\nTotal | 80 ml | 1600 ml": ": " + sour,
		// heads
		"0.0 | NOGRONI\nalcohol-free red bitter 30\nalcohol-free red vermouth 30": "NOGRONI: alcohol-free-red-bitter 30, alcohol-free-red-vermouth 30",
		"LOW TIDE | rocks | cubed\ngin 45 ml\nlemon 20 ml\nsimple 15 ml":          "LOW TIDE: " + sour,
		"Low Tide (rocks, big cube)\ngin 45 ml\nlemon 20 ml\nsimple 15 ml":        "Low Tide: " + sour,
		// a name without a sign behind it
		"RED SKY (cabana 1-8 only) 1 oz dark rum 1 oz white rum .5 oz lime shake, crushed ice": "RED SKY: dark-rum 29.6, white-rum 29.6, lime-juice 14.8",
		"tom c, gin 45 lem 20 syr 15 soda top, tall":                                           "tom c: " + sour + ", soda-water 90",
		"tom c 4 tbl9, gin 45 lem 20 syr 15 soda top, tall":                                    "tom c: " + sour + ", soda-water 90",
		"A: 45 gin, 20 lemon, 15 simple. 3/5 marks":                                            ": " + sour,
		"2 rye ½ sweet ½ dry 2 dashes":                                                         ": rye-whiskey 59.1, sweet-vermouth 14.8, dry-vermouth 14.8, aromatic-bitters 1.6",
	} {
		s, err := reading.Read(text, x)
		require.NoError(t, err, text)
		var pours []string
		for _, p := range s.Pours {
			pours = append(pours, p.Profile.ID+" "+strings.TrimSuffix(fmt.Sprintf("%.1f", p.ML), ".0"))
		}
		assert.Equal(t, want, s.Name+": "+strings.Join(pours, ", "), text)
	}
}

// The service beside a name is served.
func TestServiceBesideTheName(t *testing.T) {
	x := wholeCatalogue(t)
	for _, head := range []string{"LOW TIDE | rocks | cubed", "Low Tide (rocks, big cube)", "Low Tide - rocks", "Low Tide / on the rocks"} {
		s, err := reading.Read(head+"\ngin 45 ml\nsweet vermouth 20 ml\nred bitter 15 ml", x)
		require.NoError(t, err, head)
		assert.Equal(t, "rocks", string(s.Service), head)
	}
}

// What a layout leaves without a name or an amount is asked for.
func TestLayoutsThatAsk(t *testing.T) {
	x := wholeCatalogue(t)
	for _, text := range []string{
		"base=gin 45ml, citrus=20ml, sweet=simple 15ml",                 // of which citrus?
		"name=Low Tide, base=gin 45ml, citrus=zzyzx 20ml, sweet=simple", //
		"Gin, 45 ml; 20 ml; simple syrup, 15 ml",                        //
		"equal 20s: gin, zzyzx, simple",                                 //
		"red sky zzyzx 1 oz dark rum 1 oz white rum .5 oz",              // the last amount has no name
	} {
		_, err := reading.Read(text, x)
		assert.Error(t, err, text)
	}
}

// Every amount of a text that is read is poured or told, however its pours are laid out: none vanishes
// with the signs that are set aside.
func TestNoAmountVanishesInALayout(t *testing.T) {
	x := wholeCatalogue(t)
	names := []string{"gin", "lemon juice", "simple syrup", "rye whiskey", "sweet vermouth", "campfire cordial"}
	layouts := []func(name string, ml int) string{
		func(name string, ml int) string { return fmt.Sprintf("%s, %d ml", name, ml) },
		func(name string, ml int) string { return fmt.Sprintf("base=%s %dml", name, ml) },
		func(name string, ml int) string { return fmt.Sprintf("%s%d", strings.ReplaceAll(name, " ", ""), ml) },
		func(name string, ml int) string { return fmt.Sprintf("%d %s", ml, name) },
		func(name string, ml int) string { return fmt.Sprintf("%s %d", name, ml) },
	}
	rapid.Check(t, func(t *rapid.T) {
		layout := rapid.SampledFrom(layouts).Draw(t, "layout")
		between := rapid.SampledFrom([]string{"; ", ", ", " | ", "\n", ". ", " "}).Draw(t, "between")
		head := rapid.SampledFrom([]string{"", "Low Tide: ", "LOW TIDE ", "Low Tide | rocks\n", "name=Low Tide, ", "low tide (bar 2) "}).Draw(t, "head")
		picked := rapid.SliceOfNDistinct(rapid.IntRange(0, len(names)-1), 2, 4, rapid.ID[int]).Draw(t, "picked")
		var parts []string
		var amounts []int
		for i, k := range picked {
			ml := 10 + 7*i + k
			amounts = append(amounts, ml)
			parts = append(parts, layout(names[k], ml))
		}
		text := head + strings.Join(parts, between)
		s, err := reading.Read(text, x)
		if err != nil {
			return
		}
		told := strings.Join(s.Notes, " ") + s.Garnish + strings.Join(s.Steps, " ")
		for _, ml := range amounts {
			poured := false
			for _, p := range s.Pours {
				poured = poured || int(p.Amount+0.5) == ml
			}
			if !poured && !strings.Contains(told, fmt.Sprint(ml)) {
				t.Fatalf("%q reads as %v: %d is gone", text, s.Pours, ml)
			}
		}
	})
}
