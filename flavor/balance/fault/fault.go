package fault

import (
	"counterpour/flavor"
	"counterpour/flavor/balance/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/technique"
)

// Fault is one thing that is wrong with a draft.
type Fault struct {
	Axis      ratio.Axis
	High      bool    // there is too much of it
	Deviation float64 // in just-noticeable differences, positive
	PlusMinus float64 // the drink's own, in the same unit; 0 for what does not show in the ratio
	Odds      float64 // how probable it is that this, of all, went wrong; of a pour, whatever it is told by
	Then      bool    // the odds are those once the first fault is mended
	// Profile is the ingredient that the text names as poured too much or too
	// little; nil if it names none.
	Profile *flavor.Profile
	// Beyond says that there is more of the ingredient than good drinks carry,
	// whatever the ratio; Own, that proven drinks do pour it.
	Beyond, Own bool
	Method      technique.Flaw // empty if the method is not what is wrong
	Text        string         // see [Tell]

	// What follows is for what mends the draft.

	Strange bool    // hardly any drink of its kind has the ingredient at all
	Foreign bool    // and that by its character, whatever is sweet or sour
	Grams   bool    // there is more alcohol in the glass than any drink of its kind has
	MostG   float64 // g of alcohol that drinks of its kind have at most, if Grams
	ByOdd   bool    // what makes too much of the whole is poured beyond habit too
	Missing bool    // nothing in it brings what nearly all drinks like it have
	Beside  bool    // and that is told by what they pour beside all that it has
	MoveML  float64 // mL of the ingredient that are too much or too little; 0 if that is not told
	MostML  float64 // mL of the ingredient that good drinks have at most, of a fault beyond habit
	UsualML float64 // the same, in the middle
	Room    float64 // share of the drink that goes into its glass; 0 if the glass is not what is wrong

	With *flavor.Profile // what turns the ingredient, of a fault of method; nil if nothing does

	poured poured // how it is told, until it is
}

// MaxFaults is how many faults are told.
const MaxFaults = 3

// What is not worth calling a fault: less than a taster notices, an axis that
// hardly explains how far out the drink is, or one that hardly went wrong.
const (
	leastDeviation = 1.0
	leastGain      = 0.10
	leastOdds      = 0.02
)

// Forgotten reports whether a fault is that nothing in the draft is there for strength,
// for sweetness or for acid, though drinks like it have it.
func (f *Fault) Forgotten() bool {
	if f.High || f.Profile != nil {
		return false
	}
	return f.Missing || f.Axis == ratio.Strong || f.Axis == ratio.Sweet || f.Axis == ratio.Sour
}

// Holds reports whether a fix of a fault never takes a pour further than it goes: a
// drink without half of its base is another one.
func (x *Fault) Holds(s *flavor.Spec, pour int) bool {
	return !x.Beyond && s.Pours[pour].Profile.Base()
}

// Word says a fault in a word or two, as bars do: "too sweet", "curdles".
func (f *Fault) Word() string {
	switch {
	case f.Method != "":
		return wording.Flaw(f.Method)
	case f.Foreign:
		return wording.OutOfPlace
	}
	return wording.Word(f.Axis, f.High)
}

// disagrees reports whether a fault says again, or denies, what another says: of
// an axis once, and never that there is too much and too little of one pour.
func (f *Fault) disagrees(o *Fault) bool {
	if f.Axis == o.Axis && f.Method == o.Method && (!f.Beyond || !o.Beyond) {
		return true
	}
	if f.Missing && o.Missing && o.Axis == ratio.Long {
		return true // what lengthens it may bring that too
	}
	return f.Profile != nil && f.Profile == o.Profile && f.High != o.High
}

// ofItsPart reports whether a fault tells of a pour by what the trade pours it for.
func (f *Fault) ofItsPart() bool { return f.Profile.Class.Part() == f.Axis.Part() }
