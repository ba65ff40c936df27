package access

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTokens(t *testing.T) {
	one, inRoster := NewToken()
	other, _ := NewToken()
	assert.NotEqual(t, one, other)
	raw, err := tokenCode.DecodeString(strings.TrimPrefix(one, tokenMark))
	require.NoError(t, err)
	assert.Len(t, raw, 32, "256 bits")
	assert.NotContains(t, inRoster, strings.TrimPrefix(one, tokenMark))

	last, lastInBook := NewToken()
	b, err := Parse("lead Ana " + anaHash() + "\nfloor first " + inRoster + "\nlead last " + lastInBook + "\n")
	require.NoError(t, err)
	for _, c := range []struct {
		name, token string
		want        Person
	}{
		{"the first", one, Person{"first", Floor}},
		{"the last", last, Person{"last", Lead}},
		{"another", other, Person{}},
		{"none", "", Person{}},
		{"without its mark", strings.TrimPrefix(one, tokenMark), Person{}},
		{"cut short", one[:len(one)-1], Person{}},
		{"with a blank", one + " ", Person{}},
		{"what is in the roster", inRoster, Person{}},
		{"the hash alone", strings.TrimPrefix(inRoster, tokenInRoster), Person{}},
		{"a passcode", anaPasscode, Person{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, ok := b.byToken(c.token)
			assert.Equal(t, c.want, p)
			assert.Equal(t, c.want != Person{}, ok)
		})
	}
}

// The hash of a word that can be guessed opens nothing.
func TestOnlyTokensAreLookedUp(t *testing.T) {
	for _, word := range []string{"letmein", tokenMark + "letmein"} {
		sum := sha256.Sum256([]byte(word))
		b, err := Parse("lead script " + tokenInRoster + hex.EncodeToString(sum[:]))
		require.NoError(t, err)
		_, ok := b.byToken(word)
		assert.False(t, ok)
	}
}
