package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// amid is a number, and no small one, with words on both sides: "low tide 15 campfire cordial".
var amid = pattern.Of(`\pL.*[ \t)](?:\d{2,}|\d*[.,]\d+|\d+/\d+|\d*[½¼¾⅓⅔])[ \t]+\pL`)

// behindBracket is such a number behind a bracket: what stands before that is the whole name.
var behindBracket = pattern.Of(`\)[ \t]*\d+[ \t]+\pL`)

// namedOnALine is the fault of a name of the drink that holds a number amid its words, where the pours
// follow on its line or the number follows a bracket: its second half may be a pour that nobody here
// knows. A colon, or a mark of exclamation, parts a name.
func namedOnALine(text, name string) *flavor.DataFault {
	if !amid.MatchString(name) || drinks.Numbered(name) {
		return nil
	}
	for n, line := range strings.Split(text, "\n") {
		before, behind, found := strings.Cut(line, name)
		behind = strings.TrimLeft(behind, " \t\"”*_")
		if !found || strings.HasPrefix(strings.TrimSpace(before), draft.NamePrefix) || behind == "" && !behindBracket.MatchString(name) || strings.HasPrefix(behind, ":") || strings.HasPrefix(behind, "!") {
			continue
		}
		f := measure.Invalid("amount", name, "%q holds a number amid its words and may be the name and a pour; put a colon behind the name, or write \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
		f.Location = measure.LineLocation(n + 1)
		return f
	}
	return nil
}

// rinses is a name that tells with what a glass is rinsed.
var rinses = pattern.Of(`(?i)[\pL]-rinsed\b|\brinsed\s+(?:with|in)\s+\pL`)

// rinsedName is the fault of a name of the drink that was taken from what tells of the glass, "zorbel-rinsed
// coupe": what it is rinsed with would be lost.
func rinsedName(text, name string) *flavor.DataFault {
	if !rinses.MatchString(name) {
		return nil
	}
	before, _, found := strings.Cut(text, name)
	if !found || strings.HasSuffix(strings.TrimSpace(before), draft.NamePrefix) {
		return nil
	}
	f := measure.Invalid("ingredient", name, "%q may pour what the glass is rinsed with, which nobody here knows; write it on a line of its own, or write \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
	f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
	return f
}

// dissolves is a name that tells what goes into the drink, and in what it is dissolved.
var dissolves = pattern.Of(`(?i)\b(?:dissolved|melted|soaked|steeped)[ \t]+(?:in|into|with)[ \t]+\pL`)

// dissolvedName is the fault of such a name: what it pours would be lost.
func dissolvedName(text, name string) *flavor.DataFault {
	if !dissolves.MatchString(name) {
		return nil
	}
	before, _, found := strings.Cut(text, name)
	if !found || strings.HasSuffix(strings.TrimSpace(before), draft.NamePrefix) {
		return nil
	}
	f := measure.Invalid("ingredient", name, "%q tells what is poured, and not how much; write each on a line of its own with its amount, or \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
	f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
	return f
}

// measures are those of which one is poured, at the start of a name: "pint of ale".
var measures = pattern.Of(`(?i)^(?:an?[ \t]+|one[ \t]+|half[ \t]+(?:an?[ \t]+)?)?(?:pint|quart|gill|bottle|can|shot|jigger|pony|dash|splash|spoon(?:ful)?|tea-?spoon(?:ful)?|table-?spoon(?:ful)?|wine-?glass(?:ful)?)[ \t]+of[ \t]+\pL`)

// measureNamed is the fault of a name of the drink that begins with such a measure: it may be a pour.
func measureNamed(text, name string) *flavor.DataFault {
	if !measures.MatchString(name) {
		return nil
	}
	before, _, found := strings.Cut(text, name)
	if !found || strings.HasSuffix(strings.TrimSpace(before), draft.NamePrefix) {
		return nil
	}
	f := measure.Invalid("amount", name, "%q may be a pour; write its amount in figures, or \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
	f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
	return f
}

// fillsUp is a name that tells with what the drink is filled up.
var fillsUp = pattern.Of(`(?i)^(?:top|fill|float|finish|charge|lengthen)(?:ed)?(?:[ \t]+(?:it|up|off|glass|the[ \t]+glass)){0,2}[ \t]+(?:with|w/?|of)[ \t]*\pL`)

// filledName is the fault of such a name, taken from before a colon: "fill with cola: 2 oz rum".
func filledName(text, name string) *flavor.DataFault {
	if !fillsUp.MatchString(name) {
		return nil
	}
	before, _, found := strings.Cut(text, name)
	if !found || strings.HasSuffix(strings.TrimSpace(before), draft.NamePrefix) {
		return nil
	}
	f := measure.Invalid("amount", name, "%q tells what fills the drink up; write it behind the pours, or \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
	f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
	return f
}

// SplitName is the fault of a name of the drink that ends in a word which, with the name of the pour behind it,
// names another ingredient: "Halyard Gold rum 2 oz" pours gold rum; or a bottle that something was put into which
// may bring an allergen: "almond-washed gin 50 ml".
func SplitName(text, name string, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	if name == "" || len(pours) == 0 {
		return nil
	}
	before, behind, found := strings.Cut(text, name)
	first := &pours[0]
	if !found || first.Match.Asked == "" || !strings.HasPrefix(strings.TrimLeft(behind, " \t"), first.Match.Asked) || strings.HasSuffix(strings.TrimSpace(before), draft.NamePrefix) {
		return nil
	}
	last := name[strings.LastIndexByte(name, ' ')+1:]
	if f := b.Brings(last+" "+first.Match.Asked, naming.Place{Unit: first.Unit, Amount: first.Amount}); f != nil {
		f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
		return f
	}
	p, _, ok := b.Named(last + " " + first.Match.Asked)
	if !ok {
		if f := firstBottle(name, behind, pours); f != nil {
			f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
			return f
		}
	}
	if !ok || p == first.Profile {
		return nil
	}
	f := measure.Invalid("ingredient", last+" "+first.Match.Asked, "%q may be %s, and “%s” the name of the drink or of a bottle; put a colon behind the name, or name the bottle in your stock", last+" "+first.Match.Asked, p.Name, name)
	f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
	return f
}

// countedInName is a number in a name, and what is counted.
var countedInName = pattern.Of(`(?:^|[ \t:])(?:\d+|\d*[½¼¾⅓⅔])[ \t]+(\pL.*)`)

// cutOff is a name that ends in a number, and unitFirst is a unit that begins what stands behind it: between
// them an amount would be cut in two.
var (
	cutOff    = pattern.Of(`[\d½¼¾⅓⅔]$`)
	unitFirst = pattern.Of(`(?i)^[ \t]*(?:oz|ml|cl|ounces?|parts?|dash(?:es)?|drops?|tsp|tbsp|bsp|barspoons?)\b`)
)

// initialled is a letter or two and a number, as shorthand writes a pour, "w 2", and colonFirst begins what is
// behind a name that ends there.
var (
	initialled = pattern.Of(`^(\pL{1,2})\.?[ \t]+(?:\d+|\d*[.,/]\d+|\d*[½¼¾⅓⅔])$`)
	colonFirst = pattern.Of(`^(?:[ \t]*[:|]|[ \t]+[-–—=][ \t]|[ \t]*(?:\n|$))`)
)

// NamePours is the fault of a name of the drink in which something is counted that is not poured: "Caipirinha.
// Cut 1 lime, muddle".
func NamePours(text, name string, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	if len(pours) == 0 || drinks.Known(name) || drinks.Numbered(name) {
		return nil
	}
	before, after, _ := strings.Cut(text, name)
	if strings.HasSuffix(strings.TrimSpace(before), draft.NamePrefix) {
		return nil
	}
	if m := initialled.FindStringSubmatch(name); m != nil && !numbers.Has(strings.ToLower(m[1])) && !colonFirst.MatchString(after) {
		f := measure.Invalid("amount", name, "%q may be a pour in short and how much of it; write its name in full, or \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
		f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
		return f
	}
	if cutOff.MatchString(name) && unitFirst.MatchString(after) {
		f := measure.Invalid("amount", name, "%q may end in an amount; put a colon behind the name of the drink, or write \"%s %s\" on a line of its own", name, draft.NamePrefix, name)
		f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
		return f
	}
	if f := toldInName(name, pours, b); f != nil {
		f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
		return f
	}
	if f := measuredInName(name, b); f != nil {
		f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
		return f
	}
	m := countedInName.FindStringSubmatch(name)
	if m == nil {
		return nil
	}
	counted := ""
	if p, n := b.MentionAt(strings.Fields(flavor.NormaliseName(m[1]))); n > 0 && !akin(p, pours) {
		counted = p.Name
	} else if n == 0 && listGoesOn(after) && !drinks.Called(name) {
		counted = strings.TrimSpace(m[1])
	}
	if counted == "" {
		return nil
	}
	f := measure.Invalid("amount", name, "%q may pour %s, which is not among the pours; write it on a line of its own, or \"%s %s\" if it is the name of the drink", name, counted, draft.NamePrefix, name)
	f.Location = measure.LineLocation(1 + strings.Count(before, "\n"))
	return f
}

// goesIn tells of something that goes into the drink: "the orgeat goes in last", "you want orgeat in it".
var goesIn = pattern.Of(`(?i)\b(?:goes|go|going|went)[ \t]+(?:in|on)\b|\b(?:in|into|to)[ \t]+it\b|\badd(?:s|ed|ing)?\b|\b(?:as well|also)\b|\btoo$|\b(?:put|puts|throw|chuck|pop)\b.*\bin\b`)

// mayGoIn tells so where something is named.
var mayGoIn = pattern.Of(`(?i)[ \t]in$`)

// swapsIn puts something in the place of something else.
var swapsIn = pattern.Of(`(?i)\b(?:swap|swapped|replace|replaced|sub|subbed)[ \t]+(?:\pL+[ \t]+)+(?:for|with|by|out)\b`)

// changesIn changes how much is poured: "half the sugar", "double the syrup for me".
var changesIn = pattern.Of(`(?i)\b(?:double|half|halve|twice)[ \t]+(?:of[ \t]+)?the\b`)

// toldInName is the fault of a name of the drink that tells what goes into it, where that is not poured, or that
// changes how much is.
func toldInName(name string, pours []flavor.Pour, b *naming.Resolver) *flavor.DataFault {
	named := b.Mentioned(name)
	swaps := swapsIn.MatchString(name) || changesIn.MatchString(name)
	if !swaps && !goesIn.MatchString(name) && !(len(named) > 0 && mayGoIn.MatchString(name)) {
		return nil
	}
	if !swaps && len(named) > 0 && !slices.ContainsFunc(named, func(p *flavor.Profile) bool { return !akin(p, pours) }) {
		return nil
	}
	return measure.Invalid("ingredient", name, "%q may tell of something that is poured, or how much of it; write it on a line of its own with its amount, or \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
}

// listGoesOn reports whether pours follow a name on its line, parted from it as they are from each other: what is
// counted at its end may be the first of them, "navy colada 2 navy / 4 pine".
func listGoesOn(behind string) bool {
	behind, _, _ = strings.Cut(behind, "\n")
	behind = strings.TrimLeft(behind, " \t")
	return behind != "" && strings.ContainsAny(behind[:1], "/,;|+") && strings.ContainsAny(behind, "0123456789½¼¾⅓⅔")
}

// spelt is an amount in words behind a name: "whisky, one jigger".
var spelt = pattern.Of(`(?i)^(\pL[^\d]*?)[ \t]*[,:–-]?[ \t]+(?:an?|one|two|three|four|five|six|half(?:[ \t]+an?)?|quarter(?:[ \t]+of)?(?:[ \t]+an?)?)[ \t]+(?:jiggers?|pon(?:y|ies)|wine-?glass(?:es|fuls?)?|measures?|shots?|gills?|tots?|nips?|ounces?|teaspoons?|tablespoons?|dash(?:es)?|drops?)\.?$`)

// measuredInName is the fault of a name of the drink that is an ingredient with its amount in words behind it.
func measuredInName(name string, b *naming.Resolver) *flavor.DataFault {
	m := spelt.FindStringSubmatch(name)
	if m == nil {
		return nil
	}
	hit := b.Find(m[1], naming.Place{Unit: flavor.Ounce, Amount: 1})
	if !hit.Firm() && (hit.Fault == nil || hit.Fault.Kind != flavor.ErrInvalid) {
		return nil
	}
	return measure.Invalid("amount", name, "%q may be a pour; write its amount in figures, or \"%s %s\" if it is the name of the drink", name, draft.NamePrefix, name)
}

// choosing are words that offer a choice, in the tongues of bars: what ends in one goes on.
var choosing = vocabulary.Words(`or ou oder eller of lub albo nebo vai tai veya ή или`)

// halfNamed is the fault of a name that ends in a choice, where its other half was taken for a pour:
// "tequila or mezcal 4 cl". One tongue's word for it is the second word of a drink that every bar pours.
func halfNamed(name string) *flavor.DataFault {
	words := strings.Fields(flavor.NormaliseName(name))
	if len(words) < 2 || !choosing.Has(words[len(words)-1]) || drinks.Called(name) || strings.HasSuffix(name, " OF") { // an old fashioned
		return nil
	}
	return measure.Invalid("name", name, "%q leaves a choice open; write which of the two is poured", name)
}

// beforeBracket is a name with a number behind it, and a bracket behind that: "white rum 50 (12 left)".
var beforeBracket = pattern.Of(`(?i)^((\pL[^()\d½¼¾⅓⅔]*?)[ \t]+(?:\d+(?:[.,/]\d+)?|\.\d+|\d*[½¼¾⅓⅔])(?:[ \t]?(?:ml|cl|oz))?)[ \t]*\(`)

// pouredBefore is the fault of a name of the drink that is that of something poured, with its amount and
// a remark in brackets behind it.
func (l *looker) pouredBefore(d *draft.Draft) *flavor.DataFault {
	m := beforeBracket.FindStringSubmatch(d.Name)
	if d.Labelled || m == nil || drinks.Known(m[1]) {
		return nil
	}
	hit := l.resolver.Find(m[2], naming.Place{Unit: flavor.Ounce, Amount: 1})
	if !hit.Firm() && (hit.Fault == nil || hit.Fault.Kind != flavor.ErrInvalid) {
		return nil
	}
	f := measure.Invalid("amount", d.Name, "%q may be a pour with a remark behind it; leave out what stands in brackets, or write \"%s %s\" if it is the name of the drink", d.Name, draft.NamePrefix, d.Name)
	f.Location = measure.LineLocation(1 + strings.Count(l.text[:d.NameAt.Start], "\n"))
	return f
}
