package laid

import (
	"slices"
	"strings"

	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/vocabulary"
)

// nounWords end what is laid on a drink rather than poured into it.
const nounWords = `chery chry chrry chrs bns olv olvs wdg wdge whl slc slce twst sprg caperberry caperberries twist twists peel peels zest zests wheel wheels halfwheel half-wheel half-wheels wedge wedges slice slices coin coins swath swathe ribbon ribbons fan fans flag
cherry cherries olive olives onion onions sprig sprigs bouquet crown stick stalk frond fronds spear skewer pick flower flowers petal petals cheek cheeks curl spiral horse's neck
umbrella leaf leaves berry berries dust dusting nutmeg shavings bean beans tuft horsesneck crescent disc disk knot blossom bloom pod quill twirl wing feather straw chip crisp
pickle pickles gherkin cornichon flakes seeds picks toothpick toothpicks skewers peg pegs clothespeg clothespin umbrella umbrellas bacon marshmallow marshmallows biscuit cookie juniper lychee candy oils shell shells hull husk dots shave shaves shaving curls crumb crumbs
dill sage tarragon shiso parsley cilantro coriander lavender verbena raspberry raspberries blackberry blackberries strawberry strawberries mint rosemary basil thyme none kirsche cocktailkirsche minze minzzweig minzblatt hierbabuena munt mynta kaffeebohnen kaffeebohne limettenrad limettenscheibe limettenspalte orangenscheibe zitronenscheibe gurkenscheibe rodaja gajo scorza fetta spicchio rondelle zitronenzeste orangenzeste limettenzeste zesten oliven oliver aceitunas olivas oliva aceituna cereza cerezas ciliegia ciliegie ciliegina ciliegine cerise cerises cereja cerejas kirschen kers kersen körsbär azeitona azeitonas olijf olijven piel cáscara cascara casca peladura rodela rodelas fatia fatias schijfje schijfjes partje partjes muscade citronzest limeskiva zeste orangenzeste zitronenzeste plasterek plaster plastry ćwiartka skórka skórki skórką gałązka listek listki wiśnia wiśnie wisienka oliwka oliwki plátek kůra kůrou snítka višeň oliva třešeň долька ломтик слайс цедра цедрой веточка лист вишня вишенка оливка оливки маслина φέτα φλούδα φλούδας κλωναράκι φύλλο φύλλα κεράσι ελιά レモンピール オレンジピール ライムピール オレンジスライス レモンスライス カットライム ライムウェッジ ミント ミントの葉 チェリー オリーブ ピール スライス appelsinskal sitronskal citronskal limebåd appelsinskive citronskive`

var nouns = vocabulary.Words(nounWords)

// cuts are words of nouns for a part of a fruit: they say nothing without its name.
var cuts = vocabulary.Words(`twist twists peel peels zest zests wheel wheels halfwheel half-wheel half-wheels wedge wedges slice slices coin coins swath swathe ribbon ribbons fan fans flag
sprig sprigs bouquet crown stick stalk frond fronds spear flower flowers petal petals cheek cheeks curl spiral leaf leaves bean beans disc disk berry berries blossom bloom pod dust shell shells`)

// Cut reports whether a word is one for a part of a fruit, "wheel".
func Cut(w string) bool { return cuts.Has(w) }

// endings end words that are put together for what is laid on a drink.
var endings = []string{"zeste", "zesten", "scheibe", "scheiben", "schale", "spalte", "spalten", "achtel", "zweig", "blatt", "schnitz", "rädchen", "skal", "skive", "schil"}

// Noun reports whether a word ends what is laid on a drink.
func Noun(w string) bool {
	return nouns.Has(w) || slices.ContainsFunc(endings, func(e string) bool { return len(w) > len(e)+2 && strings.HasSuffix(w, e) })
}

// verbs begin what is laid on a drink.
var verbs = vocabulary.Words(`dekoruj udekoruj udekorować ozdobić ozdób przybrać ozdobit ozdobte zdobit украсить украсьте украсим γαρνίρουμε γαρνίρω γαρνίρισμα pynt pyntes pyntas garnera garneras garnér garniere garnish décorez garnissez decora adorna guarnisci decorate decorar decorare décorer decorer garnieren garnir guarnire guarnecer dekorieren adornar garneren garnish garnished garn gar dress ornament adorn express expressed expressing grate grated sprinkle sprinkled dust dusted dusting twist decorate flamed flame dehydrated spanked slapped skewered charred torched candied crystallised crystallized`)

// ByNoun reports whether words name what is laid on a drink: "lemon peel", "piel de limón".
func ByNoun(toks []token.Token, last string) bool {
	if Noun(last) || last == "oil" && fruits.Has(toks[0].Text) {
		return true
	}
	if len(toks) < 2 || !nouns.Has(toks[0].Text) {
		return false
	}
	return len(toks) > 2 && links.Has(toks[1].Text) || strings.HasPrefix(toks[1].Text, "d'")
}

// links are words behind what is laid on a drink that say of what it is: "piel de limón",
// "cereza al marrasquino".
var links = vocabulary.Words(`of de di al alla au`)

// nuts are laid on a drink one by one; what is poured of them is named otherwise: "hazelnut liqueur".
var nuts = vocabulary.Words(`hazelnut hazelnuts macadamia macadamias walnut walnuts pecan pecans almond almonds pistachio pistachios peanut peanuts cashew cashews`)

// Nut reports whether a word is a nut that is laid on a drink whole.
func Nut(w string) bool { return nuts.Has(w) }

// Word reports whether a word is one for what is laid on a drink, and no compound.
func Word(w string) bool { return nouns.Has(w) }

// Verb reports whether a word begins what is laid on a drink: "garnish", "grate".
func Verb(w string) bool { return verbs.Has(w) }

// Of reports whether a word says behind what is laid on a drink of what it is: "piel de limón".
func Of(w string) bool { return links.Has(w) }

// Fruit reports whether a word is a fruit or a spice whose peel or slice is laid on a drink.
func Fruit(w string) bool { return fruits.Has(w) }

// ByHalf reports whether a word is a fruit that is laid on a drink by the half.
func ByHalf(w string) bool { return halves.Has(w) }
