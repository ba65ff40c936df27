package proportion

import (
	"math"

	"counterpour/flavor"
	"counterpour/flavor/makeup"
)

// Usual is what drinks of a draft's make-up have of each task that the draft has: the middles of
// the logarithms, and how they stray, each and together. Whoever pours a larger drink pours more
// of all; what strays by itself is what somebody poured wrong. It is read-only once learnt and safe
// for concurrent use.
type Usual struct {
	tasks  [numTasks]task // of the draft, but for the whole
	n      int            // of them
	known  [numTasks]float64
	middle [numTasks]float64
	strays square // covariance
}

// square is a matrix of which the first rows and columns are used.
type square [numTasks][numTasks]float64

// How drinks stray of which nothing is known, as logarithms: in size, and each task beside that; that
// counts for usualDrinks drinks. A middle of few drinks is the less sure. Chosen by the trial.
const (
	usualSize   = 0.3
	usualStray  = 0.2
	usualDrinks = 0.1
	fewDrinks   = 0.05
	anySize     = 0.3 // however alike in size the drinks are: half a drink is as balanced as a whole one
	leastSay    = 1e-4
)

// Learn returns what drinks have of each task that the draft has; says is how much each of
// them counts, 0 to 1.
func Learn(draft *Tasks, drinks []Tasks, says []float64) Usual {
	var u Usual
	for t := range taskWhole {
		if draft.sure[t] > 0 {
			u.tasks[u.n] = t
			u.n++
		}
	}
	u.findMiddle(drinks, says)
	u.findStrays(drinks, says)
	return u
}

func (u *Usual) findMiddle(drinks []Tasks, says []float64) {
	for i, say := range says {
		if say < leastSay {
			continue
		}
		o := &drinks[i]
		for k, t := range u.tasks[:u.n] {
			w := say * o.sure[t]
			u.known[k] += w
			u.middle[k] += w * o.logs[t]
		}
	}
	n := 0
	for k := range u.n {
		if known := u.known[k]; known >= leastSay { // of the others nothing is known
			u.tasks[n], u.known[n], u.middle[n] = u.tasks[k], known, u.middle[k]/known
			n++
		}
	}
	u.n = n
}

// findStrays adds up how drinks stray from the middle. What a drink lacks strays as nothing does;
// each task is held to the drinks that have it, which leaves the matrix positive definite.
func (u *Usual) findStrays(drinks []Tasks, says []float64) {
	for k := range u.n {
		for l := range k + 1 {
			u.strays[k][l] = usualDrinks * usualSize * usualSize
		}
		u.strays[k][k] += usualDrinks * usualStray * usualStray
	}
	var away [numTasks]float64
	for i, say := range says {
		if say < leastSay {
			continue
		}
		o := &drinks[i]
		for k, t := range u.tasks[:u.n] {
			away[k] = math.Sqrt(o.sure[t]) * (o.logs[t] - u.middle[k])
			for l := range k + 1 {
				u.strays[k][l] += say * away[k] * away[l]
			}
		}
	}
	for k := range u.n {
		for l := range k {
			u.strays[k][l] = u.strays[k][l]/math.Sqrt((usualDrinks+u.known[k])*(usualDrinks+u.known[l])) + anySize*anySize
		}
		u.strays[k][k] = u.strays[k][k]*(1+fewDrinks/u.known[k])/(usualDrinks+u.known[k]) + anySize*anySize
	}
}

// leastSure is how surely a task is there of which hardly anything is known. What is there half surely
// strays twice as far, as a square.
const leastSure = 1e-3

// A drink is out of balance from where one task strays so far from what the others let expect, in squared
// widths, or all of them together. Chosen by the trial.
const oneEdge, allEdge = 9.0, 13.0

// slips is how far each task of a drink is from what all the others let expect: what one tells of
// whom nobody poured otherwise.
type slips struct {
	squared [numTasks]float64 // in widths, of what there is too much of times how surely it is there
	change  [numTasks]float64 // logarithm of the factor that would bring it there
	all     float64           // squared distance of all tasks together, in widths
}

