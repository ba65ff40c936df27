package paired

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

const (
	decimal = `(?:\d+(?:\.\d+)?|\.\d+)`
	figure  = `(?:[13]/[2348]|(?:\d+[ \t]?)?[½¼¾⅓⅔]|` + decimal + `)`
)

var (
	// joined are numbers with signs between them: "4:2:1", "1-1-1", "50/50", "2 / ¾ / ¾"; listed have those of a
	// list, and number is one of them. No fraction follows an "and", since "1 and ½" is one number.
	joined = pattern.Of(`^(?:` + figure + `(?:(?:[ \t]+[/–-][ \t]+|[ \t]*:[ \t]*)` + figure + `)+|` + decimal + `(?:[:/–-]` + decimal + `)+)(?:[ \t.,:;–—-]|$|\n|/top\b|oz|ml|cl|ds?h?\b|dash|bsp?\b|tsp)`)
	listed = pattern.Of(`^` + figure + `(?:(?:[ \t]*\+[ \t]*|,[ \t]+)` + figure + `|[ \t]+(?:and|&)[ \t]+\d+(?:\.\d+)?)+(?:[ \t]*[(,:.–—-]|[ \t]|$|\n)`)
	number = pattern.Of(`[13]/[2348]|\d*\.\d+|(?:\d+[ \t]?)?[½¼¾⅓⅔]|\d+`)
	point  = pattern.Of(decimal)
	// fraction is one number with blanks behind it, "3/4 3/4 3/4".
	fraction = pattern.Of(`^[ \t]*[13]/[2348][ \t]*$`)
)

// leastApart is the fewest numbers with blanks alone between them.
const leastApart = 3

// ratioAt reads the numbers of a ratio at i, or the words that make all alike.
func (s *script) ratioAt(i int) (ratio, bool) {
	r := ratio{from: i, to: i, first: i}
	if !s.equalAt(i) && (s.toks[i].Kind == token.Mark || s.toks[i].Kind == token.Word) {
		return ratio{}, false
	}
	written := joined.FindString(s.text[s.toks[i].Start:])
	if fraction.MatchString(written) {
		written = ""
	}
	if written == "" {
		written = listed.FindString(s.text[s.toks[i].Start:])
		r.listed = written != ""
	}
	switch {
	case s.equalAt(i):
		r.equal, r.to = true, i+2
		return r, true
	case written != "":
		whole := number
		if strings.Contains(written, "/") && !strings.Contains(written, " ") { // "60/25/20" has no fractions
			whole = point
		}
		for _, n := range whole.FindAllString(written, -1) {
			r.numbers = append(r.numbers, token.Lex(nil, n, 0, len(n))[0].Value)
		}
		for end := s.toks[i].Start + len(strings.TrimRight(written, " \t.,:;/(–—-\nozmlcdashbtp")); r.to < len(s.toks) && s.toks[r.to].Start < end; {
			r.to++
		}
	case s.toks[i].Kind == token.Numeral && i+2 < len(s.toks) && s.toks[i+1].Text == "to" && s.toks[i+2].Kind == token.Numeral:
		r.numbers, r.to = []float64{s.toks[i].Value, s.toks[i+2].Value}, i+3
	default:
		for r.to < len(s.toks) && s.toks[r.to].Kind == token.Numeral && s.toks[r.to].Wrong == "" {
			r.numbers, r.to = append(r.numbers, s.toks[r.to].Value), r.to+1
		}
		r.apart = true
	}
	u, k := entry.UnitAt(s.line(r.to))
	if s.word(r.to) && dashes.Has(s.toks[r.to].Text) {
		u, k = flavor.Dash, 1
	}
	switch {
	case k > 0 && u.Jigger():
		r.unit, r.to = u, r.to+k
	case k > 0 && (u.Spoon() || u == flavor.Dash):
		r.last, r.to = u, r.to+k
	case s.word(r.to) && s.toks[r.to].Glued:
		return ratio{}, false
	}
	for _, v := range r.numbers {
		if !(v > 0) {
			return ratio{}, false
		}
	}
	return r, len(r.numbers) >= leastPours && (!r.apart || len(r.numbers) >= leastApart)
}

// dashes are what shorthand writes for a dash behind its number: "2d".
var dashes = vocabulary.Words(`d ds dsh`)

// equalAt reports whether "equal parts" stands at i.
func (s *script) equalAt(i int) bool {
	return s.word(i) && s.word(i+1) && strings.HasPrefix(s.toks[i].Text, "eq") && (strings.HasPrefix(s.toks[i+1].Text, "part") || s.toks[i+1].Text == "pts" || s.toks[i+1].Text == "pt")
}

// opensList reports whether numbers that are joined as a list is may be those of the names behind them: none of a
// step or a table, "steps 1, 2:", and of two with a comma between them there is a sign behind, "60, 30: gin, ...".
func (s *script) opensList(r *ratio) bool {
	if r.from > 0 && s.word(r.from-1) {
		return false
	}
	return len(r.numbers) > leastPours || !strings.Contains(s.written(r.from, r.to), ",") || r.to < len(s.toks) && s.toks[r.to].Kind == token.Mark
}
