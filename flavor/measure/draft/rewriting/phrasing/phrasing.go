package phrasing

import (
	"strings"
	"unicode/utf8"

	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/pattern"
)

// Plain is a text in plain phrases.
type Plain struct {
	Text  string
	Aside []string // what is passed over, since it tells of no pour or of another round
	Steps []string // what tells how something is done, and names nothing but what is poured
	Told  []string // what was taken for granted
}

// Of writes a text in plain phrases.
func Of(text string) Plain {
	p := Plain{Text: text}
	for _, rule := range [...]func(*Plain){(*Plain).apothecary, (*Plain).alongside, (*Plain).vessels, (*Plain).numbered, (*Plain).rows, (*Plain).brackets, (*Plain).optionals, (*Plain).shared, (*Plain).steps, (*Plain).rounds, (*Plain).lessons, (*Plain).turned, (*Plain).sentences, (*Plain).prepared, (*Plain).cards, (*Plain).orders, (*Plain).ticket, (*Plain).clipped, (*Plain).strainedOff, (*Plain).alikes, (*Plain).restated, (*Plain).besides, (*Plain).pronouns, (*Plain).strengths, (*Plain).measures, (*Plain).each, (*Plain).dropped, (*Plain).binned, (*Plain).lightly, (*Plain).with, (*Plain).lengthened} {
		rule(&p)
	}
	return p
}

// replace puts words in place of text[from:to].
func (p *Plain) replace(from, to int, with string) { p.Text = p.Text[:from] + with + p.Text[to:] }

// backward calls a rule for each match of a pattern, the last first, so that what it changes moves none of
// the others.
func (p *Plain) backward(r *pattern.Pattern, rule func(at []int)) {
	all := r.FindAllStringSubmatchIndex(p.Text, -1)
	for i := len(all) - 1; i >= 0; i-- {
		rule(all[i])
	}
}

// ends reports whether nothing but a sign, a number or the end of the text follows a byte: what stands
// before it is whole.
func (p *Plain) ends(at int) bool {
	rest := strings.TrimLeft(p.Text[at:], " \t")
	c, _ := utf8.DecodeRuneInString(rest)
	return rest == "" || strings.ContainsRune(",;:/|+&.!)\n\r0123456789½¼¾⅓⅔-–—", c)
}

// step is the label of a step before what it pours: "step 1: 2 oz gin".
var step = pattern.Of(`(?im)(?:^|[.;])[ \t]*(?:step|stage)[ \t]*\d+[ \t]*[:.)–—-][ \t]*`)

// leastSteps is from how many labels on they are the habit of a text.
const leastSteps = 2

// steps sets the labels of steps aside.
func (p *Plain) steps() {
	if len(step.FindAllStringIndex(p.Text, leastSteps)) == leastSteps {
		p.backward(step, func(at []int) { p.replace(at[0], at[1], "\n") })
		p.Text = strings.TrimPrefix(strings.ReplaceAll(p.Text, "\n\n", "\n"), "\n")
	}
}

// round is a bracket that tells what many drinks come to: "(batch x20 = 20/20/20 + 10 water)".
var round = pattern.Of(`(?i)[ \t]*\([ \t]*(?:batch(?:ed|es)?\b|per[ \t]+batch|for[ \t]+(?:a[ \t]+)?batch|(?:x[ \t]?\d+|\d+[ \t]?x)[ \t]*[=:])[^()\n]*\)`)

// keg is a line of its own that tells the same.
var keg = pattern.Of(`(?im)\n[ \t]*[-–—*#>]*[ \t]*(?:(?:note|nb|n\.b\.)[ \t]*:?[ \t]*)?(?:batch(?:ed|es)?|keg)[ \t]*[:=][^\n]*$`)

// rounds sets such brackets and lines aside, and says so.
func (p *Plain) rounds() {
	p.backward(keg, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t\n-–—*#>"))
		p.replace(at[0], at[1], "")
	})
	p.backward(round, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t()"))
		p.replace(at[0], at[1], "")
	})
}

