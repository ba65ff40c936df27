package jargon

import (
	"cmp"
	"iter"
	"maps"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/names/tongue"
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

// What a liqueur of herbs may be, of a monastery, and of the Alps.
var (
	herbLiqueurs = []string{"green herbal liqueur", "yellow herbal liqueur", "honey-herb liqueur", "Central European herb bitter"}
	monastic     = []string{"green herbal liqueur", "yellow herbal liqueur", "honey-herb liqueur"}
	alpine       = []string{"green herbal liqueur", "yellow herbal liqueur", "génépy liqueur"}
)

// askVolume are words that mean several things by volume, and askDash by the
// dash: nobody can tell which.
var (
	askVolume = map[string][]string{
		"herbal liqueur": herbLiqueurs, "monastery liqueur": monastic, "monastic liqueur": monastic, "monk liqueur": monastic, "abbey liqueur": monastic, "herbal monastery liqueur": monastic, "monastery herbal liqueur": monastic, "monastic herbal liqueur": monastic, "alpine liqueur": alpine, "alpine herbal liqueur": alpine, "alpine herb liqueur": alpine,
		"pink lemonade": {"still lemonade", "sparkling lemonade"}, "palinka": {"slivovitz", "apricot spirit", "pear spirit"}, "palinca": {"slivovitz", "apricot spirit", "pear spirit"}, "batter": {"spiced butter batter", "egg batter"}, "herbal": {"green herbal liqueur", "yellow herbal liqueur", "honey-herb liqueur", "Central European herb bitter", "savoury gin"},
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
		"white": {"egg white", "dry white wine"}, "org": {"orange juice", "orgeat"}, "green": {"green herbal liqueur", "green crème de menthe"}, "apple cider": {"cloudy apple juice", "dry cider"},
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

// volumeWords are the single words of byVolume and askVolume in order.
var volumeWords = func() []string {
	var out []string
	for _, words := range []iter.Seq[string]{maps.Keys(byVolume), maps.Keys(askVolume)} {
		for w := range words {
			if !strings.Contains(w, " ") {
				out = append(out, w)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}()

// ByDrop is what a word means by the drop alone; empty if that is what it means by the dash.
func ByDrop(key string) string { return byDrop[key] }

// BySpoon is what a word means by the spoon; empty if that is what it means by volume.
func BySpoon(key string) string { return spooned[key] }

// AskVolume lists what a word may mean by volume, of which nobody can tell which; nil for another.
func AskVolume(key string) []string { return askVolume[key] }

// AskDash lists what a word may mean by the dash; nil for one that is not in doubt.
func AskDash(key string) []string { return askDash[key] }

// AskTop lists what a word may mean that tops a drink; nil for one that is not in doubt.
func AskTop(key string) []string { return askTop[key] }

// VolumeWords are the single words that mean something by volume, in order.
func VolumeWords() []string { return volumeWords }
