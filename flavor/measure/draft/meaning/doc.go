// Package meaning works out what a draft means as it is parsed: which ingredient each name is in
// its place, by package naming, and what the draft leaves open from what it states.
//
// A bare number takes the unit of the other lines; a shot is what the other lines make of it.
// Every such reading is marked in the match of its pour and said in a note. Where two meanings
// are as likely, or none is, the answer is a [flavor.DataFault] that names the line and the word
// and asks. Nothing is guessed silently, and all faults are reported together.
package meaning
