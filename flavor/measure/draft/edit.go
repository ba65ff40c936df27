package draft

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
)

// splice is one change of a text.
type splice struct {
	at   Span
	text string
}

// with returns the draft with its text changed. The splices do not overlap.
func (d Draft) with(changes ...splice) Draft {
	slices.SortStableFunc(changes, func(a, b splice) int { return cmp.Or(a.at.Start-b.at.Start, a.at.End-b.at.End) })
	var b strings.Builder
	from := 0
	for _, c := range changes {
		b.WriteString(d.text[from:max(from, c.at.Start)])
		b.WriteString(c.text)
		from = max(from, c.at.End)
	}
	b.WriteString(d.text[from:])
	return parse(b.String(), !d.nameless)
}

// SetAmount returns the draft with another amount in its i-th line. An empty
// unit leaves the unit as it is written, or unwritten. All other words stay.
func (d Draft) SetAmount(i int, amount float64, u flavor.Unit) Draft {
	if d.Lines[i].shared {
		d = d.apart(i)
	}
	return d.with(d.amountSplices(i, amount, u)...)
}

// amountSplices are the changes that give a line another amount.
func (d Draft) amountSplices(i int, amount float64, u flavor.Unit) []splice {
	l := &d.Lines[i]
	if l.AmountAt.Empty() || l.times != 0 || l.measure != "" || l.squeezed && u != "" {
		return []splice{{l.Span, d.lineText(l, amount, u)}}
	}
	unit := u
	if unit == "" {
		unit = l.Unit
	}
	out := []splice{{l.AmountAt, measure.ExactNumber(amount, unit)}}
	switch written := ""; {
	case !l.UnitAt.Empty():
		written = d.text[l.UnitAt.Start:l.UnitAt.End]
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
func (d Draft) lineText(l *Line, amount float64, u flavor.Unit) string {
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
	case l.muddled:
		return "muddle " + text
	}
	return text
}

// apart writes the pours that share the amount of line i in lines of their own.
func (d Draft) apart(i int) Draft {
	at := d.Lines[i].AmountAt
	span := at
	var lines []string
	for k := range d.Lines {
		l := &d.Lines[k]
		if !l.shared || l.AmountAt != at {
			continue
		}
		span = Span{min(span.Start, l.Span.Start), max(span.End, l.Span.End)}
		unit := ""
		if l.Unit != "" {
			unit = measure.UnitWord(l.Amount, l.Unit) + " "
		}
		lines = append(lines, measure.ExactNumber(l.Amount, l.Unit)+" "+unit+l.Name)
	}
	// "each" and what leads to the list stand before its first name or after its last.
	for span.End < len(d.text) && d.text[span.End] != '\n' && d.text[span.End] != '\r' && !d.startsEntry(span.End) {
		span.End++
	}
	return d.with(splice{span, strings.Join(lines, "\n")})
}

// startsEntry reports whether an entry starts at a byte, or is parted from what
// stands before it.
func (d Draft) startsEntry(at int) bool {
	return d.text[at] == ';' || slices.ContainsFunc(d.Entries, func(e Entry) bool { return e.Span.Start == at })
}

// Replace returns the draft with another name in its i-th line.
func (d Draft) Replace(i int, name string) Draft {
	return d.with(splice{d.Lines[i].NameAt, oneLine(name)})
}

// Delete returns the draft without its i-th line.
func (d Draft) Delete(i int) Draft {
	if d.Lines[i].shared {
		d = d.apart(i)
	}
	return d.with(d.deletion(i))
}

// deletion is the change that takes a line out, and with it the whole line of
// the text if nothing else stands there.
func (d Draft) deletion(i int) splice {
	l := &d.Lines[i]
	from, to := l.Span.Start, l.Span.End
	start, end := d.lineAround(from)
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
		return splice{Span{from, after}, ""}
	case before >= 0:
		return splice{Span{before, to}, ""}
	}
	if end < len(d.text) {
		if strings.HasPrefix(d.text[end:], "\r\n") {
			end++
		}
		end++
	} else if start > 0 {
		start--
		if start > 0 && d.text[start-1] == '\r' {
			start--
		}
	}
	return splice{Span{start, end}, ""}
}

