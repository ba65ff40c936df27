package reading

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/measure/draft/token"
)

// withoutBrackets looks a name up without what stands in brackets, which is then
// said to be passed over.
func (b *book) withoutBrackets(name string, pl place) (found, bool) {
	open := strings.IndexByte(name, '(')
	end := strings.LastIndexByte(name, ')')
	if open < 0 || end < open {
		return found{}, false
	}
	rest := token.OneLine(name[:open] + " " + name[end+1:])
	if rest == "" {
		return found{}, false
	}
	if roles[strings.ToLower(rest)] { // "1 sour (lime)"
		f := b.find(strings.TrimSpace(name[open+1:end]), pl)
		f.inferred = f.firm()
		return f, f.firm()
	}
	if f, ok := b.turned(rest, strings.TrimSpace(name[open+1:end]), pl); ok {
		return f, true
	}
	if inside := name[open+1 : end]; b.mentions(inside) || changesBottle(inside) {
		if f := b.find(rest, pl); f.firm() {
			return found{fault: measure.Invalid("ingredient", name, "%q says more than %s; write what it adds on a line of its own, or name the bottle in your stock", name, f.profile.Name)}, true
		}
		return found{}, false
	}
	if inner := strings.TrimSpace(name[open+1 : end]); strength.MatchString(inner) {
		return b.find(inner+" "+rest, pl), true
	}
	f := b.find(rest, pl)
	if f.profile == nil || f.how == flavor.MatchFuzzy {
		return found{}, false
	}
	if kinds[flavor.NormaliseName(rest)] && !saysLittle(name[open+1:end]) {
		return found{fault: measure.Invalid("ingredient", name, "%q says more than %s; write which bottle is meant, such as \"aged rum\"", name, rest)}, true
	}
	f.dropped = name[open : end+1]
	return f, true
}

// roles are what a pour is in its drink, before the bracket that names it.
var roles = token.Words(`sour sweet strong weak spirit base citrus modifier lengthener`)

// strength says how a syrup is made.
var strength = regexp.MustCompile(`^\d\s*:\s*\d$`)

// dashed is a dash between words.
var dashed = regexp.MustCompile(` [-–—] `)

// findParted looks a name with a comma up: as a name that has one of its own, or
// without what stands behind it, which is then said to be passed over. Where that
// holds the name of an ingredient it is a pour without its amount.
func (b *book) findParted(name string, pl place) found {
	pinned, _ := pin(name)
	for _, n := range []string{name, pinned} {
		if p, how, ok := b.named(n); ok && n != "" && ownComma(p, n) {
			return found{profile: p, how: how, as: n}
		}
	}
	head, remark, _ := strings.Cut(name, ",")
	head, remark = strings.TrimSpace(head), strings.Trim(remark, " ,;.")
	if head == "" || remark == "" {
		return b.find(strings.TrimSpace(strings.ReplaceAll(name, ",", " ")), pl)
	}
	if f, ok := b.turned(head, remark, pl); ok {
		return f
	}
	if b.mentions(remark) {
		return found{fault: measure.Invalid("amount", remark, "%q has no amount; write one before it, such as \"2 oz\", or \"garnish:\" if it is laid on the drink", remark)}
	}
	f := b.find(head, pl)
	if f.profile != nil {
		if !saysLittle(remark) && !(shade[strings.ToLower(remark)] && (f.profile.Class == flavor.ClassSyrup || f.profile.Class == flavor.ClassSugar)) {
			return found{fault: measure.Invalid("ingredient", remark, "%q is not known here; write an amount before it if it is poured, \"garnish:\" if it is laid on the drink, or a # to have it skipped", remark)}
		}
		f.dropped = remark
	}
	return f
}

// turned looks a name up with the word that is written behind it in front: "rum, dark",
// "vermouth (sweet)".
func (b *book) turned(head, word string, pl place) (found, bool) {
	if m := theOne.FindStringSubmatch(word); m != nil {
		word = m[1]
	}
	if len(strings.Fields(word)) > mostTurned || adjectives[strings.ToLower(word)] {
		return found{}, false
	}
	for _, style := range styleWords {
		word = strings.TrimSuffix(word, style)
	}
	both := []string{word + " " + head, head + " " + word}
	for _, n := range both[:2] {
		if full, changed := lengthen(flavor.NormaliseName(n)); changed {
			both = append(both, full)
		}
	}
	for _, n := range both {
		if p, _, ok := b.named(n); ok && pl.allows(p) {
			return found{profile: p, how: flavor.MatchAlias, as: n, inferred: true}, true
		}
		if means := cmp.Or(tongues[flavor.NormaliseName(n)], turns[flavor.NormaliseName(n)]); means != "" {
			if p, _, ok := b.named(means); ok {
				return found{profile: p, how: flavor.MatchAlias, as: means, inferred: true}, true
			}
		}
	}
	return found{}, false
}

