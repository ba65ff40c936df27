package naming

import (
	"slices"
	"strings"

	"counterpour/flavor"
)

// Words of other tongues that are put together: "Gurkensaft", "jugo de naranja",
// "sirop de gingembre". What each part means is written once; common practice.

// stems are what something is made of, by the words of other tongues for it.
var stems = keyed(listed(map[string]string{
	"lemon": "zitrone zitronen citron sitron citroen limone", "lime": "limette limetten lima limoen citron-vert", "orange": "orangen naranja arancia appelsin apelsin sinaasappel laranja",
	"grapefruit": "toronja pomelo pamplemousse pompelmo grapefruits", "pineapple": "ananas piña abacaxi", "apple": "apfel äpfel manzana pomme mela äpple æble eple appel maçã", "pear": "birne birnen pera poire päron pære peer",
	"cherry": "kersen kirsch kirsche kirschen cereza cerise ciliegia körsbär kirsebær kers", "strawberry": "erdbeer erdbeere fresa fraise fragola jordgubb jordbær aardbei morango", "raspberry": "himbeer himbeere frambuesa framboise lampone hallon hindbær bringebær framboos frambozen",
	"blackberry": "brombeer brombeere mora mûre björnbär brombær braam", "blueberry": "heidelbeer blaubeer myrtille blåbär blåbær bosbes", "cranberry": "arándano arándanos canneberge mirtillo-rosso tranbär tranebær preiselbeer cranberrys",
	"blackcurrant": "johannisbeer cassis svartvinbär solbær", "peach": "pfirsich durazno melocotón pêche pesca persika fersken perzik", "apricot": "aprikose aprikosen marille marillen albaricoque abricot albicocca aprikos abrikos abrikoos", "plum": "pflaume pflaumen zwetschge ciruela prune prugna plommon blomme pruim",
	"passion fruit": "maracuja maracuyá fruit-de-la-passion frutto-della-passione passionsfrukt passionsfrugt passievrucht", "pomegranate": "granatapfel granada grenade melograno granatäpple", "coconut": "kokos coco cocco", "banana": "banane bananen plátano banan banaan",
	"mango": "mangue", "guava": "guayaba goyave", "watermelon": "wassermelone wassermelonen sandía pastèque anguria vattenmelon vandmelon", "melon": "melone melonen melón", "grape": "trauben traube uva raisin druvor druer", "tomato": "tomate tomaten pomodoro tomat jitomate",
	"cucumber": "gurke gurken pepino concombre cetriolo gurka agurk komkommer", "carrot": "karotten möhren zanahoria carotte carota morot gulerod", "celery": "sellerie apio céleri sedano selleri", "ginger": "ingwer jengibre gingembre zenzero ingefära ingefær gember", "cinnamon": "zimt canela cannelle cannella kanel kaneel",
	"vanilla": "vanille vainilla vaniglia vanilj", "honey": "honig miel miele honung honning honing", "agave": "agaven", "maple": "ahorn érable arce acero lönn ahorn", "almond": "mandel mandeln almendra amande mandorla amandel", "hazelnut": "haselnuss avellana noisette nocciola hasselnöt", "walnut": "walnuss nuez noix noce valnöt",
	"coffee": "kaffee kaffe koffie", "cacao": "kakao cacao", "chocolate": "schokolade schokoladen schoko chocolat cioccolato choklad", "elderflower": "holunder holunderblüten saúco sureau sambuco fläder fläderblom hyldeblomst vlierbloesem hylleblomst", "rose": "rosen rosa", "violet": "veilchen violeta violette", "lavender": "lavendel lavanda lavande",
	"hibiscus": "jamaica hibisco hibiskus", "tamarind": "tamarindo tamarin", "chilli": "chile chili piment peperoncino picante", "mint": "minze minz pfefferminze menta menthe hierbabuena mynta mynte munt hortelã", "basil": "basilikum albahaca basilic basilico basilika", "rosemary": "rosmarin romero romarin rosmarino",
	"thyme": "thymian tomillo thym timo timjan", "sage": "salbei salvia sauge", "rhubarb": "rhabarber ruibarbo rhubarbe rabarbaro rabarber", "beetroot": "rote-bete betabel remolacha betterave barbabietola rödbeta", "gentian": "enzian genciana gentiane genziana gentian", "herbal": "kruiden kräuter hierbas erbe örter", "lemongrass": "zitronengras citronnelle",
	"cardamom": "kardamom cardamomo cardamome kardemumma", "clove": "nelken clavo girofle garofano", "fig": "feige feigen higo figue fico fikon", "quince": "quitte quitten membrillo coing", "lychee": "litschi lichi litchi", "simple": "zucker azúcar sucre zucchero socker sukker suiker açúcar", "caramel": "karamell caramelo", "pepper": "pfeffer pimienta poivre",
}))

