package weigh

import "math"

// Verdict is a score in a word.
type Verdict string

// A drink is balanced from 70, near from 50, and otherwise off.
const (
	Balanced Verdict = "balanced"
	Near     Verdict = "near"
	Off      Verdict = "off"

	BalancedFrom = 70.0
	NearFrom     = 50.0
)

// VerdictOf returns the word for a score of 0 to 100.
func VerdictOf(score float64) Verdict {
	switch {
	case score >= BalancedFrom:
		return Balanced
	case score >= NearFrom:
		return Near
	}
	return Off
}

// scoreOf turns a squared distance, in units of the family's squared edge, into
// a score: 100 at the centre, 70 at the edge, falling to 0.
func scoreOf(edges float64) float64 {
	if edges > noScore {
		return 0
	}
	return 100 * math.Exp(edges*logBalanced)
}

// edgesAt is the inverse of scoreOf: +Inf for a score of 0.
func edgesAt(score float64) float64 { return math.Log(score/100) / logBalanced }

// excusedShare is the share of how far out a drink is by its ratio that precedents excuse at most,
// if nothing in it is near the edge of what they have. Chosen by the trial.
const excusedShare = 0.5

// Excuse returns the score by the ratio of a drink that precedents excuse so surely: a family
// is wide, and its ratio tells less of a drink than those that are made of the same.
func Excuse(ratio, excused float64) float64 {
	if excused <= 0 || ratio <= 0 {
		return ratio
	}
	return scoreOf(edgesAt(ratio) * (1 - excusedShare*excused))
}

// together returns the score of a drink, given that by its ratio and how far out it is
// by what it carries, by its proportions and by its bounds and method. What strays by its
// ratio and by what it carries, though by each within the edge, is further out than by
// each alone: the cube root of the sum of their cubes, a power that was chosen by the
// trial. Proportions are another view of the ratio, so those two are hardly added up: to
// the sixth power. A bound is no matter of more or less, so it only counts if it leaves
// less.
func together(ratio, habit, uneven, bound float64) float64 {
	if habit > 0 || uneven > 0 {
		r := edgesAt(ratio)
		cubes := r*r*r + habit*habit*habit
		ratio = min(ratio, scoreOf(math.Pow(cubes*cubes+math.Pow(uneven, 6), 1.0/6)))
	}
	return min(ratio, scoreOf(bound))
}

// ScoreAt returns the score at a squared distance, in units of the squared edge of
// what is balanced: 70 at 1.
func ScoreAt(edges float64) float64 { return scoreOf(edges) }

// noScore is where the score is less than a billionth of a billionth of a
// point.
const noScore = 130.0

var logBalanced = math.Log(BalancedFrom / 100)
