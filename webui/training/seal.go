package training

import (
	"crypto/aes"
	"crypto/cipher"
	"crypto/rand"
	"encoding/base64"

	"counterpour/flavor/drill"
)

// sealer turns the request of a round into a word that tells nothing of it, and
// back. A round is made from its request alone, so that whoever could read it
// would read the answer. The key is drawn anew whenever the program starts.
type sealer struct{ aead cipher.AEAD }

func newSealer() (sealer, error) {
	key := make([]byte, 32)
	rand.Read(key) // never fails
	block, err := aes.NewCipher(key)
	if err != nil {
		return sealer{}, err
	}
	aead, err := cipher.NewGCMWithRandomNonce(block)
	return sealer{aead}, err
}

var asText = base64.RawURLEncoding

// seal returns the word for a request.
func (s sealer) seal(r *drill.RoundRequest) string {
	return asText.EncodeToString(s.aead.Seal(nil, nil, r.Bytes(), nil))
}

// open returns the request of a word. It is false for a word that this sealer
// did not make.
func (s sealer) open(word string) (drill.RoundRequest, bool) {
	raw, err := asText.DecodeString(word)
	if err != nil {
		return drill.RoundRequest{}, false
	}
	b, err := s.aead.Open(nil, nil, raw, nil)
	if err != nil {
		return drill.RoundRequest{}, false
	}
	return drill.RequestOf(b)
}
