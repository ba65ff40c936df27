package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/names/jargon"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// What bars write of whose style a bottle is, where it comes from and how fine it is says
// less than the kind behind it, and is passed over with a note.

// styleMark ends the words that say whose style something is.
var styleMark = pattern.Of(`(?i)(?:[ -](?:style|styled|type|typed|like)|-(?:esque|ish))(?: of)?(?: |$)`)

// broad are names of kinds so broad that the words of whose style one is would say which.
var broad = token.Names(`aperitif wine, aperitivo liqueur, herbal liqueur, herb liqueur, bitter liqueur, liqueur, liquor, bitters, bitter, amaro, aperitif, aperitivo, apéritif, botanical, botanicals, syrup, juice, cordial, puree, purée, soda, spirit, wine, beer, tea, rum, whiskey, whisky, shrub, tincture`)

// withoutStyle looks a name up without the words that say whose style it is, "northern
// style sweet vermouth". Those may name nothing else that is poured, and what is left may
// not be a whole kind, which the style alone would tell apart.
func (b *Resolver) withoutStyle(name string, pl Place) (Found, bool) {
	at := styleMark.FindStringIndex(name)
	if at == nil || at[0] == 0 {
		return Found{}, false
	}
	whose, rest := strings.TrimSpace(name[:at[0]]), strings.TrimSpace(name[at[1]:])
	if rest == "" { // "sweet vermouth northern style"
		return b.beginning(strings.Fields(whose), pl)
	}
	if broad[flavor.NormaliseName(rest)] {
		return b.flavourBefore(strings.Fields(strings.ToLower(whose)), strings.ToLower(rest), pl)
	}
	f := b.Find(rest, pl)
	if !f.Firm() || !pl.allows(f.Profile) || !b.addsNothing(whose, f.Profile) {
		return Found{}, false
	}
	f.Dropped, f.Inferred = strings.TrimSpace(name[:at[1]]), true
	return b.moreClosely(f, f.Dropped, rest, pl), true
}

// moreClosely returns the kind of what was found that bears the words which are passed
// over, if one does: "Japanese-style" and a gin is no gin of just any style.
func (b *Resolver) moreClosely(f Found, dropped, rest string, pl Place) Found {
	for _, said := range jargon.Strip(dropped) {
		for _, n := range append([]string{rest, f.As, f.Profile.Name}, f.Profile.Aliases...) {
			p, _, ok := b.Named(said + " " + n)
			if ok && p != f.Profile && pl.allows(p) {
				return Found{Profile: p, How: f.How, As: said + " " + n, Inferred: true}
			}
		}
	}
	return f
}

// beginning returns what the longest part of words that begins them names, where the rest
// says only whose style it is.
func (b *Resolver) beginning(words []string, pl Place) (Found, bool) {
	for n := len(words) - 1; n > 0; n-- {
		known, whose := strings.Join(words[:n], " "), strings.Join(words[n:], " ")
		if broad[flavor.NormaliseName(known)] {
			continue
		}
		if f := b.plainly(known, pl); f.Firm() && pl.allows(f.Profile) && b.addsNothing(whose, f.Profile) {
			f.Dropped, f.Inferred = whose, true
			return f, true
		}
	}
	return Found{}, false
}

// flavourBefore returns the one of a broad kind that is made of what the words say, "cherry
// … style liqueur", where the other words are unknown.
func (b *Resolver) flavourBefore(words []string, kind string, pl Place) (Found, bool) {
	for n := min(LongestName, len(words)-1); n > 0; n-- {
		for from := 0; from+n <= len(words); from++ {
			name := strings.Join(words[from:from+n], " ")
			p, _, ok := b.Named(name + " " + kind)
			if rest := strings.Join(slices.Concat(words[:from], words[from+n:]), " "); ok && pl.allows(p) && b.addsNothing(rest, p) {
				return Found{Profile: p, How: flavor.MatchAlias, As: name + " " + kind, Inferred: true, Dropped: rest}, true
			}
		}
	}
	return Found{}, false
}

