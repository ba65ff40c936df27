// Package legal holds the names that food law defines, and whether a record keeps to the
// definition that it claims.
package legal

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"counterpour/flavor"
)

// The legal acts that contain the definitions below. The text was read for every row that
// is not marked as from memory.
const (
	spiritDrinks    = "Regulation (EU) 2019/787, Annex I category "
	aromatisedWines = "Regulation (EU) No 251/2014, "
	sugarTerms      = aromatisedWines + "Article 6(1)"
	wineProducts    = "Regulation (EU) No 1308/2013, Annex VII Part II point 3"
)

// caskTrace is the sugar, in g/L, that a cask gives to a spirit and that no rule on
// sweetening counts. From memory.
const caskTrace = 0.5

// invertPerSucrose is the mass of invert sugar that a gram of sucrose gives in water, in
// grams: 2 × 180.16 / 342.30, from IUPAC atomic weights. The acts count sweetening as
// invert sugar.
const invertPerSucrose = 1.0526

// sugarPerPercent is the sugar, in g/L, that ferments to 1 % vol. Wine law uses it for
// the total strength: Delegated Regulation (EU) 2019/934 and the OIV, from memory.
const sugarPerPercent = 16.83

// bound says on which side of a limit a value must lie.
type bound string

const (
	atLeast  bound = "at least"
	moreThan bound = "more than"
	atMost   bound = "at most"
	lessThan bound = "less than"
)

func (b bound) holds(value, limit float64) bool {
	switch b {
	case atLeast:
		return value >= limit
	case moreThan:
		return value > limit
	case atMost:
		return value <= limit
	default:
		return value < limit
	}
}

// limit is a rule about a number of a record, with the function that reads the number and
// the unit that the law uses.
type limit struct {
	what  quantity
	bound bound
	value float64
}

// quantity is a number that the law limits.
type quantity int

const (
	strength      quantity = iota // % vol
	invertSugar                   // g/L, counted as invert sugar
	totalStrength                 // % vol, including what the sugar could still ferment to
)

func (q quantity) of(p *flavor.Profile) float64 {
	switch q {
	case invertSugar:
		return invertSugarOf(p)
	case totalStrength:
		return p.ABV.Value + invertSugarOf(p)/sugarPerPercent
	default:
		return p.ABV.Value
	}
}

// invertSugarOf returns the sugar of p in g/L as the law counts sweetening: sucrose as
// the invert sugar that it gives, other sugars by weight.
func invertSugarOf(p *flavor.Profile) float64 {
	return p.Sugar.Value * (1 + (invertPerSucrose-1)*p.Sugars.Sucrose)
}

// definition is a legal definition that a record may claim.
type definition struct {
	source string
	status flavor.Origin // published: the act was read; or from memory
	limits []limit
	holds  []flavor.Allergen // allergens of what it is made with, by definition
	lacks  []flavor.Allergen // allergens that it must not contain
}

func vol(b bound, percent float64) limit { return limit{strength, b, percent} }
func sweet(b bound, gPerL float64) limit { return limit{invertSugar, b, gPerL} }

func spirit(category string, limits ...limit) definition {
	return definition{source: spiritDrinks + category, status: flavor.OriginPublished, limits: limits}
}

func wine(source string, limits ...limit) definition {
	return definition{source: source, status: flavor.OriginPublished, limits: limits}
}

func (d definition) with(a flavor.Allergen) definition    { d.holds = append(d.holds, a); return d }
func (d definition) without(a flavor.Allergen) definition { d.lacks = append(d.lacks, a); return d }

