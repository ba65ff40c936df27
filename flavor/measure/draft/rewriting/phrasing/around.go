package phrasing

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// What sentences run together with a pour: where it is thrown, which glass it goes into, the ice beside it. Common
// practice, no source.

var (
	// alikeAbove is a line that tells that all on the line below are poured alike.
	alikeAbove = pattern.Of(`(?im)^([ \t]*(?:all[ \t]+)?(?:equal|eql|eq|even)[ \t]*(?:parts?|measures?|pts)[ \t]*:?[ \t]*\n)([^\d\n½¼¾⅓⅔]*\pL[ \t]*,[^\d\n½¼¾⅓⅔]*)$`)
	// between is what a drink is thrown between, behind its last pour.
	between = pattern.Of(`(?i)\pL([ \t]+between[ \t]+(?:two|the|a[ \t]+pair[ \t]+of)[ \t]+(?:(?:ice[ -]?filled|iced|icy|chilled|cold|large|mixing|shaking|metal|empty)[ \t]+)*(?:tins|shakers|glasses|jugs|mugs|cups)(?:[ \t]+(?:until|till)[ \t]+(?:well[ \t]+|very[ \t]+)?(?:chilled|cold|frothy|foamy|blended))?)[ \t]*(?:[,.;\n]|$)`)
	// juiceInto is a fruit that is squeezed into what the drink is built in.
	juiceInto = pattern.Of(`(?i)\bjuice[ \t]+of[ \t]+(?:half[ \t]+an?|[½1][ \t]*|1/2[ \t]+(?:an?[ \t]+)?|an?|one|two)[ \t]+(?:limes?|lemons?|oranges?|grapefruits?)([ \t]+(?:in|into)[ \t]+)(?:an?|the)[ \t]+(?:\pL+[ \t]+)?(?:glass|tumbler|highball|collins|shaker|tin|goblet)\b`)
	// iced is the ice that goes in with a pour.
	iced = pattern.Of(`(?i)\pL([ \t]+(?:and|&|with|over)[ \t]+(?:plenty[ \t]+of|lots[ \t]+of|loads[ \t]+of|a[ \t]+lot[ \t]+of)[ \t]+ice)\b`)
	// foamed is an egg white that an order adds.
	foamed = pattern.Of(`(?i)\pL([ \t]+(?:n|'n'|n')[ \t]+(?:an?[ \t]+|1[ \t]+)?)egg[ \t]*whites?\b`)
	// saltedRim is a step that dresses the rim of a glass.
	saltedRim = pattern.Of(`(?i)((?:^|[.;,\n])[ \t]*)(salt|sugar)[ \t]+the[ \t]+rim[ \t]+of[ \t]+(?:an?|the|your)[ \t]+(pint|beer|highball|rocks|coupe|cocktail|tall|chilled)[ \t]+glass\b`)
	// moreIce is ice that comes on top of ice.
	moreIce = pattern.Of(`(?i)\b(?:with|w/)[ \t]+(?:(?:some[ \t]+)?more|a[ \t]+(?:handful|scoop|cone|mound)(?:[ \t]+of)?)[ \t]+(crushed|pebble)([ \t]*(?:[,.;\n]|$))`)
	// late is when a pour of a punch goes in.
	late = pattern.Of(`(?i),[ \t]*((?:at[ \t]+(?:the[ \t]+)?)?last[ \t]+min(?:ute)?)\b`)
	// panOf is that a pan of a drink is warmed, behind its name.
	panOf = pattern.Of(`(?i)^[^\n:\d]*\pL(,?[ \t]+(?:a[ \t]+)?(?:big[ \t]+|large[ \t]+)?(?:pan|pot|urn)[ \t]+of)[ \t]*:?[ \t]*\n`)
)

// alongside tells such things apart from the pours beside them.
func (p *Plain) alongside() {
	p.backward(alikeAbove, func(at []int) { p.replace(at[2], at[3], "equal parts ") })
	p.backward(between, func(at []int) { p.passOver(at[2], at[3], "") })
	p.backward(juiceInto, func(at []int) { p.replace(at[2], at[3], ", in ") })
	p.backward(iced, func(at []int) { p.replace(at[2], at[3], ", on ice") })
	p.backward(foamed, func(at []int) { p.replace(at[2], at[3], ", 1 ") })
	p.backward(saltedRim, func(at []int) {
		p.replace(at[0], at[1], p.Text[at[2]:at[3]]+p.Text[at[4]:at[5]]+" rim, "+p.Text[at[6]:at[7]]+" glass")
	})
	p.backward(moreIce, func(at []int) {
		p.replace(at[0], at[1], "with "+p.Text[at[2]:at[3]]+" ice"+p.Text[at[4]:at[5]])
	})
	p.backward(late, func(at []int) { p.passOver(at[0], at[1], "") })
	if at := panOf.FindStringSubmatchIndex(p.Text); at != nil {
		p.passOver(at[2], at[3], "")
	}
}

// passOver sets text[from:to] aside, and puts words in its place.
func (p *Plain) passOver(from, to int, with string) {
	p.Aside = append(p.Aside, strings.Trim(p.Text[from:to], " \t,"))
	p.replace(from, to, with)
}