// addsNothing reports whether words beside the name of p name nothing else that is poured
// or tasted, and no change of the bottle.
func (b *Resolver) addsNothing(words string, p *flavor.Profile) bool {
	if broad[flavor.NormaliseName(words)] {
		return true
	}
	tasted := func(w string) bool {
		o, _ := b.flavour([]string{w})
		return o != nil && o != p && !broad[w]
	}
	return !jargon.ChangesBottle(words) && !slices.ContainsFunc(strings.Fields(flavor.NormaliseName(words)), tasted) &&
		!slices.ContainsFunc(b.Mentioned(words), func(o *flavor.Profile) bool { return o != p })
}

// origins are where bottles come from. Rums and whiskeys are told apart by it, other
// bottles seldom; common practice.
var origins = token.Words(`polish danish swedish norwegian finnish russian ukrainian german austrian swiss french italian spanish portuguese greek english british scottish welsh dutch belgian
mexican american californian canadian brazilian peruvian chilean argentinian australian japanese korean chinese indian thai persian egyptian moroccan sicilian tuscan catalan basque alpine nordic
european imported domestic kentucky mediterranean bavarian czech hungarian balkan israeli lebanese turkish madagascan tahitian ceylon colombian ethiopian`)

// ofOrigin looks a name up without where it comes from.
func (b *Resolver) ofOrigin(name string, pl Place) (Found, bool) {
	first, rest, ok := strings.Cut(name, " ")
	if !ok || !origins[strings.ToLower(first)] || broad[flavor.NormaliseName(rest)] {
		return Found{}, false
	}
	f := b.Find(rest, pl)
	if !f.Firm() || f.Profile.Class == flavor.ClassRum || f.Profile.Class == flavor.ClassWhiskey && f.Inferred {
		return Found{}, false
	}
	f.Dropped, f.Inferred = strings.TrimSpace(first+" "+f.Dropped), true
	return b.moreClosely(f, first, rest, pl), true
}

// originsBehind are words of other tongues for where a bottle comes from, which stand behind what it
// is, in English; common practice.
var originsBehind = map[string]string{
	"canadien": "canadian", "canadiense": "canadian", "canadese": "canadian", "canadense": "canadian", "cubain": "cuban", "cubano": "cuban", "jamaïcain": "jamaican", "jamaïquain": "jamaican", "jamaicano": "jamaican", "giamaicano": "jamaican",
	"mexicain": "mexican", "mexicano": "mexican", "messicano": "mexican", "irlandais": "irish", "irlandés": "irish", "irlandese": "irish", "irlandês": "irish", "écossais": "scotch", "escocés": "scotch", "scozzese": "scotch", "escocês": "scotch",
	"japonais": "japanese", "japonés": "japanese", "giapponese": "japanese", "japonês": "japanese", "américain": "american", "americano": "american", "péruvien": "peruvian", "peruano": "peruvian", "chilien": "chilean", "chileno": "chilean",
	"français": "french", "francés": "french", "francese": "french", "francês": "french", "italien": "italian", "italiano": "italian", "espagnol": "spanish", "español": "spanish", "spagnolo": "spanish", "espanhol": "spanish", "anglais": "english", "inglés": "english", "inglese": "english",
}

// kindsAbroad are kinds whose origin tells them apart, by the words of other tongues.
var kindsAbroad = map[string]string{"rhum": "rum", "ron": "rum", "whisky": "whiskey", "güisqui": "whiskey", "ginebra": "gin", "vermut": "vermouth", "vermú": "vermouth", "vermout": "vermouth"}

