package naming

// tongues are words of other tongues for what bars pour, as keys that
// [flavor.NormaliseName] makes; what they stand for is a name that the finder is
// asked for. Common practice. A lemon of Latin America may be a lime: "limon" asks.
var tongues = keyed(map[string]string{
	// German
	"Zitrone": "lemon", "Zitronensaft": "lemon juice", "Limette": "lime", "Limettensaft": "lime juice", "Orangensaft": "orange juice", "Ananassaft": "pineapple juice",
	"Zucker": "sugar", "Zuckersirup": "simple syrup", "Läuterzucker": "simple syrup", "roter Wermut": "sweet vermouth", "süßer Wermut": "sweet vermouth", "trockener Wermut": "dry vermouth",
	"Rum weiß": "white rum", "weißer Rum": "white rum", "brauner Rum": "dark rum", "Eiweiß": "egg white", "Eiweiss": "egg white", "Sahne": "heavy cream", "Honig": "honey", "Minze": "mint", "Sodawasser": "soda water",
	"Wodka": "vodka", "Kokoswasser": "coconut water", "Kokoscreme": "cream of coconut", "Sprudelwasser": "soda water", "brauner Zuckersirup": "brown sugar syrup", "Limettensirup": "lime cordial", "Schwarztee": "black tea", "Williamsbirne": "pear spirit", "Williams Christ": "pear spirit", "Sekt brut": "sekt", "rauchiger Scotch": "peated scotch", "Scotch rauchig": "peated scotch", "Tomatensaft": "tomato juice", "Kaffeelikör": "coffee liqueur", "Holunderblütensirup": "elderflower syrup", "Holunderblütenlikör": "elderflower liqueur",
	"Agavendicksaft": "agave nectar", "Agavensirup": "agave syrup", "Honigsirup": "honey syrup", "Rohrzuckersirup": "cane syrup", "Rohrzucker": "raw sugar", "Ahornsirup": "maple syrup",
	"Ingwersirup": "ginger syrup", "Ingwerbier": "ginger beer", "Ingwer": "ginger", "Zimtsirup": "cinnamon syrup", "Vanillesirup": "vanilla syrup", "Himbeersirup": "raspberry syrup",
	"Erdbeersirup": "strawberry syrup", "Mandelsirup": "orgeat", "Grenadinesirup": "grenadine", "Grapefruitsaft": "grapefruit juice", "Apfelsaft": "apple juice", "Cranberrysaft": "cranberry juice",
	"Maracujasaft": "passion fruit juice", "Maracujasirup": "passion fruit syrup", "Birnensaft": "pear juice", "Rote Bete Saft": "beetroot juice", "Kokosmilch": "coconut milk", "Kokossahne": "cream of coconut",
	"Pfirsichlikör": "peach liqueur", "Aprikosenlikör": "apricot liqueur", "Kräuterlikör": "herbal liqueur", "Orangenlikör": "orange liqueur", "Kakaolikör": "crème de cacao", "Sekt": "sekt", "Weißwein": "dry white wine",
	"Rotwein": "red wine", "Portwein": "ruby port", "weißer Portwein": "white port", "Weinbrand": "brandy", "Apfelbrand": "apple brandy", "Kirschwasser": "kirsch", "Zitronensirup": "lemon cordial",
	"Orangenbitter": "orange bitters", "Aromabitter": "aromatic bitters", "Salzlösung": "saline", "Kochsalzlösung": "saline", "Salzlake": "saline", "Olivenlake": "olive brine", "Milch": "milk", "Vollmilch": "milk",
	"Eigelb": "egg yolk", "Vollei": "whole egg", "Ei": "whole egg", "Wasser": "water", "Mineralwasser": "soda water", "Sprudel": "soda water", "Kaffee": "coffee", "Gurke": "cucumber", "Basilikum": "basil",
	"Rosmarin": "rosemary", "Erdbeere": "strawberry", "Erdbeeren": "strawberry", "Himbeeren": "raspberry", "Brombeeren": "blackberry", "Minzblätter": "mint", "Muskat": "nutmeg", "Traubensaft": "white grape juice",
	"Rum brauner": "dark rum", "Rum braun": "dark rum", "Rum weißer": "white rum", "weisser Rum": "white rum", "Schlagsahne": "heavy cream", "heißes Wasser": "water", "Puderzucker": "powdered sugar",
	// French
	"citron": "lemon", "jus de citron": "lemon juice", "citron vert": "lime", "jus de citron vert": "lime juice", "jus d'orange": "orange juice", "jus d'ananas": "pineapple juice",
	"sirop": "simple syrup", "sirop de sucre": "simple syrup", "sucre": "sugar", "sirop de canne": "cane syrup", "sirop de sucre de canne": "cane syrup", "rhum blanc": "white rum",
	"vodka pomme": "vodka", "liqueur de café": "coffee liqueur", "jus de pamplemousse": "grapefruit juice", "jus de pomme": "apple juice", "jus de canneberge": "cranberry juice", "jus de citron jaune": "lemon juice",
	"citron jaune": "lemon juice", "citron pressé": "lemon juice", "jus de lime": "lime juice", "jus de fruit de la passion": "passion fruit juice", "sirop d'agave": "agave syrup", "sirop d'érable": "maple syrup",
	"sirop de miel": "honey syrup", "miel": "honey", "sirop d'orgeat": "orgeat", "sirop de gingembre": "ginger syrup", "sirop de framboise": "raspberry syrup", "sirop de fraise": "strawberry syrup",
	"sirop de vanille": "vanilla syrup", "sirop de cannelle": "cinnamon syrup", "sirop simple": "simple syrup", "grenadine sirop": "grenadine", "rhum ambré": "gold rum", "rhum vieux": "rhum agricole vieux",
	"rhum brun": "dark rum", "vermouth doux": "sweet vermouth", "liqueur de sureau": "elderflower liqueur", "liqueur de pêche": "peach liqueur", "liqueur d'abricot": "apricot liqueur", "crème fraîche liquide": "heavy cream",
	"lait": "milk", "jaune d'oeuf": "egg yolk", "oeuf entier": "whole egg", "œuf entier": "whole egg", "eau": "water", "eau de seltz": "soda water", "eau pétillante": "soda water", "limonade": "sparkling lemonade", "menthe fraîche": "mint", "concombre": "cucumber",
	"vin blanc": "dry white wine", "vin rouge": "red wine", "vin mousseux": "sparkling wine", "bière de gingembre": "ginger beer", "bitter orange": "orange bitters", "sucre en poudre": "powdered sugar", "thé noir": "black tea",
	"rum blanc": "white rum", "crème de coco": "cream of coconut", "vermouth rouge": "sweet vermouth", "vermouth sec": "dry vermouth", "blanc d'oeuf": "egg white", "blanc d'œuf": "egg white", "eau gazeuse": "soda water", "feuilles de menthe": "mint",
	// Spanish and Portuguese
	"jugo de lima": "lime juice", "limón verde": "lime juice", "jugo de limón verde": "lime juice", "zumo de limón verde": "lime juice", "limón amarillo": "lemon juice", "jugo de limón amarillo": "lemon juice", "zumo de lima": "lime juice", "zumo de limón": "lemon juice", "lima": "lime", "sirope": "simple syrup", "sirope de agave": "agave syrup", "jarabe de agave": "agave syrup", "jarabe": "simple syrup", "jarabe simple": "simple syrup", "almíbar": "simple syrup",
	"azúcar": "sugar", "vermut rojo": "sweet vermouth", "vermut seco": "dry vermouth", "clara de huevo": "egg white", "clara": "egg white", "ron blanco": "white rum", "zumo de naranja": "orange juice",
	"jugo de naranja": "orange juice", "jugo de piña": "pineapple juice", "toronja": "grapefruit", "toronja soda": "grapefruit soda", "agua con gas": "soda water", "limão": "lime juice", "açúcar": "sugar",
	"hojas de menta": "mint", "hierbabuena": "mint", "ginebra": "gin", "gin seco": "gin", "tónica": "tonic water", "agua tónica": "tonic water", "ron": "rum", "ron añejo": "aged rum", "ron oscuro": "dark rum", "ron dorado": "gold rum",
	"whisky de centeno": "rye whiskey", "jugo de toronja": "grapefruit juice", "zumo de pomelo": "grapefruit juice", "zumo de piña": "pineapple juice", "zumo de tomate": "tomato juice", "jugo de tomate": "tomato juice",
	"zumo de manzana": "apple juice", "jugo de arándano": "cranberry juice", "zumo de arándanos": "cranberry juice", "miel de abeja": "honey syrup", "sirope de miel": "honey syrup", "jarabe de goma": "gum syrup", "jarabe natural": "simple syrup", "sirope de canela": "cinnamon syrup",
	"sirope de jengibre": "ginger syrup", "granadina": "grenadine", "licor de café": "coffee liqueur", "licor de saúco": "elderflower liqueur", "licor de naranja": "orange liqueur", "licor de melocotón": "peach liqueur", "licor de durazno": "peach liqueur",
	"nata": "heavy cream", "crema de leche": "heavy cream", "leche": "milk", "leche de coco": "coconut milk", "crema de coco": "cream of coconut", "huevo": "whole egg", "yema": "egg yolk", "yema de huevo": "egg yolk", "agua": "water",
	"cerveza de jengibre": "ginger beer", "refresco de cola": "cola", "vino blanco": "dry white wine", "vino tinto": "red wine", "jerez fino": "fino sherry", "vermut": "vermouth", "vermut blanco": "bianco vermouth", "pepino": "cucumber", "albahaca": "basil",
	"amargo aromático": "aromatic bitters", "amargo de naranja": "orange bitters", "bitter aromático": "aromatic bitters", "suco de abacaxi": "pineapple juice", "xarope de açúcar": "simple syrup", "xarope simples": "simple syrup", "creme de leite": "heavy cream", "natas": "heavy cream", "espumante brut": "sparkling wine", "água com gás": "soda water", "hortelã": "mint", "clara de ovo": "egg white",
	// Italian
	"succo di limone": "lemon juice", "limone": "lemon", "succo di lime": "lime juice", "zucchero": "sugar", "sciroppo di zucchero": "simple syrup", "vermut rosso": "sweet vermouth",
	"vermouth rosso": "sweet vermouth", "vermut bianco": "bianco vermouth", "sciroppo": "simple syrup", "sciroppo di agave": "agave syrup", "sciroppo d'agave": "agave syrup", "sciroppo di miele": "honey syrup", "miele": "honey", "sciroppo di vaniglia": "vanilla syrup",
	"sciroppo di zenzero": "ginger syrup", "orzata": "orgeat", "granatina": "grenadine", "liquore al caffè": "coffee liqueur", "liquore di sambuco": "elderflower liqueur", "succo di pompelmo": "grapefruit juice", "pompelmo": "grapefruit", "succo di ananas": "pineapple juice", "succo d'ananas": "pineapple juice",
	"succo di mela": "apple juice", "succo di pomodoro": "tomato juice", "succo di mirtillo": "cranberry juice", "arancia": "orange", "rum bianco": "white rum", "rum scuro": "dark rum", "rum invecchiato": "aged rum", "acqua": "water", "acqua frizzante": "soda water", "seltz": "soda water", "soda acqua": "soda water",
	"vino bianco": "dry white wine", "vino rosso": "red wine", "spumante": "sparkling wine", "latte": "milk", "tuorlo": "egg yolk", "uovo": "whole egg", "basilico": "basil", "cetriolo": "cucumber", "caffè espresso": "espresso", "caffè": "espresso", "latte di cocco": "coconut milk", "crema di cocco": "cream of coconut",
	"bitter rosso": "red bitter aperitif", "bitter rojo": "red bitter aperitif", "roter Bitter": "red bitter aperitif", "bitter rouge": "red bitter aperitif", "tør vermouth": "dry vermouth", "torr vermouth": "dry vermouth", "sød vermouth": "sweet vermouth", "söt vermouth": "sweet vermouth", "rød vermouth": "sweet vermouth", "vodka alla vaniglia": "vanilla vodka", "frutto della passione": "passion fruit", "vermut dry": "dry vermouth", "albume": "egg white", "acqua tonica": "tonic water", "menta": "mint", "panna": "heavy cream", "succo d'arancia": "orange juice",
	// Swedish, Danish and Norwegian
	"agurk": "cucumber", "gurka": "cucumber", "mynte": "mint", "mynta": "mint", "appelsin": "orange", "apelsin": "orange", "sukker": "sugar", "socker": "sugar", "vand": "water", "vatten": "water", "citronjuice": "lemon juice", "citronsaft": "lemon juice", "limejuice": "lime juice", "sockerlag": "simple syrup", "sukkerlage": "simple syrup", "sukkersirup": "simple syrup", "äggvita": "egg white", "eggehvite": "egg white", "æggehvide": "egg white", "sockersirap": "simple syrup", "limesaft": "lime juice", "sitronsaft": "lemon juice", "sitron": "lemon", "appelsinjuice": "orange juice", "apelsinjuice": "orange juice", "grädde": "heavy cream", "fløde": "heavy cream", "honung": "honey", "kaffelikör": "coffee liqueur", "fläderlikör": "elderflower liqueur", "flädersirap": "elderflower syrup", "hyldeblomstsirup": "elderflower syrup", "tranbärsjuice": "cranberry juice", "ananasjuice": "pineapple juice",
	"fläderblomssaft": "elderflower cordial", "flädersaft": "elderflower cordial", "hyldeblomstsaft": "elderflower cordial", "hylleblomstsaft": "elderflower cordial", "rabarbersaft": "rhubarb cordial", "äppelmust": "cloudy apple juice", "æblemost": "cloudy apple juice", "eplemost": "cloudy apple juice", "sodavand": "soda water", "rødvin": "red wine", "hvidvin": "dry white wine",
	// Dutch
	"citroen": "lemon", "limoen": "lime", "citroensap": "lemon juice", "limoensap": "lime juice", "suikersiroop": "simple syrup", "eiwit": "egg white", "sinaasappelsap": "orange juice", "suiker": "sugar", "rietsuikersiroop": "cane syrup", "eigeel": "egg yolk", "vlierbloesemsiroop": "elderflower syrup", "slagroom": "heavy cream", "honingsiroop": "honey syrup", "gembersiroop": "ginger syrup", "gemberbier": "ginger beer", "muntblaadjes": "mint", "bruiswater": "soda water",
})

// askTongue are words that name one fruit in one country and another in the next.
var askTongue = map[string][]string{"limon": {"lime juice", "lemon juice"}, "jugo de limon": {"lime juice", "lemon juice"}, "suco de limao": {"lime juice", "lemon juice"}}

// FruitsOf are the juices that a word names in one country and in the next, the one of
// the Americas first; nil for a word that names one.
func FruitsOf(key string) []string { return askTongue[key] }
