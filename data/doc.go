// Package data holds what the program knows, as reviewable text: the catalogue
// of ingredients, the proven drinks that the families are calibrated on, and
// the menu of an invented house for demonstration. All of it is embedded,
// parsed and checked in full when it is loaded; a fault is an error that names
// the file, the record, the field and the remedy.
//
// # The catalogue's files
//
// Every file in catalogue is TOML with a version. materials.toml says how each
// material smells and what allergens it carries; blends.toml which sugars and
// acids make up a total; cautions.toml what to warn of. The others hold
// ingredients of a class:
//
//	version = 1
//	class = "gin"
//
//	[[ingredient]]
//	id = "london-dry-gin"          # never changes once published
//	name = "London dry gin"        # by trade category, never by brand; lower case
//	                               # but for proper names, so that it reads well in a sentence
//	aliases = ["gin", "dry gin"]   # other words for it; unique in the catalogue
//	class = "gin"                  # only where it differs from the file's
//	legal = "London gin"           # legal definition claimed, see legal.go; optional
//	abv = "41 ± 1.5 | common practice | within Regulation (EU) 2019/787, Annex I 22: 37.5 % or more"
//	sugar = "0 ± 0 | law | …"      # g/L, all sugars
//	sugars = "none"                # a blend in blends.toml
//	acid = "0 ± 0 | common practice"  # g/L, all acids as weighed
//	acids = "none"
//	bitter = "0 ± 0.5 | from memory"  # mg/L of quinine that taste as bitter
//	texture = "0 ± 0 | common practice"  # g/L of fat, protein, gum and pulp
//	fat = "370 ± 15 | published | …"     # g/L, part of texture; optional
//	salt = "…"                     # g/L; optional
//	sweeteners = "…"               # g/L of sucrose that what sweetens beside the sugars tastes as; optional
//	caffeine = "…"                 # mg/L; optional
//	tannin = "…"                   # g/L; optional
//	smells_of = "juniper 10, coriander seed 3 | ± 25 % | from memory"
//	made_with = ["almond"]         # materials that are in it, whose allergens, animals and cautions
//	                               # follow; none follows from a smell; optional
//	allergens = []                 # contained, beyond what it is made with
//	may_contain = ["tree nuts"]    # by style; optional
//	unstated = true                # nobody has stated what else is in it: the maker
//	                               # keeps the recipe, and the label may say; optional
//	unstated_of = ["sulphites"]    # nobody has stated these few, and all others are known; optional
//	free_of = ["milk"]             # known to be absent all the same; optional
//	animal = ["insect"]            # beyond what it is made with; optional
//	cautions = ["overproof"]       # beyond what it is made with; optional
//	carbonated = true              # optional
//	making = "…"                   # how to make it; house-made things
//	yields = ["leaf 0.4 ± 0.1 | common practice"]  # mL that one unit gives; optional
//
// What the materials smell of is in folder odour: odorants.toml says of which
// notes each odorant smells, materials.toml which odorants each material carries;
// factors.toml is made from the two. sense/senses.toml says what ingredients do to
// the senses that their records leave out: colour, bite, savour, gas, foam.
//
// A figure is value ± spread | origin | source; the spread is one standard
// deviation, the origin one of published, law, computed, common practice,
// computed from memory, from memory. What a published table gives is taken from
// it, see [counterpour/data/tables]. A figure that is no larger than its own
// spread is next to nothing, and common practice: nobody need look it up.
//
// Bitterness is on one scale: the quinine, in mg/L of water, judged as bitter as
// the ingredient is when diluted to how it is served, times that dilution. So a
// tincture is judged by the dash in a glass of water, as the bitterness values
// of the pharmacopoeia are, and a juice or a coffee as it is drunk. What hides
// bitterness in the glass, such as sugar, is not taken off. Beer goes by its
// bitterness units.
//
// "smells_of" lists materials and the intensity each lends; whether they are in the
// bottle is another matter: a peated malt smells of seaweed and holds none.
package data
