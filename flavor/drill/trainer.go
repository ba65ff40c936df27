package drill

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/drill/handling"
	"counterpour/flavor/drill/pace"
	"counterpour/flavor/drill/slip"
	"counterpour/flavor/mix"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// Trainer makes and grades rounds. It is safe for concurrent use.
type Trainer struct {
	mixer    *mix.Mixer
	judge    *balance.Judge
	set      *weigh.Set
	finder   *cover.Finder
	bench    *handling.Bench
	stock    []*flavor.Profile
	classics []classic
	hand     *slip.Hand // that pours proven drinks
	// spoilable lists, by axis, the slips that move it.
	spoilable [ratio.NumAxes][]*spoilable
}

// classic is a proven drink that the engine holds to be balanced.
type classic struct {
	spec   flavor.Spec
	family string
	drink  *mix.Drink
	own    bool // of the menu
	// fits are the families in which the drink is balanced and that it may well be of.
	fits []string
}

// mayBeOf is the least probability of a family that somebody may take a drink for.
const mayBeOf = 0.1

// newClassic returns a balanced drink as rounds ask about it.
func newClassic(d *template.Labelled, r *balance.Result) classic {
	c := classic{spec: d.Spec, family: d.Family, drink: r.Drink}
	for i := range r.Judgement.Fits {
		if f := &r.Judgement.Fits[i]; f.Score >= weigh.BalancedFrom && f.Probability >= mayBeOf {
			c.fits = append(c.fits, f.ID)
		}
	}
	return c
}

// NewTrainer returns a trainer whose rounds are made from proven drinks; covers
// are sought in stock. It fails if fewer than three of them are balanced.
func NewTrainer(mixer *mix.Mixer, judge *balance.Judge, set *weigh.Set, finder *cover.Finder, proven []template.Labelled, stock []*flavor.Profile) (*Trainer, error) {
	bench, err := handling.NewBench(mixer)
	if err != nil {
		return nil, err
	}
	t := &Trainer{mixer: mixer, judge: judge, set: set, finder: finder, bench: bench, stock: stock}
	for i := range proven {
		r, err := judge.Score(&proven[i].Spec)
		if err != nil {
			return nil, fmt.Errorf("drill: proven drink %q: %w", proven[i].Spec.Name, err)
		}
		if r.Verdict == weigh.Balanced {
			t.classics = append(t.classics, newClassic(&proven[i], r))
		}
	}
	if len(t.classics) < 3 {
		return nil, fmt.Errorf("drill: %d of the proven drinks are balanced; rounds need at least three", len(t.classics))
	}
	specs := make([]*flavor.Spec, len(proven))
	for i := range proven {
		specs[i] = &proven[i].Spec
	}
	t.hand = slip.NewHand(specs, stock)
	t.findSpoilable(0)
	return t, nil
}

// WithMenu returns a trainer that makes rounds of the bar's own drinks too. One that is not
// balanced, or cannot be judged, is asked of nobody.
func (t *Trainer) WithMenu(menu []template.Labelled) *Trainer {
	out := *t
	out.classics = slices.Clone(t.classics)
	for a := range t.spoilable {
		out.spoilable[a] = slices.Clone(t.spoilable[a])
	}
	for i := range menu {
		if r, err := t.judge.Score(&menu[i].Spec); err == nil && r.Verdict == weigh.Balanced {
			c := newClassic(&menu[i], r)
			c.own = true
			out.classics = append(out.classics, c)
		}
	}
	out.findSpoilable(len(t.classics))
	return &out
}

// Kind is what a round asks.
type Kind string

// The kinds of rounds.
const (
	KindFault  Kind = "fault"  // name the fault of a spoilt classic
	KindMend   Kind = "mend"   // mend it in one move
	KindOrder  Kind = "order"  // put three drinks in order of an axis
	KindGuess  Kind = "guess"  // guess the finished strength and volume
	KindCover  Kind = "cover"  // pick the cover that keeps the drink
	KindFamily Kind = "family" // read the family from the ratio
	KindHand   Kind = "hand"   // tell from the glass how a drink was made wrong
)

// Kinds lists the kinds of rounds, the easiest to explain first.
func Kinds() []Kind {
	return []Kind{KindFamily, KindFault, KindMend, KindOrder, KindGuess, KindCover, KindHand}
}

// Sizes of rounds, in just-noticeable differences.
const (
	StartSize = pace.StartSize
	MinSize   = pace.MinSize
	MaxSize   = pace.MaxSize
)

// RoundRequest asks for a round. The same request makes the same round.
type RoundRequest struct {
	Kind Kind
	Axis ratio.Axis // for fault, mend and order; see Skills
	Size float64    // wanted, MinSize to MaxSize; 0 means StartSize
	Seed uint64
	// Avoid are allergens that no drink of the round may hold; what is unknown counts as
	// present.
	Avoid Avoided
	// Menu asks for drinks of the bar's own menu, and for no others.
	Menu bool
}

// Option is one answer to choose from.
type Option struct {
	Label string
	Pours []flavor.Pour // of a cover
}

