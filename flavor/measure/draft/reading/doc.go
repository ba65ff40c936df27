// Package reading finds what the names of a draft mean where they stand, and
// works out what the draft leaves open from what it states.
//
// A bare number takes the unit of the other lines; a fruit by volume is its
// juice; what the trade shortens is read at full length. Every such reading is
// marked in the match of its pour and said in a note. Where two readings are as
// likely, or none is, the answer is a [flavor.Fault] that names the line and the
// word and asks. Nothing is guessed silently, and all faults are reported
// together.
package reading