// lineAround returns where the line of the text that holds a byte starts and
// ends.
func (d Draft) lineAround(at int) (start, end int) {
	start = strings.LastIndexAny(d.text[:at], "\r\n") + 1
	end, _ = lineEnd(d.text, start)
	return start, end
}

// Add returns the draft with a line after its last pour, or after its name.
func (d Draft) Add(line string) Draft {
	at := 0
	if !d.nameAt.Empty() {
		_, at = d.lineAround(d.nameAt.Start)
	}
	for i := range d.Lines {
		_, end := d.lineAround(d.Lines[i].Span.Start)
		at = max(at, end)
	}
	line = oneLine(line)
	switch {
	case strings.TrimSpace(d.text) == "":
		return parse(line, !d.nameless)
	case at == 0:
		return d.with(splice{Span{0, 0}, line + "\n"})
	}
	return d.with(splice{Span{at, at}, "\n" + line})
}

// SetName returns the draft under another name; an empty one takes the name out.
func (d Draft) SetName(name string) Draft {
	name = oneLine(name)
	switch {
	case name == d.Name:
		return d
	case d.nameAt.Empty():
		return d.with(splice{Span{0, 0}, formatName(name) + "\n"})
	}
	start, end := d.lineAround(d.nameAt.Start)
	if name == "" {
		if end < len(d.text) {
			_, end = lineEnd(d.text, start)
			if strings.HasPrefix(d.text[end:], "\r\n") {
				end++
			}
			end++
		}
		return d.with(splice{Span{start, min(end, len(d.text))}, ""})
	}
	if d.onlyEntry(d.nameAt) {
		return d.with(splice{Span{start, end}, formatName(name)})
	}
	return d.with(splice{d.nameAt, name})
}

// onlyEntry reports whether nothing else stands in the line of a span.
func (d Draft) onlyEntry(s Span) bool {
	start, end := d.lineAround(s.Start)
	return !slices.ContainsFunc(d.Entries, func(e Entry) bool { return e.Span != s && e.Span.Start >= start && e.Span.Start < end })
}

// SetServing returns the draft with another method and service, said in one line
// in the place of the first that says either; both empty takes them out.
func (d Draft) SetServing(m flavor.Method, s flavor.Service) Draft {
	if m == d.Method && s == d.Service {
		return d
	}
	line := joinNonEmpty([]string{string(m), string(s)}, ", ")
	var changes []splice
	for _, e := range d.Entries {
		if e.Kind != KindServing {
			continue
		}
		said := servingOf(d.text[e.Span.Start:e.Span.End])
		if said.method == "" && said.service == "" {
			continue
		}
		if len(changes) == 0 && line != "" {
			changes = append(changes, splice{e.Span, line})
			continue
		}
		changes = append(changes, d.entryDeletion(e))
	}
	if len(changes) > 0 {
		return d.with(changes...)
	}
	text := strings.TrimRight(d.text, "\r\n")
	return parse(text+"\n"+line, !d.nameless)
}

// entryDeletion takes an entry out, with its line or the sign before it.
func (d Draft) entryDeletion(e Entry) splice {
	start, end := d.lineAround(e.Span.Start)
	if d.onlyEntry(e.Span) {
		if start > 0 {
			start--
			if start > 0 && d.text[start] == '\n' && d.text[start-1] == '\r' {
				start--
			}
		}
		return splice{Span{start, end}, ""}
	}
	before := start
	for _, o := range d.Entries {
		if o.Span.End <= e.Span.Start && o.Span.Start >= start {
			before = max(before, o.Span.End)
		}
	}
	return splice{Span{before, e.Span.End}, ""}
}

