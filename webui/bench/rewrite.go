package bench

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/webui/part"
)

// rewrite returns a draft with the pours of one spec turned into those of
// another, line by line, so that the name, the comments and every line that
// need not change stay as they were written. Where that does not read back as
// the wanted pours, the whole draft is written anew.
func rewrite(text string, from, to *flavor.Spec) string {
	numbers, ok := pourLines(text, from)
	if !ok {
		return measure.Format(*to)
	}
	var out []string
	next := 0 // the first pour of to that is not written yet
	for i, line := range strings.Split(text, "\n") {
		k := slices.Index(numbers, i+1)
		if k < 0 {
			out = append(out, line)
			continue
		}
		if at := part.IndexOf(to.Pours[next:], from.Pours[k].Profile); at >= 0 {
			for ; at > 0; at-- {
				out = append(out, pourLine(&to.Pours[next]))
				next++
			}
			out = append(out, keepLine(line, &from.Pours[k], &to.Pours[next]))
			next++
		}
		if k == len(numbers)-1 {
			for ; next < len(to.Pours); next++ {
				out = append(out, pourLine(&to.Pours[next]))
			}
		}
	}
	written := strings.Join(out, "\n")
	if !readsAs(written, to) {
		return measure.Format(*to)
	}
	return written
}

// pourLines returns the line of each pour of s in the text it was read from. A
// first line that looked like a pour may have been the name.
func pourLines(text string, s *flavor.Spec) ([]int, bool) {
	draft, err := measure.Parse(text)
	if err != nil {
		return nil, false
	}
	lines := draft.Lines
	if len(lines) == len(s.Pours)+1 {
		lines = lines[1:]
	}
	if len(lines) != len(s.Pours) || len(lines) == 0 {
		return nil, false
	}
	numbers := make([]int, len(lines))
	for i, l := range lines {
		numbers[i] = l.Number
	}
	return numbers, true
}

// keepLine keeps a line whose pour does not change.
func keepLine(line string, from, to *flavor.Pour) string {
	if from.Amount == to.Amount && from.Unit == to.Unit {
		return line
	}
	return pourLine(to)
}

// pourLine writes one pour as a line.
func pourLine(p *flavor.Pour) string {
	return strings.TrimSuffix(measure.Format(flavor.Spec{Pours: []flavor.Pour{*p}}), "\n")
}

// readsAs reports whether the text states the amounts of s, in order.
func readsAs(text string, s *flavor.Spec) bool {
	draft, err := measure.Parse(text)
	if err != nil {
		return false
	}
	lines := draft.Lines
	if len(lines) == len(s.Pours)+1 {
		lines = lines[1:]
	}
	return slices.EqualFunc(lines, s.Pours, func(l measure.Line, p flavor.Pour) bool { return l.Amount == p.Amount })
}
