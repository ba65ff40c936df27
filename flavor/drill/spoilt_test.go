package drill

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// spoilts makes one round of a kind for each axis and seed.
func spoilts(t *testing.T, s *school, kind Kind, size float64, seeds uint64, check func(*Round)) {
	t.Helper()
	for _, a := range ratio.Axes() {
		for seed := range seeds {
			r, err := s.trainer.Round(RoundRequest{Kind: kind, Axis: a, Size: size, Seed: seed})
			require.NoError(t, err)
			check(r)
		}
	}
}

// The fault of a spoilt drink is the engine's own first one, or what is the same told from
// the other side, and the round is as large as the slip moves its axis.
func TestSpoiltDrinksAreFaultedForIt(t *testing.T) {
	s := newSchool(t)
	spoilts(t, s, KindFault, 5, 3, func(r *Round) {
		result, err := s.trainer.judge.Score(&r.Specs[0])
		require.NoError(t, err)
		require.NotEmpty(t, result.Faults)
		slipped := side{r.Request.Axis, r.key.high}
		assert.Contains(t, []side{slipped, slipped.mirror()}, side{result.Faults[0].Axis, result.Faults[0].High})
		before := ratio.EquivalentsOf(&r.key.classic.spec)[r.Request.Axis]
		after := ratio.EquivalentsOf(&r.Specs[0])[r.Request.Axis]
		assert.InDelta(t, r.Size, sizeOfSlip(r.Request.Axis, before, after), 1e-9)
		assert.Equal(t, r.key.high, after > before)
	})
}

// A round is about as large as it was asked to be wherever three drinks can be spoilt so, and
// no drink comes again and again. Shares counted over the proven drinks.
func TestRoundsKeepToTheirSize(t *testing.T) {
	s := newSchool(t)
	const rounds = 12
	for _, size := range []float64{3, 6, 12} {
		for _, a := range ratio.Axes() {
			drinks := map[string]int{}
			near := 0
			for seed := range uint64(rounds) {
				r, err := s.trainer.Round(RoundRequest{Kind: KindFault, Axis: a, Size: size, Seed: seed})
				require.NoError(t, err)
				drinks[r.key.classic.spec.Name]++
				if math.Abs(math.Log(r.Size/size)) <= math.Log(nearTimes)+1e-9 {
					near++
				}
			}
			least := rounds * 2 / 3
			if size < StartSize {
				least = rounds / 3 // few drinks lie so near the edge of balance
			}
			assert.GreaterOrEqual(t, near, least, "%v of %v", size, a)
			for name, n := range drinks {
				if size < StartSize {
					break // of some axes there is hardly another
				}
				assert.LessOrEqual(t, n, rounds/2, "%s: %v of %v", name, size, a)
			}
		}
	}
}

// No slip pours what nobody pours: more than 1.5 times the most of its class that a proven
// drink pours, more than eight dashes of bitters, or an amount that no hand can measure.
func TestSlipsAreWhatHandsDo(t *testing.T) {
	s := newSchool(t)
	most := map[flavor.Class]float64{}
	for _, p := range s.Proven {
		for _, x := range p.Spec.Pours {
			most[x.Profile.Class] = max(most[x.Profile.Class], x.ML)
		}
	}
	times := [slip.NumMistakes]int{}
	for a := range s.trainer.spoilable {
		for _, x := range s.trainer.spoilable[a] {
			times[x.slip.Mistake]++
			for _, m := range x.slip.Moved {
				p := s.trainer.classics[x.classic].spec.Pours[m.At]
				switch {
				case m.Amount == 0:
					assert.Equal(t, slip.Forgotten, x.slip.Mistake)
				case p.Profile.Class.Part() == flavor.PartSeasoning:
					assert.LessOrEqual(t, m.ML, 8*measure.DashML+1e-9, p.Profile.Name)
				default:
					assert.LessOrEqual(t, m.ML, 1.5*most[p.Profile.Class]+1e-9, p.Profile.Name)
				}
			}
		}
	}
	for m, n := range times {
		assert.Positive(t, n, m)
	}
}

// pour is a pour of the catalogue.
func (s *school) pour(t *testing.T, id string, amount float64, u flavor.Unit) flavor.Pour {
	t.Helper()
	bar := s.Catalogue.Profiles()
	i := slices.IndexFunc(bar, func(p *flavor.Profile) bool { return p.ID == id })
	require.GreaterOrEqual(t, i, 0, id)
	ml, err := measure.ToML(amount, u, bar[i])
	require.NoError(t, err)
	return flavor.Pour{Profile: bar[i], Amount: amount, Unit: u, ML: ml}
}

