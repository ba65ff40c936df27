package fitting

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/drinks"
)

// Drink returns the one of several meanings of a written name that every bar pours into the drink of a
// name, and why; nil if that drink pours none of them or several. named looks up an ingredient.
//
// Where it pours none of them, what it pours of their class under a word of the written name is meant:
// the "herbal liqueur" of a drink that pours one herb liqueur is that.
func Drink(means []*flavor.Profile, written, drink string, named func(string) *flavor.Profile) (*flavor.Profile, string) {
	pours, called := drinks.Pours(drink)
	var among, like []*flavor.Profile
	for _, name := range pours {
		p := named(name)
		switch {
		case p == nil:
		case slices.Contains(means, p):
			among = append(among, p)
		case anAperitif[flavor.NormaliseName(written)] && aperitifs[p.Class], sharesWord(written, name) && slices.ContainsFunc(means, func(m *flavor.Profile) bool { return m.Class == p.Class }):
			like = append(like, p)
		}
	}
	if len(among) == 0 {
		among = like
	}
	if len(among) != 1 {
		return nil, ""
	}
	return among[0], "a drink called “" + called + "” has it"
}

// leastRest is how many things a drink pours beside the one in doubt, seasoning aside, that tell which drink it is:
// fewer are the rest of many drinks.
const leastRest = 3

// Rest returns the one of several meanings that makes a drink which every bar pours of what is poured beside it, and
// why; nil if none does, or two drinks of that rest differ in it. Seasoning may be lacking.
func Rest(means, beside []*flavor.Profile, named func(string) *flavor.Profile) (*flavor.Profile, string) {
	if len(beside) < leastRest {
		return nil, ""
	}
	var hit *flavor.Profile
	by, several := "", false
	drinks.Among(func(name string, pours []string) {
		if len(pours) <= leastRest {
			return
		}
		p, rest := completes(means, beside, pours, named)
		if p == nil || rest < leastRest {
			return
		}
		several = several || hit != nil && hit != p
		if hit == nil {
			hit, by = p, name
		}
	})
	if several || hit == nil {
		return nil, ""
	}
	return hit, "the rest is that of a drink called “" + by + "”, which has it"
}

// completes returns the one of several meanings that a drink pours, where all else of it but seasoning is poured
// beside, and how much that is; nil if it is not so.
func completes(means, beside []*flavor.Profile, pours []string, named func(string) *flavor.Profile) (*flavor.Profile, int) {
	var hit *flavor.Profile
	rest := 0
	for _, name := range pours {
		p := named(name)
		switch {
		case p == nil:
			return nil, 0
		case slices.Contains(means, p):
			if hit != nil {
				return nil, 0
			}
			hit = p
		case slices.Contains(beside, p):
			if p.Class.Part() != flavor.PartSeasoning {
				rest++
			}
		case p.Class.Part() != flavor.PartSeasoning:
			return nil, 0
		}
	}
	return hit, rest
}

// anAperitif are words by which a card names an aperitif, and aperitifs the classes that it may then be of.
var (
	anAperitif = map[string]bool{"aperitif": true, "aperitivo": true, "apéritif": true, "aperitif wine": true}
	aperitifs  = map[flavor.Class]bool{flavor.ClassBitterAperitif: true, flavor.ClassAromatisedWine: true}
)

// leastStem is from how many letters alike two words are one: "herbal", "herb".
const leastStem = 4

// sharesWord reports whether a word of one name begins as one of another does, but for the word of a kind
// that ends both.
func sharesWord(written, name string) bool {
	ours, theirs := strings.Fields(flavor.NormaliseName(written)), strings.Fields(flavor.NormaliseName(name))
	for _, w := range ours {
		for _, v := range theirs[:max(0, len(theirs)-1)] {
			if len(w) >= leastStem && len(v) >= leastStem && w[:leastStem] == v[:leastStem] {
				return true
			}
		}
	}
	return false
}

// whole are names of a kind that stand for another bottle in each drink.
var whole = map[string]flavor.Class{"rum": flavor.ClassRum, "tequila": flavor.ClassAgaveSpirit}

// Bottle returns what of a kind every bar pours into the drink of a name, where only the kind is written,
// and why; nil if the written name says more, or the drink pours none of it or several.
func Bottle(written, drink string, named func(string) *flavor.Profile) (*flavor.Profile, string) {
	class, ok := whole[flavor.NormaliseName(written)]
	if !ok {
		return nil, ""
	}
	pours, called := drinks.Pours(drink)
	var of []*flavor.Profile
	for _, name := range pours {
		if p := named(name); p != nil && p.Class == class && strings.Contains(flavor.NormaliseName(name), flavor.NormaliseName(written)) {
			of = append(of, p)
		}
	}
	if len(of) != 1 {
		return nil, ""
	}
	return of[0], "a drink called “" + called + "” has it"
}
