package tasting

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"counterpour/flavor"
	"counterpour/flavor/drill/wording"
)

// A triangle test asks tasters which of three glasses is the odd one, two being
// alike (ISO 4120). Who cannot tell is right one time in three.
const guessing = 1.0 / 3

// TriangleRequest asks for a plan. Either Tasters is given, or it is 0 and the
// least number is sought that has the power wanted.
type TriangleRequest struct {
	Tasters int     // 6 to MaxTriangle, or 0
	Alpha   float64 // chance of calling alike drinks different; 0 means 0.05
	Power   float64 // chance of finding out if Share can tell; 0 means 0.80
	Share   float64 // of people who can tell, that is worth finding out; 0 means 0.50
	Seed    uint64
}

// MaxTriangle is the most tasters of one test.
const MaxTriangle = 1000

// Triangle is a planned test.
type Triangle struct {
	Tasters    int
	Alpha      float64
	Share      float64
	LeastRight int     // right answers from which the drinks count as different
	RealAlpha  float64 // what alpha comes to, answers being whole
	Power      float64 // what power comes to
	Servings   []Serving
}

// Serving is what one taster is handed: three glasses from left to right.
type Serving struct {
	Order string // such as "AAB": A is the drink, B the cover
	Codes [3]int // what is written on the glasses
	Odd   int    // the place of the odd one, 0 to 2; not for the taster
}

// orders are all six ways to serve two of one and one of the other.
var orders = [6]string{"AAB", "ABA", "BAA", "BBA", "BAB", "ABB"}

// PlanTriangle plans a test. Each block of six tasters has each of the six
// orders once, shuffled, so a number of tasters that six divides is balanced in
// full. The power of a binomial test rises in teeth; where the number of tasters
// is sought, it is the least that has it. It fails with a fault if the request
// is out of range or if no number up to MaxTriangle has the power.
func PlanTriangle(r TriangleRequest) (*Triangle, error) {
	if err := r.check(); err != nil {
		return nil, err
	}
	t := &Triangle{Tasters: r.Tasters, Alpha: r.Alpha, Share: r.Share}
	if r.Tasters == 0 {
		for n := leastTriangle; n <= MaxTriangle; n++ {
			if powerOfTriangle(n, LeastRight(n, r.Alpha), r.Share) >= r.Power {
				t.Tasters = n
				break
			}
		}
		if t.Tasters == 0 {
			return nil, flavor.Invalid("share", r.Share, "no test with up to %d tasters has a power of %v if a share of %v can tell; ask for less power or a larger share",
				MaxTriangle, r.Power, r.Share)
		}
	}
	t.LeastRight = LeastRight(t.Tasters, r.Alpha)
	t.RealAlpha = powerOfTriangle(t.Tasters, t.LeastRight, 0)
	t.Power = powerOfTriangle(t.Tasters, t.LeastRight, r.Share)
	t.Servings = servings(t.Tasters, rand.New(rand.NewPCG(r.Seed, triangleStream)))
	return t, nil
}

// leastTriangle is the fewest tasters with whom a test can say anything at the
// usual alpha: three right out of three would be enough, but no one is left to
// be wrong.
const leastTriangle = 6

// What may be asked for as the chance of a false alarm and as the power.
const (
	LeastAlpha, MostAlpha = 0.001, 0.2
	LeastPower, MostPower = 0.5, 0.99
)

func (r *TriangleRequest) check() error {
	if r.Alpha == 0 {
		r.Alpha = 0.05
	}
	if r.Power == 0 {
		r.Power = 0.80
	}
	if r.Share == 0 {
		r.Share = 0.50
	}
	switch {
	case r.Tasters != 0 && (r.Tasters < leastTriangle || r.Tasters > MaxTriangle):
		return flavor.Invalid("tasters", r.Tasters, "%d tasters; use %d to %d, or 0 to have the number worked out", r.Tasters, leastTriangle, MaxTriangle)
	case !(r.Alpha >= LeastAlpha && r.Alpha <= MostAlpha):
		return flavor.Invalid("alpha", r.Alpha, "an alpha of %v; use %v to %v", r.Alpha, LeastAlpha, MostAlpha)
	case !(r.Power >= LeastPower && r.Power <= MostPower):
		return flavor.Invalid("power", r.Power, "a power of %v; use %v to %v", r.Power, LeastPower, MostPower)
	case !(r.Share > 0 && r.Share <= 1):
		return flavor.Invalid("share", r.Share, "a share of %v who can tell; use more than 0 and up to 1", r.Share)
	}
	return nil
}

