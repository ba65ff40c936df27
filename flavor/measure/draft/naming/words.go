package naming

import (
	"cmp"
	"counterpour/flavor/measure/draft/tongue"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
	"counterpour/flavor/measure/pattern"
	"counterpour/flavor/measure/vocabulary"
)

// The names of this file are keys as [flavor.NormaliseName] makes them, and what
// they stand for is a name that the finder is asked for: common practice.

// byVolume is what a word means where it is poured by volume and what bars keep
// of it is pressed, or cut with water.
var byVolume = map[string]string{
	"lime": "lime juice", "lemon": "lemon juice", "orange": "orange juice", "grapefruit": "grapefruit juice",
	"pineapple": "pineapple juice", "cranberry": "cranberry juice", "tomato": "tomato juice", "apple": "apple juice",
	"blood orange": "blood orange juice", "pomegranate": "pomegranate juice", "cucumber": "cucumber juice", "watermelon": "watermelon juice",
	"carrot": "carrot juice", "celery": "celery juice", "pear": "pear juice", "grape": "white grape juice", "yuzu": "yuzu juice",
	"simple": "simple syrup", "rich": "rich simple syrup", "rich simple": "rich simple syrup", "2 1": "rich simple syrup", "1 1": "simple syrup",
	"simple 2 1": "rich simple syrup", "2 1 simple": "rich simple syrup", "simple 1 1": "simple syrup", "1 1 simple": "simple syrup",
	"demerara": "demerara syrup", "rich demerara": "rich demerara syrup", "demerara 2 1": "rich demerara syrup", "2 1 demerara": "rich demerara syrup",
	"honey": "honey syrup", "honey 2 1": "honey syrup 2:1", "2 1 honey": "honey syrup 2:1", "honey 3 1": "honey syrup 3:1", "3 1 honey": "honey syrup 3:1",
	"honey 1 1": "honey syrup 1:1", "1 1 honey": "honey syrup 1:1", "rich honey": "rich honey syrup",
	"agave": "agave syrup", "agave 1 1": "agave syrup 1:1", "1 1 agave": "agave syrup 1:1", "agave 2 1": "agave syrup 2:1", "2 1 agave": "agave syrup 2:1",
	"ginger": "ginger syrup", "cinnamon": "cinnamon syrup", "vanilla": "vanilla syrup", "cardamom": "cardamom syrup", "clove": "clove syrup",
	"star anise": "star anise syrup", "lemongrass": "lemongrass syrup", "saffron": "saffron syrup", "cane": "cane syrup", "sugar cane": "cane syrup",
	"brown sugar": "brown sugar syrup", "muscovado": "muscovado syrup", "raw sugar": "demerara syrup", "turbinado": "demerara syrup", "black pepper": "black pepper syrup",
	"sugar syrup 2 1": "rich simple syrup", "2 1 sugar syrup": "rich simple syrup", "simple syrup 2 1": "rich simple syrup", "2 1 simple syrup": "rich simple syrup",
	"sugar syrup 1 1": "simple syrup", "1 1 sugar syrup": "simple syrup", "2 1 syrup": "rich simple syrup", "1 1 syrup": "simple syrup",
	"rich simple 2 1": "rich simple syrup", "2 1 rich simple": "rich simple syrup", "rich demerara 2 1": "rich demerara syrup", "2 1 rich demerara": "rich demerara syrup",
	"rich sugar": "rich simple syrup", "cacao": "crème de cacao", "syrup": "simple syrup", "gomme": "gum syrup", "sugar": "simple syrup", "sugar 1 1": "simple syrup", "1 1 sugar": "simple syrup", "sugar 2 1": "rich simple syrup", "2 1 sugar": "rich simple syrup",
}

// spooned are words of byVolume that mean the thing itself by the spoon.
var spooned = map[string]string{"honey": "honey", "agave": "agave nectar", "raw sugar": "demerara sugar", "brown sugar": "brown sugar", "muscovado": "muscovado sugar", "sugar": "white sugar",
	"turbinado": "demerara sugar", "salt": "salt", "black pepper": "black pepper", "cinnamon": "ground cinnamon"}

