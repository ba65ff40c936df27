package reading_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/measure/draft/reading"
)

// Who tells a list anew, says what a pour is after all, or which of several versions counts, means the last
// that was said, which is noted: common practice, no source.
func TestWhatIsToldAnew(t *testing.T) {
	const want = "50 london-dry-gin, 25 lemon-juice, 15 honey-syrup"
	for _, text := range []string{
		"gin 45, lemon 20... no. gin 50, lemon 25, honey 15. shake, up",
		"60 gin no... use 50 gin, 25 lemon, 15 honey. shake, up",
		"Uh gin, sixty, no wait it's fifty of gin. 25 lemon. 15 honey. shake, up",
		"60 rum, 30 lime... no wait, wrong page. 50 gin, 25 lemon, 15 honey. shake, up",
		"gin 50, lemon 30, honey 15. shake, up. sorry LEMON IS 25 not 30",
		"gin 50, lemon 30, honey 15. shake, up. lemon is 25",
		"started at 30 lemon, too sharp. go 50 gin, 25 lemon, 15 honey. shake, up",
		"test 1: 45 gin, 25 lemon, 20 honey - too sweet\ntest 2: 50 gin, 25 lemon, 15 honey - keeper\nshake, up",
		"v1: 50 gin, 25 lemon, 15 honey. v2: 50 gin, 30 lemon, 10 honey. stick with v1. shake, up",
	} {
		s, err := reading.Read(text, wholeCatalogue(t))
		require.NoError(t, err, text)
		assert.Equal(t, want, listed(t, text), text)
		assert.NotEmpty(t, s.Notes, text)
	}
	for _, text := range []string{
		"gin 50, lemon 25, wrong page. shake, up",
		"v1: 45 gin, 20 lemon, 20 honey. v2: 45 gin, 25 lemon, 15 honey. shake, up",
		"v1: 45 gin, 20 lemon, 20 honey - perfect. v2: 45 gin, 25 lemon, 15 honey - perfect. shake, up",
		"v1: 45 gin, 20 lemon, 20 honey. v2: 45 gin, 25 lemon, 15 honey. go with v3. shake, up",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}

// A condition of the whole drink is none of a pour; one of a pour is asked about: common practice, no source.
func TestAConditionOfTheWholeDrink(t *testing.T) {
	const want = "50 london-dry-gin, 25 lemon-juice, 15 simple-syrup"
	for _, head := range []string{"If anyone asks for a Southside it's ", "When a guest wants the usual: ", "Punch for the regulars: ", "For guests who like it sour: "} {
		assert.Equal(t, want, listed(t, head+"50 ml gin, 25 ml lemon, 15 ml simple. shake, up"), head)
	}
	for _, text := range []string{
		"If a guest wants it sweet, 10 ml simple. 50 ml gin, 25 ml lemon, shake", "For the regulars: 5 ml absinthe. 50 ml gin, 25 ml lemon, shake", "for the regulars: 5 ml absinthe\n50 ml gin\n25 ml lemon\nshake",
		"50 ml gin, 25 ml lemon. if they want it long, 50 ml soda. shake", "If a guest asks for a long one, 50 ml gin, 90 ml soda, otherwise 50 ml gin, 15 ml vermouth",
	} {
		_, err := reading.Read(text, wholeCatalogue(t))
		assert.Error(t, err, text)
	}
}
