package index_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/index"
)

// What a name meant is kept for later drafts, and only by the index that it meant it to.
func TestKeptNamesMeanTheSame(t *testing.T) {
	gin := &flavor.Profile{ID: "gin", Name: "London dry gin", Aliases: []string{"gin"}, Class: flavor.ClassGin}
	other := &flavor.Profile{ID: "gin", Name: "Old gin", Aliases: []string{"gin"}, Class: flavor.ClassGin}
	x, err := index.New([]*flavor.Profile{gin})
	require.NoError(t, err)
	next, err := x.Follow(t.Context(), []*flavor.Profile{other}, nil)
	require.NoError(t, err)
	for range 3 {
		for _, c := range []struct {
			in    *index.Index
			means *flavor.Profile
		}{{x, gin}, {next, other}, {x.Favouring(func(string) float64 { return 1 }), gin}} {
			s, err := reading.Read("2 oz gin\nstir, up", c.in)
			require.NoError(t, err)
			require.Len(t, s.Pours, 1)
			assert.Same(t, c.means, s.Pours[0].Profile)
			assert.Equal(t, "gin", s.Pours[0].Match.Asked)
		}
	}
}
