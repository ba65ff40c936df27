package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/speech"
	"counterpour/flavor/measure/pattern"
)

// Turns of phrase of cards, notes and lessons around single pours. Common practice, no source.

// lesson is what numbers a note of a course: "Lecture 4, exercise 2.".
var lesson = pattern.Of(`(?i)^[ \t]*(?:(?:student|class|course|my)?[ \t]*(?:notes?|lecture|lesson|exercise|week|wk|module|question|task|homework|chapter|day|session|practical|exam)[ \t]*#?\d+[ \t]*[.,:;/–—-]*[ \t]*)+(\pL)`)

// lessons sets it aside.
func (p *Plain) lessons() {
	if at := lesson.FindStringSubmatchIndex(p.Text); at != nil && strings.ContainsAny(p.Text[at[2]:], "0123456789½¼¾⅓⅔") {
		p.Aside = append(p.Aside, strings.Trim(p.Text[:at[2]], " \t.,:;/–—-"))
		p.replace(0, at[2], "")
	}
}

var (
	// optional stands before a pour that any draft calls so behind it.
	optional = pattern.Of(`(?i)((?:^|[,;.\n])[ \t]*)optional(?:ly)?:?[ \t]+([^,;.\n]*?\d[^,;\n]*?)([ \t]*(?:[,;\n]|\.(?:[ \t\n]|$)|$))`)
	// heated is how hot something is made, told behind a comma.
	heated = pattern.Of(`(?i),?[ \t]*\b(heated|warmed|warm|hot)(?:[ \t]+up)?[ \t]+to[ \t]+\d{2,3}[ \t]*(?:°[ \t]?)?(?:c|f|degrees|celsius)\b`)
	// ofAgave says of a tequila what every good one is.
	ofAgave = pattern.Of(`(?i)[ \t]*\(?[ \t]*\b100[ \t]?%[ \t]*(?:(?:de|blue|pure)[ \t]+)?agave[ \t]*\)?`)
	// rum151 is a strength that is the name of a rum.
	rum151 = pattern.Of(`(?i)\b151(?:[ -]?proof)?[ \t]+rum\b`)
	// sliced is a clipped unit of tickets.
	sliced = pattern.Of(`\b(\d+)[ \t]*(?:SL|SLC|SLCS|slc|slcs)\b`)
	// bunch is a measure of herbs that are pressed or shaken.
	bunch = pattern.Of(`(?i)\b(?:a[ \t]+)?(?:big[ \t]+|large[ \t]+|small[ \t]+|good[ \t]+)?bunch(?:[ \t]+of)?[ \t]+(?:fresh[ \t]+)?(basil|mint|coriander|cilantro|sage|dill|tarragon|shiso)\b`)
	// worked is what is done to leaves that are counted, and pressed what is done to a handful of them.
	worked  = pattern.Of(`(?i)(\d+[ \t]+(?:(?:\pL+[ \t]+){1,3}?(?:leaf|leaves|lvs|lvs\.|sprigs?)|mint|basil|sage|thyme|shiso|coriander))[ \t]+(?:(?:lightly|gently|softly|just)[ \t]+)?(?:slapped|smacked|clapped|spanked|torn|bruised|tapped|ripped|pressed|rubbed|rolled)\b`)
	pressed = pattern.Of(`(?i)(handful[ \t]+of[ \t]+(\pL+)),?[ \t]+(?:lightly[ \t]+|gently[ \t]+)?muddled\b[ \t]*[,.;]?`)
	// slowly is how something is topped up, between the verb and what it is topped with or before "on top".
	slowly = pattern.Of(`(?i)\b(top(?:ped)?|fill(?:ed)?)(?:[ \t]+up)?[ \t]+(?:slowly|gently|carefully|gradually|generously)[ \t]+(with\b)`)
	slowOn = pattern.Of(`(?i)[ \t]+(?:slowly|gently|carefully|gradually|softly)([ \t]+(?:on|to|at|over)[ \t]+(?:the[ \t]+)?top\b)`)
	// perSize is how much one drink of a batch comes to, before its pours: "per 90ml serve:".
	perSize = pattern.Of(`(?i),?[ \t]*\bper[ \t]+\d+[ \t]?(?:ml|oz|cl)[ \t]+(?:serve|serving|drink|pour|portion|glass|bottle)[ \t]*:`)
	// perPour is an amount of each drink of a keg or a batch, with that of the batch behind it.
	perPour = pattern.Of(`(?i)(\d[\d./]*[ \t]?(?:oz|ml|cl)?)[ \t]*(?:/|per)[ \t]*(?:pour|serve|srv|drink|glass|cocktail|portion|head|pax)\b(?:[ \t]*\([ \t]*[\d.,]+[ \t]*(?:oz|ml|cl|l|g)?[ \t]*\))?`)
	// noGarnish is a sentence of its own behind what is done with the drink.
	noGarnish = pattern.Of(`(?i)\.[ \t]+(no[ \t]+garnish)\b`)
	// apiece is "each" behind a list.
	apiece = pattern.Of(`(?i)(` + speech.Amount + `)[ \t]+(?:apiece|a[ \t]piece|per[ \t]piece)\b`)
	// evenly is a ratio of equal parts before pours whose amount each follows: "1:1 gin & sherry, 45 each".
	evenly = pattern.Of(`(?i)\b(?:1:1(?::1)*|50/50|50:50)[ \t]+(?:of[ \t]+)?(\pL[^\d\n]*?` + speech.Amount + `[ \t]+(?:of[ \t]+)?each\b)`)
)

// cards tells such turns as any draft does.
func (p *Plain) cards() {
	p.backward(optional, func(at []int) {
		p.replace(at[0], at[1], p.Text[at[2]:at[3]]+p.Text[at[4]:at[5]]+" optional"+p.Text[at[6]:at[7]])
	})
	p.backward(heated, func(at []int) { p.replace(at[0], at[1], " heated") })
	p.backward(ofAgave, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t()"))
		p.replace(at[0], at[1], "")
	})
	p.backward(rum151, func(at []int) { p.replace(at[0], at[1], "overproof demerara rum") })
	p.backward(sliced, func(at []int) { p.replace(at[0], at[1], p.Text[at[2]:at[3]]+" slices") })
	p.backward(bunch, func(at []int) { p.replace(at[0], at[1], "handful of "+p.Text[at[2]:at[3]]) })
	p.backward(worked, func(at []int) { p.replace(at[3], at[1], "") })
	p.backward(pressed, func(at []int) {
		p.replace(at[3], at[1], "\nmuddle the "+p.Text[at[4]:at[5]]+"\n")
	})
	p.backward(slowOn, func(at []int) { p.replace(at[0], at[1], p.Text[at[2]:at[3]]) })
	p.backward(slowly, func(at []int) { p.replace(at[0], at[1], p.Text[at[2]:at[3]]+" "+p.Text[at[4]:at[5]]) })
	p.backward(perSize, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t,:"))
		p.replace(at[0], at[1], ":")
	})
	p.backward(perPour, func(at []int) { p.replace(at[3], at[1], "") })
	p.backward(noGarnish, func(at []int) { p.replace(at[0], at[1], "\n"+p.Text[at[2]:at[3]]) })
	p.backward(apiece, func(at []int) { p.replace(at[3], at[1], " each") })
	p.backward(evenly, func(at []int) { p.replace(at[0], at[2], "") })
}