// byDash is what a word means by the dash or the drop, where bitters are what
// bars dash.
var byDash = map[string]string{
	"orange": "orange bitters", "grapefruit": "grapefruit bitters", "peach": "peach bitters", "celery": "celery bitters", "chocolate": "chocolate bitters",
	"cardamom": "cardamom bitters", "cherry": "cherry bitters", "rhubarb": "rhubarb bitters", "plum": "plum bitters", "walnut": "walnut bitters",
	"black walnut": "black walnut bitters", "lavender": "lavender bitters", "aromatic": "aromatic bitters", "creole": "creole bitters", "mole": "mole bitters",
	"tiki": "tiki bitters", "coffee": "coffee bitters", "cinnamon": "cinnamon bitters", "ginger": "ginger bitters", "allspice": "allspice bitters",
	"vanilla": "vanilla bitters", "mint": "mint bitters", "old fashioned": "old fashioned bitters", "whiskey barrel": "whiskey barrel bitters", "fig": "fig bitters",
	"apple": "apple bitters", "chilli": "chilli bitters", "chili": "chilli bitters", "saffron": "saffron bitters", "smoke": "smoke bitters", "hop": "hop bitters",
	"juniper": "juniper bitters", "foamer": "quillaja foamer", "foaming": "quillaja foamer", "umami": "umami bitters", "chamomile": "chamomile bitters", "yuzu": "yuzu bitters", "bergamot": "bergamot bitters", "pecan": "pecan bitters",
	"maple": "maple bitters", "anise": "anise bitters", "gentian": "gentian bitters", "clove": "clove bitters", "lemongrass": "lemongrass bitters",
	"black pepper": "black pepper", "nutmeg": "nutmeg", "salt": "salt", "celery salt": "celery salt", "cayenne": "cayenne",
	"bitter": "aromatic bitters", "sal": "saline", "soy": "soy sauce", "rose": "rose water", "orange flower": "orange flower water", "orange blossom": "orange flower water", "rosewater": "rose water",
}

// byDrop is what a word means by the drop alone.
var byDrop = map[string]string{"salt": "saline", "rose": "rose water", "vanilla": "vanilla extract"}

// askVolume are words that mean several things by volume, and askDash by the
// dash: nobody can tell which.
var (
	askVolume = map[string][]string{
		"herbal liqueur": {"green herbal liqueur", "yellow herbal liqueur", "Central European herb bitter"}, "herbal": {"green herbal liqueur", "yellow herbal liqueur", "Central European herb bitter", "savoury gin"},
		"vermouth": {"sweet vermouth", "dry vermouth", "bianco vermouth"}, "elderflower": {"elderflower liqueur", "elderflower cordial", "elderflower syrup"},
		"passion fruit": {"passion fruit syrup", "passion fruit juice", "passion fruit puree"}, "passionfruit": {"passion fruit syrup", "passion fruit juice", "passion fruit puree"},
		"passion": {"passion fruit syrup", "passion fruit juice", "passion fruit puree"}, "raspberry": {"raspberry syrup", "raspberry puree", "raspberry liqueur"},
		"strawberry": {"strawberry syrup", "strawberry puree", "strawberry liqueur"}, "blackberry": {"blackberry syrup", "blackberry puree", "crème de mûre"},
		"peach": {"peach liqueur", "peach puree", "peach syrup"}, "mango": {"mango puree", "mango nectar", "mango syrup"}, "apricot": {"apricot liqueur", "apricot spirit", "apricot nectar"},
		"banana": {"banana liqueur", "banana puree", "banana syrup"}, "cherry": {"cherry liqueur", "cherry juice", "cherry syrup"}, "coconut": {"cream of coconut", "coconut milk", "coconut rum", "coconut water"},
		"mint": {"mint syrup", "crème de menthe"}, "basil": {"basil syrup", "basil liqueur"},
		"chocolate": {"chocolate liqueur", "crème de cacao", "chocolate syrup"}, "almond": {"amaretto", "orgeat", "almond milk"},
		"violet": {"crème de violette", "violet syrup"}, "lavender": {"lavender syrup", "lavender liqueur"}, "rose": {"rose syrup", "rose liqueur", "rosé wine"},
		"hibiscus": {"hibiscus syrup", "hibiscus tea", "hibiscus liqueur"}, "sherry": {"fino sherry", "amontillado sherry", "oloroso sherry", "cream sherry"},
		"whiskey": {"bourbon", "rye whiskey", "blended Scotch whisky", "Irish whiskey"}, "whisky": {"blended Scotch whisky", "Irish whiskey", "bourbon", "rye whiskey"},
		"wine": {"red wine", "dry white wine"}, "juice": {"lemon juice", "lime juice", "orange juice"}, "citrus": {"lemon juice", "lime juice"}, "lj": {"lemon juice", "lime juice"},
		"cordial": {"lime cordial", "elderflower cordial"}, "bitter": {"red bitter aperitif", "light orange bitter aperitif"},
		"framboise": {"raspberry liqueur", "raspberry spirit"}, "schnapps": {"peach liqueur", "peppermint schnapps"},
		"allspice": {"allspice dram", "allspice syrup"}, "rosemary": {"rosemary syrup"}, "thyme": {"thyme syrup", "thyme liqueur"}, "sage": {"sage syrup"},
		"plum": {"plum liqueur", "plum syrup", "plum puree"}, "fig": {"fig liqueur", "fig syrup", "fig puree"}, "blueberry": {"blueberry syrup", "blueberry puree", "blueberry liqueur"},
		"lychee": {"lychee juice", "lychee liqueur", "lychee syrup"}, "rhubarb": {"rhubarb syrup", "rhubarb juice", "rhubarb liqueur"}, "melon": {"melon liqueur", "melon juice"},
		"guava": {"guava nectar", "guava puree", "guava syrup"}, "kiwi": {"kiwi puree", "kiwi syrup"}, "liqueur": {"triple sec", "maraschino liqueur"},
		"red bitters": {"red bitter aperitif"}, "aperitif": {"red bitter aperitif", "light orange bitter aperitif", "gentian aperitif"}, "aperitivo": {"red bitter aperitif", "light orange bitter aperitif"},
		"foamer": {"egg white", "aquafaba", "quillaja foamer"}, "foam": {"egg white", "aquafaba", "quillaja foamer"}, "chili": {"chilli syrup", "chilli liqueur"}, "chilli": {"chilli syrup", "chilli liqueur"},
		"white": {"egg white", "dry white wine"}, "green": {"green herbal liqueur", "green crème de menthe"}, "apple cider": {"cloudy apple juice", "dry cider"},
		"rakija": {"slivovitz", "grappa"}, "rakia": {"slivovitz", "grappa"}, "lingonberry": {"lingonberry cordial", "lingonberry purée"}, "joven": {"mezcal", "gold tequila"}, "blanc": {"blanc vermouth", "dry white wine"}, "mandarin": {"mandarin juice", "mandarin liqueur"}, "arrack": {"Batavia arrack", "coconut arrack"},
	}
	askDash = map[string][]string{
		"lemon": {"lemon juice", "lemon bitters"}, "lime": {"lime juice", "lime cordial", "lime bitters"}, "cranberry": {"cranberry juice", "cranberry bitters"},
		"pineapple": {"pineapple juice"}, "tomato": {"tomato juice"}, "amer": {"bitter orange aperitif, French style", "aromatic bitters"},
	}
	askTop = map[string][]string{
		"ginger": {"ginger beer", "ginger ale"}, "wine": {"red wine", "prosecco"}, "lemon": {"sparkling lemonade", "bitter lemon"},
		"fruit": {"orange juice", "pineapple juice"}, "juice": {"orange juice", "pineapple juice"},
	}
)

