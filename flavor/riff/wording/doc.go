// Package wording says in the words of the trade what a drink is called, how it is
// mixed and served, what changed from one drink to another, what of that a guest notices,
// and which proven drinks it rests on.
package wording
