package measure

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"counterpour/flavor"
)

// Line is one pour as written.
type Line struct {
	Number int     // of the line in the text, from 1
	Amount float64 // in Unit
	Unit   flavor.Unit
	Name   string // of the ingredient, without amount and unit
	Asked  string // the text of the line
	Note   string // what was assumed in reading it

	// perhapsName marks a first line such as "Two Hoots": an amount in words
	// and no unit. It is a pour only if the ingredient is known.
	perhapsName bool
}

// Draft is a spec that has been read but whose names nobody has looked up.
// Method and Service are empty if the text does not state them.
type Draft struct {
	Name    string
	Lines   []Line
	Method  flavor.Method
	Service flavor.Service
	Notes   []string
}

// Parse reads the text form of a spec, see the package comment. It fails with
// [flavor.Faults], one for every fault found, each with the line and the word;
// the draft is then empty. On success it has at least one line, and every
// amount is finite and above zero.
func Parse(text string) (Draft, error) {
	if fault := checkText(text); fault != nil {
		return Draft{}, flavor.Faults{fault}
	}
	r := reader{first: true}
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	for i, line := range strings.Split(text, "\n") {
		if !r.read(i+1, line) {
			break
		}
	}
	if len(r.faults) == 0 && len(r.draft.Lines) == 0 {
		r.fail(1, invalid("", "", "there is no pour here; write at least one, such as \"2 oz London dry gin\""))
	}
	if len(r.faults) > 0 {
		return Draft{}, r.faults
	}
	r.draft.Method, r.draft.Service = r.said.method, r.said.service.service
	r.draft.Notes = r.said.notes
	return r.draft, nil
}

