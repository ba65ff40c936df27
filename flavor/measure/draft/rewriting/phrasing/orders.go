package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/pattern"
)

// How tickets and orders head a drink, and how prep cards clip what is done with it. Common practice, no source.

var (
	// place is a line of a ticket, or what stands before a sign, that says where the drink goes.
	place = pattern.Of(`(?i)^[ \t]*(?:(?:tbl|table|tab|seat|bar|order|ticket|tkt|chk|check|tisch|mesa|room|bt)[ \t]*#?\d+|#[ \t]?\d+(?:[ \t]+(?:bar|tbl|table|seat|patio))?|t\d+)(?:[ \t,/]*(?:seat|st|s|pos|cover|cvr|guest|chk|check|tkt|ticket|order|tbl|table)[ \t]*#?\d+)*[ \t]*(?:\n+|[/:|,–—-]+[ \t]*)`)
	// one says that one of a drink is ordered, whose name is written in capitals or with a multiple sign.
	one = pattern.Of(`^[ \t]*(?:1[ \t]?[xX×][ \t]*|1[ \t]+)(\p{Lu}[\p{Lu}'’&.-]+(?:[ \t]+[\p{Lu}'’&.-]+){0,4}[ \t]*(?:\n|[–—:|-]))`)
	// once says so behind a name.
	once = pattern.Of(`(?i)(\pL)[ \t]+\(?(?:x[ \t]?1|1[ \t]?x)\)?([ \t]*(?:[,;:–—|-]|\n))`)
)

// orders sets aside where a ticket goes and that it orders one drink.
func (p *Plain) orders() {
	if strings.Contains(strings.ToLower(p.Text), "allerg") {
		return
	}
	if at := place.FindStringIndex(p.Text); at != nil && at[1] < len(p.Text) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[:at[1]], " \t\n/:|,–—-"))
		p.replace(0, at[1], "")
	}
	if at := one.FindStringSubmatchIndex(p.Text); at != nil && strings.ContainsAny(p.Text[at[1]:], "0123456789½¼¾⅓⅔") {
		p.replace(0, at[2], "")
	}
	p.backward(once, func(at []int) { p.replace(at[3], at[4], "") })
}

var (
	// dryWet and wet are a dry shake and a wet one, as prep cards clip them, and doubleStrain stands alone or before a
	// glass.
	dryWet       = pattern.Of(`\b(?:DS|D/S|ds|d/s)[ \t]*(?:,|/|\+|&|then|>|->|→)?[ \t]*(?:WS|W/S|ws|w/s|shake|SHAKE|Shake)\b`)
	wet          = pattern.Of(`(?i)\bdry[ \t]*(?:,|/|\+|&|-|–|then|and|>|->|→)[ \t]*wet(?:[ \t]+sh(?:ake|aken|k)?)?([ \t]*(?:[,;/|.)\n]|$))`)
	doubleStrain = pattern.Of(`(?m)(?:^|[,;/|.][ \t]*)(DS|D/S|d/s)([ \t]*(?:[,;/|.]|$)|[ \t]+(?:into|to|in|over)\b)`)
)

var (
	// halfRim is a rim that is dressed on one side, whose half stands behind what dresses it, and rimHalf one whose
	// half is a figure behind a sign. Behind a name without a sign that figure may be its amount.
	halfRim = pattern.Of(`(?i)(?:^|[,;/|.\n–—>-][ \t]*|\b(?:rx|rocks|up|coupe|cpe|ice|glass|gls|shake|shk|strain)[ \t]+)((salt|sugar|chilli|chili|celery[ \t]salt|cinnamon|smoked[ \t]salt)[ \t]+(?:½|1/2)[ \t]*)rim\b`)
	rimHalf = pattern.Of(`(?i)(?:^|[,;/|.\n–—>-][ \t]*)((?:½|1/2)[ \t]+)(?:(?:salt|sugar|chilli|chili|cinnamon|smoked[ \t]salt)[ \t]+)?rim\b`)
)

