package overlooked

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/guest"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/words/declared"
	"counterpour/flavor/measure/draft/words/drinks"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// What a text claims of the drink for a guest who keeps a diet or avoids an allergen. The rule of what such
// a guest may have is that of package guest, but that what is only possible is no contradiction here.

var (
	// suits are words that claim a diet of the whole drink, each with the diet's name.
	suits = map[string]string{"vegan": "vegan", "veganer": "vegan", "vegane": "vegan", "veganes": "vegan", "vegano": "vegan", "vegana": "vegan", "végétalien": "vegan", "plant based": "vegan", "plant-based": "vegan",
		"vegetarian": "vegetarian", "virgin": "alcohol-free", "mocktail": "alcohol-free", "alkoholfrei": "alcohol-free", "alkoholfreier": "alcohol-free", "analcolico": "alcohol-free", "analcolica": "alcohol-free",
		"eggless": "no egg", "dairy-less": "no dairy", "egg-less": "no egg", "alcohol-less": "alcohol-free", "booze-less": "alcohol-free", "lactose-less": "no dairy", "dairyless": "no dairy", "laktosefrei": "no dairy", "glutenfrei": "gluten", "nussfrei": "nuts", "milchfrei": "no dairy"}
	claimedAlone = pattern.Of(`(?i)(^|[^\pL-])(plant[ -]based|\pL+-less|\pL+)`)
	// free are claims in two words, with what there is none of: "dairy free", "free of nuts", "sans lactose".
	free = pattern.Of(`(?i)(?:^|[^\pL])(?:(\pL+|\d+(?:[.,]\d+)?[ ]?%)[ \t-]?(?:free|frei|fri|fritt|vrij)\b|(?:free[ \t](?:of|from)|contains no|without|sans|ohne|senza|sin|sem|utan|uden|zonder|bez|no)[ \t]+(?:any[ \t]+)?(\pL+))`)
	// safe are claims that the drink suits who has to avoid something: "coeliac safe", "ok for coeliacs".
	safe = pattern.Of(`(?i)(?:\b(\pL+)[ \t-](?:safe|friendly|ok|okay|suitable)\b|\b(?:safe|suitable|fine|ok|okay)[ \t]+for[ \t]+(?:a[ \t]+|our[ \t]+)?(\pL+?)(?:s|[ \t]+(?:guests?|allerg\pL*|sufferers?|intolerant))?\b)`)
	// bracketed is what stands in brackets on a line.
	bracketed = pattern.Of(`[(\[]([^)\]]*)[)\]]`)
)

// allergic tells what a guest has to avoid: "nut allergy", "allergic to nuts and egg", "ALLERGY: nuts".
var allergic = pattern.Of(`(?i)(?:\b(\pL+(?:[ \t-]\pL+)?)[ \t-]+allerg(?:y|ies)\b|\ballerg(?:y|ies|ic)[ \t]*(?::|to|-|–)?[ \t]*(\pL+(?:(?:,[ \t]*|[ \t]+(?:and|or|&)[ \t]+|[ \t]*/[ \t]*|[ \t]+)\pL+){0,3}))`)

// harms is the fault of a line that says what a guest has to avoid, where something poured has it for
// certain.
func harms(line string, pours []flavor.Pour) *flavor.DataFault {
	if !strings.Contains(strings.ToLower(line), "allerg") {
		return nil
	}
	for _, m := range allergic.FindAllStringSubmatch(line, -1) {
		if listsAllergens.MatchString(line) || saysContains.MatchString(line) {
			return nil
		}
		for word := range strings.FieldsFuncSeq(m[1]+" "+m[2], func(c rune) bool { return !unicode.IsLetter(c) }) {
			what := dietFree(strings.ToLower(word))
			if what == "" {
				continue
			}
			if p, why := broken(what, pours); p != nil {
				return measure.Invalid("name", m[0], "%q tells of a guest, and %s %s; write what is poured in its place, or leave that out", strings.TrimSpace(m[0]), p.Name, why)
			}
		}
	}
	return nil
}

