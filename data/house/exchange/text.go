package exchange

import (
	"io"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/edit"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/reading"
)

// WriteText writes specs as text, separated by blank lines. It leaves notes out.
func WriteText(w io.Writer, specs []flavor.Spec) error {
	var parts []string
	for _, s := range specs {
		parts = append(parts, edit.Format(s))
	}
	_, err := io.WriteString(w, strings.Join(parts, "\n"))
	return err
}

// ReadText reads specs from pasted text, separated by blank lines. A blank line after the
// name or before the method does not end a spec. Bad specs are numbered by their first
// line.
func ReadText(r io.Reader, f naming.Finder) (*Reading, error) {
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	out := &Reading{}
	for _, b := range blocks(string(text)) {
		out.readText(b, f)
	}
	if len(out.Items)+len(out.Bad) == 0 {
		return nil, unreadable("there is no spec here; write its name, then a pour a line, such as \"2 oz London dry gin\"")
	}
	return out.done(), nil
}

func (r *Reading) readText(b block, f naming.Finder) {
	name := strings.TrimSpace(b.lines[0])
	spec, err := reading.Read(strings.Join(b.lines, "\n"), f)
	if err != nil {
		r.bad(b.first, name, b.within(err))
		return
	}
	for _, n := range spec.Notes {
		r.Notes = append(r.Notes, name+": "+b.numbered(n))
	}
	r.add(b.first, house.FromSpec("", spec))
}

// block holds the lines of one spec.
type block struct {
	first int // line number in the text, from 1
	lines []string
	pours bool // one of the lines is a pour
}

// numbered converts the line number at the start of a message into one of the whole text.
func (b *block) numbered(said string) string {
	at, rest, found := strings.Cut(said, ": ")
	place := flavor.DataFault{Location: at}
	if line := place.Place().Line; found && at == measure.LineLocation(line) {
		return measure.LineLocation(line+b.first-1) + ": " + rest
	}
	return said
}

// within converts the line numbers of faults into those of the whole text.
func (b *block) within(err error) error {
	return flavor.Relocated(err, func(f *flavor.DataFault) {
		if line := f.Place().Line; line > 0 {
			f.Location = measure.LineLocation(line + b.first - 1)
		}
	})
}

// blocks splits a text at blank lines, and joins names and methods that stand alone with
// their pours.
func blocks(text string) (out []block) {
	var b block
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	for i, l := range append(strings.Split(text, "\n"), "") {
		switch {
		case strings.TrimSpace(l) != "":
			if len(b.lines) == 0 {
				b.first = i + 1
			}
			b.lines = append(b.lines, l)
		case len(b.lines) > 0:
			b.pours = poursIn(b)
			out = join(out, b)
			b = block{}
		}
	}
	return out
}

// join appends a block. It merges the block with the one before if that has no pours yet,
// or if the block only states a method.
func join(out []block, b block) []block {
	if len(out) == 0 {
		return append(out, b)
	}
	last := &out[len(out)-1]
	if last.pours && !onlyMethod(b) {
		return append(out, b)
	}
	gap := b.first - last.first - len(last.lines) // blank lines between the two, to keep line numbers right
	for range gap {
		last.lines = append(last.lines, "")
	}
	last.lines = append(last.lines, b.lines...)
	last.pours = last.pours || b.pours
	return out
}

func poursIn(b block) bool {
	return len(draft.Parse(strings.Join(b.lines, "\n")).Lines) > 0
}

func onlyMethod(b block) bool {
	serving := false
	for _, e := range draft.ParsePours(strings.Join(b.lines, "\n")).Entries {
		switch e.Kind {
		case draft.KindServing:
			serving = true
		case draft.KindGarnish, draft.KindRim, draft.KindStep, draft.KindRemark:
		default:
			return false
		}
	}
	return serving
}
