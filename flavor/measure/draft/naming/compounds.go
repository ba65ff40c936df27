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
	"lime":            "limette limetten lima limoen citron-vert limão-taiti limão-tahiti limão-galego limões-taiti",
	"orange":          "orangen naranja arancia arancio arance naranjas appelsin apelsin sinaasappel laranja apelsinen arancione",
	"grapefruit":      "pampelmuse pampelmusen toronja pomelo pamplemousse pompelmo grapefruits toranja grapefrukt grapefruct",
	"pineapple":       "ananas piña abacaxi ananassa",
	"apple":           "apfel äpfel manzana pomme mela äpple æble eple appel maçã manzanas pommes mele maçãs",
	"pear":            "birne birnen pera poire päron pære peer peras poires pere",
	"cherry":          "kersen kirsch kirsche kirschen cereza cerise ciliegia körsbär kirsebær kers cerezas cerises ciliegie cereja cerejas sauerkirsch körsbärs",
	"strawberry":      "erdbeer erdbeere fresa fraise fragola jordgubb jordbær aardbei morango fresas frutilla frutillas fraises fragole erdbeeren jordgubbar morangos aardbeien jordgubbs",
	"raspberry":       "himbeer himbeere frambuesa framboise lampone hallon hindbær bringebær framboos frambozen frambuesas framboises lamponi himbeeren framboesa",
	"blackberry":      "brombeer brombeere mora mûre björnbär brombær braam moras zarzamora zarzamoras mûres more brombeeren amora bramen",
	"blueberry":       "heidelbeer blaubeer myrtille blåbär blåbær bosbes arándano-azul heidelbeeren blaubeeren myrtilles mirtilli mirtilo heidelbeere blaubeere bosbessen blauwe-bes blauwe-bessen",
	"cranberry":       "veenbes veenbessen arándano arándanos canneberge mirtillo-rosso tranbär tranebær preiselbeer cranberrys arándano-rojo arándanos-rojos arando arandos mirtilli-rossi",
	"blackcurrant":    "johannisbeer cassis svartvinbär solbær grosella-negra grosellas-negras ribes-nero groselha-preta zwarte-bes zwarte-bessen ribes",
	"peach":           "pfirsich durazno melocotón pêche pesca persika fersken perzik pesche pfirsiche duraznos pêssego pêche-blanche pesca-bianca pêche-de-vigne persiko",
	"apricot":         "aprikose aprikosen marille marillen albaricoque abricot albicocca aprikos abrikos abrikoos chabacano damasco albaricoques abricots albicocche alperce abrikozen",
	"plum":            "pflaume pflaumen zwetschge ciruela prune prugna plommon blomme pruim ciruelas prunes prugne ameixa zwetschgen",
	"passion fruit":   "maracuja maracuyá fruit-de-la-passion frutto-della-passione passionsfrukt passionsfrugt passievrucht passion maracujá fruit-de-passion passionsfrucht passionfrukt passion-fruit lilikoi lilikoʻi fruta-de-la-pasión parchita passiefruit fruta-da-paixão chinola",
	"pomegranate":     "granatapfel granada grenade melograno granatäpple melagrana romã granaatappel granaatappels melagrane",
	"coconut":         "kokos coco cocco noix-de-coco kokosnuss kokosnoot kokosnöt",
	"banana":          "banane bananen plátano banan banaan bananes plátanos",
	"mango":           "manga mangue",
	"guava":           "guayaba goyave guave guaven goiaba guayabas goiabas goyaves",
	"watermelon":      "wassermelone wassermelonen sandía pastèque anguria vattenmelon vandmelon cocomero melancia watermeloen",
	"melon":           "melone melonen melón melão meloen",
	"grape":           "trauben traube uva raisin druvor druer",
	"tomato":          "tomate tomaten pomodoro tomat jitomate tomaat tomates",
	"cucumber":        "gurke gurken pepino concombre cetriolo gurka agurk komkommer",
	"carrot":          "karotten möhren zanahoria carotte carota morot gulerod cenoura wortel wortels zanahorias carote carottes",
	"celery":          "sellerie apio céleri sedano selleri aipo selderij bleekselderij",
	"ginger":          "ingwer jengibre gingembre zenzero ingefära ingefær gember jengibre-fresco gengibre ingefärs",
	"cinnamon":        "zimt canela cannelle cannella kanel kaneel kanelstång",
	"vanilla":         "vanille vainilla vaniglia vanilj baunilha",
	"honey":           "honig miel miele honung honning honing mel",
	"agave":           "agaven",
	"maple":           "ahorn érable arce acero lönn bordo ácer esdoorn",
	"almond":          "mandel mandeln almendra amande mandorla amandel almendras amandes mandorle amandelen amêndoa amêndoas mandlar",
	"hazelnut":        "haselnuss avellana noisette nocciola hasselnöt avellanas noisettes nocciole avelã hazelnoot hazelnoten avelãs",
	"walnut":          "walnuss nuez noix noce valnöt nueces noci noz nozes walnoot walnoten",
	"coffee":          "kaffee kaffe koffie",
	"cacao":           "kakao cacao cacau",
	"chocolate":       "schokolade schokoladen schoko chocolat cioccolato choklad chocolade",
	"elderflower":     "holunder holunderblüten saúco sureau sambuco fläder fläderblom hyldeblomst vlierbloesem hylleblomst flor-de-saúco flores-de-saúco fleur-de-sureau fleurs-de-sureau fiori-di-sambuco fiore-di-sambuco flor-de-sabugueiro sabugueiro holunderblüte hyldebloms hyllebloms fläderblomma fläderbloms",
	"rose":            "rosen rosa rosas roses rozen",
	"violet":          "veilchen violeta violette violetta violettes violetas viole viola viooltjes viooltje",
	"lavender":        "lavendel lavanda lavande alfazema",
	"hibiscus":        "jamaica hibisco hibiskus flor-de-jamaica karkadè ibisco flor-de-hibisco fleur-d-hibiscus",
	"tamarind":        "tamarindo tamarin tamarinde tamarinden",
	"chilli":          "chile chili piment peperoncino picante chiles chili-ancho chile-ancho guindilla malagueta pimenta peperoncini piments",
	"mint":            "minze minz pfefferminze menta menthe hierbabuena mynta mynte munt hortelã pfefferminz pepermunt",
	"basil":           "basilikum albahaca basilic basilico basilika manjericão basilicum",
	"rosemary":        "rosmarin romero romarin rosmarino rozemarijn alecrim",
	"thyme":           "thymian tomillo thym timo timjan tomilho tijm",
	"sage":            "salbei salvia sauge salie",
	"rhubarb":         "rhabarber ruibarbo rhubarbe rabarbaro rabarber",
	"beetroot":        "rote-bete betabel remolacha betterave barbabietola rödbeta beterraba biet bieten rode-biet rode-bieten rote-beete",
	"gentian":         "enzian genciana gentiane genziana gentian gentiana gentiaan",
	"herbal":          "kruiden kräuter hierbas erbe örter herbes herbe erbe-aromatiche",
	"lemongrass":      "zitronengras citronnelle hierba-limón hierba-luisa citronela citronella capim-limão citroengras",
	"cardamom":        "kardamom cardamomo cardamome kardemumma kardemom cardamono",
	"clove":           "nelken clavo girofle garofano chiodi-di-garofano chiodo-di-garofano clou-de-girofle clous-de-girofle cravo cravos kruidnagel clavos gewürznelken",
	"fig":             "feige feigen higo figue fico fikon fichi figo figos vijg vijgen higos figues",
	"quince":          "quitte quitten membrillo coing marmelo kvitten cotogna cotogne mela-cotogna mele-cotogne kweepeer kweeperen coings",
	"lychee":          "litschi lichi litchi lichia lichias litchis lychees litschis",
	"simple":          "zucker azúcar sucre zucchero socker sukker suiker açúcar",
	"caramel":         "karamell caramelo",
	"pepper":          "pfeffer pimienta poivre",
	"mandarin":        "tangerina mandarina mandarine mandarino mandarinen mandarijn mandarijnen mexerica clementina clementine clémentine mandarini mandarinas mandarines",
	"pink grapefruit": "pomelo-rosa pomelo-rosado toronja-rosada toronja-rosa pamplemousse-rose pompelmo-rosa rosa-grapefruit roze-grapefruit",
	"blood orange":    "arancia-rossa arance-rosse orange-sanguine naranja-sanguina naranja-roja laranja-sanguínea blutorange blutorangen blodapelsin blodappelsin bloedsinaasappel arancia-sanguinella arance-sanguinelle arancia-sanguigna sanguina",
	"maraschino":      "marrasquino marasquin",
	"green apple":     "manzana-verde pomme-verte mela-verde maçã-verde",
	"oat":             "avena avoine hafer havre haver aveia",
	"soy":             "soja soya",
	"rice":            "arroz riz riso reis rijst",
	"rye":             "centeno seigle segale roggen rogge",
	"jasmine":         "jazmín jasmin gelsomino jasmijn jasmim",
	"olive":           "aceituna aceitunas oliva oliven oliver olijf azeitona olijven azeitonas",
	"lemon lime":      "lima-limón limón-lima citron-citron-vert zitrone-limette",
	"brown sugar":     "azúcar-moreno azúcar-morena azúcar-mascabado sucre-roux cassonade brauner-zucker braunen-zucker brunt-socker brun-farin farinsocker zucchero-di-canna bruine-suiker rietsuiker basterdsuiker açúcar-mascavo brunsukker",
	"white sugar":     "azúcar-blanca azúcar-blanco sucre-blanc zucchero-bianco weißer-zucker",
	"black pepper":    "pimienta-negra poivre-noir pepe-nero schwarzer-pfeffer svartpeppar zwarte-peper pimenta-preta pimenta-do-reino",
	"star anise":      "anís-estrellado anis-étoilé sternanis anice-stellato stjärnanis stjerneanis steranijs anis-estrelado badiane badiana",
	"anise":           "anice anijs",
	"orange flower":   "fleur-d-oranger fleur-doranger azahar flor-de-azahar fiori-darancio fiore-darancio orangenblüte orangenblüten apelsinblom",
	"myrtle":          "mirto mirte mirto-sardo",
	"liquorice":       "liquirizia regaliz réglisse lakritze lakrits liquerizia alcaçuz drop",
	"chestnut":        "castaña châtaigne castagna kastanie",
	"fennel":          "finocchio hinojo fenouil fenchel funcho erva-doce venkel",
	"dill":            "eneldo aneth aneto",
	"pistachio":       "pistacho pistache pistacchio pistazie pistazien pistachos pistacchi pistaches",
	"date":            "dátil datte dattero",
	"tarragon":        "estragón estragon dragoncello",
	"coriander":       "cilantro koriander",
	"yuzu":            "yuzu",
	"sesame":          "sésamo sésame sesamo",
	"pumpkin":         "calabaza potiron zucca kürbis",
	"chamomile":       "kamille kamillen camomille camomilla manzanilla-infusión kamomill de-manzanilla camomila",
	"cane":            "rohrzucker rietsuiker caña azúcar-de-caña sucre-de-canne zucchero-di-canna-bianco canna canne cana-de-açúcar cana",
	"wheat":           "weizen tarwe trigo",
	"falernum":        "falernum",
	"sea buckthorn":   "havtorn sanddorn duindoorn",
	"citrus":          "agrumi agrumes cítricos zitrus zitrusfrüchte citrusvruchten",
	"redcurrant":      "grosella-roja ribes-rosso rote-johannisbeer rode-bes groseille groseilles",
	"saffron":         "azafrán zafferano safran açafrão saffraan",
	"bergamot":        "bergamota bergamotto bergamote bergamotte bergamotten",
	"papaya":          "papaye mamão papaja",
	"kiwi":            "kiwis",
	"pine":            "pino pin kiefern",
	"juniper":         "enebro ginepro genévrier wacholder zimbro jeneverbes",
	"nutmeg":          "nuez-moscada noce-moscata noix-de-muscade muskat noz-moscada",
	"turmeric":        "cúrcuma curcuma kurkuma",
	"tonka":           "tonka",
	"artichoke":       "carciofo alcachofa artichaut artischocke",
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
	"vinegar":  "essig azijn",
	"vodka":    "wodka",
	"rum":      "rum rom",
	"whiskey":  "whiskey whisky",
	"drink":    "drink dryck drikk drank",
	"wine":     "wein wijn vin",
	"brandy":   "brandewijn",
	"aquavit":  "akvavit",
	"cream":    "creme sahne",
	"cordial":  "kordial cordial",
	"vermouth": "wermut",
	"water":    "water",
	"brine":    "lake",
}))

