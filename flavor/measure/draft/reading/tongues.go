package reading

// tongues are words of other tongues for what bars pour, as keys that
// [flavor.NormaliseName] makes; what they stand for is a name that the finder is
// asked for. Common practice. A lemon of Latin America may be a lime: "limon" asks.
var tongues = keyed(map[string]string{
	// German
	"Zitrone": "lemon juice", "Zitronensaft": "lemon juice", "Limette": "lime juice", "Limettensaft": "lime juice", "Orangensaft": "orange juice", "Ananassaft": "pineapple juice",
	"Zucker": "simple syrup", "Zuckersirup": "simple syrup", "Läuterzucker": "simple syrup", "roter Wermut": "sweet vermouth", "süßer Wermut": "sweet vermouth", "trockener Wermut": "dry vermouth",
	"Rum weiß": "white rum", "weißer Rum": "white rum", "brauner Rum": "dark rum", "Eiweiß": "egg white", "Sahne": "heavy cream", "Honig": "honey syrup", "Minze": "mint", "Sodawasser": "soda water",
	"Wodka": "vodka", "Tomatensaft": "tomato juice",
	// French
	"citron": "lemon juice", "jus de citron": "lemon juice", "citron vert": "lime juice", "jus de citron vert": "lime juice", "jus d'orange": "orange juice", "jus d'ananas": "pineapple juice",
	"sirop": "simple syrup", "sirop de sucre": "simple syrup", "sucre": "simple syrup", "sirop de canne": "cane syrup", "sirop de sucre de canne": "cane syrup", "rhum blanc": "white rum",
	"vermouth rouge": "sweet vermouth", "vermouth sec": "dry vermouth", "blanc d'oeuf": "egg white", "blanc d'œuf": "egg white", "eau gazeuse": "soda water", "feuilles de menthe": "mint",
	// Spanish and Portuguese
	"jugo de lima": "lime juice", "zumo de lima": "lime juice", "zumo de limón": "lemon juice", "lima": "lime juice", "sirope": "simple syrup", "sirope de agave": "agave syrup", "jarabe de agave": "agave syrup", "jarabe": "simple syrup", "jarabe simple": "simple syrup", "almíbar": "simple syrup",
	"azúcar": "simple syrup", "vermut rojo": "sweet vermouth", "vermut seco": "dry vermouth", "clara de huevo": "egg white", "clara": "egg white", "ron blanco": "white rum", "zumo de naranja": "orange juice",
	"jugo de naranja": "orange juice", "jugo de piña": "pineapple juice", "toronja": "grapefruit juice", "toronja soda": "grapefruit soda", "agua con gas": "soda water", "limão": "lime juice", "açúcar": "simple syrup",
	"hojas de menta": "mint", "hierbabuena": "mint",
	// Italian
	"succo di limone": "lemon juice", "limone": "lemon juice", "succo di lime": "lime juice", "zucchero": "simple syrup", "sciroppo di zucchero": "simple syrup", "vermut rosso": "sweet vermouth",
	"vermut dry": "dry vermouth", "albume": "egg white", "acqua tonica": "tonic water", "menta": "mint", "panna": "heavy cream", "succo d'arancia": "orange juice",
	// Swedish, Danish and Norwegian
	"citronjuice": "lemon juice", "citronsaft": "lemon juice", "limejuice": "lime juice", "sockerlag": "simple syrup", "sukkerlage": "simple syrup", "sukkersirup": "simple syrup", "äggvita": "egg white",
})

// askTongue are words that name one fruit in one country and another in the next.
var askTongue = map[string][]string{"limon": {"lime juice", "lemon juice"}, "jugo de limon": {"lime juice", "lemon juice"}, "suco de limao": {"lime juice", "lemon juice"}}
