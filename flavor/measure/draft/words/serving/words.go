package serving

import (
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// term is what a word or a phrase says of how a drink is made and served:
// common practice.
type term struct {
	Method  flavor.Method
	Service flavor.Service
	weak    bool   // yields to another service: a glass suggests one, "over ice" may speak of the shaker
	Glass   string // by its usual name
	Ice     bool   // names ice, which is no pour
	keep    bool   // worth keeping as a step, beside what it says
	note    string // what was assumed, where the trade means more than one thing
}

// methodTerms are the words for each method.
var methodTerms = map[flavor.Method][]string{
	flavor.Shake: {"shake", "shake it up", "shake that up", "shake them up", "shake all that up", "sh", "shk", "shaken", "shaking", "hard shake", "hard shaken", "short shake", "long shake", "long hard shake", "hard long shake", "long and hard shake", "shake long", "shake long and hard", "shaken long", "schütteln", "geschüttelt", "agitar", "agitado", "wet shake", "wet sh", "shk", "s&s", "ws", "au shaker", "im shaker", "shaker", "agiter", "agité", "shaker au frappé", "shakerare", "shakerato", "schudden", "skaka", "shakad", "batir"},
	flavor.DryShake: {"dry shake", "dry shaken", "dryshake", "shake dry", "shake without ice", "shake no ice", "dry shake then shake", "ds s", "ds ws", "dds", "dry shake then wet shake", "dry sh",
		"dry then wet shake", "dry then wet", "dry and wet", "dry & wet", "dry wet", "dry then ice", "dry and wet shake", "dry & wet shake", "dry wet shake", "double shake"},
	flavor.Stir:    {"stir long", "long stir", "stirred long", "stir it long", "stir very long", "stir v long", "stir nice and long", "long stirred", "stir short", "short stir", "stir", "stir it up", "stir that up", "stir them up", "stirr", "stirred", "stirring", "stir down", "stirred down", "stir & strain", "stir and strain", "verre à mélange", "au verre à mélange", "vaso mezclador", "mixing glass", "rühren", "gerührt", "remover", "removido", "remuer", "mélanger", "mescolare", "roeren", "rör", "rør", "rør om", "rör om"},
	flavor.Build:   {"build", "built", "building", "build in glass", "built in glass"},
	flavor.Blend:   {"blend", "blended", "blender", "flash blend", "blitz", "frozen", "spindle mix", "whizz", "whiz", "whirl", "whirled", "liquidise", "liquidize"},
	flavor.Throw:   {"throw", "thrown", "throwing"},
	flavor.Swizzle: {"swizzle", "swizzled", "swizzling"},
}

// nearMethods are ways of mixing that are taken as one of the methods.
var nearMethods = map[string]term{
	"reverse dry shake": {Method: flavor.DryShake, keep: true, note: "a reverse dry shake is taken as a dry shake"},
	"reverse dry":       {Method: flavor.DryShake, keep: true, note: "a reverse dry shake is taken as a dry shake"},
	"rev dry shake":     {Method: flavor.DryShake, keep: true, note: "a reverse dry shake is taken as a dry shake"},
	"rev dry":           {Method: flavor.DryShake, keep: true, note: "a reverse dry shake is taken as a dry shake"},
	"whip":              {Method: flavor.Shake, keep: true, note: "a whip shake is taken as a shake; it dilutes less"},
	"whip shake":        {Method: flavor.Shake, keep: true, note: "a whip shake is taken as a shake; it dilutes less"},
	"whip shaken":       {Method: flavor.Shake, keep: true, note: "a whip shake is taken as a shake; it dilutes less"},
	"layered":           {Method: flavor.Build, keep: true},
	"roll":              {Method: flavor.Throw, keep: true, note: "rolling is taken as throwing"},
	"rolled":            {Method: flavor.Throw, keep: true, note: "rolling is taken as throwing"},
	"churn":             {Method: flavor.Swizzle, keep: true, note: "churning is taken as swizzling"},
	"churned":           {Method: flavor.Swizzle, keep: true, note: "churning is taken as swizzling"},
	// Who stirs in the glass builds there.
	"stir in glass": {Method: flavor.Build, keep: true}, "stir in the glass": {Method: flavor.Build, keep: true}, "stirred in glass": {Method: flavor.Build, keep: true}, "stirred in the glass": {Method: flavor.Build, keep: true}, "stir in its glass": {Method: flavor.Build, keep: true},
	"dirty dump":    {Service: flavor.Rocks, keep: true, note: "a dirty dump is taken as served on its ice"},
	"open pour":     {Service: flavor.Rocks, keep: true, note: "an open pour is taken as served on its ice"},
	"dump":          {Service: flavor.Rocks, weak: true, keep: true},
	"slush machine": frozenByMachine, "slushie machine": frozenByMachine, "slushy machine": frozenByMachine, "frozen machine": frozenByMachine, "frozen drink machine": frozenByMachine, "granita machine": frozenByMachine,
	"slush": frozenByMachine, "slushie": frozenByMachine, "slushy": frozenByMachine,
	"double strain": {keep: true}, "double strained": {keep: true}, "dbl strain": {keep: true}, "dbl strained": {keep: true}, "d strain": {keep: true},
	"double fine strain": {keep: true}, "fine strain": {keep: true}, "dstrain": {keep: true}, "cap with crushed": {Service: flavor.Crushed, weak: true}, "capped with crushed": {Service: flavor.Crushed, weak: true}, "top with crushed": {Service: flavor.Crushed, weak: true}, "fine strained": {keep: true}, "2x strain": {keep: true}, "ds": {keep: true},
	"swizzle stick": {keep: true}, "swizzle sticks": {keep: true}, "stir stick": {keep: true}, "stir sticks": {keep: true},
	"rinse & dump": {keep: true}, "rinse and dump": {keep: true}, "rinse then dump": {keep: true},
	"str": {keep: true}, "muddle": {keep: true}, "muddled": {keep: true},
	// A shaker that something goes into, or comes from, says nothing of the method.
	"in shaker": {}, "in the shaker": {}, "in a shaker": {}, "into shaker": {}, "into the shaker": {}, "into a shaker": {}, "to shaker": {}, "to the shaker": {}, "to a shaker": {}, "from shaker": {},
	"from the shaker": {}, "the shaker": {}, "a shaker": {}, "cocktail shaker": {}, "shaker tin": {}, "shaker tins": {},
	"build in tin": {}, "built in tin": {}, "build in the tin": {}, "build in shaker": {}, "build in mixing glass": {}, "build in tins": {},
	"down":         {Service: flavor.Up, weak: true, Glass: "rocks glass", note: downNote},
	"serve frozen": {}, "served frozen": {}, "frozen glass": {}, "serve ice cold": {},
	"served down": {Service: flavor.Up, Glass: "rocks glass", note: downNote},
}

// frozenByMachine is what a machine makes that freezes a drink while it turns.
var frozenByMachine = term{Method: flavor.Blend, keep: true, note: "a slush machine is taken as a blender with ice; it dilutes less"}

// heatings heat the whole drink. A participle is none of them: it may stand before what alone
// is hot, as in "steamed milk".
var heatings = strings.Split(`heat,heat it,heat all,heat up,heat gently,heat or steam,steam,steam it,steam wand,the wand,warm it,warm it up,warm through,warm gently,warm all,simmer,simmered,
on the stove,on stove,on the hob,on hob,in a pan,in a saucepan,over heat,over low heat,low heat,gentle heat`, ",")

// heatedThings are what is heated before a drink is poured into it, which suggests a hot one as
// a mug does.
var heatedThings = strings.Fields(`glass mug cup glasses mugs cups`)

// serviceTerms are the words for each service.
var serviceTerms = map[flavor.Service][]string{
	flavor.Up:      {"up", "straight up", "served up"},
	flavor.Rocks:   {"rocks", "on the rocks", "rox", "rx", "rks", "otr", "rock", "one rock", "a rock", "on rocks", "over rocks", "en las rocas", "a las rocas", "en roca", "sur glace", "på is"},
	flavor.Crushed: {"crushed"},
	flavor.Long:    {"long", "tall"},
	flavor.Hot:     {"hot", "served hot", "piping hot", "serve hot", "warm", "served warm", "serve warm", "heiß", "caliente", "caldo", "chaud"},
	flavor.Neat:    {"neat", "served neat", "room temp", "room temperature"},
}

// iceTerms name ice and what it says of the service.
var iceTerms = map[string]term{
	"ice": {weak: true}, "iced": {weak: true},
	"over ice": {Service: flavor.Rocks, weak: true}, "on ice": {Service: flavor.Rocks, weak: true}, "auf eis": {Service: flavor.Rocks, weak: true}, "con hielo": {weak: true}, "with ice": {weak: true},
	"over fresh ice": {Service: flavor.Rocks}, "fresh ice": {Service: flavor.Rocks, weak: true}, "over cubed ice": {Service: flavor.Rocks},
	"cubed ice": {Service: flavor.Rocks, weak: true}, "ice cubes": {weak: true}, "ice cube": {weak: true}, "cubes": {Service: flavor.Rocks, weak: true},
	"cubed": {Service: flavor.Rocks, weak: true}, "over cubes": {Service: flavor.Rocks}, "on cubes": {Service: flavor.Rocks},
	"big rock": {Service: flavor.Rocks}, "big ice": {Service: flavor.Rocks}, "large ice": {Service: flavor.Rocks}, "rock ice": {Service: flavor.Rocks}, "hard ice": {weak: true}, "tall ice": {Service: flavor.Long, weak: true}, "large rock": {Service: flavor.Rocks}, "big cube": {Service: flavor.Rocks}, "large cube": {Service: flavor.Rocks}, "xl cube": {Service: flavor.Rocks}, "xl rock": {Service: flavor.Rocks},
	"lg cube": {Service: flavor.Rocks}, "lrg cube": {Service: flavor.Rocks}, "lg rock": {Service: flavor.Rocks},
	"king cube": {Service: flavor.Rocks}, "one cube": {Service: flavor.Rocks}, "single cube": {Service: flavor.Rocks}, "1 cube": {Service: flavor.Rocks}, "block": {Service: flavor.Rocks}, "clear block": {Service: flavor.Rocks}, "gros glaçon": {Service: flavor.Rocks}, "glaçon": {weak: true}, "cubo grande": {Service: flavor.Rocks}, "großer würfel": {Service: flavor.Rocks}, "large ice cube": {Service: flavor.Rocks}, "big ice cube": {Service: flavor.Rocks}, "block ice": {Service: flavor.Rocks},
	"ice block": {Service: flavor.Rocks}, "large format": {Service: flavor.Rocks}, "large format ice": {Service: flavor.Rocks}, "clear cube": {Service: flavor.Rocks},
	"clear ice": {Service: flavor.Rocks, weak: true}, "sphere": {Service: flavor.Rocks}, "ice sphere": {Service: flavor.Rocks}, "ice ball": {Service: flavor.Rocks},
	"spear": {Service: flavor.Long}, "spears": {Service: flavor.Long}, "ice spears": {Service: flavor.Long}, "ice spear": {Service: flavor.Long}, "collins spear": {Service: flavor.Long},
	"crushed ice": {Service: flavor.Crushed}, "cracked": {Service: flavor.Crushed, weak: true}, "pebble": {Service: flavor.Crushed}, "pebble ice": {Service: flavor.Crushed}, "pebbled ice": {Service: flavor.Crushed},
	"nugget ice": {Service: flavor.Crushed}, "cracked ice": {Service: flavor.Crushed}, "shaved ice": {Service: flavor.Crushed}, "fine ice": {Service: flavor.Crushed}, "snow ice": {Service: flavor.Crushed},
	"hielo frappe": {Service: flavor.Crushed},
	"knust is":     {Service: flavor.Crushed}, "krossad is": {Service: flavor.Crushed},
	"ghiaccio grosso": {Service: flavor.Rocks}, "cubetto grande": {Service: flavor.Rocks}, "hielo grande": {Service: flavor.Rocks}, "bloque de hielo": {Service: flavor.Rocks}, "groot blok ijs": {Service: flavor.Rocks}, "blok ijs": {Service: flavor.Rocks}, "ijsblok": {Service: flavor.Rocks}, "eisblock": {Service: flavor.Rocks}, "großer eiswürfel": {Service: flavor.Rocks}, "un glaçon": {Service: flavor.Rocks},
	"auf eiswürfel": {Service: flavor.Rocks}, "auf eiswürfeln": {Service: flavor.Rocks}, "eiswürfel": {weak: true}, "ijsblokjes": {weak: true}, "op ijs": {Service: flavor.Rocks, weak: true}, "met ijs": {weak: true}, "sobre hielo": {Service: flavor.Rocks, weak: true}, "su ghiaccio": {Service: flavor.Rocks, weak: true}, "con ghiaccio": {Service: flavor.Rocks, weak: true}, "avec glaçons": {Service: flavor.Rocks, weak: true}, "sur glaçons": {Service: flavor.Rocks, weak: true}, "cubetti": {Service: flavor.Rocks, weak: true}, "cubitos": {Service: flavor.Rocks, weak: true},
	"eis": {weak: true}, "ghiaccio": {weak: true}, "hielo": {weak: true}, "glaçons": {weak: true}, "ijs": {weak: true}, "gelo": {weak: true}, "more ice": {weak: true}, "no ice": {weak: true}, "none ice": {weak: true}, "without ice": {weak: true}, "plenty of ice": {weak: true}, "loads of ice": {weak: true}, "much ice": {weak: true}, "lots of ice": {weak: true},
}

// icePieceWords are what ice comes in, in so many words; common practice.
var icePieceWords = strings.Fields(`cube cubes lump lumps piece pieces chunk chunks hunk rock block knob ball sphere`)

// glassTerms name glasses: what each is called here, and the service that it
// suggests, if any.
var glassTerms = []struct {
	glass   string
	service flavor.Service
	words   []string
}{
	{"coupe", flavor.Up, []string{"coppa", "schale", "cocktailschale", "coupeglas", "verre à cocktail", "copa de cóctel", "coppetta", "coupe", "coupes", "coupette", "champagne coupe", "champagne saucer", "coupe glass", "cpe", "cp", "coup"}},
	{"Nick-and-Nora glass", flavor.Up, []string{"nick and nora", "nick & nora", "nick-and-nora", "n&n", "n & n", "nick nora", "nick n nora", "nick 'n' nora", "nn", "nick+nora", "nick & nora glass", "nick and nora glass", "nick-and-nora glass", "nnn"}},
	{"cocktail glass", flavor.Up, []string{"cocktailglas", "martiniglas", "copa martini", "copa coctelera", "bicchiere da cocktail", "cocktail glass", "c-glass", "c glass", "ckt glass", "cktl glass", "martini glass", "martini", "v-shaped glass", "stemmed cocktail glass"}},
	{"flute", flavor.Up, []string{"sektglas", "sektflöte", "sekt glas", "copa flauta", "flauta", "flûte", "flute", "champagne flute", "prosecco flute", "champagne glass", "prosecco glass", "flute glass"}},
	{"cocktail glass", flavor.Up, []string{"stem glass", "small stem"}},
	{"sour glass", flavor.Up, []string{"sour glas", "sourglas", "sour glass", "delmonico", "delmonico glass"}},
	{"cordial glass", flavor.Up, []string{"cordial glass", "pony glass", "pousse-café glass", "pousse cafe glass", "sherry glass", "copita", "port glass"}},
	{"shot glass", flavor.Up, []string{"shot glass"}},
	{"rocks glass", flavor.Rocks, []string{"verre old fashioned", "vaso bajo", "vaso corto", "tumbler basso", "rocksglas", "tumblerglas", "whiskyglas", "verre bas", "verre à whisky", "rocks glass", "lowball", "lowball glass", "low glass", "short", "becher", "jar", "jam jar", "mason jar", "tumbler", "old fashioned glass", "old-fashioned glass", "old fashioned", "old-fashioned", "of glass",
		"whisky glass", "whiskey glass", "single rocks", "single rocks glass", "short glass"}},
	{"double rocks glass", flavor.Rocks, []string{"double rocks", "double rocks glass", "dbl rocks", "dof", "double old fashioned", "double old-fashioned", "double old fashioned glass", "double old-fashioned glass", "dbl old fashioned", "dbl old-fashioned", "dof glass", "dbl of", "dbl of glass", "double of", "dbl old fash", "old fash", "dbl oldfashioned"}},
	{"highball glass", flavor.Long, []string{"vaso alto", "vaso largo", "tumbler alto", "longdrinkglas", "longdrink glas", "longdrink", "long drink", "verre highball", "verre haut", "verre tumbler", "bicchiere alto", "highballglas", "highball", "highball glass", "hiball", "hi ball", "hi-ball", "tall glass", "long glass", "hi-ball glass"}},
	{"collins glass", flavor.Long, []string{"collins", "collins glass", "sling glass", "zombie glass", "slim jim"}},
	{"pint glass", flavor.Long, []string{"pint glass", "pilsner", "pilsner glass", "beer glass", "footed pilsner", "pint"}},
	{"copper mug", flavor.Long, []string{"kupferbecher", "tazza di rame", "jarro de cobre", "kobberkrus", "kopparmugg", "copper mug", "copper cup", "mule mug", "mule cup"}},
	{"fizz glass", flavor.Long, []string{"fizz glass"}},
	{"wine glass", "", []string{"weinglas", "verre à vin", "copa de vino", "calice", "vinglas", "wijnglas", "wine glass", "white wine glass", "red wine glass", "wine goblet", "goblet", "stemmed glass", "spritz glass"}},
	{"balloon glass", "", []string{"copa", "balloon", "balloon glass", "copa glass", "gin glass", "gin balloon", "brandy balloon"}},
	{"snifter", "", []string{"snifter", "brandy snifter", "brandy glass", "tulip", "tulip glass"}},
	{"hurricane glass", "", []string{"hurricane", "hurricane glass", "poco grande"}},
	{"tiki mug", flavor.Crushed, []string{"tiki mug", "tiki", "tiki glass", "coconut shell", "scorpion bowl"}},
	{"julep cup", flavor.Crushed, []string{"julep cup", "julep tin", "julep", "metal cup", "silver cup", "tin cup"}},
	{"mug", flavor.Hot, []string{"mug", "toddy glass", "toddy mug", "irish coffee glass", "irish coffee mug", "coffee glass", "coffee cup", "coffee mug", "teacup", "tea cup", "heatproof glass", "heat-proof glass", "glass mug"}},
	{"punch cup", "", []string{"punch cup", "punch glass"}},
}

// glassSizes stand before a glass and do not change what it is.
var glassSizes = []string{"big", "large", "small", "huge", "oversized"}

// Fillers are words of such a line that change nothing.
var Fillers = token.Words(`do we z ze na potem następnie dobrze mocno mocny krótko szkle szklance szklanki szklanka szklankę kieliszka kieliszku kieliszek schłodzonego schłodzonej schłodzony podawać podaj podajemy serwować serwuj wszystko składniki przez pełna pełny nad se ve pak poté dobře krátce sklenice sklenici sklenka sklenky podávat podáváme podávejte vychlazené vychlazená vše všechno přes и в во на с со к затем потом хорошо охлажденный охлаждённый охлажденном охлаждённом подавать подать подаем бокал бокала бокале стакан стакане все всё ингредиенты через налить перелить вылить και σε με στο στη στον το τη τον την ποτήρι ποτήρια σερβίρουμε σερβίρω σερβίρεται παγωμένο παγωμένη κρύο όλα υλικά μετά καλά til i ned over op gerne afkølet kølet kjølt iskaldt kall serveres serveras server glas glass glaset glasset koppen alt allt alles alle zutaten gut kräftig kurz lang servieren in den die das eisgekühltes gekühltes gekühlte tout tous ingrédients bien fort servir servez serve servire tutti gli ingredienti tutto bene todo todos ingredientes muy bien todas tudo os muito bem servir gekoelde gekoeld glas serveren ingrediënten goed lots loads plenty ins verser versez versare verter dans une vorgekühlt vorgekühlte vorgekühltes vaso bicchiere verre copo glas im einem einen dem het el nel dans au poi puis dann luego depois com avec auf sur con su på mit and then with over into in on a an the of at to glass chilled cold serve served serving method service strain strained straining strainer shaker tin tins
mixing hard well gently v very good briefly quickly vigorously lightly down for all ingredients everything soft softly using from off top up it all add pour drink cocktail prechilled pre-chilled frosted frozen-glass first two three four rest others it really super proper properly`)

// plainFillers say nothing that a card should keep; other fillers make a step.
var plainFillers = vocabulary.Words(`and then with over into in on a an the of at to glass serve served serving method service strain strained with shaker ice tin`)

// StepVerbs begin a line that tells what to do.
var StepVerbs = token.Words(`shake stir strain build muddle blend throw swizzle whip whizz whiz whirl liquidise liquidize blitz roll churn pour serve served garnish add top fill
express discard squeeze float rinse rim combine place put mix measure chill heat warmed steam bring simmer dissolve press slap clap spank dust grate drop lay layer flame burn
finish lengthen swirl coat empty discard remove let leave rest wait taste adjust transfer decant batch freeze refrigerate infuse keep hold turn use using make makes serves repeat
shaken stirred built blended thrown swizzled strained poured whipped rolled muddled in into over without then on prepare wash wipe spray mist spritz cut slice peel push give drink enjoy
frappé frappe frappeer bash crush bruise tear smash torch flash dump swish hold`)

// denials stand before what is not to be done; "too" before what was too much.
var denials = []string{"no", "not", "do not", "don't", "dont", "never", "too"}

// manyPhrases is about how many phrases there are, but for those of ice with a word before it.
const manyPhrases = 2200

// terms finds phrases by their first word, which is not clipped.
var terms = vocabulary.TableOf(termsByFirst())

// termsByFirst returns every phrase by its first word.
func termsByFirst() map[string][]phrase {
	all := &phrases{make(map[string]*term, manyPhrases), map[term]*term{}}
	put := all.put
	for method, words := range methodTerms {
		for _, w := range words {
			put(w, term{Method: method})
		}
	}
	for service, words := range serviceTerms {
		for _, w := range words {
			put(w, term{Service: service})
		}
	}
	for w, t := range iceTerms {
		t.Ice = true
		put(w, t)
	}
	for _, piece := range icePieceWords { // "two lumps of ice"
		put(piece+" of ice", term{Service: flavor.Rocks, weak: true, Ice: true})
	}
	for w, t := range nearMethods {
		put(w, t)
	}
	for _, no := range denials { // "do not shake"
		for _, words := range methodTerms {
			for _, w := range words {
				if w != "frozen" {
					put(no+" "+w, term{keep: true})
				}
			}
		}
		put(no+" hot", term{keep: true})
		put(no+" boil", term{keep: true})
		put(no+" boiled", term{keep: true})
		put(no+" boiling", term{keep: true})
		for _, w := range heatings {
			put(no+" "+strings.TrimSpace(w), term{keep: true})
		}
	}
	for _, w := range heatings {
		put(strings.TrimSpace(w), term{Service: flavor.Hot, keep: true})
	}
	for _, w := range heatedThings {
		for _, heated := range []string{"heat", "warm", "hot", "steam", "preheat", "warmed", "heated", "preheated"} {
			for _, the := range []string{"", "the ", "a ", "your "} {
				put(heated+" "+the+w, term{Service: flavor.Hot, Glass: "mug", weak: true, keep: true})
			}
		}
	}
	for _, into := range []string{"in", "into", "in a", "into a"} { // "neat in a chilled rocks" is a glass
		for _, cold := range []string{"", "chilled ", "cold ", "frozen ", "frosted "} {
			put(into+" "+cold+"rocks", term{Glass: "rocks glass", Service: flavor.Rocks, weak: true})
		}
	}
	for _, g := range glassTerms {
		for _, w := range g.words {
			t := term{Glass: g.glass, Service: g.service, weak: true}
			put(w, t)
			put("frozen "+w, t) // cold from the freezer, and no frozen drink
			for _, size := range glassSizes {
				put(size+" "+w, t)
			}
		}
	}
	inTongues(put)
	out := all.byFirst()
	addIce(out)
	return out
}

// addIce adds what a word of [foreignWith] says before ice.
func addIce(to map[string][]phrase) {
	ice := &phrases{map[string]*term{}, map[term]*term{}}
	iceInTongues(ice.put)
	list := make([]phrase, 0, len(ice.known))
	for words, t := range ice.known {
		list = append(list, phrase{words, wordsIn(words), t})
	}
	slices.SortFunc(list, phrase.compare)
	for _, with := range foreignWith {
		to[with] = followedBy(to[with], list)
	}
}

// TermAt returns the longest phrase at the start of words and how many words it
// takes, 0 if there is none. A hyphen is a space, so "dry-shake" is two words. Any
// word may be clipped; a phrase that is written out comes before one that is not.
func TermAt(words []string) (term, int) {
	best := longestOf(terms.Get(words[0]), words[1:])
	if full := clipped.Get(words[0]); full != "" {
		if other := longestOf(terms.Get(full), words[1:]); best == nil || other != nil && other.words > best.words {
			best = other
		}
	}
	if best == nil {
		return term{}, 0
	}
	return *best.term, 1 + best.words
}

// longestOf returns the longest phrase of a list that goes on as words do, nil if none does. Of
// two as long it is the one that is written out.
func longestOf(list []phrase, words []string) *phrase {
	var best *phrase
	for i := range list {
		p := &list[i]
		if best != nil && p.words < best.words {
			break
		}
		if p.words > len(words) {
			continue
		}
		whole, ok := p.follows(words)
		if whole {
			return p
		}
		if ok && best == nil {
			best = p
		}
	}
	return best
}

// hyphens parts a word at its hyphens, unless a phrase is written with them.
func hyphens(dst []string, word string) []string {
	if !strings.Contains(word, "-") || Known(word) {
		return append(dst, word)
	}
	return append(dst, strings.Split(word, "-")...)
}

// apart adds the words of one that is written as one.
func apart(dst []string, word string) []string {
	if said := inJapanese(word); said != nil {
		return append(dst, said...)
	}
	if at := gluedAt(word); at > 0 {
		return append(dst, word[:at], word[at:])
	}
	return hyphens(dst, word)
}

// leastGlued is the fewest letters of each of two words that are written as one.
const leastGlued = 3

// gluedAt is where two words of making or serving meet that are written as one, "bigrock",
// "crushedice"; 0 for any other word.
func gluedAt(word string) int {
	if len(word) < 2*leastGlued || Known(word) || StepVerbs[word] || Fillers[word] {
		return 0
	}
	for at := leastGlued; at <= len(word)-leastGlued; at++ {
		if _, n := TermAt([]string{word[:at], word[at:]}); n > 1 {
			return at
		}
	}
	return 0
}

// Starts reports whether tokens start with what is said of making or serving.
func Starts(toks []token.Token) bool {
	words := make([]string, 0, LongestTerm)
	for _, t := range toks[:min(len(toks), LongestTerm)] {
		words = append(words, t.Text)
	}
	_, n := TermAt(words)
	return n > 0
}

// StartsMethod reports whether the first token is a word for a method.
func StartsMethod(toks []token.Token) bool {
	t, n := TermAt([]string{toks[0].Text})
	return n > 0 && t.Method != ""
}

// Known reports whether a word begins a phrase that says something of making or
// serving.
func Known(word string) bool {
	if len(terms.Get(word)) > 0 {
		return true
	}
	full := clipped.Get(word)
	return full != "" && len(terms.Get(full)) > 0
}

// OtherMeasures are measures that are not units of the bar here. After a number
// they are a fault, not part of a name.
var OtherMeasures = token.Words(`cup cups pint pints gallon gallons lb lbs pound pounds kg mg
measure measures glug glugs slug slugs lug lugs thimble thimbles finger fingers bottle bottles can cans handful handfuls
btl btls bunch bunches glass glasses dram drams knob knobs dollop dollops batch inch inches cm thumb`)

// downNote is said of what is served down, where nothing says that there is ice.
const downNote = "served down is taken as strained into a rocks glass without ice"
