package draft

import "counterpour/flavor"

// approximations stand before an amount or a unit. The first list changes
// nothing that can be measured; the second is said in a note.
var (
	looseWords = set(`about approx approximately ca circa roughly around full level even exactly ~ good`)
	biasWords  = set(`scant fat heavy generous healthy short heaping heaped rounded bare hefty big small large tiny light thick thin nearly almost barely just under over shy`)
)

// leadWords begin a pour and say nothing of it.
var leadWords = set(`add pour measure plus then and with also combine use using mix start begin`)

// measures are what bars say for an amount of another unit: common practice.
var measures = map[string]struct {
	amount float64
	unit   flavor.Unit
	note   string
}{
	"dl": {10, flavor.Centilitre, ""}, "decilitre": {10, flavor.Centilitre, ""}, "decilitres": {10, flavor.Centilitre, ""},
	"deciliter": {10, flavor.Centilitre, ""}, "deciliters": {10, flavor.Centilitre, ""},
	"l": {100, flavor.Centilitre, ""}, "lt": {100, flavor.Centilitre, ""}, "ltr": {100, flavor.Centilitre, ""}, "litre": {100, flavor.Centilitre, ""}, "litres": {100, flavor.Centilitre, ""},
	"liter": {100, flavor.Centilitre, ""}, "liters": {100, flavor.Centilitre, ""}, "qt": {32, flavor.Ounce, "a quart is taken as 32 oz"}, "qts": {32, flavor.Ounce, "a quart is taken as 32 oz"},
	"quart": {32, flavor.Ounce, "a quart is taken as 32 oz"}, "quarts": {32, flavor.Ounce, "a quart is taken as 32 oz"},
	"jigger": {1.5, flavor.Ounce, "a jigger is taken as 1½ oz"}, "jiggers": {1.5, flavor.Ounce, "a jigger is taken as 1½ oz"},
	"jig":  {1.5, flavor.Ounce, "a jigger is taken as 1½ oz"},
	"pony": {1, flavor.Ounce, "a pony is taken as 1 oz"}, "ponies": {1, flavor.Ounce, "a pony is taken as 1 oz"},
	"measure": {1, flavor.PartUnit, "a measure is taken as a part"}, "measures": {1, flavor.PartUnit, "a measure is taken as a part"},
	"cup": {8, flavor.Ounce, "a cup is taken as 8 oz"}, "cups": {8, flavor.Ounce, "a cup is taken as 8 oz"},
	"spritzer": {1, flavor.Dash, ""},
	"d":        {1, flavor.Dash, "“d” is taken as a dash"},
	"shot":     {1.5, flavor.Ounce, ""}, "shots": {1.5, flavor.Ounce, ""},
}

// otherMeasures are measures that are not units of the bar here. After a number
// they are a fault, not part of a name.
var otherMeasures = set(`cup cups pint pints gallon gallons lb lbs pound pounds kg mg
gill gills measure measures glug glugs finger fingers nip nips bottle bottles can cans handful handfuls spoon spoons spoonful spoonfuls
wineglass wineglasses bunch bunches glass glasses dram drams knob knobs dollop dollops batch`)

// parts are pieces of a fruit that are a share of it: common practice.
var partsOfFruit = map[string]float64{"cheek": 1.0 / 3, "cheeks": 1.0 / 3, "half": 0.5, "halves": 0.5, "quarter": 0.25, "quarters": 0.25, "eighth": 0.125, "eighths": 0.125}

// tail is what the words after a name say.
type tail struct {
	unit     flavor.Unit // of a pour without an amount
	after    bool
	muddled  bool
	squeezed bool
	garnish  bool
	each     bool
	remark   string // kept as a note
	refuse   bool   // states no amount: "to taste"
	beside   bool   // is served beside the drink, and kept as its garnish
}

