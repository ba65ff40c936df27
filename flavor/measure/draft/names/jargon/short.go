package jargon

import (
	"cmp"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/token"
)

// kinds are names of a whole kind that differ so much in what they bring that it is
// said which one is taken. Agave is bottled thick and poured thinned.
var kinds = map[string]bool{"sparkling wine": true, "orange liqueur": true, "rum": true, "tequila": true, "port": true, "dry sherry": true, "agave syrup": true, "condensed milk": true, "amaro": true}

// sweetened are names that bars use for the sweetened form too, which is meant
// where nothing else sweetens the drink.
var sweetened = map[string]string{"coco cream": "cream of coconut", "coconut cream": "cream of coconut"}

// shorthand is what bars write for a name.
var shorthand = keyed(map[string]string{
	"v": "vodka", "g": "gin", "teq bl": "blanco tequila", "dbl cream": "double cream", "verm d": "dry vermouth", "verm s": "sweet vermouth", "dry cur": "dry curaçao", "d cur": "dry curaçao", "demi": "demerara syrup", "wr": "white rum", "blanc tequila": "blanco tequila", "or bitters": "orange bitters", "or bit": "orange bitters", "or juice": "orange juice", "or aperitif": "light orange bitter aperitif", "or liqueur": "triple sec", "or cur": "orange curaçao", "trip": "triple sec", "tq": "tequila", "pros": "prosecco", "swv": "sweet vermouth", "drv": "dry vermouth", "swt v": "sweet vermouth", "tsec": "triple sec", "t sec": "triple sec", "trip sec": "triple sec", "trpl sec": "triple sec", "eggwht": "egg white", "egg wh": "egg white", "gbeer": "ginger beer", "gale": "ginger ale", "cog": "cognac", "kräuterbitter": "Central European herb bitter", "agua mineral": "soda water", "salsa picante": "hot pepper sauce", "salsa": "hot pepper sauce", "amer": "bitter orange aperitif, French style", "anejo": "añejo tequila", "siphon": "soda water", "syphon": "soda water", "soda siphon": "soda water", "red bell pepper juice": "sweet pepper juice", "bell pepper juice": "sweet pepper juice", "brut sparkling": "brut champagne", "brut bubbles": "brut champagne", "lem": "lemon juice", "torino": "sweet vermouth", "torino vermouth": "sweet vermouth", "italian vermouth": "sweet vermouth", "turin vermouth": "sweet vermouth", "french vermouth": "dry vermouth", "worch": "worcestershire sauce", "woo": "worcestershire sauce", "mara": "maraschino liqueur", "cur": "orange curaçao",
	"rhum": "rhum agricole", "cask bourbon": "cask-strength bourbon", "cs bourbon": "cask-strength bourbon", "barrel proof bourbon": "cask-strength bourbon", "s p": "salt",
	"rum agricole": "rhum agricole", "rum agricole blanc": "rhum agricole blanc", "rum agricole vieux": "rhum agricole vieux",
	"brut": "brut champagne", "brine": "olive brine", "yellow": "yellow herbal liqueur", "bianco tequila": "blanco tequila", "dry ginger": "ginger ale", "ab": "aromatic bitters", "ang": "aromatic bitters",
	"ango": "aromatic bitters", "aro": "aromatic bitters", "arom": "aromatic bitters", "aromatic": "aromatic bitters", "ob": "orange bitters", "creole": "creole bitters",
	"choc": "chocolate", "mole": "mole bitters",
	"ry": "rye whiskey", "ts": "triple sec", "cream o coconut": "cream of coconut", "cream o coco": "cream of coconut", "creme of coconut": "cream of coconut", "crème of coconut": "cream of coconut", "half n half": "half and half", "hlf n hlf": "half and half", "ew": "egg white", "whites": "egg white", "eggwhite": "egg white", "egg wht": "egg white", "faba": "aquafaba", "aqua faba": "aquafaba",
	"green herbal": "green herbal liqueur", "yellow herbal": "yellow herbal liqueur", "mexican lager": "pale lager",
	"abs": "absinthe", "absynthe": "absinthe", "ldg": "London dry gin", "london": "London dry gin", "vod": "vodka", "bourb": "bourbon", "bbn": "bourbon",
	"blanco": "blanco tequila", "repo": "reposado tequila", "mez": "mezcal", "mezc": "mezcal", "rosso": "sweet vermouth", "sweet v": "sweet vermouth", "dry v": "dry vermouth",
	"sv": "sweet vermouth", "dv": "dry vermouth", "sweet": "sweet vermouth", "dry": "dry vermouth", "jamaican": "Jamaican rum", "agricole": "rhum agricole", "overproof": "overproof rum", "op": "overproof rum",
	"white jamaican overproof": "overproof white Jamaican rum", "151": "151 rum", "islay": "Islay scotch", "malt": "single malt whisky", "light": "light rum", "dark": "dark rum",
	"gfj": "grapefruit juice", "gf": "grapefruit juice", "gf juice": "grapefruit juice", "pj": "pineapple juice", "pine": "pineapple juice", "cran": "cranberry juice",
	"tom": "tomato juice", "pom": "pomegranate juice", "pomm": "pomegranate juice", "lemon j": "lemon juice", "lime j": "lime juice", "aj": "apple juice", "cj": "cranberry juice",
	"ss": "simple syrup", "simp": "simple syrup", "dem": "demerara syrup", "rich dem": "rich demerara syrup", "gum": "gum syrup", "gren": "grenadine",
	"triple": "triple sec", "marasch": "maraschino liqueur", "maras": "maraschino liqueur", "mure": "crème de mûre", "peche": "crème de pêche", "violette": "crème de violette",
	"menthe": "crème de menthe", "white cacao": "white crème de cacao", "dark cacao": "dark crème de cacao", "brown cacao": "dark crème de cacao", "pamplemousse": "pamplemousse liqueur", "banane": "banana liqueur",
	"manz": "manzanilla sherry", "fizz": "sparkling wine", "bubble": "sparkling wine", "bubbly": "sparkling wine", "sparkling": "sparkling wine", "champers": "champagne", "champ": "champagne",
	"club": "soda water", "gb": "ginger beer", "ga": "ginger ale", "lemonade": "sparkling lemonade", "h2o": "water", "half half": "half and half", "h h": "half and half",
	"coco cream": "coconut cream", "cream of coco": "cream of coconut", "shot espresso": "espresso", "cold brew": "cold brew", "worc": "worcestershire sauce",
	"wooster": "worcestershire sauce", "woos": "worcestershire sauce", "saline sol": "saline", "salt sol": "saline", "sol saline": "saline", "dram": "allspice dram", "pimento": "pimento dram",
	"oj": "orange juice", "o j": "orange juice", "s s": "simple syrup", "e w": "egg white", "vdk": "vodka", "hc": "heavy cream", "orange aperitif": "light orange bitter aperitif", "elderflower liq": "elderflower liqueur", "sloe": "sloe gin", "punsch": "Swedish punsch", "voddy": "vodka", "oj bitters": "orange bitters", "gfruit": "grapefruit juice", "grapefruit j": "grapefruit juice", "kina": "red quinquina", "lite rum": "light rum", "refresco de toronja": "grapefruit soda", "whole": "whole egg", "ofw": "orange flower water", "ofb": "orange flower water", "coco water": "coconut water", "orange b": "orange bitters", "ango b": "aromatic bitters", "choc b": "chocolate bitters", "egg w": "egg white", "egg y": "egg yolk", "rojo": "sweet vermouth", "caraway liqueur": "kümmel", "bianco": "bianco vermouth", "sug": "simple syrup", "sugs": "simple syrup", "champs": "champagne", "worcester": "worcestershire sauce", "worcestershire": "worcestershire sauce", "s vermouth": "sweet vermouth", "d vermouth": "dry vermouth", "s verm": "sweet vermouth",
	"d verm": "dry vermouth", "hot sauce": "hot pepper sauce", "wcs": "worcestershire sauce", "soda h2o": "soda water", "curacao": "orange curaçao", "apricot liq": "apricot liqueur", "banana liq": "banana liqueur", "coffee liq": "coffee liqueur", "herb liq": "herbal liqueur",
})

