package kitchen

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// No strip shows a drink out of a family in which its ratio scores as balanced: the
// edges that are drawn are those of the score. Every proven drink is tried as it is
// and with each pour changed.
func TestRangesMatchTheScore(t *testing.T) {
	k := testKitchen(t)
	outside := 0
	for i := range k.Proven {
		for at := range k.Proven[i].Spec.Pours {
			for _, times := range []float64{1, 0.5, 2} {
				s := k.Proven[i].Spec.Clone()
				s.Pours[at].ML *= times
				s.Pours[at].Amount *= times
				judged, err := k.Judge.Score(&s)
				if err != nil {
					continue // too much to be weighed, or nothing left
				}
				best := &judged.Judgement.Fits[0]
				ranges, ok := k.Ranges(&s, best.ID)
				require.True(t, ok, s.Name)
				for _, a := range ratio.Axes() {
					ml := judged.Judgement.Equivalents[a]
					if ml > ranges[a].High || ranges[a].Has && ml < ranges[a].Low {
						outside++
						assert.Less(t, best.Score, weigh.BalancedFrom, "%s, pour %d times %v: %v is out of its range", s.Name, at, times, a)
					}
				}
			}
		}
	}
	assert.Greater(t, outside, 100, "some of them are spoilt")
}
