// Package riff varies a drink without losing its balance: a role poured anew, a
// base split, a drink lengthened, lightened or mixed another way, moved toward
// an axis or an aroma, always from what is in stock and within what the guest
// may have.
//
// Every variation goes the same way. A move changes what is in the glass; the
// amounts are then solved again over steps of the jigger until the drink is
// balanced and the wishes are met; the finished drink is mixed and judged, and
// is kept only if it scores as balanced and breaks no limit.
//
// What is shown is chosen by maximal marginal relevance (Carbonell and
// Goldstein, SIGIR 1998): one riff after another, each the best compromise
// between its own quality and how much it repeats those before it. It was
// preferred to a determinantal choice because a list can be cut anywhere and what
// is left was chosen just so, a reader can be told why an item is there, and the
// greedy choice is cheap. On top of it stands a hard rule: no
// two riffs, and no riff and the drink it came from, are nearer than
// [LeastDistance], or [station.LeastWished] where a wish says what to change.
//
// Distances are in just-noticeable differences of the finished drink, see
// [station.Apart]. Nothing here is random but for the seed that is passed in, and
// the same request gives the same list.
package riff
