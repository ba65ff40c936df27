package forgotten

import (
	"math"

	"counterpour/flavor/makeup"
)

// Rests is what is left of each proven drink without its base, or without what is sour.
type Rests struct {
	kin  makeup.Kinships
	size []float64 // logarithms of mL
}

// Rest is what is left of one drink.
type Rest struct {
	kin  makeup.Kinship
	size float64 // logarithm of mL
}

// Add takes in what is left of the next proven drink.
func (r *Rests) Add(rest *Rest) {
	r.kin.Add(rest.kin)
	r.size = append(r.size, rest.size)
}

// RestOf returns what a drink is made of without the parts that are left out, and how large
// that is: without any other part it is of no size.
func RestOf(parts []makeup.Part, ml []float64, out func(*makeup.Part) bool) Rest {
	var few [8]makeup.Part // no drink of usual length needs more room
	kept := few[:0]
	var size float64
	for i := range parts {
		if !out(&parts[i]) {
			kept = append(kept, parts[i])
			size += parts[i].Amount(ml)
		}
	}
	return Rest{makeup.KinshipOf(kept, ml), math.Log(max(size, makeup.LeastML))}
}

// How the rests are weighed: by make-up, by how nearly they are as large, as a
// logarithm, and by whether they are made and served in the same way. A drink that is
// many times as large may be a batch. Chosen by the trial.
const (
	restSpread    = 0.25
	otherSize     = 0.1
	otherServing  = 0.4
	clearlyOther  = 0.03  // of a stirred drink, where a shaken draft is asked for its juice: to shake is to mean it cloudy
	NearestToTell = 1e-12 // in all, below which no drink is near enough to tell
)

// Weights returns how near the draft's rest is to each proven drink's.
func (d *Draft) Weights(of *Rests, out func(*makeup.Part) bool) []float64 {
	return d.weights(of, out, otherServing)
}

// weights is Weights where the method tells more: other is what is left of that for a drink
// that is mixed thoroughly if the draft is not, or is not if it is.
func (d *Draft) weights(of *Rests, out func(*makeup.Part) bool, other float64) []float64 {
	own := RestOf(d.parts, d.ml, out)
	d.rest = own.kin
	mixed := mixes(d.spec.Method)
	w := of.kin.Cosines(&d.rest, d.room(of.kin.Drinks()))
	makeup.Likenesses(w, d.width, w)
	sizes := d.room(len(w)) // how near each is in size
	for i, other := range of.size {
		size := (own.size - other) / restSpread
		sizes[i] = size * size / 2
	}
	makeup.Falloffs(sizes)
	for i, x := range w {
		w[i] = x * x * (otherSize + (1-otherSize)*sizes[i])
		if d.book.Served.Of[i] != d.served {
			w[i] *= otherServing
		}
		if d.book.mixed[i] != mixed {
			w[i] *= other
		}
	}
	return w
}
