package naming

import (
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/words/declared"
)

// mostFree is the strength in % of volume up to which a bottle is called free of alcohol;
// Regulation (EU) 2021/2117 has less than 0.5 for wine, and bars go by it.
const mostFree = 0.5

// free looks a name up that says that it has no alcohol, as the bottle that stands for
// what it names. It never takes a bottle that has some.
func (b *Resolver) free(name string, pl Place) (Found, bool) {
	rest, ok := declared.WithoutNoAlcohol(name)
	if !ok || rest == "" {
		return Found{}, false
	}
	own := b.Find(rest, pl)
	ways := []string{rest}
	if full, changed := jargon.Lengthen(flavor.NormaliseName(rest)); changed {
		ways = append(ways, full)
	}
	how := flavor.MatchAlias
	if own.Profile != nil {
		ways, how = append(append(ways, own.Profile.Name), own.Profile.Aliases...), own.How
	}
	for _, w := range ways {
		for _, kind := range freeKinds {
			if p, exact, ok := b.Named("alcohol-free " + w + kind); ok && (pl.allows(p) || p.Class != flavor.ClassCocktailBitters) { // no dashing bitters by the jigger
				if how == flavor.MatchFuzzy {
					exact = how
				}
				return Found{Profile: p, How: exact, As: p.Name, Inferred: true}, true
			}
		}
	}
	if f, ok := b.freeOfSeveral(own.Fault, pl); ok {
		return f, true
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

// freeOfSeveral returns the bottle without alcohol of what a name may mean: the only one that there is, or those that
// there are are asked.
func (b *Resolver) freeOfSeveral(open *flavor.DataFault, pl Place) (Found, bool) {
	if open == nil || open.Kind != flavor.ErrInvalid {
		return Found{}, false
	}
	var means []string
	var hit Found
	for _, name := range open.Suggest {
		if p, _, ok := b.Named("alcohol-free " + name); ok && pl.allows(p) {
			means = append(means, p.Name)
			hit = Found{Profile: p, How: flavor.MatchAlias, As: p.Name, Inferred: true}
		}
	}
	if len(means) > 1 {
		return Found{Fault: b.Asks(flavor.NormaliseName(open.Value), means, pl)}, true
	}
	return hit, len(means) == 1
}

// freeKinds end the name of a bottle without alcohol, which bars leave out.
var freeKinds = []string{"", " spirit", " aperitif", " distillate", " liqueur"}
