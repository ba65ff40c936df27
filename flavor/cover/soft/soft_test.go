package soft_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/cover/soft"
)

// What is left of a drink without its first pour: common practice, no source.
func TestWhatIsLeft(t *testing.T) {
	catalogue, err := data.Embedded()
	require.NoError(t, err)
	for text, want := range map[string]struct{ leaves, long, sugared bool }{
		"2 oz London dry gin\n1 oz lemon juice\n3/4 oz simple syrup\n3 oz soda water\nbuild, long": {true, true, true},
		"2 oz London dry gin\n1 oz lemon juice\n3 oz soda water\nbuild, long":                      {true, false, false}, // nobody drinks it
		"2 oz white rum\n1 oz lime juice\n3/4 oz simple syrup\nshake, up":                          {true, false, true},
		"2 oz bourbon\n1 oz sweet vermouth\nstir, up":                                              {false, false, true},
		"1 oz coffee liqueur\n4 oz whole milk\nbuild, long":                                        {true, true, true},
		"1 oz coffee liqueur\n1 oz heavy cream\nshake, up":                                         {false, false, true},
	} {
		spec, err := catalogue.ReadSpec("", text)
		require.NoError(t, err)
		var kept []int
		for i := range spec.Pours[1:] {
			kept = append(kept, i+1)
		}
		left := spec.Pours[1:]
		assert.Equal(t, want.leaves, soft.Leaves(&spec, kept), "leaves: %s", text)
		assert.Equal(t, want.long, soft.Long(slices.Values(left), spec.VolumeML()), "long: %s", text)
		assert.Equal(t, want.sugared, soft.Sugared(slices.Values(left)), "sugared: %s", text)
	}
}
