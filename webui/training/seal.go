package training

import (
	"crypto/aes"
	"crypto/cipher"
	"crypto/rand"
	"encoding/base64"
	"encoding/binary"
	"math"
	"slices"

	"counterpour/flavor/drill"
	"counterpour/flavor/template"
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

// The request as bytes, always as many, so that their number tells nothing.
const (
	kindAt = iota
	axisAt
	sizeAt
	seedAt       = sizeAt + 8
	requestBytes = seedAt + 8
)

func bytesOf(r *drill.RoundRequest) []byte {
	b := make([]byte, requestBytes)
	b[kindAt], b[axisAt] = byte(slices.Index(drill.Kinds(), r.Kind)), byte(r.Axis)
	binary.BigEndian.PutUint64(b[sizeAt:], math.Float64bits(r.Size))
	binary.BigEndian.PutUint64(b[seedAt:], r.Seed)
	return b
}

var asText = base64.RawURLEncoding

// seal returns the word for a request.
func (s sealer) seal(r *drill.RoundRequest) string {
	return asText.EncodeToString(s.aead.Seal(nil, nil, bytesOf(r), nil))
}

// open returns the request of a word. It is false for a word that this sealer
// did not make.
func (s sealer) open(word string) (drill.RoundRequest, bool) {
	raw, err := asText.DecodeString(word)
	if err != nil {
		return drill.RoundRequest{}, false
	}
	b, err := s.aead.Open(nil, nil, raw, nil)
	if err != nil || len(b) != requestBytes || int(b[kindAt]) >= len(drill.Kinds()) {
		return drill.RoundRequest{}, false
	}
	return drill.RoundRequest{Kind: drill.Kinds()[b[kindAt]], Axis: template.Axis(b[axisAt]),
		Size: math.Float64frombits(binary.BigEndian.Uint64(b[sizeAt:])), Seed: binary.BigEndian.Uint64(b[seedAt:])}, true
}