// turns are what a word and the one that says which of it stand for; common practice.
var turns = keyed(map[string]string{"orange aperitivo": "light orange bitter aperitif", "orange aperitif": "light orange bitter aperitif", "light aperitivo": "light orange bitter aperitif", "red aperitivo": "red bitter aperitif", "red aperitif": "red bitter aperitif", "bitter aperitivo": "red bitter aperitif"})

// keyed returns a table by the keys of its words.
func keyed(table map[string]string) map[string]string {
	out := make(map[string]string, len(table))
	for written, name := range table {
		out[flavor.NormaliseName(written)] = name
	}
	return out
}

// fullWords are what bars write for a word of a name.
var fullWords = map[string]string{
	"mex": "mexican", "jap": "japanese", "gft": "grapefruit", "gpft": "grapefruit", "tq": "tequila", "ag": "agave", "apl": "apple", "sim": "simple", "jal": "jalapeño", "apertivo": "aperitif", "aperativo": "aperitif", "apperitivo": "aperitif", "aperetivo": "aperitif", "pr": "puerto rican", "gn": "gin", "crm": "cream", "vodk": "vodka", "jce": "juice", "jc": "juice", "swt": "sweet", "brb": "bourbon", "cof": "coffee", "coffe": "coffee", "cofee": "coffee", "tonc": "tonic", "sod": "soda", "wte": "white", "puré": "purée", "pur": "puree", "mlk": "milk", "ric": "rich", "cord": "cordial", "grena": "grenadine", "vrm": "vermouth", "vmth": "vermouth", "vmt": "vermouth", "liqu": "liqueur", "wsky": "whisky", "whsky": "whisky", "whky": "whisky",
	"verm": "vermouth", "vm": "vermouth", "wtr": "water", "syrp": "syrup", "liquor": "liqueur", "ang": "aromatic", "juce": "juice", "juise": "juice", "sirup": "syrup", "syrop": "syrup", "agve": "agave", "swet": "sweet", "lq": "liqueur", "bit": "bitters", "soln": "solution", "lite": "light", "gfruit": "grapefruit", "sek": "sec", "vermuth": "vermouth", "med": "medium", "sw": "sweet", "viol": "violette", "aperitivo": "aperitif", "vermth": "vermouth", "j": "juice", "jus": "juice", "syr": "syrup", "syp": "syrup", "srp": "syrup", "sy": "syrup",
	"liq": "liqueur", "liqr": "liqueur", "btr": "bitters", "bttr": "bitters", "btt": "bitters", "gren": "grenadine", "cinn": "cinnamon", "cin": "cinnamon",
	"cuke": "cucumber", "dem": "demerara", "pine": "pineapple", "cran": "cranberry", "pom": "pomegranate", "gf": "grapefruit", "grapefrt": "grapefruit", "choc": "chocolate", "coco": "coconut", "van": "vanilla",
	"bourb": "bourbon", "bbn": "bourbon", "teq": "tequila", "repo": "reposado", "rep": "reposado", "mez": "mezcal", "jam": "Jamaican", "op": "overproof", "wht": "white", "wh": "white", "blk": "black", "hvy": "heavy",
	"frsh": "fresh", "org": "orange", "orng": "orange", "lem": "lemon", "lim": "lime", "curac": "curaçao", "marasch": "maraschino", "champ": "champagne", "rasp": "raspberry", "raspb": "raspberry",
	"straw": "strawberry", "strawb": "strawberry", "passion": "passion fruit", "pass": "passion fruit", "ango": "aromatic", "arom": "aromatic", "aro": "aromatic", "vod": "vodka", "whisk": "whiskey",
	"tom": "tomato", "saln": "saline", "sol": "solution", "agv": "agave", "hny": "honey", "gngr": "ginger", "ging": "ginger", "simp": "simple", "smpl": "simple", "spark": "sparkling", "sprk": "sparkling",
	"absnth": "absinthe", "abs": "absinthe", "cuc": "cucumber", "brbn": "bourbon", "vnll": "vanilla", "elder": "elderflower", "elderflwr": "elderflower", "eldrflwr": "elderflower", "prosec": "prosecco", "eldflwr": "elderflower", "yel": "yellow", "ylw": "yellow", "herb": "herbal",
	"razz": "raspberry", "raz": "raspberry", "pash": "passion fruit", "passionfrt": "passion fruit", "peaty": "peated", "gfj": "grapefruit", "menthe": "crème de menthe", "cassis": "crème de cassis",
	"cr": "crème", "crem": "crème", "creme": "crème", "esp": "espresso", "espr": "espresso", "expresso": "espresso", "jama": "Jamaican",
	"bitt": "bitters", "edv": "eau de vie", "grn": "green", "mara": "maraschino", "cog": "cognac", "cur": "curaçao", "worch": "worcestershire", "woo": "worcestershire", "tequ": "tequila", "angos": "aromatic", "lmn": "lemon",
	"lt": "light", "drk": "dark", "dk": "dark", "dryv": "dry vermouth", "ovrprf": "overproof", "bndd": "bonded", "bib": "bonded", "strng": "strong", "coc": "coconut", "cocon": "coconut", "aper": "aperitif", "shry": "sherry", "chry": "cherry", "pch": "peach", "apri": "apricot", "spcd": "spiced", "brdy": "brandy", "brndy": "brandy", "vinagar": "vinegar", "sug": "sugar", "h2o": "water", "lqr": "liqueur", "shr": "sherry", "sh": "sherry", "ldn": "London", "ir": "Irish", "ky": "Kentucky", "irsh": "Irish", "cofe": "coffee", "coff": "coffee", "pinaple": "pineapple", "pineaple": "pineapple", "pinapple": "pineapple", "pinapl": "pineapple", "pnapl": "pineapple", "lon": "London", "lond": "London", "bitr": "bitter", "bittr": "bitter", "bitrs": "bitters", "bittrs": "bitters", "btrs": "bitters", "bttrs": "bitters", "blend": "blended", "bln": "blended", "blkb": "blackberry", "blkbry": "blackberry", "bluebry": "blueberry", "strbry": "strawberry", "strwbry": "strawberry", "cnmn": "cinnamon", "cinmn": "cinnamon", "quinq": "quinquina", "ovrpf": "overproof", "ovpf": "overproof", "yk": "yolk", "ylk": "yolk", "tekila": "tequila", "vrmth": "vermouth", "vrmt": "vermouth", "eldflr": "elderflower", "eldrflr": "elderflower", "prosc": "prosecco", "bubs": "bubbles", "demer": "demerara", "demr": "demerara", "dmr": "demerara", "dmrara": "demerara", "apr": "apricot", "crn": "cranberry", "grpf": "grapefruit", "tmrnd": "tamarind", "hbscs": "hibiscus", "vdk": "vodka", "rd": "red", "rm": "rum", "lm": "lime", "gr": "green", "jpn": "japanese", "orgt": "orgeat", "brr": "beer",
}

