package phrasing

import (
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// What a step or a sentence pours, written as a list has it: "dissolve 1 lump of sugar in a spoonful of
// water, adding two dashes of bitters". Common practice, no source.

const (
	// many is how many of a measure a sentence pours, in figures or words.
	many = `(?:(?:three[ -]quarters|a[ \t]+quarter|half)[ \t]+(?:of[ \t]+)?an?|an?[ \t]+half|(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|several|few)|(?:\d+[ \t]+)?\d[\d./]*(?:[ \t]?[½¼¾⅓⅔])?|[½¼¾⅓⅔])`
	// unitOf are the measures of a list and of old handbooks.
	unitOf = `(?:ml|cl|dl|l|litres?|liters?|oz\.?|ounces?|g|grams?|kg|lbs?\.?|pounds?|dash(?:es)?|drops?|tsps?|tbsps?|(?:tea|table|bar)[ -]?spoon(?:ful|s)*|spoon(?:ful|s)*|bsps?|wine-?glass(?:ful|es|s)*|pints?|quarts?|cups?|gills?|jiggers?|pony|ponies|splash(?:es)?|pinch(?:es)?|scoops?)`
	// measureOf is an amount with its measure.
	measureOf = many + `[ \t]?` + unitOf
)

var (
	// spoonOf is a spoon that old handbooks write with a hyphen.
	spoonOf = pattern.Of(`(?i)\b(tea|table|bar)-(spoon)`)
	// heaped is how high a spoon is filled, before it or behind what it holds.
	heaped = pattern.Of(`(?i)(?:\b(heap(?:ed|ing)|rounded|level(?:led)?|brimming|piled)[ \t]+)((?:tea|table|bar)?[ -]?spoon(?:ful|s)*\b|tsps?\b|tbsps?\b|bsps?\b)`)
	piled  = pattern.Of(`(?i)((?:spoon(?:ful|s)*|tsps?|tbsps?|bsps?)[ \t]+[^\n,;()\d]+?),?([ \t]*\(?[ \t]*(?:heap(?:ed|ing)|rounded|level(?:led)?)[ \t]*\)?)(` + clauseEnds + `)`)
	// spoonsCounted tells how many spoons there are.
	spoonsCounted = pattern.Of(`(?i)(?:` + many + `)[ \t]*$`)
	// side is how what is heavier or lighter than the drink goes in.
	side = pattern.Of(`(?i)(\d[\d./]*[ \t]?(?:oz|ml|cl)?|[½¼¾⅓⅔]|\pL)((?:[ \t]*,)?[ \t]+(?:(?:poured|added|run|trickled|slid|drizzled|tipped)[ \t]+)?(?:(?:slow|slowly|gently|carefully|softly)[ \t]+)?(?:down[ \t]+the[ \t]+(?:in)?side(?:[ \t]+of[ \t]+(?:the|a)[ \t]+glass)?|(?:over|down|off)[ \t]+(?:the[ \t]+back[ \t]+of[ \t]+)?(?:an?|the)[ \t]+(?:bar[ ]?)?spoon))(` + clauseEnds + `)`)
	// adding joins a pour to those before it.
	adding = pattern.Of(`(?i)(?:,|;)?[ \t]*(?:\b(?:and|then|by)[ \t]+)?\b(?:adding|together[ \t]+with|along[ \t]+with|followed[ \t]+by)[ \t]+(?:the[ \t]+)?(` + measureOf + `\b)`)
	// into is a pour that another is put in: "a lump of sugar in a spoonful of water".
	into = pattern.Of(`(?i)(\pL+)(?:[ \t]+poured)?[ \t]+(?:in|into|with|w/|on|upon|from|over)[ \t]+(` + measureOf + `)[ \t]+(?:of[ \t]+)?((?:\pL[\pL'’-]*[ \t]*){1,4})`)
	// littleOf is what something is dissolved in, whose amount is none.
	littleOf = pattern.Of(`(?i)(?:[ \t]+dissolved)?[ \t]+(?:in|with)[ \t]+(an?[ \t]+(?:little|bit[ \t]+of|drop[ \t]+of|touch[ \t]+of)|some|just[ \t]+enough)[ \t]+((?:(?:hot|warm|boiling|cold)[ \t]+)?water)\b`)
	// frozen are words behind an amount that is no pour, or one of the glass: "in a cup of crushed ice".
	frozen = pattern.Of(`(?i)\b(?:ice|glass|tumbler|goblet|mug|coupe|tin|shaker|cubes?)\b`)
	// stepped is what is done to the first pour of a sentence.
	stepped = pattern.Of(`(?i)(^|[.;:,\n][ \t]*|\b(?:and|then)[ \t]+)((?:first[ \t]+)?(dissolv(?:e|ing)|infus(?:e|ing)|steep(?:ing)?|macerat(?:e|ing)|soak|tak(?:e|ing)|plac(?:e|ing)|put|pour[ \t]+in|wet[ \t]+with|having[ \t]+dissolved)[ \t]+(?:of[ \t]+)?)(?:` + measureOf + `\b|` + many + `[ \t]+(?:small[ \t]+|large[ \t]+|white[ \t]+|brown[ \t]+)?(?:sugar[ \t]+cubes?|lumps?|cubes?|eggs?|sprigs?)\b|the[ \t]+(?:juice|white|yolk)[ \t]+of\b)`)
	// does are the verbs of a step that tell more than that something is poured.
	does = pattern.Of(`(?i)dissolv|infus|steep|macerat|soak|wet`)
	// bruised is a herb that a sentence has crushed before it goes on.
	bruised = pattern.Of(`(?i)(^|[.;\n][ \t]*)(?:having|after|when[ \t]+you[ \t]+have)[ \t]+(?:lightly[ \t]+|gently[ \t]+)?(?:bruis|crush|muddl|press|mash)(?:ed|ing)[ \t]+`)
	// mixedIn is a vessel that a drink is mixed in, before what is put there or behind the verb.
	mixedIn = pattern.Of(`(?i)(^|[.;\n][ \t]*)(?:(?:in|into)[ \t]+(?:an?|the|your)[ \t]+((?:\pL+[ \t]+){0,3}?(?:glass|tumbler|shaker|tin|goblet|mug|jug|bowl|pan|pot|saucepan|cup)),?[ \t]+(?:put|place|pour|add|combine|mix|dissolve|muddle)[ \t]+|(?:put|place|pour|add|combine)[ \t]+(?:in|into)[ \t]+(?:an?|the|your)[ \t]+((?:\pL+[ \t]+){0,3}?(?:glass|tumbler|shaker|tin|goblet|mug|jug|bowl|pan|pot|saucepan|cup)),?[ \t]+)`)
	// servedIn are those of such vessels that a guest drinks from.
	servedIn = pattern.Of(`(?i)(?:^|[ \t])(?:tumbler|goblet|mug|cup|(?:wine|cocktail|bar|rocks|highball|collins|champagne|small|large|tall|julep)[ \t]+glass)$`)
	// lumpOf is the ice of a drink, counted.
	lumpOf = pattern.Of(`(?i)(?:,|;)?[ \t]+(?:and|with|over|on|upon)?[ \t]*(?:an?|one|two|three|1|2|3)[ \t]+(?:(?:single|large|small|big|good|clear)[ \t]+)?(lump|cube|piece|knob|block)s?[ \t]+of[ \t]+ice\b`)
	// toOf begins a sentence with the pour that others are added to.
	toOf = pattern.Of(`(?i)(^|[.;:\n][ \t]*)to[ \t]+(` + measureOf + `[ \t]+(?:of[ \t]+)?\pL[^,;.\n\d]*?),?[ \t]+add[ \t]+`)
	// again is an amount that is that of the pour before it.
	again = pattern.Of(`(?i)\b((?:the[ \t]+)?same(?:[ \t]+(?:again|amount|quantity|measure))?[ \t]+(?:of|again[ \t]+of)|as[ \t]+much(?:[ \t]+of)?|an[ \t]+equal[ \t]+(?:amount|quantity|measure)[ \t]+of|a[ \t]+like[ \t]+(?:amount|quantity)[ \t]+of)[ \t]+\pL`)
	// amountOf is the amount of the pour that a stretch of text ends in, before its name, behind it or in a
	// bracket.
	amountOf = pattern.Of(`(?i)(?:^|[^\pL\d./½¼¾⅓⅔-])(` + measureOf + `|[\d½¼¾⅓⅔][\d./½¼¾⅓⅔]*)(?:[ \t]*\)|[ \t]+(?:of[ \t]+)?\pL[\pL'’ \t-]*)?[ \t]*(?:[,;\n.][ \t]*(?:and[ \t]+)?|[ \t]and[ \t]+)$`)
	// turnedRound is a pour of an old handbook whose amount stands behind its name: "of sherry two glasses".
	turnedRound = pattern.Of(`(?i)(^|[.;:,\n][ \t]*|\b(?:and|take)[ \t]+)of[ \t]+(\pL[\pL' \t-]*?),?[ \t]+(?:(` + many + `)[ \t]+((?:wine-?)?glass(?:ful)?(?:es)?|` + unitOf + `)|((?:the[ \t]+)?same(?:[ \t]+(?:quantity|amount|measure))?|as[ \t]+much|an[ \t]+equal[ \t]+(?:quantity|amount)))\b`)
	// glassOf is a glass of something whose size stands in a bracket.
	glassOf = pattern.Of(`(?i)(?:\b(?:an?|one|1)[ \t]+)(?:small[ \t]+)?glass[ \t]+of[ \t]+(\pL[\pL' \t-]*?)[ \t]*\([ \t]*([\d.½¼¾⅓⅔]+[ \t]?(?:ml|oz|cl))[ \t]*\)`)
	// peelOf is the peel of counted fruit, which goes into a bowl.
	peelOf = pattern.Of(`(?i)\b(?:the[ \t]+)?(?:peels?|zests?|rinds?|skins?)[ \t]+of[ \t]+(` + many + `)[ \t]+(lemon|orange|lime|grapefruit)s?\b`)
)

// sentences writes what sentences pour as a list has it.
func (p *Plain) sentences() {
	p.Text = spoonOf.ReplaceAllString(p.Text, "$1$2")
	p.spoons()
	p.backward(side, func(at []int) { p.aside(at[4], at[5]) })
	p.backward(peelOf, func(at []int) {
		p.tell(at[0], at[1], "is read as one piece of peel of each fruit")
		p.replace(at[0], at[1], p.Text[at[2]:at[3]]+" "+p.Text[at[4]:at[5]]+" peels")
	})
	p.Text = glassOf.ReplaceAllString(p.Text, "$2 $1")
	p.handbook()
	p.Text = adding.ReplaceAllString(p.Text, ", $1")
	p.Text = toOf.ReplaceAllString(p.Text, "$1$2, ")
	p.vessel()
	p.Text = bruised.ReplaceAllString(p.Text, "${1}muddle ")
	p.backward(stepped, func(at []int) {
		if does.MatchString(p.Text[at[6]:at[7]]) {
			p.keep(at[4])
		}
		p.replace(at[4], at[5], "")
	})
	p.backward(littleOf, func(at []int) {
		p.tell(at[2], at[5], "is read as a splash of water")
		p.replace(at[0], at[1], ", splash of "+p.Text[at[4]:at[5]])
	})
	p.backward(into, func(at []int) {
		before, name := p.Text[at[2]:at[3]], p.Text[at[6]:at[7]]
		if !handled.MatchString(before) && !frozen.MatchString(name) {
			p.replace(at[3], at[4], ", ")
		}
	})
	p.backward(lumpOf, func(at []int) {
		if of := strings.ToLower(p.Text[at[2]:at[3]]); of == "block" || of == "knob" {
			p.replace(at[0], at[1], ", on a big rock")
			return
		}
		p.replace(at[0], at[1], ", on ice")
	})
}

// spoons sets aside how high a spoon is filled.
func (p *Plain) spoons() {
	p.backward(piled, func(at []int) { p.aside(at[4], at[5]) })
	p.backward(heaped, func(at []int) {
		counted := spoonsCounted.MatchString(p.Text[:at[0]])
		p.aside(at[2], at[4])
		if !counted {
			p.replace(at[2], at[2], "1 ")
		}
	})
}

// handbook writes the amounts of old handbooks before their names, and those that are told by the one before
// them in figures. The glass of a handbook is its wineglass.
func (p *Plain) handbook() {
	p.backward(turnedRound, func(at []int) {
		if at[6] < 0 {
			p.replace(at[3], at[1], "the same of "+p.Text[at[4]:at[5]])
			return
		}
		unit := p.Text[at[8]:at[9]]
		if strings.HasPrefix(strings.ToLower(unit), "glass") {
			unit = "wineglass"
		}
		p.replace(at[3], at[1], p.Text[at[6]:at[7]]+" "+unit+" of "+p.Text[at[4]:at[5]])
	})
	for from := 0; ; {
		at := again.FindStringSubmatchIndex(p.Text[from:])
		if at == nil {
			return
		}
		start, end := from+at[2], from+at[3]
		before := amountOf.FindStringSubmatch(p.Text[:start])
		from = end
		if before == nil {
			continue
		}
		amount, said := before[1], p.Text[start:end]
		p.Told = append(p.Told, "“"+token.OneLine(said)+"” is read as "+token.OneLine(amount)+", the amount before it")
		p.replace(start, end, amount+" of")
		from = start + len(amount)
	}
}

// vessel sets aside what a drink is mixed in, and puts the glass that it is served in behind the pours.
func (p *Plain) vessel() {
	p.backward(mixedIn, func(at []int) {
		from, to := at[4], at[5]
		if from < 0 {
			from, to = at[6], at[7]
		}
		said := p.Text[from:to]
		if servedIn.MatchString(said) {
			p.Text = strings.TrimRight(p.Text, " \t\n.") + "\nin a " + said
		} else {
			p.Aside = append(p.Aside, strings.TrimSpace(p.Text[at[3]:at[1]]))
		}
		p.replace(at[3], at[1], "")
	})
}

// keep keeps the clause that begins at a byte as a step, to the letter.
func (p *Plain) keep(from int) {
	clause := p.Text[from:]
	if end := strings.IndexAny(clause, ",;\n"); end >= 0 {
		clause = clause[:end]
	}
	if end := strings.Index(clause, ". "); end >= 0 {
		clause = clause[:end]
	}
	p.Steps = append([]string{token.OneLine(strings.Trim(clause, " \t."))}, p.Steps...)
}
