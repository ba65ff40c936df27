package meaning

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/drafttest"
)

func TestResolvePour(t *testing.T) {
	b := drafttest.Bar()
	p, err := ResolvePour(2, "Ounces", "gin", "pours[0]", b)
	require.NoError(t, err)
	assert.InDelta(t, 2*measure.OunceML, p.ML, 1e-9)
	assert.Equal(t, "gin", p.Match.Asked)
	p, err = ResolvePour(1, "", "lime", "pours[0]", b)
	require.NoError(t, err)
	assert.Equal(t, flavor.Piece, p.Unit)

	for _, c := range []struct {
		amount     float64
		unit, name string
		wants      []drafttest.Want
	}{
		{2, "", "gin", []drafttest.Want{{"pours[1].unit", "gin", "oz"}}},
		{2, "ouncs", "gin", []drafttest.Want{{"pours[1].unit", "ouncs", "oz"}}},
		{2, "oz", "unicorn", []drafttest.Want{{"pours[1].ingredient", "unicorn", ""}}},
		{2, "oz", "mint", []drafttest.Want{{"pours[1].unit", "oz", "leaf"}}},
		{0, "oz", "gin", []drafttest.Want{{"pours[1].amount", "0", ""}}},
		{math.NaN(), "oz", "gin", []drafttest.Want{{"pours[1].amount", "NaN", ""}}},
		{math.Inf(1), "oz", "gin", []drafttest.Want{{"pours[1].amount", "+Inf", ""}}},
		{-1, "bucket", " ", []drafttest.Want{{"pours[1].unit", "bucket", ""}, {"pours[1].amount", "-1", ""}, {"pours[1].ingredient", " ", ""}}},
		{1, "oz", strings.Repeat("g", draft.MaxLine+1), []drafttest.Want{{"pours[1].ingredient", strings.Repeat("g", 40), ""}}},
	} {
		_, err := ResolvePour(c.amount, c.unit, c.name, "pours[1]", b)
		assert.Empty(t, drafttest.Departs(err, c.wants), c.name)
	}
}

func TestResolvePourPassesOnFailures(t *testing.T) {
	_, err := ResolvePour(1, "oz", "broken", "pours[0]", drafttest.Bar())
	assert.ErrorContains(t, err, "the index is closed")
}
