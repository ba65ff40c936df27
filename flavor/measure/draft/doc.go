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
// # The order of reading
//
// [Parse] needs no catalogue: it turns text into a [Draft] that keeps every letter, and says
// of each stretch of it what it was read as. The packages in words know words, and no
// ingredient. What follows asks a finder:
//
//  1. In names, package naming finds which ingredient a name means where it stands: what the place
//     makes of it, by packages jargon and tongue, a name, a short form, a slip of the pen.
//  2. Package meaning works out what the draft means as it is parsed: its first line, the units of
//     bare numbers (counting), names that fit beside others (fitting), method and service (manner).
//  3. Package reading has the text set anew where that leaves something open, and reads it again,
//     as the packages in rewriting do: by layout, recipe and runon into other lines, by shorthand, bilingual and phrasing in other
//     words, by correcting, subrecipe, unpoured, everyday and around without what is not poured,
//     by paired with each amount at its name, and at last by likeliest.
//  4. Package overlooked holds what was read against the text, so that nothing written is lost.
//
// Package edit is the way back.
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
