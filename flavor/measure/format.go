package measure

import (
	"math"
	"strconv"
	"strings"

	"counterpour/flavor"
)

// glyphs are the fractions a bartender writes, in print.
var glyphs = []struct {
	value float64
	sign  string
}{
	{1.0 / 8, "⅛"}, {1.0 / 4, "¼"}, {1.0 / 3, "⅓"}, {3.0 / 8, "⅜"}, {1.0 / 2, "½"},
	{5.0 / 8, "⅝"}, {2.0 / 3, "⅔"}, {3.0 / 4, "¾"}, {7.0 / 8, "⅞"},
}

// fractionTolerance is how near an amount must be to an eighth or a third to be
// printed as one.
const fractionTolerance = 1e-6

// FormatAmount returns an amount as a bartender writes it: "¾ oz", "22.5 ml",
// "2 dashes", "top". All but ml, cl and g take eighths and thirds; other
// amounts are rounded to two decimals, or to two digits below 0.01.
func FormatAmount(amount float64, u flavor.Unit) string {
	n, ok := fraction(amount, u, fractionTolerance)
	if !ok {
		n = decimals(amount)
	}
	return withUnit(n, amount, u)
}

// exactAmount is FormatAmount without rounding: it reads back as the same number.
func exactAmount(amount float64, u flavor.Unit) string {
	return withUnit(exactNumber(amount, u), amount, u)
}

func exactNumber(amount float64, u flavor.Unit) string {
	if n, ok := fraction(amount, u, 0); ok {
		return n
	}
	return number(amount)
}

func withUnit(n string, amount float64, u flavor.Unit) string {
	if u == flavor.Top && amount == 1 {
		return string(u)
	}
	if u == "" {
		return n
	}
	return n + " " + unitWord(amount, u)
}

// unitWord returns u in the singular or the plural.
func unitWord(amount float64, u flavor.Unit) string {
	info, ok := infoOf(u)
	switch {
	case !ok:
		return string(u)
	case amount > 0 && amount <= 1+fractionTolerance:
		return info.one
	}
	return info.many
}

// fraction prints v as a whole number and one of the glyphs. It is false if v
// is none within the tolerance, or if u is written in decimals.
func fraction(v float64, u flavor.Unit, tolerance float64) (string, bool) {
	if u.Decimal() || !positive(v) || v > 1e6 {
		return "", false
	}
	whole := math.Floor(v + tolerance)
	if math.Abs(v-whole) <= tolerance {
		return number(whole), whole > 0
	}
	for _, g := range glyphs {
		if math.Abs(whole+g.value-v) > tolerance {
			continue
		}
		if whole == 0 {
			return g.sign, true
		}
		return number(whole) + g.sign, true
	}
	return "", false
}

// decimals rounds v to two decimals, or to two digits below 0.01.
func decimals(v float64) string {
	if a := math.Abs(v); a > 0 && a < 0.01 {
		v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 2, 64), 64)
		return number(v)
	}
	return number(math.Round(v*100) / 100)
}

// Format returns s in the text form, a pour a line, the method and the service
// last. [Parse] and [Resolve] read it as the same name, method, service and
// pours, as long as the names of its ingredients are names that the finder
// knows and s is within the limits of this package. The notes are not written.
func Format(s flavor.Spec) string {
	var b strings.Builder
	name := oneLine(s.Name)
	if name != "" {
		b.WriteString(formatName(name) + "\n")
	}
	for i := range s.Pours {
		b.WriteString(formatPour(&s.Pours[i], name == "" && i == 0) + "\n")
	}
	switch {
	case s.Method != "" && s.Service != "":
		b.WriteString(string(s.Method) + ", " + string(s.Service) + "\n")
	case s.Method != "" || s.Service != "":
		b.WriteString(string(s.Method) + string(s.Service) + "\n")
	}
	return b.String()
}

// formatName marks a name that would be read as something else.
func formatName(name string) string {
	read, pour, fault := readLine(name, true)
	if read == name && pour == nil && fault == nil && !strings.HasPrefix(name, "#") {
		return name
	}
	return namePrefix + " " + name
}

// formatPour writes the most natural line that reads back as p.
func formatPour(p *flavor.Pour, first bool) string {
	name := oneLine(p.Match.Asked)
	if p.Profile != nil {
		name = oneLine(p.Profile.Name)
	}
	plain := exactNumber(p.Amount, p.Unit) + " " + unitWord(p.Amount, p.Unit) + " " + name
	if p.Unit == "" {
		return exactNumber(p.Amount, p.Unit) + " " + name
	}
	for _, line := range naturalLines(p, name) {
		_, pour, fault := readLine(line, first)
		if fault != nil || pour == nil || pour.Amount != p.Amount || pour.Name != name {
			continue
		}
		if pour.Unit == p.Unit || pour.Unit == "" && p.Unit == flavor.Piece && hasYield(p.Profile, flavor.Piece) {
			return line
		}
	}
	return plain
}

// naturalLines are the ways to write p that a bartender would prefer.
func naturalLines(p *flavor.Pour, name string) []string {
	info, ok := infoOf(p.Unit)
	switch {
	case !ok:
		return nil
	case p.Unit == flavor.Piece:
		return []string{exactNumber(p.Amount, p.Unit) + " " + name}
	case info.kind == byCount && !endsInUnit(name):
		return []string{exactNumber(p.Amount, p.Unit) + " " + name + " " + unitWord(p.Amount, p.Unit)}
	}
	return []string{exactAmount(p.Amount, p.Unit) + " " + name}
}

func endsInUnit(name string) bool {
	u, _ := trailingUnit(name)
	return u != ""
}

func hasYield(p *flavor.Profile, u flavor.Unit) bool {
	if p == nil {
		return false
	}
	y, ok := p.Yield(u)
	return ok && positive(y.Amount.Value)
}
