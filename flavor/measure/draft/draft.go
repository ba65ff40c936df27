package draft

import (
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/joining"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/sheet"
	"counterpour/flavor/measure/draft/words/token"
)

// Limits on what is read. More is a fault, not a truncation.
const (
	MaxText   = 64 << 10       // bytes
	MaxLine   = entry.MostName // characters of a pour
	MaxPours  = 40
	MaxFaults = 100 // reading stops here; nobody mends more at once
)

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
	Span entry.Span
	Line int // of the text, from 1
}

// Doubt is a stretch without an amount that says nothing known: a pour that lacks it,
// or a word to whoever makes the drink. Only who knows the ingredients can tell.
type Doubt struct {
	Entry int               // in the entries of the draft
	After int               // pours that stand above it
	Herb  bool              // it is a herb, laid on the drink if it is not mixed in
	Laid  bool              // the service is said before it, as it is before a garnish
	Top   bool              // it tells to top the drink, and not with what
	Mixed bool              // it is muddled, so that it is not laid on the drink
	Fault *flavor.DataFault // what is wrong if it names an ingredient
	toks  []token.Token
}

// Draft is a drink as written, kept to the letter, before anybody has looked up
// its names. Method and Service are empty if the text does not state them.
type Draft struct {
	Name    string
	Lines   []entry.Line
	Method  flavor.Method
	Service flavor.Service
	HotC    float64 // °C stated for a hot drink; zero: none
	Garnish string
	Glass   string
	Rim     string
	Steps   []string
	Notes   []string
	Entries []Entry           // all of the text but blanks, in order
	Faults  flavor.DataFaults // lines that cannot be read, in order
	Doubts  []Doubt           // lines without an amount, in order

	Labelled bool // the name stands behind a label
	Titled   bool // the name stands before a colon, and pours behind it
	Led      bool // the name stands before pours on the same line, without a sign
	text     string
	nameless bool // made by ParsePours
	NameAt   entry.Span
	Muddle   bool // something in it is muddled

	// Hinted says that the service is only what the glass suggests; iced, that ice
	// is named; onIce, that the drink is served on it; cold, that it is served cold;
	// together, that everything is mixed at once; touch, that it is hardly stirred.
	Hinted, Iced, OnIce, Cold, Together, Touch bool

	Headed flavor.Unit // the unit that a head of columns names

	// PerhapsPour is the first line read as a pour whose amount goes without
	// saying, such as "absinthe rinse"; it is one if the ingredient is known.
	PerhapsPour *entry.Line
	// ServingName is what the first line says if it is no name but a method.
	ServingName *serving.Said
}

// String returns the text of the draft, to the letter.
func (d Draft) String() string { return d.text }

// Parse reads a draft. It never fails as a whole: what cannot be read is in
// Faults, each with its line and its word, and the rest is read beside it.
func Parse(text string) Draft { return parse(text, true) }

// ParsePours reads a text that has no name, such as the parts of a recipe: its
// first line is a line like any other.
func ParsePours(text string) Draft { return parse(text, false) }

func parse(text string, named bool) Draft { return read(text, named, false) }

// Plainly reads the draft anew as one whose first line has no name before its pours:
// "verjus 30 honey 20 soda 100 mint" may begin with either.
func (d Draft) Plainly() Draft { return read(d.text, !d.nameless, true) }

// read reads a text; plainly, without a name before the pours of its first line.
func read(text string, named, plainly bool) Draft {
	r := reader{d: Draft{text: text, nameless: !named}, first: named, plainly: plainly, join: joining.Joiner{Text: text}, shares: len(text) <= joining.MostLine && sheet.InShares(text), batch: sheet.BatchColumn(text)}
	if fault := checkText(text); fault != nil {
		r.d.Faults = flavor.DataFaults{fault}
		return r.d
	}
	r.costed()
	for _, l := range joining.Lines(text) {
		if !l.By.Empty() {
			r.entry(KindRemark, l.Number, l.By)
		}
		if !r.line(l.Number, l.At.Start, l.At.End) {
			break
		}
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
	changed := strings.TrimSpace(d.text[:l.Span.Start]) != "" // what is struck out before an arrow
	if l.AmountAt.Empty() && !l.Unit.After() || l.Squeezed || l.Muddled || changed {
		return 0, "", false
	}
	return l.Amount, l.Unit, true
}

// Err returns the faults of the draft as an error, those of its doubts among them, nil
// if it has none.
func (d Draft) Err() error {
	faults := slices.Clone(d.Faults)
	for i := range d.Doubts {
		faults = append(faults, d.Doubts[i].Fault)
	}
	if len(faults) == 0 {
		return nil
	}
	return faults
}

// checkText refuses a text that is too long or is not UTF-8.
func checkText(text string) *flavor.DataFault {
	if len(text) > MaxText {
		f := measure.Invalid("", "", "the text is longer than %d KiB; a spec is at most %d pours of %d characters", MaxText>>10, MaxPours, MaxLine)
		f.Location = measure.LineLocation(1 + strings.Count(text[:MaxText], "\n"))
		return f
	}
	if !utf8.ValidString(text) {
		good := strings.IndexRune(strings.ToValidUTF8(text, "\uFFFD"), '\uFFFD')
		f := measure.Invalid("", "\uFFFD", "the text is not UTF-8 here; save it as UTF-8, or type the character again")
		f.Location = measure.LineLocation(1 + strings.Count(text[:min(good, len(text))], "\n"))
		return f
	}
	return nil
}

// StripBullet drops a bullet. A dash is one only before a space.
func StripBullet(line string) string {
	toks := token.Lex(nil, line, 0, len(line))
	if len(toks) > 0 {
		if rest := parting.Unlist(toks); len(rest) > 0 && rest[0].Kind == toks[len(toks)-len(rest)].Kind {
			return line[rest[0].Start:]
		}
	}
	return line
}

// NamePrefix marks the name of a drink.
const NamePrefix = "name:"

// LineAround returns where the line of the text that holds a byte starts and
// ends.
func (d Draft) LineAround(at int) (start, end int) {
	start = strings.LastIndexAny(d.text[:at], "\r\n") + 1
	end, _ = joining.LineEnd(d.text, start)
	return start, end
}

// Anew reads another text as d was read.
func (d Draft) Anew(text string) Draft { return parse(text, !d.nameless) }

// Restored returns a draft that was read from a text with blanks in place of what pours
// nothing as the draft of the text itself, in which these stretches are remarks.
func (d Draft) Restored(text string, passed []entry.Span) Draft {
	d.text = text
	d.Entries = slices.Clone(d.Entries)
	for _, s := range passed {
		if !slices.ContainsFunc(d.Entries, func(e Entry) bool { return s.Start < e.Span.End && e.Span.Start < s.End }) {
			d.Entries = append(d.Entries, Entry{Kind: KindRemark, Span: s, Line: 1 + strings.Count(text[:s.Start], "\n")})
		}
	}
	slices.SortStableFunc(d.Entries, func(a, b Entry) int { return a.Span.Start - b.Span.Start })
	return d
}

// PoursOnly reports whether the draft was read by [ParsePours].
func (d Draft) PoursOnly() bool { return d.nameless }

// NameInDoubt reports whether the first line may be something else than the name.
func (d Draft) NameInDoubt() bool { return d.PerhapsPour != nil || d.ServingName != nil }
