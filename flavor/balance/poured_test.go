package balance_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/measure"
)

// Where a fault says an amount of a pour, and the first fix moves that pour alone, it is the
// amount by which the fix moves it, as far as a jigger tells.
func TestAFaultSaysWhatItsFixDoes(t *testing.T) {
	k := newKitchen(t)
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(k.book).Draw(t, "drink").Spec.Clone()
		p := &s.Pours[rapid.IntRange(0, len(s.Pours)-1).Draw(t, "pour")]
		factor := rapid.SampledFrom([]float64{0.3, 0.4, 2, 2.25, 3}).Draw(t, "factor")
		p.Amount, p.ML = p.Amount*factor, p.ML*factor
		r, fixes, err := k.judge.Mend(&s, 1)
		require.NoError(t, err)
		if len(fixes) == 0 || len(fixes[0].Changes) != 1 {
			return
		}
		c := fixes[0].Changes[0]
		per, ok := measure.MLPerUnit(c.Unit, c.Profile)
		if c.ToML <= 0 || c.FromML <= 0 || c.FromUnit != "" || !ok {
			return
		}
		for i := range r.Faults {
			f := &r.Faults[i]
			about, says := strings.CutPrefix(f.Text, "about ")
			if f.Profile != c.Profile || f.High != (c.ToML < c.FromML) || !says {
				continue
			}
			moved := c.FromML - c.ToML
			if moved < 0 {
				moved = -moved
			}
			u, amount := measure.Handy(moved, c.Unit, c.Profile)
			if u != c.Unit || moved < measure.Step(u)*per {
				continue // told in another unit
			}
			compared++
			assert.Truef(t, strings.HasPrefix(about, measure.FormatAmount(amount, u)+" "), "%s; %s", f.Text, fixes[0].Text)
		}
	})
	assert.Positive(t, compared)
}
