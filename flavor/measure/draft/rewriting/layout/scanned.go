package layout

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// A scan takes figures for the letters that look like them, and the other way round: "l½ oz", "O.5 oz", "I oz".

// measures are units that may stand behind a figure.
const measures = `(?:oz|ounces?|ml|cl|dash(?:es)?|tsp|tbsp|bsp|barspoons?|parts?)\b`

var misread = []struct {
	as *pattern.Pattern
	by string
}{
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])([lI|])[ \t]?[½¼¾⅓⅔]`), "1"},            // "l½ oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])([lI|])[ \t]+[13][/⁄][2348]\b`), "1"},   // "l 1/2 oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])([lI|])[/⁄][2348]\b`), "1"},             // "l/2 oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:]|\d[ \t])([lI])[/⁄][2348]\b`), "1"},      // "1 l/2 oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])([OoQ])[.,]\d+[ \t]?` + measures), "0"}, // "O.5 oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])([lI])[ \t]?` + measures), "1"},         // "I oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])([lI])[.,]?\d+[ \t]?` + measures), "1"}, // "l5 ml", "I.5 oz"
	{pattern.Of(`(?m)(?:^|[ \t,;/(:])\d*([Oo])[ \t]?` + measures), "0"},      // "3O ml"
	{pattern.Of(`(?m)\d([lI])(?:[ \t]?` + measures + `|\d)`), "1"},           // "2l ml" of a list of them
	{pattern.Of(`\p{Ll}(1)\p{Ll}`), "i"},                                     // "s1mple"
	{pattern.Of(`\p{Lu}(1)(?:\p{Lu}|\p{Ll})`), "i"},                          // "S1mple"
}

// scanned writes figures that a scan took for letters as figures, and says so of each word.
func (s *Set) scanned() {
	s.Text = strings.ReplaceAll(s.Text, " | ", " ¦ ") // a stroke between blanks parts cells, and is no figure
	defer func() { s.Text = strings.ReplaceAll(s.Text, " ¦ ", " | ") }()
	for _, m := range misread {
		for {
			at := m.as.FindStringSubmatchIndex(s.Text)
			if at == nil {
				break
			}
			before := wordAround(s.Text, at[2])
			s.Text = s.Text[:at[2]] + m.by + s.Text[at[3]:]
			s.Told = append(s.Told, "“"+before+"” is read as “"+wordAround(s.Text, at[2])+"”")
		}
	}
}

// wordAround is what stands between the blanks around a place.
func wordAround(text string, at int) string {
	from := strings.LastIndexAny(text[:at], " \t\n,;/(") + 1
	to := len(text)
	if n := strings.IndexAny(text[at:], " \t\n,;"); n >= 0 {
		to = at + n
	}
	return text[from:to]
}
