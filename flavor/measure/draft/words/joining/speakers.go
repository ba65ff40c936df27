package joining

import (
	"strings"

	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/pattern"
)

// A thread of messages says before each line when and by whom it was written: "[22:41] Mo:".

var (
	// stamped is when a message was sent, with or without brackets and a dash behind it.
	stamped = pattern.Of(`^\s*(?:[\[(]?(?:\d{1,4}[/.-]\d{1,2}(?:[/.-]\d{2,4})?,? )?\d{1,2}:\d{2}(?::\d{2})?(?: ?[ap]m)?[\])]?\s*[-–]?\s+)`)
	// spoken is who sent it: one to three words before a colon.
	spoken = pattern.Of(`^\s*([\pL][\pL\d.'-]*(?: [\pL\d][\pL\d.'-]*){0,2})\s?:\s*`)
)

// leastSaid is the fewest lines of one speaker that tell a thread without times.
const leastSaid = 2

// bySpeakers cuts from the lines of a thread of messages who wrote them, and when.
func bySpeakers(text string, lines []Numbered) {
	if len(lines) < leastSaid || !strings.Contains(text, ":") {
		return
	}
	said := map[string]int{}
	thread := false
	worded := map[string]bool{} // some line of that speaker is no amount: "Rum: 1 oz light" lists
	for _, l := range lines {
		who, at, rest := spokenBy(text[l.At.Start:l.At.End])
		if who == "" {
			continue
		}
		said[who]++
		worded[who] = worded[who] || rest != "" && !strings.ContainsRune("0123456789½¼¾.", rune(rest[0]))
		thread = thread || said[who] >= leastSaid && worded[who] || at > 0
	}
	if !thread {
		return
	}
	for i := range lines {
		l := &lines[i]
		written := text[l.At.Start:l.At.End]
		_, _, rest := spokenBy(written)
		l.By = entry.Span{Start: l.At.Start, End: l.At.End - len(rest)}
		l.At.Start = l.By.End
	}
}

// spokenBy returns who wrote a line, how many bytes before that say when, and the rest of it;
// the whole line where nobody is named.
func spokenBy(line string) (who string, stamp int, rest string) {
	if !strings.Contains(line, ":") {
		return "", 0, line
	}
	stamp = len(stamped.FindString(line))
	m := spoken.FindStringSubmatch(line[stamp:])
	if m == nil || heading(m[1]) {
		return "", stamp, line[stamp:]
	}
	return m[1], stamp, line[stamp+len(m[0]):]
}

// heading reports whether the words before a colon say what a line holds, and not who wrote it.
func heading(words string) bool {
	key := strings.ToLower(words)
	first, _, _ := strings.Cut(key, " ")
	return label.Words[key] != label.None || Roles[key] || serving.Known(first) || serving.StepVerbs[first] || pouring.Verbs[first] != "" || Roles[first] || label.Words[first] != label.None
}
