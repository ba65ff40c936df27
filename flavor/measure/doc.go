// Package measure knows the units of the bar: what each is in millilitres of an
// ingredient, which steps a hand can pour, and how an amount is written. Package
// draft beneath it reads and writes whole drinks.
//
// [Definition] gives the general size of each unit with its origin. A yield in
// a profile wins over it, so that a dash of salt is not a dash of bitters.
// Leaves, sprigs, slices, wedges, pieces and cubes have no general size: only
// the profile knows. Grams go through the density of the profile. Sugar and
// salt by the spoon are grains with air between them, see [SugarBulkGPerML].
//
// The package holds no state and changes none of its arguments.
package measure
