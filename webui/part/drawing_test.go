package part_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/weigh"
	"counterpour/webui/part"
)

// What the strips of one family cannot show is said: that the score rests on another.
func TestAlsoCounted(t *testing.T) {
	fits := func(own, other float64) []weigh.Fit {
		return []weigh.Fit{{Name: "Sour", Probability: 0.6, Score: own}, {Name: "Daisy", Probability: 0.4, Score: other}}
	}
	for _, c := range []struct {
		name  string
		score float64
		fits  []weigh.Fit
		want  string
	}{
		{"both call it balanced", 92, fits(95, 88), ""},
		{"neither does", 40, fits(38, 43), ""},
		{"one family alone", 60, fits(60, 0)[:1], ""},
		{"the other lifts it", 77, fits(65, 94), "In Sour alone its amounts score 65. Daisy, 40\u00a0% likely, counts too: there they score 94."},
		{"the other pulls it down", 66, fits(80, 45), "In Sour alone its amounts score 80. Daisy, 40\u00a0% likely, counts too: there they score 45."},
	} {
		assert.Equal(t, c.want, part.AlsoCounted(c.score, c.fits), c.name)
	}
}