// freeOf are words for what a drink may be claimed to be free of, with the diet that keeps it so.
var freeOf = map[string]string{"dairy": "no dairy", "lactose": "no dairy", "laktose": "no dairy", "lattosio": "no dairy", "lactosa": "no dairy", "milk": "no dairy", "milch": "no dairy", "lait": "no dairy", "latte": "no dairy", "leche": "no dairy", "cream": "no dairy",
	"egg": "no egg", "eggs": "no egg", "ei": "no egg", "eier": "no egg", "œuf": "no egg", "oeuf": "no egg", "œufs": "no egg", "oeufs": "no egg", "uovo": "no egg", "uova": "no egg", "huevo": "no egg", "ovo": "no egg", "ägg": "no egg", "æg": "no egg", "eiweiß": "no egg",
	"honey": "no honey", "alcohol": "alcohol-free", "alcool": "alcohol-free", "alkohol": "alcohol-free", "alcol": "alcohol-free", "booze": "alcohol-free", "spirit": "alcohol-free", "proof": "alcohol-free"}

// allergensIn are words of other tongues for allergens that a drink may be claimed to be free of.
var allergensIn = map[string]string{"glutine": "gluten", "noix": "nuts", "nüsse": "nuts", "nuss": "nuts", "frutos": "nuts", "arachides": "peanuts", "soja": "soy", "sulphite": "sulphites", "sulfite": "sulphites", "wheat": "gluten", "almond": "almonds", "coeliac": "gluten", "celiac": "gluten"}

// claiming are the words of which one stands in every claim but those in one word: "dairyfree".
var claiming = func() *vocabulary.Set {
	words := strings.Fields(`free frei fri fritt vrij contains without sans ohne senza sin sem utan uden zonder bez no safe friendly ok okay suitable fine`)
	for said := range suits {
		words = append(words, strings.FieldsFunc(said, notLetter)[0])
	}
	return vocabulary.SetOf(words...)
}()

func notLetter(r rune) bool { return !unicode.IsLetter(r) }

// mayClaim reports whether a line has a word of a claim: most have none, and are not looked at any further.
func mayClaim(line string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(line), notLetter) {
		if claiming.Has(w) || strings.HasSuffix(w, "free") || strings.HasSuffix(w, "frei") || strings.HasSuffix(w, "fri") || strings.HasSuffix(w, "fritt") || strings.HasSuffix(w, "vrij") {
			return true
		}
	}
	return false
}

// claimed is the fault of a line that claims a diet of the drink which something poured breaks.
func claimed(line string, title bool, pours []flavor.Pour) *flavor.DataFault {
	for _, said := range alcoholFree(line, title) {
		if f := contradicted(said, "alcohol-free", pours); f != nil {
			return f
		}
	}
	if f := harms(line, pours); f != nil {
		return f
	}
	if !mayClaim(line) {
		return nil
	}
	for _, m := range free.FindAllStringSubmatch(line, -1) {
		word := strings.ToLower(m[1] + m[2])
		if what := dietFree(word); what != "" && !speaksOfAPour(line, m[0]) {
			if f := contradicted(m[0], what, pours); f != nil {
				return f
			}
		}
	}
	for _, m := range safe.FindAllStringSubmatch(line, -1) {
		word := strings.ToLower(m[1] + m[2])
		what := cmp.Or(suits[word], dietFree(word))
		if what == "" || speaksOfAPour(line, m[0]) {
			continue
		}
		if f := contradicted(m[0], what, pours); f != nil {
			return f
		}
	}
	for _, m := range claimedAlone.FindAllStringSubmatch(line, -1) {
		what, known := suits[strings.ToLower(m[2])]
		if !known || speaksOfAPour(line, m[2]) || strings.EqualFold(m[2], "virgin") && (drinks.Known(strings.TrimSpace(line)) || properBehind(line, m[2])) {
			continue
		}
		if f := contradicted(m[2], what, pours); f != nil {
			return f
		}
	}
	return nil
}

