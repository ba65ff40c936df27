package station

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
)

// A drink is told as a proven one only in its ratio: turned round it is another, and so it is with
// half of what sweetens it, or cold where that is hot.
func TestPouredAsIsInTheRatio(t *testing.T) {
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	ids := []string{"london-dry-gin", "dry-vermouth", "lime-juice", "simple-syrup", "aromatic-bitters"}
	made := func(service flavor.Service, ml ...float64) *flavor.Spec {
		s := &flavor.Spec{Service: service}
		for i, v := range ml {
			p, ok := d.Catalogue.ByID(ids[i])
			require.True(t, ok, ids[i])
			if v > 0 {
				s.Pours = append(s.Pours, flavor.Pour{Profile: p, ML: v, Unit: flavor.Millilitre})
			}
		}
		return s
	}
	for _, c := range []struct {
		what           string
		proven, poured *flavor.Spec
		want           bool
	}{
		{"the same", made(flavor.Up, 30, 60), made(flavor.Up, 30, 60), true},
		{"a quarter more of one", made(flavor.Up, 30, 60), made(flavor.Up, 37, 60), true},
		{"turned round", made(flavor.Up, 30, 60), made(flavor.Up, 60, 30), false},
		{"turned round by little", made(flavor.Up, 45, 37), made(flavor.Up, 37, 45), false},
		{"half the syrup", made(flavor.Up, 60, 0, 30, 30), made(flavor.Up, 60, 0, 30, 15), false},
		{"cold", made(flavor.Hot, 60, 0, 30), made(flavor.Rocks, 60, 0, 30), false},
		{"a dash more of two", made(flavor.Up, 60, 30, 0, 0, 1.6), made(flavor.Up, 60, 30, 0, 0, 2.4), true},
		{"three times the dashes", made(flavor.Up, 60, 30, 0, 0, 1.6), made(flavor.Up, 60, 30, 0, 0, 4.8), false},
		{"another class", made(flavor.Up, 60, 30), made(flavor.Up, 60, 0, 30), false},
	} {
		assert.Equal(t, c.want, pouredAs(c.proven, c.poured), c.what)
	}
}