// Become returns the draft with the pours of its reading turned into those of
// another spec: every word that need not change stays. Where that does not read
// back as the wanted pours, the draft is written anew.
func (r *Reading) Become(to *flavor.Spec) Draft {
	d := r.Draft
	if len(r.Faults) > 0 || len(r.Spec.Pours) == 0 || slices.Contains(r.Pours, -1) && len(r.Pours) != len(r.Spec.Pours)+1 {
		return Parse(Format(*to))
	}
	for i := range d.Lines {
		if d.Lines[i].shared && r.Pours[i] >= 0 && !unchanged(&r.Spec.Pours[r.Pours[i]], to) {
			apart := d.apart(i)
			if len(apart.Lines) != len(d.Lines) {
				return Parse(Format(*to))
			}
			d = apart
		}
	}
	out := d.with(r.changes(&d, to)...)
	if !readsLike(&out, to, len(r.Pours)-len(r.Spec.Pours)) {
		return Parse(Format(*to))
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
func (r *Reading) changes(d *Draft, to *flavor.Spec) []splice {
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
			out = append(out, d.toPour(i, from, &to.Pours[next])...)
			next++
		}
		if i == last {
			for ; next < len(to.Pours); next++ {
				after = append(after, FormatPour(to.Pours[next]))
			}
		}
		out = append(out, d.around(i, before, after, keep)...)
	}
	return out
}

// toPour are the changes that turn a line into a pour of the same ingredient.
func (d *Draft) toPour(i int, from, to *flavor.Pour) []splice {
	l := &d.Lines[i]
	switch {
	case from.Amount == to.Amount && from.Unit == to.Unit:
		return nil
	case l.shared || l.squeezed || l.times != 0 || l.measure != "" || l.AmountAt.Empty():
		return []splice{{l.Span, FormatPour(*to)}}
	case from.Unit == to.Unit:
		return d.amountSplices(i, to.Amount, "")
	}
	return d.amountSplices(i, to.Amount, to.Unit)
}

// around are the lines put before and after line i, and its end if it is not
// kept.
func (d *Draft) around(i int, before, after []string, keep bool) []splice {
	l := &d.Lines[i]
	own := d.onlyEntry(l.Span)
	sep := ", "
	start, end := l.Span.Start, l.Span.End
	if own {
		sep = "\n"
		start, end = d.lineAround(l.Span.Start)
	}
	if !keep {
		if len(before)+len(after) == 0 {
			return []splice{d.deletion(i)}
		}
		return []splice{{l.Span, strings.Join(append(before, after...), sep)}}
	}
	var out []splice
	if len(before) > 0 {
		out = append(out, splice{Span{start, start}, strings.Join(before, sep) + sep})
	}
	if len(after) > 0 {
		out = append(out, splice{Span{end, end}, sep + strings.Join(after, sep)})
	}
	return out
}

// readsLike reports whether a draft states the amounts of a spec, in order,
// beside so many lines that are its name.
func readsLike(d *Draft, to *flavor.Spec, names int) bool {
	lines := d.Lines
	if names > 0 && len(lines) == len(to.Pours)+names {
		lines = lines[names:]
	}
	return len(d.Faults) == 0 && slices.EqualFunc(lines, to.Pours, func(l Line, p flavor.Pour) bool {
		return l.Amount == p.Amount || l.squeezed || l.times != 0 || l.measure != ""
	})
}

// Rewrite returns the draft of a text with the pours of the spec that was read
// from it turned into those of another, as [Reading.Become] does.
func Rewrite(text string, from, to *flavor.Spec) Draft {
	r := Reading{Draft: Parse(text), Spec: *from}
	r.Faults = r.Draft.Faults
	names := len(r.Draft.Lines) - len(from.Pours) // a first line that looks like a pour may be the name
	if names < 0 || names > 1 {
		return Parse(Format(*to))
	}
	for i := range r.Draft.Lines {
		r.Pours = append(r.Pours, i-names)
	}
	return r.Become(to)
}
