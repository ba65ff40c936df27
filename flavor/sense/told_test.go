package sense_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

// What moved most is told first, and what the strongest aroma of both glasses hides is
// not told.
func TestAromasMoved(t *testing.T) {
	from := flavor.Aroma{flavor.Juniper: 2.5, flavor.Smoke: 0.12, flavor.Root: 2, flavor.Mint: 0.3}
	to := flavor.Aroma{flavor.Juniper: 2.5, flavor.Smoke: 0.01, flavor.Root: 0.1, flavor.Mint: 0.6}

	moved := sense.AromasMoved(&from, &to, 0.5)
	if assert.Len(t, moved, 2) {
		assert.Equal(t, flavor.Root, moved[0].Family)
		assert.Negative(t, moved[0].Steps)
		assert.Equal(t, flavor.Mint, moved[1].Family)
		assert.Positive(t, moved[1].Steps)
	}
	from[flavor.Juniper], to[flavor.Juniper], from[flavor.Root] = 0.1, 0.1, 0.1
	assert.Contains(t, families(sense.AromasMoved(&from, &to, 0.5)), flavor.Smoke, "with nothing strong beside it")
	assert.Empty(t, sense.AromasMoved(&from, &from, 0.5))
}

func families(moved []sense.AromaMove) []flavor.AromaFamily {
	out := make([]flavor.AromaFamily, len(moved))
	for i, m := range moved {
		out[i] = m.Family
	}
	return out
}
