package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// infusing are words that say that something was put into a bottle, and that bring
// nothing themselves.
var infusing = token.Words(`infused infusion washed washing fat-washed steeped macerated`)

// treated are words that say what was done to it before it was pressed or cooked; what
// that brings is not counted either.
var treated = token.Words(`roasted charred grilled burnt toasted caramelised caramelized torched salted smoked spiced dried candied preserved fermented lacto-fermented spicy`)

// longestHead is the most words of a bottle that something was put into.
const longestHead = 3

// apartFrom parts the words for what was done to a bottle from what it was done with: "jalapeño-infused".
var apartFrom = strings.NewReplacer("-infused", " infused", "-washed", " washed", "- infused", " infused", "-", " ")

// infusedWith names a bottle before what was put into it: "tequila infused with jalapeño".
var infusedWith = pattern.Of(`(?i)^(.+?)\s+(?:infused|fat-washed|washed|steeped|macerated)\s+(?:with|in|on|over)\s+(.+)$`)

// infused reads what bars put into a bottle themselves, such as "earl grey gin" or
// "rosemary-infused honey", as the bottle. What went in is known, and brings no allergen;
// the drink is told not to count it. What may bring one is a fault. A plant that no ingredient tells of
// counts as what may carry anything.
func (b *Resolver) infused(name string, pl Place) (Found, bool) {
	if m := infusedWith.FindStringSubmatch(name); m != nil {
		name = m[2] + " infused " + m[1]
	}
	words := strings.Fields(apartFrom.Replace(strings.ToLower(name)))
	if f, ok := b.twoFlavours(words); ok {
		return f, true
	}
	if b.beginsWithSpirit(words) {
		return Found{}, false
	}
	for n := min(longestHead, len(words)-1); n > 0; n-- {
		head := strings.Join(words[len(words)-n:], " ")
		f := b.plainly(head, pl)
		if !f.Firm() || !pl.allows(f.Profile) || !holdsInfusion(f.Profile, words[:len(words)-n]) {
			continue
		}
		brings, known := b.flavouring(words[:len(words)-n])
		steeped := !known && (f.Profile.Class.Steeped() || saysInfused(words)) && grows(words[:len(words)-n])
		switch {
		case !known && !steeped:
			return Found{}, false
		case brings != "":
			fault := flavor.Unknown("ingredient", name, nil, "%q is %s with something that may bring %s, which has to be stated; name the bottle in your stock, or write what brings it on a line of its own", name, f.Profile.Name, brings)
			return Found{Fault: fault}, true
		}
		if b.onlySugar(f.Profile) {
			if main, ok := b.mainFlavour(words[:len(words)-n], "syrup"); ok {
				return main, true
			}
		}
		f.How, f.Inferred, f.Infusion = flavor.MatchAlias, true, strings.Join(words[:len(words)-n], " ")
		f.Unstated = steeped
		return f, true
	}
	return Found{}, false
}

// plantParts are words for what of a plant goes in.
var plantParts = token.Words(`leaf leaves root roots bark seed seeds flower flowers blossom blossoms petal petals bud buds tip tips needle needles cone cones husk husks pod pods wood stem stems`)

// saysInfused reports whether a name says that something was put into the bottle: "crab apple gin" may be a gin
// behind the name of a drink.
func saysInfused(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return infusing[w] })
}

// grows reports whether words name a plant that no ingredient of the catalogue tells of, and no poison: what the
// last of them is, and before it words of the language.
func grows(words []string) bool {
	words = slices.DeleteFunc(slices.Clone(words), func(w string) bool { return infusing[w] || treated[w] || plantParts[w] })
	last := len(words) - 1
	return last >= 0 && lexicon.Grown(words[last]) && !Poisons(strings.Join(words, " ")) && !slices.ContainsFunc(words[:last], func(w string) bool {
		return !lexicon.Grown(w) && !lexicon.Written(w)
	})
}

// Brings returns the fault of a name that is a bottle with something put into it which may bring an allergen; nil
// for any other name.
func (b *Resolver) Brings(name string, pl Place) *flavor.DataFault {
	f, _ := b.infused(name, pl)
	return f.Fault
}

