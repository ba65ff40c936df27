package weigh_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// What nobody tastes moves the score by no more than this, in points.
const mostUntasted = 3.0

// A fiftieth more or less of any pour of any proven drink.
func TestAFiftiethOfAPourIsNoCliff(t *testing.T) {
	k := newKitchen(t)
	for i := range k.book {
		s := &k.book[i].Spec
		was := k.score(t, s)
		for p := range s.Pours {
			for _, factor := range []float64{0.98, 1.02} {
				other := s.Clone()
				other.Pours[p].ML *= factor
				other.Pours[p].Amount *= factor
				assert.InDelta(t, was, k.score(t, &other), mostUntasted, "%s: %s × %v", s.Name, s.Pours[p].Profile.Name, factor)
			}
		}
	}
}

// Water by less than half a step of strength, 4.8 % of the drink, as Weber's law
// has it with a fraction of a tenth: a barspoon. A drink far from all others of its
// kind may be near an edge: one drink in two hundred may move more, and none by twice
// as much.
func TestABarspoonOfWaterIsNoCliff(t *testing.T) {
	k := newKitchen(t)
	water, ok := k.catalogue.ByID("water")
	require.True(t, ok)
	half := math.Sqrt(1.10) - 1
	further := 0
	for i := range k.book {
		s := k.book[i].Spec.Clone()
		was := k.score(t, &s)
		ml := math.Min(5, s.VolumeML()*half)
		s.Pours = append(s.Pours, flavor.Pour{Profile: water, Amount: ml, Unit: flavor.Millilitre, ML: ml})
		moved := math.Abs(k.score(t, &s) - was)
		assert.LessOrEqual(t, moved, 2*mostUntasted, s.Name)
		if moved > mostUntasted {
			further++
		}
	}
	assert.LessOrEqual(t, further, len(k.book)/200)
}

func TestOrderOfPoursOfProvenDrinks(t *testing.T) {
	k := newKitchen(t)
	for i := range k.book {
		s := k.book[i].Spec.Clone()
		was := k.score(t, &s)
		slices.Reverse(s.Pours)
		assert.InDelta(t, was, k.score(t, &s), same, s.Name)
	}
}

// A hundredth of any pour of a drink that is too small for its glass, or too large, or
// larger still, up to a batch: what the whole glass holds is bounded, and no bound is a
// cliff.
func TestAHundredthOfADrinkOfAnySizeIsNoCliff(t *testing.T) {
	k := newKitchen(t)
	for i := range k.book {
		own := k.book[i].Spec.VolumeML()
		for _, size := range []float64{35, 45, 55, 250, 350, 450, 3.6 * own, 4.2 * own, 4.6 * own, 4.9 * own} {
			s := scaled(&k.book[i].Spec, size)
			b := k.build(t, s)
			was := b.Score(b.Amounts())
			for p := range s.Pours {
				for _, factor := range []float64{0.99, 1.01} {
					ml := b.Amounts()
					ml[p] *= factor
					assert.InDelta(t, was, b.Score(ml), mostJump, "%s of %v mL: %s × %v", s.Name, size, s.Pours[p].Profile.Name, factor)
				}
			}
		}
	}
}

// A hundredth of a pour between one that is beside others and one that the drink is made of:
// what there is too much of beside, and none too much of first, is no cliff between.
func TestAHundredthTowardLeadingIsNoCliff(t *testing.T) {
	k := newKitchen(t)
	for _, text := range []string{
		"1 oz fernet\n1 1/2 oz gin\n1/2 oz sweet vermouth\nstir, up",
		"1 oz fernet\n1 1/2 oz green herbal liqueur\n1 oz lime juice\n1 oz simple syrup\nshake, up",
		"1/2 oz mezcal\n1 oz reposado tequila\n1/4 oz agave nectar\n2 dashes aromatic bitters\nstir, rocks",
		"1 1/2 oz violet liqueur\n2 oz gin\n3/4 oz lemon juice\nshake, up",
	} {
		b := k.build(t, k.read(t, text))
		ml := b.Amounts()
		for was := b.Score(ml); ml[0] < 2*ml[1]; {
			ml[0] *= 1.01
			score := b.Score(ml)
			assert.InDelta(t, was, score, mostJump, "%v mL of it: %s", ml[0], text)
			was = score
		}
	}
}
