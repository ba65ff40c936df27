package naming

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// withoutBrackets looks a name up without what stands in brackets, which is then
// said to be passed over.
func (b *Resolver) withoutBrackets(name string, pl Place) (Found, bool) {
	open := strings.IndexByte(name, '(')
	end := strings.LastIndexByte(name, ')')
	if open < 0 || end < open {
		return Found{}, false
	}
	rest := token.OneLine(name[:open] + " " + name[end+1:])
	if rest == "" {
		return Found{}, false
	}
	if roles[strings.ToLower(rest)] { // "1 sour (lime)"
		f := b.Find(strings.TrimSpace(name[open+1:end]), pl)
		f.Inferred = f.Firm()
		return f, f.Firm()
	}
	if f, ok := b.turned(rest, strings.TrimSpace(name[open+1:end]), pl); ok {
		return f, true
	}
	if f, ok := b.refined(rest, strings.TrimSpace(name[open+1:end]), pl); ok {
		return f, true
	}
	if inside := name[open+1 : end]; (b.Mentions(inside) || jargon.ChangesBottle(inside)) && !toldDone(inside) {
		if f := b.Find(rest, pl); f.Firm() {
			if closer, ok := b.closer(f.Profile, inside, pl); ok {
				return closer, true
			}
			if describes(inside, f.Profile) || carries(f.Profile, inside) { // "amaretto (almond)", "advocaat (egg)"
				f.Inferred, f.Dropped = true, name[open:end+1]
				return f, true
			}
			return Found{Fault: measure.Invalid("ingredient", name, "%q says more than %s; write what it adds on a line of its own, or name the bottle in your stock", name, f.Profile.Name)}, true
		}
		return Found{}, false
	}
	if inner := strings.TrimSpace(name[open+1 : end]); strength.MatchString(inner) {
		return b.Find(inner+" "+rest, pl), true
	}
	f := b.Find(rest, pl)
	if f.Profile == nil || f.How == flavor.MatchFuzzy {
		return Found{}, false
	}
	if jargon.Kind(flavor.NormaliseName(rest)) && !saysLittle(name[open+1:end]) {
		return Found{Fault: measure.Invalid("ingredient", name, "%q says more than %s; write which bottle is meant, such as \"aged rum\"", name, rest)}, true
	}
	f.Dropped = name[open : end+1]
	return f, true
}

// doneVerbs begin what is told in brackets of how a pour is handled once it is in.
var doneVerbs = token.Words(`curdle curdled curdles filter filtered filters strain strained sieve sieved clarify clarified clarifies skim skimmed`)

// toldDone reports whether a bracket tells how a pour is handled: "whole milk (curdle, filter
// through coffee paper)".
func toldDone(inside string) bool {
	first, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(inside)), " ")
	return doneVerbs[strings.Trim(first, ",;.:")]
}

// refined returns what a bracket names, where one word before it names its kind: "brandy
// (cognac)".
func (b *Resolver) refined(kind, inside string, pl Place) (Found, bool) {
	p, _, ok := b.Named(inside)
	if !ok || !pl.allows(p) || strings.Contains(kind, " ") {
		return Found{}, false
	}
	whole, _, ok := b.Named(kind)
	if !ok || whole.Class != p.Class || !slices.Contains(heads, strings.ToLower(kind)) {
		return Found{}, false
	}
	return Found{Profile: p, How: flavor.MatchAlias, As: inside, Inferred: true}, true
}

// closer returns what a bracket names of the same kind as the name before it: "sweet sherry
// (PX)". Juices are told apart by their names alone.
func (b *Resolver) closer(whole *flavor.Profile, inside string, pl Place) (Found, bool) {
	if part := whole.Class.Part(); part != flavor.PartBase && part != flavor.PartModifier {
		return Found{}, false
	}
	f := b.plainly(strings.TrimSpace(inside), pl)
	if !f.Firm() || f.Profile.Class != whole.Class || !pl.allows(f.Profile) {
		return Found{}, false
	}
	f.Inferred = true
	return f, true
}

// roles are what a pour is in its drink, before the bracket that names it.
var roles = token.Words(`sour sweet strong weak spirit base citrus modifier lengthener`)

// strength says how a syrup is made.
var strength = pattern.Of(`^\d\s*:\s*\d$`)

