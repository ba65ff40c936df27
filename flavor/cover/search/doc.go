// Package search finds which of many parts, one, two or three of them, poured in
// amounts of the jigger, fill the gap that something missing leaves in a glass.
// It knows rows of numbers and nothing of drinks; what they mean, and whether a
// filling may be served, is the caller's.
//
// # What is sought
//
// A filling is a combination of parts, an amount of each, and a set of at most
// two moves of other pours. It leaves a distance, the length of
//
//	gap − Σ amount · part − Σ move,
//
// and ranks by that distance, the cost of its moves, and its standing: what its
// parts must earn for being several, rare or strange. One part alone costs something
// too for every doubling or halving of what is poured like for like. The lower the better. A
// combination is listed once, by its best rounding that the caller accepts. It is
// listed only if every part earns its place: the distance is shorter by
// [Costs.Earn] than that of any fewer of its parts, in whatever amounts.
//
// # The chain of lower bounds
//
// The search is exact: every combination is rounded, or ruled out by a lower
// bound above the cutoff. The cutoff is the rank of the worst filling on a full
// list, and for a combination also the distance at which its parts would earn
// their place. From the cheapest to the dearest:
//
//  1. Standing. A rank is no less than its standing, since a distance is not
//     negative. What stands beyond the cutoff alone is out.
//  2. Reach. Along some directions no part ever takes away ([Problem.Rising]). A
//     distance is no less than its length along one direction, so a part whose
//     smallest amount overshoots by more than the cutoff is out, and so is one with
//     which, and the best that the others bring, the gap stays wanting by more.
//  3. Loose. With amounts free to be any number from zero up and moves free at a
//     price, least squares has a closed form in few products. A move is at most one
//     step, so for any price μ ≥ 0 the minimum of distance² + Σ μ(δ² − 1) over
//     free moves δ is no more than distance² with any allowed moves.
//  4. Free amounts. The same with each set of moves as it is: least squares of
//     amounts that are not negative is no more than with amounts of the jigger.
//  5. Rounding. Amounts are settled part by part; what the parts not yet settled
//     could explain at best bounds the rest. For the last part the distance is a
//     parabola in the amount, so the two amounts beside its vertex hold the best.
//
// None rules out too much, because each is no more than the rank, or the distance,
// of every filling that it speaks for; the tests hold each of them against the
// one before.
//
// What is likely is rounded first, to bring the cutoff down: the seeds, a few
// parts that alone come nearest, are combined before the rest.
package search
