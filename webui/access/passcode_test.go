package access

import (
	"encoding/hex"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Known answers of the reference implementation, phc-winner-argon2 src/test.c
// (from memory; a digit remembered wrongly would not fit).
func TestHashIsArgon2id(t *testing.T) {
	h, err := parseHash("$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc")
	require.NoError(t, err)
	assert.Equal(t, cost{memory: 65536, passes: 2, lanes: 1}, h.cost)
	assert.Equal(t, "somesalt", string(h.salt))
	assert.Equal(t, "09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7", hex.EncodeToString(h.sum))
	assert.True(t, h.matches(derive("password", h)))
	assert.False(t, h.matches(derive("Password", h)))
}

func TestHashPasscode(t *testing.T) {
	text, err := HashPasscode("  café au rhum\n")
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(text, "$argon2id$v=19$m=65536,t=3,p=4$"), "RFC 9106, section 4, second option: %s", text)
	h, err := parseHash(text)
	require.NoError(t, err)
	assert.Len(t, h.salt, 16)
	assert.Len(t, h.sum, 32)
	prepared, err := prepare("cafe\u0301\u00a0au rhum ")
	require.NoError(t, err)
	assert.True(t, h.matches(derive(prepared, h)), "another keyboard writes it otherwise")
	for _, other := range []string{"Café au rhum", "cafe au rhum", "caféaurhum"} {
		typed, err := prepare(other)
		require.NoError(t, err)
		assert.NotEqual(t, prepared, typed)
	}
	again, err := HashPasscode("café au rhum")
	require.NoError(t, err)
	assert.NotEqual(t, text, again, "the salt is new each time")
}

func TestPasscodeFaults(t *testing.T) {
	for _, passcode := range []string{"", "sevenun", "       x       ", strings.Repeat("x", mostPasscode+1), "tab\tinside it", "\xff\xfe not text", "bell \a inside"} {
		_, err := HashPasscode(passcode)
		require.Error(t, err, "%q", passcode)
		assert.ErrorIs(t, err, flavor.ErrInvalid)
		if strings.TrimSpace(passcode) != "" {
			assert.NotContains(t, err.Error(), strings.TrimSpace(passcode), "a passcode is not repeated")
		}
	}
}

func TestParseHashFaults(t *testing.T) {
	const good = "$argon2id$v=19$m=65536,t=3,p=4$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc"
	_, err := parseHash(good)
	require.NoError(t, err)
	for _, c := range []struct{ name, old, new, want string }{
		{"argon2i", "argon2id", "argon2i", "$argon2id$v=19"},
		{"an old version", "v=19", "v=16", "v=19"},
		{"no version", "$v=19", "", "$argon2id$v=19"},
		{"absurd memory", "m=65536", "m=4194304", "m=4194304 is out of range; use 7168 to 262144 KiB"},
		{"more memory than a number holds", "m=65536", "m=99999999999999999999", "m="},
		{"next to no memory", "m=65536", "m=8", "m=8 is out of range"},
		{"absurd time", "t=3", "t=100", "more work than a sign-in may cost"},
		{"more time than a product holds", "t=3", "t=4294967295", "more work"},
		{"too little work", "m=65536,t=3", "m=8192,t=1", "too little work"},
		{"no passes", "t=3", "t=0", "too little work"},
		{"no lanes", "p=4", "p=0", "1 to 16 lanes"},
		{"absurd lanes", "p=4", "p=255", "1 to 16 lanes"},
		{"lanes beyond a byte", "p=4", "p=256", "p="},
		{"another order", "m=65536,t=3,p=4", "t=3,m=65536,p=4", "whole number at m="},
		{"more than the cost", "p=4", "p=4,keyid=x", "in this order and with nothing else"},
		{"a number with a zero", "t=3", "t=03", "usual form"},
		{"a sign", "t=3", "t=+3", "whole number at t="},
		{"no salt", "c29tZXNhbHQ", "", "salt"},
		{"a short salt", "c29tZXNhbHQ", "c29tZQ", "8 to 64 bytes"},
		{"a padded salt", "c29tZXNhbHQ", "c29tZXNhbHQ=", "salt"},
		{"loose bits in the salt", "c29tZXNhbHQ", "c29tZXNhbHR", "salt"},
		{"a short sum", "CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc", "CTFhFdXPJO1a", "16 to 64 bytes"},
		{"a part too many", "GRPPc", "GRPPc$", "form"},
		{"a line end within", "c29tZXNhbHQ", "c29t\nZXNhbHQ", "usual form"},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(good, c.old, c.new, 1)
			require.NotEqual(t, good, text)
			_, err := parseHash(text)
			assert.ErrorContains(t, err, c.want)
		})
	}
}

// What is read is written back alike and is within the limits.
func FuzzParseHash(f *testing.F) {
	for _, seed := range []string{anaHash(), "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc",
		"$argon2id$v=19$m=0,t=0,p=0$$", "$$$$$", "", "hunter22", "$argon2id$v=19$m=65536,t=03,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5Q"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		h, err := parseHash(text)
		if err != nil {
			return
		}
		if h.String() != text {
			t.Errorf("%q is written back as %q", text, h)
		}
		if err := h.check(); err != nil {
			t.Errorf("%q: %v", text, err)
		}
		if len(h.salt) < leastSalt || len(h.salt) > mostSalt || len(h.sum) < leastSum || len(h.sum) > mostSum {
			t.Errorf("%q: salt of %d bytes, sum of %d", text, len(h.salt), len(h.sum))
		}
	})
}