var (
	// header is what stands on a ticket before the colon behind which its pours stand.
	header = pattern.Of(`(?i)^[^\n:]*\b(?:sub|no|xtra|extra)\b[^\n:]*:`)
	// order is what it changes of the drink that is ordered.
	order = pattern.Of(`(?i)(?:,|//|/|-|\+)?[ \t]*\b(?:(sub|xtra|extra)(?:[ \t]+(?:with|for|in))?|(no))[ \t]+(\pL+)[ \t]*`)
)

// single is that one drink of a name is ordered, before the name.
var single = pattern.Of(`(?i)^[ \t]*(?:(?:ticket|tkt|chit|order)[ \t]*:?[ \t]*)?1[ \t]?x[ \t]+(\pL)`)

// ticket sets aside what a ticket changes of a drink, where the pours behind it have that change: "SUB
// mezcal, NO salt: 2 mezcal, ...". A ticket that speaks of an allergy stays.
func (p *Plain) ticket() {
	if at := single.FindStringSubmatchIndex(p.Text); at != nil && !strings.Contains(strings.ToLower(p.Text), "allerg") {
		p.replace(0, at[2], "")
	}
	at := header.FindStringIndex(p.Text)
	if at == nil || strings.Contains(strings.ToLower(p.Text[:at[1]]), "allerg") {
		return
	}
	pours := " " + strings.ToLower(strings.Join(strings.FieldsFunc(p.Text[at[1]:], func(c rune) bool { return !('a' <= c|0x20 && c|0x20 <= 'z') }), " ")) + " "
	head, all := p.Text[:at[1]], order.FindAllStringSubmatchIndex(p.Text[:at[1]], -1)
	for i := len(all) - 1; i >= 0; i-- {
		m := all[i]
		has := strings.Contains(pours, " "+strings.ToLower(head[m[6]:m[7]])+" ")
		if has != (m[2] >= 0) {
			return
		}
		p.Aside = append(p.Aside, strings.Trim(head[m[0]:m[1]], " \t,/+-"))
		head = head[:m[0]] + head[m[1]:]
	}
	p.Text = head + p.Text[at[1]:]
}

// behind is a measure behind the name of what it measures: "2 maraschino dashes".
var behind = pattern.Of(`(?i)(` + count + `)[ \t]+(\pL[\pL'’ \t-]*?)[ \t]+(dash(?:es)?|drops?|barspoons?|bsps?|splash(?:es)?|pinch(?:es)?)\b`)

// count is how often a small measure is poured.
const count = `(?:\b(?:an?|one|two|three|four|five|six|couple|few)\b|(?:\d+[ \t]+)?\d[\d./-]*|[½¼¾⅓⅔])`

// units stand behind an amount: where one does, the measure behind the name is another pour's.
var units = pattern.Of(`(?i)(?:^|[ \t])(?:ml|cl|oz|ounces?|parts?|dash(?:es)?|drops?|tsp|tbsp|bsp|barspoons?|of|and|with)(?:[ \t]|$)`)

// measures puts such measures before the name.
func (p *Plain) measures() {
	p.backward(behind, func(at []int) {
		name, unit := p.Text[at[4]:at[5]], p.Text[at[6]:at[7]]
		if p.ends(at[1]) && !units.MatchString(name) {
			p.replace(at[4], at[7], unit+" "+name)
		}
	})
}

