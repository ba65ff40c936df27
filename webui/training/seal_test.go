package training

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/flavor/drill"
	"counterpour/flavor/template"
)

// A request goes through its seal unharmed, whatever it is.
func TestSeal(t *testing.T) {
	seal, err := newSealer()
	require.NoError(t, err)
	rapid.Check(t, func(r *rapid.T) {
		want := drill.RoundRequest{Kind: rapid.SampledFrom(drill.Kinds()).Draw(r, "kind"), Axis: template.Axis(rapid.IntRange(0, template.NumAxes-1).Draw(r, "axis")),
			Size: rapid.Float64().Draw(r, "size"), Seed: rapid.Uint64().Draw(r, "seed")}
		word := seal.seal(&want)
		got, ok := seal.open(word)
		assert.True(r, ok)
		assert.Equal(r, want, got)
		spoilt := []byte(word)
		at := rapid.IntRange(0, len(spoilt)-2).Draw(r, "at") // the last letter holds bits that do not count
		spoilt[at] = map[bool]byte{true: 'B', false: 'A'}[spoilt[at] == 'A']
		_, ok = seal.open(string(spoilt))
		assert.False(r, ok)
	})
}

func FuzzOpenARound(f *testing.F) {
	seal, err := newSealer()
	require.NoError(f, err)
	f.Add(seal.seal(&drill.RoundRequest{Kind: drill.KindMend, Axis: template.Sweet, Size: 6, Seed: 7}))
	f.Add("AAAA")
	f.Fuzz(func(t *testing.T, word string) {
		if r, ok := seal.open(word); ok {
			assert.Contains(t, drill.Kinds(), r.Kind)
		}
	})
}