// dashed is a dash between words.
var dashed = pattern.Of(` [-–—] `)

// findParted looks a name with a comma up: as a name that has one of its own, or
// without what stands behind it, which is then said to be passed over. Where that
// holds the name of an ingredient it is a pour without its amount.
func (b *Resolver) findParted(name string, pl Place) Found {
	pinned, _ := pin(name)
	for _, n := range []string{name, pinned} {
		if p, how, ok := b.Named(n); ok && n != "" && ownComma(p, n) {
			return Found{Profile: p, How: how, As: n}
		}
	}
	head, remark, _ := strings.Cut(name, ",")
	head, remark = strings.TrimSpace(head), strings.Trim(remark, " ,;.")
	if head == "" || remark == "" {
		return b.Find(strings.TrimSpace(strings.ReplaceAll(name, ",", " ")), pl)
	}
	if f, ok := b.turned(head, remark, pl); ok {
		return f
	}
	if _, ok := declared.WithoutNoAlcohol(name); ok {
		if f, ok := b.free(name, pl); ok {
			return f
		}
	}
	if b.Mentions(remark) && !saysLittle(remark) {
		return Found{Fault: measure.Invalid("amount", remark, "%q has no amount; write one before it, such as \"2 oz\", or \"garnish:\" if it is laid on the drink", remark)}
	}
	f := b.Find(head, pl)
	if f.Profile != nil {
		if !saysLittle(remark) && !(shade[strings.ToLower(remark)] && (f.Profile.Class == flavor.ClassSyrup || f.Profile.Class == flavor.ClassSugar)) {
			return Found{Fault: measure.Invalid("ingredient", remark, "%q is not known here; write an amount before it if it is poured, \"garnish:\" if it is laid on the drink, or a # to have it skipped", remark)}
		}
		f.Dropped = remark
		return b.moreClosely(f, remark, head, pl)
	}
	return f
}

// Turned looks a name up with the word behind it in front, "bitters" and "orange".
func (b *Resolver) Turned(head, word string, pl Place) (Found, bool) { return b.turned(head, word, pl) }

// turned looks a name up with the word that is written behind it in front: "rum, dark",
// "vermouth (sweet)".
func (b *Resolver) turned(head, word string, pl Place) (Found, bool) {
	if m := theOne.FindStringSubmatch(word); m != nil {
		word = m[1]
	}
	if len(strings.Fields(word)) > mostTurned {
		return Found{}, false
	}
	both := []string{word + " " + head, head + " " + word}
	for _, style := range styleWords {
		if bare, ok := strings.CutSuffix(word, style); ok {
			both = append(both, bare+" "+head, head+" "+bare)
		}
	}
	for _, n := range slices.Clone(both) {
		if full, changed := jargon.Lengthen(flavor.NormaliseName(n)); changed {
			both = append(both, full)
		}
	}
	for _, n := range both {
		if p, _, ok := b.Named(n); ok && pl.allows(p) && !b.twoPours(head, word, p, pl) {
			return Found{Profile: p, How: flavor.MatchAlias, As: n, Inferred: true}, true
		}
		if means := cmp.Or(tongue.Name(flavor.NormaliseName(n)), jargon.Turned(flavor.NormaliseName(n))); means != "" {
			if p, _, ok := b.Named(means); ok {
				return Found{Profile: p, How: flavor.MatchAlias, As: means, Inferred: true}, true
			}
		}
		if asks := jargon.AskVolume(flavor.NormaliseName(n)); len(asks) > 1 && strings.Contains(n, " ") { // "herbal liqueur (monastery type)"
			return Found{Fault: b.Asks(flavor.NormaliseName(n), asks, pl)}, true
		}
	}
	return Found{}, false
}

// twoPours reports whether two words that together name p name two liquids of other kinds apart:
// "coffee 120 cream" may lack the amount of its coffee. A fruit by volume is its juice, before which
// a spirit lacks its amount: "60 pineapple, rum".
func (b *Resolver) twoPours(head, word string, p *flavor.Profile, pl Place) bool {
	one, _, ok := b.Named(head)
	other, _, both := b.Named(word)
	if ok && one.Base() && pl.Volume() && jargon.Pressed(word) != "" { // "gin, lemon" beside one amount
		return true
	}
	if !ok || !both || one.Class == p.Class || other.Class.Solid() {
		return false
	}
	return !one.Class.Solid() || pl.Volume() && jargon.Pressed(head) != "" && other.Base()
}