// ofOriginBehind looks a name up whose origin stands behind it, as other tongues have it: "whisky
// canadien", "rhum cubain".
func (b *Resolver) ofOriginBehind(name string, pl Place) (Found, bool) {
	words := strings.Fields(strings.ToLower(name))
	if len(words) < 2 || originsBehind[words[len(words)-1]] == "" {
		return Found{}, false
	}
	from, rest := originsBehind[words[len(words)-1]], words[:len(words)-1]
	ways := []string{from + " " + strings.Join(rest, " ")}
	if kind := kindsAbroad[rest[0]]; kind != "" {
		ways = append(ways, strings.Join(append([]string{from, kind}, rest[1:]...), " "))
	}
	for _, w := range ways {
		if f := b.Find(w, pl); f.Firm() {
			f.Inferred = true
			return f, true
		}
	}
	return Found{}, false
}

// varieties are sorts of a plant, or plants that bees went to, by the words that they stand
// before: the sort is passed over. Where one is told apart in the glass, the catalogue has
// its name; common practice.
var varieties = map[string]map[string]bool{
	"honey":  token.Words(`acacia heather clover linden lime-blossom orange-blossom lavender thyme chestnut manuka eucalyptus forest wildflower wild buckwheat sunflower rapeseed alfalfa tupelo blossom flower multiflora mountain pine fir rosemary sage borage sidr bush local raw floral spring summer`),
	"apple":  token.Words(`granny-smith pink-lady bramley gala fuji braeburn cox golden-delicious red-delicious honeycrisp elstar boskoop crab`),
	"orange": token.Words(`navel valencia cara-cara jaffa juicing sweet`), "lemon": token.Words(`eureka lisbon amalfi sorrento unwaxed waxed`), "lime": token.Words(`persian tahiti`),
	"grapefruit": token.Words(`marsh`), "mango": token.Words(`alphonso kesar ataulfo`), "pear": token.Words(`williams conference bartlett comice anjou bosc`),
	"tomato": token.Words(`vine san-marzano beefsteak heirloom plum roma`), "pineapple": token.Words(`queen victoria md2`), "banana": token.Words(`cavendish`),
	"cherry": token.Words(`amarena bing rainier`), "raspberry": token.Words(`scottish`), "mint": token.Words(`moroccan nana garden`),
	"cinnamon": token.Words(`ceylon saigon vietnamese indonesian`), "vanilla": token.Words(`bourbon tahitian madagascar madagascan mexican ugandan`), "ginger": token.Words(`young baby`),
}

// ofVariety looks a name up without the sort of a plant that it states: "heather honey
// syrup".
func (b *Resolver) ofVariety(name string, pl Place) (Found, bool) {
	words := strings.Fields(flavor.NormaliseName(name))
	for i := 1; i < len(words); i++ {
		sorts := varieties[words[i]]
		for n := min(longestVariety, i); n > 0; n-- {
			if !sorts[strings.Join(words[i-n:i], "-")] {
				continue
			}
			rest := strings.Join(slices.Concat(words[:i-n], words[i:]), " ")
			f := b.plainly(rest, pl)
			if !f.Firm() || !pl.allows(f.Profile) {
				return Found{}, false
			}
			f.Dropped, f.Inferred = strings.Join(words[i-n:i], " "), true
			return f, true
		}
	}
	return Found{}, false
}

// longestVariety is the most words of a sort.
const longestVariety = 2

// headKinds are what a fruit "brandy" may be: sweetened, or distilled from the fruit.
var headKinds = []string{" liqueur", " spirit"}

// fruitBrandy returns what "peach brandy" is: the trade calls the liqueur so as well as
// the spirit. One of the two that alone is known is taken, both are asked for.
func (b *Resolver) fruitBrandy(name string, pl Place) (Found, bool) {
	key := flavor.NormaliseName(name)
	fruit, ok := strings.CutSuffix(key, " brandy")
	if !ok || !pl.Volume() {
		return Found{}, false
	}
	var means []string
	for _, kind := range headKinds {
		if b.Has(fruit + kind) {
			means = append(means, fruit+kind)
		}
	}
	switch len(means) {
	case 0:
		return Found{}, false
	case 1:
		p, _, _ := b.Named(means[0])
		return Found{Profile: p, How: flavor.MatchAlias, As: means[0], Inferred: true}, true
	}
	return Found{Fault: b.Asks(key, means, pl)}, true
}

