// Package habit knows how much of each kind of pour, and of each sense, proven
// drinks carry at most.
//
// A ratio cannot see salt, perfume, cream or a rinse poured by the ounce. So for
// every ingredient of a drink the package asks what proven drinks pour of it or,
// where it is rare, of what is like it, those made like the drink in hand counting
// most; and the same for every sense, whatever brings it. Amounts are shares of
// the drink before ice, so a batch is judged as a glass is. What all but a few good
// drinks stay below is the most, see mostOf for the rule.
//
// It knows nothing of families or scores: the caller says how near in make-up
// each proven drink is.
package habit