// qualities are words of shorthand that say as often how something is.
var qualities = token.Words(`sweet light dark white green yellow sparkling brine pink blanc aromatic london malt triple`)

// flavours are what bars put into a bottle by other names; common practice.
var flavours = keyed(map[string]string{"jalapeño": "fresh chilli", "jalapeno": "fresh chilli", "habanero": "fresh chilli", "serrano": "fresh chilli", "chile": "fresh chilli", "chili": "fresh chilli", "chilli": "fresh chilli", "spicy": "fresh chilli",
	"smoked": "smoke tincture", "tea": "black tea", "english breakfast": "black tea", "darjeeling": "black tea", "cacao": "cacao nib", "cocoa": "cacao nib", "toasted coconut": "coconut syrup", "coconut": "coconut syrup", "rose": "dried rose petal",
	"oak": "oak tincture", "banana": "banana purée", "kiwi": "kiwi purée", "watermelon": "watermelon juice", "tomato": "tomato water", "chai": "spiced chai", "sichuan": "black pepper", "szechuan": "black pepper", "peppercorn": "black pepper", "pepper": "black pepper",
	"cherry": "fresh cherry", "citrus": "lemon peel", "horseradish": "fresh horseradish"})

// Lengthen writes the words of a name at full length, where bars shorten them.
func Lengthen(key string) (string, bool) {
	short := false
	for w := range strings.FieldsSeq(key) {
		short = short || fullWords[w] != ""
	}
	if !short {
		return key, false
	}
	words := strings.Fields(key)
	changed := false
	for i, w := range words {
		full, ok := fullWords[w]
		if !ok || full == w || i > 0 && words[i-1] == "de" {
			continue
		}
		if _, end, two := strings.Cut(full, " "); two && i+1 < len(words) && words[i+1] == end { // "passion fruit"
			continue
		}
		if full == "crème" && i+1 < len(words) && words[i+1] != "de" && words[i+1] != "d" { // "cr violette"
			full = "crème de"
		}
		words[i], changed = full, true
	}
	return strings.Join(words, " "), changed
}

// SweetForm is the sweetened form that a name may mean, "coconut cream" that from the
// tin; empty if there is none.
func SweetForm(name string) string {
	if plain(name) {
		return sweetened[flavor.NormaliseName(name)]
	}
	form := ""
	for _, n := range Strip(name) {
		form = cmp.Or(form, sweetened[flavor.NormaliseName(n)])
	}
	return form
}

// Short is the name that bars shorten to a word; empty if it is no short form.
func Short(key string) string { return shorthand[key] }

// Turned is what a word and the one that says which of it stand for; empty if they are none of the table.
func Turned(key string) string { return turns[key] }

// Kind reports whether a name is of a whole kind, so that it is said which of it is taken.
func Kind(key string) bool { return kinds[key] }

// Sweetened is the sweetened form that a key names too; empty if there is none.
func Sweetened(key string) string { return sweetened[key] }

// Quality reports whether a short form says as often how something is.
func Quality(word string) bool { return qualities[word] }

// FullWord is a word of a name at full length; empty if it is no short form.
func FullWord(word string) string { return fullWords[word] }

// Flavour is the ingredient that brings a flavour by another name; empty if there is none.
func Flavour(key string) string { return flavours[key] }
