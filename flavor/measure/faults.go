package measure

import (
	"strconv"

	"counterpour/flavor"
)

// Limits of amounts. An amount outside them is a fault.
const (
	MinAmount = 0.001   // of any unit; less cannot be poured
	MaxPourML = 10000.0 // ten litres of one ingredient
	maxCount  = 100.0   // of something counted
)

// Invalid returns a fault in a draft. Its location is the field, "amount", "unit" or
// "ingredient", until a caller that knows the line replaces it.
func Invalid(field, word, format string, args ...any) *flavor.DataFault {
	f := flavor.Invalid(field, word, format, args...)
	f.Field = field
	return f
}

// LineLocation returns the location of a fault in line n of a text, from 1.
func LineLocation(n int) string { return "line " + strconv.Itoa(n) }

// Names converts a list of units, methods or services to strings.
func Names[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}

// DidYouMean returns a question that offers the nearest known words; "" if near is empty.
func DidYouMean(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return " (did you mean " + flavor.JoinOr(near) + "?)"
}

// number formats v with as many digits as it needs.
func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// CheckAmount returns a fault if an amount is outside what one pour may be, otherwise
// nil. word is the amount as written; an empty unit is a count.
func CheckAmount(amount float64, u flavor.Unit, word string) *flavor.DataFault {
	most, name := maxCount, ""
	if info, ok := infoOf(u); ok {
		most, name = info.most, " "+info.many
	}
	switch {
	case !positive(amount):
		return Invalid("amount", word, "%q is not an amount above zero; write one, such as \"2 oz\", or leave the line out", word)
	case amount < MinAmount:
		return Invalid("amount", word, "%q is less than can be poured; write %v or more", word, MinAmount)
	case amount > most:
		return Invalid("amount", word, "%q is more than one drink holds; write %v%s or less", word, most, name)
	}
	return nil
}
