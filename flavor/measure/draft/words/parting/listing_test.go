package parting

import (
	"testing"

	"pgregory.net/rapid"

	"counterpour/flavor/measure/draft/words/entry"
)

// The look at the first sign misses no label.
func TestNoLabelIsMissed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.StringMatching(`[ (#*–•.-]{0,2}(a|b|C|i|ii|III|1|2|03|3\.0|½|１|1/1|T|0)[ ).:/-]{1,2}(gin 50|50 gin|gin|top soda|½ lime)`).Draw(t, "line")
		for _, way := range []byte("a1i") {
			for rank := 1; rank <= leastLabelled; rank++ {
				want := ranked{way, rank}
				if afterLabel(line, entry.Span{End: len(line)}, want) > 0 && !mayBear(firstSign(line), want) {
					t.Fatalf("%q bears label %d of %q, unseen", line, rank, way)
				}
			}
		}
	})
}
