// Package reading works out what a draft means: which ingredient each name is in its
// place, by package naming, and what the draft leaves open from what it states.
//
// A bare number takes the unit of the other lines; a shot is what the other lines
// make of it; a text that runs on is parted by its amounts. Every such reading is
// marked in the match of its pour and said in a note. Where two readings are as
// likely, or none is, the answer is a [flavor.DataFault] that names the line and the
// word and asks. Nothing is guessed silently, and all faults are reported
// together.
package reading
