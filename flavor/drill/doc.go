// Package drill trains the people behind the bar: rounds made from the engine, and a card
// for a new starter.
//
// A round asks one thing of drinks of the menu or of proven ones, by a request and a seed.
// Nothing in it is typed in: the answer is what the engine works out, and the same request
// makes the same round again, so that a round need not be kept to be graded.
//
// How hard a round is, is a size in just-noticeable differences, or for a guess in twelfths
// of one, see [Steps]; it follows the learner by [pace.Staircase], and when a skill is due
// again by [pace.Repeat]. A [Learner] is plain data, and [Replay] makes it again of the
// [Outcome] of each round. Nothing is random but for the seeds passed in.
package drill
