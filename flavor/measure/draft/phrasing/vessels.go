package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/token"
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
	// sizeFirst is such a size before the name of the drink that fills the vessel.
	sizeFirst = pattern.Of(`(?i)^[ \t]*(` + holds + `)[ \t]+(\pL[\pL'’ \t-]*[ \t]` + holder + `)$`)
	// mixed is a size behind the name of a mix, that nothing parts from its pours.
	mixed = pattern.Of(`(?i)^([^\n:\d]*\b(?:mix|batch|premix|prebatch))([ \t]+` + holds + `)[ \t]*[,:;–—-]*[ \t]+(\pL|\d)`)
	// bottled is a bottle whose size stands beside it.
	bottled = pattern.Of(`(?i)\b(?:an?|one|1)[ \t]+(?:bottle|btl)s?(?:[ \t]+of)?[ \t]+(\pL[\pL'’ \t-]*?)[ \t]*(?:\([ \t]*(\d{3,4})[ \t]?(?:ml)?[ \t]*\)|[ \t](\d{3,4})[ \t]?ml\b)`)
	sized   = pattern.Of(`(?i)\b(?:an?|one|1)[ \t]+(?:bottle|btl)s?[ \t]*\([ \t]*(\d{3,4})[ \t]?(?:ml)?[ \t]*\)[ \t]*(?:of[ \t]+)?(\pL)`)
	// portion is how much of a batch makes a drink.
	portion = pattern.Of(`(?i)(?:^|[.;:,\n/|][ \t]*)((?:to[ \t]+serve[ \t]*[:,]?[ \t]*)?(?:(shak|stir|swizzl)(?:e|ed)?|serve|pour|dose|portion|measure(?:[ \t]+out)?|decant)[ \t]+(?:up[ \t]+|out[ \t]+)?(?:\d{2,3}[ \t]?ml|\d{1,2}[ \t]?cl|[2-8](?:\.\d+|[½¼¾])?[ \t]?oz|\d{2,3})(?:[ \t]+(?:of[ \t]+(?:it|this|the[ \t]+(?:batch|mix|bottle))|ea(?:ch)?|(?:per|a)[ \t]+(?:serve|drink|glass|portion|guest|head)))?)([ \t]*(?:[,.;\n]|$)|[ \t]+(?:over|up|on|in|into|straight|neat|with|from)\b)`)
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
		p.backward(portion, func(at []int) {
			p.tell(at[2], at[3], "is how much of it makes a drink, and pours nothing")
			by := ""
			if at[4] >= 0 {
				by = map[byte]string{'t': "stir", 'h': "shake", 'w': "swizzle"}[p.Text[at[4]+1]|0x20]
			}
			p.replace(at[2], at[3], by)
		})
	}
	p.backward(imperial, func(at []int) {
		p.replace(at[0], at[1], p.Text[at[2]:at[3]]+" imperial pints")
	})
	p.headed()
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
