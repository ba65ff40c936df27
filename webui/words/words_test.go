package words

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor/mix"
	"counterpour/flavor/sense"
	"counterpour/flavor/weigh"
)

func TestFigures(t *testing.T) {
	assert.Equal(t, "−6", Figure(-6.4, 0))
	assert.Equal(t, "0", Figure(-0.4, 0))
	assert.Equal(t, "0.9", Figure(0.94, 1))
	assert.Equal(t, "+1", Signed(1.2, 0))
	assert.Equal(t, "0", Signed(0.2, 0))
	assert.Equal(t, "−2", Signed(-2.2, 0))
	assert.Equal(t, "69", Points(69.9))
	assert.Equal(t, "± 0.5", PlusMinus(0.52, 1))
	assert.Equal(t, "± under 0.1", PlusMinus(0.01, 1))
	assert.Empty(t, PlusMinus(0, 1))
	assert.Empty(t, PlusMinus(math.NaN(), 1))
	assert.Empty(t, PlusMinus(math.Inf(1), 1))
	assert.Equal(t, "8.1", Millilitres(8.12))
	assert.Equal(t, "10", Millilitres(9.97))
}

func TestSentences(t *testing.T) {
	assert.Equal(t, "About ½ oz.", Sentence("about ½ oz"))
	assert.Equal(t, "Did you mean oz?", Sentence("did you mean oz?"))
	assert.Empty(t, Sentence(" "))
	assert.Equal(t, "a, b and c", List([]string{"a", "b", "c"}))
	assert.Equal(t, "over 99\u00a0%", Percent(0.999))
}

func TestVerdictsCoverEveryTail(t *testing.T) {
	for _, v := range []weigh.Verdict{weigh.Balanced, weigh.Near, weigh.Off} {
		assert.NotEmpty(t, Verdict(v))
		for tail := 0.0; tail <= 1; tail += 0.05 {
			assert.False(t, v == weigh.Balanced && strings.Contains(VerdictSentence(v, tail), "this far off"), "balanced is not far off")
			assert.NotContains(t, VerdictSentence(v, tail), "About 0 ")
			assert.NotContains(t, VerdictSentence(v, tail), "About 10 in 10")
		}
	}
	assert.Equal(t, "A guest won't notice", Notice(sense.WontNotice))
	for a, w := range Axes() {
		assert.NotEmpty(t, w.Name, "axis %d", a)
		assert.NotEmpty(t, w.As)
		assert.NotEmpty(t, w.Sentence)
	}
}

// A moment reads the same wherever the program runs.
func TestMoments(t *testing.T) {
	late := time.Date(2027, 1, 3, 0, 4, 0, 0, time.FixedZone("", 3600))
	assert.Equal(t, "2 Jan 2027, 23:04 UTC", Moment(late))
	assert.Equal(t, "2 Jan 2027", Day(late))
}

func TestAmountsAreNotBroken(t *testing.T) {
	for text, want := range map[string]string{
		"pour ¾ oz lime juice instead of ¼ oz":   "Pour ¾\u00a0oz lime juice instead of ¼\u00a0oz.",
		"14 % vol in 90 mL, at -6 °C":            "14\u00a0% vol in 90\u00a0mL, at -6\u00a0°C.",
		"2 dashes of bitters, and 2 ozone lamps": "2\u00a0dashes of bitters, and 2 ozone lamps.",
		"“20 ml rye” is read as 20 ml of rye":    "“20 ml rye” is read as 20\u00a0mL of rye.",
		"an open “2 oz stays, 1 oz":              "An open “2\u00a0oz stays, 1\u00a0oz.",
		"1 dash":                                 "1\u00a0dash.",
		"22.5 ml to 30\u00a0ml, as 5 cl":         "22.5\u00a0mL to 30\u00a0mL, as 5\u00a0cl.",
		"ml 3 mles":                              "Ml 3 mles.",
	} {
		assert.Equal(t, want, Sentence(Bound(text)))
	}
}

// What is read off a drink is written as large as it is.
func TestReadouts(t *testing.T) {
	d := &mix.Drink{VolumeML: 166.6, ABV: 14.52, SugarPer100: 8.61, AcidPer100: 0.886, Bitter: 32.4, DilutionPct: 51.4, TemperatureC: -6.4, EnergyKcal: 183,
		After: mix.Ledger{Ethanol: 19.1}, PlusMinus: mix.PlusMinus{VolumeML: 6.1, ABV: 0.55, SugarPer100: 0.4, AcidPer100: 0.06, DilutionPct: 4, EnergyKcal: 6.4, TemperatureC: 0.4}}
	want := map[string]string{"volume_ml": "167 ± 6 mL", "abv_pct": "14.5 ± 0.6 % vol", "sugar_g_per_100ml": "8.6 ± 0.4 g/100 mL", "acid_g_per_100ml": "0.89 ± 0.06 g/100 mL",
		"bitter": "32 mg/L", "dilution_pct": "51 ± 4 %", "temperature_c": "−6 ± under 1 °C", "ethanol_g": "19 g", "energy_kcal": "185 ± 6 kcal"}
	for _, r := range mix.Readouts() {
		assert.Equal(t, want[r.Key], strings.ReplaceAll(Reading(&r, d), "\u00a0", " "), r.Key)
	}
}

// What has passed is told as roughly as people tell it.
func TestAgo(t *testing.T) {
	for d, want := range map[time.Duration]string{20 * time.Second: "less than a minute", time.Minute: "1 minute", 89 * time.Minute: "89 minutes",
		100 * time.Minute: "2 hours", 47 * time.Hour: "47 hours", 50 * time.Hour: "2 days"} {
		assert.Equal(t, want, strings.ReplaceAll(Ago(d), "\u00a0", " "))
	}
}