// theOne points at one of several: "the white one".
var theOne = pattern.Of(`(?i)^(?:the )?(\w+(?: \w+)?) (?:one|stuff|kind|sort)$`)

// pointed looks up a name with the words behind it that point at one of several, "crème
// de cacao the white one".
func (b *Resolver) pointed(name string, pl Place) (Found, bool) {
	at := strings.Index(strings.ToLower(name), " the ")
	if at < 0 || !theOne.MatchString(name[at+1:]) {
		return Found{}, false
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
var littleWords = token.Words(`trust me yes really if possible available you like have preferably ideally or so a the of at to for and with in on please well very bit little more less still
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
		return t.Kind == token.Word && !littleWords[t.Text] && !tongue.Idle(flavor.NormaliseName(t.Text)) && !jargon.Idle(t.Text) && !serving.Fillers[t.Text] && !serving.StepVerbs[t.Text]
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

// joined is a word that joins two names.
var joined = pattern.Of(`(?i) (&|and|\+) `)

// joinsTwo is the fault of two things named in one, as "aged & Jamaican rum" is, where
// no name of p is joined so; nil else.
func joinsTwo(p *flavor.Profile, written string) *flavor.DataFault {
	if !joined.MatchString(written) {
		return nil
	}
	key := flavor.NormaliseName(written)
	if slices.ContainsFunc(append([]string{p.Name, p.ID}, p.Aliases...), func(n string) bool {
		return sameWords(flavor.NormaliseName(n), key) && (joined.MatchString(n) || strings.Contains(n, "-and-"))
	}) {
		return nil
	}
	return measure.Invalid("ingredient", written, "%q may be two pours; write a line for each, or its name, such as %q", written, p.Name)
}

// sameWords reports whether two keys hold the same words, in whatever order.
func sameWords(a, b string) bool {
	return len(a) == len(b) && slices.Equal(slices.Sorted(strings.FieldsSeq(a)), slices.Sorted(strings.FieldsSeq(b)))
}

// strengths are what bottles say of their strength or age.
var strengths = pattern.Of(`(?i)\b\d+([.,]\d+)?\s*(% ?(abv|vol)?|proof\b|pf\b|(yrs?|years?|yo)\b[- ]?(old\b)?)`)

// proofs is a strength in proof, shortened: "100pf".
var proofs = pattern.Of(`(?i)(\d+)\s*pf\b`)

// years is what of strengths is an age.
var years = pattern.Of(`(?i)y`)

// withoutStrength looks a name up without the strength or the age that it states,
// which is then said to be passed over.
func (b *Resolver) withoutStrength(name string, pl Place) (Found, bool) {
	at := strengths.FindStringIndex(name)
	if at == nil {
		return Found{}, false
	}
	rest := strings.Trim(token.OneLine(name[:at[0]]+" "+name[at[1]:]), " ,;")
	f := b.Find(rest, pl)
	if aged, how, ok := b.Named("aged " + rest); ok && years.MatchString(name[at[0]:at[1]]) {
		f = Found{Profile: aged, How: how, As: "aged " + rest}
	}
	if rest == "" || !f.Firm() {
		return Found{}, false
	}
	f.Dropped, f.Inferred = strings.TrimSpace(name[at[0]:at[1]]), true
	return b.moreClosely(f, proofs.ReplaceAllString(f.Dropped, "$1 proof"), rest, pl), true
}

// either is the fault of a name that leaves a choice, "lime or lemon"; nil if it
// leaves none.
func (b *Resolver) either(name string, pl Place) *flavor.DataFault {
	for _, sep := range []string{" or ", "/"} {
		one, other, ok := strings.Cut(name, sep)
		if !ok || strings.TrimSpace(one) == "" || strings.TrimSpace(other) == "" {
			continue
		}
		x, y := b.Find(strings.TrimSpace(one), pl), b.Find(strings.TrimSpace(other), pl)
		if x.Firm() && y.Firm() {
			f := measure.Invalid("ingredient", name, "%q leaves a choice; write %s or %s, or a line for each", name, x.Profile.Name, y.Profile.Name)
			f.Suggest = []string{x.Profile.Name, y.Profile.Name}
			return f
		}
	}
	return nil
}
