package likeliest

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/pouring"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// implied are pours whose amount goes without saying: "egg white", "top soda", "ginger beer
// top", "dash bitters".
func (s *script) implied(i int) []stretch {
	out := append(s.verbFirst(i), s.unitFirst(i)...)
	for _, to := range s.named(i) {
		out = append(out, s.unsaid(i, to)...)
	}
	return out
}

// unstated is the pour of the name between two tokens whose amount goes without saying: the line
// gives it, and the words that tell it stand between start and end.
func (s *script) unstated(start, from, to, end int, u flavor.Unit, line string) []stretch {
	n := s.nameAt(from, to, u, 1)
	if !n.ok {
		return nil
	}
	a := amount{value: 1, unit: u, written: line}
	t := s.pour(start, end, &a, &n)
	t.cost += costImplied - costPour
	t.again = u == flavor.Top || u == flavor.Float
	t.unsaid = from == start && to == end
	return []stretch{t}
}

// verbFirst are pours that a verb leads in: "top soda", "fill with hot water, about 150".
func (s *script) verbFirst(i int) []stretch {
	u, ok := pouring.Verbs[s.toks[i].Text]
	if !ok || s.toks[i].Kind != token.Word {
		return nil
	}
	var out []stretch
	led := func(lead string, p stretch) {
		p.from, p.lines = i, []string{lead + " " + p.lines[0]}
		out = append(out, p)
	}
	from := i + 1
	for s.word(from, "with", "up", "off", "it", "the", "glass", "of", "a", "met", "mit", "com", "con", "avec", "med", "about") {
		from++
	}
	for _, to := range s.named(from) {
		out = append(out, s.unstated(i, from, to, to, u, verbOf(u))...)
	}
	for _, p := range s.pouredBehind(from) {
		if len(p.lines) == 1 {
			led(verbOf(u), p)
		}
	}
	if i+1 < from { // "top it with 60 ml ginger beer"
		for _, p := range s.poured(from) {
			led(verbOf(u), p)
		}
	}
	if s.word(i, "float", "top") { // "float peaty malt .25"
		for _, p := range s.pouredBehind(i + 1) {
			if len(p.lines) == 1 && p.behind {
				led(s.toks[i].Text, p)
			}
		}
	}
	return out
}

// unitFirst are pours of one small unit: "dash bitters".
func (s *script) unitFirst(i int) []stretch {
	u, k := s.unitAt(i)
	if k == 0 || !small[u] {
		return nil
	}
	from := i + k
	for s.word(from, "of") {
		from++
	}
	var out []stretch
	for _, to := range s.named(from) {
		out = append(out, s.unstated(i, from, to, to, u, "1 "+string(u))...)
	}
	return out
}

// unsaid are pours of the name between two tokens, by what stands behind it or by itself:
// "ginger beer top", "maraschino barspoon", "egg white".
func (s *script) unsaid(i, to int) []stretch {
	var out []stretch
	u, verb := pouring.Verbs[s.textAt(to)]
	if verb && s.word(to) {
		out = append(out, s.unstated(i, i, to, to+1, u, verbOf(u))...)
	} else if end := s.tailAt(to); end > to && s.word(end-1, "top", "fill", "up") {
		out = append(out, s.unstated(i, i, to, end, flavor.Top, "top")...)
	}
	if s.word(to, "up") && pouring.FillsUp(&s.toks[to-1]) { // "soda up"
		out = append(out, s.unstated(i, i, to, to+1, flavor.Top, "top")...)
	}
	if v, k := s.unitAt(to); k > 0 && small[v] {
		out = append(out, s.unstated(i, i, to, to+k, v, "1 "+string(v))...)
	}
	if n := s.nameAt(i, to, flavor.Ounce, 1); n.ok && n.whole && n.profile != nil && n.profile.Class == flavor.ClassCocktailBitters { // "shk up orng bit"
		out = append(out, s.unstated(i, i, to, to, flavor.Dash, "top")...)
	}
	if n := s.nameAt(i, to, flavor.Piece, 1); n.ok && n.profile != nil && n.profile.Class == flavor.ClassEgg && !colours.Has(strings.ToLower(n.written)) {
		out = append(out, s.unstated(i, i, to, to, flavor.Piece, "1")...)
	}
	return out
}

// colours are words of other things beside the white of an egg.
var colours = vocabulary.Words(`white whites wht whts wh blanc clara bianco`)

// textAt is the word or sign at i, empty behind the last.
func (s *script) textAt(i int) string {
	if i >= len(s.toks) {
		return ""
	}
	return s.toks[i].Text
}

// verbOf begins a line of what is poured so.
func verbOf(u flavor.Unit) string {
	switch u {
	case flavor.Float:
		return "float"
	case flavor.Rinse:
		return "rinse"
	case flavor.Spritz:
		return "spritz"
	}
	return "top"
}
