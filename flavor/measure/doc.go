// Package measure reads and writes what a bartender writes down: amounts,
// units, and a spec as text, one pour a line.
//
//	Halyard Sour
//	2 oz London dry gin
//	3/4 oz lemon juice
//	½ oz simple syrup
//	2 dashes aromatic bitters
//	6 mint leaves
//	shake, up
//
// Reading goes in two steps. [Parse] needs no catalogue: it turns text into a
// [Draft] of amounts, units and names as written. [Resolve] asks a [Finder] for
// the ingredient behind each name and works out millilitres. [Format] is the
// way back: what it writes, Parse and Resolve read as the same spec.
//
// # Words
//
// The first line is the name of the drink, unless it states an amount; a name
// that would read as a pour is written "name: 12 Mile Limit". Blank lines and
// lines that start with # are passed over, and a bullet at the start of a line
// is dropped. Lines without an amount state the method and the service. Nothing
// is guessed: whatever cannot be read is a [flavor.Fault] that names the line
// and the word and says how to mend it, and all faults are reported together.
// What the trade takes for granted (a part as 30 mL, a missing method) is done
// and said in the notes.
//
// # Units
//
// [Definition] gives the general size of each unit with its origin. A yield in
// a profile wins over it, so that a dash of salt is not a dash of bitters.
// Leaves, sprigs, slices, wedges, pieces and cubes have no general size: only
// the profile knows. Grams go through the density of the profile. Sugar and
// salt by the spoon are grains with air between them, see [SugarBulkGPerML].
//
// The package holds no state and changes none of its arguments.
package measure