// checkText refuses a text that is too long or is not UTF-8.
func checkText(text string) *flavor.Fault {
	if len(text) > MaxText {
		f := invalid("", "", "the text is longer than %d KiB; a spec is at most %d lines of %d characters", MaxText>>10, MaxPours, MaxLine)
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

// reader gathers a draft line by line.
type reader struct {
	draft  Draft
	said   methodLine
	first  bool // nothing but blanks and comments so far
	faults flavor.Faults
}

func (r *reader) fail(line int, f *flavor.Fault) {
	f.Location = lineLocation(line)
	r.faults = append(r.faults, f)
}

// read takes one line, and is false when reading should stop.
func (r *reader) read(n int, raw string) bool {
	line := oneLine(raw)
	if line == "" || strings.HasPrefix(line, "#") {
		return true
	}
	first := r.first
	r.first = false
	if fault := checkLine(raw, line); fault != nil {
		r.fail(n, fault)
		return len(r.faults) < MaxFaults
	}
	name, pour, fault := readLine(line, first)
	switch {
	case fault != nil:
		r.fail(n, fault)
	case pour != nil && len(r.draft.Lines) == MaxPours:
		r.fail(n, invalid("", line, "this is more than %d pours; leave some out", MaxPours))
		return false
	case pour != nil:
		pour.Number = n
		r.draft.Lines = append(r.draft.Lines, *pour)
	case first:
		r.draft.Name = name
	default:
		r.readMethod(n, stripBullet(line))
	}
	return len(r.faults) < MaxFaults
}

// readMethod reads a line without an amount.
func (r *reader) readMethod(n int, line string) {
	l := readMethodLine(line)
	stated := l.method != "" || l.service.service != ""
	for _, w := range l.unknown {
		near := NearestMethods(w)
		if !stated && len(near) == 0 {
			continue
		}
		f := invalid("method", w, "%q is no method or service%s; a method is %s, a service %s; a pour starts with its amount", w,
			didYouMean(near), flavor.JoinOr(names(flavor.Methods())), flavor.JoinOr(names(flavor.Services())))
		f.Suggest = near
		r.fail(n, f)
		stated = true
	}
	nothing := l.words == 0 && strings.Trim(line, "-=_*~ ") != "" // a ruled line is passed over
	if nothing || len(l.unknown) > 0 && !stated {
		r.fail(n, invalid("amount", line, "%q has no amount; write one before it, such as \"2 oz\", or a # to have the line passed over", line))
		return
	}
	if l.conflict == nil {
		r.said.merge(l)
		l.conflict, r.said.conflict = r.said.conflict, nil
	}
	if l.conflict != nil {
		r.fail(n, l.conflict)
	}
}

func names[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}

func didYouMean(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return " (did you mean " + flavor.JoinOr(near) + "?)"
}

// checkLine refuses a line that is too long or holds what no keyboard types.
func checkLine(raw, line string) *flavor.Fault {
	if utf8.RuneCountInString(line) > MaxLine {
		return invalid("", string([]rune(line)[:40]), "the line is longer than %d characters; write one pour a line", MaxLine)
	}
	if i := strings.IndexFunc(raw, unprintable); i >= 0 {
		c, _ := utf8.DecodeRuneInString(raw[i:])
		return invalid("", string(c), "the line holds the control character %U; delete it", c)
	}
	return nil
}

func unprintable(c rune) bool { return unicode.IsControl(c) && !unicode.IsSpace(c) }

// invisible are characters that pasted text carries and nobody sees.
func invisible(c rune) bool { return c == '\u200B' || c == '\u2060' || c == '\uFEFF' }

// oneLine returns s on one line with single spaces, without what cannot be seen.
func oneLine(s string) string {
	s = strings.Map(func(c rune) rune {
		switch {
		case unicode.IsSpace(c):
			return ' '
		case unprintable(c) || invisible(c):
			return -1
		}
		return c
	}, strings.ToValidUTF8(s, "\uFFFD"))
	return strings.Join(strings.Fields(s), " ")
}

const bullets = "-*•·–—"

// stripBullet drops a bullet. A dash is one only before a space: "-2 oz" is a
// negative amount.
func stripBullet(line string) string {
	c, n := utf8.DecodeRuneInString(line)
	switch {
	case !strings.ContainsRune(bullets, c):
		return line
	case c == '•' || c == '·' || c == '*' || strings.HasPrefix(line[n:], " "):
		return strings.TrimSpace(line[n:])
	}
	return line
}

const namePrefix = "name:"

// readLine reads a line as a pour, or else, on the first line, as the name of
// the drink. Without either, on a later line, everything is nil.
func readLine(line string, first bool) (name string, pour *Line, fault *flavor.Fault) {
	if first && len(line) > len(namePrefix) && strings.EqualFold(line[:len(namePrefix)], namePrefix) {
		return strings.TrimSpace(line[len(namePrefix):]), nil, nil
	}
	body := stripBullet(line)
	pour, fault = readPour(body, first)
	if pour != nil {
		pour.Asked = line
	}
	if pour == nil && fault == nil && first {
		name = body
	}
	return name, pour, fault
}

// readPour reads an amount, a unit and a name. It returns nil if the line
// states no amount, or, on the first line, if it reads better as a name.
func readPour(body string, first bool) (*Line, *flavor.Fault) {
	a, rest, fault := readAmount(body)
	if fault != nil {
		return nil, fault
	}
	if a == nil {
		if first {
			return nil, nil
		}
		return readImplied(body)
	}
	glued := rest != "" && !strings.HasPrefix(rest, " ")
	rest = strings.TrimSpace(rest)
	u, name, leading := leadingUnit(rest)
	if !leading {
		u, name = trailingUnit(rest)
	}
	name = tidyName(name)
	if first && readsAsName(a, u, name, leading, glued) {
		return nil, nil
	}
	switch {
	case glued && !leading:
		w := firstWord(body)
		f := invalid("unit", w, "%q ends in no unit known here; write the amount, a space and one of %s", w, flavor.JoinOr(unitNames(Units())))
		f.Suggest = NearestUnits(firstWord(rest))
		return nil, f
	case name == "":
		return nil, invalid("ingredient", body, "%q names no ingredient; write it after the amount, such as \"2 oz London dry gin\"", body)
	case u == "" && startsWithPour(name):
		return nil, invalid("amount", a.text+" "+firstWord(name), "%q is two amounts; keep one", a.text+" "+firstWord(name))
	case u == "" && otherMeasures[strings.ToLower(firstWord(name))] && name != firstWord(name):
		w := firstWord(name)
		f := invalid("unit", w, "%q is no unit of the bar; write the amount in oz, ml or cl", w)
		f.Suggest = []string{string(flavor.Ounce), string(flavor.Millilitre), string(flavor.Centilitre)}
		return nil, f
	}
	if fault := checkAmount(a.value, u, a.text); fault != nil {
		return nil, fault
	}
	return &Line{Amount: a.value, Unit: u, Name: name, Note: a.note, perhapsName: first && a.spelled && u == ""}, nil
}

// startsWithPour reports whether s starts with an amount and a unit of its own.
func startsWithPour(s string) bool {
	a, rest, fault := readAmount(s)
	if a == nil || a.article || fault != nil {
		return false
	}
	_, _, ok := leadingUnit(strings.TrimSpace(rest))
	return ok
}

// readsAsName reports whether the first line, though it starts like an amount,
// is a name: "A Late Start", "20th Century", "1862".
func readsAsName(a *amount, u flavor.Unit, name string, leading, glued bool) bool {
	switch {
	case leading:
		return name == "" && a.spelled
	case glued || a.article:
		return true
	case u == "":
		return name == "" || a.value > maxCount
	}
	return false
}

// readImplied reads a pour whose amount goes without saying: "splash of water",
// "top with soda water". It returns nil if the line is none.
func readImplied(body string) (*Line, *flavor.Fault) {
	if name, ok := readTop(body); ok {
		if name == "" {
			return nil, invalid("ingredient", body, "%q names no ingredient; write what to top with, such as \"top soda water\"", body)
		}
		return &Line{Amount: 1, Unit: flavor.Top, Name: name}, nil
	}
	u, name, ok := leadingUnit(body)
	if !ok {
		return nil, nil
	}
	name = tidyName(name)
	info, _ := infoOf(u)
	switch {
	case !info.implied:
		return nil, invalid("amount", body, "%q does not say how many %s; write a number before it, such as \"2 %s\"", body, info.many, info.many)
	case name == "":
		return nil, invalid("ingredient", body, "%q names no ingredient; write it after the unit, such as \"2 dashes aromatic bitters\"", body)
	}
	return &Line{Amount: 1, Unit: u, Name: name}, nil
}

var (
	topForm   = regexp.MustCompile(`(?i)^(?:top(?:ped)?(?: (?:up|off))?(?: with)?|fill(?: up)? with)(?: of)?(?:\s*:)?(?: |$)`)
	toTopForm = regexp.MustCompile(`(?i)\s*,?\s+to (?:top|fill)(?: up| off)?$`)
)

// readTop returns what the line tops the drink with.
func readTop(body string) (string, bool) {
	if m := topForm.FindString(body); m != "" {
		return tidyName(body[len(m):]), true
	}
	if toTopForm.MatchString(body) {
		return tidyName(body), true
	}
	return "", false
}

// leadingUnit reads a unit of one or two words at the start of s.
func leadingUnit(s string) (u flavor.Unit, rest string, ok bool) {
	one := firstWord(s)
	two := one
	if len(one) < len(s) {
		two = one + " " + firstWord(s[len(one)+1:])
	}
	for _, w := range []string{two, one} {
		if u, ok := ParseUnit(strings.TrimRight(w, ".,:")); ok {
			return u, s[len(w):], true
		}
	}
	return "", s, false
}

// trailingUnit reads a counted unit at the end of s, as in "mint leaves". The
// unit is empty if there is none, or nothing before it.
func trailingUnit(s string) (flavor.Unit, string) {
	i := strings.LastIndexByte(s, ' ')
	if i < 0 {
		return "", s
	}
	u, ok := ParseUnit(strings.TrimRight(s[i+1:], ".,:;"))
	if info, known := infoOf(u); !ok || !known || info.kind != byCount {
		return "", s
	}
	return u, s[:i]
}

// tidyName drops "of" before a name, and the stops and "to top" after it.
func tidyName(name string) string {
	name = strings.TrimSpace(name)
	if len(name) > 3 && strings.EqualFold(name[:3], "of ") {
		name = name[3:]
	}
	name = toTopForm.ReplaceAllString(name, "")
	return strings.TrimSpace(strings.Trim(strings.TrimSpace(name), ",;:."))
}