// alcoholFree lists what a line says that means that the drink has no alcohol, in the words of a label: all
// of it, what stands before a sign or in brackets, and what a title begins with.
func alcoholFree(line string, title bool) (said []string) {
	whole := make([]string, 0, 4)
	for _, sign := range [...]string{":", "|"} {
		if before, _, ok := strings.Cut(line, sign); ok {
			whole = append(whole, before)
		}
	}
	beside := line
	if strings.ContainsAny(line, "([") {
		beside = bracketed.ReplaceAllString(line, "")
	}
	if !strings.ContainsFunc(beside, unicode.IsNumber) && !beginsWithAmount(beside) { // "1 oz ginger beer (alcohol-free)" says it of a pour
		for _, m := range bracketed.FindAllStringSubmatch(line, -1) {
			whole = append(whole, m[1])
		}
		whole = append(whole, line)
	}
	for _, w := range whole {
		if w = strings.TrimSpace(w); declared.NoAlcohol(w) || declared.NoStrength(w) {
			said = append(said, w)
		}
	}
	if title {
		if lead := declared.LeadingNoAlcohol(strings.TrimLeft(line, " \t*#•–—-")); lead != "" {
			said = append(said, lead)
		}
	}
	return said
}

// dietFree returns the diet of who must have none of what a word names, or the allergen; empty for a word
// that names neither.
func dietFree(word string) string {
	if d := freeOf[word]; d != "" {
		return d
	}
	if a := allergensIn[word]; a != "" {
		return a
	}
	if as := declared.Allergens(word); len(as) > 0 {
		return word
	}
	return ""
}

// properBehind reports whether what stands behind a word makes a place of it: "Virgin Islands".
func properBehind(line, word string) bool {
	_, behind, _ := strings.Cut(strings.ToLower(line), strings.ToLower(word))
	return strings.HasPrefix(strings.TrimSpace(behind), "island") || strings.HasPrefix(strings.TrimSpace(behind), "olive") || strings.HasPrefix(strings.TrimSpace(behind), "coconut")
}

// speaksOfAPour reports whether a claim stands in a clause with an amount, and is one of a pour, "30 ml
// dairy-free cream", or is a question.
func speaksOfAPour(line, claim string) bool {
	at, behind := strings.Index(line, claim), strings.Index(line, claim)+len(claim)
	before := strings.TrimRight(line[:at], " \t")
	if open := strings.TrimSuffix(before, "("); open != before { // "15 ml aquafaba (vegan)"
		at = len(open)
	} else if strings.HasPrefix(line[behind:], "?") {
		return true
	}
	from := strings.LastIndexAny(line[:at], ",;:.|(\n–—") + 1
	end := len(line)
	if n := strings.IndexAny(line[behind:], ",;:.|)–—"); n >= 0 {
		end = behind + n
	}
	return strings.ContainsAny(line[from:at], "0123456789½¼¾⅓⅔") || beginsWithAmount(line[from:end])
}

// contradicted is the fault of a claim that something poured breaks for certain.
func contradicted(said, what string, pours []flavor.Pour) *flavor.DataFault {
	p, why := broken(what, pours)
	if p == nil {
		return nil
	}
	said = strings.Trim(said, " \t,.;:()-–—*#")
	return measure.Invalid("name", said, "%q is said of the drink, and %s %s; write what is poured in its place, or leave that out", said, p.Name, why)
}

// broken is the first thing poured that whoever keeps a diet, or avoids an allergen, must not have for
// certain, and why; nil if there is none.
func broken(what string, pours []flavor.Pour) (p *flavor.Profile, why string) {
	var g guest.Guest
	if err := g.Keep(what); err != nil {
		g.Avoid = append(g.Avoid, declared.Allergens(what)...)
	}
	g.NoAnimal = slices.DeleteFunc(slices.Clone(g.NoAnimal), func(a string) bool { return a == flavor.Finings })
	for i := range pours {
		p := pours[i].Profile
		if why := g.Objection(p); why != "" && certain(&g, p) {
			return p, why
		}
	}
	return nil, ""
}

// certain reports whether an ingredient breaks what a guest keeps to, and may not only do so.
func certain(g *guest.Guest, p *flavor.Profile) bool {
	if g.NoAlcohol && alcoholic(p) {
		return true
	}
	if slices.ContainsFunc(g.NoAnimal, func(a string) bool { return slices.Contains(p.Animal, a) }) {
		return true
	}
	return slices.ContainsFunc(g.Avoid, func(a flavor.Allergen) bool {
		sure, _ := p.Allergen(a)
		return sure == flavor.Contains
	})
}

// alcoholic reports whether an ingredient makes a drink one with alcohol; dashes of bitters do not.
func alcoholic(p *flavor.Profile) bool {
	return p.ABV.Value > flavor.NoAlcoholABV && p.Class != flavor.ClassCocktailBitters
}
