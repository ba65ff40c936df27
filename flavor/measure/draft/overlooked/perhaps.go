package overlooked

import (
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// What is poured under a condition, or was taken back behind its name, though it stands among the pours.

var (
	// sentence is what stands between two signs that end one, and clause what stands between two commas.
	// A point between figures ends none.
	sentence = pattern.Of(`(?:[^.!?;\n]|\.\d)+`)
	clause   = pattern.Of(`(?:[^.!?;,\n]|[.,]\d)+`)
	// condition says that something is poured for some guests, or at some times, alone.
	condition = pattern.Of(`(?i)\b(?:if|unless|(?:only|just)[ \t]+(?:when|whenever|for|on|as|at)|when(?:ever)?[ \t]+(?:asked|they|he|she|the|a|someone|somebody|guests?|it's|its|it)|(?:up)?on[ \t]+request|by[ \t]+request|in[ \t]+case|depending|maybe|perhaps|possibly|might|could[ \t]+add|(?:summer|winter|spring|autumn|weekends?|seasonal(?:ly)?)[ \t]+only|only[ \t]+in[ \t]+(?:summer|winter|spring|autumn)|for[ \t]+(?:the[ \t]+|those[ \t]+|a[ \t]+|our[ \t]+)?(?:\pL+[ \t]+)?(?:ones|one's|guests?|people|folks?|palates?|tooths?|teeth|drinkers?|eaters?|crowds?|kids|children|ladies|regulars?|lovers?|fans?|days|nights|weather))\b`)
	// opens is a condition that holds for its whole sentence: "if it is too sharp, add 5 simple".
	opens = pattern.Of(`(?i)^[ \t*•–—(-]*(?:if|unless|when|whenever|in case|should)\b`)
	// available are conditions of the house, which pours what it has, and manners of measuring.
	available = pattern.Of(`(?i)\bif[ \t]+(?:you(?:'ve| have)?(?:[ \t]+got)?|we(?:'ve| have)?(?:[ \t]+got)?|there(?:'s| is)|available|possible|in (?:stock|season)|frozen|fresh|large|small|big|using|batch\w*|need(?:ed)?\b[ \t]*(?:to|more)?[ \t]*(?:strain|chill|shake))`)
	// takenAway say behind a pour that it is poured no more.
	takenAway = pattern.Of(`(?i)(?:[(\[][ \t]*(?:now[ \t]+|it's[ \t]+|actually[ \t]+|no,?[ \t]+)?|[,:=–—-][ \t]*(?:no,?[ \t]+|actually[ \t]+|now[ \t]+)+|(?:[,:=–—]|[ \t]--?|->|<--?|→|←)[ \t]*)(?:none|nil|zero|0|not[ \t]+any[ \t]?more|no[ \t]+more|no[ \t]+longer|left[ \t]+(?:it[ \t]+)?out|leave[ \t]+(?:it[ \t]+)?out|taken[ \t]+out|took[ \t]+(?:it[ \t]+)?out|scratch(?:ed)?(?:[ \t]+(?:that|it|this))?|strike(?:[ \t]+(?:that|it))?|struck|skip(?:ped)?(?:[ \t]+(?:it|this|that))?|(?:we|they|i)[ \t]+(?:have[ \t]+|'ve[ \t]+)?(?:dropped|removed|cut|ditched|scrapped|binned|stopped|retired|pulled|killed|86'?e?d)(?:[ \t]+(?:using[ \t]+)?(?:it|this|that))?|drop(?:ped)?(?:[ \t]+(?:it|this))?|gone|86(?:'?e?d)?|crossed[ \t]+(?:out|off)|removed|cut|deleted|nixed|axed|scrapped|binned|never[ \t]?mind|nvm|forget[ \t]+(?:it|this|that)|ditch(?:ed)?|out|ignore(?:[ \t]+(?:it|this))?|cancel(?:led)?|void|retired|omit(?:ted)?)(?:[,.!;: \t]+(?:now|none|zero|please|today|tonight|this time|entirely|completely|from now on|again|for now|since \pL+|by \pL+|altogether|it|[!.])*)*[ \t]*(?:[)\]]|[.,;!](?:\D|$)|$)`)
)

// ordered begins by saying who orders the drink: "if anyone asks for a bramble, it's 50 gin ...".
var ordered = pattern.Of(`(?i)^[ \t*•–—(-]*(?:if|when|whenever)[ \t]+(?:(?:anyone|anybody|someone|somebody|they|you|we|he|she|people|guests?|a[ \t]+\pL+|the[ \t]+\pL+|table[ \t]+\d+)[ \t]+)(?:(?:ever|still|does|do)[ \t]+)?(?:asks?|orders?|wants?|gets?|calls?|sees?)[ \t]+(?:for[ \t]+)?(?:an?|the|one|our|this|that|my)\b[^.!?;:\d]*?(?:,|:|=|[–—]|\bit'?s\b|\bit[ \t]+is\b|\bthat'?s\b|\b(?:make|do|give|use|pour|go)\b)`)

// otherwise says that the drink is another one where a condition does not hold.
var otherwise = pattern.Of(`(?i)\b(?:otherwise|else|if[ \t]+not)\b`)

// leastOrdered is the fewest numbers behind a condition that holds for the whole drink.
const leastOrdered = 2

// ofTheDrink is how many bytes of a line that is the first with a number are a condition of the whole drink,
// and none of a pour: the heading before a colon, "lemonade for the kids' table: 250 ml ...", or who orders
// it. The sentence behind it pours at least twice.
func ofTheDrink(line string) int {
	first := strings.IndexFunc(line, numbered)
	if first < 0 || otherwise.MatchString(line) {
		return 0
	}
	end := strings.LastIndexByte(line[:first], ':') + 1
	if at := ordered.FindStringIndex(line); end == 0 && at != nil && at[1] <= first {
		end = at[1]
	}
	numbers := 0
	behind := sentence.FindString(line[end:])
	for _, t := range token.Lex(nil, behind, 0, len(behind)) {
		if t.Kind == token.Numeral {
			numbers++
		}
	}
	if numbers < leastOrdered || fillsIn(line[:end]) {
		return 0
	}
	return end
}

// numbered reports whether a rune is one of a number in figures.
func numbered(c rune) bool { return unicode.IsNumber(c) }

// fillsIn reports whether words pour something without an amount.
func fillsIn(words string) bool {
	return slices.ContainsFunc(token.Lex(nil, words, 0, len(words)), func(t token.Token) bool { return fills.Has(t.Text) })
}

// conditional is the fault of a line that pours something under a condition; first says that no line above
// holds a number.
func conditional(line string, first bool, pours []flavor.Pour) *flavor.DataFault {
	if !condition.MatchString(line) && !opens.MatchString(line) {
		return nil
	}
	if first {
		line = line[ofTheDrink(line):]
	}
	for _, s := range sentence.FindAllString(line, -1) {
		parts := clause.FindAllString(s, -1)
		if opens.MatchString(s) && !available.MatchString(s) {
			parts = []string{s}
		}
		for _, c := range parts {
			if !condition.MatchString(c) && !opens.MatchString(c) || available.MatchString(c) {
				continue
			}
			if p := pouredIn(c, pours); p != nil {
				said := token.OneLine(strings.TrimSpace(c))
				return measure.Invalid("text", said, "%q pours %s under a condition; write it without one if it goes into every drink, or a # before it", said, p.Profile.Name)
			}
		}
	}
	return nil
}

// retracted is the fault of a line that takes a pour back behind its name: "1 dash absinthe (none now)".
func retracted(line string, pours []flavor.Pour) *flavor.DataFault {
	for _, at := range takenAway.FindAllStringIndex(line, -1) {
		before := line[:at[0]]
		if cut := strings.LastIndexAny(before, ",;(["); cut >= 0 {
			before = before[cut+1:]
		}
		if p := pouredIn(before, pours); p != nil {
			said := token.OneLine(strings.TrimSpace(before + line[at[0]:at[1]]))
			return measure.Invalid("text", said, "%q takes back %s, which is poured; write only what is poured", said, p.Profile.Name)
		}
	}
	return nil
}

// pouredIn returns a pour that some words state: its name as it is written, and its amount in figures if
// it has one; nil if they state none.
func pouredIn(words string, pours []flavor.Pour) *flavor.Pour {
	toks := token.Lex(nil, words, 0, len(words))
	key := " " + flavor.NormaliseName(words) + " "
	numbers := slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral })
	for i := range pours {
		p := &pours[i]
		asked, _, _ := strings.Cut(p.Match.Asked, "(")
		asked, _, _ = strings.Cut(asked, " -")
		if asked = flavor.NormaliseName(asked); asked == "" || !strings.Contains(key, " "+asked+" ") {
			continue
		}
		if !numbers && !slices.ContainsFunc(toks, func(t token.Token) bool { return mayMeasure(&t) || fills.Has(t.Text) }) {
			continue
		}
		if !numbers || slices.ContainsFunc(toks, func(t token.Token) bool { return t.Kind == token.Numeral && t.Value == p.Amount }) {
			return p
		}
	}
	return nil
}

// fills are words that pour something without an amount.
var fills = vocabulary.Words(`top topped float floated rinse splash add fill`)
