package flavor

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The fat of each food in g/L, rounded: USDA SR 26; the foamer's, common practice.
func TestFatTellsCreamAndYolk(t *testing.T) {
	for _, c := range []struct {
		food                    string
		class                   Class
		fat                     float64
		cream, yolky, whitening bool
	}{
		{"milk", ClassDairy, 33, false, false, false},
		{"half milk, half cream", ClassDairy, 118, false, false, false},
		{"single cream", ClassDairy, 189, true, false, false},
		{"butter", ClassDairy, 766, true, false, false},
		{"coconut cream", ClassPlantMilk, 349, false, false, false},
		{"egg white", ClassEgg, 2, false, false, true},
		{"whole egg", ClassEgg, 100, false, true, false},
		{"egg yolk", ClassEgg, 276, false, true, false},
		{"foamer", ClassFoam, 0, false, false, true},
	} {
		p := Profile{Class: c.class, Fat: Figure{Value: c.fat}}
		assert.Equal(t, c.cream, p.Cream(), c.food)
		assert.Equal(t, c.yolky, p.Yolky(), c.food)
		assert.Equal(t, c.whitening, p.Whitens(), c.food)
	}
}
