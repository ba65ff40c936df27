package everyday

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/naming"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/parting"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

var (
	// changes say that a pour is another than it was, or is left out, or leave it open: what holds one
	// is asked.
	changes = vocabulary.Words(`no not without never nor instead sub subs swap swaps swapped replace replaces replaced switch switched half halve halved quarter third double doubled triple twice
		again each same equal equally more less fewer extra add adds added adding plus omit omits omitted or either skip skips leave leaves drop drops remove removed cut reduce reduced
		increase increased raise raised lower lowered up down heavy heavier easy lighter both all except only but until unless if part parts per split ratio needs need wants want wanted should use uses using used
		change changes changed adjust adjusted correction wrong forget forgot ditch ditched bin binned nix nixed axe axed scrap scrapped lose loses lost hold holds held kill kills killed minus sans exclude excludes excluded forgo forego delete deleted strike struck void cancel cancelled banned eliminate withhold substitute substitutes don't dont didn't isn't wasn't won't doesn't cannot can't cant another rest remaining`)
	// harmless are those of them that a clause may hold that names nothing: "only for the terrace".
	harmless = vocabulary.Words(`only but until needs need wants want wanted should use uses using used up down easy if all both again another wrong change changes changed heavy rest`)
	// order says when something goes in.
	order = vocabulary.Words(`first last then finally end start begin top bottom over in into`)
	// might begin what is only thought of, and times that are still to come.
	might = vocabulary.Words(`might could may would perhaps maybe`)
	later = vocabulary.Words(`week month year time season round weekend summer winter spring autumn shift`)
	// minds are verbs of what somebody thinks, and of how a drink is; they pour nothing.
	minds = vocabulary.Words(`prefer prefers preferred like likes liked love loves loved hate hates hated enjoy enjoys enjoyed drink drinks drank think thinks thought reckon reckons
		taste tastes tasted smell smells smelled reminds remind reminded looks looked feels felt sounds pairs pair paired work works worked comes came hides ties brings`)
	// states are verbs of a state: what stands before them is spoken of.
	states = vocabulary.Words(`is are was were comes come came keeps keep stays lives sits does do did has hides hide ties tie brings shines makes made works work needs arrives arrive goes go went stands cuts balances carries gives gets`)
	// hedges may stand before what a drink is likened to.
	hedges = vocabulary.Words(`almost somewhere kind sort of a bit it's its it is really very`)
	// people stand behind what they drink: "the whisky drinkers".
	people = vocabulary.Words(`drinkers drinker lovers lover haters hater fans fan crowd people folks heads nerds snobs types guests guys night nights`)
	// refinements are words that say which bottle is meant, where they stand alone: "vermouth, sweet".
	refinements = vocabulary.Words(`sweet dry white dark light aged old young gold golden silver red black green yellow blue pink raw fresh strong overproof proof rich thin thick hot cold warm house local wild good best cheap
		big small large tall fine coarse sharp soft hard clear cloudy plain pure sparkling flat spicy smoky bright pale brown virgin premium standard basic special reserve vintage classic original bottled canned frozen chilled iced
		simple plain neutral heavy medium mild modern contemporary club elder french navy passion southern tropical mountain sea bubble bubbles sake snap mate date palm powdered`)
	// degrees begin what is thought of a drink: "very bright and dusty".
	degrees = vocabulary.Words(`very quite really rather too so nice lovely a an the this that for not pretty super`)
	// places stand before a number that counts none of the pours: "bar two".
	places = vocabulary.Words(`bar table station version take week round attempt level shift volume number chapter part`)
	// credits stand before somebody's name.
	credits = vocabulary.Words(`allergens allergen contains by from credit credits thanks thank to with ask see via courtesy author creator bartender chef source called named`)
)

// leastTold is the fewest words of a clause that a comma parts from pours: one may tell which of
// them is meant.
const leastTold = 3

