package naming

import (
	"cmp"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/token"
)

// Words of other tongues that are put together: "Gurkensaft", "jugo de naranja",
// "sirop de gingembre". What each part means is written once; common practice.

// stems are what something is made of, by the words of other tongues for it.
var stems = keyed(listed(map[string]string{
	"lemon":           "zitrone zitronen citron sitron citroen limone limões limon-amarillo limão-siciliano",
	"lime":            "limette limetten lima limoen citron-vert",
	"orange":          "orangen naranja arancia arancio arance naranjas appelsin apelsin sinaasappel laranja apelsinen",
	"grapefruit":      "pampelmuse pampelmusen toronja pomelo pamplemousse pompelmo grapefruits toranja grapefrukt grapefruct",
	"pineapple":       "ananas piña abacaxi ananassa",
	"apple":           "apfel äpfel manzana pomme mela äpple æble eple appel maçã manzanas pommes mele maçãs",
	"pear":            "birne birnen pera poire päron pære peer peras poires pere",
	"cherry":          "kersen kirsch kirsche kirschen cereza cerise ciliegia körsbär kirsebær kers cerezas cerises ciliegie cereja cerejas sauerkirsch körsbärs",
	"strawberry":      "erdbeer erdbeere fresa fraise fragola jordgubb jordbær aardbei morango fresas frutilla frutillas fraises fragole erdbeeren jordgubbar morangos aardbeien jordgubbs",
	"raspberry":       "himbeer himbeere frambuesa framboise lampone hallon hindbær bringebær framboos frambozen frambuesas framboises lamponi himbeeren framboesa",
	"blackberry":      "brombeer brombeere mora mûre björnbär brombær braam moras zarzamora zarzamoras mûres more brombeeren amora bramen",
	"blueberry":       "heidelbeer blaubeer myrtille blåbär blåbær bosbes arándano-azul heidelbeeren blaubeeren myrtilles mirtilli mirtilo",
	"cranberry":       "veenbes veenbessen arándano arándanos canneberge mirtillo-rosso tranbär tranebær preiselbeer cranberrys",
	"blackcurrant":    "johannisbeer cassis svartvinbär solbær",
	"peach":           "pfirsich durazno melocotón pêche pesca persika fersken perzik pesche pfirsiche duraznos pêssego pêche-blanche pesca-bianca pêche-de-vigne persiko",
	"apricot":         "aprikose aprikosen marille marillen albaricoque abricot albicocca aprikos abrikos abrikoos chabacano damasco albaricoques abricots albicocche alperce abrikozen",
	"plum":            "pflaume pflaumen zwetschge ciruela prune prugna plommon blomme pruim ciruelas prunes prugne ameixa zwetschgen",
	"passion fruit":   "maracuja maracuyá fruit-de-la-passion frutto-della-passione passionsfrukt passionsfrugt passievrucht passion maracujá fruit-de-passion passionsfrucht passionfrukt passion-fruit lilikoi lilikoʻi",
	"pomegranate":     "granatapfel granada grenade melograno granatäpple",
	"coconut":         "kokos coco cocco noix-de-coco kokosnuss kokosnoot kokosnöt",
	"banana":          "banane bananen plátano banan banaan bananes plátanos",
	"mango":           "manga mangue",
	"guava":           "guayaba goyave",
	"watermelon":      "wassermelone wassermelonen sandía pastèque anguria vattenmelon vandmelon",
	"melon":           "melone melonen melón",
	"grape":           "trauben traube uva raisin druvor druer",
	"tomato":          "tomate tomaten pomodoro tomat jitomate",
	"cucumber":        "gurke gurken pepino concombre cetriolo gurka agurk komkommer",
	"carrot":          "karotten möhren zanahoria carotte carota morot gulerod",
	"celery":          "sellerie apio céleri sedano selleri",
	"ginger":          "ingwer jengibre gingembre zenzero ingefära ingefær gember jengibre-fresco gengibre ingefärs",
	"cinnamon":        "zimt canela cannelle cannella kanel kaneel kanelstång",
	"vanilla":         "vanille vainilla vaniglia vanilj baunilha",
	"honey":           "honig miel miele honung honning honing mel",
	"agave":           "agaven",
	"maple":           "ahorn érable arce acero lönn",
	"almond":          "mandel mandeln almendra amande mandorla amandel almendras amandes mandorle amandelen amêndoa amêndoas mandlar",
	"hazelnut":        "haselnuss avellana noisette nocciola hasselnöt avellanas noisettes nocciole avelã",
	"walnut":          "walnuss nuez noix noce valnöt nueces noci noz",
	"coffee":          "kaffee kaffe koffie",
	"cacao":           "kakao cacao",
	"chocolate":       "schokolade schokoladen schoko chocolat cioccolato choklad",
	"elderflower":     "holunder holunderblüten saúco sureau sambuco fläder fläderblom hyldeblomst vlierbloesem hylleblomst flor-de-saúco flores-de-saúco fleur-de-sureau fleurs-de-sureau fiori-di-sambuco fiore-di-sambuco flor-de-sabugueiro sabugueiro holunderblüte hyldebloms hyllebloms fläderblomma fläderbloms",
	"rose":            "rosen rosa rosas roses",
	"violet":          "veilchen violeta violette violetta violettes violetas viole",
	"lavender":        "lavendel lavanda lavande",
	"hibiscus":        "jamaica hibisco hibiskus flor-de-jamaica karkadè ibisco",
	"tamarind":        "tamarindo tamarin",
	"chilli":          "chile chili piment peperoncino picante chiles chili-ancho chile-ancho",
	"mint":            "minze minz pfefferminze menta menthe hierbabuena mynta mynte munt hortelã",
	"basil":           "basilikum albahaca basilic basilico basilika",
	"rosemary":        "rosmarin romero romarin rosmarino rozemarijn",
	"thyme":           "thymian tomillo thym timo timjan",
	"sage":            "salbei salvia sauge",
	"rhubarb":         "rhabarber ruibarbo rhubarbe rabarbaro rabarber",
	"beetroot":        "rote-bete betabel remolacha betterave barbabietola rödbeta",
	"gentian":         "enzian genciana gentiane genziana gentian gentiana",
	"herbal":          "kruiden kräuter hierbas erbe örter herbes herbe erbe-aromatiche",
	"lemongrass":      "zitronengras citronnelle",
	"cardamom":        "kardamom cardamomo cardamome kardemumma",
	"clove":           "nelken clavo girofle garofano",
	"fig":             "feige feigen higo figue fico fikon",
	"quince":          "quitte quitten membrillo coing marmelo kvitten",
	"lychee":          "litschi lichi litchi",
	"simple":          "zucker azúcar sucre zucchero socker sukker suiker açúcar",
	"caramel":         "karamell caramelo",
	"pepper":          "pfeffer pimienta poivre",
	"mandarin":        "tangerina mandarina mandarine mandarino mandarinen mandarijn mandarijnen",
	"pink grapefruit": "pomelo-rosa pomelo-rosado toronja-rosada toronja-rosa pamplemousse-rose pompelmo-rosa rosa-grapefruit roze-grapefruit",
	"blood orange":    "arancia-rossa arance-rosse orange-sanguine naranja-sanguina naranja-roja laranja-sanguínea blutorange blutorangen blodapelsin blodappelsin bloedsinaasappel",
	"maraschino":      "marrasquino marasquin",
	"green apple":     "manzana-verde pomme-verte mela-verde maçã-verde",
	"oat":             "avena avoine hafer havre haver aveia",
	"soy":             "soja soya",
	"rice":            "arroz riz riso reis rijst",
	"rye":             "centeno seigle segale roggen rogge",
	"jasmine":         "jazmín jasmin gelsomino jasmijn",
	"olive":           "aceituna aceitunas oliva oliven oliver olijf azeitona",
	"lemon lime":      "lima-limón limón-lima citron-citron-vert zitrone-limette",
	"brown sugar":     "azúcar-moreno azúcar-morena azúcar-mascabado sucre-roux cassonade brauner-zucker braunen-zucker brunt-socker brun-farin farinsocker zucchero-di-canna bruine-suiker rietsuiker basterdsuiker açúcar-mascavo brunsukker",
	"white sugar":     "azúcar-blanca azúcar-blanco sucre-blanc zucchero-bianco weißer-zucker",
	"black pepper":    "pimienta-negra poivre-noir pepe-nero schwarzer-pfeffer svartpeppar zwarte-peper",
	"star anise":      "anís-estrellado anis-étoilé sternanis anice-stellato stjärnanis stjerneanis steranijs",
	"anise":           "anice anijs",
	"orange flower":   "fleur-d-oranger fleur-doranger azahar flor-de-azahar fiori-darancio fiore-darancio orangenblüte orangenblüten apelsinblom",
	"myrtle":          "mirto mirte mirto-sardo",
	"liquorice":       "liquirizia regaliz réglisse lakritze lakrits",
	"chestnut":        "castaña châtaigne castagna kastanie",
	"fennel":          "finocchio hinojo fenouil fenchel",
	"dill":            "eneldo aneth aneto",
	"pistachio":       "pistacho pistache pistacchio",
	"date":            "dátil datte dattero",
	"tarragon":        "estragón estragon dragoncello",
	"coriander":       "cilantro koriander",
	"yuzu":            "yuzu",
	"sesame":          "sésamo sésame sesamo",
	"pumpkin":         "calabaza potiron zucca kürbis",
	"chamomile":       "kamille kamillen camomille camomilla manzanilla-infusión kamomill",
	"cane":            "rohrzucker rietsuiker",
	"wheat":           "weizen tarwe trigo",
	"falernum":        "falernum",
	"sea buckthorn":   "havtorn sanddorn duindoorn",
	"citrus":          "agrumi agrumes cítricos zitrus zitrusfrüchte citrusvruchten",
}))

