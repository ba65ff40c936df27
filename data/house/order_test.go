package house_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"counterpour/data/house"
)

// Whole bottles are ordered: what is open counts as what is left in it, and what ran out as none.
func TestOrder(t *testing.T) {
	out := time.Date(2026, 5, 1, 22, 30, 0, 0, time.UTC)
	for _, c := range []struct {
		par, stock float64
		out        *time.Time
		want       float64
	}{
		{par: 0, stock: 2, want: 0}, {par: 4, stock: 2.5, want: 2}, {par: 4, stock: 4, want: 0}, {par: 4, stock: 9, want: 0},
		{par: 4, stock: 0, want: 4}, {par: 4, stock: 2, out: &out, want: 4}, {par: 1.5, stock: 1, want: 1},
	} {
		assert.Equal(t, c.want, house.Bottle{Par: c.par, Stock: c.stock, OutSince: c.out}.Order(), "%+v", c)
	}
	sound := house.Bottle{ID: "x", Name: "x", Ingredient: "gin", SizeML: 700, Par: 4}
	assert.NoError(t, house.Check(sound))
	sound.Par = -1
	assert.ErrorIs(t, house.Check(sound), house.ErrInvalid)
}
