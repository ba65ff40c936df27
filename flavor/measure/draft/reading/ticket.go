package reading

import (
	"cmp"
	"strings"

	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/overlooked"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// ticket is the number of an order that begins a line which holds its pours too: "#217 TOM COLLINS | GIN 50 LEM
// 25".
var ticket = pattern.Of(`^[ \t]*#\d+[ \t]+\pL[^\n]*\d[^\n]*\d`)

// numberedBelow is a line below that is numbered so: all of them are, "#1 gin", "#2 lemon".
var numberedBelow = pattern.Of(`\n[ \t]*#\d`)

// ofTicket reads a draft that begins with the number of an order without it, which is said: it is no amount,
// whatever stands behind it; false if none begins it.
func ofTicket(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	text := d.String()
	if d.PoursOnly() || !strings.HasPrefix(strings.TrimLeft(text, " \t"), "#") || !ticket.MatchString(text) || numberedBelow.MatchString(text) {
		return Reading{}, false, nil
	}
	number := strings.Fields(text)[0]
	end := strings.Index(text, number) + len(number)
	out, err := resolveAny(d.Anew(strings.Repeat(" ", end)+text[end:]), f)
	if err != nil {
		return Reading{}, false, err
	}
	out.Spec.Notes = append([]string{"“" + number + "” is the number of the order, and is skipped"}, out.Spec.Notes...)
	return out, true, nil
}

// stamped begins a line of a chat: who wrote it, and when: "[4:02 PM] Kai: ", "12/11, 16:02 - Kai: ".
var stamped = pattern.Of(`(?m)^[ \t]*(?:\[[^\]\n]{0,20}\d{1,2}:\d\d(?::\d\d)?[ \t]*(?:[AaPp]\.?[Mm]\.?)?[^\]\n]{0,12}\]|(?:\d{1,2}[/.]\d{1,2}(?:[/.]\d{2,4})?,?[ \t]+)?\d{1,2}:\d\d(?::\d\d)?[ \t]*(?:[AaPp]\.?[Mm]\.?)?[ \t]*[-–—])[ \t]*(?:~?[ \t]*\pL[\pL'.-]*(?:[ \t]\pL[\pL'.-]*)?[ \t]*:)?[ \t]*`)

// leastStamped is the fewest lines of a chat.
const leastStamped = 2

// ofChat reads the lines of a chat without who wrote them and when, which is said; it is false for another
// draft, and if that leaves anything open.
func ofChat(d draft.Draft, f naming.Finder) (Reading, bool, error) {
	text := d.String()
	if d.PoursOnly() || !strings.Contains(text, "\n") || !strings.Contains(text, ":") {
		return Reading{}, false, nil
	}
	all := stamped.FindAllStringIndex(text, -1)
	if len(all) < leastStamped {
		return Reading{}, false, nil
	}
	plain := []byte(text)
	var said []string
	for _, at := range all {
		said = append(said, "“"+strings.TrimRight(token.OneLine(text[at[0]:at[1]]), " :")+"”")
		for i := at[0]; i < at[1]; i++ {
			plain[i] = ' '
		}
	}
	out, err := resolveAny(d.Anew(string(plain)), f)
	if err != nil || len(out.Faults) > 0 || out.Several || len(overlooked.Said(string(plain), &out.Spec)) > 0 {
		return Reading{}, false, err
	}
	out.told = cmp.Or(out.told, string(plain))
	out.Spec.Notes = append([]string{strings.Join(said, ", ") + ": who wrote and when is skipped"}, out.Spec.Notes...)
	return out, true, nil
}
