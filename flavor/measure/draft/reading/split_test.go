package reading

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// What goes in to balance or to sweeten is no part of the name before it: it has no amount, and is asked for.
func TestWhatBalancesIsNoPartOfAName(t *testing.T) {
	for _, text := range []string{"2 oz gin, lime to balance, 1 oz simple", "2 oz gin, simple to sweeten, 1 oz lemon juice"} {
		_, err := resolveText(t, text)
		faults := flavor.DataFaultsOf(err)
		require.NotEmpty(t, faults, text)
		assert.Contains(t, faults[0].Message, "amount", text)
	}
}