// tastes are words of other tongues for how a bottle is.
var tastes = keyed(listed(map[string]string{
	"dry":              "droge karakuchi trocken seco seca sec secco torr tør droog trockener trockner secca seche sèche torra",
	"sweet":            "süß süss dulce doux dolce söt sød zoet süßer süsser dulces doce zoete",
	"white":            "witte weiß weiss weißer weisser bianco blanc vit hvid wit blanca blanche bianca bianchi weiße weisse branco branca vita hvit vitt hvitt blanco blancos",
	"red":              "rot roter rojo roja rouge rosso röd rød rood tinto rossa vermelho vermelha rote rött rødt rode",
	"dark":             "bruine braun brauner oscuro scuro brun mörk mørk donker oscura scura brune bruno bruna dunkel dunkler dunkle donkere escuro mörkt mørkt",
	"aged":             "gereift añejo vieux invecchiato lagrad añeja vieille invecchiata reserva-añeja gereifter envelhecida envelhecido lagret gerijpt viejo vieja barricata barricato gerijpte",
	"gold":             "dorado ambré ouro goldener goldene goldenes gouden dourado dourada dorato dorada ambrato ambrata",
	"black":            "schwarz schwarzer negro noir nero svart sort negra nera noire schwarze preto preta zwarte",
	"spirit":           "aguardiente eau-de-vie acquavite",
	"vinegar":          "essig vinagre vinaigre aceto azijn",
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
	"gin":              "ginebra gim",
	"vodka":            "wodka vodca",
	"cream":            "sahne nata panna grädde fløde slagroom room",
	"hot pepper sauce": "salsa-picante salsa picante",
	"fresh":            "friskpresset friskpresset-af färskpressat recién recien artesanal artesanale anglais inglese inglesa heet heiß warme warmes caliente calda chaud frisch frischer frische frisches fresco fresca frais fraîche färsk frisk vers exprimido exprimida pressé pressée spremuto gepresst gepresster gepreßt gepresstes ausgepresst natural machacado machacada machacados machacadas frío fría frio froid freddo fredda kalt kalter kall kald koud koude gelado helado liquido líquida liquide liquida expresso-corto natur pressad pressede presset flüssige flüssig expressed färskpressad nypresset",
	"juice":            "saft jugo zumo succo jus sap suco sumo kaju spremuta spremute",
	"green":            "verde verte vert verdi grün grüner grüne grön grøn groen groene",
	"yellow":           "amarillo amarilla jaune giallo gialla gelb gelber gelbe gul geel amarelo",
	"blue":             "azul bleu bleue blu blau blauer blå blauw blauwe",
	"rosé":             "rosado rosada rosato",
	"spiced":           "especiado especiada épicé épicée speziato speziata gewürzt gewürzter kryddad krydret gekruid gekruide",
	"smoked":           "ahumado ahumada fumé fumée affumicato geräuchert rökt røget røkt gerookt rauchig rauchiger fumado fumada defumado gerookte",
	"peated":           "turbado turboso tourbé torbato torfig torfiger getorft getorfter",
	"sparkling":        "espumoso espumante mousseux pétillant pétillante frizzante mousserande mousserende mousserend musserande",
	"Scotch":           "escocés écossais scozzese schottischer schottisch skotsk schotse",
	"Irish":            "irlandés irlandais irlandese irischer irisch irländsk irsk ierse",
	"Japanese":         "japonés japonais giapponese japanischer japanisch japansk japanse",
	"Jamaican":         "jamaicano jamaiquino jamaïcain giamaicano jamaikanischer jamaika jamaikansk jamaicaanse",
	"Spanish":          "español española espagnol spagnolo spanischer spanisch spansk spaanse",
	"aromatic":         "aromático aromáticos aromatico aromatici aromatique aromatiques aromatisch aromatische aromatischer aromatisk",
	"bitters":          "amargos amers bitter amargo",
	"whole":            "entero entera entière entier intero intera vollfett volle",
	"condensed":        "condensada condensado condensé condensato concentré-sucré gezuckerte-kondens kondenserad kondenseret",
	"evaporated":       "evaporada évaporé evaporato",
	"sherry":           "jerez xérès xeres",
	"port":             "oporto porto portwein portvin portwijn vinho-do-porto",
	"champagne":        "champán champaña champagner",
	"cider":            "sidra cidre sidro apfelwein",
	"coffee":           "café caffè kaffee kaffe koffie",
	"tonic water":      "tónica tonique",
	"soda":             "gaseosa refresco gazzosa limonade refrigerante refrigerantes refrescos",
	"purée":            "pulpa polpa pulpe püree puré purea coulis",
	"syrup":            "sirup sirap siroop jarabe sirope xarope sciroppo sirop almíbar",
	"tea":              "té thé tè tee thee cha infuso tisana tisane chá",
	"cordial":          "kordial cordiale",
	"nectar":           "néctar nektar nettare",
	"cloudy":           "trouble naturtrüb naturtrüber torbido turbio grumlig",
	"simple":           "semplice simples einfacher einfache enkelvoudig",
	"rich":             "rico riche ricco",
	"old":              "gammel",
	"young":            "joven jeune giovane",
	"brandy":           "weinbrand",
	"solution":         "solución soluzione solução lösung",
	"saline":           "salina",
	"aperitif":         "aperitivo apéritif",
	"Italian":          "italiano italienischer italienisch italien",
	"light":            "leggero leggera ligero ligera léger légère leicht leichter ljus lys lyst chiaro chiara heller helle claro clara-ron",
	"simple syrup":     "sockerlag sukkerlage sukkerlake läuterzucker suikerwater",
	"cognac":           "konjak coñac",
	"lemonade":         "limonada",
	"whisky":           "uísque",
	"agricole":         "agrícola agricolo agricool",
	"silver":           "prata plata argento argent",
	"balsamic":         "balsamico balsamique balsámico balsamisch balsamischer",
	"brine":            "salmuera salamoia saumure lake pekel salmoura",
	"sauce":            "salsa sauce molho sauce soße saus",
	"still":            "plate naturale",
	"powdered":         "pulver en-polvo in-polvere en-poudre em-pó",
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
var linking = keyedWords(`de di d del della dei degli delle des du do da la le les los las el il lo au aux al alla alle allo all ai agli à van von aus mit med av con un una uno dun dune einer eines ein eine einem en ett et agli sulla nel nella os as ao à`)

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

// continental are words, and the ends of words, of tongues whose bars measure in
// centilitres; those of the Americas, where an ounce is poured, write Spanish too.
var (
	continental     = keyedWords(`succo sciroppo liquore purea limone arancia pesca fragola lampone zucchero albume panna spumante acqua jus sirop citron poire fraise pêche sucre lait eau œuf oeuf rhum zumo limette zitrone zucker eiweiß sahne wermut citroen limoen eiwit suiker vermout`)
	continentalEnds = []string{"saft", "sirup", "likör", "likor", "sap", "siroop", "likeur"}
)

// Continental reports whether a name is written in such a tongue.
func Continental(name string) bool {
	return slices.ContainsFunc(strings.Fields(flavor.NormaliseName(name)), func(w string) bool {
		return continental[w] || slices.ContainsFunc(continentalEnds, func(e string) bool { return len(w) > len(e)+leastStem && strings.HasSuffix(w, e) })
	})
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

// orders are the words of a name as they stand, with the last one first, and from the last
// to the first: other tongues write what something is like behind it.
func orders(name string) []string {
	at := strings.LastIndexByte(name, ' ')
	if at < 0 {
		return []string{name}
	}
	if flavour, ok := strings.CutPrefix(name, "bitters "); ok { // which is no bitter lemon
		return []string{flavour + " bitters"}
	}
	words := strings.Fields(name)
	slices.Reverse(words)
	return []string{name, name[at+1:] + " " + name[:at], strings.Join(words, " ")}
}