// Sober reports whether a tasting with so much ethanol for each taster, in g, counts as free of
// alcohol.
func Sober(ethanolG float64) bool { return ethanolG < wording.HardlyAlcohol }

// LeastRight returns the fewest right answers of n at which guessing alone would
// do as well with a probability of at most alpha: the binomial of ISO 4120. It is
// n + 1 if not even n right are enough.
func LeastRight(n int, alpha float64) int {
	for x := range n + 1 {
		if tail(x, n, guessing) <= alpha {
			return x
		}
	}
	return n + 1
}

// powerOfTriangle returns the probability of at least so many right answers of n
// when a share of the tasters can tell and the others guess: p = share +
// (1 − share)/3. With no share it is the alpha that the test really has.
func powerOfTriangle(n, leastRight int, share float64) float64 {
	return tail(leastRight, n, share+(1-share)*guessing)
}

// tail returns the probability of x or more successes of n.
func tail(x, n int, p float64) float64 {
	switch {
	case x <= 0:
		return 1
	case x > n:
		return 0
	case p >= 1:
		return 1
	}
	// P(X ≥ x) is the regularised incomplete beta function, as is the
	// distribution of a Beta variable with x and n − x + 1.
	return distuv.Beta{Alpha: float64(x), Beta: float64(n - x + 1)}.CDF(p)
}

func servings(n int, rng *rand.Rand) []Serving {
	var out []Serving
	for len(out) < n {
		for _, i := range rng.Perm(len(orders)) {
			if len(out) == n {
				break
			}
			s := Serving{Order: orders[i], Odd: OddOf(orders[i])}
			copy(s.Codes[:], codes(3, rng))
			out = append(out, s)
		}
	}
	return out
}

// OddOf returns the place, 0 to 2, of the glass that the other two are not like,
// and −1 for what is no order of a triangle test.
func OddOf(order string) int {
	if !slices.Contains(orders[:], order) {
		return -1
	}
	for i := range order {
		if order[i] != order[(i+1)%3] && order[i] != order[(i+2)%3] {
			return i
		}
	}
	return -1
}

// Triangulation is what a test found.
type Triangulation struct {
	Answers   int
	Right     int
	P         float64 // chance of so many right answers by guessing alone
	Different bool    // P is at most alpha
	// Share who can tell, and an interval for it at 1 − alpha: that of the share
	// of right answers by Clopper and Pearson (Biometrika 26:404, 1934), taken
	// through (p − 1/3)/(2/3), nothing below 0.
	Share, Low, High float64
	Text             string
}

// Judge judges the answers: for each serving the code that the taster called
// odd, 0 for one who has not answered. It fails with a fault if there are not as
// many answers as servings, none at all, or a code that was not in front of the
// taster.
func (t *Triangle) Judge(picked []int) (*Triangulation, error) {
	if len(picked) != len(t.Servings) {
		return nil, flavor.Invalid("answers", len(picked), "%d answers for %d servings; give one each, 0 for none", len(picked), len(t.Servings))
	}
	v := &Triangulation{}
	for i, code := range picked {
		s := &t.Servings[i]
		switch code {
		case 0:
			continue
		case s.Codes[0], s.Codes[1], s.Codes[2]:
			v.Answers++
			if code == s.Codes[s.Odd] {
				v.Right++
			}
		default:
			return nil, flavor.Invalid(fmt.Sprintf("answers[%d]", i), code, "%03d was not before this taster; the codes were %v", code, s.Codes)
		}
	}
	if v.Answers == 0 {
		return nil, flavor.Invalid("answers", 0, "nobody has answered yet; record at least one answer")
	}
	v.P = tail(v.Right, v.Answers, guessing)
	v.Different = v.P <= t.Alpha
	v.interval(t.Alpha)
	v.Text = wording.Found(v.Right, v.Answers, v.P, v.Different) + wording.CanTell(v.Share, v.Low, v.High, 1-t.Alpha)
	return v, nil
}

// interval fills in the share who can tell and its interval.
func (v *Triangulation) interval(alpha float64) {
	x, n := float64(v.Right), float64(v.Answers)
	low, high := 0.0, 1.0
	if x > 0 {
		low = distuv.Beta{Alpha: x, Beta: n - x + 1}.Quantile(alpha / 2)
	}
	if x < n {
		high = distuv.Beta{Alpha: x + 1, Beta: n - x}.Quantile(1 - alpha/2)
	}
	v.Share, v.Low, v.High = tellers(x/n), tellers(low), tellers(high)
}

// tellers is the share who can tell, given the share of right answers.
func tellers(right float64) float64 { return min(1, max(0, (right-guessing)/(1-guessing))) }
