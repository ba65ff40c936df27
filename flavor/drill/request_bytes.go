package drill

import (
	"encoding/binary"
	"math"
	"slices"

	"counterpour/flavor/ratio"
)

// A request as bytes, always as many, so that their number tells nothing.
const (
	kindAt = iota
	axisAt
	sizeAt
	seedAt       = sizeAt + 8
	avoidAt      = seedAt + 8
	requestBytes = avoidAt + 2

	menuBit = 1 << 15 // of what is avoided, beyond all allergens
)

// Bytes returns the request as bytes.
func (r *RoundRequest) Bytes() []byte {
	b := make([]byte, requestBytes)
	b[kindAt], b[axisAt] = byte(slices.Index(Kinds(), r.Kind)), byte(r.Axis)
	binary.BigEndian.PutUint64(b[sizeAt:], math.Float64bits(r.Size))
	binary.BigEndian.PutUint64(b[seedAt:], r.Seed)
	avoid := uint16(r.Avoid)
	if r.Menu {
		avoid |= menuBit
	}
	binary.BigEndian.PutUint16(b[avoidAt:], avoid)
	return b
}

// RequestOf returns the request that was written as bytes; it is false for bytes
// that are none. Those of rounds handed out before allergens could be avoided end before
// them.
func RequestOf(b []byte) (RoundRequest, bool) {
	if len(b) == avoidAt {
		b = append(slices.Clone(b), 0, 0)
	}
	if len(b) != requestBytes || int(b[kindAt]) >= len(Kinds()) || int(b[axisAt]) >= ratio.NumAxes {
		return RoundRequest{}, false
	}
	avoid := binary.BigEndian.Uint16(b[avoidAt:])
	return RoundRequest{Kind: Kinds()[b[kindAt]], Axis: ratio.Axis(b[axisAt]),
		Size: math.Float64frombits(binary.BigEndian.Uint64(b[sizeAt:])), Seed: binary.BigEndian.Uint64(b[seedAt:]),
		Avoid: Avoided(avoid &^ menuBit), Menu: avoid&menuBit != 0}, true
}
