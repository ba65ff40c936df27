package edit

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/meaning"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// splice is one change of a text.
type splice struct {
	at   entry.Span
	text string
}

// with returns the draft with its text changed. The splices do not overlap.
func with(d draft.Draft, changes ...splice) draft.Draft {
	slices.SortStableFunc(changes, func(a, b splice) int { return cmp.Or(a.at.Start-b.at.Start, a.at.End-b.at.End) })
	var b strings.Builder
	from := 0
	for _, c := range changes {
		b.WriteString(d.String()[from:max(from, c.at.Start)])
		b.WriteString(c.text)
		from = max(from, c.at.End)
	}
	b.WriteString(d.String()[from:])
	return d.Anew(b.String())
}

// SetAmount returns the draft with another amount in its i-th line. An empty
// unit leaves the unit as it is written, or unwritten. All other words stay.
func SetAmount(d draft.Draft, i int, amount float64, u flavor.Unit) draft.Draft {
	if d.Lines[i].Shared {
		d = apart(d, i)
	}
	return with(d, amountSplices(d, i, amount, u)...)
}

// amountSplices are the changes that give a line another amount.
func amountSplices(d draft.Draft, i int, amount float64, u flavor.Unit) []splice {
	l := &d.Lines[i]
	if l.AmountAt.Empty() || l.Times != 0 || l.Measure != "" || l.Squeezed && u != "" {
		return []splice{{l.Span, lineText(d, l, amount, u)}}
	}
	unit := u
	if unit == "" {
		unit = l.Unit
	}
	out := []splice{{l.AmountAt, measure.ExactNumber(amount, unit)}}
	switch written := ""; {
	case !l.UnitAt.Empty():
		written = d.String()[l.UnitAt.Start:l.UnitAt.End]
		one, many := measure.UnitWord(1, unit), measure.UnitWord(2, unit)
		if was := strings.ToLower(written); unit != l.Unit || was == one || was == many {
			out = append(out, splice{l.UnitAt, measure.UnitWord(amount, unit)})
		}
	case u != "":
		out[0].text += " " + measure.UnitWord(amount, u)
	}
	return out
}

// lineText writes a line anew, in the words that its name has.
func lineText(d draft.Draft, l *entry.Line, amount float64, u flavor.Unit) string {
	if u == "" {
		u = l.Unit
	}
	text := measure.ExactNumber(amount, u)
	if u != "" && !(u == flavor.Piece) {
		text += " " + measure.UnitWord(amount, u)
	}
	text += " " + l.Name
	switch {
	case u.After() && amount == 1:
		return string(u) + " " + l.Name
	case l.After && !u.After():
		return "top " + text
	case l.Muddled:
		return "muddle " + text
	}
	return text
}

// apart writes the pours that share the amount of line i in lines of their own.
func apart(d draft.Draft, i int) draft.Draft {
	at := d.Lines[i].AmountAt
	span := at
	var lines []string
	for k := range d.Lines {
		l := &d.Lines[k]
		if !l.Shared || l.AmountAt != at {
			continue
		}
		span = entry.Span{Start: min(span.Start, l.Span.Start), End: max(span.End, l.Span.End)}
		unit := ""
		if l.Unit != "" {
			unit = measure.UnitWord(l.Amount, l.Unit) + " "
		}
		lines = append(lines, measure.ExactNumber(l.Amount, l.Unit)+" "+unit+l.Name)
	}
	// "each" and what leads to the list stand before its first name or after its last.
	for span.End < len(d.String()) && d.String()[span.End] != '\n' && d.String()[span.End] != '\r' && !startsEntry(d, span.End) {
		span.End++
	}
	return with(d, splice{span, strings.Join(lines, "\n")})
}

// startsEntry reports whether an entry starts at a byte, or is parted from what
// stands before it.
func startsEntry(d draft.Draft, at int) bool {
	return d.String()[at] == ';' || slices.ContainsFunc(d.Entries, func(e draft.Entry) bool { return e.Span.Start == at })
}

// Replace returns the draft with another name in its i-th line.
func Replace(d draft.Draft, i int, name string) draft.Draft {
	return with(d, splice{d.Lines[i].NameAt, token.OneLine(name)})
}

// Delete returns the draft without its i-th line.
func Delete(d draft.Draft, i int) draft.Draft {
	if d.Lines[i].Shared {
		d = apart(d, i)
	}
	return with(d, deletion(d, i))
}

// deletion is the change that takes a line out, and with it the whole line of
// the text if nothing else stands there.
func deletion(d draft.Draft, i int) splice {
	l := &d.Lines[i]
	from, to := l.Span.Start, l.Span.End
	start, end := d.LineAround(from)
	before, after := -1, -1
	for _, e := range d.Entries {
		switch {
		case e.Span.Start < start || e.Span.Start >= end && end > start || e.Span == l.Span || e.Span.Start >= from && e.Span.End <= to:
		case e.Span.End <= from:
			before = max(before, e.Span.End)
		case after < 0 || e.Span.Start < after:
			after = e.Span.Start
		}
	}
	switch {
	case after >= 0:
		return splice{entry.Span{Start: from, End: after}, ""}
	case before >= 0:
		return splice{entry.Span{Start: before, End: to}, ""}
	}
	if end < len(d.String()) {
		if strings.HasPrefix(d.String()[end:], "\r\n") {
			end++
		}
		end++
	} else if start > 0 {
		start--
		if start > 0 && d.String()[start-1] == '\r' {
			start--
		}
	}
	return splice{entry.Span{Start: start, End: end}, ""}
}

