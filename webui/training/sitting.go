package training

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"counterpour/flavor/drill"
	"counterpour/webui/say"
)

// aSet is how many rounds are played before the page says that it is enough for once: as many as
// fit into a quiet quarter of an hour. Common practice, no source.
const aSet = 5

// mostSat is the most rounds that a sitting counts.
const mostSat = 999

// sitting is what was played since training was opened. It travels in the address
// and in the forms, so that nobody has to say who they are to have it.
type sitting struct {
	played, right int
	setRight      int        // of the rounds of the set that is being played, or was just ended
	last          drill.Kind // of the round before
	seen          []drill.Mark
}

// mostSeen is how many drinks a sitting remembers, the last ones.
const mostSeen = 24

// readSitting reads what text wrote; what is none is a new sitting.
func readSitting(text string) sitting {
	parts := strings.Split(text, ".")
	if len(parts) < 3 || len(parts) > 3+mostSeen {
		return sitting{}
	}
	all, inSet, _ := strings.Cut(parts[0], "-")
	right, err := strconv.Atoi(all)
	setRight, _ := strconv.Atoi(inSet) // 0 in an address from before there were sets
	played, errPlayed := strconv.Atoi(parts[1])
	last := drill.Kind(parts[2])
	if err != nil || errPlayed != nil || kindName(last) == "" || right < 0 || right > played || played > mostSat || setRight < 0 || setRight > min(right, aSet) {
		return sitting{}
	}
	var seen []drill.Mark
	for _, word := range parts[3:] {
		m, ok := drill.ParseMark(word)
		if !ok {
			return sitting{}
		}
		seen = append(seen, m)
	}
	return sitting{played, right, setRight, last, seen}
}

// text is the sitting as an address has it, empty before the first round.
func (s sitting) text() string {
	if s.played == 0 {
		return ""
	}
	text := fmt.Sprintf("%d-%d.%d.%s", s.right, s.setRight, s.played, s.last)
	for _, m := range s.seen {
		text += "." + m.String()
	}
	return text
}

// after is the sitting with one more round, and the drinks that it had.
func (s sitting) after(r *drill.Round, right bool) sitting {
	if s.played%aSet == 0 {
		s.setRight = 0
	}
	s.played, s.last = s.played+1, r.Request.Kind
	s.seen = slices.Clone(s.seen)
	for _, m := range r.Marks() {
		if !slices.Contains(s.seen, m) {
			s.seen = append(s.seen, m)
		}
	}
	s.seen = s.seen[max(0, len(s.seen)-mostSeen):]
	if right {
		s.right++
		s.setRight++
	}
	return s
}

// sat puts a sitting into the page.
func (v *trainingView) sat(s sitting) {
	v.Sitting, v.Score, v.SetDone = s.text(), "", ""
	v.Round, v.Set = s.played%aSet+1, aSet
	if s.played > 0 && s.played%aSet == 0 {
		v.SetDone = say.It("training.set-done", "Right", s.setRight, "Rounds", aSet)
	}
	if s.played > 0 {
		v.Score = say.It("training.sitting", "Right", s.right, "Rounds", s.played)
	}
}
