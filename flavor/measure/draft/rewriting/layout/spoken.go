package layout

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// What is said around pours by who speaks or chats is set aside, and what is told in a turn of speech
// is told as a list tells it.

var (
	// thinking is what is said while somebody thinks, between two pauses: "a half ounce of, what was it,
	// demerara syrup".
	thinking = pattern.Of(`(?i)(\pL+)([ \t]*[,–—][ \t]*(?:what (?:was|is) it(?: called)?|what's it called|you know|let me think|let's see|let me see|wait for it|i think|i believe|i guess|how do you say|the|like|uh|um|er|erm)[ \t]*)([,–—])`)
	// leadsOn are words behind which a name still has to come.
	leadsOn = pattern.Of(`(?i)^(?:of|and|with|the|a|an|about|some|then)$`)
	// begins begins a sentence of who speaks.
	begins = pattern.Of(`(?i)(?:^|[.!?\n:]|,[ \t]*)[ \t]*((?:so|right|ok|okay|well|alright|basically|anyway)[ \t,]+)(?:\pL|\d)`)
	// answers begins what somebody answers in a chat: "Jo: yea top w ginger beer".
	answers = pattern.Of(`(?im)^[ \t]*\pL[\pL.]{0,14}:[ \t]*((?:yea|yeah|yes|yep|yup|ya|sure|exactly|correct|ok|okay)[ \t,]+)(?:top|w/|with|float|fill|shake|stir|build|up|on|over|tall|\d)`)
	// thenCome leads to what goes in next: "and then ginger beer".
	thenCome = pattern.Of(`(?i)[,.;\n][ \t]*((?:and[ \t]+)?then[ \t]+)(?:\pL|\d|[½¼¾⅓⅔])`)
	// thenMade leads to how something is made: "and then just shake it".
	thenMade = pattern.Of(`(?i)[,.;][ \t]*((?:(?:and|then|just|you|we|i|so|finally)[ \t]+)+)(?:shake|stir|build|throw|swizzle|blend|strain|serve|pour|muddle)\b`)
	// madeIt is what is made, behind how: "shake it and serve it up".
	madeIt = pattern.Of(`(?i)\b(?:shake|stir|build|throw|swizzle|blend|strain|serve)([ \t]+(?:it|that|them|this|all of it|the lot))\b`)
	// filledWith fills the glass with what stands before it: "ginger beer, just fill it".
	filledWith = pattern.Of(`(?i)\pL(,?[ \t]*(?:just[ \t]+|then[ \t]+|and[ \t]+)?(?:fill it up|fill it|fill the glass|top it up|top it off|top it|to fill it))` + ends)
	// thereIs tells of a pour: "there is also 10 ml of lychee liqueur in there".
	thereIs = pattern.Of(`(?i)(?:^|[,.;!?\n])[ \t]*((?:and[ \t]+)?(?:there(?:'s| is| are)|we have|it has|you have|i put|we put|i've got|we've got|plus)(?:[ \t]+(?:also|another|an extra|in))?[ \t]+)` + amount)
	inThere = pattern.Of(`(?i)` + amount + `[ \t]*(?:of[ \t]+)?[\pL' \t-]+?([ \t]+in[ \t]+(?:there|it|that|here|the mix|the tin|the shaker|the glass))` + ends)
	// asks begins what is asked of an amount, and against stands between two that are held together: "is 22
	// ml of lime too much against 15 ml ginger syrup".
	asks    = pattern.Of(`(?i)(?:^|[.;!?\n])[ \t]*((?:is|are|would|can you do|could you do|what about|how about|what if i do|what if i use|should i use)[ \t]+)` + amount)
	against = pattern.Of(`(?i)\pL([ \t]+(?:(?:too much|too little|enough|plenty|a lot|ok|okay|fine|right)[ \t]+)?(?:against|beside|next to)[ \t]+)` + amount)
	// orSo is no more of an amount than "about".
	orSo = pattern.Of(`(?i)` + amount + `([ \t]+or[ \t]+(?:so|thereabouts))\b`)
	// insists says that an amount is meant as it stands.
	insists = pattern.Of(`(?i)(?:^|[.!?\n])[ \t]*((?:yes|yep|yeah|yup)[ \t,]+(?:that's|thats|that is|it's|its|it is|really)\b[^.;!?\n\d]*)(?:[.;!?\n]|$)`)
	// question is a line of a chat in which somebody asks, and denial the answer that denies it.
	question = pattern.Of(`(?m)^[ \t]*[\pL][\pL.]{0,14}:[ \t]*[^\n\d½¼¾⅓⅔]*\?[ \t]*$`)
	denial   = pattern.Of(`(?i)^\s*[\pL][\pL.]{0,14}:[ \t]*(?:no|nope|nah|never|don't|without|not)\b`)
)

// spoken sets aside what is said around pours.
func (s *Set) spoken() {
	for _, at := range question.FindAllStringIndex(s.Text, -1) {
		if !denial.MatchString(s.Text[at[1]:]) {
			s.blank(at[0], at[1])
		}
	}
	for _, at := range insists.FindAllStringSubmatchIndex(s.Text, -1) {
		s.blank(at[2], at[3])
	}
	for _, at := range thinking.FindAllStringSubmatchIndex(s.Text, -1) {
		s.clear(at[4], at[5])
		if leadsOn.MatchString(s.Text[at[2]:at[3]]) {
			s.clear(at[6], at[7])
		}
	}
	for _, rule := range []*pattern.Pattern{begins, answers, thenMade, thenCome, madeIt, thereIs, inThere, asks, orSo} {
		for at := rule.FindStringSubmatchIndex(s.Text); at != nil; at = rule.FindStringSubmatchIndex(s.Text) {
			s.clear(at[2], at[3])
		}
	}
	for _, at := range against.FindAllStringSubmatchIndex(s.Text, -1) {
		s.Text = s.Text[:at[2]] + "," + strings.Repeat(" ", at[3]-at[2]-1) + s.Text[at[3]:]
	}
	for _, at := range filledWith.FindAllStringSubmatchIndex(s.Text, -1) {
		s.Text = s.Text[:at[2]] + topped + strings.Repeat(" ", at[3]-at[2]-len(topped)) + s.Text[at[3]:]
	}
}
