package data

// finerTriples are facts of the trade as triples are, finer ones, written down
// before the likenesses were looked at: 60 of 64 held then. Basil has been mended
// since, a list shorter than the mints'. Three do not hold: fernet reads as near
// to a red bitter as to an alpine amaro, sweet vermouth nearer to a sweet white one
// than to a quinquina, and a plain syrup smells of nothing, so it is like nothing
// that does.
var finerTriples = [][3]string{
	// spirits: a class keeps together
	{"white-rum", "gold-rum", "vodka"},
	{"gold-rum", "white-rum", "cognac"},
	{"gold-rum", "aged-rum", "bourbon"},
	{"aged-rum", "dark-rum", "rye-whiskey"},
	{"white-rum", "rhum-agricole-blanc", "blanco-tequila"},
	{"spiced-rum", "gold-rum", "falernum"},
	{"coconut-rum", "cream-of-coconut", "aged-rum"},
	{"coconut-rum", "coconut-syrup", "pineapple-rum"},
	{"pineapple-rum", "pineapple-liqueur", "spiced-rum"},
	{"reposado-tequila", "anejo-tequila", "mezcal"},
	{"reposado-tequila", "blanco-tequila", "bourbon"},
	{"irish-whiskey", "canadian-whisky", "peated-malt"},
	{"single-malt", "sherried-malt", "rye-whiskey"},
	{"japanese-whisky", "single-malt", "bourbon"},
	{"contemporary-gin", "london-dry-gin", "genever"},
	{"genever", "young-genever", "blanco-tequila"},
	{"barrel-aged-gin", "london-dry-gin", "cognac"},
	{"aquavit", "dill-aquavit", "london-dry-gin"},
	{"pisco", "grape-vodka", "white-rum"},
	{"vodka", "potato-vodka", "soju"},
	{"sambuca", "anisette", "kummel"},
	{"aged-jamaican-rum", "aged-rum", "aged-cachaca"},
	{"cachaca", "rhum-agricole-blanc", "gold-rum"},
	// flowers
	{"creme-de-violette", "parfait-amour", "rose-liqueur"},
	{"rose-water", "rose-syrup", "orange-flower-water"},
	{"orange-flower-water", "jasmine-syrup", "violet-syrup"},
	{"violet-syrup", "raspberry-syrup", "orange-flower-syrup"},
	{"lavender-liqueur", "bergamot-liqueur", "coffee-liqueur"},
	{"elderflower-liqueur", "late-harvest-wine", "creme-de-cacao"},
	// fruit
	{"grapefruit-juice", "pomelo-juice", "lemon-juice"},
	{"grapefruit-juice", "grapefruit-liqueur", "orange-juice"},
	{"grapefruit-juice", "orange-juice", "apple-juice"},
	{"grapefruit-soda", "grapefruit-cordial", "orange-soda"},
	{"raspberry-syrup", "raspberry-liqueur", "strawberry-syrup"},
	{"raspberry-syrup", "blackberry-syrup", "pineapple-syrup"},
	{"raspberry-puree", "strawberry-puree", "peach-puree"},
	{"raspberry-spirit", "raspberry-liqueur", "kirsch"},
	{"blackcurrant-syrup", "blackberry-syrup", "strawberry-syrup"},
	{"strawberry-liqueur", "raspberry-liqueur", "cherry-liqueur"},
	{"pear-liqueur", "spiced-pear-liqueur", "banana-liqueur"},
	{"mango-puree", "peach-puree", "raspberry-puree"},
	{"passion-fruit-liqueur", "mango-liqueur", "pear-liqueur"},
	{"pineapple-juice", "mango-nectar", "cranberry-juice"},
	{"melon-liqueur", "cucumber-liqueur", "cherry-liqueur"},
	{"lime-cordial", "lime-liqueur", "orange-cordial"},
	{"maraschino-liqueur", "cherry-liqueur", "hazelnut-liqueur"},
	{"peach-bitters", "peach-liqueur", "orange-bitters"},
	// bitter, wine, herbs
	{"red-bitter-aperitif", "light-orange-bitter-aperitif", "fernet"},
	{"fernet", "strong-alpine-amaro", "red-bitter-aperitif"},
	{"sweet-vermouth", "vanilla-sweet-vermouth", "dry-vermouth"},
	{"dry-vermouth", "extra-dry-vermouth", "fino-sherry"},
	{"sweet-vermouth", "quinquina", "bianco-vermouth"},
	{"amontillado-sherry", "oloroso-sherry", "fino-sherry"},
	{"green-herbal-liqueur", "genepy", "triple-sec"},
	{"celery-bitters", "celery-juice", "aromatic-bitters"},
	{"mint", "basil", "thyme"},
	// nut, roast, spice, sugar, savoury
	{"coffee-liqueur", "espresso", "creme-de-cacao"},
	{"walnut-liqueur", "black-walnut-bitters", "amaretto"},
	{"demerara-syrup", "simple-syrup", "maple-syrup"},
	{"ginger-beer", "ginger-liqueur", "cola"},
	{"cinnamon-syrup", "cinnamon-liqueur", "clove-syrup"},
	{"soy-sauce", "worcestershire-style-sauce", "fish-sauce"},
	{"olive-brine", "caper-brine", "pickle-brine"},
	{"smoked-tea", "mezcal", "green-tea"},
}
