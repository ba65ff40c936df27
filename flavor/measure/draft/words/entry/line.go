package entry

import "counterpour/flavor"

// Span is a stretch of a text, in bytes: from Start up to End.
type Span struct{ Start, End int }

// Empty reports whether the span holds nothing.
func (s Span) Empty() bool { return s.End <= s.Start }

// Line is one pour as written.
type Line struct {
	Number int     // of the line in the text, from 1
	Amount float64 // in Unit; 1 where none is written
	Unit   flavor.Unit
	Name   string // of the ingredient, without amount and unit
	Asked  string // the text of the pour
	Behind string // what is told behind the name: "off the nitro tap"

	After bool   // goes in once the rest is mixed
	Note  string // what was assumed in reading it

	Span     Span // of the pour in the text
	AmountAt Span // empty where no amount is written
	UnitAt   Span // empty where no unit is written
	NameAt   Span

	Guessed  bool // the amount is read in one of two ways
	Figures  bool // the amount is written in figures
	Comma    bool // the amount is written with a decimal comma
	Point    bool // the amount is written with a decimal point
	Step     bool // stands among the steps: it may speak of a pour above
	Amends   bool // takes back the amount of a pour above
	Muddled  bool
	Cut      bool    // says how the fruit is cut
	Squeezed bool    // only the juice of the fruit is meant
	NoAmount bool    // the amount goes without saying: "egg white"
	Shared   bool    // the amount stands once for several pours: "1 oz each"
	Amid     bool    // the amount stands between a kind and which of it: "rum 50 gold"
	Whole    string  // what is to be looked up whole before a number in it is an amount: "rum 151"
	Times    float64 // of Amount, where the unit is a part of a fruit; 0 is 1
	Parts    float64 // how many parts the amount is said to be: "2 parts gin (60 ml)"; 0 where it is not
	Measure  string  // a measure that is no unit of its own, such as "shot"
	Many     float64 // how many of a bar's own Measure are poured; 0 where it is none
	Pt       bool    // the unit is written "pt", short for parts and for pints
	Sized    bool    // the text says how much such a Measure holds

	// PerhapsName marks a first line whose amount has no unit, such as "Two
	// Hoots": it is a pour only if the ingredient is known.
	PerhapsName bool
}

// MostName is the most characters that the name of an ingredient has.
const MostName = 200
