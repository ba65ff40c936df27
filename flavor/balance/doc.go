// Package balance says how a draft sits in its family, what pulls it out, and
// the smallest change of its pours that brings it back.
//
// The score is 100 at the centre of a family and 70 at the edge of its central
// nine in ten; a drink between families is scored in each and the scores are
// averaged by how surely it belongs. Faults are the axes that pull a draft that
// is not balanced, in just-noticeable differences; nothing within the drink's
// own plus-or-minus is called one. Fixes are found by trying every step of the
// jigger, not by descent, so the smallest one is found if there is one.
package balance
