package flavor

import (
	"fmt"
	"math"
)

// AromaFamily is a family of aromas, an index into an [Aroma].
type AromaFamily int

// The aroma families, in the order in which they are listed everywhere.
const (
	Citrus AromaFamily = iota
	Orange
	Tropical
	Orchard
	Berry
	Floral
	Mint
	Herb
	Juniper
	Anise
	Clove
	Cinnamon
	Pungent
	Vanilla
	Caramel
	Nut
	Roast
	Oak
	Smoke
	Root
	Wine
	Vegetal
	Grain
	Cream

	NumAromaFamilies = int(Cream) + 1
)

// AromaFamilyInfo defines one aroma family: a sentence and three reference
// materials that anyone can smell to learn it.
type AromaFamilyInfo struct {
	ID         string
	Word       string // what a drink is more or less, as a bartender says it: "earthy"
	Sentence   string
	References [3]string
}

var families = [NumAromaFamilies]AromaFamilyInfo{
	Citrus:   {"citrus", "citrus", "The sharp, fresh oil and juice of lemon, lime and grapefruit.", [3]string{"lemon peel", "fresh lime juice", "grapefruit peel"}},
	Orange:   {"orange", "orange", "The round, sweet oil of orange and mandarin, fresh or dried.", [3]string{"orange peel", "dried bitter orange peel", "mandarin juice"}},
	Tropical: {"tropical", "tropical fruit", "Ripe fruit of hot countries and the esters of heavy rum.", [3]string{"pineapple", "passion fruit", "ripe banana"}},
	Orchard:  {"orchard", "orchard fruit", "Fruit of the orchard, with core or stone.", [3]string{"apple", "pear", "apricot"}},
	Berry:    {"berry", "berry", "Red and dark soft fruit, and cherry flesh.", [3]string{"raspberry", "blackcurrant", "cherry"}},
	Floral:   {"floral", "floral", "Flowers, and the flowery side of honey and grapes.", [3]string{"elderflower", "orange flower water", "violet"}},
	Mint:     {"mint", "minty", "Cool leaves and menthol.", [3]string{"spearmint", "peppermint", "eucalyptus"}},
	Herb:     {"herb", "herbal", "Green and dried kitchen and mountain herbs, bitter leaves among them.", [3]string{"thyme", "sage", "wormwood"}},
	Juniper:  {"juniper", "juniper", "Juniper and the resin of conifers.", [3]string{"juniper berry", "pine", "rosemary"}},
	Anise:    {"anise", "anise", "Aniseed, fennel, liquorice and their kin.", [3]string{"aniseed", "fennel seed", "star anise"}},
	Clove:    {"clove", "clove", "The dark, numbing spice of clove and allspice.", [3]string{"clove", "allspice", "bay rum leaf"}},
	Cinnamon: {"cinnamon", "cinnamon", "Warm bark and seed spices.", [3]string{"cinnamon", "nutmeg", "cardamom"}},
	Pungent:  {"pungent", "peppery", "What bites: ginger, pepper and chilli.", [3]string{"ginger", "black pepper", "fresh chilli"}},
	Vanilla:  {"vanilla", "vanilla", "Vanilla and tonka, the soft sweet smell.", [3]string{"vanilla pod", "tonka bean", "custard"}},
	Caramel:  {"caramel", "caramel", "Burnt sugar, molasses and dried fruit.", [3]string{"molasses", "toffee", "raisin"}},
	Nut:      {"nut", "nutty", "Nuts and marzipan, kernels of stone fruit among them.", [3]string{"almond", "hazelnut", "walnut"}},
	Roast:    {"roast", "roasted", "Roasted beans and their bitter crust.", [3]string{"coffee", "cacao", "dark toast"}},
	Oak:      {"oak", "oaky", "Casks: sawn oak, cedar, the dry side of old spirits, black tea.", [3]string{"oak shavings", "cedar", "black tea"}},
	Smoke:    {"smoke", "smoky", "Wood and peat smoke.", [3]string{"lapsang tea", "peated whisky", "charred wood"}},
	Root:     {"root", "earthy", "Bitter roots and barks, and earth.", [3]string{"gentian root", "cinchona bark", "beetroot"}},
	Wine:     {"wine", "winey", "Grapes, fermented and oxidised: wine, sherry, marc.", [3]string{"dry white wine", "fino sherry", "grape marc"}},
	Vegetal:  {"vegetal", "green", "Green and savoury plants, raw or cooked: agave, cane, tomato, olive.", [3]string{"cooked agave", "celery", "cucumber"}},
	Grain:    {"grain", "malty", "Cereal, malt, bread and yeast.", [3]string{"malted barley", "rye bread", "beer"}},
	Cream:    {"cream", "creamy", "Milk, cream, egg and coconut fat.", [3]string{"fresh cream", "coconut cream", "butter"}},
}

// AromaFamilies returns the definition of every aroma family, in order.
//
// Intensities are on an open linear scale, so that they mix by volume. The
// anchor is 10: the leading note of a neat, full-flavoured bottle, such as the
// juniper of a London dry gin or the orange of a triple sec. Juices reach 4 to
// 10, cocktail bitters 30 to 120, sodas 1 to 4. The scale is judged, not
// measured: no published one covers the ingredients of a bar.
func AromaFamilies() [NumAromaFamilies]AromaFamilyInfo { return families }

// String returns the family's identifier, such as "clove".
func (f AromaFamily) String() string {
	if f < 0 || int(f) >= NumAromaFamilies {
		return fmt.Sprintf("family(%d)", int(f))
	}
	return families[f].ID
}

// Word is what a drink with more of the family is, as a bartender says it, such as "earthy".
func (f AromaFamily) Word() string {
	if f < 0 || int(f) >= NumAromaFamilies {
		return f.String()
	}
	return families[f].Word
}

// ParseAromaFamily returns the family whose identifier is id.
func ParseAromaFamily(id string) (AromaFamily, bool) {
	for i := range families {
		if families[i].ID == id {
			return AromaFamily(i), true
		}
	}
	return 0, false
}

// Aroma is an intensity for every family, on the scale of [AromaFamilies].
type Aroma [NumAromaFamilies]float64

// Total returns the sum of the intensities.
func (a Aroma) Total() float64 {
	var t float64
	for _, v := range a {
		t += v
	}
	return t
}

// Cosine returns that of the angle between two aromas, 0 to 1: 1 for what smells alike,
// however strong, 0 if one of them smells of nothing.
func (a Aroma) Cosine(o Aroma) float64 {
	var dot, own, other float64
	for f := range a {
		dot, own, other = dot+a[f]*o[f], own+a[f]*a[f], other+o[f]*o[f]
	}
	if own <= 0 || other <= 0 {
		return 0
	}
	return dot / math.Sqrt(own*other)
}
