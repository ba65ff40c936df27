package training

import (
	"context"
	"crypto/aes"
	"crypto/cipher"
	"crypto/rand"
	"encoding/base64"
	"errors"
	"fmt"
	"time"

	"counterpour/api/service/coaching"
	"counterpour/data/house"
	"counterpour/flavor/drill"
)

// sealer turns the request of a round into a word that tells nothing of it, and
// back. A round is made from its request alone, so that whoever could read it
// would read the answer. All servers of a house have one key, so that any of them
// grades what another handed out.
type sealer struct{ aead cipher.AEAD }

// The key of a house, and how long it is in use: longer than a round that anybody
// comes back to.
const (
	keyKind  = "key"
	keyID    = "training-rounds"
	keyBytes = 32
	keyLife  = 365 * 24 * time.Hour
)

// newSealer takes the key that the servers of a house have agreed on, or brings one.
// A house that is only read gets one for as long as the program runs.
func newSealer(ctx context.Context, commons house.Commons, now time.Time) (sealer, error) {
	raw := make([]byte, keyBytes)
	rand.Read(raw) // never fails
	agreed, err := commons.Agree(ctx, now, house.Ephemeral{Kind: keyKind, ID: keyID, Body: asText.EncodeToString(raw), Until: now.Add(keyLife)})
	switch {
	case errors.Is(err, house.ErrReadOnly), errors.Is(err, house.ErrNewer):
	case err != nil:
		return sealer{}, err
	default:
		if raw, err = asText.DecodeString(agreed.Body); err != nil || len(raw) != keyBytes {
			return sealer{}, fmt.Errorf("training: the key of rounds that the house keeps is none: %d bytes", len(raw))
		}
	}
	block, err := aes.NewCipher(raw)
	if err != nil {
		return sealer{}, err
	}
	aead, err := cipher.NewGCMWithRandomNonce(block)
	return sealer{aead}, err
}

var asText = base64.RawURLEncoding

// seal returns the word for a round.
func (s sealer) seal(r *drill.Round) string {
	return asText.EncodeToString(s.aead.Seal(nil, nil, append(coaching.Looks(r), r.Request.Bytes()...), nil))
}

// open returns the request of a word, and what its round looked like. It is false
// for a word that no sealer with this key made.
func (s sealer) open(word string) (r drill.RoundRequest, looked []byte, ok bool) {
	raw, err := asText.DecodeString(word)
	if err != nil {
		return r, nil, false
	}
	b, err := s.aead.Open(nil, nil, raw, nil)
	if err != nil || len(b) < coaching.LooksBytes {
		return r, nil, false
	}
	r, ok = drill.RequestOf(b[coaching.LooksBytes:])
	return r, b[:coaching.LooksBytes], ok
}