// What guests say of a few spoilt drinks, each from both sides where there are two: common
// practice, no source.
func TestWhatGuestsSay(t *testing.T) {
	s := newSchool(t)
	oz := func(id string, amount float64) flavor.Pour { return s.pour(t, id, amount, flavor.Ounce) }
	sour := flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{oz("cognac", 2), oz("lemon-juice", 0.75), oz("simple-syrup", 0.75)}}
	hot := flavor.Spec{Method: flavor.Build, Service: flavor.Hot, Pours: []flavor.Pour{oz("blended-scotch", 2), oz("honey-syrup", 0.75), oz("lemon-juice", 0.5), oz("water", 4)}}
	fruit := flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{oz("blanco-tequila", 1.5), oz("apricot-liqueur", 0.75), oz("lime-juice", 0.75)}}
	tart := flavor.Spec{Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{oz("london-dry-gin", 2), oz("lemon-juice", 1), oz("simple-syrup", 0.5)}}
	old := flavor.Spec{Method: flavor.Stir, Service: flavor.Rocks, Pours: []flavor.Pour{oz("bourbon", 2), oz("demerara-syrup", 0.25), s.pour(t, "aromatic-bitters", 3, flavor.Dash)}}
	stirred := flavor.Spec{Method: flavor.Stir, Service: flavor.Up, Pours: []flavor.Pour{oz("apple-brandy", 1.5), oz("sweet-vermouth", 1.5)}}
	coffee := flavor.Spec{Method: flavor.Shake, Service: flavor.Rocks, Pours: []flavor.Pour{oz("vanilla-liqueur", 1.5), oz("espresso", 1.5)}}
	for _, c := range []struct {
		name        string
		proper      *flavor.Spec
		at          int
		poured      float64 // 0 if it was forgotten, below it if the first pour was swapped with it
		axis        ratio.Axis
		right, none []side
	}{
		{"a sour with too little syrup", &sour, 2, 0.25, ratio.Sweet, []side{{ratio.Sweet, false}, {ratio.Sour, true}}, []side{{ratio.Sweet, true}, {ratio.Sour, false}, {ratio.Long, true}}},
		{"a sour with too little juice", &sour, 1, 0.25, ratio.Sour, []side{{ratio.Sour, false}, {ratio.Sweet, true}}, []side{{ratio.Sour, true}, {ratio.Sweet, false}, {ratio.Bitter, true}}},
		{"a sour with half its spirit", &sour, 0, 1, ratio.Strong, []side{{ratio.Strong, false}, {ratio.Long, true}, {ratio.Sour, true}, {ratio.Sweet, true}}, []side{{ratio.Strong, true}, {ratio.Bitter, true}}},
		{"a tart sour with half its spirit", &tart, 0, 1, ratio.Strong, []side{{ratio.Strong, false}, {ratio.Sour, true}}, []side{{ratio.Sweet, true}, {ratio.Strong, true}}},
		{"a sour whose juice was forgotten", &sour, 1, 0, ratio.Sour, []side{{ratio.Sour, false}, {ratio.Sweet, true}}, []side{{ratio.Strong, false}, {ratio.Long, true}, {ratio.Bitter, false}}},
		{"a liqueur poured for the spirit", &fruit, 1, -1, ratio.Strong, []side{{ratio.Strong, false}, {ratio.Sweet, true}}, []side{{ratio.Strong, true}, {ratio.Sweet, false}}},
		{"spirit without its vermouth", &stirred, 1, 0, ratio.Sweet, []side{{ratio.Sweet, false}, {ratio.Strong, true}}, []side{{ratio.Strong, false}, {ratio.Sweet, true}}},
		{"an old-fashioned without its bitters", &old, 2, 0, ratio.Bitter, []side{{ratio.Bitter, false}}, []side{{ratio.Sweet, false}, {ratio.Bitter, true}}},
		{"twice the coffee on a liqueur", &coffee, 1, 3, ratio.Long, []side{{ratio.Long, true}, {ratio.Strong, false}, {ratio.Sweet, false}, {ratio.Bitter, true}}, []side{{ratio.Bitter, false}, {ratio.Sweet, true}}},
		{"a hot drink with hardly any water", &hot, 3, 0.5, ratio.Long, []side{{ratio.Long, false}, {ratio.Strong, true}}, []side{{ratio.Long, true}, {ratio.Strong, false}}},
	} {
		drink, err := s.trainer.mixer.Mix(c.proper)
		require.NoError(t, err)
		spoilt := c.proper.Clone()
		switch first := c.proper.Pours[0]; {
		case c.poured == 0:
			spoilt.Pours = slices.Delete(spoilt.Pours, c.at, c.at+1)
		case c.poured < 0:
			spoilt.Pours[0] = oz(first.Profile.ID, c.proper.Pours[c.at].Amount)
			spoilt.Pours[c.at] = oz(spoilt.Pours[c.at].Profile.ID, first.Amount)
		default:
			spoilt.Pours[c.at] = oz(spoilt.Pours[c.at].Profile.ID, c.poured)
		}
		result, err := s.trainer.judge.Score(&spoilt)
		require.NoError(t, err)
		right, err := s.trainer.rightOf(&classic{spec: *c.proper, drink: drink}, &spoilt, result, side{c.axis, c.poured > c.proper.Pours[c.at].Amount})
		require.NoError(t, err)
		t.Logf("%s: %v", c.name, right)
		for _, x := range c.right {
			assert.Contains(t, right, x, "%s: %s", c.name, x)
		}
		for _, x := range c.none {
			assert.NotContains(t, right, x, "%s: %s", c.name, x)
		}
	}
}