// clipped writes out how prep cards clip shaking and straining.
func (p *Plain) clipped() {
	p.backward(dryWet, func(at []int) { p.replace(at[0], at[1], "dry shake, shake") })
	p.backward(wet, func(at []int) { p.replace(at[0], at[2], "dry shake, shake") })
	p.backward(halfRim, func(at []int) { p.replace(at[2], at[3], "half "+p.Text[at[4]:at[5]]+" ") })
	p.backward(rimHalf, func(at []int) { p.replace(at[2], at[3], "half ") })
	p.backward(doubleStrain, func(at []int) { p.replace(at[2], at[3], "double strain") })
}

// alike is an amount that is each pour's, before them and told by another turn: "22ml all the way. Scotch, ...",
// "30 apiece - gin, ...".
var alike = pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:all[ \t]+the[ \t]+way(?:[ \t]+(?:down|through|across))?|all[ \t]+(?:round|around|across)|straight[ \t]+(?:through|across)|across[ \t]+the[ \t]+board|apiece|a[ \t]+piece|of[ \t]+each)[ \t]*[:.,;–—-][ \t]*`)

// halves are two pours in equal parts whose amount follows: "OJ and bubbly 50:50, flute. 75ml of each".
var halves = pattern.Of(`(?i)(?:^|[:\n.][ \t]*)(\pL[^:.,;\n\d]*?(?:[ \t]+(?:and|&|\+)[ \t]+)\pL[^:.,;\n\d]*?)[ \t]+(?:50[ \t]?[:/][ \t]?50|half[ \t](?:and|&)[ \t]half|1:1)\b([^\n]*?)[.,;]?[ \t]*(` + speech.Amount + `)[ \t]+(?:of[ \t]+)?each\b`)

// alikes writes such amounts as most lists do.
func (p *Plain) alikes() {
	p.backward(alike, func(at []int) { p.replace(at[0], at[1], p.Text[at[2]:at[3]]+" each: ") })
	p.backward(halves, func(at []int) {
		names, between, amount := p.Text[at[2]:at[3]], p.Text[at[4]:at[5]], p.Text[at[6]:at[7]]
		p.replace(at[2], at[1], amount+" each "+names+between)
	})
}

// beside is what is served next to a drink, before or behind its name: "side shot prosecco", "shot of
// prosecco on the side".
var beside = pattern.Of(`(?i)(?:^|[,;.+\n]|\bwith|\bw/)[ \t]*((?:an?[ \t]+)?(?:side[ -]?(?:shot|car|of|glass)|sidecar|shot|small[ \t]+glass)(?:[ \t]+of)?[ \t]+(\pL[\pL' \t]*?)(?:[ \t]+(?:on|to)[ \t]+the[ \t]+side|[ \t]+(?:beside|alongside))?)[ \t]*(?:[,;.\n]|$)`)

// besides tells so as any draft does.
func (p *Plain) besides() {
	p.backward(beside, func(at []int) {
		said := strings.ToLower(p.Text[at[2]:at[3]])
		if strings.Contains(said, "side") || strings.Contains(said, "beside") {
			p.replace(at[2], at[3], p.Text[at[4]:at[5]]+" on the side")
		}
	})
}

// leftFor is what is left out of the shaker and follows as "it": "shake w/out the beer, top with it".
var leftFor = pattern.Of(`(?i)\b(?:without|w/out|w/o|minus|except|all[ \t]+but|everything[ \t]+but)[ \t]+(?:the[ \t]+)?(\pL+(?:[ \t]+\pL+)?)[ \t]*(?:,|;|\.|and|then|&)[ \t]*(?:then[ \t]+)?(?:top|topped|finish|fill)(?:[ \t]+(?:up|off))?[ \t]+with[ \t]+(it|that|them)\b`)

// pronouns names it again.
func (p *Plain) pronouns() {
	p.backward(leftFor, func(at []int) { p.replace(at[4], at[5], p.Text[at[2]:at[3]]) })
}

// overproof is a strength that is the name of a bottle, behind its name: "demerara 151".
var overproof = pattern.Of(`(?i)\b(demerara|jamaican?|guyan\pL+|puerto[ \t]rican)[ \t]+(?:rum[ \t]+)?(151|126)(?:[ \t]+(?:proof|rum))*\b`)

// strengths writes it so that the number is no amount.
func (p *Plain) strengths() {
	p.backward(overproof, func(at []int) {
		if strings.HasPrefix(strings.ToLower(p.Text[at[2]:at[3]]), "demerara") {
			p.replace(at[0], at[1], "overproof demerara rum")
		}
	})
}
