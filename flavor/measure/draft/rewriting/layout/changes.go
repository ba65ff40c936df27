package layout

import (
	"strings"

	"counterpour/flavor/measure/draft/words/speech"
	"counterpour/flavor/measure/pattern"
)

// What a text tells of another amount than the one that is poured, or of how the pours are counted
// out, is set aside, and how something goes in is told as other drafts tell it.

// amount is how bars write one, with its unit or without.
const amount = speech.Amount

// ends is where an entry ends: at a sign, or with its line.
const ends = `(?:[ \t]*(?:[,;)\]\n/|]|[.!](?:[ \t\n]|$)|[ \t][-–—][ \t]|$))`

// formerly is an amount that is no longer, or that is said not to be poured: "gin 45 (was 50)", "10
// dry vermouth not 15".
var formerly = pattern.Of(`(?i)(?:[,;]?[ \t]*[(\[]|[,;]?[ \t]+)(?:not|was|were|used to be|previously|formerly|instead of|up from|down from|cut from|raised from|dropped from|from)[ \t]+(?:at[ \t]+|the[ \t]+|a[ \t]+|about[ \t]+)?` + amount + `[)\]]?` + ends)

// changed is a bracket that tells how an amount came to be, and not what it came to: "(dropped the
// lime from 25)".
var changed = pattern.Of(`(?i)[(\[][^()\[\]\n]*\b(?:from|was|were|used to be|previously)\b[^()\[\]\n]*[)\]]`)

// present follows an amount that is new: "rhubarb cordial 25 now".
var present = pattern.Of(`(?i)[ \t]+(?:now|these days|from now on|as of today)` + ends)

// firstVersion is an amount of a version before the one that counts: "lemon v1 was 20, v2 is 25".
var firstVersion = pattern.Of(`(?i)\bv\d+[ \t]*(?:was|had|at|:|=)?[ \t]*` + amount + `[ \t]*[,;/>-]+[ \t]*v\d+[ \t]*(?:is|has|now|at|:|=)?[ \t]*`)

// changes sets aside what tells of other amounts than those that are poured.
func (s *Set) changes() {
	for _, at := range speech.Retracted(s.Text) {
		s.Denied = append(s.Denied, strings.TrimRight(s.Text[at.Start:at.End], " \t,.:;"))
		s.clear(at.Start, at.End)
	}
	for _, at := range firstVersion.FindAllStringIndex(s.Text, -1) {
		s.blank(at[0], at[1])
	}
	for _, r := range []*pattern.Pattern{formerly, present} {
		for _, at := range r.FindAllStringIndex(s.Text, -1) {
			s.blank(at[0], s.entryEnd(at[0], at[1]))
		}
	}
	for _, at := range changed.FindAllStringIndex(s.Text, -1) {
		if w := strings.ToLower(s.Text[at[0]:at[1]]); !strings.Contains(w, " to ") && strings.ContainsAny(w, "0123456789½¼¾⅓⅔") {
			s.blank(at[0], at[1])
		}
	}
}

// entryEnd is the end of a stretch without the sign that ends its entry.
func (s *Set) entryEnd(from, to int) int {
	w := strings.TrimRight(s.Text[from:to], " \t")
	bare := strings.TrimRight(w, ",;.!\n/|-–—")
	if strings.HasSuffix(bare, ")") && !strings.Contains(bare, "(") { // the bracket is another's
		bare = bare[:len(bare)-1]
	}
	return from + len(strings.TrimRight(bare, " \t"))
}

// box is what is ticked off before a line.
var box = pattern.Of(`(?m)^[ \t]*\[[ xX✓✔vV*-]?\][ \t]*`)

var (
	// tick is what ticks a row off, wherever it stands, and tickColumn the head of its column.
	tick       = pattern.Of(`[✓✔☑✅☐□]️?`)
	tickColumn = pattern.Of(`(?im)[\t|,;][ \t]*(?:check|checked|done|ok|tick|ticked)[ \t]*\|?[ \t]*$`)
)

// boxes sets aside the boxes and ticks of a list that is ticked off.
func (s *Set) boxes() {
	for _, at := range box.FindAllStringIndex(s.Text, -1) {
		s.clear(at[0], at[1])
	}
	ticks := tick.FindAllStringIndex(s.Text, -1)
	for _, at := range ticks {
		s.clear(at[0], at[1])
	}
	if head := tickColumn.FindStringIndex(s.Text); len(ticks) > 0 && head != nil {
		s.clear(head[0], head[1])
	}
}

// role is what a pour does in the drink, told before its amount: "sour ¾ lime, sweet ¾ syrup".
var role = pattern.Of(`(?i)(?:^|[,;:.\n/|])[ \t]*((?:sour|sweet|strong|weak|bitter|base|spirit|acid|long|spice)[ \t]*:?[ \t]+)` + amount + `[ \t]`)