// definitions are the legal definitions that the field legal of a record can name. Only
// strength and sweetening are checked; the raw material, the ageing and the flavourings
// are not in a record. A record's sugar includes that of its fruit, so a limit on
// sweetening applies to that too.
var definitions = map[string]definition{
	"rum":                  spirit("1", vol(atLeast, 37.5), sweet(atMost, 20)),
	"whisky":               spirit("2", vol(atLeast, 40), sweet(atMost, caskTrace)), // unsweetened
	"grain spirit":         spirit("3", vol(atLeast, 35), sweet(atMost, 10)),
	"wine spirit":          spirit("4", vol(atLeast, 37.5), sweet(atMost, 20)),
	"brandy":               spirit("5", vol(atLeast, 36), sweet(atMost, 35)),
	"grape marc spirit":    spirit("6", vol(atLeast, 37.5), sweet(atMost, 20)),
	"fruit marc spirit":    spirit("7", vol(atLeast, 37.5), sweet(atMost, 20)),
	"raisin spirit":        spirit("8", vol(atLeast, 37.5), sweet(atMost, 20)),
	"fruit spirit":         spirit("9", vol(atLeast, 37.5), sweet(atMost, 18)),
	"cider spirit":         spirit("10", vol(atLeast, 37.5), sweet(atMost, 15)),
	"honey spirit":         spirit("11", vol(atLeast, 35), sweet(atMost, 20)),
	"lees spirit":          spirit("12", vol(atLeast, 38), sweet(atMost, 20)),
	"beer spirit":          spirit("13", vol(atLeast, 38), sweet(atMost, 20)),
	"topinambur":           spirit("14", vol(atLeast, 38), sweet(atMost, 20)),
	"vodka":                spirit("15", vol(atLeast, 37.5), sweet(atMost, 8)),
	"steeped fruit spirit": spirit("16", vol(atLeast, 37.5), sweet(atMost, 18)),
	"geist":                spirit("17", vol(atLeast, 37.5), sweet(atMost, 10)),
	"gentian":              spirit("18", vol(atLeast, 37.5)),
	"juniper spirit":       spirit("19", vol(atLeast, 30)),
	"gin":                  spirit("20", vol(atLeast, 37.5)),
	"distilled gin":        spirit("21", vol(atLeast, 37.5)),
	"London gin":           spirit("22", vol(atLeast, 37.5), sweet(atMost, 0.1)),
	"caraway spirit":       spirit("23", vol(atLeast, 30)),
	"akvavit":              spirit("24", vol(atLeast, 37.5)),
	"aniseed spirit":       spirit("25", vol(atLeast, 15)),
	"pastis":               spirit("26", vol(atLeast, 40), sweet(lessThan, 100)),
	"pastis de Marseille":  spirit("27", vol(atLeast, 45), sweet(lessThan, 100)),
	"anis":                 spirit("28", vol(atLeast, 35)),
	"distilled anis":       spirit("29", vol(atLeast, 35)),
	"bitter":               spirit("30", vol(atLeast, 15)),
	"flavoured vodka":      spirit("31", vol(atLeast, 37.5), sweet(lessThan, 100)),
	"pacharan":             spirit("32", vol(atLeast, 25), sweet(atLeast, 80), sweet(atMost, 250)),
	"liqueur":              spirit("33", vol(atLeast, 15), sweet(atLeast, 100)),
	"cherry liqueur":       spirit("33, alcohol wholly from cherry spirit", vol(atLeast, 15), sweet(atLeast, 70)),
	"gentian liqueur":      spirit("33, flavoured only with gentian, a like plant or wormwood", vol(atLeast, 15), sweet(atLeast, 80)),
	"cream liqueur":        spirit("33, named cream", vol(atLeast, 15), sweet(atLeast, 100)).with(flavor.Milk),
	"creme de":             spirit("34", vol(atLeast, 15), sweet(atLeast, 250)).without(flavor.Milk),
	"creme de cassis":      spirit("34, of blackcurrants", vol(atLeast, 15), sweet(moreThan, 400)).without(flavor.Milk),
	"sloe gin":             spirit("35, a liqueur of category 33", vol(atLeast, 25), sweet(atLeast, 100)),
	"sambuca":              spirit("36", vol(atLeast, 38), sweet(atLeast, 350)),
	"maraschino":           spirit("37", vol(atLeast, 24), sweet(atLeast, 250)),
	"nocino":               spirit("38", vol(atLeast, 30), sweet(atLeast, 100)),
	"egg liqueur":          spirit("39", vol(atLeast, 14), sweet(atLeast, 150)).with(flavor.Eggs),
	"liqueur with egg":     spirit("40", vol(atLeast, 15), sweet(atLeast, 150)).with(flavor.Eggs),
	"mistra":               spirit("41", vol(atLeast, 40), vol(atMost, 47), sweet(atMost, 0)),
	"glogg":                spirit("42", vol(atLeast, 15)),
	"Berenburg":            spirit("43", vol(atLeast, 30), sweet(atMost, 20)),
	"honey nectar":         spirit("44", vol(atLeast, 22)),

	"aromatised wine":             wine(aromatisedWines+"Article 3(2)", vol(atLeast, 14.5), vol(lessThan, 22)),
	"vermouth":                    wine(aromatisedWines+"Annex II A(3)", vol(atLeast, 14.5), vol(lessThan, 22)),
	"bitter aromatised wine":      wine(aromatisedWines+"Annex II A(4)", vol(atLeast, 14.5), vol(lessThan, 22)),
	"egg-based aromatised wine":   wine(aromatisedWines+"Annex II A(5)", vol(atLeast, 14.5), vol(lessThan, 22), sweet(moreThan, 200)).with(flavor.Eggs),
	"aromatised wine-based drink": wine(aromatisedWines+"Article 3(3)", vol(atLeast, 4.5), vol(lessThan, 14.5)),
	"sangria":                     wine(aromatisedWines+"Annex II B(3)", vol(atLeast, 4.5), vol(lessThan, 12)),
	"bitter soda":                 wine(aromatisedWines+"Annex II B(6)", vol(atLeast, 8), vol(lessThan, 10.5)),
	"mulled wine":                 wine(aromatisedWines+"Annex II B(8)", vol(atLeast, 7), vol(lessThan, 14.5)),
	"aromatised wine cocktail":    wine(aromatisedWines+"Article 3(4)", vol(moreThan, 1.2), vol(lessThan, 10)),
	"liqueur wine":                wine(wineProducts+"; OIV Code of Oenological Practices I.4.3", vol(atLeast, 15), vol(atMost, 22)),
}

