package counting

import (
	"math"
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
)

// Task is one line on its way to a pour.
type Task struct {
	Laid     bool // it is laid on the drink, and no pour
	Line     *entry.Line
	Base     naming.Found // the name, wherever it stands
	Unit     flavor.Unit
	Amount   float64
	Inferred []string
	Notes    []string
	Fault    *flavor.DataFault
	Hit      naming.Found
}

// Infer marks that something of the pour was inferred, by its key in [flavor.Match].
func (t *Task) Infer(what string) {
	if !slices.Contains(t.Inferred, what) {
		t.Inferred = append(t.Inferred, what)
	}
}

// Whole reports whether the amount is a number of things.
func (t *Task) Whole() bool { return math.Abs(t.Amount-math.Round(t.Amount)) < partsOfWhole }

// Class is the class of what the name means, wherever it stands.
func (t *Task) Class() flavor.Class {
	if t.Base.Profile == nil {
		return ""
	}
	return t.Base.Profile.Class
}

// Bare reports whether a number stands without a unit.
func (t *Task) Bare() bool { return t.Line.Unit == "" }