// Nobody is asked for the acid of what nothing sours, such as milk, nor for the length of a
// drink that hardly has any.
func TestAxesAreAskedOfWhatHasThem(t *testing.T) {
	s := newSchool(t)
	for _, x := range s.trainer.spoilable[ratio.Sour] {
		c := &s.trainer.classics[x.classic].spec
		assert.True(t, c.HasPart(flavor.PartSour), c.Name)
	}
	for _, x := range s.trainer.spoilable[ratio.Long] {
		c := &s.trainer.classics[x.classic].spec
		assert.GreaterOrEqual(t, shareOf(ratio.EquivalentsOf(c))[ratio.Long], leastLong, c.Name)
	}
	for a := range s.trainer.spoilable {
		assert.NotEmpty(t, s.trainer.spoilable[a])
	}
}

// Half of the points are for what is in the glass and not what a guest says first; who says
// the opposite of what happened gets none.
func TestHalfAnAnswer(t *testing.T) {
	s := newSchool(t)
	half := 0
	for _, size := range []float64{3, 6} {
		spoilts(t, s, KindFault, size, 4, func(r *Round) {
			is, err := s.trainer.mixer.Mix(&r.Specs[0])
			require.NoError(t, err)
			for _, x := range allSides() {
				g, err := s.trainer.Grade(r, Answer{Axis: x.axis, High: x.high})
				require.NoError(t, err)
				if g.Right {
					assert.InDelta(t, 1, g.Points, 0)
					continue
				}
				if x.moved(r.key.classic.drink, is) < leastTasted {
					assert.Zero(t, g.Points, "%s: %s", r.Question, x)
				}
				if g.Points > 0 {
					half++
				}
			}
		})
	}
	assert.Positive(t, half)
}

// Both sides of one slip are right, as every guest says: too sharp and not sweet enough, too
// strong and too little water, hot or cold. Of a drink that nothing sours nobody says that it
// is sharp.
func TestBothSidesOfASlipAreRight(t *testing.T) {
	s := newSchool(t)
	for _, kind := range []ratio.Axis{ratio.Sweet, ratio.Sour, ratio.Strong, ratio.Long} {
		for _, size := range []float64{3, 6} {
			for seed := range uint64(4) {
				r, err := s.trainer.Round(RoundRequest{Kind: KindFault, Axis: kind, Size: size, Seed: seed})
				require.NoError(t, err)
				slipped := side{kind, r.key.high}
				m := slipped.mirror()
				g, err := s.trainer.Grade(r, Answer{Axis: m.axis, High: m.high})
				require.NoError(t, err)
				assert.Equal(t, m.tellsOf(&r.key.classic.spec), g.Right, "%s: %s", r.Question, m)
			}
		}
	}
}

