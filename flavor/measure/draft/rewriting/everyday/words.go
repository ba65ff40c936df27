package everyday

import (
	"strings"

	"counterpour/flavor/measure/draft/names/lexicon"
	"counterpour/flavor/measure/vocabulary"
)

// spoken are everyday words that a list of nouns, verbs and adjectives lacks, or that came into use
// after it, and those of bars that pour nothing.
var spoken = vocabulary.Words(`
a an the this that these those my your his her its our their mine yours hers ours theirs whose
i me you he him she it we us they them who whom what which where when why how there here
and but if as than though although because since while until till whether
of for from with at by to into onto about above across after against along among around before behind
below beneath beside between beyond during except inside near outside past through throughout toward towards under
upon via within on in out off over am is are was were be been being do does did done doing have has had having
can could may might must shall should will would ought cannot
i'm i've i'd i'll you're you've you'd you'll he's she's it's it'd we're we've we'd we'll they're they've that's there's here's
what's who's let's isn't aren't wasn't weren't doesn't didn't hasn't haven't won't wouldn't can't cant couldn't shouldn't
im ive its thats dont doesnt isnt wont cant u ur r pls plz thx ty tbh imo btw fyi asap lol haha omg ok okay yes yeah yep oh ah hey hi hello
per tmrw tmr hmm nah yea yup ugh oops welp itself himself herself myself themselves yourself ourselves whiteboard blackboard website online needed whatever upstairs downstairs std obv sop rota handover voicemail
	transcript memo tbc tba tbd fwiw abt cuz coz tho gonna wanna gotta dunno kinda sorta lemme gotcha leak leaks oct nov dec jan feb mar apr jun jul aug sept sep mins secs approx roughly circa more most less least kit log job pub bar win hit fun odd bad sad new old few key top gig ask let got owe fix box bag web url so too very really quite rather pretty almost just also even still already always often sometimes soon now then ever maybe perhaps
well yet ago away back away today tonight tomorrow yesterday monday tuesday wednesday thursday friday saturday sunday
mondays tuesdays wednesdays thursdays fridays saturdays sundays january february march april june july august september october november december
contains allergens allergen touch bit
mon tue tues wed thu thur thurs fri sat sun spring autumn winter everybody everyone somebody someone nobody anybody anyone something anything nothing
bartender barman barmaid barback barista sommelier chef boss manager mum mom dad kid kids folks guys mate customer regulars staff
menu cocktail cocktails drinks aperitif digestif nightcap brunch lunch dinner terrace patio rooftop poolside lounge fridge freezer cupboard shelf cellar basement sink
photo photos pic pics phone app chat text email insta selfie camera group link doc pdf spreadsheet typo typos laminated printed
colour colours favourite favourites flavour flavours flavourful neighbour neighbours harbour grey programme theatre centre organise realise cosy
tasty yummy yum delicious gorgeous boozy crowd pleaser banger keeper winner killer meh bestseller bestsellers signature vegan vegetarian allergy allergies
tasting trial version versions launch relaunch weekend weekends weeknight summery wintry autumnal festive christmas halloween easter valentine's mother's father's
pricey cheap costing margin margins gp invoice supplier suppliers delivery deliveries
aftertaste mouthfeel nose palate balance balanced unbalanced complex complexity approachable drinkable sessionable crushable refreshing moreish
oysters oyster cheese nuts snacks dessert desserts starter starters steak fries plate platter
go goes going went gone only make makes making made take takes took little much every everything some any few many enough lots all both same bit spec specs recipe recipes
use uses used using alcohol gluten bus bees stem stems prep whisky glass glasses seventies eighties nineties second gateway grown ups only not
margarita daiquiri martini negroni mojito spritz highball highballs sour sours cooler thing things swap swaps swapped switch replace up down served serves
glassware coupes glasses coasters napkin napkins tray trays garnishes lids lid label labels labelled dated`)

// withheld are words for what may be poured though they name no bottle, "house blend", or that say how
// much of it is.
var withheld = vocabulary.Words(`blend blends mix mixes mixture mixtures infusion infusions reduction reductions concentrate extract extracts essence essences distillate base bases premix
	batch stock sauce filler acid acids bubbles fizz booze stuff pour pours spirit spirits liquid liquids potion elixir brew brews concoction tonic tonics additive additives seasoning
	sweetener modifier lengthener topper chaser back wash crust rim secret usual special thickener emulsifier stabiliser stabilizer preserve preserves dressing garnish drops solution tipple nectar
	twist extra substitute substitutes multiply equal equals portion amount amounts quantity`)

// Word reports whether a word, in lower case, is one of English that names nothing that is poured, in
// whatever form.
func Word(w string) bool {
	w = strings.ReplaceAll(w, "’", "'")
	if spoken.Has(w) {
		return true
	}
	for _, short := range [...]string{"'s", "'ll", "'ve", "'re", "'d"} {
		w = strings.TrimSuffix(w, short)
	}
	if before, behind, ok := strings.Cut(w, "-"); ok {
		return Word(before) && Word(behind)
	}
	return spoken.Has(w) || !withheld.Has(w) && lexicon.Of(w) != 0 || spoken.Has(strings.TrimSuffix(w, "s"))
}

// rare reports whether a word is none of the common ones, and perhaps says what something is like:
// "verdant".
func rare(w string) bool {
	c := lexicon.Of(w)
	return !spoken.Has(w) && c&lexicon.Common == 0 && c&(lexicon.Adjective|lexicon.Verb) != 0
}
