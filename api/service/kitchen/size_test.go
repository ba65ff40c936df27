package kitchen

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/bartest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/measure"
)

const (
	fizz = "1 1/2 oz London dry gin\n3/4 oz lemon juice\n3/4 oz simple syrup\n3 dashes aromatic bitters\nshake, long\ntop soda water"
	flip = "2 oz bourbon\n1/2 oz demerara syrup\n1 egg white\n6 mint leaves\nshake, up"
)

// Halved and doubled, every pour is; what tops up fills what is left of the glass.
func TestScaled(t *testing.T) {
	b := bartest.New(t)
	s := b.Spec(t, fizz)
	for _, by := range []float64{0.5, 2, 4} {
		to := Scaled(s, by)
		for i, p := range to.Pours {
			want := by
			if p.Unit == flavor.Top {
				want = 1
			}
			assert.InDelta(t, want*s.Pours[i].Amount, p.Amount, bartest.Rounding)
			assert.InDelta(t, want*s.Pours[i].ML, p.ML, bartest.Rounding)
		}
		back := Scaled(&to, 1/by)
		for i, p := range back.Pours {
			assert.InDelta(t, s.Pours[i].ML, p.ML, bartest.Rounding, "there and back")
		}
	}
	assert.Equal(t, b.Spec(t, fizz), s, "the draft itself stays")
}

// A draft that no glass holds is a batch, and one drink of it is poured by hand in its own ratio;
// what one glass may hold is none.
func TestOneOfBatch(t *testing.T) {
	b := bartest.New(t)
	for text, want := range map[string][]string{
		"2 l London dry gin\n1000 ml lemon juice\n100 cl simple syrup\nshake, up": {"50 ml", "25 ml", "25 ml"},
		"40 oz London dry gin\n20 oz lemon juice\n20 oz simple syrup\nshake, up":  {"1.75 oz", "0.75 oz", "0.75 oz"},
		"500 ml London dry gin\n500 ml lemon juice\nshake, up":                    nil, // as much as the largest glass
		fizz: nil,
	} {
		s := b.Spec(t, text)
		before := s.Clone()
		one, ml, batch := OneOfBatch(s)
		assert.Equal(t, want != nil, batch, text)
		sum := 0.0
		for i := range s.Pours {
			sum += s.Pours[i].ML
		}
		assert.InDelta(t, sum, ml, bartest.Rounding, text)
		assert.Equal(t, before, s.Clone(), "the draft itself stays")
		var got []string
		for _, p := range one.Pours {
			got = append(got, fmt.Sprintf("%g %s", p.Amount, p.Unit))
		}
		assert.Equal(t, want, got, text)
	}
}

// In another unit every pour is one that a hand pours, as near as a step of the
// jigger; what comes by the dash or whole stays.
func TestInUnit(t *testing.T) {
	b := bartest.New(t)
	jigger := []flavor.Unit{flavor.Ounce, flavor.Centilitre, flavor.Millilitre}
	for _, text := range []string{fizz, flip, bartest.GinSour, bartest.OldWhiskey} {
		s := b.Spec(t, text)
		for _, unit := range []flavor.Unit{flavor.Ounce, flavor.Millilitre} {
			to, changed := InUnit(s, jigger, unit)
			require.True(t, changed, text)
			bartest.CheckAmounts(t, &to)
			for i, p := range to.Pours {
				was := &s.Pours[i]
				if !slices.Contains(jigger, was.Unit) {
					assert.Equal(t, *was, p)
					continue
				}
				assert.Equal(t, unit, p.Unit)
				assert.InDelta(t, was.ML, p.ML, measure.Step(flavor.Ounce)*29.5735/2+bartest.Rounding, "half a step of the coarser jigger at most")
			}
		}
		_, changed := InUnit(s, []flavor.Unit{flavor.Teaspoon}, flavor.Millilitre)
		assert.False(t, changed, "nothing is in teaspoons")
	}
}

// A volume that is asked for is reached as near as the jigger pours, the top as it
// was; one that cannot be has a fault at "volume".
func TestToVolume(t *testing.T) {
	b := bartest.New(t)
	judge := b.Station.Judge.Score
	for _, text := range []string{fizz, flip, bartest.GinSour, bartest.BitterThird} {
		s := b.Spec(t, text)
		for _, want := range []float64{150, 300, 1000} {
			to, err := ToVolume(s, want, judge)
			require.NoError(t, err, text)
			bartest.CheckAmounts(t, &to)
			scored, err := judge(&to)
			require.NoError(t, err)
			// A step of 1/4 oz for each pour, half of it either way, and the ice that goes with it.
			assert.InDelta(t, want, scored.Drink.VolumeML, 6*float64(len(to.Pours)), "%s to %g mL", text, want)
			for i, p := range to.Pours {
				if p.Unit == flavor.Top {
					assert.Equal(t, s.Pours[i], p)
				}
			}
		}
	}
	for _, want := range []float64{0, 19.9, 10000.1, -50} {
		_, err := ToVolume(b.Spec(t, flip), want, judge)
		faults := flavor.DataFaultsOf(err)
		require.Len(t, faults, 1)
		assert.Equal(t, "volume", faults[0].Location)
		require.NotNil(t, faults[0].Bounds)
		assert.Equal(t, LeastVolumeML, faults[0].Bounds.Least)
	}
	_, err := ToVolume(b.Spec(t, fizz), 60, judge)
	require.Len(t, flavor.DataFaultsOf(err), 1)
	assert.Nil(t, flavor.DataFaultsOf(err)[0].Bounds)
	assert.Contains(t, err.Error(), "ask for more")
	broken := errors.New("the mixer is broken")
	_, err = ToVolume(b.Spec(t, fizz), 200, func(*flavor.Spec) (*balance.Result, error) { return nil, broken })
	assert.ErrorIs(t, err, broken)
}