// theOne points at one of several: "the white one".
var theOne = regexp.MustCompile(`(?i)^(?:the )?(\w+(?: \w+)?) one$`)

// pointed looks up a name with the words behind it that point at one of several, "crème
// de cacao the white one".
func (b *book) pointed(name string, pl place) (found, bool) {
	at := strings.Index(strings.ToLower(name), " the ")
	if at < 0 || !theOne.MatchString(name[at+1:]) {
		return found{}, false
	}
	return b.turned(name[:at], name[at+1:], pl)
}

// styleWords end a word that says what something is like.
var styleWords = []string{" style", "-style", " type", "-type"}

const mostTurned = 2 // words behind a name that may be read in front of it

// shade are words for the colour of a syrup or a sugar, which change little of it.
var shade = token.Words(`dark light amber golden clear`)

// littleWords are words that a bartender adds to a pour and that change neither it nor
// the drink.
var littleWords = token.Words(`if possible available you like have preferably ideally or so a the of at to for and with in on please well very bit little more less still
is it this that as needed usual always must be not too can will do does temperature room fridge freezer shelf rail speed premium bottle brand batch batched prepped today
yesterday tonight vs vsop house extra new old size sized per person guest one two each ounce shot real proper same type style kind any other our their my frozen dry-ish optional
proof abv vol alc yr yrs year years old yo
approx approximately about exactly minimum maximum max min strained unstrained clarified filtered cloudy clear pulp skin on off no without`)

// saysLittle reports whether every word of a remark is known to change nothing.
func saysLittle(remark string) bool {
	if first, _, _ := strings.Cut(strings.ToLower(remark), " "); strings.HasSuffix(remark, "style") || first == "no" || first == "not" { // "a remark of whose style it is"
		return true
	}
	toks := token.Lex(nil, remark, 0, len(remark))
	return !slices.ContainsFunc(toks, func(t token.Token) bool {
		return t.Kind == token.Word && !littleWords[t.Text] && !adjectives[t.Text] && !serving.Fillers[t.Text] && !serving.StepVerbs[t.Text]
	})
}

// ownComma reports whether a written name with a comma is a name of p that has it
// too.
func ownComma(p *flavor.Profile, written string) bool {
	key := flavor.NormaliseName(written)
	return slices.ContainsFunc(append([]string{p.Name}, p.Aliases...), func(n string) bool {
		return strings.Contains(n, ",") && flavor.NormaliseName(n) == key
	})
}

// alterations are words that say what was done to a bottle, and allergens by the words
// that no ingredient has for a name.
var alterations = token.Words(`washed wash infused infusion fat-washed milk-washed macerated milk dairy nut nuts peanut peanuts almond almonds oat oats soy soya wheat gluten sesame egg eggs
50/50 half mix mixed blend blended split`)

// changesBottle reports whether words say that something was added to a bottle.
func changesBottle(text string) bool {
	return slices.ContainsFunc(strings.Fields(strings.ToLower(text)), func(w string) bool { return alterations[strings.Trim(w, ",;.+")] })
}

// qualities are words of shorthand that say as often how something is.
var qualities = token.Words(`sweet light dark white green yellow sparkling brine pink blanc aromatic london malt triple`)

// endsInName reports whether words end in the name of an ingredient.
func (b *book) endsInName(text string) bool {
	words := strings.Fields(text)
	for n := 1; n <= longestName && n < len(words); n++ {
		if f := b.find(strings.Join(words[len(words)-n:], " "), place{unit: flavor.Ounce}); f.firm() {
			return true
		}
	}
	return false
}

// joined is a word that joins two names.
var joined = regexp.MustCompile(`(?i) (&|and|\+) `)

