// Package station is where drafts of drinks are worked on: what stands on the
// shelf, what company it keeps, how the amounts of a draft are settled, and which
// drafts are shown. What a guest and their wishes ask of them is package aim.
// Package riff varies a drink with it, package useup moves bottles and package walk
// leads from one drink to another.
//
// A [Station] is built once and is safe for concurrent use. A [Job] is one
// request being worked on: its shelf, its limits and the drink that it is about,
// if there is one. A [Sketch] is a drink whose amounts are still to be settled,
// and [Job.Settle] climbs over steps of the jigger until the drink is balanced,
// keeps to the limits and meets the wishes, as far as that goes; [Job.Fate] says
// what became of it.
//
// What proven drinks pour together says what company a draft keeps, see package
// precedent: pairs that they shun are never listed, strange ones cost quality. What a drink is
// called claims nothing that its glass does not hold.
//
// What is shown is chosen by maximal marginal relevance (Carbonell and
// Goldstein, SIGIR 1998): one drink after another, each the best compromise
// between its own quality and how much it repeats those before it. It was
// preferred to a determinantal choice because a list can be cut anywhere and what
// is left was chosen just so, a reader can be told why an item is there, and the
// greedy choice is cheap. On top of it stand two hard rules: no two drinks of a
// list are nearer than [LeastDistance], nor made of the same things.
//
// Nothing here is random but for the seed that is passed in, and the same
// request gives the same list.
package station
