package balance_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/trial"
	"counterpour/flavor/weigh"
)

// Whatever is not balanced is told why, and what to do about it: proven drinks with one
// part poured three times or a fifth, and with one pour left out. What lacks its spirit
// alone, and holds no alcohol, may be meant so: it is told, and nothing is poured. A spirit of
// which all else is gone, and no name tells what, is one as it is.
func TestEveryVerdictHasAReasonAndAWayOut(t *testing.T) {
	k := newKitchen(t)
	every := 3
	if testing.Short() {
		every = 15
	}
	for i := 0; i < len(k.book); i += every {
		for way, s := range spoiltWays(&k.book[i].Spec) {
			r := k.score(t, &s)
			if r.Verdict == weigh.Balanced {
				continue
			}
			assert.NotEmpty(t, r.Faults, "%s: %.1f %+v", s.Name, r.Judgement.Score, s.Pours)
			sober := s.AlcoholFree() && len(r.Faults) > 0 && r.Faults[0].Axis == ratio.Strong && !r.Faults[0].High
			asItIs := way == 0 || k.straight(t, &s) // what a book prints may be odd, and the best of its kind
			assert.True(t, asItIs || sober || len(k.fixes(t, &s, r)) > 0, "%s: %.1f %+v", s.Name, r.Judgement.Score, s.Pours)
		}
	}
}

// straight reports whether a drink is a spirit as it is.
func (k *kitchen) straight(t *testing.T, s *flavor.Spec) bool {
	build, err := k.judge.Prepare(s)
	require.NoError(t, err)
	defer build.Done()
	return build.Straight()
}

func spoiltWays(s *flavor.Spec) []flavor.Spec {
	out := []flavor.Spec{*s}
	for _, a := range ratio.Axes() {
		for _, factor := range []float64{3, 0.2} {
			if spoilt, ok := trial.Spoil(s, a, factor); ok {
				out = append(out, spoilt)
			}
		}
	}
	for i := range s.Pours {
		without := s.Clone()
		if without.Pours = slices.Delete(without.Pours, i, i+1); len(without.Pours) > 0 {
			out = append(out, without)
		}
	}
	return out
}

// The same of anything at all that is poured together from the catalogue; a few of those,
// such as a glass of tonka beans and bitters, nothing mends.
func TestEvenNonsenseHasAReason(t *testing.T) {
	k := newKitchen(t)
	const drafts, mended = 100, 0.95
	rng := rand.New(rand.NewPCG(1, 2))
	off, ways := 0, 0
	for range drafts {
		s := k.nonsense(rng)
		r, err := k.judge.Score(s)
		if err != nil || r.Verdict == weigh.Balanced {
			continue // nothing in it to weigh, or it is a drink
		}
		off++
		assert.NotEmpty(t, r.Faults, "%.1f %+v", r.Judgement.Score, s.Pours)
		if len(k.fixes(t, s, r)) > 0 {
			ways++
		}
	}
	assert.Greater(t, off, drafts/2)
	assert.GreaterOrEqual(t, float64(ways), mended*float64(off))
}

func (k *kitchen) nonsense(rng *rand.Rand) *flavor.Spec {
	s := &flavor.Spec{Method: flavor.Methods()[rng.IntN(len(flavor.Methods()))], Service: flavor.Services()[rng.IntN(len(flavor.Services()))]}
	all := k.catalogue.Profiles()
	for range 2 + rng.IntN(4) {
		p := flavor.Pour{Profile: all[rng.IntN(len(all))], Unit: flavor.Millilitre, Amount: 2.5 * float64(1+rng.IntN(36))}
		if p.Profile.Class.Solid() {
			p.Unit = flavor.Gram
		}
		if per, ok := measure.MLPerUnit(p.Unit, p.Profile); ok {
			p.ML = p.Amount * per
			s.Pours = append(s.Pours, p)
		}
	}
	return s
}

// What was left out entirely is put back as drinks that are made of the rest pour it:
// common practice, no source.
func TestWhatGoesWithTheRest(t *testing.T) {
	k := newKitchen(t)
	for _, c := range []struct {
		text string
		axis ratio.Axis
		fix  string
	}{
		{"60 ml gin|15 ml lime juice|build, highball", ratio.Long, "ml soda water"},
		{"1 1/2 oz gin|1/2 oz lime juice|build, highball", ratio.Long, "oz soda water"},
		{"60 ml white rum|15 ml lime juice|shake, up", ratio.Sweet, "syrup"},
		{"50 ml cachaca|1 lime|build, rocks", ratio.Sweet, "g white sugar"},
		{"2 oz gin|1/2 oz olive brine|stir, up", ratio.Aroma, "oz dry vermouth"},
		{"60 ml gin|stir, up", ratio.Aroma, "ml dry vermouth"},
		{"1 1/2 oz gin|1/2 oz apple brandy|1/2 oz grenadine|1 egg white|dry shake, up", ratio.Sour, "add ¾ oz lemon juice"},
	} {
		k.mends(t, c.text, c.axis, c.fix)
	}
}
