package layout

import "counterpour/flavor/measure/pattern"

// What a text tells of who gets the drink, how many of them and until when pours nothing, though it
// counts.

// sentence begins where a sentence or an entry does.
const sentence = `(?i)(?:^|[,.;!?(\n]|[ \t][-–—])[ \t]*`

// count is a number of guests, glasses or turns.
const count = `(?:\d+|one|two|three|four|five|six|a|an)`

var servings = []*pattern.Pattern{
	// "one each max", "2 per guest", "one a head, no more"
	pattern.Of(sentence + `((?:only[ \t]+|just[ \t]+)?` + count + `[ \t]+(?:each|per[ \t]+(?:person|guest|head|table|customer|order|pax|shift|night|hand)|a[ \t]+(?:head|person))(?:[ \t]+(?:max(?:imum)?|only|limit|tops|please|pls))?)[ \t]*[!)]*` + ends),
	// "max 2 per guest", "limit 1"
	pattern.Of(sentence + `((?:max(?:imum)?|limit(?:ed)?(?:[ \t]+to)?|no more than)[ \t]+` + count + `(?:[ \t]+(?:each|per|a|for|of)[ \t]+(?:the[ \t]+)?\pL+)*)[ \t]*[!)]*` + ends),
	// "180 flutes by 11:15", "40 covers"
	pattern.Of(sentence + `(\d+[ \t]+(?:flutes|coupes|glasses|cups|drinks|serves|servings|portions|covers|guests|pax|people|tickets|orders|rounds|trays|mugs|pints)(?:[ \t]+(?:by|for|at|until|till|before|tonight|tomorrow|today|due|ready|out|in total|total)(?:[ \t]+[\pL\d:.]+){0,4})?)[ \t]*[!)]*` + ends),
	// "one ladle over ice"
	pattern.Of(sentence + `(` + count + `[ \t]+(?:ladles?|ladlefuls?|scoops?|dippers?)(?:[ \t]+(?:per|a|each)(?:[ \t]+(?:cup|glass|guest|person))?)?)(?:[ \t]+(?:over|into|on|in|per)\b|` + ends + `)`),
	// "yes that's 1 oz of bitters, not a typo"
	pattern.Of(sentence + `((?:yes|yep|yeah|yup)[ \t,]+[^.;!?\n]*(?:not a typo|not a mistake|really|correct|i know|i mean it|promise|that's right|seriously))` + `[ \t]*[.!)]*` + ends),
	pattern.Of(sentence + `((?:yes|yep|yeah|yup)[ \t,]+(?:that's|thats|that is|it's|its|really|i know|you read that right)[^,.;!?\n]*)` + ends),
	// "dry shake 1st"
	pattern.Of(`(?i)[ \t](1st|2nd|3rd)[!]*` + ends),
	// "shake x2"
	pattern.Of(`(?i)\b(?:shake|shk|shaken)[ \t]+(x[ \t]?[23]|[23][ \t]?x)\b`),
	// "tom c 4 tbl9"
	pattern.Of(`(?i)\pL([ \t]+(?:(?:for|4|@|at|to)[ \t]+)?(?:table|tbl|seat|stool|booth)[ \t]?#?\d+)` + ends),
	// "OJ first"
	pattern.Of(sentence + `(\pL+(?:[ \t]+\pL+)?[ \t]+(?:first|goes first|in first|before the rest|last of all))[ \t]*[!)]*` + ends),
}

// served sets aside who gets how many, and what is said again.
func (s *Set) served() {
	for _, r := range servings {
		for _, at := range r.FindAllStringSubmatchIndex(s.Text, -1) {
			if at[0] > 0 || s.Text[0] == '\n' {
				s.blank(at[2], at[3])
			}
		}
	}
}
