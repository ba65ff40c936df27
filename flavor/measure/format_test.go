package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
)

func TestFormatAmount(t *testing.T) {
	for _, c := range []struct {
		amount float64
		unit   flavor.Unit
		want   string
	}{
		{0.75, flavor.Ounce, "¾ oz"},
		{0.75 + 1e-9, flavor.Ounce, "¾ oz"},
		{1.5, flavor.Ounce, "1½ oz"},
		{0.125, flavor.Ounce, "⅛ oz"},
		{1.0 / 3, flavor.Ounce, "⅓ oz"},
		{0.33, flavor.Ounce, "0.33 oz"},
		{2, flavor.Ounce, "2 oz"},
		{1.9999999, flavor.Ounce, "2 oz"},
		{2.015, flavor.Ounce, "2.02 oz"},
		{22.5, flavor.Millilitre, "22.5 ml"},
		{0.5, flavor.Millilitre, "0.5 ml"},
		{2.25, flavor.Centilitre, "2.25 cl"},
		{1, flavor.Dash, "1 dash"},
		{1.00000001, flavor.Dash, "1 dash"},
		{2, flavor.Dash, "2 dashes"},
		{0.5, flavor.Barspoon, "½ barspoon"},
		{1.5, flavor.Barspoon, "1½ barspoons"},
		{6, flavor.Leaf, "6 leaves"},
		{1, flavor.Top, "top"},
		{2, flavor.PartUnit, "2 parts"},
		{4.2, flavor.Gram, "4.2 g"},
		{0.00123, flavor.Millilitre, "0.0012 ml"},
		{2, "", "2"},
		{2, "bucket", "2 bucket"},
	} {
		assert.Equal(t, c.want, FormatAmount(c.amount, c.unit))
	}
	assert.NotPanics(t, func() {
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e300} {
			FormatAmount(v, flavor.Ounce)
		}
	})
}
