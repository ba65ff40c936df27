package reading_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// listed reads a text and lists what it pours, in mL.
func listed(t *testing.T, text string) string {
	t.Helper()
	s, err := reading.Read(text, wholeCatalogue(t))
	require.NoError(t, err, text)
	out := make([]string, 0, len(s.Pours))
	for _, p := range s.Pours {
		out = append(out, fmt.Sprintf("%.0f %s", p.ML, p.Profile.ID))
	}
	return strings.Join(out, ", ")
}

// A bracket behind an amount says how much of it there is, or how hot it is, and an arrow points at the
// amount that counts: common practice, no source.
func TestWhatStandsBesideAmounts(t *testing.T) {
	for text, want := range map[string]string{
		"rum white 50 (btl 12 left)\nlime 25 (need 2 trays)\nsugar 15\nshake, coupe":           "50 white-rum, 25 lime-juice, 15 simple-syrup",
		"gin 45\nlemon 20\nmaraschino 15 (2 btls)\nshake, up":                                  "45 london-dry-gin, 20 lemon-juice, 15 maraschino-liqueur",
		"hot water 90 (75 deg), bourbon 45, honey 1 tsp. build":                                "90 water, 45 bourbon, 5 honey",
		"3 cl gin --> 2 cl, too sweet. 8 cl prosecco, 4 cl soda. build, rocks":                 "20 london-dry-gin, 80 prosecco, 40 soda-water",
		"rye 1, cognac 1, sweet vermouth 1, maraschino 1/2 — *EDIT 1/4* — 2d ang. stir, rocks": "30 rye-whiskey, 30 cognac, 30 sweet-vermouth, 7 maraschino-liqueur, 2 aromatic-bitters",
		"gin 50, lemon 25, sugar 12, creme de mure 12 drizzle after. shake, crushed":           "50 london-dry-gin, 25 lemon-juice, 12 simple-syrup, 12 creme-de-mure",
		"gin 45 → lemon 20 → sugar 15 → shake → up":                                            "45 london-dry-gin, 20 lemon-juice, 15 simple-syrup",
	} {
		assert.Equal(t, want, listed(t, text), text)
	}
}

// What a bracket or an arrow may change is asked about.
func TestWhatMayChangeAnAmountIsAsked(t *testing.T) {
	for _, text := range []string{
		"gin 45, lemon 20 (2 more), sugar 15. shake, up",
		"gin 45, lemon 20 (need 5 more), sugar 15. shake, up",
		"gin 45, lemon 20 (at 25), sugar 15. shake, up",
		"water 90 (75 deg), bourbon 45, honey 1 tsp. build",
		"sugar 15 -> out. gin 45, lemon 20, honey syrup 15. shake",
		"gin 45, lemon 20 -> lime 20, sugar 15. shake, up",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
