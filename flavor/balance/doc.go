// Package balance says how a draft sits in its family, what is off, and
// the smallest change of its pours that brings it back.
//
// The score is 100 at the centre of a family and 70 at the edge of its good drinks;
// a drink between families is scored in each and the scores are averaged by how
// surely it belongs. What is poured beyond habit, what no drink has and how it is
// made may take it further down. Explain tells that arithmetic line by line.
//
// Faults are at most three: how a draft is made, what is poured beyond habit, then what may
// be wrong with its ratio, the likeliest first. Fixes move the pour that the faults name, or
// leave it out; only if that does not balance the draft are others moved, then two, then
// something added.
package balance