// leastRoles is how many pours have their role told where it is the habit of a text.
const leastRoles = 2

// roles sets aside what pours do in the drink.
func (s *Set) roles() {
	all := role.FindAllStringSubmatchIndex(s.Text, -1)
	if len(all) < leastRoles {
		return
	}
	for _, at := range all {
		s.clear(at[2], at[3])
	}
}

// toTheLine is how much ice a blender takes, which no draft counts.
var toTheLine = pattern.Of(`(?i)\bice[ \t]+(?:up[ \t]+)?to[ \t]+(?:the[ \t]+)?(?:line|mark|fill[ \t]line|max(?:[ \t]line)?)\b`)

// cutUp is how a fruit is cut, which says nothing of the glass.
var cutUp = pattern.Of(`(?i)\b(?:cut|chopped|sliced|diced|torn|smashed|mashed|muddled)([ \t]+up)\b`)

// idle sets aside how much ice a blender takes, and the "up" of a fruit that is cut up.
func (s *Set) idle() {
	for _, at := range cutUp.FindAllStringSubmatchIndex(s.Text, -1) {
		s.clear(at[2], at[3])
	}
	for _, at := range toTheLine.FindAllStringIndex(s.Text, -1) {
		s.clear(at[0], at[1])
	}
}

// verb is how a pour with its amount behind the name goes in, which a word at its end tells again:
// "drizzle creme de mure 15ml over".
var verb = pattern.Of(`(?i)(?:^|[,.;\n/|])[ \t]*((?:then[ \t]+|and[ \t]+)?(?:float|drizzle|spoon|layer|trickle|dribble|swirl|lace)(?:[ \t]+(?:with|in|on))?(?:[ \t]+(?:the|some))?)[ \t]+\pL[\pL' \t-]*?[ \t]+` + amount + `([ \t]*(?:over|on|in|on top|over the top|over top|through|down the side|down the inside|over (?:the |a )?(?:back of )?(?:the |a )?spoon)?)` + ends)

// float is how a pour on top is told in any draft.
const float = "float"

// verbs tells how such a pour goes in as any draft does.
func (s *Set) verbs() {
	for _, at := range verb.FindAllStringSubmatchIndex(s.Text, -1) {
		said, tail := at[3]-at[2], at[5]-at[4]
		s.Text = s.Text[:at[2]] + float + strings.Repeat(" ", said-len(float)) + s.Text[at[3]:at[4]] + strings.Repeat(" ", tail) + s.Text[at[5]:]
	}
}

// restated is a bracket behind a pour that says how much it is another way: "25 ml lemon juice (about
// half a lemon)".
var restated = pattern.Of(`(?i)[ \t]*\((?:(?:about|approx\.?|approximately|roughly|around|ca\.?|circa|that is|i\.e\.|from|juice of)[ \t]+|~|≈)[^()\n]*\)`)

// about is what leads to a measured amount in such a bracket.
var about = pattern.Of(`(?i)\(((?:about|approx\.?|approximately|roughly|around|ca\.?|circa|that is|i\.e\.|~|≈)[ \t]*)[\d.½¼¾⅓⅔/]+[ \t]*(?:ml|oz|cl)\)`)

// entryStart is where the entry starts that ends at a place.
func entryStart(text string, end int) int { return strings.LastIndexAny(text[:end], ",.;\n|/") + 1 }

// preferred is which bottle is liked best, or where to read of it, behind the name of a pour: "aged rum,
// preferably dark", "honey syrup (see below)".
var preferred = pattern.Of(`(?im)(?:,[ \t]*(?:preferably|ideally|something|such as|the best)[ \t][^,.\n]*$|[ \t]*\((?:see|recipe|preferably|ideally|such as)[ \t][^()\n]*\))`)

// sized is how large what is counted or laid is: "a thick slice of lemon".
var sized = pattern.Of(`(?i)\b(?:thick|thin|fat|long|wide|broad|nice)[ \t]+(?:slice|strip|wedge|twist|wheel|piece|swath|ribbon|sprig)s?\b`)

// restatements sets aside what says an amount another way, which bottle is liked best, and how large
// a slice is.
func (s *Set) restatements() {
	for _, at := range restated.FindAllStringIndex(s.Text, -1) {
		if said := about.FindStringSubmatchIndex(s.Text[at[0]:at[1]]); said != nil && !strings.ContainsAny(s.Text[entryStart(s.Text, at[0]):at[0]], "0123456789½¼¾⅓⅔") { // the only amount of what tops it
			s.clear(at[0]+said[2], at[0]+said[3])
			continue
		}
		s.blank(at[0], at[1])
	}
	for _, at := range preferred.FindAllStringIndex(s.Text, -1) {
		s.blank(at[0], at[1])
	}
	for _, at := range sized.FindAllStringIndex(s.Text, -1) {
		s.blank(at[0], at[0]+strings.IndexAny(s.Text[at[0]:at[1]], " \t"))
	}
}
