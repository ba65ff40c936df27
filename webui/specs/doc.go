// Package specs is the pages of the house's drinks: the list and its search, a spec
// with its history, its card, its batch and its cost, and specs that come in from a
// file or go out to one.
package specs