// forms are what is made of it, in the tongues that run it into the stem: "Gurkensaft".
var forms = keyed(listed(map[string]string{
	"juice":    "saft juice sap must most kaju",
	"syrup":    "sirup sirap siroop",
	"liqueur":  "likör likør likeur",
	"purée":    "püree pure puré",
	"bitters":  "bitter bitters",
	"soda":     "limonade limonad brause",
	"beer":     "bier öl øl",
	"tea":      "tee te thee",
	"nectar":   "nektar",
	"spirit":   "brand geist wasser",
	"milk":     "milch mjölk mælk melk",
	"vinegar":  "essig",
	"vodka":    "wodka",
	"rum":      "rum rom",
	"whiskey":  "whiskey whisky",
	"drink":    "drink dryck drikk drank",
	"wine":     "wein wijn vin",
	"brandy":   "brandewijn",
	"aquavit":  "akvavit",
	"cream":    "creme sahne",
	"cordial":  "kordial",
	"vermouth": "wermut",
}))

// tastes are words of other tongues for how a bottle is.
var tastes = keyed(listed(map[string]string{
	"dry":              "droge karakuchi trocken seco seca sec secco torr tør droog trockener trockner secca seche sèche torra",
	"sweet":            "süß süss dulce doux dolce söt sød zoet süßer süsser dulces doce zoete",
	"white":            "witte weiß weiss weißer weisser bianco blanc vit hvid wit blanca blanche bianca bianchi weiße weisse branco branca vita hvit vitt hvitt blanco blancos",
	"red":              "rot roter rojo roja rouge rosso röd rød rood tinto rossa vermelho vermelha rote rött rødt rode",
	"dark":             "bruine braun brauner oscuro scuro brun mörk mørk donker oscura scura brune bruno bruna dunkel dunkler dunkle donkere escuro mörkt mørkt",
	"aged":             "gereift añejo vieux invecchiato lagrad añeja vieille invecchiata reserva-añeja gereifter envelhecida envelhecido lagret gerijpt viejo vieja",
	"gold":             "dorado ambré ouro",
	"black":            "schwarz schwarzer negro noir nero svart sort negra nera noire schwarze preto",
	"spirit":           "aguardiente eau-de-vie acquavite",
	"vinegar":          "essig vinagre vinaigre aceto",
	"liqueur":          "crema-de crema-di creme-de crème-de licor liquore likör likør likeur",
	"wine":             "wijn wein vino vin vinho",
	"white wine":       "weißwein weisswein",
	"red wine":         "rotwein",
	"beer":             "bier cerveza cerveja bière birra",
	"vermouth":         "wermut vermut vermout vermú vermu vermute",
	"genever":          "jenever genièvre",
	"old style":        "oud oude",
	"young style":      "jonge jong",
	"nutmeg":           "nootmuskaat muskatnuss nuez-moscada muscade noce-moscata muskot",
	"soda water":       "spuitwater",
	"milk":             "milch leche lait latte melk mjölk mælk leite",
	"water":            "eau agua acqua wasser vatten vand",
	"rum":              "ron rhum rom",
	"gin":              "ginebra",
	"vodka":            "wodka",
	"cream":            "sahne nata panna grädde fløde slagroom",
	"hot pepper sauce": "salsa-picante salsa picante",
	"fresh":            "friskpresset friskpresset-af färskpressat recién recien artesanal artesanale anglais inglese inglesa heet heiß warme warmes caliente calda chaud frisch frischer frische frisches fresco fresca frais fraîche färsk frisk vers exprimido exprimida pressé pressée spremuto gepresst gepresster gepreßt gepresstes ausgepresst natural machacado machacada machacados machacadas frío fría frio froid freddo fredda kalt kalter kall kald koud koude gelado helado liquido líquida liquide liquida expresso-corto natur pressad pressede presset flüssige flüssig expressed färskpressad nypresset",
	"juice":            "saft jugo zumo succo jus sap suco sumo kaju",
	"green":            "verde verte vert verdi grün grüner grüne grön grøn groen",
	"yellow":           "amarillo amarilla jaune giallo gialla gelb gelber gelbe gul geel amarelo",
	"blue":             "azul bleu bleue blu blau blauer blå blauw",
	"rosé":             "rosado rosada rosato",
	"spiced":           "especiado especiada épicé épicée speziato speziata gewürzt gewürzter kryddad krydret gekruid",
	"smoked":           "ahumado ahumada fumé fumée affumicato geräuchert rökt røget røkt gerookt rauchig rauchiger",
	"peated":           "turbado turboso tourbé torbato torfig torfiger getorft getorfter",
	"sparkling":        "espumoso espumante mousseux pétillant pétillante frizzante mousserande mousserende mousserend musserande",
	"Scotch":           "escocés écossais scozzese schottischer schottisch skotsk schotse",
	"Irish":            "irlandés irlandais irlandese irischer irisch irländsk irsk ierse",
	"Japanese":         "japonés japonais giapponese japanischer japanisch japansk japanse",
	"Jamaican":         "jamaicano jamaiquino jamaïcain giamaicano jamaikanischer jamaika jamaikansk jamaicaanse",
	"Spanish":          "español española espagnol spagnolo spanischer spanisch spansk spaanse",
	"aromatic":         "aromático aromáticos aromatico aromatici aromatique aromatiques aromatisch aromatische aromatischer aromatisk",
	"bitters":          "amargos amers bitter amargo",
	"whole":            "entero entera entière entier intero intera vollfett",
	"condensed":        "condensada condensado condensé condensato concentré-sucré gezuckerte-kondens kondenserad kondenseret",
	"evaporated":       "evaporada évaporé evaporato",
	"sherry":           "jerez xérès xeres",
	"port":             "oporto porto portwein portvin portwijn vinho-do-porto",
	"champagne":        "champán champaña champagner",
	"cider":            "sidra cidre sidro apfelwein",
	"coffee":           "café caffè kaffee kaffe koffie",
	"tonic water":      "tónica tonique",
	"soda":             "gaseosa refresco gazzosa",
	"purée":            "pulpa polpa pulpe püree puré purea coulis",
	"syrup":            "sirup sirap siroop jarabe sirope xarope sciroppo sirop almíbar",
	"tea":              "té thé tè tee thee cha",
	"cordial":          "kordial",
	"nectar":           "néctar nektar nettare",
	"cloudy":           "trouble naturtrüb naturtrüber torbido turbio grumlig",
	"simple":           "semplice simples",
	"rich":             "rico riche ricco",
	"old":              "gammel",
	"young":            "joven jeune giovane",
	"brandy":           "weinbrand",
	"solution":         "solución soluzione solução lösung",
	"saline":           "salina",
	"aperitif":         "aperitivo apéritif",
	"Italian":          "italiano italienischer italienisch italien",
	"light":            "leggero leggera ligero ligera léger légère leicht leichter ljus lys lyst chiaro claro clara-ron",
	"simple syrup":     "sockerlag sukkerlage sukkerlake läuterzucker suikerwater",
	"cognac":           "konjak coñac",
	"lemonade":         "limonada",
}))

