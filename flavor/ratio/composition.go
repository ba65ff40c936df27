package ratio

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// FloorShare is the share of a drink below which a part can no longer be told
// from none; it is added to every share before the logarithm, so that a part
// that a family has and a drink lacks counts as very far off, not infinitely.
const FloorShare = 0.004

// longFloor is the same for length. The ice lends every drink about three tenths of
// its volume in water, so that a spoon of water in a strong drink is not to be told
// from none.
const longFloor = 0.3

// Floors is the floor of each axis.
var Floors = Equivalents{Strong: FloorShare, Sweet: FloorShare, Sour: FloorShare, Bitter: FloorShare, Long: longFloor}

// Basis is an isometric log-ratio basis for compositions of a fixed number of
// parts: the columns of Helmert contrasts (Egozcue et al. 2003, equation 18).
type Basis struct {
	parts     int
	Contrasts *mat.Dense // parts × (parts−1), orthonormal columns, each summing to zero
}

// NewBasis returns the basis for compositions of parts parts, two or more.
func NewBasis(parts int) (*Basis, error) {
	if parts < 2 {
		return nil, fmt.Errorf("ratio: a composition needs at least 2 parts, not %d", parts)
	}
	v := mat.NewDense(parts, parts-1, nil)
	for j := 1; j < parts; j++ {
		k := float64(j)
		for i := range j {
			v.Set(i, j-1, 1/math.Sqrt(k*(k+1)))
		}
		v.Set(j, j-1, -math.Sqrt(k/(k+1)))
	}
	return &Basis{parts: parts, Contrasts: v}, nil
}

// Coordinates returns the isometric log-ratio coordinates of a composition,
// len(x)−1 of them; scaling x changes nothing. It fails unless every part is
// positive and finite.
func (b *Basis) Coordinates(x []float64) ([]float64, error) {
	if len(x) != b.parts {
		return nil, fmt.Errorf("ratio: composition of %d parts, want %d", len(x), b.parts)
	}
	logs := make([]float64, len(x))
	for i, p := range x {
		if !(p > 0) || math.IsInf(p, 0) {
			return nil, fmt.Errorf("ratio: part %d is %v; log-ratios need positive, finite parts", i, p)
		}
		logs[i] = math.Log(p)
	}
	return b.FromLogs(logs), nil
}

// FromLogs returns the coordinates of a composition whose parts have these natural
// logarithms, as many as the basis has parts.
func (b *Basis) FromLogs(logs []float64) []float64 {
	z := make([]float64, b.parts-1)
	for j := range z {
		for i, l := range logs {
			z[j] += b.Contrasts.At(i, j) * l
		}
	}
	return z
}

// Composition is the inverse of Coordinates, closed to sum to one. It fails
// unless every coordinate is finite.
func (b *Basis) Composition(z []float64) ([]float64, error) {
	if len(z) != b.parts-1 {
		return nil, fmt.Errorf("ratio: %d coordinates, want %d", len(z), b.parts-1)
	}
	for j, v := range z {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Errorf("ratio: coordinate %d is %v; it must be finite", j, v)
		}
	}
	return b.FromCoordinates(z), nil
}

// FromCoordinates is [Basis.Composition] for coordinates that are known to be finite and
// one fewer than the parts.
func (b *Basis) FromCoordinates(z []float64) []float64 {
	x := make([]float64, b.parts)
	for i := range x {
		for j := range z {
			x[i] += b.Contrasts.At(i, j) * z[j]
		}
	}
	Softmax(x) // the exponentials, closed
	return x
}

// AitchisonDistance returns the distance between two compositions of equal
// length, the Euclidean distance of their coordinates in any isometric basis.
func AitchisonDistance(x, y []float64) (float64, error) {
	b, err := NewBasis(len(x))
	if err != nil {
		return 0, err
	}
	zx, err := b.Coordinates(x)
	if err != nil {
		return 0, err
	}
	zy, err := b.Coordinates(y)
	if err != nil {
		return 0, err
	}
	var d float64
	for i := range zx {
		d += (zx[i] - zy[i]) * (zx[i] - zy[i])
	}
	return math.Sqrt(d), nil
}
