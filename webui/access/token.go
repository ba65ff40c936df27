package access

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/base64"
	"encoding/hex"
	"fmt"
	"strings"
)

// Prefixes of a token as it is handed out and as it is in the roster. They let people, and
// scanners for leaked secrets, recognise it.
const (
	tokenMark     = "cpt_"
	tokenBytes    = 32
	tokenInRoster = "token-sha256:"
)

var tokenCode = base64.RawURLEncoding.Strict()

// NewToken makes a token of 256 random bits, and its entry for a roster.
func NewToken() (token, inRoster string) {
	raw := make([]byte, tokenBytes)
	rand.Read(raw) // never fails
	token = tokenMark + tokenCode.EncodeToString(raw)
	sum := sha256.Sum256([]byte(token))
	return token, tokenInRoster + hex.EncodeToString(sum[:])
}

// isToken reports whether a text has the form of a token. No other text is looked up: if
// the roster contained the hash of a short word by mistake, guessing that word must not
// give access.
func isToken(text string) bool {
	code, ok := strings.CutPrefix(text, tokenMark)
	if !ok {
		return false
	}
	raw, err := tokenCode.DecodeString(code)
	return err == nil && len(raw) == tokenBytes && tokenCode.EncodeToString(raw) == code
}

// bearer is a script in the roster.
type bearer struct {
	Person
	sum [sha256.Size]byte
}

// parseTokenSum reads a token's hash, the part after [tokenInRoster].
func parseTokenSum(text string) (sum [sha256.Size]byte, err error) {
	raw, err := hex.DecodeString(text)
	if err != nil || len(raw) != len(sum) || hex.EncodeToString(raw) != text {
		return sum, fmt.Errorf("what follows %s is not %d hexadecimal digits in small letters", tokenInRoster, 2*len(sum))
	}
	return [sha256.Size]byte(raw), nil
}

// byToken returns the script with a token. It compares with all, so that the time does
// not depend on which one matches.
func (b *Roster) byToken(token string) (Person, bool) {
	sum := sha256.Sum256([]byte(token))
	at := -1
	for i := range b.bearers {
		at = subtle.ConstantTimeSelect(subtle.ConstantTimeCompare(b.bearers[i].sum[:], sum[:]), i, at)
	}
	if at < 0 || !isToken(token) {
		return Person{}, false
	}
	return b.bearers[at].Person, true
}
