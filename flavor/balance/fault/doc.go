// Package fault says what is wrong with a draft that was weighed, the likeliest first, in the
// words of the trade.
//
// Four views of the same glass are told: how the drink is made (method.go), what it carries
// beyond habit (beyond.go), what of its ratio strays (ratio.go) and what no drink has (bound.go).
// Of lists them in order so that none denies another. Which pour an axis is laid to is in
// blame.go; sentences are made last (told.go), since a fix may settle the amount that they name.
package fault
