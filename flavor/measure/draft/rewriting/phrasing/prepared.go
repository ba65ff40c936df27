package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// How hot something is poured, how a fruit is cut, what was struck out, what stands for some
// guests only: what a card tells beside a pour. Common practice, no source.

const (
	degrees = `\d{2,3}[ \t]*(?:°[ \t]?|deg(?:rees)?[ \t]+)?(?:c|f|celsius|fahrenheit)\b`
	hot     = `(?:hot|boiling|boiled|warm|steamed|steaming)`
	brewed  = `(?:water|coffee|tea|chocolate|cocoa|milk|cider|wine)`
)

var (
	// poured is how hot a pour is, with "at" before it or behind its amount: "hot water at 80 C".
	poured = pattern.Of(`(?i)\b(` + hot + `[ \t]+\pL[^\n,;()]*?|` + brewed + `\b[^\n,;()]*?)([ \t]*(?:\bat|@)[ \t]*` + degrees + `|[ \t]+` + degrees + `)`)
	// called is a pour that says by a word that it is hot.
	called = pattern.Of(`(?i)\b` + hot + `\b`)
	// measured is a pour that has its amount.
	measured = pattern.Of(`(?i)\d[ \t]?(?:oz|ml|cl|parts?)\b`)
	// pieces is what a fruit is cut in, behind a comma or in a bracket.
	pieces = pattern.Of(`(?i)\b(?:limes?|lemons?|oranges?|grapefruits?)(,?[ \t]*\(?[ \t]*(?:cut[ \t]+|chopped[ \t]+|sliced[ \t]+)?(?:in|into)[ \t]+(?:\d{1,2}|four|six|eight)(?:[ \t]+(?:pieces|pcs|wedges|chunks|parts|slices|quarters|bits)\b)?(?:[ \t]*\))?)`)
	// half is how far a rim goes round.
	half = pattern.Of(`(?i)(?:\brim(?:med)?[ \t]*:?[ \t]*(half|1/2|½)[ \t-]+(?:with[ \t]+)?\pL|(?:^|[\n,;/])[ \t]*(half|1/2|½)[ \t-]+(?:\pL+[ \t]+){1,2}?rim\b|[ \t](half|1/2|½)[ \t-]+(?:(?:celery|sea|chill?i|smoked|spiced?|cinnamon|vanilla)[ \t]+)?(?:salt|sugar)[ \t]+rim\b)`)
	// rimmed is a first line that tells what the rim has, and is no name.
	rimmed = pattern.Of(`(?i)^[ \t]*((?:\pL+[ \t]+){1,2}?)rim[ \t]*\n`)
	// avoided tells behind the pours what a guest must not have.
	avoided = pattern.Of(`(?i)[\n,;./|][ \t]*((?:\pL+[ \t]+){0,4}?allerg(?:y|ies|ic)\b(?:[^\n;\d:]*|[ \t]*:[^\n;\d:]*)(?:[ \t]+(?:on|at)[ \t]+(?:table|tbl|bar|seat)[ \t]*\d+[^\n;\d:]*)?)(?:[\n;]|$)`)
	// struck is a bracket that tells what was taken out of a draft.
	struck = pattern.Of(`(?i)[ \t]*\([ \t]*(?:crossed|struck|scratched|scored|ruled)[ \t-]+(?:out|through)\b[^()\n]*\)`)
	// guests is for whom something is laid on a drink.
	guests = pattern.Of(`(?i)(\pL)[ \t]+if[ \t]+(?:you|they|(?:the[ \t]+)?guests?|he|she)[ \t]+(?:must|asks?|likes?|wants?|wish(?:es)?|insists?|prefers?|fanc(?:y|ies)|cares?)(?:[ \t]+(?:it|one|for[ \t]+it))?\b`)
	// within is an amount in a bracket of its own behind a name: "stir gin (60 ml), ...".
	within = pattern.Of(`(?i)\pL[ \t]*(\([ \t]*)([\d ./½¼¾⅓⅔]+[ \t]?(?:ml|oz|cl|dash(?:es)?|bsp|tsp))([ \t]*\))`)
	// sentence is the stop between the ratio of a syrup and what is done with the drink.
	sentence = pattern.Of(`(?i)[ \t](\d:\d)\.[ \t]+(\pL)`)
)

// prepared sets aside what tells of a pour how it was prepared, and says so.
func (p *Plain) prepared() {
	p.backward(poured, func(at []int) {
		words := p.Text[at[0]:at[3]]
		if strings.ContainsAny(p.Text[at[4]:at[5]], "@tT°") || measured.MatchString(words) {
			told := p.Text[at[4]:at[5]]
			p.aside(at[4], at[5])
			if !called.MatchString(words) && steams(told) {
				p.replace(at[0], at[0], "hot ")
			}
		}
	})
	p.backward(pieces, func(at []int) { p.aside(at[2], at[3]) })
	p.backward(half, func(at []int) {
		for g := 2; g < len(at); g += 2 {
			if at[g] >= 0 {
				p.aside(at[g], at[g+1])
			}
		}
	})
	if at := rimmed.FindStringSubmatchIndex(p.Text); at != nil {
		p.replace(at[0], at[1], "rim: "+strings.TrimSpace(p.Text[at[2]:at[3]])+"\n")
	}
	p.backward(avoided, func(at []int) { p.replace(at[2], at[3], "\nnote: "+p.Text[at[2]:at[3]]) })
	p.backward(struck, func(at []int) { p.aside(at[0], at[1]) })
	p.backward(guests, func(at []int) { p.replace(at[3], at[1], " optional") })
	p.backward(within, func(at []int) {
		if before := p.Text[:at[2]]; !strings.ContainsAny(before[strings.LastIndexAny(before, ",;.\n+")+1:], "0123456789½¼¾⅓⅔()") {
			p.replace(at[2], at[7], " "+p.Text[at[4]:at[5]])
		}
	})
	p.backward(sentence, func(at []int) { p.replace(at[3], at[4], "\n") })
}

// leastSteam is from how many degrees Celsius on what is poured makes a drink hot.
const leastSteam = 45

// steams reports whether words tell of such a heat.
func steams(told string) bool {
	for _, t := range token.Lex(nil, told, 0, len(told)) {
		if t.Kind == token.Numeral {
			fahrenheit := strings.HasSuffix(strings.ToLower(told), "f") || strings.HasSuffix(strings.ToLower(told), "fahrenheit")
			return !fahrenheit && t.Value >= leastSteam || fahrenheit && (t.Value-32)/1.8 >= leastSteam
		}
	}
	return false
}

// aside takes text[from:to] out and keeps it among what is passed over.
func (p *Plain) aside(from, to int) {
	p.Aside = append(p.Aside, strings.Trim(p.Text[from:to], " \t,()"))
	p.replace(from, to, "")
}