// pass reports whether tokens pour nothing, and whether they are a sentence.
func (s *search) pass(toks []token.Token, listed bool) (spoken, ok bool) {
	if offers(toks) || pointsTo(toks) || greets(toks) || limits(toks) && s.allKnown(toks) {
		return true, true
	}
	if words, ok := withoutNumbers(toks); !ok {
		return false, false
	} else if len(words) < len(toks) {
		if shared(toks, words) {
			return false, false
		}
		return s.passCounting(words, onlyRates(toks))
	}
	if !wordsOnly(toks) || measures(toks) || toTaste(toks) {
		return false, false
	}
	if likening(toks) {
		return true, !changing(toks, true)
	}
	if serves(toks) {
		return false, false
	}
	c := s.clause(toks)
	switch {
	case !c.known || c.words == 0:
		return false, false
	case declares(toks):
		return true, !c.names
	case !c.names && !c.named:
		return c.verbs > 0 && c.words >= leastTold, !c.changes && (c.words >= leastTold || !listed) && !refining(toks, &c, listed)
	case (changing(toks, false) || entry.TellsToPour(toks)) && !c.possible:
		return false, false
	case c.named: // only what is poured already is named
		return true, c.words >= leastTold && !c.names && c.stated
	}
	return true, c.possible || c.minded && !c.with || c.beside || c.peopled
}

// passCounting reports whether what stands around numbers that count or refer pours nothing: it names
// nothing that is not poured, unless that is rated, measures and changes nothing. Numbers alone say when, where or how much it
// costs.
func (s *search) passCounting(toks []token.Token, rated bool) (spoken, ok bool) {
	if !wordsOnly(toks) || measures(toks) || toTaste(toks) {
		return false, false
	}
	c := s.clause(toks)
	if !c.known || c.names && !rated || c.named && !c.stated && !rated || c.changes || c.words > 0 && serves(toks) {
		return false, false
	}
	return c.words >= leastTold, true
}

// declares reports whether a clause says what a drink contains that is listed: "contains egg". What
// nothing poured has may be a pour that was left out.
func declares(toks []token.Token) bool {
	w := toks[0].Text
	return w == "contains" || w == "allergens" || w == "allergen"
}

// wordsOnly reports whether tokens are words, with signs that stand inside a clause.
func wordsOnly(toks []token.Token) bool {
	for i := range toks {
		t := &toks[i]
		switch {
		case t.Kind == token.Word, t.Kind == token.Mark && strings.Contains(",-'’&…:/.*_~", t.Text):
		case t.Kind == token.Numeral && i > 0 && places.Has(toks[i-1].Text) && t.Value == float64(int(t.Value)):
		default:
			return false
		}
	}
	return true
}

// measures reports whether a clause holds a measure. What only holds a drink is none where nothing is
// counted: "the bottle on the shelf".
func measures(toks []token.Token) bool {
	for i := range toks {
		w := toks[i].Text
		switch {
		case w == "bit" || holders.Has(w) && !measuring(toks, i):
		case parting.Measured(&toks[i]) || serving.OtherMeasures[w]:
			return true
		}
	}
	return false
}

// holders hold drinks, and measure them where they are counted.
var holders = vocabulary.Words(`glass glasses bottle bottles btl btls can cans cup cups batch`)

// measuring reports whether what holds a drink at i is counted, or what it holds follows.
func measuring(toks []token.Token, i int) bool {
	before, behind := wordAt(toks, i-1), wordAt(toks, i+1)
	if strings.HasPrefix(toks[i].Text, "glass") {
		return false
	}
	return behind == "of" || before == "a" || before == "an" || before == "half" || before == "one" || before == "per" || token.NumberWords[before] > 0 || i == 0
}

// toTaste reports whether a clause leaves an amount to whoever makes the drink: "simple to taste".
func toTaste(toks []token.Token) bool {
	for i := 1; i < len(toks); i++ {
		if toks[i].Text == "taste" && toks[i-1].Text == "to" {
			return true
		}
	}
	return false
}

// serves reports whether a clause tells how the drink is made or served.
func serves(toks []token.Token) bool {
	said := serving.Read(withoutPhrasal(toks))
	return said.States() || said.Iced || said.NoIce || said.Words > 0 && len(said.Unknown) == 0 || serving.Starts(toks)
}