// pressedForm returns the juice of a fruit that is poured by the jigger, where a name is
// of the whole one: "fresh pineapple".
func (b *Resolver) pressedForm(written string, p *flavor.Profile, pl Place) (Found, bool) {
	if !pl.Volume() || !p.Class.Solid() || p.Class == flavor.ClassSugar {
		return Found{}, false
	}
	for _, n := range jargon.Strip(written)[1:] {
		if f, ok := b.InPlace(flavor.NormaliseName(n), pl, true); ok {
			return f, true
		}
	}
	juice := flavor.NormaliseName(written) + " juice"
	if q, _, ok := b.Named(juice); ok && pl.allows(q) {
		return Found{Profile: q, How: flavor.MatchAlias, As: juice, Inferred: true}, true
	}
	return Found{}, false
}

// kindWords are what names end in, or a bottle's own name, of which a slip is mended
// before the rest is looked up.
var kindWords = func() []measure.Spelling {
	var out []measure.Spelling
	for _, w := range strings.Fields(`liqueur syrup juice bitters vermouth whiskey tequila curacao prosecco champagne cordial puree brandy bourbon cognac sherry aquavit grenadine maraschino sparkling
pineapple grapefruit raspberry strawberry passion cranberry elderflower cinnamon vanilla demerara ginger honey agave orange apricot coffee banana hazelnut almond coconut cucumber`) {
		out = append(out, measure.Spelling{Written: w, Means: w})
	}
	return out
}()

// mendedKind looks up a name of several words with slips of the pen in the commonest of
// them mended, "apricot liqour": in one of them, or else in all.
func (b *Resolver) mendedKind(name string, pl Place) (Found, bool) {
	words := strings.Fields(flavor.NormaliseName(name))
	if len(words) < 2 || len(words) > LongestName {
		return Found{}, false
	}
	mended := slices.Clone(words)
	slips := 0
	for i, w := range words {
		near, ok := b.mendedWord(w)
		if !ok {
			continue
		}
		mended[i] = near
		slips++
		one := slices.Clone(words)
		one[i] = near
		if f, ok := b.mendedAs(one, pl); ok {
			return f, true
		}
	}
	if slips < 2 {
		return Found{}, false
	}
	return b.mendedAs(mended, pl)
}

// mendedWord returns the common word of which a word is a slip.
func (b *Resolver) mendedWord(w string) (string, bool) {
	if len(w) < leastSlipped || jargon.FullWord(w) != "" || broad[w] || b.Has(w) || jargon.Idle(w) {
		return "", false
	}
	near := measure.Nearest(w, kindWords)
	if len(near) == 0 || near[0] == w || near[0][0] != w[0] || len(near[0])-len(w) > 2 || w+"s" == near[0] {
		return "", false
	}
	return near[0], true
}

// mendedAs returns what mended words name.
func (b *Resolver) mendedAs(words []string, pl Place) (Found, bool) {
	f := b.plainly(strings.Join(words, " "), pl)
	if !f.Firm() || !pl.allows(f.Profile) {
		return Found{}, false
	}
	f.How = flavor.MatchFuzzy
	return f, true
}

// alike end words that say what a thing tastes of or is made like: "orange-y", "cola-ish".
var alike = []string{"-y", "-ish", "-type", "-style", "-like", "-esque"}

// withoutAlike looks a name up with the words that such an ending is put to, where every such
// word is one of an ingredient's name.
func (b *Resolver) withoutAlike(name string, pl Place) (Found, bool) {
	words := strings.Fields(name)
	changed := ""
	for i, w := range words {
		for _, end := range alike {
			if stem, ok := strings.CutSuffix(strings.ToLower(w), end); ok && len(stem) > 2 {
				words[i], changed = stem, w
			}
		}
	}
	if changed == "" {
		return Found{}, false
	}
	f := b.Find(strings.Join(words, " "), pl)
	if !f.Firm() {
		return Found{}, false
	}
	f.Inferred = true
	return f, true
}
