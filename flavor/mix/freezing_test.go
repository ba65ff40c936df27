package mix

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Lange's Handbook of Chemistry, 15th ed., Table 5.13, mass per cent of ethanol
// and °C; from 46.3 % on from memory.
var langeFreezing = [][2]float64{
	{2.5, -1.0}, {4.8, -2.0}, {6.8, -3.0}, {11.3, -5.0}, {13.8, -6.1}, {16.4, -7.5}, {17.5, -8.7}, {18.8, -9.4},
	{20.3, -10.6}, {22.1, -12.2}, {24.2, -14.0}, {26.7, -16.0}, {29.9, -18.9}, {33.8, -23.6}, {39.0, -28.7},
	{46.3, -33.9}, {56.1, -41.0}, {71.9, -51.3},
}

// CRC Handbook of Chemistry and Physics, concentrative properties of aqueous
// solutions (from memory).
var crcFreezing = [][2]float64{
	{1, -0.40}, {5, -2.09}, {10, -4.47}, {14, -6.73}, {18, -9.40}, {20, -10.92}, {24, -14.47}, {28, -18.43},
	{30, -20.47}, {32, -22.44}, {36, -25.98}, {40, -29.26}, {44, -32.68}, {50, -37.67}, {60, -44.93},
}

func TestFreezingPointsOfEthanol(t *testing.T) {
	m := mixer(t)
	for name, table := range map[string][][2]float64{"Lange": langeFreezing, "CRC": crcFreezing} {
		worst := 0.0
		for _, r := range table {
			got := m.FreezingC(&Ledger{Ethanol: r[0], Water: 100 - r[0]})
			assert.InDelta(t, r[1], got, FreezingUncertaintyC, "%s, %v %% by mass", name, r[0])
			worst = max(worst, math.Abs(got-r[1]))
		}
		t.Logf("furthest from %s: %.2f °C", name, worst)
	}
}

// CRC Handbook (from memory), but 12 %: Clarke, The Science of Ice Cream, 2004.
// Between the rows the cryoscopic constant of water, 1.86 K kg/mol, is a check.
func TestFreezingPointsOfSucrose(t *testing.T) {
	m := mixer(t)
	for _, r := range [][2]float64{{5, -0.29}, {10, -0.63}, {12, -0.77}, {15, -1.01}, {20, -1.47}, {26, -2.12}, {30, -2.64}, {36, -3.63}, {40, -4.45}} {
		assert.InDelta(t, r[1], m.FreezingC(&Ledger{Sugar: r[0], Water: 100 - r[0]}), 0.02, "%v %%", r[0])
	}
	molal := 1000 * 2 / 98.0 / 342.30
	assert.InDelta(t, -1.86*molal, m.FreezingC(&Ledger{Sugar: 2, Water: 98}), 0.02, "dilute sucrose")
	assert.InDelta(t, -1.86*1000*2/98.0/192.12, m.FreezingC(&Ledger{Acid: 2, Water: 98}), 0.03, "dilute citric acid")
	assert.InDelta(t, -1.86*1000*2*0.5/99.5/58.44, m.FreezingC(&Ledger{Salt: 0.5, Water: 99.5}), 0.03, "dilute salt")
}

// A mixture freezes below each of its halves, by their sum.
func TestFreezingPointsOfMixtures(t *testing.T) {
	m := mixer(t)
	ethanol, sugar := Ledger{Ethanol: 12, Water: 88}, Ledger{Sugar: 15, Water: 88}
	both := Ledger{Ethanol: 12, Sugar: 15, Water: 88}
	assert.InDelta(t, m.FreezingC(&ethanol)+m.FreezingC(&sugar), m.FreezingC(&both), 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		l := Ledger{Ethanol: rapid.Float64Range(0, 200).Draw(t, "ethanol"), Sugar: rapid.Float64Range(0, 100).Draw(t, "sugar"), Water: 100}
		was := m.FreezingC(&l)
		assert.LessOrEqual(t, was, 0.0)
		l.Water += rapid.Float64Range(0, 100).Draw(t, "water")
		assert.GreaterOrEqual(t, m.FreezingC(&l), was, "dilution never lowers it")
	})
	assert.Zero(t, m.FreezingC(&Ledger{}))
	assert.InDelta(t, -51.3, m.FreezingC(&Ledger{Ethanol: 1}), 1e-9, "beyond the table it stays")
}
