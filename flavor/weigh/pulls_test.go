package weigh_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/ratio"
)

// Common practice, no source: what a bartender would say is wrong with these.
// The factor is by how much the pour is out, and the change that mends it is
// told to within a third or so.
func TestFirstPullNamesWhatWentWrong(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		name, text string
		axis       ratio.Axis
		factor     float64
	}{
		{"a sour with far too much juice", "2 oz gin\n2 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Sour, 2.5},
		{"a sour with hardly any juice", "2 oz gin\n1/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Sour, 0.33},
		{"a sour with far too much syrup", "2 oz gin\n3/4 oz lemon juice\n2 oz simple syrup\nshake, up", ratio.Sweet, 2.6},
		{"a sour with hardly any syrup", "2 oz gin\n3/4 oz lemon juice\n1/4 oz simple syrup\nshake, up", ratio.Sweet, 0.33},
		{"a sour of three shots", "6 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Strong, 3},
		{"a sour with a thimble of gin", "1/2 oz gin\n3/4 oz lemon juice\n3/4 oz simple syrup\nshake, up", ratio.Strong, 0.25},
		{"two parts: too much liqueur", "1 1/2 oz blended Scotch whisky\n3 oz amaretto\nbuild, rocks", ratio.Sweet, 3},
		{"two parts: too little spirit", "1/4 oz blended Scotch whisky\n1 oz amaretto\nbuild, rocks", ratio.Strong, 0.4},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := k.build(t, k.read(t, c.text))
			j := b.Judge(b.Amounts())
			require.NotEmpty(t, j.Pulls)
			p := j.Pulls[0]
			assert.Equal(t, c.axis, p.Axis)
			assert.InDelta(t, -math.Log(c.factor), p.Change, 0.7)
			assert.Greater(t, p.Gain, 0.2)
		})
	}
}

// A batch is no glass: what is wrong with it shows in the ratio alone.
func TestBatchIsJudgedByItsRatio(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"2 oz gin\n2 oz lemon juice\n3/4 oz simple syrup\nshake, up",
		"2 oz gin\n3/4 oz lemon juice\n1/4 oz simple syrup\nshake, up",
	} {
		b := k.build(t, k.read(t, text))
		ml := b.Amounts()
		glass := b.Judge(ml).Pulls[0]
		for i := range ml {
			ml[i] *= 60
		}
		batch := b.Judge(ml).Pulls[0]
		assert.Equal(t, glass.Axis, batch.Axis)
		assert.InDelta(t, glass.Change, batch.Change, 0.3)
	}
}

// Two things wrong: once the first is mended the other is still told.
func TestSecondFaultStaysOnceTheFirstIsMended(t *testing.T) {
	k := newKitchen(t)
	b := k.build(t, k.read(t, "2 oz gin\n1/8 oz lemon juice\n2 1/2 oz simple syrup\nshake, up"))
	j := b.Judge(b.Amounts())
	axes := map[ratio.Axis]bool{j.Pulls[0].Axis: true}
	require.NotEmpty(t, j.Then)
	axes[j.Then[0].Axis] = true
	assert.Equal(t, map[ratio.Axis]bool{ratio.Sour: true, ratio.Sweet: true}, axes)
}

// The proven drinks of a family differ in size by about as much as pulls.go
// takes them to, 0.25 in the logarithm.
func TestSizesStrayAsTaken(t *testing.T) {
	k := newKitchen(t)
	byFamily := map[string][]float64{}
	for i := range k.book {
		byFamily[k.book[i].Family] = append(byFamily[k.book[i].Family], math.Log(k.book[i].Spec.VolumeML()))
	}
	var square, freedom float64
	for _, sizes := range byFamily {
		var mean float64
		for _, v := range sizes {
			mean += v / float64(len(sizes))
		}
		for _, v := range sizes {
			square += (v - mean) * (v - mean)
		}
		freedom += float64(len(sizes) - 1)
	}
	assert.InDelta(t, 0.25, math.Sqrt(square/freedom), 0.10)
}
