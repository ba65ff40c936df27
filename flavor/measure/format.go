package measure

import (
	"math"
	"strconv"

	"counterpour/flavor"
)

// glyphs are the fractions that a bartender writes, with their characters.
var glyphs = []struct {
	value float64
	sign  string
}{
	{1.0 / 8, "⅛"}, {1.0 / 4, "¼"}, {1.0 / 3, "⅓"}, {3.0 / 8, "⅜"}, {1.0 / 2, "½"},
	{5.0 / 8, "⅝"}, {2.0 / 3, "⅔"}, {3.0 / 4, "¾"}, {7.0 / 8, "⅞"},
}

// fractionTolerance is the largest difference between an amount and an eighth or a third
// that is printed as that fraction.
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

// ExactNumber writes an amount of u so that it reads back as the same number.
func ExactNumber(amount float64, u flavor.Unit) string {
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
	return n + " " + UnitWord(amount, u)
}

// UnitWord returns the word for a unit, in the singular or the plural.
func UnitWord(amount float64, u flavor.Unit) string {
	info, ok := infoOf(u)
	switch {
	case !ok:
		return string(u)
	case amount > 0 && amount <= 1+fractionTolerance:
		return info.one
	}
	return info.many
}

// fraction formats v as a whole number and a fraction. ok is false if v is no such number
// within the tolerance, or if u is written in decimals.
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

func hasYield(p *flavor.Profile, u flavor.Unit) bool {
	if p == nil {
		return false
	}
	y, ok := p.Yield(u)
	return ok && positive(y.Amount.Value)
}