// tails are the words that may follow a name, the longest first.
var tails = []struct {
	words []string
	tail  tail
}{
	{[]string{"to", "top", "up"}, tail{unit: flavor.Top, after: true}}, {[]string{"to", "top", "off"}, tail{unit: flavor.Top, after: true}},
	{[]string{"to", "fill", "up"}, tail{unit: flavor.Top, after: true}}, {[]string{"to", "top", "with"}, tail{unit: flavor.Top, after: true}},
	{[]string{"for", "the", "rinse"}, tail{unit: flavor.Rinse, after: true}}, {[]string{"as", "a", "float"}, tail{unit: flavor.Float, after: true}},
	{[]string{"to", "top"}, tail{unit: flavor.Top, after: true}}, {[]string{"top", "up"}, tail{unit: flavor.Top, after: true}},
	{[]string{"top", "off"}, tail{unit: flavor.Top, after: true}}, {[]string{"to", "fill"}, tail{unit: flavor.Top, after: true}},
	{[]string{"on", "top"}, tail{unit: flavor.Top, after: true}}, {[]string{"on", "foam"}, tail{unit: flavor.Top, after: true}}, {[]string{"on", "the", "foam"}, tail{unit: flavor.Top, after: true}},
	{[]string{"auffüllen"}, tail{unit: flavor.Top, after: true}}, {[]string{"aufgießen"}, tail{unit: flavor.Top, after: true}}, {[]string{"for", "topping"}, tail{unit: flavor.Top, after: true}},
	{[]string{"to", "lengthen"}, tail{unit: flavor.Top, after: true}}, {[]string{"to", "finish"}, tail{unit: flavor.Top, after: true}},
	{[]string{"to", "float"}, tail{unit: flavor.Float, after: true}}, {[]string{"floated", "on", "top"}, tail{unit: flavor.Float, after: true}},
	{[]string{"to", "rinse"}, tail{unit: flavor.Rinse, after: true}}, {[]string{"for", "rinse"}, tail{unit: flavor.Rinse, after: true}},
	{[]string{"to", "spritz"}, tail{unit: flavor.Spritz, after: true}}, {[]string{"to", "mist"}, tail{unit: flavor.Spritz, after: true}},
	{[]string{"to", "taste"}, tail{refuse: true}}, {[]string{"as", "needed"}, tail{refuse: true}}, {[]string{"if", "needed"}, tail{refuse: true}},
	{[]string{"for", "muddling"}, tail{muddled: true}}, {[]string{"to", "muddle"}, tail{muddled: true}},
	{[]string{"to", "garnish"}, tail{garnish: true}}, {[]string{"for", "garnish"}, tail{garnish: true}}, {[]string{"as", "garnish"}, tail{garnish: true}},
	{[]string{"as", "a", "garnish"}, tail{garnish: true}}, {[]string{"for", "the", "garnish"}, tail{garnish: true}}, {[]string{"garnish"}, tail{garnish: true}},
	{[]string{"top"}, tail{unit: flavor.Top, after: true}}, {[]string{"topper"}, tail{unit: flavor.Top, after: true}}, {[]string{"topped"}, tail{unit: flavor.Top, after: true}},
	{[]string{"float"}, tail{unit: flavor.Float, after: true}}, {[]string{"floated"}, tail{unit: flavor.Float, after: true}}, {[]string{"flt"}, tail{unit: flavor.Float, after: true}}, {[]string{"floater"}, tail{unit: flavor.Float, after: true}},
	{[]string{"rinse"}, tail{unit: flavor.Rinse, after: true}}, {[]string{"rinsed"}, tail{unit: flavor.Rinse, after: true}}, {[]string{"wash"}, tail{unit: flavor.Rinse, after: true}},
	{[]string{"spritz"}, tail{unit: flavor.Spritz, after: true}}, {[]string{"spray"}, tail{unit: flavor.Spritz, after: true}}, {[]string{"mist"}, tail{unit: flavor.Spritz, after: true}},
	{[]string{"muddled"}, tail{muddled: true}}, {[]string{"mudd"}, tail{muddled: true}}, {[]string{"muddle"}, tail{muddled: true}},
	{[]string{"squeezed"}, tail{squeezed: true}}, {[]string{"juiced"}, tail{squeezed: true}}, {[]string{"squeezed", "in"}, tail{squeezed: true}},
	{[]string{"on", "the", "side"}, tail{garnish: true, beside: true}}, {[]string{"on", "side"}, tail{garnish: true, beside: true}},
	{[]string{"squeeze"}, tail{unit: flavor.Wedge, remark: "a squeeze is taken as a wedge"}},
	{[]string{"drizzled"}, tail{unit: flavor.Float, after: true}}, {[]string{"drizzled", "over"}, tail{unit: flavor.Float, after: true}},
	{[]string{"poured", "over"}, tail{unit: flavor.Float, after: true}}, {[]string{"layered"}, tail{unit: flavor.Float, after: true}},
	{[]string{"over", "the", "top"}, tail{unit: flavor.Float, after: true}}, {[]string{"over", "top"}, tail{unit: flavor.Float, after: true}},
	{[]string{"layered", "on", "top"}, tail{unit: flavor.Float, after: true}}, {[]string{"drizzled", "on", "top"}, tail{unit: flavor.Float, after: true}},
	{[]string{"dropped", "in"}, tail{}}, {[]string{"drop", "in"}, tail{}},
	{[]string{"in", "shaker"}, tail{}}, {[]string{"in", "the", "shaker"}, tail{}}, {[]string{"in", "tin"}, tail{}}, {[]string{"in", "the", "tin"}, tail{}},
	{[]string{"in", "glass"}, tail{}}, {[]string{"in", "the", "glass"}, tail{}},
	{[]string{"freshly", "squeezed"}, tail{squeezed: true}}, {[]string{"fresh", "squeezed"}, tail{squeezed: true}},
	{[]string{"optional"}, tail{remark: "is optional, and counted"}}, {[]string{"each"}, tail{each: true}}, {[]string{"ea"}, tail{each: true}},
}

// cutWords say in what a fruit is cut, after "in" or "into": it is the same fruit.
var cutWords = set(`wedges wedge quarters quarter halves half slices chunks cubes pieces wheels eighths rounds`)

