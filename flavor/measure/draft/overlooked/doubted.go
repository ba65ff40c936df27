package overlooked

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// queried is a mark of doubt that stands alone, in place of a word or an amount, "15 ml ??? syrup", or
// behind a pour that may be another: "25 gin??".
var queried = pattern.Of(`(?i)(?:[\d½¼¾⅓⅔]|\b(?:ml|cl|oz|dash|dashes|bsp|tsp))[ \t]*\?{2,}|(?:^|[ \t])\?{2,}[ \t]+[\pL\d]|[\d½¼¾⅓⅔][ \t]*(?:(?:ml|cl|oz)[ \t]+)?[\pL]+(?:[ \t]+[\pL]+)?[ \t]*\?{2,}`)

// asksWhether asks whether an amount should change: "drop the lemon to 20?".
var asksWhether = pattern.Of(`(?i)\b(?:drop|cut|bring|bump|raise|lower|reduce|up|take|change|knock|increase)[ \t]+(?:the[ \t]+)?\pL[\pL' \t]*?[ \t]+(?:(?:down|up|back)[ \t]+)?to[ \t]+[\d.½¼¾⅓⅔][\d./½¼¾⅓⅔]*[ \t]*(?:ml|cl|oz)?[^.;!?\n\d]{0,20}\?`)

// AsksWhether reports whether a text asks whether an amount should change, so that it changes none.
func AsksWhether(text string) bool {
	return strings.Contains(text, "?") && asksWhether.MatchString(text)
}

// undecided says that nobody knows which is meant, or that what is poured is known to some alone: "vermouth
// (sweet? dry?)", "which is right??", "syrup (the new one)", "and the foamy stuff".
var undecided = pattern.Of(`(?i)\([ \t]*\pL+(?:[ \t]+\pL+)?[ \t]*\?[^()\n]*\)|\bwhich(?:[ \t]+(?:one|amount|spec))?[ \t]+(?:is|was|are)[ \t]+(?:right|correct|it|the[ \t]+\pL+[ \t]+one)\b|\b(?:don'?t|do[ \t]+not|not|can'?t)[ \t]+(?:know|sure|tell|read|remember)[ \t]+(?:of[ \t]+)?which\b|\([ \t]*the[ \t]+(?:new|old|other|usual|same|secret)[ \t]+one[ \t]*\)|\bat[ \t]+(?:twice|half|double|three[ \t]+times)[ \t]+that\b|\bin[ \t]+(?:one|some|any)[ \t]+of[ \t]+(?:these|them|those)\b|\b(?:and|plus|with|,)[ \t]+the[ \t]+(?:\pL+[ \t]+)?stuff\b`)

// forgotten says that whoever writes is not sure of what is poured or done: "or was it shake? can't remember",
// "not sure sweet or dry", "(or was it half?)", "could be half".
var forgotten = pattern.Of(`(?i)\b(?:can'?t|cannot|can[ \t]+not|don'?t|do[ \t]+not)[ \t]+(?:quite[ \t]+)?(?:remember|recall|know)\b|\bnot[ \t]+(?:quite[ \t]+|too[ \t]+|entirely[ \t]+)?sure\b|\bunsure\b|\bor[ \t]+(?:was|is|were)[ \t]+(?:it|that)\b|\b(?:could|might|may)[ \t]+(?:also[ \t]+)?(?:be|have[ \t]+been)[ \t]+(?:half|double|more|less|\d|[½¼¾⅓⅔])`)

// someThing is a thing that only whoever writes knows: "some of the purple stuff", "a bit of that red thing",
// "+ something green".
var someThing = pattern.Of(`(?i)\b(?:some|bit|splash|touch|little|glug|dash|drop|squirt|spoon|shot)[ \t]+(?:of[ \t]+)?(?:the|that|this)[ \t]+(?:\pL+[ \t]+){1,2}(?:stuff|thing|one|bottle)\b|(?:[+&]|\band|\bplus)[ \t]*something[ \t]+\pL`)

// doubted is the fault of a line that holds such a mark.
func doubted(line string) *flavor.DataFault {
	m := queried.FindString(line)
	if m == "" && strings.Contains(line, "?") {
		m = asksWhether.FindString(line)
	}
	for _, p := range [...]*pattern.Pattern{undecided, forgotten, someThing} {
		if m == "" {
			m = p.FindString(line)
		}
	}
	if m == "" {
		return nil
	}
	return measure.Invalid("text", strings.TrimSpace(line), "%q leaves something open; write what is poured", strings.TrimSpace(m))
}

// eightySix is the number by which bars say that something has run out, before a name.
var eightySix = pattern.Of(`\b86[ \t]*:?[ \t]+(\pL[\pL'’ -]*)`)

// ranOut is the fault of a line that may say of an ingredient that it has run out, where that is poured:
// nobody pours 86 ml by the eye.
func ranOut(line string, pours []flavor.Pour) *flavor.DataFault {
	if !strings.Contains(line, "86") {
		return nil
	}
	m := eightySix.FindString(line)
	if m == "" {
		return nil
	}
	for i := range pours {
		if p := &pours[i]; p.Amount == 86 && slices.Contains(p.Match.Inferred, flavor.InferredUnit) {
			return measure.Invalid("amount", m, "%q may say that %s has run out; write \"86 ml\" if it is poured, or \"no\" before the name if it is not", strings.TrimSpace(m), p.Match.Asked)
		}
	}
	return nil
}

// belowZero is a minus that stands right before the number of a pour, minusWithin one that does so in a line
// that runs on, and begun any number that begins a pour.
var (
	minusWithin = pattern.Of(`\pL[ \t]+([-−–](?:\d[\d./]*|[½¼¾⅓⅔]))(?:[ \t]*(?:ml|cl|oz))?[ \t]+\pL`)
	belowZero   = pattern.Of(`(?m)(?:^|[,;/][ \t]*)([-−–](?:\d[\d./]*|[½¼¾⅓⅔]))(?:[ \t]*(?:ml|cl|oz))?[ \t]+\pL`)
	begun       = pattern.Of(`(?m)(?:^|[,;/][ \t]*)(?:\d|[½¼¾⅓⅔]|\.\d)|\pL[ \t]+(?:\d[\d./]*|[½¼¾⅓⅔])(?:[ \t]*(?:ml|cl|oz))?[ \t]+\pL`)
)

// Negative is the fault of one amount with a minus before it, where others have none: where all have one it
// is a bullet.
func Negative(text string) *flavor.DataFault {
	if !strings.ContainsAny(text, "-−–") {
		return nil
	}
	all, others := belowZero.FindAllStringSubmatch(text, 2), 1
	if len(all) == 0 { // all but the first of a line that dashes part have one too
		all, others = minusWithin.FindAllStringSubmatch(text, 2), 2
	}
	if len(all) != 1 || len(begun.FindAllString(text, others)) < others {
		return nil
	}
	return measure.Invalid("amount", all[0][1], "%q may be less than nothing, or have a dash before it; write the amount without one", all[0][1])
}
