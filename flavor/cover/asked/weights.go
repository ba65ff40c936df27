package asked

import "counterpour/flavor/cover/gap"

// Weights are what covers must earn, in just-noticeable differences. All are
// judged on situations of the trade (common practice, no source).
type Weights struct {
	// Part and Move: each part more than there are things out, a pour moved by one step.
	Part, Move float64
	// Earn: what a further part must bring the glass nearer by.
	Earn float64
	// Rare: a part that no proven drink pours, where no stock list says what is
	// at hand; the others less, see [flavor.Commonness.Rarity].
	Rare float64
	// Unlike: each doubling or halving of the amount that went.
	Unlike float64
	// Lead: a glass that has lost what led the missing ingredient.
	Lead float64
	// Score: each point of the score that is lost, the first few apart.
	Score float64
	// Habit: what a first choice of the trade ranks nearer by, whatever it is like; each
	// further one less by as much.
	Habit float64
	// Gap: what a bottle must earn for being strange in the place of what went.
	Gap gap.Weights
}

// DefaultWeights returns the weights that the program uses.
func DefaultWeights() Weights {
	return Weights{Part: 3, Move: 0.25, Unlike: 0.75, Earn: 1, Rare: 4, Lead: 1.5, Score: 0.04, Habit: 2, Gap: gap.DefaultWeights()}
}

// Distances between glasses, in just-noticeable differences. Up to NearJND a cover is
// said to keep the drink. Beyond LastJND it is another drink and no cover. Two covers
// nearer to each other than SameIdea are one. The alcohol that a guest must not have
// counts for none of them.
const (
	NearJND = 4.0
	LastJND = 9.0
	// SpareJND is how much further than a drink that brings a new allergen one without it may lie
	// and be poured before it: hardly anybody tells as much. Common practice, no source.
	SpareJND = 0.75
	// LastKnownJND is the same for one spirit in the measure of another, and LastCustomJND for
	// what the trade pours: a cider where the beer is out, or a soda, is another drink, and what
	// every bar offers.
	LastKnownJND  = 13.0
	LastCustomJND = 25.0
	SameIdea      = 0.5
)
