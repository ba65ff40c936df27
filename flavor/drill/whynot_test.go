package drill

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
)

// A difference below a step is told by some: only one far below is told by nobody.
func TestWhatNobodyTells(t *testing.T) {
	sour := func(acid float64) *mix.Drink {
		d := &mix.Drink{}
		d.AcidPer100 = acid
		return d
	}
	was := sour(0.6)
	for _, acid := range []float64{0.61, 0.65, 0.7, 0.75, 0.9, 1.2} {
		is := sour(acid) // g per 100 mL
		steps := math.Abs(tasting.Steps(ratio.Sour, tasting.Value(ratio.Sour, was), tasting.Value(ratio.Sour, is)))
		text := whyNot(side{ratio.Sour, true}, was, is)
		assert.Equal(t, steps < hardlyTasted, strings.HasSuffix(text, wording.NobodyTells), "%v g: %s", acid, text)
		assert.Equal(t, steps >= hardlyTasted && steps < leastTasted, strings.HasSuffix(text, wording.FewTell), "%v g: %s", acid, text)
	}
}
