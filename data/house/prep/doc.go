// Package prep works out what a house spends and what it makes ahead: the cost
// of a pour, a drink and a cover, and batches with the water that stands in for
// the ice. Everything here is a function of its arguments.
//
// Costs are in the currency of the bottles; a batch is in millilitres at 20 °C
// and in grams, rounded to what a jug and a scale can do. How long a batch
// keeps is said with caution and defers to local food-safety law.
package prep
