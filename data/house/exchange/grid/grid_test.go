package grid_test

import (
	"encoding/csv"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house/exchange/grid"
)

// Rows are numbered as a spreadsheet does, and a quotation mark that is never closed spoils its
// own row alone.
func TestRowsAreNumbered(t *testing.T) {
	r := grid.NewReader([]byte("name,size\n\nHawse,700 ml\nbad \"quote,1\n\"two\nlines\",2\nSnub,1 L"), ',')
	var numbers []int
	var bad []string
	for {
		row, err := r.Next()
		if err == io.EOF {
			break
		}
		var fault *csv.ParseError
		if err != nil {
			require.ErrorAs(t, err, &fault)
			bad = append(bad, row.Raw)
			continue
		}
		numbers = append(numbers, row.Number)
	}
	assert.Equal(t, []int{1, 3, 5, 6}, numbers[:4])
	assert.Equal(t, []string{`bad "quote,1`}, bad)
}

// A guarded cell begins no formula, and reads back as it was.
func TestGuardAndBack(t *testing.T) {
	for cell, want := range map[string]string{"gin": "gin", "=1+1": "'=1+1", " +x": "' +x", "-5": "-5", "a;-5": "a;'-5", "'=1": "''=1", "＝1": "'＝1"} {
		assert.Equal(t, want, grid.Guard(cell), cell)
	}
	rapid.Check(t, func(t *rapid.T) {
		cell := rapid.StringOf(rapid.SampledFrom([]rune("=+-@;'\" a1\t＝"))).Draw(t, "cell")
		assert.Equal(t, cell, grid.Unguard(grid.Guard(cell)))
	})
}

func TestShareOf(t *testing.T) {
	cells := grid.Column([]grid.Row{{Cells: []string{"a", "rum "}}, {Cells: []string{"b"}}, {Cells: []string{"c", " "}}, {Cells: []string{"d", "7"}}}, 1)
	assert.Equal(t, []string{"rum", "7"}, cells)
	assert.InDelta(t, 0.5, grid.ShareOf(cells, grid.HasWords), 1e-9)
	assert.Zero(t, grid.ShareOf(nil, grid.HasWords))
}
