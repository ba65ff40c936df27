// Package part makes the parts that stand on more than one page, each with a
// template of its own in templates/parts or a value that every page shows alike:
// the allergens of a drink, a cover, what a drink costs, a drink drawn beside its
// family, the faults of a draft, and what makes one spec another.
package part
