package naming

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/pattern"
)

// freeWords say that a bottle has no alcohol, before its name or behind it.
var freeWords = keys(`alcohol-free, alc free, af, na, n/a, non alcoholic, nonalcoholic, nonalc, non alc, no alcohol, no alc, no abv, zero proof, zero alcohol, zero abv, 0 proof, 0 abv, spirit free, booze free,
alkoholfrei, alkoholfreier, alkoholfreie, alkoholfreies, alkoholfri, alkoholfritt, alcoholvrij, alcoholvrije, sans alcool, sin alcohol, sem álcool, analcolico, analcolica, senza alcol, dealcoholised, dealcoholized, virgin`)

// keys are names parted by commas, as [flavor.NormaliseName] makes them.
func keys(names string) map[string]bool {
	out := map[string]bool{}
	for n := range strings.SplitSeq(names, ",") {
		out[flavor.NormaliseName(n)] = true
	}
	return out
}

// SaysFree reports whether words say that a drink has no alcohol, and nothing else.
func SaysFree(words string) bool { return freeWords[flavor.NormaliseName(words)] }

// SaysNone reports whether words are a strength of nothing: "0 %", "0.0%", "0.0".
func SaysNone(words string) bool { return strengthNone.MatchString(words) }

var strengthNone = pattern.Of(`^0([.,]0+)? ?%$|^0[.,]0+$`)

// noStrength is a strength of nothing, before a name or behind it: "0.0 % gin".
var noStrength = pattern.Of(`(^| )\(?0([.,]0+)?\s*(%|$)( abv| vol)?\)?|(^| )0[.,]0+`)

// longestFree is the most words that say it: "non alcoholic".
const longestFree = 2

// freeOf returns a name without the words that say that it has no alcohol; false if
// there are none.
func freeOf(name string) (string, bool) {
	if strings.IndexByte(name, '0') >= 0 {
		if at := noStrength.FindStringIndex(name); at != nil {
			return token.OneLine(name[:at[0]] + " " + name[at[1]:]), true
		}
	}
	words := strings.FieldsFunc(name, func(r rune) bool { return r == ' ' || r == '(' || r == ')' || r == ',' })
	for n := min(longestFree, len(words)-1); n > 0; n-- {
		if freeWords[flavor.NormaliseName(strings.Join(words[:n], " "))] {
			return strings.Join(words[n:], " "), true
		}
		if freeWords[flavor.NormaliseName(strings.Join(words[len(words)-n:], " "))] {
			return strings.Join(words[:len(words)-n], " "), true
		}
	}
	return "", false
}

// mostFree is the strength in % of volume up to which a bottle is called free of alcohol;
// Regulation (EU) 2021/2117 has less than 0.5 for wine, and bars go by it.
const mostFree = 0.5

// free looks a name up that says that it has no alcohol, as the bottle that stands for
// what it names. It never takes a bottle that has some.
func (b *Resolver) free(name string, pl Place) (Found, bool) {
	rest, ok := freeOf(name)
	if !ok || rest == "" {
		return Found{}, false
	}
	own := b.Find(rest, pl)
	ways := []string{rest}
	if full, changed := Lengthen(flavor.NormaliseName(rest)); changed {
		ways = append(ways, full)
	}
	how := flavor.MatchAlias
	if own.Profile != nil {
		ways, how = append(append(ways, own.Profile.Name), own.Profile.Aliases...), own.How
	}
	for _, w := range ways {
		for _, kind := range freeKinds {
			if p, exact, ok := b.Named("alcohol-free " + w + kind); ok {
				if how == flavor.MatchFuzzy {
					exact = how
				}
				return Found{Profile: p, How: exact, As: p.Name, Inferred: true}, true
			}
		}
	}
	if own.Firm() && own.Profile.ABV.Value <= mostFree { // "alcohol-free ginger beer"
		own.Inferred = true
		return own, true
	}
	if p, ok := b.slip(name, pl); ok && p.ABV.Value <= mostFree {
		return Found{Profile: p, How: flavor.MatchFuzzy, As: p.Name}, true
	}
	return Found{Fault: measure.Invalid("ingredient", name, "%q has no alcohol; write which alcohol-free bottle it is", name)}, true
}

// freeKinds end the name of a bottle without alcohol, which bars leave out.
var freeKinds = []string{"", " spirit", " aperitif", " distillate", " liqueur"}
