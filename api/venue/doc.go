// Package venue keeps a kitchen in step with the store of a house.
//
// A [Venue] reads the store and makes the kitchen that goes with it: the
// catalogue with the house's bottles and makings laid over it, in the index; the
// menu; the stock and what of it has run out; the palate, from the drinks marked
// as right; what was learnt of covers; what a millilitre costs. When the store
// changes, here or at another server that shares it, it makes the next one. A
// kitchen is never changed: whoever holds one goes on with what it was.
//
// Everything here is derived from the store and kept in memory, so a program
// that stops between a write and its effect has nothing to mend: the next start
// reads the store. The part of the index that the house decides carries the
// [Version] of the bottles and makings it was made from.
package venue