// onlyEntry reports whether nothing else stands in the line of a span.
func onlyEntry(d draft.Draft, s entry.Span) bool {
	start, end := d.LineAround(s.Start)
	return !slices.ContainsFunc(d.Entries, func(e draft.Entry) bool { return e.Span != s && e.Span.Start >= start && e.Span.Start < end })
}

// Become returns the draft with the pours of its reading turned into those of
// another spec: every word that need not change stays. Where that does not read
// back as the wanted pours, the draft is written anew.
func Become(r *reading.Reading, to *flavor.Spec) draft.Draft {
	d := r.Draft
	if len(r.Faults) > 0 || len(r.Spec.Pours) == 0 || slices.Contains(r.Pours, -1) && len(r.Pours) != len(r.Spec.Pours)+1 {
		return draft.Parse(Format(*to))
	}
	for i := range d.Lines {
		if d.Lines[i].Shared && r.Pours[i] >= 0 && !unchanged(&r.Spec.Pours[r.Pours[i]], to) {
			apart := apart(d, i)
			if len(apart.Lines) != len(d.Lines) {
				return draft.Parse(Format(*to))
			}
			d = apart
		}
	}
	out := with(d, changes(r, d, to)...)
	if !readsLike(out, to, len(r.Pours)-len(r.Spec.Pours)) {
		return draft.Parse(Format(*to))
	}
	return out
}

// unchanged reports whether a pour stands in a spec as it is.
func unchanged(p *flavor.Pour, in *flavor.Spec) bool {
	return slices.ContainsFunc(in.Pours, func(o flavor.Pour) bool {
		return o.Profile.ID == p.Profile.ID && o.Amount == p.Amount && o.Unit == p.Unit
	})
}

// changes are the splices that turn the lines of a draft into the pours of a
// spec, in their order.
func changes(r *reading.Reading, d draft.Draft, to *flavor.Spec) []splice {
	var out []splice
	next := 0 // the first pour of to that is not written yet
	last := -1
	for i := range d.Lines {
		if r.Pours[i] >= 0 {
			last = i
		}
	}
	for i := range d.Lines {
		if r.Pours[i] < 0 {
			continue
		}
		from := &r.Spec.Pours[r.Pours[i]]
		at := slices.IndexFunc(to.Pours[next:], func(p flavor.Pour) bool { return p.Profile.ID == from.Profile.ID })
		var before, after []string
		keep := at >= 0
		if keep {
			for ; at > 0; at-- {
				before = append(before, FormatPour(to.Pours[next]))
				next++
			}
			out = append(out, toPour(d, i, from, &to.Pours[next])...)
			next++
		}
		if i == last {
			for ; next < len(to.Pours); next++ {
				after = append(after, FormatPour(to.Pours[next]))
			}
		}
		out = append(out, around(d, i, before, after, keep)...)
	}
	return out
}

// toPour are the changes that turn a line into a pour of the same ingredient.
func toPour(d draft.Draft, i int, from, to *flavor.Pour) []splice {
	l := &d.Lines[i]
	switch {
	case from.Amount == to.Amount && from.Unit == to.Unit:
		return nil
	case l.Shared || l.Squeezed || l.Times != 0 || l.Measure != "" || l.AmountAt.Empty():
		return []splice{{l.Span, FormatPour(*to)}}
	case from.Unit == to.Unit:
		return amountSplices(d, i, to.Amount, "")
	}
	return amountSplices(d, i, to.Amount, to.Unit)
}

// around are the lines put before and after line i, and its end if it is not
// kept.
func around(d draft.Draft, i int, before, after []string, keep bool) []splice {
	l := &d.Lines[i]
	own := onlyEntry(d, l.Span)
	sep := ", "
	start, end := l.Span.Start, l.Span.End
	if own {
		sep = "\n"
		start, end = d.LineAround(l.Span.Start)
	}
	if !keep {
		if len(before)+len(after) == 0 {
			return []splice{deletion(d, i)}
		}
		return []splice{{l.Span, strings.Join(append(before, after...), sep)}}
	}
	var out []splice
	if len(before) > 0 {
		out = append(out, splice{entry.Span{Start: start, End: start}, strings.Join(before, sep) + sep})
	}
	if len(after) > 0 {
		out = append(out, splice{entry.Span{Start: end, End: end}, sep + strings.Join(after, sep)})
	}
	return out
}

// readsLike reports whether a draft states the amounts of a spec, in order,
// beside so many lines that are its name.
func readsLike(d draft.Draft, to *flavor.Spec, names int) bool {
	lines := d.Lines
	if names > 0 && len(lines) == len(to.Pours)+names {
		lines = lines[names:]
	}
	return len(d.Faults) == 0 && slices.EqualFunc(lines, to.Pours, func(l entry.Line, p flavor.Pour) bool {
		return l.Amount == p.Amount || l.Squeezed || l.Times != 0 || l.Measure != ""
	})
}

// Rewrite returns the draft of a text with the pours of the spec that was read
// from it turned into those of another, as [Reading.Become] does.
func Rewrite(text string, from, to *flavor.Spec) draft.Draft {
	r := reading.Reading{Meaning: meaning.Meaning{Draft: draft.Parse(text), Spec: *from}}
	r.Faults = r.Draft.Faults
	names := len(r.Draft.Lines) - len(from.Pours) // a first line that looks like a pour may be the name
	if names < 0 || names > 1 {
		return draft.Parse(Format(*to))
	}
	for i := range r.Draft.Lines {
		r.Pours = append(r.Pours, i-names)
	}
	return Become(&r, to)
}
