package drill

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"counterpour/flavor/ratio"
)

// A request is read as it was written, and takes as many bytes as any other.
func TestRequestsAsBytes(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		want := RoundRequest{Kind: rapid.SampledFrom(Kinds()).Draw(r, "kind"), Axis: ratio.Axis(rapid.IntRange(0, ratio.NumAxes-1).Draw(r, "axis")),
			Size: rapid.Float64().Draw(r, "size"), Seed: rapid.Uint64().Draw(r, "seed"),
			Avoid: Avoided(rapid.Uint16Range(0, 1<<14-1).Draw(r, "avoid")), Menu: rapid.Bool().Draw(r, "menu")}
		b := want.Bytes()
		assert.Len(r, b, requestBytes)
		got, ok := RequestOf(b)
		assert.True(r, ok)
		assert.Equal(r, want, got)
		assert.Equal(r, want.Avoid, AvoidedOf(want.Avoid.List()))
		old, ok := RequestOf(b[:avoidAt])
		assert.True(r, ok, "one of before allergens could be avoided")
		want.Avoid, want.Menu = 0, false
		assert.Equal(r, want, old)
	})
	for _, bad := range []RoundRequest{{Kind: "none"}, {Kind: KindFault, Axis: ratio.Axis(ratio.NumAxes)}} {
		_, ok := RequestOf(bad.Bytes())
		assert.False(t, ok)
	}
	_, ok := RequestOf([]byte{0})
	assert.False(t, ok)
}
