package reading

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A number in the name of a drink that everybody knows is no amount.
func TestNumbersOfNamesAreNoAmounts(t *testing.T) {
	for _, text := range []string{"French 75 | 30 ml gin | 15 ml lemon juice | shake", "French 75 - 30 ml gin - 15 ml lemon juice - shake", "French 75: 30 ml gin, 15 ml lemon juice, shake"} {
		s, err := resolveText(t, text)
		require.NoError(t, err, text)
		assert.Equal(t, "French 75", s.Name, text)
		assert.Len(t, s.Pours, 2, text)
	}
}

// What a draft leaves out is held against its pours.
func TestWhatMayBeLeftOutIsAsked(t *testing.T) {
	for _, text := range []string{
		"45 ml gin, 20 ml lemon juice, 10 ml simple syrup, maybe leave out the lemon or the simple syrup, whichever we decided. shake",
	} {
		_, err := resolveText(t, text)
		assert.Error(t, err, text)
	}
}