// keyedWords is the set of words, as [flavor.NormaliseName] makes them.
func keyedWords(words string) map[string]bool {
	out := map[string]bool{}
	for w := range strings.FieldsSeq(words) {
		out[flavor.NormaliseName(w)] = true
	}
	return out
}

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

// longestPhrase is the most words that are one word in English: "flor de saúco".
const longestPhrase = 4

// linking are words between others that bring nothing of their own.
var linking = keyedWords(`de di d del della dei degli delle des du do da la le les los las el il lo au aux al alla alle allo all ai agli à van von aus mit med av con un una uno dun dune einer eines ein eine einem en ett et agli sulla nel nella os as ao à na no`)

// elided are words that lose their vowel and run into the next: "sirop d'amande".
var elided = []string{"dell", "all", "d", "l"}

// translated returns a key in English where words of it, or the parts that its words
// are put together of, are known in another tongue.
func translated(key string) (string, bool) {
	words := strings.Fields(key)
	out := make([]string, 0, len(words))
	changed := false
	for i := 0; i < len(words); {
		means, n := inEnglish(words[i:])
		switch {
		case n == 0 && linking[words[i]] && len(out) > 0:
			changed, n = true, 1
		case n == 0:
			out, n = append(out, words[i]), 1
		default:
			changed = changed || means != words[i]
			if means != "fresh" {
				out = append(out, means)
			}
		}
		i += n
	}
	return strings.Join(out, " "), changed && len(out) > 0
}