// Whatever the round: what is plainly tasted is right, nothing is right that the glass plainly
// contradicts, nothing together with its opposite, and a wrong answer is told why.
func TestWhatIsRightToSay(t *testing.T) {
	s := newSchool(t)
	spoilts(t, s, KindFault, StartSize, 3, func(r *Round) {
		result, err := s.trainer.judge.Score(&r.Specs[0])
		require.NoError(t, err)
		was := r.key.classic.drink
		for _, x := range allSides() {
			heat := x.axis == ratio.Strong || x.axis == ratio.Long
			if heat && x.tellsOf(&r.Specs[0]) && x.moved(was, result.Drink) >= plainlyTasted {
				assert.Contains(t, r.key.off, x, r.Question)
			}
			if own := (side{r.Request.Axis, r.key.high}); x != own && x != own.mirror() && x.moved(was, result.Drink) <= -leastTasted {
				assert.NotContains(t, r.key.off, x, r.Question)
			}
		}
		for _, x := range Sayings() {
			g, err := s.trainer.Grade(r, Answer{Axis: x.Axis, High: x.High})
			require.NoError(t, err)
			assert.Equal(t, slices.Contains(r.key.off, side{x.Axis, x.High}), g.Right)
			assert.False(t, g.Right && slices.Contains(r.key.off, side{x.Axis, !x.High}), r.Question)
			assert.Equal(t, g.Right, g.Why == "", "%s: %s", r.Question, g.Why)
			assert.NotEmpty(t, g.Slip)
			assert.Same(t, &r.key.classic.spec, g.Proper)
			assert.NotEmpty(t, g.Wrong)
		}
	})
}

// A mend is right if it pours the proper amount, or undoes most of the slip and leaves a
// good drink; what leaves most of it is wrong, whatever it scores.
func TestMendsUndoTheSlip(t *testing.T) {
	s := newSchool(t)
	other := 0
	spoilts(t, s, KindMend, StartSize, 3, func(r *Round) {
		proper, err := s.trainer.judge.ScoreOnly(&r.key.classic.spec)
		require.NoError(t, err)
		spoilt, err := s.trainer.judge.ScoreOnly(&r.Specs[0])
		require.NoError(t, err)
		for i := range r.Specs[0].Pours {
			p := r.Specs[0].Pours[i]
			for _, amount := range append(measure.Neighbours(p.Amount, p.Unit, 3), r.key.classic.spec.Pours[i].Amount) {
				g, err := s.trainer.Grade(r, Answer{Pour: i, Amount: amount})
				require.NoError(t, err)
				mended := r.Specs[0].Clone()
				mended.Pours[i].Amount, mended.Pours[i].ML = amount, amount*p.ML/p.Amount
				score, err := s.trainer.judge.ScoreOnly(&mended)
				require.NoError(t, err)
				isProper := i == r.key.pour && amount == r.key.classic.spec.Pours[i].Amount
				assert.Equal(t, g.Right, g.Why == "", g.Why)
				if isProper {
					assert.True(t, g.Right, g.Text)
				}
				if !g.Right || isProper {
					continue
				}
				other++
				assert.True(t, score >= weigh.BalancedFrom || score >= proper-nearProper, g.Text)
				assert.Greater(t, score, spoilt, g.Text)
			}
		}
	})
	assert.Positive(t, other, "some were mended by another amount")
}

// A mend is neither twice of what is proper nor half a drink: whatever the round, spirit
// poured half again too large and everything cut down to what was spoilt are wrong.
func TestMendsAreNoOtherDrink(t *testing.T) {
	s := newSchool(t)
	whiskey := flavor.Spec{Method: flavor.Shake, Service: flavor.Rocks, Pours: []flavor.Pour{s.pour(t, "bourbon", 2, flavor.Ounce),
		s.pour(t, "lemon-juice", 0.75, flavor.Ounce), s.pour(t, "simple-syrup", 0.75, flavor.Ounce)}}
	tonic := flavor.Spec{Method: flavor.Build, Service: flavor.Long, Pours: []flavor.Pour{s.pour(t, "london-dry-gin", 2, flavor.Ounce),
		s.pour(t, "tonic-water", 4, flavor.Ounce)}}
	for _, c := range []struct {
		name   string
		proper *flavor.Spec
		axis   ratio.Axis
		at     int
		poured float64
		pour   int
		amount float64
		right  bool
	}{
		{"the proper amount", &whiskey, ratio.Strong, 0, 1, 0, 2, true},
		{"a quarter short", &whiskey, ratio.Strong, 0, 1, 0, 1.75, true},
		{"a little more", &whiskey, ratio.Strong, 0, 1, 0, 2.25, true},
		{"half as much again", &whiskey, ratio.Strong, 0, 1, 0, 3, false},
		{"half as much again, of a third", &whiskey, ratio.Strong, 0, 0.75, 0, 3, false},
		{"less juice for less spirit", &whiskey, ratio.Strong, 0, 1, 1, 0.25, false},
		{"tonic to the proper mark", &tonic, ratio.Long, 1, 1.25, 1, 4, true},
		{"a longer one", &tonic, ratio.Long, 1, 1.25, 1, 5, true},
		{"a thimble of gin", &tonic, ratio.Long, 1, 1.25, 0, 0.5, false},
	} {
		drink, err := s.trainer.mixer.Mix(c.proper)
		require.NoError(t, err)
		spoilt := c.proper.Clone()
		spoilt.Pours[c.at] = s.pour(t, spoilt.Pours[c.at].Profile.ID, c.poured, flavor.Ounce)
		m := slip.Moved{At: c.at, Amount: c.poured, ML: spoilt.Pours[c.at].ML, Profile: spoilt.Pours[c.at].Profile}
		r := &Round{Request: RoundRequest{Kind: KindMend, Axis: c.axis}, Specs: []flavor.Spec{spoilt},
			key: key{axis: c.axis, pour: c.at, slip: slip.Slip{Mistake: slip.Misread, Moved: []slip.Moved{m}}, classic: &classic{spec: *c.proper, drink: drink}}}
		g, err := s.trainer.Grade(r, Answer{Pour: c.pour, Amount: c.amount})
		require.NoError(t, err)
		assert.Equal(t, c.right, g.Right, "%s: %s %s", c.name, g.Text, g.Why)
	}
}

