// Package drinks knows the names by which everybody orders a drink, so that a draft that begins
// with one is told apart from a draft that begins with a pour, and how each is made and served.
//
// They are those of the proven drinks of package data, a test of which holds the list to them. It
// says nothing of what is poured.
package drinks
