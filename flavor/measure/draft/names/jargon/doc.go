// Package jargon holds what bars write for an ingredient: what a word means by volume, by the dash
// and by the spoon, short forms, words for one of a kind, and the words of a name that tell nothing.
//
// Its keys are as [flavor.NormaliseName] makes them, and what they stand for is a name that a
// finder is asked for. All of it is common practice, no source. Package naming decides which of it
// holds where a name stands; package tongue has the words of other countries.
package jargon
