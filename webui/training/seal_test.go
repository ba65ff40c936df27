package training

import (
	"context"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/data/house/storetest"
	"counterpour/flavor/drill"
	"counterpour/flavor/ratio"
)

func sealerOf(t testing.TB, s house.Commons) sealer {
	t.Helper()
	seal, err := newSealer(t.Context(), s, time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC))
	require.NoError(t, err)
	return seal
}

// A request goes through its seal unharmed, whatever it is, and at any server of the
// house; that of another house opens nothing.
func TestSeal(t *testing.T) {
	commons := storetest.Memory(t)
	seal, there, elsewhere := sealerOf(t, commons), sealerOf(t, commons), sealerOf(t, storetest.Memory(t))
	rapid.Check(t, func(r *rapid.T) {
		want := drill.Round{Question: rapid.String().Draw(r, "question"),
			Request: drill.RoundRequest{Kind: rapid.SampledFrom(drill.Kinds()).Draw(r, "kind"), Axis: ratio.Axis(rapid.IntRange(0, ratio.NumAxes-1).Draw(r, "axis")),
				Size: rapid.Float64().Draw(r, "size"), Seed: rapid.Uint64().Draw(r, "seed")}}
		word := seal.seal(&want)
		got, looked, ok := there.open(word)
		assert.True(r, ok)
		assert.Equal(r, want.Request, got)
		assert.Equal(r, coaching.Looks(&want), looked)
		_, _, ok = elsewhere.open(word)
		assert.False(r, ok)
		spoilt := []byte(word)
		at := rapid.IntRange(0, len(spoilt)-2).Draw(r, "at") // the last letter holds bits that do not count
		spoilt[at] = map[bool]byte{true: 'B', false: 'A'}[spoilt[at] == 'A']
		_, _, ok = seal.open(string(spoilt))
		assert.False(r, ok)
	})
}

// A house that is only read hands rounds out all the same; one whose key is spoilt
// says so.
func TestTheKeyOfAHouse(t *testing.T) {
	_, err := newSealer(t.Context(), refusing{kind: house.ErrNewer}, time.Now())
	assert.NoError(t, err)
	_, err = newSealer(t.Context(), refusing{kind: house.ErrUnavailable}, time.Now())
	assert.ErrorIs(t, err, house.ErrUnavailable)
	s := storetest.Memory(t)
	require.NoError(t, s.Share(t.Context(), time.Now(), house.Ephemeral{Kind: keyKind, ID: keyID, Body: "AAAA", Until: time.Now().Add(time.Hour)}))
	_, err = newSealer(t.Context(), s, time.Now())
	assert.ErrorContains(t, err, "3 bytes")
}

// refusing are commons that take nothing.
type refusing struct {
	house.Commons
	kind error
}

func (r refusing) Agree(context.Context, time.Time, house.Ephemeral) (house.Ephemeral, error) {
	return house.Ephemeral{}, &house.Error{Kind: r.kind, Op: "share"}
}

func FuzzOpenARound(f *testing.F) {
	seal := sealerOf(f, storetest.Memory(f))
	f.Add(seal.seal(&drill.Round{Request: drill.RoundRequest{Kind: drill.KindMend, Axis: ratio.Sweet, Size: 6, Seed: 7}}))
	f.Add("AAAA")
	f.Fuzz(func(t *testing.T, word string) {
		if r, _, ok := seal.open(word); ok {
			assert.Contains(t, drill.Kinds(), r.Kind)
		}
	})
}
