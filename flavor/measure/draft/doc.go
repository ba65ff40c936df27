// Package draft keeps a drink as bartenders write it down, to the letter, and says
// what each stretch of it is.
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
// read as. Package reading asks a finder for the ingredient behind each name, and
// works out what the draft leaves open; package edit is the way back.
//
// # Words
//
// The first line is the name of the drink, unless it states an amount. A line
// holds one entry, or several that slashes, semicolons, commas or plus signs
// part: a pour, what is said of method, service, ice and glass, a garnish, a
// rim, or a step. A # starts a remark.
//
// The package holds no state. A Draft is a value: what edits it returns another.
package draft
