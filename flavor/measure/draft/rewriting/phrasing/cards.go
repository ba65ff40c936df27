package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/words/speech"
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
	// ofAgave says of a tequila what every good one is.
	ofAgave = pattern.Of(`(?i)[ \t]*\(?[ \t]*\b100[ \t]?%[ \t]*(?:(?:de|blue|pure)[ \t]+)?agave[ \t]*\)?`)
	// worked is what is done to leaves that are counted, and pressed what is done to a handful of them.
	worked  = pattern.Of(`(?i)(\d+[ \t]+(?:(?:\pL+[ \t]+){1,3}?(?:leaf|leaves|lvs|lvs\.|sprigs?)|mint|basil|sage|thyme|shiso|coriander))[ \t]+(?:(?:lightly|gently|softly|just)[ \t]+)?(?:slapped|smacked|clapped|spanked|torn|bruised|tapped|ripped|pressed|rubbed|rolled)\b`)
	pressed = pattern.Of(`(?i)(handful[ \t]+of[ \t]+(\pL+)),?[ \t]+(?:lightly[ \t]+|gently[ \t]+)?muddled\b[ \t]*[,.;]?`)
	// perSize is how much one drink of a batch comes to, before its pours: "per 90ml serve:".
	perSize = pattern.Of(`(?i),?[ \t]*\bper[ \t]+\d+[ \t]?(?:ml|oz|cl)[ \t]+(?:serve|serving|drink|pour|portion|glass|bottle)[ \t]*:`)
	// evenly is a ratio of equal parts before pours whose amount each follows: "1:1 gin & sherry, 45 each".
	evenly = pattern.Of(`(?i)\b(?:1:1(?::1)*|50/50|50:50)[ \t]+(?:of[ \t]+)?(\pL[^\d\n]*?` + speech.Amount + `[ \t]+(?:of[ \t]+)?each\b)`)
)

// paged is a bracket that tells where the house keeps its recipes: "(prep book p3)", "(see page 12)".
var paged = pattern.Of(`(?i)[ \t]*\([ \t]*(?:see[ \t]+)?(?:(?:prep|recipe|house|spec|bar)[ \t]+)?(?:(?:book|sheet|folder|binder)(?:[ \t,]+(?:p|pg|page|no|tab)?\.?[ \t]*\d{1,3})?|(?:p|pg|page)\.?[ \t]*\d{1,3})[ \t]*\)`)

// cards tells such turns as any draft does.
func (p *Plain) cards() {
	p.backward(optional, func(at []int) {
		p.replace(at[0], at[1], p.Text[at[2]:at[3]]+p.Text[at[4]:at[5]]+" optional"+p.Text[at[6]:at[7]])
	})
	p.backward(paged, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t()"))
		p.replace(at[0], at[1], "")
	})
	p.backward(ofAgave, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t()"))
		p.replace(at[0], at[1], "")
	})
	p.backward(worked, func(at []int) { p.replace(at[3], at[1], "") })
	p.backward(pressed, func(at []int) {
		p.replace(at[3], at[1], "\nmuddle the "+p.Text[at[4]:at[5]]+"\n")
	})
	p.backward(perSize, func(at []int) {
		p.Aside = append(p.Aside, strings.Trim(p.Text[at[0]:at[1]], " \t,:"))
		p.replace(at[0], at[1], ":")
	})
	p.backward(evenly, func(at []int) { p.replace(at[0], at[2], "") })
}
