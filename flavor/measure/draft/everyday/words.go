package everyday

import (
	_ "embed" // the list of words
	"strings"
	"sync"

	"counterpour/flavor/measure/vocabulary"
)

// written are the base forms of some 5,300 common English words, a line each. They are those of
// WordNet 3.0 (its license stands beside them) that its tagged texts use four times or more and
// that a small American dictionary holds, without words that mean a food, a plant, an animal or a
// substance in more than a few of these uses, and without words of bars that measure, make, change
// or describe a pour.
//
//go:embed words.txt
var written string

var common = sync.OnceValue(func() *vocabulary.Set { return vocabulary.Words(written) })

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
so too very really quite rather pretty almost just also even still already always often sometimes soon now then ever maybe perhaps
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

// leastStem is the fewest letters of a word that endings stand behind.
const leastStem = 3

// Word reports whether a word, in lower case, is one of everyday English, in whatever form.
func Word(w string) bool {
	w = strings.ReplaceAll(w, "’", "'")
	if spoken.Has(w) || common().Has(w) {
		return true
	}
	w = strings.TrimSuffix(w, "'s")
	for _, ending := range [...]string{"s", "es", "ed", "ing", "er", "ers", "est", "ness", "ly"} {
		if stem, ok := strings.CutSuffix(w, ending); ok && len(stem) >= leastStem && (known(stem) || ending != "s" && bent(stem)) {
			return true
		}
	}
	return known(w)
}

// bent reports whether a word is known with an e that its ending took, with a y that it made an i,
// or with one letter less that it doubled.
func bent(stem string) bool {
	if known(stem+"e") || strings.HasSuffix(stem, "i") && known(stem[:len(stem)-1]+"y") {
		return true
	}
	n := len(stem)
	return n > leastStem && stem[n-1] == stem[n-2] && known(stem[:n-1])
}

func known(w string) bool { return common().Has(w) || spoken.Has(w) }