// joinsTwo is the fault of two things named in one, as "aged & Jamaican rum" is, where
// no name of p is joined so; nil else.
func joinsTwo(p *flavor.Profile, written string) *flavor.Fault {
	if !joined.MatchString(written) {
		return nil
	}
	key := flavor.NormaliseName(written)
	if slices.ContainsFunc(append([]string{p.Name, p.ID}, p.Aliases...), func(n string) bool {
		return flavor.NormaliseName(n) == key && (joined.MatchString(n) || strings.Contains(n, "-and-"))
	}) {
		return nil
	}
	return measure.Invalid("ingredient", written, "%q may be two pours; write a line for each, or its name, such as %q", written, p.Name)
}

// mentions reports whether words hold the name of an ingredient.
func (b *book) mentions(text string) bool {
	words := strings.Fields(text)
	for i := range words {
		for n := 1; n <= longestName && i+n <= len(words); n++ {
			name := strings.Trim(strings.Join(words[i:i+n], " "), ",;.()+&")
			if _, _, ok := b.named(name); ok {
				return true
			}
			if key := flavor.NormaliseName(name); tongues[key] != "" || len(key) >= shortestHeadless && shorthand[key] != "" && !qualities[key] {
				return true
			}
		}
	}
	return false
}

// strengths are what bottles say of their strength or age.
var strengths = regexp.MustCompile(`(?i)\b\d+([.,]\d+)?\s*(% ?(abv|vol)?|proof\b|(yrs?|years?|yo)\b[- ]?(old\b)?)`)

// years is what of strengths is an age.
var years = regexp.MustCompile(`(?i)y`)

// free is a strength of nothing.
var free = regexp.MustCompile(`^0([.,]0+)?\s*%`)

// withoutStrength looks a name up without the strength or the age that it states,
// which is then said to be passed over.
func (b *book) withoutStrength(name string, pl place) (found, bool) {
	at := strengths.FindStringIndex(name)
	if at == nil {
		return found{}, false
	}
	rest := strings.Trim(token.OneLine(name[:at[0]]+" "+name[at[1]:]), " ,;")
	if free.MatchString(name[at[0]:at[1]]) { // "0 % gin" is no gin
		if p, how, ok := b.named("alcohol-free " + rest); ok {
			return found{profile: p, how: how, as: "alcohol-free " + rest, inferred: true}, true
		}
		return found{fault: measure.Invalid("ingredient", name, "%q has no alcohol; write which alcohol-free bottle it is", name)}, true
	}
	f := b.find(rest, pl)
	if aged, how, ok := b.named("aged " + rest); ok && years.MatchString(name[at[0]:at[1]]) {
		f = found{profile: aged, how: how, as: "aged " + rest}
	}
	if rest == "" || !f.firm() {
		return found{}, false
	}
	f.dropped, f.inferred = strings.TrimSpace(name[at[0]:at[1]]), true
	return f, true
}

// styles end a word that says what a bottle is like.
var styles = []string{"-style", "-type", "-like", "-esque", "-ish"}

// withoutStyle looks a name up without a first word that says whose style it is.
func (b *book) withoutStyle(name string, pl place) (found, bool) {
	first, rest, ok := strings.Cut(name, " ")
	lower := strings.ToLower(first)
	if !ok || !slices.ContainsFunc(styles, func(s string) bool { return strings.HasSuffix(lower, s) }) {
		return found{}, false
	}
	f := b.find(rest, pl)
	if !f.firm() || !pl.allows(f.profile) {
		return found{}, false
	}
	f.dropped, f.inferred = first, true
	return f, true
}

// either is the fault of a name that leaves a choice, "lime or lemon"; nil if it
// leaves none.
func (b *book) either(name string, pl place) *flavor.Fault {
	for _, sep := range []string{" or ", "/"} {
		one, other, ok := strings.Cut(name, sep)
		if !ok || strings.TrimSpace(one) == "" || strings.TrimSpace(other) == "" {
			continue
		}
		x, y := b.find(strings.TrimSpace(one), pl), b.find(strings.TrimSpace(other), pl)
		if x.firm() && y.firm() {
			f := measure.Invalid("ingredient", name, "%q leaves a choice; write %s or %s, or a line for each", name, x.profile.Name, y.profile.Name)
			f.Suggest = []string{x.profile.Name, y.profile.Name}
			return f
		}
	}
	return nil
}
