package numeral

import "strings"

// Priced splits a price from its currency: a code, or a sign; shared is true for a sign of
// several currencies. The figure is not read yet, so that who asks decides how strict to
// be with it.
func Priced(cell string) (figure, code string, shared bool) {
	s := strings.TrimSpace(cell)
	for _, g := range signs {
		if strings.Contains(s, g.sign) {
			code, shared = g.code, strings.Contains(sharedSigns, g.sign)
			s = strings.Replace(s, g.sign, " ", 1)
			break
		}
	}
	if m := codeBeside.FindString(s); m != "" && KnownCurrency(m) {
		code, shared, s = m, false, strings.Replace(s, m, " ", 1)
	}
	s = perOne.ReplaceAllString(strings.TrimSpace(s), "")
	s = strings.TrimSuffix(strings.TrimSuffix(strings.TrimSpace(s), ".-"), ",-") // 18.- and 18,-
	return strings.TrimSpace(s), code, shared
}

// besideFigure are other spellings of the units that a form asks for, with how much one of
// them is in that unit. Common practice, no source.
var besideFigure = map[string]map[string]float64{
	"% vol":   {"%": 1, "% vol": 1, "%vol": 1, "vol%": 1, "vol": 1, "% abv": 1, "%abv": 1, "abv": 1, "°": 1, "proof": 0.5},
	"%":       {"%": 1},
	"°Bx":     {"°": 1, "°bx": 1, "bx": 1, "brix": 1, "°brix": 1, "° bx": 1, "° brix": 1, "%": 1},
	"g/L":     {"g/l": 1},
	"bottles": {"bottle": 1, "bottles": 1, "btl": 1, "btls": 1},
}

// In splits a figure from the unit that is written with it, and says how much one of that
// unit is in the unit asked for: 70cl in mL is 70, of 10 each. A figure alone is in the
// unit asked for. ok is false if the unit is not known, or is of another kind.
func In(text, unit string) (figure string, each float64, ok bool) {
	s := strings.TrimSpace(text)
	m := withUnit.FindStringSubmatch(s)
	if m == nil || strings.TrimSpace(m[2]) == "" {
		return s, 1, true
	}
	figure = strings.TrimSpace(m[1])
	if asked := strings.ToLower(unit); asked == "ml" || asked == "g" {
		u, known := sizeUnitOf(unitWord(m[2]))
		return figure, u.each, known && u.weight == (asked == "g")
	}
	each, ok = besideFigure[unit][strings.ToLower(strings.TrimSpace(m[2]))]
	return figure, each, ok
}

// vessels may be written after a size, as in 70 cl bottle.
var vessels = []string{"bottles", "bottle", "btl", "can", "keg", "jar", "carton", "bag", "box", "tin", "each"}

// unitWord returns the unit of what stands after a figure, in small letters, without the
// vessel.
func unitWord(written string) string {
	said := strings.TrimSpace(strings.ReplaceAll(strings.ToLower(written), ".", ""))
	for _, word := range vessels {
		said = strings.TrimSpace(strings.TrimSuffix(said, word))
	}
	return said
}

// sizeUnitOf finds a unit of sizes, in the singular or the plural.
func sizeUnitOf(said string) (sizeUnit, bool) {
	u, known := sizeUnits[said]
	if !known {
		u, known = sizeUnits[strings.TrimSuffix(said, "s")]
	}
	return u, known
}
