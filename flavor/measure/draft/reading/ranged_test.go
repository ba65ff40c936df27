package reading

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// An amount that is a range is asked about, both of its ends are named, and nothing else is wrong.
func TestRangesAreAsked(t *testing.T) {
	for text, want := range map[string][]string{
		"2 oz gin\n3/4-1 oz lemon juice\nshake":              {"3/4-1", "3/4", "1"},
		"2 oz gin, 3/4 – 1 oz lemon juice, shake":            {"3/4 – 1", "3/4", "1"},
		"gin 45-60 ml, lemon juice 20 ml, shake":             {"45-60", "45", "60"},
		"2-3 oz gin\n1 oz lemon juice\nshake":                {"2-3", "2", "3"},
		"60 ml gin\n20 to 25 ml lemon juice\nshake":          {"20 to 25", "20", "25"},
		"60 ml gin\nbetween 20 and 25 ml lemon juice\nshake": {"between 20 and 25", "20", "25"},
		"2 oz gin, .5/.75 oz lemon juice, shake":             {".5/.75", ".5", ".75"},
		"60 ml gin\n20..25 ml lemon juice\nshake":            {"20..25", "20", "25"},
		"2 oz gin\nup to 1 oz lemon juice\nshake":            {"up to 1", "1"},
		"at least 60 ml gin\n20 ml lemon juice\nshake":       {"at least 60", "60"},
		"2 oz gin (or 2.5)\n1 oz lemon juice\nshake":         {"(or 2.5)"},
	} {
		_, err := resolveText(t, text)
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, text)
		assert.Equal(t, want, append([]string{faults[0].Value}, faults[0].Suggest...), text)
		assert.NotZero(t, faults[0].Place().Line, text)
	}
}

// A range that measures no pour is left as it is written.
func TestRangesOfNoPourAreLeft(t *testing.T) {
	for _, text := range []string{
		"2 oz gin\n1 oz lemon juice\nshake 8-10 seconds\nup", "2 oz gin\n1 oz lemon juice\nstir for 20 to 30 seconds, up",
		"Serves 2-3\n2 oz gin\n1 oz lemon juice\nshake", "2 oz gin, 1 oz lemon juice, shake, garnish 2-3 mint leaves",
		"Pier Sour (2019-2021)\n2 oz gin\n1 oz lemon juice\nshake", "1-1/2 oz gin\n1 oz lemon juice\nshake", "2 oz gin (or 60 ml)\n1 oz lemon juice\nshake",
	} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		assert.Len(t, s.Pours, 2, text)
	}
}

// What a hand counts out loosely is read as the middle of its range, and that is told.
func TestLooseCountsAreRead(t *testing.T) {
	for text, want := range map[string]float64{
		"2 oz gin\n1 oz lemon juice\n6-8 mint leaves\nshake":             7,
		"2 oz gin\n1 oz lemon juice\ntwo or three dashes bitters\nshake": 2.5,
		"2 oz gin\n1 oz lemon juice\n4 to 6 raspberries\nshake":          5,
	} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		require.Len(t, s.Pours, 3, text)
		assert.InDelta(t, want, s.Pours[2].Amount, 1e-9, text)
		assert.Contains(t, strings.Join(s.Notes, "; "), "the middle", text)
	}
}
