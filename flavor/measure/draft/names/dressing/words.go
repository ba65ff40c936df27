package dressing

import "counterpour/flavor/measure/vocabulary"

// What is laid on drinks and plainly brings no allergen and nothing from animals: common
// practice, no source. Words that name what carries one are in package carrier, and count first.
var (
	// harmless name something that is eaten, smelled or set on a drink.
	harmless = vocabulary.Words(`lemon lemons lime limes orange oranges grapefruit grapefruits yuzu bergamot mandarin mandarins tangerine clementine kumquat kumquats citron pomelo calamansi makrut citrus meyer seville navel
		apple apples pear pears quince peach peaches nectarine apricot apricots plum plums greengage damson mirabelle cherry cherries grape grapes berry berries strawberry strawberries raspberry raspberries blackberry blackberries
		blueberry blueberries cranberry cranberries redcurrant redcurrants blackcurrant blackcurrants gooseberry gooseberries elderberry mulberry rowan boysenberry fig figs date dates persimmon pomegranate pomegranates aril arils
		pineapple mango papaya passionfruit passion maracuja guava lychee lychees rambutan longan kiwi banana plantain melon cantaloupe watermelon honeydew coconut dragonfruit starfruit carambola physalis tamarind rhubarb
		cucumber cucumbers tomato tomatoes carrot carrots beet beetroot radish radishes fennel leek chive chives scallion scallions onion onions shallot garlic chilli chillies chili chilies chile chiles jalapeño jalapeno jalapeños jalapenos habanero serrano
		pepper peppers peppercorn peppercorns pimento paprika asparagus pea peas bean artichoke avocado corn husk seaweed nori kelp samphire mushroom horseradish wasabi lettuce spinach kale rocket arugula nasturtium
		olive olives caper capers caperberry caperberries
		mint spearmint peppermint basil thyme rosemary sage tarragon dill parsley cilantro coriander oregano marjoram chervil lovage shiso verbena lavender lemongrass bay curry eucalyptus pine spruce fir cedar juniper hop hops tea matcha sorrel borage
		hyssop savory angelica woodruff geranium pandan heather fern moss grass hay
		flower flowers floral rose roses rosebud rosebuds petal petals viola violas violet violets pansy pansies orchid orchids hibiscus jasmine chamomile camomile elderflower marigold calendula cornflower cornflowers dandelion lilac dianthus chrysanthemum daisy daisies
		bouganvillea bougainvillea begonia fuchsia magnolia sakura blossom blossoms snapdragon primrose lily sunflower saffron butterfly
		nutmeg cinnamon cassia clove cloves cardamom allspice anise aniseed star mace vanilla ginger galangal turmeric cumin caraway sumac tonka sichuan szechuan sansho pimiento cayenne chipotle ancho smoked
		cocoa cacao coffee espresso nib nibs carob licorice liquorice
		salt salts saline sugar sugars sugarcane cane demerara muscovado turbinado brown caster icing rock sea flake kosher himalayan msg citric malic acid stevia rapadura piloncillo panela jaggery maple agave molasses treacle
		pepperleaf charcoal smoke smoked ash
		umbrella umbrellas parasol straw straws sparkler sparklers flag flags pick picks stick sticks skewer skewers swizzle stirrer coaster doily napkin candle bamboo banana palm feather ribbon clothespin peg flame fire match monogram stencil stamp logo gold silver leaf balloon bubble toy figurine
		ice cube cubes sphere mist `)

	// shapes say in what form something is, and say nothing by themselves of what it is.
	shapes = vocabulary.Words(`twist twists peel peels zest zests wheel wheels halfwheel moon moons half halves wedge wedges slice slices sliver slivers coin coins swath swaths swathe swathes ribbon ribbons fan fans crown sprig sprigs bouquet tuft
		stalk stalks rib ribs frond fronds spear spears tip tips top tops leaf leaves head heads bud buds cheek cheeks ball balls cube cubes dice chunk chunks piece pieces segment segments supreme quarter quarters eighth ring rings round rounds disc discs disk disks
		spiral curl curls quill quills strip strips shaving shavings shave ribboned horse's horsesneck horse neck crescent knot pinch dash dashes drop drops sprinkle dust dusting powder powdered flake flakes chip chips crisp crisps cracked seed seeds pod pods
		bean beans bark root oil oils mist spray spritz sprayed spritzed float floated garnish garnished garnishes garn rim rimmed rims skin skins pith flesh core stem stems vine cluster bunch bundle handful crust edge coating coated shell shells`)

	// complete are shapes that behind a bar are of citrus or a flower, and need no more words.
	complete = vocabulary.Words(`twist twists peel peels zest zests wheel wheels wedge wedges slice slices coin coins swath swathe sprig sprigs horse's horsesneck`)

	// manner say how many there are, what was done to them and where they lie.
	manner = vocabulary.Words(`a an the one two three four five six some few couple pair single half whole of on in over with and or to at for from by into onto across around inside beside through atop up down side sides top bottom back front out off all each per
		fresh freshly big small large little tiny mini baby long short thin thick wide fat curly tall giant huge extra light heavy nice good quality ripe unripe young edible organic dry dried freeze air oven sun dehydrated frozen candied crystallised crystallized sugared salted spiced
		torched burnt burned charred grilled toasted roasted smoked smoky flamed flaming scorched seared caramelised caramelized pickled fermented preserved pitted cracked crushed ground grated microplaned shaved chopped minced sliced diced cut
		torn muddled bruised slapped spanked clapped twisted rolled folded pleated fanned skewered speared pinned clipped perched placed laid set standing hanging floated floating sunk dropped studded wrapped tied dipped dusted sprinkled sprayed expressed discarded
		express discard drop flame squeeze squeezed rub rubbed wipe grate dust sprinkle spray spank slap lay place add put serve finish finished garnish garnished decorate decorated use used optional please if desired wanted available needed preferably usually always
		ideally nothing else then also too only just plain green red white black yellow pink purple blue dark golden rainbow mixed assorted various seasonal wild garden your choice any more
		cocktail martini bar glass drink surface crushed block side rimmed left right long way it its is are as be well both not do don't leave left
		g gram grams ml oz cl cm inch inches x`)
)
