package recipe

import (
	"slices"
	"strings"
	"unicode/utf8"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// tell takes in a line of prose: what it says of making and serving, and what of it is left.
func (r *reader) tell(l *line) {
	w := r.written(l)
	switch {
	case heading.MatchString(w):
		r.blank(l.Start, l.End)
		return
	case note.MatchString(w) && r.marks, batch.MatchString(w), !l.above && (variant.MatchString(w) || r.makes(w)), facts.MatchString(w) && !counted.MatchString(w) && len(r.resolver.Mentioned(w)) == 0:
		r.aside = append(r.aside, token.OneLine(w))
		r.blank(l.Start, l.End)
		return
	case r.mayPour(l):
		return
	case l.above && headnote(w):
		r.aside = append(r.aside, token.OneLine(w))
		r.blank(l.Start, l.End)
		return
	}
	from := l.Start
	switch is, rest := parting.Header(r.text, token.Lex(nil, r.text, l.Start, l.End)); {
	case is == label.Serving && len(rest) > 0:
		from = rest[0].Start
	case is != label.None:
		return // it is read as what it says it is
	}
	left := false
	for _, s := range sentences(r.text[:l.End], from) {
		left = r.sentence(s) || left
	}
	if !left {
		r.blank(l.Start, l.End)
	} else if n := step.FindStringIndex(w); n != nil { // no number of a step before what is left of it
		r.blank(l.Start, l.Start+n[1]-1)
	}
}

// mostPour is the most words of a pour that cannot be read.
const mostPour = 4

// mayPour reports whether a line may be a pour that cannot be read: it stands in one block with the
// list or begins with a number, and is no sentence, no step and no heading; or it is short and names
// what the list does not.
func (r *reader) mayPour(l *line) bool {
	w := r.written(l)
	toks := parting.Unlist(token.Lex(nil, w, 0, len(w)))
	if is, _ := parting.Header(w, toks); is != label.None || len(toks) == 0 || step.MatchString(w) || serving.StepVerbs[toks[0].Text] {
		return false
	}
	words := len(strings.Fields(w))
	if words <= mostPour && slices.ContainsFunc(r.resolver.Mentioned(w), func(p *flavor.Profile) bool { return !r.lists(p) }) {
		return true
	}
	return (l.close || toks[0].Kind == token.Numeral) && !(sentence(w) && words >= mostPour)
}

// headnote reports whether a line above the list tells of the drink and not how it is made: it begins
// with no step, measures nothing, and does not say for how many it is, what is laid on it, what it is
// finished with or what is changed.
func headnote(w string) bool {
	toks := parting.Unlist(token.Lex(nil, w, 0, len(w)))
	if len(toks) == 0 {
		return true
	}
	is, _ := parting.Header(w, toks)
	return is == label.None && toks[0].Kind == token.Word && !serving.StepVerbs[toks[0].Text] && !laid.MatchString(w) && !counted.MatchString(w) && !measure.MatchString(w) &&
		!finished.MatchString(w) && !changes.MatchString(w) && serving.Read(toks).Method == ""
}

// note is a note below, and batch tells how many drinks are made at once.
var (
	note  = pattern.Of(`^[*†‡]+[ \t]*\pL`)
	batch = pattern.Of(`(?i)^\W*(?:to )?batch(?:ed|ing)?(?: (?:it|this|up|of \d+|for \d+))?[ \t]*[:=–—-]`)
)

// facts are what a page counts of itself: ratings, minutes, calories.
var facts = pattern.Of(`(?i)[★☆⭐]|\b(?:ratings?|reviews?|calories|kcal|difficulty|(?:prep|total|cook|active|hands-on) time)\b|^\W*(?:prep|total|time)\b[^\pL]*\d+ ?min`)

// making begins a line that tells how something is made that the list names.
var making = pattern.Of(`(?i)^\W*(\pL[\pL'’ -]{2,40}):[ \t]+(?:combine|mix|simmer|heat|warm|dissolve|steep|blend|blitz|infuse|stir|boil|bring|add|peel|blanch|whisk|crush|muddle|pour|soak|cook|toast|grind|shake)\b`)

// makes reports whether a line tells how something is made that the list names.
func (r *reader) makes(w string) bool {
	m := making.FindStringSubmatch(w)
	if m == nil {
		return false
	}
	of := r.resolver.Mentioned(m[1])
	return len(of) > 0 && !slices.ContainsFunc(of, func(p *flavor.Profile) bool { return !r.lists(p) })
}

// variant tells of another drink: "make it without alcohol: ...".
var variant = pattern.Of(`(?i)^[\W\d]*(?:make it|variations?|to make (?:it )?(?:ahead|without)|for an? [\pL -]{1,30} version|(?:alcohol[- ]free|non[- ]alcoholic) version)\b[^:]{0,40}:`)

// ends are where a sentence ends.
var ends = pattern.Of(`[.!?;…]+["”’)]*(?:[ \t]+|$)`)

// sentences returns the sentences of text[from:].
func sentences(text string, from int) []entry.Span {
	var out []entry.Span
	start := from
	for _, at := range ends.FindAllStringIndex(text[from:], -1) {
		out = append(out, entry.Span{Start: start, End: from + at[1]})
		start = from + at[1]
	}
	if start < len(text) {
		out = append(out, entry.Span{Start: start, End: len(text)})
	}
	return out
}

// sentence takes in a sentence, and reports whether it is left: it may say more than the list.
func (r *reader) sentence(at entry.Span) bool {
	w := r.text[at.Start:at.End]
	toks := parting.Unlist(token.Lex(nil, r.text, at.Start, at.End))
	if len(toks) == 0 {
		r.blank(at.Start, at.End)
		return false
	}
	if measure.MatchString(w) && r.topsUp(at) {
		return true
	}
	if r.says(w, toks) {
		return true
	}
	clean := token.OneLine(strings.Trim(w, " \t.;,–—-•*"))
	if r.serves(toks) || serving.StepVerbs[toks[0].Text] {
		r.steps = append(r.steps, clean)
	} else if utf8.RuneCountInString(clean) > 1 {
		r.passed = append(r.passed, clean)
	}
	r.blank(at.Start, at.End)
	return false
}

// says reports whether a sentence may say of the pours what the list does not: it names something
// else, measures something, is about the garnish or the rim, says for how many the list is, or
// changes it.
func (r *reader) says(w string, toks []token.Token) bool {
	if laid.MatchString(w) || counted.MatchString(w) || measure.MatchString(w) {
		return true
	}
	if changes.MatchString(moreIce.ReplaceAllString(w, "")) && !perhaps.MatchString(w) {
		return true
	}
	return slices.ContainsFunc(r.resolver.Mentioned(w), func(p *flavor.Profile) bool { return !r.lists(p) })
}

var (
	// laid is what is laid on a drink or around its glass.
	laid = pattern.Of(`(?i)\b(?:garnish\w*:?[ \t]+\w|(?:rim|rimmed|express|zest|twist|peel|wedge|wheel|grate|grated|sprig|dust)\b)`)
	// counted says for how many drinks a list is.
	counted = pattern.Of(`(?i)\b(?:serves|makes|yields?|servings?)\b\D{0,3}(?:[2-9]|1\d|two|three|four|five|six|eight|ten)`)
	// measure is an amount of something that is poured.
	measure = pattern.Of(`(?i)(?:\d|[½¼¾⅓⅔])[ \t]*(?:ml|cl|dl|oz|ounces?|dash(?:es)?|drops?|tsp|teaspoons?|tbsp|tablespoons?|barspoons?|bsp|cups?)\b`)
	// changes are words that change what is poured.
	changes = pattern.Of(`(?i)\b(?:omit|leave out|replace|swap|substitute|sub|instead|halve|twice|more|less|extra|another|again with)\b`)
	// moreIce is ice that is filled up, which changes nothing that is poured.
	moreIce = pattern.Of(`(?i)\b(?:more|extra|another)[ \t]+(?:(?:scoop|handful) of[ \t]+)?(?:\pL+[ \t]+)?ice\b`)
	// perhaps says that something may be done, or is done for some.
	perhaps = pattern.Of(`(?i)\b(?:if|can|could|may|might|would|try|for a|prefer|optional\w*|alternatively|swears by)\b`)
	// finished are words for what a glass holds beside what is mixed.
	finished = pattern.Of(`(?i)\b(?:top|topped|float|floated|rinse|rinsed|splash|dash|finish|finished|lengthen|lengthened|spritz of|mist)\b`)
	// topped is how much of what a glass is filled up with.
	topped = pattern.Of(`(?i)\b(?:top|fill|lengthen|finish)\w*[ \t](?:\pL+[ \t]){0,4}(\d+[ \t]*(?:ml|cl|oz|ounces?)[ \t]+(?:of[ \t]+)?(?:the[ \t]+)?\pL[\pL ]*)`)
)

// topsUp leaves of a sentence how much of what the glass is filled up with, where the list names that
// without an amount, whose line it blanks.
func (r *reader) topsUp(at entry.Span) bool {
	in := topped.FindStringSubmatchIndex(r.text[at.Start:at.End])
	if in == nil || len(measure.FindAllString(r.text[at.Start:at.End], 2)) > 1 {
		return false
	}
	pour := entry.Span{Start: at.Start + in[2], End: at.Start + in[3]}
	of := r.resolver.Mentioned(r.text[pour.Start:pour.End])
	if len(of) != 1 || !of[0].Carbonated {
		return false
	}
	i := slices.IndexFunc(r.lines, func(l line) bool {
		named := r.resolver.Mentioned(r.written(&l))
		return l.is == listed && !r.measured(&l) && len(named) == 1 && naming.Akin(named[0], of[0])
	})
	if i < 0 {
		return false
	}
	r.blank(r.lines[i].Start, r.lines[i].End)
	r.serves(parting.Unlist(token.Lex(nil, r.text, at.Start, pour.Start)))
	r.blank(at.Start, pour.Start)
	r.blank(pour.End, at.End)
	return true
}

// lists reports whether the list names an ingredient or one like it: steps name singly and
// shortly what the list names in full.
func (r *reader) lists(p *flavor.Profile) bool {
	return slices.ContainsFunc(r.names, func(q *flavor.Profile) bool { return naming.Akin(p, q) })
}