// lent are words of other tongues that bars everywhere write; common practice.
var lent = token.Words(`rosso bianco blanc blanco rosé rose creme crème menthe cacao cassis mure mûre pêche peche framboise poire violette amaro bitter de la`)

// Foreign reports whether a name holds a word of another tongue that bars who write
// English do not use, and that the name of what it means does not hold either.
func Foreign(name, means string) bool {
	own := strings.Fields(strings.ToLower(means))
	for _, w := range strings.Fields(strings.ToLower(name)) {
		if lent[w] || slices.Contains(own, w) {
			continue
		}
		if english, ok := translated(flavor.NormaliseName(w)); ok && english != flavor.NormaliseName(w) {
			return true
		}
	}
	return false
}

// inEnglish returns what words begin with in English, and how many of them it takes; 0
// if that is not known.
func inEnglish(words []string) (string, int) {
	for n := min(longestPhrase, len(words)); n > 0; n-- {
		w := words[0]
		if n > 1 {
			w = strings.Join(words[:n], " ")
		}
		if means := cmp.Or(stems[w], tastes[w]); means != "" {
			return means, n
		}
	}
	if means, ok := translatedCompound(words[0]); ok {
		return means, 1
	}
	for _, e := range elided {
		if rest, ok := strings.CutPrefix(words[0], e); ok {
			if means, n := inEnglish(append([]string{rest}, words[1:]...)); n > 0 && rest != "" {
				return means, n
			}
			if whole[rest] {
				return rest, 1
			}
		}
	}
	return "", 0
}

