package naming

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
)

// infusing are words that say that something was put into a bottle, and that bring
// nothing themselves.
var infusing = token.Words(`infused infusion washed washing fat-washed steeped macerated`)

// longestHead is the most words of a bottle that something was put into.
const longestHead = 3

// infused reads what bars put into a bottle themselves, such as "earl grey gin" or
// "rosemary-infused honey", as the bottle. What went in is known, and brings no allergen;
// the drink is told not to count it. What may bring one is a fault.
func (b *Book) infused(name string, pl Place) (Found, bool) {
	words := strings.Fields(strings.NewReplacer("-infused", " infused", "-washed", " washed", "- infused", " infused", "-", " ").Replace(strings.ToLower(name)))
	for n := min(longestHead, len(words)-1); n > 0; n-- {
		head := strings.Join(words[len(words)-n:], " ")
		f := b.plainly(head, pl)
		if !f.Firm() || !pl.allows(f.Profile) || !holdsInfusion(f.Profile) {
			continue
		}
		brings, known := b.flavouring(words[:len(words)-n])
		switch {
		case !known:
			return Found{}, false
		case brings != "":
			fault := flavor.Unknown("ingredient", name, []string{f.Profile.Name}, "%q is %s with something that may bring %s, which has to be stated; write %q, or name the bottle in your stock", name, f.Profile.Name, brings, f.Profile.Name)
			return Found{Fault: fault}, true
		}
		if f.Profile.Class == flavor.ClassSyrup {
			flavour := strings.Join(words[:len(words)-n], " ")
			if p, _, ok := b.Named(flavour + " syrup"); ok { // "coffee demerara syrup"
				return Found{Profile: p, How: flavor.MatchAlias, As: flavour + " syrup", Inferred: true}, true
			}
		}
		f.How, f.Inferred, f.Infusion = flavor.MatchAlias, true, strings.Join(words[:len(words)-n], " ")
		return f, true
	}
	return Found{}, false
}

// plainly returns the ingredient of a name or of its short form, without slips of the
// pen.
func (b *Book) plainly(name string, pl Place) Found {
	for _, n := range Strip(name) {
		key := flavor.NormaliseName(n)
		if f, ok := b.InPlace(key, pl, true); ok {
			return f
		}
		if p, how, ok := b.Named(n); ok {
			return Found{Profile: p, How: how, As: n}
		}
		if f, ok := b.Short(key, pl, false); ok {
			return f
		}
	}
	return Found{}
}

// holdsInfusion reports whether bars put flavours into a kind of bottle.
func holdsInfusion(p *flavor.Profile) bool {
	return p.Class.Part() == flavor.PartBase || p.Class == flavor.ClassVermouth || p.Class == flavor.ClassSyrup
}

// flavouring reports whether all words name things that are known, and an allergen that
// one of them brings or may bring.
func (b *Book) flavouring(words []string) (brings string, known bool) {
	for i := 0; i < len(words); {
		if infusing[words[i]] || adjectives[words[i]] || words[i] == "and" || words[i] == "&" {
			i++
			continue
		}
		p, n := b.flavour(words[i:])
		if p == nil {
			return "", false
		}
		for _, a := range flavor.Allergens() {
			if _, may := p.Allergen(a); may {
				return string(a), true
			}
		}
		i += n
	}
	return "", true
}

// flavourForms are what the name of a flavour goes on with, where it is no ingredient by
// itself.
var flavourForms = []string{"", " tea", " leaf", " pod", " stick", " berry", " bean", " seed", " syrup", " juice", " purée", " bitters"}

// flavour returns the ingredient that words start with, in whatever form it is known,
// and how many words it takes.
func (b *Book) flavour(words []string) (*flavor.Profile, int) {
	for n := min(LongestName, len(words)); n > 0; n-- {
		name := strings.Join(words[:n], " ")
		for _, w := range []string{name, flavours[flavor.NormaliseName(name)]} {
			for _, form := range flavourForms {
				if p, _, ok := b.Named(w + form); ok && w != "" {
					return p, n
				}
			}
		}
	}
	return nil, 0
}

// flavours are what bars put into a bottle by other names; common practice.
var flavours = keyed(map[string]string{"jalapeño": "fresh chilli", "jalapeno": "fresh chilli", "habanero": "fresh chilli", "serrano": "fresh chilli", "chile": "fresh chilli", "chili": "fresh chilli", "chilli": "fresh chilli", "spicy": "fresh chilli",
	"smoked": "smoke tincture", "tea": "black tea", "english breakfast": "black tea", "darjeeling": "black tea", "cacao": "cacao nib", "cocoa": "cacao nib", "toasted coconut": "coconut water", "coconut": "coconut water",
	"oak": "oak tincture", "banana": "banana purée", "kiwi": "kiwi purée", "watermelon": "watermelon juice", "tomato": "tomato water", "chai": "spiced chai", "sichuan": "black pepper", "szechuan": "black pepper", "peppercorn": "black pepper", "pepper": "black pepper",
	"cherry": "fresh cherry", "citrus": "lemon peel", "horseradish": "fresh horseradish"})
