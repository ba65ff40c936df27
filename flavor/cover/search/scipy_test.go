package search

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os/exec"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// leastProblem is a gap and the parts that may fill it, in amounts from zero up.
type leastProblem struct {
	Gap   Row   `json:"gap"`
	Parts []Row `json:"parts"`
}

// leastProblems are problems of one to three parts, drawn with a seed: parts that are
// each somewhat like the gap and like each other, as what may be poured is, and some
// that lead away from it, which are best left out.
func leastProblems(n int) []leastProblem {
	chance := rand.New(rand.NewPCG(1, 2))
	out := make([]leastProblem, n)
	row := func(like *Row, share float64) (r Row) {
		for i := range r {
			r[i] = chance.NormFloat64() + share*like[i]
		}
		return r
	}
	for k := range out {
		out[k].Gap = row(&Row{}, 0)
		for range 1 + k%MaxParts {
			out[k].Parts = append(out[k].Parts, row(&out[k].Gap, 2*chance.Float64()-0.5))
		}
	}
	return out
}

// left is the length of the gap that the best amounts leave, as the bounds of the
// search have it, before what rounding may add is taken off.
func (l *leastProblem) left() float64 {
	p := products{n: len(l.Parts)}
	var h [MaxParts]float64
	for k := range l.Parts {
		p.self[k], h[k] = dot(&l.Parts[k], &l.Parts[k]), dot(&l.Gap, &l.Parts[k])
	}
	if p.n > 1 {
		p.ij = dot(&l.Parts[0], &l.Parts[1])
	}
	if p.n > 2 {
		p.ik, p.jk = dot(&l.Parts[0], &l.Parts[2]), dot(&l.Parts[1], &l.Parts[2])
	}
	return math.Sqrt(max(0, dot(&l.Gap, &l.Gap)-p.explained(&h)))
}

// solved is what one solver of scipy made of the problems.
type solved struct {
	Left    []float64 `json:"left"`
	Seconds float64   `json:"seconds"` // for one
}

// withSciPy solves problems with scipy, where there is one.
func withSciPy(t testing.TB, problems []leastProblem) map[string]solved {
	t.Helper()
	in, err := json.Marshal(problems)
	require.NoError(t, err)
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import scipy.optimize").Run() != nil {
			continue
		}
		cmd := exec.Command(python, "testdata/least.py")
		cmd.Stdin = bytes.NewReader(in)
		out, err := cmd.Output()
		require.NoError(t, err)
		var answer map[string]solved
		require.NoError(t, json.Unmarshal(out, &answer))
		require.Len(t, answer, 2)
		return answer
	}
	t.Skip("there is no scipy here (Debian: python3-scipy)")
	return nil
}

// The closed form of up to three parts leaves of every gap what scipy's solvers of any
// number leave (nnls by Lawson and Hanson, Solving Least Squares Problems, 1974;
// lsq_linear by Stark and Parker's bounded variables, 1995).
func TestTheOptimumOfSciPy(t *testing.T) {
	problems := leastProblems(600)
	for name, s := range withSciPy(t, problems) {
		require.Len(t, s.Left, len(problems), name)
		for k := range problems {
			const tolerance = 1e-9 // of rows whose numbers have unit variance
			assert.InDelta(t, s.Left[k], problems[k].left(), tolerance, "%s, problem %d of %d parts", name, k, len(problems[k].Parts))
		}
	}
}

// BenchmarkAgainstSciPy reports how many times as long each of scipy's solvers takes.
func BenchmarkAgainstSciPy(b *testing.B) {
	problems := leastProblems(600)
	for _, name := range []string{"nnls", "lsq_linear"} {
		b.Run(name, func(b *testing.B) {
			theirs := withSciPy(b, problems)[name].Seconds
			begun, sum := time.Now(), 0.0
			n := 0
			for b.Loop() {
				sum += problems[n%len(problems)].left()
				n++
			}
			ours := time.Since(begun).Seconds() / float64(n)
			require.Positive(b, sum)
			b.ReportMetric(theirs/ours, "ratio")
		})
	}
}
