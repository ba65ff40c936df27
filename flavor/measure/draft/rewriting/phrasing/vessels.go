package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// What a batch is made in, how much of it makes a drink, and what stands in a bottle: sizes that are no pours.
// Common practice, no source.

const (
	// holder is what holds many drinks.
	holder = `(?:bottle|btl|pitcher|jug|carafe|decanter|(?:punch[ -]?)?bowl|keg|growler|batch|mix|cambro|dispenser|urn|pot)`
	// holds is how much such a thing holds.
	holds = `(?:(?:\d+(?:[.,]\d+)?|[½¼¾]|half(?:[ \t-]+an?)?|an?|one|two|three)[ \t-]?(?:litres?|liters?|ltrs?|lt|l|gallons?|gal|quarts?|qts?)|\d{3,4}[ \t]?ml|\d{2,3}[ \t]?cl)`
)

var (
	// head is what a text says before its pours, up to the sign behind which they stand.
	head = pattern.Of(`^([^\n:→>=]*?)[ \t]*(?::|→|-+>|=>|>+|\n)[ \t]*`)
	// sizeOf is a size beside what has it: "jug of 2 litres", "a 700 ml bottle", "1 L bottle".
	sizeOf = pattern.Of(`(?i)(?:,?[ \t]*\b(?:batch(?:[ \t]+(?:for|in))?|for|in|makes|fills)[ \t]+)?,?[ \t]*(?:\b(?:an?|one|the)[ \t]+)?(?:\b` + holds + `[ \t-]+` + holder + `\b|\b` + holder + `[ \t]+(?:of[ \t]+|for[ \t]+|\()?` + holds + `\b\)?)`)
	// oneOf is that there is one of it, or for whom.
	oneOf = pattern.Of(`(?i)[ \t,]*\b(?:an?|one|1)[ \t]+(?:jug|pitcher|carafe|bowl|batch|bottle)[ \t]*$`)
	// inBracket is a size in a bracket behind the name of what is made, before its colon: "Sour mix (1 L):".
	inBracket = pattern.Of(`(?i)[ \t]*\([ \t]*(?:(?:makes|for|yields)[ \t]+)?` + holds + `[ \t]*\)$`)
	// sizeFirst is such a size before the name of the drink that fills the vessel.
	sizeFirst = pattern.Of(`(?i)^[ \t]*(` + holds + `)[ \t]+(\pL[\pL'’ \t-]*[ \t]` + holder + `)$`)
	// mixed is a size behind the name of a mix, that nothing parts from its pours.
	mixed = pattern.Of(`(?i)^([^\n:\d]*\b(?:mix|batch|premix|prebatch))([ \t]+` + holds + `)[ \t]*[,:;–—-]*[ \t]+(\pL|\d)`)
	// bottled is a bottle whose size stands beside it.
	bottled = pattern.Of(`(?i)\b(?:an?|one|1)[ \t]+(?:bottle|btl)s?(?:[ \t]+of)?[ \t]+(\pL[\pL'’ \t-]*?)[ \t]*(?:\([ \t]*(\d{3,4})[ \t]?(?:ml)?[ \t]*\)|[ \t](\d{3,4})[ \t]?ml\b)`)
	sized   = pattern.Of(`(?i)\b(?:an?|one|1)[ \t]+(?:bottle|btl)s?[ \t]*\([ \t]*(\d{3,4})[ \t]?(?:ml)?[ \t]*\)[ \t]*(?:of[ \t]+)?(\pL)`)
	// portion is how much of a batch makes a drink.
	portion = pattern.Of(`(?i)(?:^|[.;:,\n/|][ \t]*)((?:to[ \t]+serve[ \t]*[:,]?[ \t]*)?(?:(shak|stir|swizzl)(?:e|ed)?(?:[ \t]+to[ \t]+order)?|serve|ladle(?:[ \t]+out)?|pour|dose|portion|measure(?:[ \t]+out)?|decant)[ \t]+(?:up[ \t]+|out[ \t]+)?(?:\d{2,3}[ \t]?ml|\d{1,2}[ \t]?cl|[2-8](?:\.\d+|[½¼¾])?[ \t]?oz|\d{2,3})(?:[ \t]+(?:of[ \t]+(?:it|this|the[ \t]+(?:batch|mix|bottle))|ea(?:ch)?|(?:per|a)[ \t]+(?:serve|drink|glass|portion|guest|head)|per))?)([ \t]*(?:[,.;\n]|$)|[ \t]+(?:over|up|on|in|into|straight|neat|with|from)\b)`)
	// perServe is the same with the amount at its end, or at its beginning: "Shake per serve, 105 ml", "100 ml pour".
	perServe = pattern.Of(`(?i)(?:^|[.;:,\n/|][ \t]*)((?:(shak|stir|swizzl)(?:e|ed)?[ \t]+)?per[ \t]+(?:serve|drink|glass|portion|guest|head)[ \t]*[,:=–—-]?[ \t]*\d{2,3}[ \t]?ml|\d{2,3}[ \t]?ml[ \t]+(?:pours?|portions?|serves?|servings?|ladles?)(?:[ \t]+each)?)([ \t]*(?:[.;\n]|$))`)
	// many drinks are told by amounts that no drink has.
	large = pattern.Of(`(?i)(?:^|[^\d.])\d{3,}(?:[^\d]|$)|\b\d+(?:\.\d+)?[ \t]?l(?:itres?|iters?)?\b|\bbatch|\bbottle|\bx[ \t]?\d{2}\b`)
	// imperial says which pint it is.
	imperial = pattern.Of(`(?i)((?:\d+(?:\.\d+)?|[½¼]|half(?:[ \t]+an?)?|an?|one|two|three|four|five|six))[ \t]+(?:(?:imp(?:erial)?|uk|british)\.?[ \t]+pints?\b|pints?[ \t]*\([ \t]*(?:imp(?:erial)?|uk|british)\.?[ \t]*\))`)
)

