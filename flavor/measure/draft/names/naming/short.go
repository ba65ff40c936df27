package naming

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/tongue"
	"counterpour/flavor/measure/draft/words/token"
)

// Short returns what a shortened name means; headless allows it to lack the last
// word of its name.
func (b *Resolver) Short(key string, pl Place, headless bool) (Found, bool) {
	tryKey := func(name string) (Found, bool) {
		k := flavor.NormaliseName(name)
		if f, ok := b.InPlace(k, pl, true); ok {
			f.Inferred = f.Fault == nil
			return f, true
		}
		if p, _, ok := b.Named(name); ok {
			if f, ok := b.pressedForm(name, p, pl); ok {
				return f, true
			}
			return Found{Profile: p, How: flavor.MatchAlias, As: name, Inferred: true}, true
		}
		return Found{}, false
	}
	if full := jargon.Short(key); full != "" {
		if f, ok := tryKey(full); ok && (pl.ML() < mostDashed || len(key) >= leastClipped || f.Profile == nil || f.Profile.Class != flavor.ClassCocktailBitters) {
			return f, true
		}
	}
	for _, full := range []string{tongue.Name(key), jargon.Usual(key)} {
		if full == "" {
			continue
		}
		if f, ok := tryKey(full); ok {
			return f, true
		}
	}
	if f := b.Asks(key, tongue.Fruits(key), pl); f != nil {
		return Found{Fault: f}, true
	}
	full, changed := jargon.Lengthen(key)
	if changed {
		if means := cmp.Or(jargon.Short(full), jargon.Usual(full)); means != "" {
			full = means
		}
		if f, ok := tryKey(full); ok {
			return f, true
		}
	}
	for _, n := range tongue.Readings(key) {
		if n == "white" && !pl.Volume() { // "1 blanc" is a vermouth as often as an egg's
			continue
		}
		if f, ok := tryKey(cmp.Or(jargon.Short(n), jargon.Usual(n), n)); ok {
			return f, true
		}
	}
	if words := strings.Fields(full); len(words) == 2 { // "amaro med"
		if f, ok := tryKey(words[1] + " " + words[0]); ok && f.Fault == nil {
			return f, true
		}
	}
	if !headless {
		return Found{}, false
	}
	return b.completed(full, key, pl)
}

// mostDashed is the mL from which two letters, such as "ab", are not bitters: those are
// dashed; common practice.
const mostDashed = 15.0

// heads end the names of ingredients, and bars leave them out.
var heads = []string{"liqueur", "syrup", "juice", "bitters", "vermouth", "sherry", "rum", "whiskey", "gin", "tequila", "brandy", "amaro", "aperitif", "cordial", "puree", "port", "vodka", "sugar"}

// completed returns the one ingredient whose name is the written one and its head,
// as in "green herbal" for a liqueur. Several are asked for.
func (b *Resolver) completed(name, key string, pl Place) (Found, bool) {
	if last := key[strings.LastIndexByte(key, ' ')+1:]; len(key) < shortestHeadless || slices.Contains(heads, key) || last != key && wholes[last] || !pl.Volume() && pl.Unit != flavor.Dash && !pl.Unit.Spoon() {
		return Found{}, false
	}
	var hit Found
	var means []string
	for _, h := range heads {
		p, _, ok := b.Named(name + " " + h)
		if !ok || !pl.allows(p) || slices.Contains(means, p.Name) {
			continue
		}
		means = append(means, p.Name)
		hit = Found{Profile: p, How: flavor.MatchAlias, As: name + " " + h, Inferred: true}
	}
	if len(means) > 1 {
		return Found{Fault: b.Asks(key, means, pl)}, true
	}
	return hit, len(means) == 1
}

// wholes end a name that lacks nothing: vegan cream is no liqueur.
var wholes = token.Words(`cream butter milk yoghurt yogurt oil sauce water stock broth cheese`)

const shortestHeadless = 4 // letters of a name without its head
