// Package draft reads and writes a drink as bartenders write it down.
//
//	Halyard Sour
//	2 oz London dry gin
//	.75 lemon
//	3/4 simple, 2 dashes aromatic bitters
//	8 mint
//	shake, dbl strain, coupe
//	garnish: lemon twist
//
// Reading goes in two steps. [Parse] needs no catalogue: it turns text into a
// [Draft] that keeps every letter, and says of each stretch of it what it was
// read as. [Draft.Resolve] asks a [Finder] for the ingredient behind each name,
// works out what the draft leaves open from what it states, and answers with a
// [Reading]. [Format] is the way back: what it writes is read as the same spec.
//
// # Words
//
// The first line is the name of the drink, unless it states an amount. A line
// holds one entry, or several that slashes, semicolons, commas or plus signs
// part: a pour, what is said of method, service, ice and glass, a garnish, a
// rim, or a step. A # starts a remark.
//
// # What is inferred, and what is not
//
// A bare number takes the unit of the other lines; a fruit by volume is its
// juice; what the trade shortens is read at full length. Every such reading is
// marked in the match of its pour and said in a note. Where two readings are as
// likely, or none is, the answer is a [flavor.Fault] that names the line and the
// word and asks. Nothing is guessed silently, and all faults are reported
// together.
//
// The package holds no state. A Draft is a value: what edits it returns another.
package draft
