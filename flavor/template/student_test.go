package template_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat/distuv"
)

// Upper critical values as NIST/SEMATECH, e-Handbook of Statistical Methods,
// sections 1.3.6.7.2 (Student t) and 1.3.6.7.3 (F), tabulates them to three
// decimals (from memory).
const tableDigits = 6e-4

func TestDistributionsAgreeWithTheTables(t *testing.T) {
	for _, c := range []struct{ share, d1, d2, want float64 }{
		{0.95, 1, 10, 4.965}, {0.95, 2, 10, 4.103}, {0.95, 3, 10, 3.708}, {0.95, 3, 20, 3.098}, {0.95, 1, 20, 4.351}, {0.95, 2, 20, 3.493},
		{0.90, 1, 20, 2.975}, {0.90, 2, 10, 2.924}, {0.90, 2, 20, 2.589}, {0.90, 3, 20, 2.380},
		{0.90, 2, 30, 2.489}, {0.90, 4, 30, 2.142},
	} {
		f := distuv.F{D1: c.d1, D2: c.d2}
		assert.InDelta(t, c.want, f.Quantile(c.share), tableDigits, "F %v; %v, %v", c.share, c.d1, c.d2)
		assert.InDelta(t, 1-c.share, f.Survival(c.want), tableDigits, "beyond F %v; %v, %v", c.share, c.d1, c.d2)
	}
	for _, c := range []struct{ share, nu, want float64 }{
		{0.95, 10, 1.812}, {0.975, 10, 2.228}, {0.95, 20, 1.725}, {0.975, 20, 2.086}, {0.975, 30, 2.042},
	} {
		d := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: c.nu}
		assert.InDelta(t, c.want, d.Quantile(c.share), tableDigits, "t %v; %v", c.share, c.nu)
	}
}
