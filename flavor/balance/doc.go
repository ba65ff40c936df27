// Package balance says how a draft sits in its family, what is off, and
// the smallest change of its pours that brings it back.
//
// The score is 100 at the centre of a family and 70 at the edge of its central
// 97 in 100; a drink between families is scored in each and the scores are
// averaged by how surely it belongs. Explain tells that arithmetic line by line.
//
// Faults are the axes that may be what is wrong with a draft that is not
// balanced, the likeliest first, in just-noticeable differences; nothing within
// the drink's own plus-or-minus is called one. Fixes are found by trying every
// step of the jigger, not by descent, so the best one is found if there is one:
// one pour moved before two, and something added only if a fault asks for it. A
// fix of the pour that the first fault names comes before one that shifts the
// rest, and the base stays near what was ordered while anything else will do.
package balance
