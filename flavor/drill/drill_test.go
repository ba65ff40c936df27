package drill

import (
	"fmt"
	"regexp"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// school is the embedded data with a trainer over it.
type school struct {
	*datatest.Data
	trainer *Trainer
}

var loadSchool = sync.OnceValues(func() (*school, error) {
	d, err := datatest.Calibrated()
	if err != nil {
		return nil, err
	}
	c := d.Catalogue
	house, err := c.Demo()
	if err != nil {
		return nil, err
	}
	customs, err := c.Customs()
	if err != nil {
		return nil, err
	}
	judge := balance.NewJudge(d.Mixer, d.Set, balance.Pantry{})
	finder := cover.NewFinder(d.Mixer, judge, c.Space(), customs, cover.DefaultWeights())
	var menu []template.Labelled
	for i := range house.Specs {
		menu = append(menu, template.Labelled{Spec: house.Specs[i].Spec, Family: house.Specs[i].Family})
	}
	t, err := NewTrainer(d.Mixer, judge, d.Set, finder, d.Proven, house.Stock)
	if err != nil {
		return nil, err
	}
	return &school{d, t.WithMenu(menu)}, nil
})

func newSchool(t testing.TB) *school {
	s, err := loadSchool()
	require.NoError(t, err)
	return s
}

// requests lists one request for each skill.
func requests(size float64, seed uint64) (out []RoundRequest) {
	for _, s := range Skills() {
		axis, _ := ratio.ParseAxis(s.Axis)
		out = append(out, RoundRequest{Kind: s.Kind, Axis: axis, Size: size, Seed: seed})
	}
	return out
}

// rightAnswer is the answer that a round holds to be right.
func rightAnswer(r *Round) Answer {
	k := &r.key
	a := Answer{Axis: k.axis, High: k.high, Pour: k.pour, Order: k.order, Option: k.option, Lost: k.lost}
	switch r.Request.Kind {
	case KindMend:
		a.Amount = k.classic.spec.Pours[k.pour].Amount
	case KindGuess:
		a.ABV, a.Volume = k.values[0], k.values[2]
	}
	return a
}

// wrongAnswer is one that the engine cannot take.
func wrongAnswer(r *Round) Answer {
	a := rightAnswer(r)
	switch r.Request.Kind {
	case KindFault:
		a.High = !a.High
	case KindMend:
		a.Amount = r.Specs[0].Pours[a.Pour].Amount // left as it is
	case KindOrder:
		a.Order = []int{a.Order[2], a.Order[1], a.Order[0]}
	case KindGuess:
		a.ABV, a.Volume = 99, 5000
	case KindCover, KindFamily, KindHand:
		a.Option = (a.Option + 1) % len(r.Options)
	}
	return a
}

// Whatever the skill, the size and the seed: the round can be answered, the right
// answer is graded right and the wrong one wrong, both with two sentences of
// arithmetic, and the same request makes the same round.
func TestRoundsAreMadeFromTheEngine(t *testing.T) {
	s := newSchool(t)
	seeds := uint64(2)
	if testing.Short() {
		seeds = 1
	}
	for _, req := range requests(MinSize, 0) {
		checkRepeated(t, s.trainer, req)
	}
	for seed := range seeds {
		for _, size := range []float64{MinSize, 3, 8, MaxSize} {
			for _, req := range requests(size, seed) {
				r, err := s.trainer.Round(req)
				require.NoError(t, err, "%+v", req)
				assert.NotEmpty(t, r.Question)
				assert.Positive(t, r.Size)
				right, err := s.trainer.Grade(r, rightAnswer(r))
				require.NoError(t, err)
				assert.True(t, right.Right, "%+v: %s", req, right.Text)
				assert.InDelta(t, 1, right.Points, 1e-9)
				wrong, err := s.trainer.Grade(r, wrongAnswer(r))
				require.NoError(t, err)
				assert.False(t, wrong.Right, "%+v: %s", req, wrong.Text)
				assert.Less(t, wrong.Points, 1.0)
				for _, g := range []*Grade{right, wrong} {
					assert.Equal(t, 2, sentences(g.Text), g.Text)
					assert.NotEmpty(t, g.Solution)
					assert.NotEqual(t, ratio.Equivalents{}, g.Before)
					assert.NotEqual(t, ratio.Equivalents{}, g.After)
				}
			}
		}
	}
}

// checkRepeated checks that a request gives the same round each time.
func checkRepeated(t *testing.T, trainer *Trainer, req RoundRequest) {
	t.Helper()
	r, err := trainer.Round(req)
	require.NoError(t, err)
	again, err := trainer.Round(req)
	require.NoError(t, err)
	assert.Equal(t, r.Question, again.Question)
	assert.Equal(t, r.Options, again.Options)
	assert.Equal(t, rightAnswer(r), rightAnswer(again))
}

// sentences counts full stops that end a sentence and not an abbreviation.
func sentences(text string) int {
	return len(regexp.MustCompile(`\. [A-Z]|\.$`).FindAllString(text, -1))
}

// However fine a round is asked for, its drinks lie far enough apart to be told.
func TestDrinksToOrderCanBeTold(t *testing.T) {
	s := newSchool(t)
	for _, a := range []ratio.Axis{ratio.Strong, ratio.Sweet} {
		for _, size := range []float64{MinSize, 0.7, 4} {
			for seed := range uint64(8) {
				r, err := s.trainer.Round(RoundRequest{Kind: KindOrder, Axis: a, Size: size, Seed: seed})
				require.NoError(t, err)
				v := func(place int) float64 { return r.key.values[r.key.order[place]] }
				const rounding = 1e-9
				assert.GreaterOrEqual(t, tasting.JND(a, v(0), v(1)), leastGap-rounding, "%v of %v, seed %d", size, a, seed)
				assert.GreaterOrEqual(t, tasting.JND(a, v(1), v(2)), leastGap-rounding, "%v of %v, seed %d", size, a, seed)
				assert.GreaterOrEqual(t, r.Size, leastGap-rounding)
			}
		}
	}
}

func TestOrderIsThatOfTheGlass(t *testing.T) {
	s := newSchool(t)
	for seed := range uint64(5) {
		r, err := s.trainer.Round(RoundRequest{Kind: KindOrder, Axis: ratio.Strong, Size: 2, Seed: seed})
		require.NoError(t, err)
		last := 0.0
		for _, i := range r.key.order {
			d, err := s.trainer.mixer.Mix(&r.Specs[i])
			require.NoError(t, err)
			assert.Greater(t, d.ABV, last)
			last = d.ABV
		}
		assert.GreaterOrEqual(t, r.Size, 2/nearTimes-1e-9)
		g, err := s.trainer.Grade(r, Answer{Order: []int{r.key.order[1], r.key.order[0], r.key.order[2]}})
		require.NoError(t, err)
		assert.InDelta(t, 2.0/3, g.Points, 1e-9, "one pair of three is the wrong way round")
	}
}

func TestRoundFaults(t *testing.T) {
	s := newSchool(t)
	for _, req := range []RoundRequest{{Kind: "odd"}, {Kind: KindFault, Size: 99}, {Kind: KindFault, Axis: 9}, {Kind: KindOrder, Axis: ratio.Sour}} {
		_, err := s.trainer.Round(req)
		assert.ErrorIs(t, err, flavor.ErrInvalid, "%+v", req)
	}
	for _, req := range requests(4, 1) {
		r, err := s.trainer.Round(req)
		require.NoError(t, err)
		_, err = s.trainer.Grade(r, Answer{Axis: -1, Pour: 99, Order: []int{0, 0, 1}, ABV: -1, Option: -1})
		assert.ErrorIs(t, err, flavor.ErrInvalid, "%+v", req)
	}
}

func BenchmarkRound(bm *testing.B) {
	s := newSchool(bm)
	for _, k := range Kinds() {
		for _, size := range []float64{MinSize, 4, MaxSize} {
			bm.Run(fmt.Sprintf("%s/%v", k, size), func(bm *testing.B) {
				bm.ReportAllocs()
				seed := uint64(0)
				for bm.Loop() {
					seed++
					if _, err := s.trainer.Round(RoundRequest{Kind: k, Axis: ratio.Sweet, Size: size, Seed: seed}); err != nil {
						bm.Fatal(err)
					}
				}
			})
		}
	}
}

// Every cover that lies less than MinSize further than the best is right, with what
// is lost with it, and no other is.
func TestCoversAsNearAsTheBestAreRight(t *testing.T) {
	s := newSchool(t)
	two := 0
	for seed := range uint64(12) {
		r, err := s.trainer.Round(RoundRequest{Kind: KindCover, Size: MinSize, Seed: seed})
		require.NoError(t, err)
		right := 0
		for i := range r.Options {
			var best *Grade
			for _, x := range append(r.key.alike, alike{i, r.key.lost}) {
				g, err := s.trainer.Grade(r, Answer{Option: i, Lost: x.lost})
				require.NoError(t, err)
				if best == nil || g.Points > best.Points {
					best = g
				}
			}
			if best.Right {
				right++
			}
		}
		assert.Equal(t, len(r.key.alike), right)
		assert.Equal(t, r.Size < MinSize, right > 1, "seed %d: the next lies %v further", seed, r.Size)
		if right > 1 {
			two++
		}
	}
	t.Logf("%d of 12 rounds have two right covers or more", two)
}

// Cover rounds ask what a bartender is sure of: mostly a spirit in place of a spirit, and
// never plain syrup, of which nothing is lost. A share counted over the demo stock.
func TestCoverRoundsTeachWhatTheTradePours(t *testing.T) {
	s := newSchool(t)
	const rounds = 12
	base, sure := 0, 0
	for seed := range uint64(rounds) {
		r, err := s.trainer.Round(RoundRequest{Kind: KindCover, Size: 3, Seed: seed})
		require.NoError(t, err)
		out := r.key.classic.spec.Pours[r.key.pour].Profile
		if right := r.Options[r.key.option].Pours[0].Profile; s.trainer.isCustom(out, right) || right.Class == out.Class && out.Class.Part() == flavor.PartBase {
			sure++
		}
		assert.False(t, out.Class.Part() == flavor.PartSweetener && !slip.Smells(out), "nothing can be asked of %s", out.Name)
		if out.Class.Part() == flavor.PartBase {
			base++
		}
	}
	assert.GreaterOrEqual(t, base, rounds/2, "spirits are what a stand-in is surest of")
	assert.GreaterOrEqual(t, sure, rounds-1, "and the right answer is what the trade pours")
}

// Drinks are put in order of what a tongue finds in them, and other drinks each time.
func TestOrderRoundsAskWhatIsTasted(t *testing.T) {
	s := newSchool(t)
	for _, axis := range []ratio.Axis{ratio.Sweet, ratio.Strong} {
		asked := map[string]bool{}
		for seed := range uint64(12) {
			r, err := s.trainer.Round(RoundRequest{Kind: KindOrder, Axis: axis, Seed: seed})
			require.NoError(t, err)
			for i := range r.Specs {
				asked[r.Specs[i].Name] = true
				if axis == ratio.Sweet {
					assert.GreaterOrEqual(t, r.key.values[i], leastOrderedSweet, r.Specs[i].Name)
				}
			}
		}
		assert.GreaterOrEqual(t, len(asked), 18, "of 36 drinks by %v", axis)
	}
}

// Family rounds ask of many families and many drinks, and of none again and again. Shares
// counted over the proven drinks.
func TestFamilyRoundsAskOfManyFamilies(t *testing.T) {
	s := newSchool(t)
	const rounds = 40
	for _, size := range []float64{6, 3, 1.5} {
		families, drinks := map[string]int{}, map[string]bool{}
		for seed := range uint64(rounds) {
			r, err := s.trainer.Round(RoundRequest{Kind: KindFamily, Size: size, Seed: seed})
			require.NoError(t, err)
			families[r.key.offered[r.key.option].Name]++
			drinks[r.key.classic.spec.Name] = true
		}
		for name, n := range families {
			assert.LessOrEqual(t, n, rounds*2/5, "%s, %v steps", name, size)
		}
		assert.GreaterOrEqual(t, len(families), 5, "%v steps", size)
		assert.GreaterOrEqual(t, len(drinks), 10, "%v steps", size)
	}
}

// A family round says what makes the family, not how far a ratio lies from it; a wrong answer
// is told what would make that one. A ratio that was read is marked as its drink is.
func TestAFamilyIsTaught(t *testing.T) {
	s := newSchool(t)
	families, _ := s.trainer.set.Families()
	markOf := map[string]string{}
	for i := range families {
		markOf[families[i].Name] = families[i].Mark
	}
	for seed := range uint64(12) {
		r, err := s.trainer.Round(RoundRequest{Kind: KindFamily, Seed: seed})
		require.NoError(t, err)
		assert.Len(t, r.Marks(), 2, "of the drink and of its ratio")
		for i, o := range r.Options {
			g, err := s.trainer.Grade(r, Answer{Option: i})
			require.NoError(t, err)
			assert.Contains(t, g.Text, markOf[g.Solution])
			assert.Equal(t, g.Right, g.Why == "")
			if !g.Right {
				assert.Contains(t, g.Why, o.Label+" would be "+markOf[o.Label])
			}
		}
	}
}

// No cover round mixes up what is meant without alcohol and what is not, and mostly the wrong
// answers are of the kin of what is out. A share counted over the demo stock.
func TestWrongCoversAreLikely(t *testing.T) {
	s := newSchool(t)
	kin, all := 0, 0
	for seed := range uint64(16) {
		r, err := s.trainer.Round(RoundRequest{Kind: KindCover, Seed: seed})
		require.NoError(t, err)
		out := r.key.classic.spec.Pours[r.key.pour].Profile
		for _, o := range r.Options {
			p := o.Pours[0].Profile
			assert.Equal(t, sober(out), sober(p), "%s for %s", p.Name, out.Name)
			all++
			if p.Class.Kin() == out.Class.Kin() {
				kin++
			}
		}
	}
	assert.GreaterOrEqual(t, kin, all*3/4)
}

// A guess is asked with what stands on the labels, and length is told as it stands in the glass.
func TestWhatIsToldIsWhatIsRead(t *testing.T) {
	s := newSchool(t)
	for seed := range uint64(6) {
		r, err := s.trainer.Round(RoundRequest{Kind: KindGuess, Seed: seed})
		require.NoError(t, err)
		for _, p := range r.Specs[0].Pours {
			if p.Profile.ABV.Value > 1.2 {
				assert.Contains(t, r.Question, fmt.Sprintf("%s %.3g %%", p.Profile.Name, p.Profile.ABV.Value))
			}
		}
		long, err := s.trainer.Round(RoundRequest{Kind: KindMend, Axis: ratio.Long, Seed: seed})
		require.NoError(t, err)
		g, err := s.trainer.Grade(long, rightAnswer(long))
		require.NoError(t, err)
		assert.Regexp(t, `It is now \d+ ml of [\d.]+ % vol; poured properly`, g.Text)
	}
}
