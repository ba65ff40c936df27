package service

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is usual is poured by no fewer drinks than what comes after it, and is never
// what comes from the tap.
func TestUsual(t *testing.T) {
	v, _ := openDemo(t)
	s := v.Now()
	usual, counts := s.Usual(40), s.pouredBy()
	require.Len(t, usual, 40)
	for i, p := range usual {
		assert.False(t, p.Class.Free(), p.ID)
		if i > 0 {
			assert.GreaterOrEqual(t, counts[usual[i-1]], counts[p], p.ID)
		}
	}
	assert.Equal(t, usual, s.Usual(40))
}

// The starters of a menu can be poured from the stock, and are of more than one family.
func TestStarters(t *testing.T) {
	v, _ := openDemo(t)
	s := v.Now()
	there := map[string]bool{}
	for _, p := range s.InStock() {
		there[p.ID] = true
	}
	starters := s.Starters(12)
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
	for family, n := range families {
		assert.LessOrEqual(t, n, 3, family)
	}
	assert.Equal(t, starters, s.Starters(12))
	empty := *s
	empty.Stock = nil
	assert.Empty(t, empty.Starters(12), "nothing is poured from nothing")
}
