// Package cover finds what to pour instead of an ingredient that is missing, so
// that the glass stays the same, as a bartender would pour it.
//
// Covers are judged by the finished drink: the distance, in just-noticeable
// differences over every sense, between what the guest had and what the guest
// gets, see package sense. What the trade does settles what is poured first among
// those that are near each other: a cover ranks by its distance and by what its
// parts must earn,
//
//   - for being several: a second bottle is poured only if it brings the glass
//     nearer by a step that a guest notices, and so is a third;
//   - for being rare, where no stock list says what is at hand;
//   - for being strange in the place of what is missing: of another class, and
//     smelling of other things. A custom of the trade takes off up to two steps, and
//     what it is known to lose costs it nothing;
//   - for what of the balance is lost.
//
// Beyond the distance up to which a drink is kept, a step counts for half. Beside what
// is like the thing that went, nothing is listed that is not.
//
// Water, sugar and salt never stand for an aroma. Two covers whose glasses differ
// by less than half a step are one idea: the better one is listed, the other under
// it. No cover carries what the guest must not have; what nobody has stated counts
// as present, and what only a label would have to clear is listed apart.
//
// The way from what ran out to what is poured is told by the packages beneath: asked
// is the question, gap what it leaves of the drink, shelf which bottles may stand
// there, search which of them together and how much, idea what each comes to in the
// glass, listing which ideas somebody wants to read. This package asks them by turns,
// the strictest question first, and says the answer.
//
// Which amounts are poured is found by package search, exactly, in the space near
// the original glass, where steps are linear; the distance that is shown is then
// measured between the two glasses.
package cover
