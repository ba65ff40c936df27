package draft

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
)

// Limits on what is read. More is a fault, not a truncation.
const (
	MaxText   = 64 << 10 // bytes
	MaxLine   = 200      // characters of a pour
	MaxPours  = 40
	MaxFaults = 100 // reading stops here; nobody mends more at once

	maxStep = 2000 // characters of a line that is no pour
)

// Span is a stretch of a text, in bytes: from Start up to End.
type Span struct{ Start, End int }

// Empty reports whether the span holds nothing.
func (s Span) Empty() bool { return s.End <= s.Start }

// Kind is what a stretch of a draft was read as.
type Kind string

// The kinds of entry.
const (
	KindName    Kind = "name"
	KindPour    Kind = "pour"
	KindServing Kind = "serving" // method, service, ice, strain, glass
	KindGarnish Kind = "garnish"
	KindRim     Kind = "rim"
	KindStep    Kind = "step"
	KindRemark  Kind = "remark"
	KindUnread  Kind = "unread"
)

// Entry is one stretch of a draft and what it was read as.
type Entry struct {
	Kind Kind
	Span Span
	Line int // of the text, from 1
}

// Line is one pour as written.
type Line struct {
	Number int     // of the line in the text, from 1
	Amount float64 // in Unit; 1 where none is written
	Unit   flavor.Unit
	Name   string // of the ingredient, without amount and unit
	Asked  string // the text of the pour

	After bool   // goes in once the rest is mixed
	Note  string // what was assumed in reading it

	Span     Span // of the pour in the text
	AmountAt Span // empty where no amount is written
	UnitAt   Span // empty where no unit is written
	NameAt   Span

	guessed  bool // the amount is read in one of two ways
	figures  bool // the amount is written in figures
	comma    bool // the amount is written with a decimal comma
	step     bool // stands among the steps: it may speak of a pour above
	muddled  bool
	cut      bool    // says how the fruit is cut
	squeezed bool    // only the juice of the fruit is meant
	noAmount bool    // the amount goes without saying: "egg white"
	shared   bool    // the amount stands once for several pours: "1 oz each"
	whole    string  // what is to be looked up whole before a number in it is an amount: "rum 151"
	times    float64 // of Amount, where the unit is a part of a fruit; 0 is 1
	measure  string  // a measure that is no unit of its own, such as "shot"

	// perhapsName marks a first line whose amount has no unit, such as "Two
	// Hoots": it is a pour only if the ingredient is known.
	perhapsName bool
}

// Draft is a drink as written, kept to the letter, before anybody has looked up
// its names. Method and Service are empty if the text does not state them.
type Draft struct {
	Name    string
	Lines   []Line
	Method  flavor.Method
	Service flavor.Service
	HotC    float64 // °C stated for a hot drink; zero: none
	Garnish string
	Glass   string
	Rim     string
	Steps   []string
	Notes   []string
	Entries []Entry       // all of the text but blanks, in order
	Faults  flavor.Faults // lines that cannot be read, in order

	labelled bool // the name stands behind a label
	text     string
	nameless bool // made by ParsePours
	nameAt   Span
	muddle   bool // something in it is muddled

	// hinted says that the service is only what the glass suggests; iced, that ice
	// is named; onIce, that the drink is served on it; cold, that it is served cold;
	// together, that everything is mixed at once.
	hinted, iced, onIce, cold, together bool

	headed flavor.Unit // the unit that a head of columns names

	// perhapsPour is the first line read as a pour whose amount goes without
	// saying, such as "absinthe rinse"; it is one if the ingredient is known.
	perhapsPour *Line
	// servingName is what the first line says if it is no name but a method.
	servingName *serving
}

// String returns the text of the draft, to the letter.
func (d Draft) String() string { return d.text }

// Parse reads a draft. It never fails as a whole: what cannot be read is in
// Faults, each with its line and its word, and the rest is read beside it.
func Parse(text string) Draft { return parse(text, true) }

// ParsePours reads a text that has no name, such as the parts of a recipe: its
// first line is a line like any other.
func ParsePours(text string) Draft { return parse(text, false) }

func parse(text string, named bool) Draft {
	r := reader{d: Draft{text: text, nameless: !named}, first: named}
	if fault := checkText(text); fault != nil {
		r.d.Faults = flavor.Faults{fault}
		return r.d
	}
	number := 0
	for from := 0; from <= len(text); {
		number++
		to, next := lineEnd(text, from)
		if !r.line(number, from, to) {
			break
		}
		from = next
	}
	r.finish()
	return r.d
}

// ParseAmount reads an amount with its unit, or a number alone, whose unit is
// then empty. It is false for anything else.
func ParseAmount(text string) (amount float64, u flavor.Unit, ok bool) {
	d := ParsePours(text + " thing")
	if len(d.Lines) != 1 || len(d.Faults) > 0 || len(d.Entries) != 1 || d.Lines[0].Name != "thing" || strings.ContainsAny(text, "\r\n#") {
		return 0, "", false
	}
	l := &d.Lines[0]
	if l.AmountAt.Empty() && !l.Unit.After() || l.squeezed || l.muddled {
		return 0, "", false
	}
	return l.Amount, l.Unit, true
}

// Err returns the faults of the draft as an error, nil if it has none.
func (d Draft) Err() error {
	if len(d.Faults) == 0 {
		return nil
	}
	return d.Faults
}

// lineEnd returns the end of the line that starts at from, and where the next
// one starts.
func lineEnd(text string, from int) (end, next int) {
	at := strings.IndexAny(text[from:], "\r\n")
	if at < 0 {
		return len(text), len(text) + 1
	}
	end = from + at
	next = end + 1
	if strings.HasPrefix(text[end:], "\r\n") {
		next++
	}
	return end, next
}

// checkText refuses a text that is too long or is not UTF-8.
func checkText(text string) *flavor.Fault {
	if len(text) > MaxText {
		f := invalid("", "", "the text is longer than %d KiB; a spec is at most %d pours of %d characters", MaxText>>10, MaxPours, MaxLine)
		f.Location = lineLocation(1 + strings.Count(text[:MaxText], "\n"))
		return f
	}
	if !utf8.ValidString(text) {
		good := strings.IndexRune(strings.ToValidUTF8(text, "\uFFFD"), '\uFFFD')
		f := invalid("", "\uFFFD", "the text is not UTF-8 here; save it as UTF-8, or type the character again")
		f.Location = lineLocation(1 + strings.Count(text[:min(good, len(text))], "\n"))
		return f
	}
	return nil
}

func lineLocation(n int) string { return "line " + strconv.Itoa(n) }

// invalid makes a fault whose location is filled in by whoever knows the line;
// until then it holds the field: amount, unit or ingredient.
func invalid(field, word, format string, args ...any) *flavor.Fault {
	f := flavor.Invalid(field, word, format, args...)
	f.Field = field
	return f
}