// vessels sets aside what holds a batch and how much of it makes a drink, and says so.
func (p *Plain) vessels() {
	p.Text = sized.ReplaceAllString(p.Text, "$1 ml $2")
	p.backward(bottled, func(at []int) {
		size := ""
		for _, g := range [...]int{4, 6} {
			if at[g] >= 0 {
				size = p.Text[at[g]:at[g+1]]
			}
		}
		p.replace(at[0], at[1], size+" ml "+p.Text[at[2]:at[3]])
	})
	if large.MatchString(p.Text) {
		p.backward(portion, p.portions)
		p.backward(perServe, p.portions)
	}
	p.backward(imperial, func(at []int) {
		if n := counted[strings.ToLower(p.Text[at[2]:at[3]])]; n > 0 {
			ml := token.Decimals(n*imperialPintML) + " ml"
			p.tell(at[0], at[1], "is "+ml)
			p.replace(at[0], at[1], ml)
		}
	})
	p.backward(drawnBitter, func(at []int) {
		p.tell(at[2], at[3], "by the pint is bitter ale")
		p.replace(at[3], at[3], " ale")
	})
	p.chores()
	p.thousands()
	p.headed()
}

// portions sets aside how much of a batch makes a drink, and keeps how that is mixed. It does so only where the
// rest is that of a batch.
func (p *Plain) portions(at []int) {
	if !large.MatchString(p.Text[:at[2]] + p.Text[at[3]:]) {
		return
	}
	p.tell(at[2], at[3], "is how much of it makes a drink, and pours nothing")
	by := ""
	if at[4] >= 0 {
		by = map[byte]string{'t': "stir", 'h': "shake", 'w': "swizzle"}[p.Text[at[4]+1]|0x20]
	}
	p.replace(at[2], at[3], by)
}

var (
	// thousand is a number of four figures behind a name or an arrow, and hundred one of three.
	thousand = pattern.Of(`(?:[\pL)]|→|>)[ \t]+([1-9]\d{3})[ \t]*(?:[,;\n]|\.(?:[ \t\n]|$)|$)`)
	hundred  = pattern.Of(`(?:[\pL)]|→|>)[ \t]+[1-9]\d{2}[ \t]*(?:[,;\n]|\.(?:[ \t\n]|$)|$)`)
)

// thousands writes the unit behind such numbers beside others of a batch: nobody pours thousands of anything but
// millilitres.
func (p *Plain) thousands() {
	if !hundred.MatchString(p.Text) {
		return
	}
	p.backward(thousand, func(at []int) {
		p.tell(at[2], at[3], "is read as millilitres")
		p.replace(at[3], at[3], " ml")
	})
}

// drawnBitter is the ale that pubs call so.
var drawnBitter = pattern.Of(`(?i)\bpints?[ \t]+(?:of[ \t]+)?(bitter)(?:[ \t]*[,;.+&/\n]|$)`)