// kinds are names of a whole kind that differ so much in what they bring that it is
// said which one is taken. Agave is bottled thick and poured thinned.
var kinds = map[string]bool{"sparkling wine": true, "orange liqueur": true, "rum": true, "tequila": true, "port": true, "dry sherry": true, "agave syrup": true, "condensed milk": true, "amaro": true}

// sweetened are names that bars use for the sweetened form too, which is meant
// where nothing else sweetens the drink.
var sweetened = map[string]string{"coco cream": "cream of coconut", "coconut cream": "cream of coconut"}

// shorthand is what bars write for a name.
var shorthand = keyed(map[string]string{
	"v": "vodka", "pros": "prosecco", "swv": "sweet vermouth", "drv": "dry vermouth", "swt v": "sweet vermouth", "tsec": "triple sec", "trip sec": "triple sec", "trpl sec": "triple sec", "eggwht": "egg white", "egg wh": "egg white", "gbeer": "ginger beer", "gale": "ginger ale", "cog": "cognac", "kräuterbitter": "Central European herb bitter", "agua mineral": "soda water", "salsa picante": "hot pepper sauce", "salsa": "hot pepper sauce", "amer": "bitter orange aperitif, French style", "anejo": "añejo tequila", "siphon": "soda water", "syphon": "soda water", "soda siphon": "soda water", "red bell pepper juice": "sweet pepper juice", "bell pepper juice": "sweet pepper juice", "brut sparkling": "brut champagne", "brut bubbles": "brut champagne", "lem": "lemon juice", "torino": "sweet vermouth", "torino vermouth": "sweet vermouth", "italian vermouth": "sweet vermouth", "turin vermouth": "sweet vermouth", "french vermouth": "dry vermouth", "worch": "worcestershire sauce", "woo": "worcestershire sauce", "mara": "maraschino liqueur", "cur": "orange curaçao",
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
	"mex": "mexican", "sim": "simple", "jal": "jalapeño", "apertivo": "aperitif", "aperativo": "aperitif", "apperitivo": "aperitif", "aperetivo": "aperitif", "pr": "puerto rican", "gn": "gin", "crm": "cream", "vodk": "vodka", "jce": "juice", "jc": "juice", "swt": "sweet", "brb": "bourbon", "cof": "coffee", "coffe": "coffee", "cofee": "coffee", "tonc": "tonic", "sod": "soda", "wte": "white", "puré": "purée", "pur": "puree", "mlk": "milk", "ric": "rich", "cord": "cordial", "grena": "grenadine", "vrm": "vermouth", "vmth": "vermouth", "vmt": "vermouth", "liqu": "liqueur", "wsky": "whisky", "whsky": "whisky", "whky": "whisky",
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
	"lt": "light", "drk": "dark", "dk": "dark", "dryv": "dry vermouth", "ovrprf": "overproof", "bndd": "bonded", "bib": "bonded", "strng": "strong", "coc": "coconut", "cocon": "coconut", "aper": "aperitif", "shry": "sherry", "chry": "cherry", "pch": "peach", "apri": "apricot", "spcd": "spiced", "brdy": "brandy", "brndy": "brandy", "vinagar": "vinegar", "sug": "sugar", "h2o": "water", "lqr": "liqueur", "shr": "sherry", "sh": "sherry", "ldn": "London", "ir": "Irish", "ky": "Kentucky", "irsh": "Irish", "cofe": "coffee", "coff": "coffee", "pinaple": "pineapple", "pineaple": "pineapple", "pinapple": "pineapple", "pinapl": "pineapple", "pnapl": "pineapple", "lon": "London", "lond": "London", "bitr": "bitter", "bittr": "bitter", "bitrs": "bitters", "bittrs": "bitters", "btrs": "bitters", "bttrs": "bitters", "blend": "blended", "bln": "blended", "blkb": "blackberry", "blkbry": "blackberry", "bluebry": "blueberry", "strbry": "strawberry", "strwbry": "strawberry", "cnmn": "cinnamon", "cinmn": "cinnamon", "quinq": "quinquina", "ovrpf": "overproof", "ovpf": "overproof", "yk": "yolk", "ylk": "yolk", "tekila": "tequila", "vrmth": "vermouth", "vrmt": "vermouth", "eldflr": "elderflower", "eldrflr": "elderflower", "prosc": "prosecco", "bubs": "bubbles", "demer": "demerara", "demr": "demerara", "dmr": "demerara", "dmrara": "demerara", "apr": "apricot", "crn": "cranberry", "grpf": "grapefruit", "tmrnd": "tamarind", "hbscs": "hibiscus",
}

// adjectives change nothing about which ingredient is meant.
var adjectives = vocabulary.Words(`fresh freshly squeezed pressed thin thick large medium small big good quality cold chilled hot ripe whole strained homemade home-made house house-made housemade
fresh-squeezed freshly-squeezed fresh-pressed hand-pressed cold-pressed sliced peeled chopped diced torn halved quartered cut seeded deseeded hulled pitted lightly packed best decent local regular
organic natural nice style type our my thinly roughly finely plump unpeeled washed warm warmed heated steamed boiling iced your favourite favorite of the some a an any really very proper premium top-shelf decent-quality fine-strained double-strained just-squeezed day-fresh well-chilled ice-cold lovely whatever strong brewed freshly-brewed loose-leaf well rail speed-rail hand hand-squeezed plain real true genuine authentic standard basic usual normal ordinary cheap inexpensive budget smooth classic traditional everyday craft artisan artisanal handmade
small-batch single-barrel single-cask canned tinned carton squeezed juiced fluffy fs freezer fridge refrigerated frozen xtra extra nicest finest superior high-quality good-quality spare leftover daily handcrafted batched pre-batched`)

// phrases are words that change nothing together, and may apart.
var phrases = token.Words(`house-made home-made hand-made small-batch single-barrel single-cask top-shelf speed-rail fine-strained double-strained cold-pressed grade-a high-quality good-quality room-temperature ice-cold freshly-squeezed fresh-squeezed`)

// Strip returns the name, then the name with fewer and fewer adjectives: without those at
// its end, without the leading ones one by one, and last without any.
func Strip(name string) []string {
	if plain(name) {
		return []string{name}
	}
	out := []string{name}
	add := func(words []string) {
		n := strings.Trim(strings.Join(words, " "), " ,;")
		if n != "" && !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	words := strings.Fields(name)
	end := len(words)
	for end > 1 && idle(words[end-1]) {
		end--
	}
	add(words[:end])
leading:
	for len(words) > 1 {
		switch {
		case len(words) > 2 && phrases[strings.ToLower(words[0]+"-"+words[1])]:
			words = words[2:]
		case idle(words[0]):
			words = words[1:]
		default:
			break leading
		}
		add(words)
	}
	var rest []string
	for _, w := range words {
		if !idle(w) || alterations[strings.ToLower(w)] { // "coconut washed rum" is no coconut rum
			rest = append(rest, w)
		}
	}
	if len(rest) < len(words) && len(rest) > 0 {
		add(rest)
	}
	if at := articled.FindStringIndex(name); at != nil {
		add(strings.Fields(name[at[1]:]))
	}
	return out
}

// plain reports whether a name surely has nothing that Strip takes away, as most have.
func plain(name string) bool {
	for from := 0; from <= len(name); {
		w, _, _ := strings.Cut(name[from:], " ")
		for i := range len(w) {
			if c := w[i] | 0x20; (c < 'a' || c > 'z') && (c < '0' || c > '9') {
				return false
			}
		}
		if w == "" || idle(w) || beginsPhrase.Has(strings.ToLower(w)) {
			return false
		}
		from += len(w) + 1
	}
	return true
}

// beginsPhrase are the first words of phrases.
var beginsPhrase = func() *vocabulary.Set {
	var first []string
	for p := range phrases {
		w, _, _ := strings.Cut(p, "-")
		first = append(first, w)
	}
	return vocabulary.SetOf(first...)
}()

// articled is an article that runs into its noun: "l'eau gazeuse".
var articled = pattern.Of(`(?i)^l['’]`)

// idle reports whether a word of a name is an adjective that changes nothing.
func idle(w string) bool { return adjectives.Has(strings.ToLower(strings.Trim(w, ",;()"))) }

// Lengthen writes the words of a name at full length, where bars shorten them.
func Lengthen(key string) (string, bool) {
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

// PlaceWords says in words where a name stands.
func PlaceWords(u flavor.Unit) string {
	switch {
	case u == flavor.Dash || u == flavor.Drop:
		return "by the " + string(u)
	case u.Spoon():
		return "by the spoon"
	case u == flavor.Top || u == flavor.Float || u == flavor.Splash || u == flavor.Rinse || u == flavor.Spritz:
		return "as a " + string(u)
	case u.Jigger() || u == flavor.PartUnit:
		return "by volume"
	}
	return "here"
}

// Pressed is what a name means where it is poured by volume, at full length too; empty
// if it is no word of that kind.
func Pressed(name string) string {
	for _, n := range Strip(name) {
		key := flavor.NormaliseName(n)
		if means := cmp.Or(byVolume[key], byVolume[tongue.Name(key)]); means != "" {
			return means
		}
		if full, changed := Lengthen(key); changed && byVolume[full] != "" {
			return byVolume[full]
		}
	}
	return ""
}

// Movable reports whether the place would make another ingredient of the name,
// or ask.
func Movable(name string, p *flavor.Pour) bool {
	pl := PlaceOf(p.Unit, p.Amount, p.After)
	for _, n := range Strip(name) {
		key := flavor.NormaliseName(n)
		switch {
		case pl.Volume() && sweetened[key] != "":
			return true
		case p.Unit == flavor.Drop && byDrop[key] != "", p.Unit == flavor.Gram && byVolume[key] != "":
			return true
		case (p.Unit == flavor.Dash || p.Unit == flavor.Drop) && (byDash[key] != "" && flavor.NormaliseName(byDash[key]) != key || askDash[key] != nil):
			return true
		case p.Unit.Spoon() && spooned[key] != "":
			return flavor.NormaliseName(spooned[key]) != key
		case (p.Unit.Spoon() || pl.Volume() || pl.Topped) && (byVolume[key] != "" || askVolume[key] != nil || askTop[key] != nil):
			return true
		}
	}
	return false
}

// ByVolume is what a word means where it is poured by volume; empty if that is its name.
func ByVolume(key string) string { return byVolume[key] }

// SeveralByVolume lists what a name may mean by volume that means several things and is no word for how
// something is; nil for another.
func SeveralByVolume(key string) []string {
	if qualities[key] || len(askVolume[key]) < 2 {
		return nil
	}
	return askVolume[key]
}

// ByDash is what a word means by the dash or the drop; empty if that is its name.
func ByDash(key string) string { return byDash[key] }

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
