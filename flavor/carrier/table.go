package carrier

// table says what words name, a line for each kind: what they bring, then the words. In front
// of an allergen "may" says that not every one brings it; after "|" come animals, and
// "alcohol". A line that brings nothing has words that only look like others of the table:
// the longest words count. English words are singular. Which substances are allergens is from
// Regulation (EU) No 1169/2011, Annex II; which foods hold them is common practice, no source.
// Where makers differ it is told as what may be there.
const table = `
tree nuts: almond, hazelnut, filbert, cobnut, walnut, pecan, cashew, pistachio, macadamia, brazil nut, marzipan, marchpane, frangipane, orgeat, gianduja, praline, praliné, pralin, nocino, nut, mixed nut, nut milk, almond milk, cashew milk, hazelnut milk, walnut milk, pistachio milk, macadamia milk, almond cream, cashew cream, almond butter, cashew butter, hazelnut butter, pistachio butter, nut butter, pistachio cream, hazelnut cream, tree nut, baklava, noisette, amande, mandel, haselnuss, haselnüsse, walnuss, walnüsse, nuss, nüsse, pistazie, pistache, noix, cajou, pistacho, almendra, avellana, nuez, nueces, anacardo, mandorla, mandorle, nocciola, nocciole, noce, noci, amêndoa, amendoa, avelã, noz, nozes, hasselnöt, mandlar, orzata, horchata de almendra, orxata d'ametlla
may tree nuts: chestnut, marron, castaña, castanha, pine nut, pinenut, pinoli, pignoli, hickory nut, beechnut, ginkgo nut, nutty, horchata, amaretto, granola, muesli
tree nuts, eggs: nougat, turrón, turron, torrone, macaron, amaretti, amarettini
tree nuts, may milk, may soybeans: hazelnut spread, chocolate hazelnut spread
peanuts: peanut, goober, groundnut, peanut butter, peanut brittle, monkey nut, beer nut, erdnuss, erdnüsse, cacahuète, cacahuete, cacahuate, maní, arachide, arachidi, amendoim, satay
tree nuts, peanuts: bar nut, cocktail nut, roasted nut, salted nut, candied nut, chopped nut, crushed nut, toasted nut, spiced nut
sesame: sesame, tahini, tahin, za'atar, zaatar, gomasio, gomashio, furikake, halva, halwa, halvah, sésame, sesam, ajonjolí, sesamo, togarashi, shichimi, benne
sesame, tree nuts: dukkah, duqqa
sesame, gluten: everything bagel, bagel seasoning
celery: celery, celeriac, celery salt, celery stick, celery leaf, celery rib, sellerie, céleri, apio, sedano, aipo
may celery, may fish, may mustard, may soybeans, may gluten: bloody mary mix, bloody mary spice, bloody mary salt, michelada mix, crab boil, seafood seasoning, bay seasoning, bouillon, stock cube
may celery, may mustard: curry powder, vadouvan, pickling spice, pickled vegetable, giardiniera, chow chow, chutney, ketchup
celery, molluscs | fish: clam tomato juice
mustard: mustard, mustard seed, senf, moutarde, mostaza, senape, mostarda, piccalilli
may mustard, may sulphites, may celery: pickle, pickled, gherkin, cornichon, pickle juice, dill pickle, relish
may sulphites: dried apricot, dried fruit, dried fig, dried apple, dried mango, dried pineapple, raisin, sultana, currant, candied fruit, candied peel, candied ginger, crystallised ginger, crystallized ginger, glacé cherry, maraschino cherry, cocktail cherry, cherry in syrup, pearl onion, cocktail onion, silverskin onion, caper, caperberry, olive, olive brine
lupin: lupin, lupine, lupini
soybeans: soy, soya, soybean, soy milk, soy bean, soy lecithin, edamame, tofu, tempeh, natto, soja
soybeans, gluten: soy sauce, tamari, miso, shoyu, teriyaki, hoisin, ponzu
gluten: gluten, bread, breadcrumb, toast point, french toast, melba toast, toast soldier, apple crumble, oat crumble, crumble topping, breadstick, grissini, crostini, bagel, crouton, sourdough, pumpernickel, rye bread, brioche, croissant, biscuit, biscotti, cookie, cracker, graham, graham cracker, pretzel, waffle, wafer, stroopwafel, speculoos, gingerbread, shortbread, digestive, pastry, cake, sponge finger, ladyfinger, pancake, churro, crumb, streusel, panko, couscous, bulgur, semolina, seitan, noodle, pasta, oat milk, oat cream, oat foam, oat drink, malted milk powder, flour, brot, keks, pain, galleta, biscotto
may eggs, may milk, may tree nuts, gluten: cupcake, muffin, brownie, donut, doughnut, churros, tiramisu, cheesecake, éclair, eclair, profiterole, madeleine, financier
gluten | @grain: wheat, barley, rye, oat, spelt, kamut, farro, malt, malted, malz, weizen, gerste, hafer, roggen, avoine, blé, trigo, avena, cebada
may gluten: cereal, corn flake, cornflake, puffed rice, granola bar, ale, beer, stout, lager, porter
may eggs: mayonnaise, aioli
eggs | egg: egg, egg white, egg yolk, yolk, albumen, albumin, meringue, meringue powder, mayo, quail egg, salted egg, advocaat, rompope, huevo, clara, yema, œuf, oeuf, uovo, uova, albume, ovo, clara de ovo, eiweiß, eiweiss, eigelb, eierlikör, ägg, egg wash
eggs, milk | egg, milk: lemon curd, lime curd, passion fruit curd, eggnog, egg nog, custard, crème anglaise, creme anglaise, crème brûlée, creme brulee, zabaglione, zabaione, sabayon, hollandaise
milk | milk: milk, whole milk, skim milk, condensed milk, evaporated milk, sweetened condensed milk, milk powder, powdered milk, goat milk, goat's milk, dairy, lactose, cream, whipped cream, whip cream, heavy cream, double cream, single cream, sour cream, clotted cream, half and half, squirty cream, chantilly, schlag, schlagobers, butter, brown butter, browned butter, beurre noisette, ghee, buttermilk, yogurt, yoghurt, skyr, kefir, whey, casein, caseinate, curd, lassi, labneh, cream cheese, cheese, blue cheese, goat cheese, roquefort, stilton, gorgonzola, parmesan, parmigiano, pecorino, manchego, cheddar, gruyère, gruyere, brie, feta, halloumi, mozzarella, ricotta, mascarpone, gouda, dulce de leche, cajeta, butterscotch, toffee, fudge, latte, white chocolate, milk chocolate, irish cream, cream liqueur, milk punch, clarified milk, milk wash, milk washed, cream foam, milk foam, lait, beurre, fromage, crème fraîche, creme fraiche, crème fouettée, milch, sahne, rahm, käse, kaese, schlagsahne, leche, queso, mantequilla, nata, burro, panna, formaggio, leite, manteiga, queijo, grädde, mjölk, ost
milk, may eggs, may tree nuts | milk: ice cream, gelato, vanilla ice cream, soft serve, sundae
may milk, may eggs: sherbet
may milk, may soybeans, may tree nuts, may peanuts: chocolate, dark chocolate, choc, chocolate shaving, chocolate curl, chocolate bar, chocolate chip, chocolate flake, chocolate sauce, chocolate syrup, schokolade, cioccolato, candy bar
may milk: caramel, salted caramel, caramel sauce, caramel popcorn, buttered popcorn, butter popcorn, popcorn, panettone, sprinkle, hundreds and thousands
fish | fish: fish, anchovy, anchovies, sardine, herring, salmon, smoked salmon, lox, trout, tuna, mackerel, eel, caviar, roe, tobiko, ikura, bottarga, bonito, katsuobushi, dashi, fish sauce, nam pla, garum, colatura, isinglass, boquerón, pescado, poisson, pesce, fisch, acciuga
fish, may gluten | fish: worcestershire, worcester sauce, worcestershire sauce
crustaceans | fish: shrimp, prawn, crab, lobster, crayfish, crawfish, langoustine, krill, crustacean, shellfish, gamba, camarón, crevette, garnele, gambero
molluscs | fish: oyster, clam, mussel, scallop, squid, octopus, cuttlefish, squid ink, cuttlefish ink, snail, abalone, whelk, conch, mollusc, mollusk, oyster sauce, oyster shell, calamari, ostra, huître, almeja
sulphites | alcohol: wine, red wine, white wine, champagne, prosecco, cava, sparkling wine, port, sherry, madeira, marsala, vermouth, sauternes, mistelle, wine soaked
may eggs | meat: marshmallow, toasted marshmallow, mallow fluff, marshmallow fluff
| meat: gelatin, gelatine, jello, jelly bear, gummy, gummi, gummy bear, fruit gum, collagen, bacon, ham, prosciutto, jamón, jamon, serrano ham, pancetta, guanciale, speck, nduja, 'nduja, chorizo, salami, salumi, pepperoni, sausage, beef, beef jerky, jerky, biltong, pork, pork rind, crackling, chicharrón, chicharron, lard, tallow, suet, dripping, bone, marrow, bone marrow, duck, duck fat, chicken, schmaltz, lamb, foie gras, pâté, pate, meat, bacon fat, wagyu, bovine, blood, black pudding, gelatina, schinken, carne, viande, jambon, prosciutto crudo
| honey: honey, honeycomb, hot honey, bee pollen, pollen, propolis, royal jelly, beeswax, miel, miele, honig, mel, honung, cinder toffee
| honey, alcohol: mead, honey liqueur
| insect: carmine, cochineal, shellac, cricket, grasshopper leg, chapuline, chapulín, chapulin, chapulines, ant, mealworm, sal de gusano, worm salt, gusano, insect, scorpion
| alcohol: brandied, boozy, drunken, spiked, rum soaked, bourbon soaked, whiskey soaked, brandy soaked, liqueur soaked, booze-soaked, soaked in rum, bourbon cherry, brandied cherry, cherry in brandy, kirsch cherry, liqueur cherry, griottine, bitters, absinthe, gin, rum, vodka, whisky, whiskey, bourbon, scotch, brandy, cognac, tequila, mezcal, pisco, liqueur, overproof, aperitif, amaro, grappa, kirsch, cider, limoncello, curaçao, curacao, spirit, pastis
: nutmeg, muscade, noix de muscade, noix muscade, muskatnuss, muskat, nuez moscada, noce moscata, noci moscate, noz moscada, coconut, coco nut, noix de coco, noce di cocco, coconut milk, coconut cream, cream of coconut, coconut butter, coconut yogurt, cream of tartar, cream soda, cream sherry, cocoa butter, cacao butter, shea butter, apple butter, butterfly pea, butterfly pea flower, butter bean, rice milk, rice cream, hemp milk, milk thistle, milkweed, egg plant, eggplant, nut grass, doughnut peach, donut peach, tiger nut, kola nut, cola nut, buckwheat, butternut squash, wheatgrass, grain of paradise, grains of paradise, honeydew, honeydew melon, honeysuckle, honeybush, honey mushroom, honeycrisp, honeycrisp apple, gingerbread spice, ginger beer, root beer, spruce beer, butter lettuce, cashew apple, cashew fruit, walnut wood, oyster leaf, oyster mushroom, fish mint, crab apple, crabapple, blood orange, blood orange wheel, blood lime, wine glass, wineglass, cider vinegar, rice wine vinegar, port glass, sherry glass, champagne coupe, champagne flute, champagne glass, beer glass, beer mug, rye grass, malt vinegar, champagne vinegar, red wine vinegar, white wine vinegar, wine vinegar, sherry vinegar, brandy snifter, whisky glass, whiskey glass, beefsteak tomato, beef tomato, bone dry, fish bowl, fishbowl, egg cup, egg-shaped, pickled ginger, pickled jalapeño, pickled jalapeno, pickled chilli, pickled chili, milk jug, milk bottle, cream jug, butter dish, oat straw, wheat straw, bamboo pick, rye straw
`
