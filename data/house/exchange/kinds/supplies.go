package kinds

import (
	"strings"

	"counterpour/flavor"
)

// supplies are words of what a bar buys and nobody drinks, without the s of a plural; a phrase
// of two is needed where either word may stand on a bottle. Common practice, no source.
var supplies = wordSet(`apron, battery, bleach, broom, bulb, candle, charger, cleaner, clingfilm, cloth, co2, coaster, corkscrew,
	degreaser, deposit, descaler, detergent, dishwasher, disinfectant, doily, equipment, foil, glasse, glasswash, glasswasher, glassware, glove, jigger, limescale,
	liner, mop, muddler, napkin, opener, pallet, pourer, printer, receipt, regulator, rinse, roll, sanitiser, sanitizer, scourer, shaker, skewer,
	soap, sponge, stationery, stirrer, stopper, strainer, straw, surcharge, tape, tea light, tong, toothpick, towel, umbrella, uniform, wash, washing,
	brass polish, glass polish, metal polish,
	bin bag, carrier bag, freezer bag, ice bag, refuse bag, rubbish bag, vac bag, vacuum bag, ice bucket, ice mould, ice scoop, ice tray,
	baking paper, filter paper, greaseproof paper, kitchen paper, paper bag, paper cup, toilet paper, till paper, plastic cup, takeaway cup,
	cocktail pick, cocktail stick, date label, day label, label printer, coffee filter, delivery charge, first aid, gas bottle, gas cylinder, gas refill, co2 cylinder, n2o cylinder, barbecue fuel, cleaning product, cleaning supply, bar consumable, paper good, paper product, post it, sticky note`)

// headings are words over a part of a list, or in its column of kinds, below which nobody
// drinks anything. Common practice, no source.
var headings = wordSet(`cleaning, cleaner, cleaning product, consumable, crockery, disposable, equipment, glassware, hygiene, janitorial, non drink, office, packaging, paper good, stationery, uniform, utensil, barware`)

func wordSet(list string) map[string]bool {
	set := map[string]bool{}
	for phrase := range strings.SplitSeq(list, ",") {
		set[strings.TrimSpace(phrase)] = true
	}
	return set
}

// Supply reports whether a row of a list is of what a bar buys and nobody drinks, such as
// napkins: by its name, or by the cell for the ingredient or the heading above it. What an
// ingredient is called by itself is none, nor is a row whose cell names one.
func (k *Finder) Supply(kind, group, name string) bool {
	if _, _, known := k.Named(name); known {
		return false
	}
	if found := k.ofWords(kind); found != nil && !found.Supposed {
		return false
	}
	return holdsPhrase(supplies, name) || holdsPhrase(headings, kind) || holdsPhrase(headings, group)
}

// holdsPhrase reports whether one or two words of a text that stand together are in a set.
func holdsPhrase(set map[string]bool, text string) bool {
	words := strings.Fields(flavor.NormaliseName(text))
	for i, w := range words {
		w = strings.TrimSuffix(w, "s")
		if set[w] || i > 0 && set[words[i-1]+" "+w] {
			return true
		}
	}
	return false
}