// Round is one question.
type Round struct {
	Request  RoundRequest
	Size     float64 // as it came out, in just-noticeable differences
	Question string
	Specs    []flavor.Spec // what is shown, without its name where that would tell
	Options  []Option
	// Ratio is what is shown of a family round, by axis; zero for an axis that
	// the drink hardly has.
	Ratio ratio.Equivalents

	key key
}

// Drinks lists the drinks that a round is of, poured as they should be, whether they are
// shown or not.
func (r *Round) Drinks() []*flavor.Spec {
	if r.key.classic != nil {
		return []*flavor.Spec{&r.key.classic.spec}
	}
	out := make([]*flavor.Spec, len(r.Specs))
	for i := range r.Specs {
		out[i] = &r.Specs[i]
	}
	return out
}

// Marks are those of what a round asks: of its drinks, and of the ratio that is to be read,
// which several drinks may share.
func (r *Round) Marks() (out []Mark) {
	for _, d := range r.Drinks() {
		out = append(out, MarkOf(d))
	}
	if r.Request.Kind == KindFamily {
		out = append(out, markOf(r.Question))
	}
	return out
}

// key is the answer to a round.
type key struct {
	axis    ratio.Axis
	high    bool
	off     []side    // of a fault: all that is right
	slip    slip.Slip // of a fault and a mend
	pour    int       // of the proper drink, that is wrong
	classic *classic
	order   []int
	option  int
	alike   []alike // of a cover: the options that are right
	lost    []flavor.AromaFamily
	values  []float64
	offered []*template.Family // of a family: each option
	next    int                // of a family: the nearest of the wrong options
	proper  handling.Served    // of a hand
	made    []handling.Mishap  // of a hand: each option
	after   ratio.Equivalents
}

// Answer is what a learner says. Which fields count depends on the kind.
type Answer struct {
	Axis   ratio.Axis // fault
	High   bool       // fault: there is too much of it
	Pour   int        // mend: index of the pour to move
	Amount float64    // mend: its new amount, in its unit
	Order  []int      // order: indices into Specs, the least first
	ABV    float64    // guess, % vol
	Volume float64    // guess, mL
	Option int        // cover, family: index into Options
	Lost   []flavor.AromaFamily
}

// Grade is what became of an answer.
type Grade struct {
	Right  bool
	Points float64 // 0 to 1, with part of them for half an answer
	// Text is the arithmetic, in two sentences.
	Text string
	// Before and After are the equivalents to draw: the classic and the spoilt
	// drink, the spoilt and the mended, the least and the most, the drink and
	// its cover, the ratio and the centre of its family.
	Before, After ratio.Equivalents
	Solution      string // the right answer
	// Of a fault and a mend: Slip says which pour was wrong, how much was poured and what
	// the proper drink pours; Proper is that drink, and Wrong are the pours of it that were
	// not made.
	Slip   string
	Proper *flavor.Spec
	Wrong  []int
	Why    string // why a wrong answer is wrong; empty for a right one
}

// Round makes a round. It fails with a fault if the request is out of range or
// if no proven drink lends itself to it.
func (t *Trainer) Round(r RoundRequest) (*Round, error) {
	if r.Size == 0 {
		r.Size = StartSize
	}
	if !(r.Size >= MinSize && r.Size <= MaxSize) {
		return nil, flavor.Invalid("size", r.Size, "%v is no size for a round; use %v to %v noticeable steps", r.Size, MinSize, MaxSize)
	}
	if r.Axis < 0 || int(r.Axis) >= ratio.NumAxes {
		return nil, flavor.Invalid("axis", int(r.Axis), "the axis is not known; use one of %v", ratio.Axes())
	}
	rng := rand.New(rand.NewPCG(r.Seed, roundStream))
	switch r.Kind {
	case KindFault, KindMend:
		return t.spoiltRound(r, rng)
	case KindOrder:
		return t.orderRound(r, rng)
	case KindGuess:
		return t.guessRound(r, rng)
	case KindCover:
		return t.coverRound(r, rng)
	case KindFamily:
		return t.familyRound(r, rng)
	case KindHand:
		return t.handRound(r, rng)
	}
	return nil, flavor.Invalid("kind", string(r.Kind), "%q is no kind of round; use one of %v", r.Kind, Kinds())
}

// roundStream keeps what is drawn for rounds apart from what is drawn for another purpose
// from the same seed.
const roundStream = 0x526f756e64

// Grade grades an answer. It fails with a fault if the answer does not fit the
// round.
func (t *Trainer) Grade(r *Round, a Answer) (*Grade, error) {
	switch r.Request.Kind {
	case KindFault:
		return t.gradeFault(r, &a)
	case KindMend:
		return t.gradeMend(r, &a)
	case KindOrder:
		return gradeOrder(r, &a)
	case KindGuess:
		return gradeGuess(r, &a)
	case KindCover:
		return gradeCover(r, &a)
	case KindFamily:
		return gradeFamily(r, &a)
	case KindHand:
		return gradeHand(r, &a)
	}
	return nil, flavor.Invalid("kind", string(r.Request.Kind), "%q is no kind of round; use one of %v", r.Request.Kind, Kinds())
}
