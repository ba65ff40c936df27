// Package drinks knows the names by which everybody orders a drink, so that a draft that begins
// with one is told apart from a draft that begins with a pour, how each is made and served, and what
// all bars pour into it, by which a word is read that may mean several things.
//
// They are those of the proven drinks of package data, a test of which holds the list to them. It
// says nothing of how much is poured.
package drinks
