package coaching

import (
	"math/rand/v2"
	"testing"
	"time"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/drill"
	"counterpour/flavor/drill/pace"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is due or new comes before the rest.
func TestSkillsToTry(t *testing.T) {
	now := time.Date(2026, 1, 2, 0, 0, 0, 0, time.UTC)
	l := drill.Learner{Skills: []drill.Skill{{Kind: drill.KindOrder, Axis: "sweet", Rounds: 1, Repeat: pace.Repeat{Due: now.Add(time.Hour)}}}}
	rng := rand.New(rand.NewPCG(1, 2))
	for range 10 {
		got := skillsToTry(l, drill.KindOrder, now, rng)
		require.Len(t, got, 2)
		assert.Equal(t, "strong", got[0].Axis)
		assert.Equal(t, 1, got[1].Rounds)
	}
	assert.Len(t, skillsToTry(l, drill.KindFault, now, rng), ratio.NumAxes)
}

// No drink that a sitting had comes again while others are left, and none holds what is
// avoided.
func TestRoundsOfASitting(t *testing.T) {
	trainer := testTrainer(t)
	rng := rand.New(rand.NewPCG(7, 7))
	avoid := []flavor.Allergen{flavor.Eggs, flavor.Milk}
	var seen []drill.Mark
	for range 20 {
		r, err := Round(trainer, RoundRequest{Wish: RoundWish{Kind: drill.KindFault, Size: 6, Avoid: avoid, Seen: seen}, At: time.Now(), Rand: rng})
		require.NoError(t, err)
		for _, s := range r.Drinks() {
			assert.NotContains(t, seen, drill.MarkOf(s), s.Name)
			seen = append(seen, drill.MarkOf(s))
			for _, p := range s.Pours {
				assert.True(t, p.Profile.Avoids(avoid), "%s in %s", p.Profile.Name, s.Name)
			}
		}
	}
}

// The bar's own drinks come before all others for as long as a sitting has not had them, and a
// house without a menu trains on proven drinks. A family is read off a ratio without a name.
func TestTheMenuComesFirst(t *testing.T) {
	trainer := testTrainer(t)
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	bar, err := d.Catalogue.Demo()
	require.NoError(t, err)
	own := map[string]bool{}
	for i := range bar.Specs {
		own[bar.Specs[i].Spec.Name] = true
	}
	rng := rand.New(rand.NewPCG(3, 4))
	for _, kind := range drill.Kinds() {
		var seen []drill.Mark
		for n := range 4 {
			r, err := Round(trainer, RoundRequest{Wish: RoundWish{Kind: kind, Size: 6, Seen: seen}, At: time.Now(), Rand: rng})
			require.NoError(t, err)
			for _, s := range r.Drinks() {
				assert.True(t, own[s.Name] || n >= 2 || kind == drill.KindFamily, "round %d of %s is of %s", n, kind, s.Name)
				assert.Equal(t, r.Request.Menu, own[s.Name], s.Name)
				seen = append(seen, drill.MarkOf(s))
			}
		}
	}
	r, err := Round(provenTrainer(t), RoundRequest{Wish: RoundWish{Kind: drill.KindGuess}, At: time.Now(), Rand: rng})
	require.NoError(t, err)
	assert.NotEmpty(t, r.Drinks())
}

// A house without stock has no covers to ask about: whoever leaves the kind open is asked
// something else, whoever wants covers is told why not.
func TestWhatCannotBeHadGivesWay(t *testing.T) {
	trainer := trainerOver(t, nil)
	rng := rand.New(rand.NewPCG(5, 6))
	now := time.Now()
	var l drill.Learner
	for _, s := range drill.Skills() {
		if s.Kind != drill.KindCover {
			s.Rounds, s.Repeat.Due = 1, now.Add(time.Hour)
			l.Skills = append(l.Skills, s)
		}
	}
	require.Equal(t, drill.KindCover, l.NextBut("", now, 0).Kind, "it is what is needed most")
	r, err := Round(trainer, RoundRequest{Learner: l, Wish: RoundWish{Not: drill.KindFamily}, At: now, Rand: rng})
	require.NoError(t, err)
	assert.NotContains(t, []drill.Kind{drill.KindCover, drill.KindFamily}, r.Request.Kind)
	_, err = Round(trainer, RoundRequest{Learner: l, Wish: RoundWish{Kind: drill.KindCover}, At: now, Rand: rng})
	assert.ErrorIs(t, err, flavor.ErrInvalid)
}

// Who has had everything is dealt something all the same.
func TestAllSeen(t *testing.T) {
	trainer := testTrainer(t)
	rng := rand.New(rand.NewPCG(7, 7))
	seen := make([]drill.Mark, 0, 1<<16)
	for m := range 1 << 16 {
		seen = append(seen, drill.Mark(m))
	}
	_, err := Round(trainer, RoundRequest{Wish: RoundWish{Kind: drill.KindGuess, Seen: seen}, At: time.Now(), Rand: rng})
	require.NoError(t, err)
}

// testTrainer is a trainer over the embedded catalogue and the menu of the demo house.
func testTrainer(t *testing.T) *drill.Trainer {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	bar, err := d.Catalogue.Demo()
	require.NoError(t, err)
	var menu []template.Labelled
	for i := range bar.Specs {
		menu = append(menu, template.Labelled{Spec: bar.Specs[i].Spec, Family: bar.Specs[i].Family})
	}
	return provenTrainer(t).WithMenu(menu)
}

// provenTrainer is one over proven drinks alone, whose stock is the whole catalogue.
func provenTrainer(t *testing.T) *drill.Trainer {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	return trainerOver(t, d.Catalogue.Profiles())
}

func trainerOver(t *testing.T, stock []*flavor.Profile) *drill.Trainer {
	t.Helper()
	d, err := datatest.Calibrated()
	require.NoError(t, err)
	customs, err := d.Catalogue.Customs()
	require.NoError(t, err)
	judge := balance.NewJudge(d.Mixer, d.Set, balance.Pantry{})
	finder := cover.NewFinder(d.Mixer, judge, d.Catalogue.Space(), customs, cover.DefaultWeights())
	trainer, err := drill.NewTrainer(d.Mixer, judge, d.Set, finder, d.Proven, stock)
	require.NoError(t, err)
	return trainer
}