// withoutPhrasal returns tokens without "up" and "down" that belong to a verb: "came up with".
func withoutPhrasal(toks []token.Token) []token.Token {
	var out []token.Token
	for i := range toks {
		if w := toks[i].Text; (w == "up" || w == "down") && i > 0 && i+1 < len(toks) && phrasal.Has(toks[i-1].Text) {
			continue
		}
		out = append(out, toks[i])
	}
	return out
}

// phrasal are verbs that "up" or "down" may belong to.
var phrasal = vocabulary.Words(`come comes came go goes went gone make makes made write wrote written set turn turned end ended pick picked look looks show showed calm cheer shut put`)

// speaksOfLater reports whether a clause tells what may be tried, or what is for another time.
func speaksOfLater(toks []token.Token) bool {
	for i := range toks {
		if might.Has(toks[i].Text) && toks[i].Text != "maybe" && toks[i].Text != "perhaps" && (i == 0 || states.Has(toks[0].Text) || i < leastTold) {
			return true
		}
		if toks[i].Text == "next" && i+1 < len(toks) && later.Has(toks[i+1].Text) {
			return true
		}
	}
	return false
}

// changing reports whether tokens hold a word that changes a pour; mildly, but for those that do so
// only beside a name.
func changing(toks []token.Token, mildly bool) bool {
	for i := range toks {
		w, next := toks[i].Text, ""
		if i+1 < len(toks) {
			next = toks[i+1].Text
		}
		turn := (w == "not" || w == "don't") && turns.Has(next) || w == "should" && next == "be" || w == "all" && next == "year"
		if changes.Has(w) && !(mildly && harmless.Has(w)) && !turn {
			return true
		}
	}
	return false
}

// turns follow "not" where it denies nothing of what is poured: "not for everyone".
var turns = vocabulary.Words(`for sure too bad happy over yet everyone quite everybody forget worry`)

// refining reports whether a clause may tell which bottle is meant: a word that does stands in it,
// and no sentence around it. Where a comma parts it from pours, only a verb or a degree makes one.
func refining(toks []token.Token, c *clause, listed bool) bool {
	refines, grammar := 0, false
	for i := range toks {
		if refinements.Has(toks[i].Text) || rare(toks[i].Text) {
			refines++
		}
		grammar = grammar || toks[i].Text != "and" && spoken.Has(toks[i].Text)
	}
	switch {
	case refines == 0:
		return false
	case c.words < leastTold || refines == c.words:
		return true
	}
	return c.verbs == 0 && !degrees.Has(toks[0].Text) && (listed || !grammar)
}

// clause is what the words of a clause are.
type clause struct {
	known    bool // each is everyday, or names something
	words    int
	verbs    int
	names    bool // something is named that is not poured
	named    bool // something is named that is poured
	changes  bool
	possible bool // it speaks of what may be tried another time
	minded   bool // somebody thinks so
	stated   bool // something is said of what is named
	beside   bool // what is named goes with the drink
	peopled  bool // what is named says who drinks it
	with     bool // what is named may go in: "guests love it with egg white"
}

// clause looks each word up.
func (s *search) clause(toks []token.Token) clause {
	c := clause{known: true, changes: changing(toks, true), possible: speaksOfLater(toks), beside: setBeside(toks)}
	ordered := false
	for i := 0; i < len(toks); {
		t := &toks[i]
		if t.Kind != token.Word {
			i++
			continue
		}
		n, poured := s.nameAt(toks, i)
		verb := minds.Has(t.Text) || states.Has(t.Text)
		switch {
		case n > 0:
			c.words += n
			c.named = c.named || poured
			c.names = c.names || !poured
			if i+n < len(toks) && people.Has(toks[i+n].Text) {
				c.peopled = true
			}
			c.with = c.with || !poured && i > 1 && (toks[i-1].Text == "with" || toks[i-2].Text == "with") && !slices.ContainsFunc(toks[:i], func(t token.Token) bool { return others.Has(t.Text) })
			c.stated = c.stated || i+n < len(toks) && states.Has(toks[i+n].Text)
			i += n
			continue
		case Allergen(t.Text):
			c.names = true
		case Word(t.Text), refinements.Has(t.Text), numbers(t.Text), s.person(toks, i):
		default:
			c.known = false
		}
		ordered = ordered || order.Has(t.Text)
		if verb {
			c.verbs++
		}
		c.minded = c.minded || minds.Has(t.Text) && !(t.Text == "like" && i == 0)
		c.words++
		i++
	}
	if ordered {
		c.minded, c.beside = false, false
	}
	return c
}

