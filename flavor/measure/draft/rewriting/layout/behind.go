package layout

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// A comma or a word may stand between a name and its amount.

// worded is an amount in words.
const worded = `(?:(?:an?|one|two|three|four|five|six|half|quarter|three[ -]quarters?)(?:[ \t]+(?:and[ \t]+a[ \t]+half|of[ \t]+an?|an?))?[ \t]+(?:ounces?|dash(?:es)?|teaspoons?|tablespoons?|barspoons?|drops?|parts?|jiggers?|pon(?:y|ies)|pinch(?:es)?|splash(?:es)?))`

// behindComma is a name, a comma and the amount that ends its entry: "Cream, one ounce.".
var behindComma = pattern.Of(`(?im)(?:^|[;.:][ \t]+)[ \t]*(\pL[^\d½¼¾⅓⅔.;:,\n]*)(,)[ \t]*(?:` + amount + `|` + worded + `)[ \t]*(?:[.;]|$)`)

// leastBehind is from how many entries on their amounts stand behind commas.
const leastBehind = 2

// commas sets aside the commas between names and their amounts, where a stop or a semicolon parts the
// pours.
func (s *Set) commas() {
	for from, found := 0, 0; ; found++ {
		at := behindComma.FindStringSubmatchIndex(s.Text[from:])
		if at == nil {
			if found < leastBehind {
				return
			}
			break
		}
		from += at[1] - 1 // the sign may begin the next
	}
	for from := 0; ; {
		at := behindComma.FindStringSubmatchIndex(s.Text[from:])
		if at == nil {
			return
		}
		s.clear(from+at[4], from+at[5])
		from += at[1] - 1
	}
}

// sharedBitters are two dashes of which the last alone says that it is of bitters: "dash orange & dash aromatic
// bitters".
var sharedBitters = pattern.Of(`(?i)\b(?:an?[ \t]+|\d[ \t]?)?dash(?:es)?[ \t]+(?:of[ \t]+)?(?:orange|aromatic|arom|peach|mole|creole|chocolate|grapefruit|lemon|celery|cherry|walnut|lavender|cardamom)([ \t]*(?:&|\+|and)[ \t]*)(?:an?[ \t]+|\d[ \t]?)?dash(?:es)?[ \t]+(?:of[ \t]+)?\pL+[ \t]+bitters\b`)

// bitters writes of both that they are bitters.
func (s *Set) bitters() {
	for {
		at := sharedBitters.FindStringSubmatchIndex(s.Text)
		if at == nil {
			return
		}
		s.Text = s.Text[:at[2]] + " bitters, " + s.Text[at[3]:]
	}
}

// alike is an amount that is said to be each pour's: "equal ¾s: gin, triple sec, lemon".
var alike = pattern.Of(`(?i)\b(?:all[ \t]+)?equal[ \t]+(` + amount + `)'?s\b[ \t]*:?`)

// each is how any draft says so.
const each = " each:"

// equals writes such an amount as any draft does.
func (s *Set) equals() {
	for _, at := range alike.FindAllStringSubmatchIndex(s.Text, -1) {
		as := s.Text[at[2]:at[3]] + each
		if pad := at[1] - at[0] - len(as); pad >= 0 {
			s.Text = s.Text[:at[0]] + as + strings.Repeat(" ", pad) + s.Text[at[1]:]
		}
	}
}

// answered is the letter of an answer before pours: "A: 1.5 oz vodka, ...", and marked what it earned.
var (
	answered = pattern.Of(`(?m)^[ \t]*(?:[A-Z]|[Aa]nswer|[Aa]ns)[:.)][ \t]+` + amount)
	marked   = pattern.Of(sentence + `(\d+[ \t]?(?:/|of|out of)[ \t]?\d+[ \t]+(?:marks?|points?|pts))` + ends)
)

// answers sets aside the letter of an answer and what it earned.
func (s *Set) answers() {
	for _, at := range marked.FindAllStringSubmatchIndex(s.Text, -1) {
		s.blank(at[2], at[3])
	}
	for _, at := range answered.FindAllStringIndex(s.Text, -1) {
		if end := strings.IndexAny(s.Text[at[0]:at[1]], ":.)"); end >= 0 {
			s.clear(at[0], at[0]+end+1)
		}
	}
}