// all is an amount that is each pour's, told so by another word: ".75 of everything: gin, lemon".
var all = pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:of[ \t]+)?(?:everything|all|each|the[ \t]+lot)(?:[ \t]+of)?[ \t]*:[ \t]*`)

// each writes such an amount as most lists do.
func (p *Plain) each() {
	p.backward(all, func(at []int) { p.replace(at[0], at[1], p.Text[at[2]:at[3]]+" each: ") })
}

// fruitDropped is a fruit whose rest goes into the glass once it is squeezed.
var fruitDropped = pattern.Of(`(?i)\b(squeezed?)[ \t,]*(?:and|&|\+|then|n)[ \t]+(?:it[ \t]+)?(?:dropped|drop|dumped|dump|chucked|chuck|thrown|throw|tossed|toss|in)(?:[ \t]+(?:it|in|into[ \t]+the[ \t]+glass|the[ \t]+shell))*\b`)

// shellDropped is the same in a bracket behind it.
var shellDropped = pattern.Of(`(?i)\b(squeezed)(?:[ \t]+in)?[ \t]*\((?:drop|dump|chuck|throw|toss|leave|pop)[^()\n\d]*\)`)

// dropped leaves of it that the fruit is squeezed.
func (p *Plain) dropped() {
	p.backward(fruitDropped, func(at []int) { p.replace(at[3], at[1], "") })
	p.backward(shellDropped, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[3]:at[1]], " \t()"))
		p.replace(at[3], at[1], "")
	})
}

// twist is a peel that is used for its oil and thrown away: "lemon, bin it".
var twist = pattern.Of(`(?i)(?:^|[,.;/|\n])[ \t]*(lemon|orange|lime|grapefruit)(?:[ \t]+(?:peel|twist|zest|oils?|swath))?(?:,?[ \t]+(?:expressed?|squeezed?)(?:[ \t]+over)?)?(,?[ \t]+(?:(?:then|and|&)[ \t]+)?(?:bin(?:ned)?|toss(?:ed)?|chuck(?:ed)?|ditch(?:ed)?|discard(?:ed)?)(?:[ \t]+(?:it|the[ \t]+peel))?)\b`)

// binned leaves of it what is laid on the drink.
func (p *Plain) binned() {
	p.backward(twist, func(at []int) {
		if p.ends(at[1]) {
			p.Aside = append(p.Aside, strings.Trim(p.Text[at[4]:at[5]], " \t,"))
			p.replace(at[3], at[1], " twist")
		}
	})
}

// light is how hard something is muddled, and no rum.
var light = pattern.Of(`(?i)\b(?:muddle|press|bruise|clap|shake|stir|smack|mash)[ \t]+(?:\pL+[ \t]+){0,2}?(light|hard|soft|quick)\b`)

// lightly says so by a word that is nothing poured.
func (p *Plain) lightly() {
	p.backward(light, func(at []int) {
		if p.ends(at[1]) && strings.EqualFold(p.Text[at[2]:at[3]], "light") {
			p.replace(at[2], at[3], "lightly")
		}
	})
}

// joined is a "with" before an amount: "5 mint w 20 sugar".
var joined = pattern.Of(`(?i)(\pL+)[ \t]+(?:w/?|with|plus)[ \t]+([\d.½¼¾⅓⅔])`)

// handled are words before what is laid beside a drink or mixed in the shaker: "serve with 2 biscuits".
var handled = pattern.Of(`(?i)^(?:serv\w*|garnish\w*|finish\w*|com\w*|shak\w*|stir\w*|blend\w*|fill\w*|topp?e?d?|rins\w*|mix\w*|along|deco\w*|strain\w*|build|soaked|doused|drenched)$`)

// with parts the two pours.
func (p *Plain) with() {
	p.backward(joined, func(at []int) {
		if !handled.MatchString(p.Text[at[2]:at[3]]) {
			p.replace(at[3], at[4], ", ")
		}
	})
}

// served is what fills the glass behind how it is served, without a sign: "3 ango tall soda".
var served = pattern.Of(`(?i)(\pL)[ \t]+(tall|long|highball|collins)[ \t]+(soda|tonic|cola|ginger[ \t]+beer|ginger[ \t]+ale|lemonade|prosecco|sparkling)\b`)

// lengthened parts them.
func (p *Plain) lengthened() {
	p.backward(served, func(at []int) {
		if p.ends(at[1]) {
			p.replace(at[3], at[6], ", "+p.Text[at[4]:at[5]]+", top ")
		}
	})
}