// slips works out how far a drink is from what is usual. With the inverse P of the covariance, task
// k is (P·away)ₖ ÷ Pₖₖ from what the others let expect, with a variance of 1 ÷ Pₖₖ.
func (u *Usual) slips(d *Tasks) (out slips) {
	root, ok := u.rootFor(d)
	if !ok {
		return out
	}
	var away [numTasks]float64
	for k, t := range u.tasks[:u.n] {
		if d.sure[t] > 0 {
			if away[k] = d.logs[t] - u.middle[k]; away[k] < 0 {
				away[k] *= d.sure[t] // what there is a splash of may be no more than that
			}
		}
	}
	root.invert(u.n)
	var white [numTasks]float64
	for k := range u.n {
		for l := range k + 1 {
			white[k] += root[k][l] * away[l]
		}
		out.all += white[k] * white[k]
	}
	for k, t := range u.tasks[:u.n] {
		var pull, precision float64
		for l := k; l < u.n; l++ {
			pull += root[l][k] * white[l]
			precision += root[l][k] * root[l][k]
		}
		out.squared[k], out.change[k] = pull*pull/precision, -pull/precision
		if pull > 0 {
			out.squared[k] *= d.sure[t]
		}
	}
	return out
}

// rootFor returns the Cholesky root of the covariance, with what is less sure of a drink's tasks.
func (u *Usual) rootFor(d *Tasks) (root square, ok bool) {
	for k, t := range u.tasks[:u.n] {
		for l := range k + 1 {
			x := u.strays[k][l]
			if l == k {
				x /= max(d.sure[t], leastSure)
			}
			for i := range l {
				x -= root[k][i] * root[l][i]
			}
			switch {
			case l < k:
				root[k][l] = x / root[l][l]
			case x <= 0:
				return root, false
			default:
				root[k][k] = math.Sqrt(x)
			}
		}
	}
	return root, u.n > 1
}

// invert inverts a lower triangle of n rows in place.
func (s *square) invert(n int) {
	for k := range n {
		s[k][k] = 1 / s[k][k]
		for l := range k {
			x := 0.0
			for i := l; i < k; i++ {
				x -= s[k][i] * s[i][l]
			}
			s[k][l] = x * s[k][k]
		}
	}
}

// Edges returns how far out a drink is by its proportions: by the task that strays farthest from
// what the others let expect, and by all together. It is 0 if all are as usual, 1 at the edge of good
// drinks.
func (u *Usual) Edges(d *Tasks) float64 {
	s := u.slips(d)
	one := 0.0
	for _, x := range s.squared[:u.n] {
		one = max(one, x)
	}
	return Together(one/oneEdge, s.all/allEdge)
}

// Together returns how far out a drink is by two views of its proportions: they are hardly added
// up, by the sixth root of the sum of their sixth powers.
func Together(x, y float64) float64 {
	if x <= 0 || y <= 0 {
		return max(x, y)
	}
	return math.Pow(math.Pow(x, 6)+math.Pow(y, 6), 1.0/6)
}

// Slip finds the task that, had it alone gone wrong, explains best why a drink with such parts, in
// mL a pour, is as uneven as it is. It returns the largest ingredient that does this task, and
// the logarithm of the factor that would bring it back, negative if there is too much. The
// ingredient is nil if no task explains anything.
func (u *Usual) Slip(parts []makeup.Part, ml []float64) (by *flavor.Profile, change float64) {
	d := TasksOf(parts, ml)
	s, farthest := u.slips(&d), 0.0
	for k, t := range u.tasks[:u.n] {
		if s.squared[k] <= farthest {
			continue
		}
		if does := largestOf(t, parts, ml); does != nil {
			farthest, by, change = s.squared[k], does, s.change[k]
		}
	}
	return by, change
}

// far returns how far a drink has more of a task than is usual in mL, in widths; below 0
// if it has less.
func (u *Usual) far(d *Tasks, t task) float64 {
	for k, own := range u.tasks[:u.n] {
		if own == t {
			return (d.logs[t] - u.middle[k]) / math.Sqrt(u.strays[k][k])
		}
	}
	return 0
}
