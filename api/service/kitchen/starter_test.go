package kitchen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is usual is poured by no fewer drinks than what comes after it, and is never
// what comes from the tap.
func TestUsual(t *testing.T) {
	k := testKitchen(t)
	usual := k.Usual(40)
	require.Len(t, usual, 40)
	for i, p := range usual {
		assert.False(t, p.Class.Free(), p.ID)
		if i > 0 {
			assert.GreaterOrEqual(t, k.Common.Drinks(usual[i-1].ID), k.Common.Drinks(p.ID), p.ID)
		}
	}
	assert.Equal(t, usual, k.Usual(40))
}

// The starters of a menu can be poured from the stock, and are of more than one family.
func TestStarters(t *testing.T) {
	k := testKitchen(t)
	h, err := k.Catalogue.Demo()
	require.NoError(t, err)
	there := map[string]bool{}
	for _, p := range h.Stock {
		there[p.ID] = true
	}
	starters := k.Starters(h.Stock, 12)
	require.NotEmpty(t, starters)
	require.LessOrEqual(t, len(starters), 12)
	families, made := map[string]int{}, map[string]bool{}
	for _, d := range starters {
		families[d.Family]++
		assert.False(t, made[madeOf(&d.Spec)], "%s is made of what another is", d.Spec.Name)
		made[madeOf(&d.Spec)] = true
		for i := range d.Spec.Pours {
			p := d.Spec.Pours[i].Profile
			assert.True(t, there[p.ID] || p.Class.Free(), "%s pours %s", d.Spec.Name, p.ID)
		}
	}
	assert.GreaterOrEqual(t, len(families), 6, "they spread over families")
	for i := range starters[1:] {
		assert.GreaterOrEqual(t, rankOf(&starters[i]), rankOf(&starters[i+1]), "%s stands before %s", starters[i].Spec.Name, starters[i+1].Spec.Name)
	}
	for family, n := range families {
		assert.LessOrEqual(t, n, 3, family)
	}
	assert.Equal(t, starters, k.Starters(h.Stock, 12))
	assert.Empty(t, k.Starters(nil, 12), "nothing is poured from nothing")
}