// cutVerbs say that a fruit is cut.
var cutVerbs = set(`cut quartered halved sliced chopped diced`)

// cutAt returns how many tokens at the end say how a fruit is cut: "cut in wedges".
func cutAt(toks []token) int {
	n := len(toks)
	if n < 3 || !cutWords[toks[n-1].text] || toks[n-2].text != "in" && toks[n-2].text != "into" {
		return 0
	}
	if w := toks[n-3].text; n > 3 && (w == "cut" || w == "sliced" || w == "chopped") {
		return 3
	}
	return 2
}

// vesselAt returns how many tokens at the end say with which ice, or into which
// vessel, a pour goes: "with ice", "to a tin", "over ice in a rocks glass".
func vesselAt(toks []token) int {
	for i := 1; i < len(toks)-1; i++ {
		switch toks[i].text {
		case "with", "over", "to", "in", "into", "on":
			rest := toks[i:]
			s := readServing(rest)
			last := rest[len(rest)-1].text
			if len(s.unknown) == 0 && s.method == "" && (iceOnly(rest) || s.glass != "" || last == "tin" || last == "shaker" || last == "glass") {
				return len(rest)
			}
		}
	}
	return 0
}

// garnishNouns end what is laid on a drink rather than poured into it.
var garnishNouns = set(`twist twists peel peels zest wheel wheels halfwheel half-wheel half-wheels wedge wedges slice slices coin coins swath swathe ribbon ribbons fan fans flag
cherry cherries olive olives onion onions sprig sprigs bouquet crown stick stalk frond fronds spear skewer pick flower flowers petal petals cheek cheeks curl spiral horse's neck
umbrella leaf leaves berry berries dust dusting nutmeg shavings bean beans tuft horsesneck crescent disc disk knot blossom bloom pod quill twirl wing feather straw chip crisp
oils shell shells hull husk dots
raspberry raspberries blackberry blackberries strawberry strawberries mint rosemary basil thyme none kirsche cocktailkirsche zeste orangenzeste zitronenzeste`)

// garnishVerbs begin what is laid on a drink.
var garnishVerbs = set(`garnish garnished garn gar express expressed expressing grate grated sprinkle sprinkled dust dusted dusting twist decorate flamed flame dehydrated spanked slapped skewered charred torched candied crystallised crystallized`)

// labels are the words before a colon, and what follows them.
type label uint8

const (
	noLabel      label = iota
	labelName          // the drink's name
	labelPours         // pours follow
	labelServing       // method, service, ice
	labelStep          // a step, kept as it is
	labelGlass
	labelGarnish
	labelRim
	labelRemark
)

var labels = map[string]label{
	"name": labelName, "drink": labelName, "cocktail": labelName, "title": labelName, "spec": labelName, "recipe": labelName,
	"ingredients": labelPours, "ingredient": labelPours, "pours": labelPours, "base": labelPours, "tin": labelPours, "shaker": labelPours, "in the tin": labelPours,
	"in tin": labelPours, "in shaker": labelPours, "in glass": labelPours, "in the glass": labelPours, "build order": labelPours, "mix": labelPours, "specs": labelPours, "combine": labelPours,
	"modifiers": labelPours, "modifier": labelPours, "citrus": labelPours, "sweet": labelPours, "sour": labelPours, "strong": labelPours, "weak": labelPours, "after": labelPours, "add": labelPours,
	"cheater": labelPours, "bitters": labelPours, "spirit": labelPours, "spirits": labelPours, "liqueur": labelPours, "mixer": labelPours, "short tin": labelPours, "large tin": labelPours, "small tin": labelPours,
	"method": labelServing, "service": labelServing, "serve": labelServing, "served": labelServing, "ice": labelServing, "technique": labelServing, "style": labelServing,
	"mixing": labelServing, "prep": labelServing, "temp": labelServing, "temperature": labelServing, "strain": labelServing,
	"directions": labelServing, "instructions": labelServing, "preparation": labelServing, "procedure": labelServing, "steps": labelServing, "how": labelServing, "to make": labelServing,
	"step":  labelStep,
	"glass": labelGlass, "glassware": labelGlass, "vessel": labelGlass, "serve in": labelGlass, "served in": labelGlass, "glas": labelGlass,
	"garnish": labelGarnish, "garnishes": labelGarnish, "garn": labelGarnish, "gar": labelGarnish, "g": labelGarnish, "top note": labelGarnish, "finish with": labelGarnish, "decoration": labelGarnish,
	"rim": labelRim, "rimmed": labelRim,
	"allergens": labelRemark, "allergen": labelRemark, "contains": labelRemark, "price": labelRemark,
	"note": labelRemark, "notes": labelRemark, "source": labelRemark, "by": labelRemark, "credit": labelRemark, "comment": labelRemark, "comments": labelRemark, "remark": labelRemark,
	"yield": labelRemark, "serves": labelRemark, "makes": labelRemark, "date": labelRemark, "author": labelRemark, "tasting": labelRemark, "history": labelRemark, "category": labelRemark, "tags": labelRemark,
}