// Worked by hand: of a pour halved, ¾ of it is 42 % of the way back in steps, 7/8 is 81 %.
func TestLeftOf(t *testing.T) {
	for _, c := range []struct{ proper, spoilt, now, want float64 }{
		{1, 0.5, 0.5, 1}, {1, 0.5, 1, 0}, {1, 0.5, 0.75, 0.4150}, {1, 0.5, 0.875, 0.1926}, {1, 2, 1.25, 0.3219}, {1, 0, 1, 1}, {0, 1, 1, 1},
	} {
		assert.InDelta(t, c.want, leftOf(c.proper, c.spoilt, c.now), 1e-4, "%+v", c)
	}
}

// No drink of a round holds what is avoided, nor does a cover that it offers; what is unknown
// counts as present.
func TestRoundsHoldNothingThatIsAvoided(t *testing.T) {
	s := newSchool(t)
	assert.Equal(t, []flavor.Allergen{flavor.Gluten, flavor.Molluscs}, AvoidedOf([]flavor.Allergen{flavor.Molluscs, flavor.Gluten}).List())
	avoid := []flavor.Allergen{flavor.Eggs, flavor.Milk}
	for _, req := range requests(StartSize, 5) {
		req.Avoid = AvoidedOf(avoid)
		r, err := s.trainer.Round(req)
		if req.Axis == ratio.Bitter && err != nil {
			assert.ErrorContains(t, err, "avoid fewer allergens", "nobody states what is in most bitters")
			continue
		}
		require.NoError(t, err, "%+v", req)
		var pours []flavor.Pour
		for i := range r.Specs {
			pours = append(pours, r.Specs[i].Pours...)
		}
		for _, d := range r.Drinks() {
			pours = append(pours, d.Pours...)
		}
		for _, o := range r.Options {
			pours = append(pours, o.Pours...)
		}
		for _, p := range pours {
			assert.True(t, p.Profile.Avoids(avoid), "%s in %s", p.Profile.Name, r.Question)
		}
	}
}

// Whoever mends a drink may leave a pour of it out, and is told what that does.
func TestAPourMayBeLeftOut(t *testing.T) {
	s := newSchool(t)
	spoilts(t, s, KindMend, StartSize, 2, func(r *Round) {
		last := len(r.Specs[0].Pours) - 1
		g, err := s.trainer.Grade(r, Answer{Pour: last})
		require.NoError(t, err)
		assert.Contains(t, g.Text, "Without its "+r.Specs[0].Pours[last].Profile.Name)
		assert.Len(t, r.Specs[0].Pours, last+1, "the round is not changed")
	})
	r, err := s.trainer.Round(RoundRequest{Kind: KindMend, Axis: ratio.Sour, Seed: 1})
	require.NoError(t, err)
	r.Specs[0].Pours = r.Specs[0].Pours[:1]
	_, err = s.trainer.Grade(r, Answer{Pour: 0})
	assert.ErrorContains(t, err, "nothing would be left")
}
