package drill

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/weigh"
)

// What mends a drink: common practice, no source.
const (
	undone       = 2.0 / 3 // of the slip must be taken back
	scoreUndone  = 2.0 / 3 // or of the score that it cost, if more than half of the slip is as well
	halfTaken    = 0.5
	beyondTimes  = 1.4  // of the proper one, or one part in so many, is too far the other way
	sizeTimes    = 1.4  // the mended drink may be so many times the proper one, or one part in so many
	nearProper   = 5.0  // points below the proper drink that are as good as it
	sameAmount   = 0.02 // how far an amount may be from the proper one and be it: ¾ oz is 22 ml
	halfAtMost   = 0.5  // of the points, for a move that mends in part
	leastLostFor = 1.0  // points that a slip costs at least, so that a share can be taken of them
)

// gradeMend takes the proper amount for right. A move is right too if it takes back most
// of what the slip did to its axis, or to the balance of that axis with the one it is
// held against: sugar with acid, strength with length. A move that takes back more than
// half is right if it also takes back most of the score that the slip cost. Such a move
// leaves the drink about as large as it should be, and balanced or nearly as good as the
// proper one.
func (t *Trainer) gradeMend(r *Round, a *Answer) (*Grade, error) {
	s := r.Specs[0].Clone()
	if a.Pour < 0 || a.Pour >= len(s.Pours) {
		return nil, flavor.Invalid("pour", a.Pour, "there is no pour %d; use 0 to %d", a.Pour, len(s.Pours)-1)
	}
	was := s.Pours[a.Pour]
	now, err := repoured(&was, a.Amount)
	if err != nil {
		return nil, err
	}
	m := mending{key: &r.key, pour: a.Pour, pourable: t.hand.Pourable(&was, now.ML) || now.ML < was.ML}
	if m.before, err = t.judge.ScoreOnly(&s); err != nil {
		return nil, err
	}
	if s.Pours[a.Pour] = now; now.ML == 0 {
		s.Pours = slices.Delete(s.Pours, a.Pour, a.Pour+1)
	}
	if len(s.Pours) == 0 {
		return nil, flavor.Invalid("amount", a.Amount, "nothing would be left of the drink; write an amount above 0")
	}
	if m.after, err = t.judge.ScoreOnly(&s); err != nil {
		return nil, err
	}
	if m.proper, err = t.judge.ScoreOnly(&r.key.classic.spec); err != nil {
		return nil, err
	}
	m.amount = a.Amount
	k := &r.key
	g := &Grade{Before: ratio.EquivalentsOf(&r.Specs[0]), After: ratio.EquivalentsOf(&s)}
	m.axes(&g.Before, &g.After)
	mended, err := t.mixer.Mix(&s)
	if err != nil {
		return nil, err
	}
	m.large, m.wantLarge = mended.BeforeML, r.key.classic.drink.BeforeML
	g.Right, g.Points = m.right(), 1
	g.tellSlip(k)
	if !g.Right {
		g.Points = max(0, min(halfAtMost, m.regained()*halfAtMost))
		g.Why = m.whyNot(was.Profile.Name)
	}
	g.Solution = wording.Poured(&k.classic.spec.Pours[k.pour])
	g.Text = wording.Mended(&now, was.Amount, m.after, m.before, m.proper)
	if k.axis == ratio.Long {
		g.Text += wording.NowStretched(mended, k.classic.drink)
	} else {
		g.Text += wording.Now(k.axis, g.After[k.axis], m.want)
	}
	return g, nil
}

// repoured is a pour with another amount in its unit; 0 leaves it out.
func repoured(was *flavor.Pour, amount float64) (flavor.Pour, error) {
	now := *was
	now.Amount, now.ML = amount, 0
	if amount == 0 {
		return now, nil
	}
	var err error
	now.ML, err = measure.ToML(amount, was.Unit, was.Profile)
	return now, err
}

// mending is a move that is to mend a drink.
type mending struct {
	key                   *key
	pour                  int
	amount                float64
	pourable              bool    // anybody pours so much
	want, left            float64 // of the axis: as it should be, in mL, and the share of the slip that is left of it
	beyond                float64 // how many times too far the axis is now on the other side; 0 if it is not
	large, wantLarge      float64 // mL before ice, of the mended and of the proper drink
	before, after, proper float64 // scores
}

// sized reports whether the mended drink is about as large as the proper one.
func (m *mending) sized() bool {
	return m.large <= sizeTimes*m.wantLarge && m.large >= m.wantLarge/sizeTimes
}

func (m *mending) axes(spoilt, now *ratio.Equivalents) {
	a := side{axis: m.key.axis}
	proper := ratio.EquivalentsOf(&m.key.classic.spec)
	m.want = proper[a.axis]
	m.left = leftOf(proper[a.axis], spoilt[a.axis], now[a.axis])
	if m.want > 0 && now[a.axis] > 0 && now[a.axis] > m.want != (spoilt[a.axis] > m.want) {
		m.beyond = max(now[a.axis], m.want) / min(now[a.axis], m.want)
	}
	if b := a.mirror().axis; b != a.axis {
		beside := func(e *ratio.Equivalents) float64 {
			if e[b] <= 0 {
				return 0
			}
			return e[a.axis] / e[b]
		}
		m.left = min(m.left, leftOf(beside(&proper), beside(spoilt), beside(now)))
	}
}

// leftOf is the share of a slip that a move leaves, on the scale on which steps are equal;
// 1 where that cannot be told, since one of them has nothing.
func leftOf(proper, spoilt, now float64) float64 {
	if proper <= 0 || spoilt <= 0 || now <= 0 || proper == spoilt {
		return 1
	}
	return math.Abs(math.Log(now/proper) / math.Log(spoilt/proper))
}

// isProper reports whether the move pours what the drink should have.
func (m *mending) isProper() bool {
	was := m.key.classic.spec.Pours[m.key.pour].Amount
	return m.pour == m.key.pour && math.Abs(m.amount-was) <= sameAmount*was
}

// regained is the share of the score that the slip cost which the move takes back.
func (m *mending) regained() float64 {
	return (m.after - m.before) / max(leastLostFor, m.proper-m.before)
}

// undoes reports whether the axis is back for the most part.
func (m *mending) undoes() bool { return m.left <= 1-undone }

func (m *mending) right() bool {
	if m.isProper() {
		return true
	}
	good := m.after >= weigh.BalancedFrom || m.after >= m.proper-nearProper
	return m.pourable && good && m.sized() && m.beyond < beyondTimes && (m.undoes() || m.left < halfTaken && m.regained() >= scoreUndone)
}

// whyNot says what a move lacks.
func (m *mending) whyNot(name string) string {
	switch {
	case !m.pourable:
		return wording.NobodyPours(name)
	case m.after <= m.before:
		return wording.NoBetter
	case m.after < weigh.BalancedFrom:
		return wording.StillOff(weigh.BalancedFrom)
	case !m.sized():
		return wording.OtherSize(m.large, m.wantLarge)
	case m.beyond > 0:
		return wording.TooFar(m.key.axis)
	}
	return wording.LesserPart
}
