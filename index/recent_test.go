package index

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// What is kept of a name that was asked for before is answered by place and favour anew.
func TestRecentNamesAreAnsweredTheSame(t *testing.T) {
	x := build(t, []*flavor.Profile{known("oat-milk", "Oat milk", flavor.ClassPlantMilk), known("walnut-milk", "Walnut milk", flavor.ClassPlantMilk)})
	onlyWalnut := func(p *flavor.Profile) bool { return p.ID == "walnut-milk" }
	for range 2 {
		require.Equal(t, []string{"Oat milk", "Walnut milk"}, x.Suggest("milk", nil))
		require.Equal(t, []string{"Walnut milk", "Oat milk"}, x.Suggest("milk", onlyWalnut))
		p, ok := x.Slip("walnut mlik", nil)
		require.False(t, ok, "a short word is forgiven nothing")
		require.Nil(t, p)
		p, ok = x.Slip("wallnut-milk", onlyWalnut)
		require.True(t, ok)
		require.Equal(t, "walnut-milk", p.ID)
		_, ok = x.Slip("wallnut-milk", func(*flavor.Profile) bool { return false })
		require.False(t, ok)
	}
	other, err := x.Follow(t.Context(), []*flavor.Profile{known("goat-milk", "Goat milk", flavor.ClassDairy)}, nil)
	require.NoError(t, err)
	require.Equal(t, []string{"Goat milk"}, other.Suggest("milk", nil), "another index has names of its own")
}

func TestRecentNamesAreFew(t *testing.T) {
	x := build(t, shelf())
	for i := range 2 * max(mostRecentNear, mostRecentSlips) {
		x.Slip(fmt.Sprintf("nonesuch %d", i), nil)
		x.recent.near.Add(fmt.Sprint(i), nil)
	}
	require.Equal(t, mostRecentSlips, x.recent.slips.Len())
	require.Equal(t, mostRecentNear, x.recent.near.Len())
	require.NoError(t, x.Close())
	_, _, err := x.Resolve("nonesuch")
	require.ErrorIs(t, err, lookup.ErrClosed)
}