// Allergen reports whether a word names an allergen, which a guest may ask after: it is no remark unless
// what is poured has it.
func Allergen(w string) bool {
	_, err := flavor.ParseAllergen(w)
	return (err == nil || carriers.Has(w)) && w != "gluten"
}

// carriers are words for what has an allergen, beside its names.
var carriers = vocabulary.Words(`dairy nuts nut eggs seafood lactose`)

// others say that it is another drink that somebody likes so: "my mum likes hers with vodka".
var others = vocabulary.Words(`hers his theirs mine`)

// likening reports whether a clause begins by what it likens the drink to, which need not be known:
// "almost like eating an orange", "reminds me of lemon sherbet".
func likening(toks []token.Token) bool {
	i := 0
	for i < len(toks) && hedges.Has(toks[i].Text) {
		i++
	}
	if i+leastTold > len(toks) {
		return false
	}
	for k := i; k < len(toks); k++ {
		if order.Has(toks[k].Text) {
			return false
		}
	}
	one, other := toks[i].Text, toks[i+1].Text
	switch one {
	case "reminds", "reminded", "reminiscent", "halfway":
		return true
	case "tastes", "tasted", "smells", "smelled", "looks", "feels":
		return other == "like" || other == "of"
	case "like", "near", "between", "think":
		return other == "a" || other == "an" || other == "of" || i > 0
	}
	return false
}

// setBeside reports whether a clause tells what goes well with the drink: "great beside the olives".
func setBeside(toks []token.Token) bool {
	for i := 1; i < len(toks); i++ {
		before := toks[i-1].Text
		switch toks[i].Text {
		case "with", "beside", "alongside":
			if fits.Has(before) {
				return true
			}
		}
	}
	return false
}

// fits say that something goes well with something else.
var fits = vocabulary.Words(`well nice nicely great good lovely best perfect perfectly pairs pair beautifully brilliant better`)

// nameAt returns how many tokens at i name something that may be poured, and whether that is poured
// already.
func (s *search) nameAt(toks []token.Token, i int) (n int, poured bool) {
	for n = min(naming.LongestName, len(toks)-i); n > 0; n-- {
		name := token.OneLine(s.text[toks[i].Start:toks[i+n-1].End])
		if n == 1 && (fixed(toks[i].Text)) {
			return 0, false
		}
		_, _, ok := s.resolver.Named(name)
		if ok || n == 1 && len(s.resolver.Mentioned(name)) > 0 {
			return n, s.isPoured(toks[i : i+n])
		}
	}
	if s.isPoured(toks[i : i+1]) {
		return 1, true
	}
	return 0, false
}

// shortWord is the most letters of a word of grammar.
const shortWord = 3

// fixed reports whether a word is one of grammar, which names nothing.
func fixed(w string) bool { return spoken.Has(w) && len(w) <= shortWord || refinements.Has(w) }

// isPoured reports whether every word of a name is of one that is poured.
func (s *search) isPoured(toks []token.Token) bool {
	any := false
	for i := range toks {
		if toks[i].Kind != token.Word {
			continue
		}
		if !s.poured[singular(toks[i].Text)] {
			return false
		}
		any = true
	}
	return any
}

// pouredWords are the words of the names of pours, as written and in full, that state an amount.
func pouredWords(pours []flavor.Pour) map[string]bool {
	out := map[string]bool{}
	for i := range pours {
		for _, name := range [...]string{pours[i].Match.Asked, pours[i].Profile.Name} {
			for w := range strings.FieldsSeq(flavor.NormaliseName(name)) {
				if !spoken.Has(w) {
					out[singular(w)] = true
				}
			}
		}
	}
	return out
}

// singular is a word without the ending of a plural.
func singular(w string) string {
	if len(w) > shortWord && !strings.HasSuffix(w, "ss") {
		w = strings.TrimSuffix(w, "s")
	}
	return w
}
