// Package drill trains the people behind the bar: rounds made from the engine, and a card
// for a new starter.
//
// A round asks one thing (name the fault, mend it, put three in order, guess the
// finished numbers, pick the cover, read the
// family, tell how a drink was made wrong) and is made from drinks
// of the menu or proven ones by a request and a seed. Nothing in it is typed in: the answer is what
// the engine works out, and the same request makes the same round again, so that
// a round need not be kept to be graded. Each grade gives the arithmetic in two
// sentences and the equivalents before and after, for a drawing.
//
// How hard a round is, is a size in just-noticeable differences, or for a guess in
// twelfths of one, see [Steps]. It follows the learner by a weighted
// staircase, see [pace.Staircase]; when a skill is due again follows Wozniak's schedule of 1990,
// see [pace.Repeat]. A [Learner] is plain data; every change returns a new one. A
// caller stores it, or else the [Result] of each round, of which [Replay] makes it
// again.
//
// Nothing is random but for the seeds passed in.
package drill
