package template

import (
	"counterpour/flavor"
)

// Labelled is a proven drink and the family it belongs to.
type Labelled struct {
	Spec   flavor.Spec
	Family string
	Source string
	Status string // StatusRead or StatusRecalled; empty for a drink of the house

	Current bool // it stands in a list that bars go by today, so that guests ask for it by its name
}

// How sure it is that a proven drink stands as its source prints it.
const (
	StatusRead     = "read"     // its source was read
	StatusRecalled = "recalled" // its source was not: name and amounts are from memory
)

// Recalled reports whether the source of the drink was not read.
func (l *Labelled) Recalled() bool { return l.Status == StatusRecalled }
