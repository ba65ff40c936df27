package data

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
)

// The kernel of all materials is symmetric, has ones on its diagonal, no
// likeness below 0 or above 1, and no negative eigenvalue, so that it is an inner
// product and distances obey the triangle inequality.
func TestKernelIsPositiveSemidefinite(t *testing.T) {
	const tolerance = 1e-9
	c, err := Embedded()
	require.NoError(t, err)
	names := c.Space().Materials()
	table := c.Space().MaterialTable(names)
	k := mat.NewSymDense(len(names), nil)
	for i := range table {
		require.InDelta(t, 1, table[i][i], tolerance)
		for j := range i + 1 {
			require.InDelta(t, table[i][j], table[j][i], 0)
			require.GreaterOrEqual(t, table[i][j], 0.0)
			require.LessOrEqual(t, table[i][j], 1+tolerance)
			k.SetSym(i, j, table[i][j])
		}
	}
	var eigen mat.EigenSym
	require.True(t, eigen.Factorize(k, false))
	assert.GreaterOrEqual(t, eigen.Values(nil)[0], -tolerance)
}

// No two materials are the same to the nose, and backgrounds that all carry do
// not make everything alike.
func TestMaterialsAreToldApart(t *testing.T) {
	c, err := Embedded()
	require.NoError(t, err)
	names := c.Space().Materials()
	table := c.Space().MaterialTable(names)
	var sum float64
	pairs := 0
	for i := range table {
		for j := range i {
			assert.Less(t, table[i][j], 0.98, "%s and %s", names[i], names[j])
			sum += table[i][j]
			pairs++
		}
	}
	assert.Less(t, sum/float64(pairs), 0.35, "two materials at random have little in common")
}