// whole are the words that stems translate into, which are themselves in some tongue:
// "liqueur d'orange".
var whole = func() map[string]bool {
	out := map[string]bool{}
	for _, means := range stems {
		out[means] = true
	}
	return out
}()

// binding are the letters that bind the parts of one word: "Zwetschgenwasser".
var binding = []string{"", "s", "n", "en", "er", "e", "es"}

// leastStem is the letters of the first part of a word that is put together.
const leastStem = 3

// translatedCompound translates one word that is put together of two.
func translatedCompound(w string) (string, bool) {
	for _, form := range formWords {
		first, ok := strings.CutSuffix(w, form)
		if !ok {
			continue
		}
		for _, b := range binding {
			stem, ok := strings.CutSuffix(first, b)
			if !ok || len(stem) < leastStem {
				continue
			}
			key := flavor.NormaliseName(stem)
			if means := cmp.Or(stems[key], tastes[key]); means != "" {
				return means + " " + forms[form], true
			}
			if whole[key] {
				return key + " " + forms[form], true
			}
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
	for _, n := range orders(english) {
		if f, ok := try(cmp.Or(shorthand[n], usual[n], n)); ok {
			return f, true
		}
	}
	return Found{}, false
}

// orders are the words of a name as they stand, and with the last one first: other tongues
// write what something is like behind it.
func orders(name string) []string {
	at := strings.LastIndexByte(name, ' ')
	if at < 0 {
		return []string{name}
	}
	return []string{name, name[at+1:] + " " + name[:at]}
}