// imperialPintML is the imperial pint in mL (Weights and Measures Act 1985, Schedule 1).
const imperialPintML = 568.26125

// counted are numbers of pints.
var counted = map[string]float64{"½": 0.5, "½ a": 0.5, "half": 0.5, "half a": 0.5, "a": 1, "an": 1, "one": 1, "1": 1, "1.5": 1.5, "two": 2, "2": 2, "three": 3, "3": 3, "four": 4, "4": 4, "five": 5, "5": 5, "six": 6, "6": 6, "8": 8, "10": 10, "12": 12}

var (
	// chore is what is done with a bottle or a bowl once it is filled, and for how long it stands.
	chore = pattern.Of(`(?i)([,;.+&/|\n]|->|→)[ \t]*((?:(?:and|then)[ \t]+)?(?:(?:re)?bottle|filter|press|funnel|label|date|cork|cap|freezer|freeze|fridge|refrigerate|keep[ \t]+(?:cold|in[ \t]+(?:the[ \t]+)?(?:fridge|freezer))|(?:rest|leave|stand|steep|macerate|infuse|wait)?[ \t]*(?:for[ \t]+)?(?:overnight|\d+[ \t]?(?:days?|d|hours?|hrs?|h|weeks?|wks?|mins?|minutes?))(?:[ \t]+(?:at[ \t]+)?(?:room[ \t]+temp(?:erature)?|in[ \t]+(?:the[ \t]+)?(?:fridge|freezer|dark)))?))([ \t]*(?:[,;+&/|\n]|\.(?:[ \t\n]|$)|$))`)
	// forMany is for how many a bowl is, behind its pours.
	forMany = pattern.Of(`(?i)([,;.\n–—-])[ \t]*((?:punch|bowl|jug|batch|pitcher)[ \t]+for[ \t]+(?:about[ \t]+)?\d{1,3}(?:[ \t]+(?:people|guests|pax))?)([ \t]*(?:[,;\n]|\.(?:[ \t\n]|$)|$))`)
	// yield is how much a making comes to.
	yield = pattern.Of(`(?i)([,;.\n])[ \t]*(yields?(?:[ \t]+is)?[ \t:=]*(?:about|approx\.?|~|ca\.?)?[ \t]*\d+(?:\.\d+)?[ \t]?(?:ml|l|litres?|cl|oz|g)?)([ \t]*(?:[,;\n]|\.(?:[ \t\n]|$)|$))`)
)

// chores sets such work aside.
func (p *Plain) chores() {
	for _, of := range [...]*pattern.Pattern{forMany, yield, chore, chore} { // what stands between two signs is found once only where they share one
		p.backward(of, func(at []int) {
			p.Aside = append(p.Aside, strings.TrimSpace(p.Text[at[4]:at[5]]))
			p.replace(at[3], at[7], "")
		})
	}
}

// headed sets aside the size of what a batch is made in from before its pours, which begin a line then.
func (p *Plain) headed() {
	if at := mixed.FindStringSubmatchIndex(p.Text); at != nil {
		p.tell(at[4], at[5], "is what all of it comes to, and pours nothing")
		p.replace(at[3], at[6], "\n")
		return
	}
	at := head.FindStringSubmatchIndex(p.Text)
	if at == nil || at[1] == len(p.Text) {
		return
	}
	said := p.Text[:at[3]]
	title := said
	if m := sizeFirst.FindStringSubmatchIndex(title); m != nil {
		title = title[m[4]:m[5]]
	} else if m := sizeOf.FindStringIndex(title); m != nil {
		title = strings.TrimSpace(title[:m[0]] + " " + strings.TrimLeft(title[m[1]:], " \t,"))
	} else if m := inBracket.FindStringIndex(title); m != nil && p.Text[at[3]] == ':' {
		title = title[:m[0]]
	} else if m := oneOf.FindStringIndex(title); m != nil {
		title = title[:m[0]]
	}
	title = strings.Trim(title, " \t,–—-")
	if title == said || strings.ContainsAny(title, "0123456789½¼¾⅓⅔") {
		return
	}
	p.tell(0, at[3], "tells what all of it is made in; that pours nothing, and the amounts are those of the whole")
	if title != "" {
		title += "\n"
	}
	p.replace(0, at[1], title)
}

// tell says something of text[from:to].
func (p *Plain) tell(from, to int, of string) {
	p.Told = append(p.Told, "“"+token.OneLine(strings.Trim(p.Text[from:to], " \t,"))+"” "+of)
}
