// Package phrasing writes turns of phrase of bars as a list has them: a measure behind the name, "2
// maraschino dashes", a fruit that is "squeezed and dropped", a twist that is binned, labels of steps,
// and what a ticket or a bracket says of other rounds.
//
// It changes only text that is at fault as it stands; what it changes is read anew and kept if that
// leaves nothing open.
package phrasing
