package naming

import (
	"slices"

	"counterpour/flavor"
	"counterpour/flavor/carrier"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/token"
)

// keeping returns those of some suggested names whose ingredient carries whatever the written
// name says that there is: no slip of the pen loses a nut. What is a poison has none.
func (b *Resolver) keeping(name string, suggested []string) []string {
	if Poisons(name) {
		return nil
	}
	c := carrier.Of(name)
	if c.None() {
		return suggested
	}
	return slices.DeleteFunc(slices.Clone(suggested), func(n string) bool {
		p, _, ok := b.Named(n)
		return ok && Loses(name, p) != ""
	})
}

// Poisons reports whether a name is of what nobody drinks, so that no ingredient is what was
// meant by it.
func Poisons(name string) bool {
	return slices.ContainsFunc(carrier.Words(name), func(w string) bool { return poisons[w] })
}

// poisons are words for what nobody drinks, plants among them: common practice, no source.
var poisons = token.Words(`hemlock nightshade belladonna foxglove digitalis oleander monkshood aconite wolfsbane datura jimsonweed thornapple mandrake henbane
	yew laburnum hellebore larkspur delphinium rhododendron azalea daphne mistletoe hydrangea wisteria pokeweed tobacco ricin colchicum ragwort
	bleach antifreeze detergent borax methanol turpentine kerosene ammonia lye isopropyl sanitizer sanitiser paraquat cyanide arsenic mercury charcoal`)

// Loses says what a name says that there is, allergens or what comes from animals, and the record
// of an ingredient does not carry; empty if there is nothing. Whoever takes the name for the
// ingredient loses it.
func Loses(name string, p *flavor.Profile) string {
	return carrier.Brings(carrier.Lost(name, p))
}

// lostBeside says what a name, or the words of it that were passed over, say that there is, and the ingredient does not
// carry; empty if there is nothing. What is denied is not there. What went into a bottle counts together with its name:
// no syrup of dried apricots is one of apricots.
func lostBeside(name string, f *Found) string {
	passed := f.Dropped
	if f.Infusion != "" {
		passed = name
	}
	if passed == "" || leavesOut(passed) {
		return ""
	}
	return Loses(passed, f.Profile)
}

// denying are the words by which the name of a bottle says that it is without something.
var denying = token.Words(`free without decaf decaffeinated diet zero vegan plant plant-coloured non no`)

// without reports whether an ingredient is by its name without something, or by that other name of it which has the
// written words, and what was written says nothing of the kind: who writes "caffeinated espresso" pours no decaf.
func without(name string, p *flavor.Profile) bool {
	denied := func(w string) bool { return denying[w] || deniers[w] }
	words := carrier.Words(name)
	if key := flavor.NormaliseName(name); slices.ContainsFunc(words, denied) || key == flavor.NormaliseName(p.Name) || aliasOf(p, key) {
		return false
	}
	if slices.ContainsFunc(carrier.Words(p.Name), denied) {
		return true
	}
	said := 0
	for _, n := range append([]string{p.Name}, p.Aliases...) {
		of := carrier.Words(n)
		switch {
		case slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(of, w) }):
		case slices.ContainsFunc(of, denied):
			said++
		default:
			return false
		}
	}
	return said > 0
}

// deniers begin what is not there; "free" ends it.
var deniers = token.Words(`not no never without nicht pas ohne sans sin senza sem zonder uden utan uten`)

// leavesOut reports whether words say what is not there: "not the oat one", "(nut-free)".
func leavesOut(words string) bool {
	of := carrier.Words(words)
	return len(of) > 0 && (deniers[of[0]] || of[len(of)-1] == "free")
}

// carries reports whether words name allergens and nothing else, each of which an ingredient is
// known to contain: "advocaat (egg)".
func carries(p *flavor.Profile, words string) bool {
	named := declared.Allergens(words)
	return len(named) > 0 && !slices.ContainsFunc(named, func(a flavor.Allergen) bool {
		sure, _ := p.Allergen(a)
		return sure != flavor.Contains
	})
}