// sugarWords are the words for sweetness in the names of aromatised wines, with the sugar
// and the total strength that each requires. A longer word stands before the shorter one
// that it ends with.
var sugarWords = []struct {
	word string
	definition
}{
	{"extra dry", wine(sugarTerms, sweet(lessThan, 30), limit{totalStrength, atLeast, 15})},
	{"semi dry", wine(sugarTerms, sweet(atLeast, 50), sweet(lessThan, 90), limit{totalStrength, atLeast, 17.5})},
	{"semi sweet", wine(sugarTerms, sweet(atLeast, 90), sweet(lessThan, 130), limit{totalStrength, atLeast, 17.5})},
	{"dry", wine(sugarTerms, sweet(lessThan, 50), limit{totalStrength, atLeast, 16})},
	{"sweet", wine(sugarTerms, sweet(atLeast, 130), limit{totalStrength, atLeast, 17.5})},
}

// Check returns an error if a record breaks the legal definition that its field
// legal names: strength, sweetening as invert sugar, required or forbidden ingredients,
// and words for dryness or sweetness in its name. The error names field, value, limit and
// remedy. A record without a definition passes; an unknown definition is an error.
//
// The definitions are those of the European Union, which are the most complete. Other
// jurisdictions define the same names differently: in the United States, for example, a
// liqueur needs 2.5 % of sugar by weight. If the label of a bottle differs from its
// record, the label is right.
func Check(p *flavor.Profile) error {
	if p.Legal == "" {
		return nil
	}
	d, ok := definitions[p.Legal]
	if !ok {
		return fmt.Errorf("field legal: %q is not a legal definition known here; leave it out or use one of: %s",
			p.Legal, strings.Join(slices.Sorted(maps.Keys(definitions)), ", "))
	}
	if err := d.check(p, p.Legal); err != nil {
		return err
	}
	if strings.HasPrefix(d.source, aromatisedWines) {
		return checkSugarWords(p)
	}
	// Categories 20 and 21 allow a gin to be called dry if it is not sweetened.
	if (p.Legal == "gin" || p.Legal == "distilled gin") && slices.Contains(nameWords(p.Name), "dry") {
		return spirit("20 and 21", sweet(atMost, 0.1)).check(p, "dry gin")
	}
	return nil
}

func (d definition) check(p *flavor.Profile, claim string) error {
	for _, l := range d.limits {
		if v := l.what.of(p); !l.bound.holds(v, l.value) {
			return l.fault(p, v, claim, d.source)
		}
	}
	for _, a := range d.holds {
		if c, has := p.Allergen(a); !has || c != flavor.Contains {
			return fmt.Errorf("field allergens: %q is made with %s (%s), which the record does not contain; add it, or drop the claim in legal", claim, a, d.source)
		}
	}
	for _, a := range d.lacks {
		if c, has := p.Allergen(a); has && c == flavor.Contains {
			return fmt.Errorf("field allergens: %q is made without %s (%s), which the record contains; take it out, or drop the claim in legal", claim, a, d.source)
		}
	}
	return nil
}

func (l limit) fault(p *flavor.Profile, v float64, claim, source string) error {
	field, value, unit := "abv", fmt.Sprintf("%.4g %% vol", v), "% vol"
	switch l.what {
	case invertSugar:
		field, unit = "sugar", "g/L of invert sugar"
		value = fmt.Sprintf("%.4g g/L counts as %.4g g/L of invert sugar", p.Sugar.Value, v)
	case totalStrength:
		value = fmt.Sprintf("%.4g %% vol and %.4g g/L of sugar make a total strength of %.4g %% vol", p.ABV.Value, p.Sugar.Value, v)
	}
	mend := "raise"
	if l.bound == atMost || l.bound == lessThan {
		mend = "lower"
	}
	return fmt.Errorf("field %s: %s, but %q asks for %s %g %s (%s); %s it, or drop the claim in legal or the name",
		field, value, claim, l.bound, l.value, unit, source, mend)
}

// checkSugarWords checks the words for sweetness in the name and the aliases of an
// aromatised wine.
func checkSugarWords(p *flavor.Profile) error {
	for _, name := range append([]string{p.Name}, p.Aliases...) {
		text := " " + strings.Join(nameWords(name), " ") + " "
		for _, w := range sugarWords {
			at := strings.Index(text, " "+w.word+" ")
			if at < 0 {
				continue
			}
			// Half dry, off dry and medium sweet are terms of the trade, not of the law.
			if before := text[:at]; !strings.HasSuffix(before, "half") && !strings.HasSuffix(before, "off") && !strings.HasSuffix(before, "medium") {
				if err := w.check(p, name); err != nil {
					return err
				}
			}
			break
		}
	}
	return nil
}

// nameWords splits a name into lower-case words, also at hyphens.
func nameWords(name string) []string {
	return strings.Fields(strings.NewReplacer("-", " ", ",", " ").Replace(strings.ToLower(name)))
}