// forms are what is made of it: the words of other tongues stand behind the stem, run
// into it, or before it.
var forms = keyed(listed(map[string]string{
	"juice": "saft juice sap saft-frisch jugo-de zumo-de suco-de succo-di succo-d jus-de jus-d jugo zumo succo jus", "syrup": "sirup sirap siroop jarabe-de sirope-de xarope-de sciroppo-di sciroppo-d sirop-de sirop-d sirop-au jarabe sirope sciroppo sirop",
	"liqueur": "likör likør likeur licor-de liquore-di liquore-al liquore-alla liquore-allo liqueur-de liqueur-d licor", "purée": "püree pure puré purea-di puré-de purée-de purée-d", "cordial": "kordial", "bitters": "bitter-de", "soda": "limonade-gazeuse refresco-de", "beer": "bier cerveza-de bière-de birra-di öl øl",
	"tea": "tee te té-de thé-de thé-au tè-di", "nectar": "nektar néctar-de nettare-di", "spirit": "brand geist wasser aguardiente-de eau-de-vie-de acquavite-di", "cream": "crema-de creme-de", "milk": "milch leche-de lait-de latte-di mjölk mælk melk", "vinegar": "essig vinagre-de vinaigre-de aceto-di", "vodka": "wodka vodka-de vodka-alla", "water": "agua-de acqua-di eau-de",
}))

// tastes are words of other tongues for how a bottle is.
var tastes = keyed(listed(map[string]string{
	"dry": "droge karakuchi trocken seco seca sec secco torr tør droog", "sweet": "süß süss dulce doux dolce söt sød zoet", "white": "witte weiß weiss weißer weisser bianco blanc vit hvid wit", "red": "rot roter rojo roja rouge rosso röd rød rood tinto",
	"dark": "bruine braun brauner oscuro scuro brun mörk mørk donker", "aged": "gereift añejo vieux invecchiato lagrad", "gold": "dorado ambré", "black": "schwarz schwarzer negro noir nero svart sort",
	"wine": "wijn wein vino vin vinho", "white wine": "weißwein weisswein", "red wine": "rotwein", "beer": "bier cerveza bière birra", "vermouth": "wermut vermut vermout", "genever": "jenever genièvre", "old style": "oud oude", "young style": "jonge jong", "nutmeg": "nootmuskaat muskatnuss nuez-moscada muscade noce-moscata muskot", "soda water": "spuitwater", "milk": "milch leche lait latte melk mjölk mælk", "water": "eau agua acqua wasser vatten vand", "rum": "ron rhum", "gin": "ginebra", "vodka": "wodka", "cream": "sahne nata panna grädde fløde slagroom", "hot pepper sauce": "salsa-picante salsa picante",
	"fresh": "heet heiß warme warmes caliente calda chaud frisch frischer frische frisches fresco fresca frais fraîche färsk frisk vers exprimido exprimida pressé pressée spremuto gepresst natural machacado machacada machacados machacadas", "juice": "saft jugo zumo succo jus",
}))

// listed turns lists of words by what they mean into what each word means. A hyphen in a
// word stands for a blank.
func listed(by map[string]string) map[string]string {
	out := map[string]string{}
	for means, words := range by {
		for w := range strings.FieldsSeq(words) {
			out[strings.ReplaceAll(w, "-", " ")] = means
		}
	}
	return out
}

// formWords are the keys of forms, the longest first, in one order.
var formWords = func() []string {
	var out []string
	for w := range forms {
		out = append(out, w)
	}
	slices.SortFunc(out, func(a, b string) int {
		if len(a) != len(b) {
			return len(b) - len(a)
		}
		return strings.Compare(a, b)
	})
	return out
}()

// translated returns a key in English where all its words, or the parts that its words
// are put together of, are known in another tongue.
func translated(key string) (string, bool) {
	if means := stems[key]; means != "" {
		return means, true
	}
	if means := tastes[key]; means != "" {
		return means, true
	}
	for _, form := range formWords {
		if stem, ok := strings.CutSuffix(key, form); ok && !strings.HasSuffix(stem, " ") && stem != "" { // "gurkensaft"
			if means := stems[flavor.NormaliseName(stem)]; means != "" {
				return means + " " + forms[form], true
			}
		}
		if stem, ok := strings.CutPrefix(key, form+" "); ok { // "jugo de naranja"
			if means, ok := translatedWords(stem); ok {
				return means + " " + forms[form], true
			}
		}
	}
	return translatedWords(key)
}

// translatedWords translates word by word, and keeps what is English already. It is
// false if nothing was.
func translatedWords(key string) (string, bool) {
	words := strings.Fields(key)
	var out []string
	changed := false
	for _, w := range words {
		means := w
		if len(words) > 1 && stems[w] == "" && tastes[w] == "" {
			if compound, ok := translatedCompound(w); ok {
				means = compound
			}
		} else if m := stems[w]; m != "" {
			means = m
		} else if m := tastes[w]; m != "" {
			means = m
		}
		if w == "de" || w == "di" || w == "d" || w == "al" {
			changed = true
			continue
		}
		changed = changed || means != w
		if means != "fresh" {
			out = append(out, means)
		}
	}
	return strings.Join(out, " "), changed && len(out) > 0
}

// translatedCompound translates one word that is put together of two.
func translatedCompound(w string) (string, bool) {
	for _, form := range formWords {
		if stem, ok := strings.CutSuffix(w, form); ok && stem != "" && stems[flavor.NormaliseName(stem)] != "" {
			return stems[flavor.NormaliseName(stem)] + " " + forms[form], true
		}
	}
	return "", false
}

// inTongue returns what a name of another tongue means, put together of its parts.
func (b *Book) inTongue(key string, try func(name string) (Found, bool)) (Found, bool) {
	english, ok := translated(key)
	if !ok || flavor.NormaliseName(english) == key {
		return Found{}, false
	}
	return try(english)
}
