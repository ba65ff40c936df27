package bench

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/edit"
)

// applyRows writes what was filled into the rows back into the draft that they
// were made of. A line whose row is as it was stays as it was written; a row
// that is emptied takes its line with it. A form without rows, or with part of
// them, changes nothing.
func applyRows(text string, form url.Values) string {
	n := len(form["row-line"])
	if !form.Has("row-line") || len(form["row-amount"]) != n || len(form["row-unit"]) != n || len(form["row-name"]) != n {
		return text
	}
	was := rowsOf(text, -1)
	f := filling{lines: strings.Split(text, "\n")}
	if strings.TrimSpace(text) == "" {
		f.lines = nil
	}
	f.method(was, form)
	for i, at := range form["row-line"] {
		n, err := strconv.Atoi(at)
		if err != nil {
			continue
		}
		f.row(was, n, fieldAt(form, "row-amount", i), fieldAt(form, "row-unit", i), fieldAt(form, "row-name", i))
	}
	f.name(was, form)
	return f.done(was)
}

func fieldAt(form url.Values, key string, i int) string {
	return strings.Join(strings.Fields(form[key][i]), " ")
}

// filling is a draft while rows are written into it.
type filling struct {
	lines []string
	gone  []int    // numbers of lines to leave out
	added []string // rows that are new
	head  string   // a name where there was none
	tail  string   // a method where none was stated
}

func (f *filling) row(was *rowsView, number int, amount, unit, name string) {
	if number == 0 {
		if amount != "" || name != "" {
			f.added = append(f.added, composeRow(amount, unit, name))
		}
		return
	}
	at := slices.IndexFunc(was.Rows, func(r rowView) bool { return r.Line == number })
	if at < 0 {
		return
	}
	old := was.Rows[at]
	switch {
	case old.Amount == amount && old.Unit == unit && old.Name == name:
	case amount == "" && name == "":
		f.gone = append(f.gone, number)
	default:
		f.lines[number-1] = composeRow(amount, unit, name)
	}
}

func (f *filling) name(was *rowsView, form url.Values) {
	name := strings.Join(strings.Fields(form.Get("drink")), " ")
	if !form.Has("drink") || name == was.Name {
		return
	}
	written := strings.TrimSuffix(edit.Format(flavor.Spec{Name: name}), "\n")
	switch {
	case was.NameLine == 0:
		f.head = written
	case name == "":
		f.gone = append(f.gone, was.NameLine)
	default:
		f.lines[was.NameLine-1] = written
	}
}

func (f *filling) method(was *rowsView, form url.Values) {
	method, service := form.Get("method"), form.Get("service")
	if !form.Has("method") || method == was.Method && service == was.Service {
		return
	}
	written := method + ", " + service
	if method == "" || service == "" {
		written = method + service
	}
	if len(was.methodLines) == 0 {
		f.tail = written
		return
	}
	// All of it is said on the first such line.
	f.gone = append(f.gone, was.methodLines[1:]...)
	if f.lines[was.methodLines[0]-1] = written; written == "" {
		f.gone = append(f.gone, was.methodLines[0])
	}
}

// done puts the lines together: new rows after the last one.
func (f *filling) done(was *rowsView) string {
	last := was.After()
	var out []string
	if f.head != "" {
		out = append(out, f.head)
	}
	if last == 0 {
		out = append(out, f.added...)
	}
	for i, line := range f.lines {
		if !slices.Contains(f.gone, i+1) {
			out = append(out, line)
		}
		if i+1 == last {
			out = append(out, f.added...)
		}
	}
	if f.tail != "" {
		for len(out) > 0 && strings.TrimSpace(out[len(out)-1]) == "" {
			out = out[:len(out)-1]
		}
		out = append(out, f.tail)
	}
	return strings.Join(out, "\n")
}