// beginsWithSpirit reports whether a name begins with a spirit that nothing says was put into what
// follows: "rye sweet vermouth" is two pours, or none that is known.
func (b *Resolver) beginsWithSpirit(words []string) bool {
	if len(words) < 2 || slices.ContainsFunc(words, func(w string) bool { return infusing[w] || treated[w] }) {
		return false
	}
	p, _, ok := b.Named(words[0])
	return ok && p.Base()
}

// onlySugar reports whether a syrup tastes of nothing but sugar, so that it takes its name
// from what is put into it.
func (b *Resolver) onlySugar(p *flavor.Profile) bool {
	return slices.ContainsFunc([]string{"simple syrup", "rich simple syrup", "gum syrup"}, func(n string) bool {
		q, _, ok := b.Named(n)
		return ok && p == q
	})
}

// mainFlavour returns the syrup, or what else kind says, of as much of a flavour as is
// known: pear syrup for "spiced pear". Of several the fruit is the main one, and else the
// last. What is left of the flavour is not counted.
func (b *Resolver) mainFlavour(words []string, kind string) (Found, bool) {
	words = slices.DeleteFunc(slices.Clone(words), func(w string) bool { return infusing[w] })
	var main Found
	for n := len(words); n > 0; n-- {
		for from := len(words) - n; from >= 0; from-- {
			name := strings.Join(words[from:from+n], " ") + " " + kind
			p, _, ok := b.Named(name)
			if !ok || main.Profile != nil && (p.Class != flavor.ClassFruitSyrup || main.Profile.Class == flavor.ClassFruitSyrup) {
				continue
			}
			rest := strings.Join(slices.Concat(words[:from], words[from+n:]), " ")
			main = Found{Profile: p, How: flavor.MatchAlias, As: name, Inferred: true, Infusion: rest}
		}
		if main.Profile != nil && n > 1 {
			break
		}
	}
	return main, main.Profile != nil
}

// flavoured are kinds of which bars make one of several flavours at once.
var flavoured = []string{"shrub", "cordial", "honey"}

// twoFlavours reads "blackberry sage shrub" as the shrub of what is known of its flavours,
// where all of them are, and none brings an allergen.
func (b *Resolver) twoFlavours(words []string) (Found, bool) {
	last := len(words) - 1
	if last < 2 || !slices.Contains(flavoured, words[last]) {
		return Found{}, false
	}
	if brings, known := b.flavouring(words[:last]); !known || brings != "" {
		return Found{}, false
	}
	return b.mainFlavour(words[:last], words[last])
}

// plainly returns the ingredient of a name or of its short form, without slips of the
// pen.
func (b *Resolver) plainly(name string, pl Place) Found {
	for _, n := range jargon.Strip(name) {
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

// holdsInfusion reports whether bars put flavours into a kind of bottle. Two juices are a
// mixture: one is only smoked or roasted.
func holdsInfusion(p *flavor.Profile, what []string) bool {
	if p.Class.Pressed() {
		return !slices.ContainsFunc(what, func(w string) bool { return !treated[w] })
	}
	return p.Class.Steeped() || p.Base()
}

// flavouring reports whether all words name things that are known, and an allergen that
// one of them brings or may bring.
func (b *Resolver) flavouring(words []string) (brings string, known bool) {
	for i := 0; i < len(words); {
		if infusing[words[i]] || treated[words[i]] || jargon.Idle(words[i]) || words[i] == "and" || words[i] == "&" {
			i++
			continue
		}
		p, n := b.flavour(words[i:])
		if p == nil {
			return brings, false
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
func (b *Resolver) flavour(words []string) (*flavor.Profile, int) {
	for n := min(LongestName, len(words)); n > 0; n-- {
		name := strings.Join(words[:n], " ")
		for _, w := range []string{jargon.Flavour(flavor.NormaliseName(name)), name} {
			for _, form := range flavourForms {
				if p, _, ok := b.Named(w + form); ok && w != "" {
					return p, n
				}
			}
		}
	}
	return nil, 0
}
