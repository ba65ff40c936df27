package reading

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// What says how a drink is made, before a colon, is no name: the method and the heat would be lost.
func TestMakingBeforeAColon(t *testing.T) {
	for text, want := range map[string]flavor.Method{
		"reverse dry shake: 2 oz gin, 1 oz lemon juice, 1 egg white": flavor.DryShake, "hard shake: 2 oz gin, 1 oz lemon juice, 1 oz simple": flavor.Shake,
		"hot 70C: 40 ml gin, 150 ml water, 10 ml lemon juice": flavor.Build,
	} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		assert.Empty(t, s.Name, text)
		assert.Equal(t, want, s.Method, text)
		assert.Len(t, s.Pours, 3, text)
	}
	s, err := resolveText(t, "hot 70C: 40 ml gin, 150 ml water, 10 ml lemon juice")
	require.NoError(t, err)
	assert.Equal(t, flavor.Hot, s.Service)
	assert.InDelta(t, 70, s.HotC, 1e-9)
}

// A squeeze that a line begins with is poured; two names before a colon share the amount of each.
func TestPoursThatAreNoName(t *testing.T) {
	for text, want := range map[string]string{
		"a squeeze of lime, 2 oz gin, 4 oz soda water, build":                      "Lime juice",
		"gin and lemon juice: 1.5 oz each; simple: .5 oz; shake":                   "London dry gin",
		"2 oz gin, 1 oz lemon juice, 1 oz simple, shake, up, bitters drops on top": "London dry gin",
	} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		assert.Empty(t, s.Name, text)
		assert.GreaterOrEqual(t, len(s.Pours), 3, text)
		assert.Equal(t, want, s.Pours[0].Profile.Name, text)
	}
}

// A hand that pours by the glug or the thimble is asked how much that is.
func TestMeasuresThatNobodyCanTellAreAsked(t *testing.T) {
	for _, text := range []string{"2 glugs of gin\n1 oz lemon juice", "1 thimble simple\n2 oz gin", "2 oz gin\n1 lug lemon juice"} {
		_, err := resolveText(t, text)
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1, text)
		assert.Contains(t, faults[0].Message, "is no unit of the bar", text)
		assert.Contains(t, faults[0].Suggest, "oz", text)
	}
}
