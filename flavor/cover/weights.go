package cover

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
	// Class: a part of another part of the drink than what is missing; a third of
	// it for another class of the same kin, two thirds for other kin.
	Class float64
	// Aroma: a part that smells of nothing that the missing one smells of.
	Aroma float64
	// Look: a part of quite another colour, where the trade goes by colour.
	Look float64
	// Solid: what comes by the piece in place of a liquid, and the other way.
	Solid float64
	// Unlike: each doubling or halving of the amount that went. Firm: any other amount
	// of what is of one class, or one spirit for another; Measure: of a spirit that is
	// as strong.
	Unlike, Firm, Measure float64
	// Lead: a glass that has lost what led the missing ingredient.
	Lead float64
	// Score: each point of the score that is lost, the first few apart.
	Score float64
	// Role: a part that is no spirit in the place of a little of a base spirit, holds
	// alcohol in the place of a juice, or is a spirit beside what nobody pours it beside.
	Role float64
	// Custom: what a first choice of the trade is let off of the two before;
	// Place: what each further place takes back.
	Custom, Place float64
	// Habit: what a first choice of the trade ranks nearer by, whatever it is like; each
	// further one less by as much.
	Habit float64
}

// DefaultWeights returns the weights that the program uses.
func DefaultWeights() Weights {
	return Weights{Part: 3, Move: 0.25, Unlike: 0.75, Firm: 1.5, Measure: 4, Earn: 1, Rare: 4, Lead: 1.5, Score: 0.04, Role: 4, Class: 1.5, Look: 1.5, Solid: 1.5, Aroma: 4, Custom: 2, Place: 0.1, Habit: 2}
}

// NearJND is the distance up to which a cover is said to keep the drink, LastJND the
// one beyond which it is another drink and no cover, and sameIdea the one below which
// two covers are one. The alcohol that a guest must not have counts for none of them.
const (
	NearJND = 4.0
	LastJND = 9.0
	// LastKnownJND is the same for one spirit in the measure of another, and LastCustomJND for
	// what the trade pours: a cider where the beer is out is another drink, and what every bar
	// offers.
	LastKnownJND  = 13.0
	LastCustomJND = 20.0
	sameIdea      = 0.5
)

// tail is by how much a cover may rank below the best to be listed at all, in
// steps.
const tail = 5.0

// blur is by how much the distance in the glass may differ from that in the space
// near the original, to be on the safe side when covers are searched for.
const blur = 3.0
