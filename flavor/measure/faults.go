package measure

import (
	"strconv"

	"counterpour/flavor"
)

// Limits on what is read. More is a fault, not a truncation.
const (
	MinAmount = 0.001   // of any unit; less cannot be poured
	MaxPourML = 10000.0 // ten litres of one ingredient
	maxCount  = 100.0   // of something without a unit
)

// Invalid makes a fault in what a draft says. Its location is filled in by whoever
// knows the line; until then it holds the field: amount, unit or ingredient.
func Invalid(field, word, format string, args ...any) *flavor.Fault {
	f := flavor.Invalid(field, word, format, args...)
	f.Field = field
	return f
}

// LineLocation is the location of a fault in the n-th line of a text, from 1.
func LineLocation(n int) string { return "line " + strconv.Itoa(n) }

// Names are the words of a list of units, methods or services.
func Names[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, v := range list {
		out[i] = string(v)
	}
	return out
}

// DidYouMean asks for one of the words nearest to an unknown one; empty for none.
func DidYouMean(near []string) string {
	if len(near) == 0 {
		return ""
	}
	return " (did you mean " + flavor.JoinOr(near) + "?)"
}

// number prints v with as many digits as it needs.
func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// CheckAmount returns a fault if nobody pours that much or that little, else
// nil. The word is the amount as written; an empty unit is a number of things.
func CheckAmount(amount float64, u flavor.Unit, word string) *flavor.Fault {
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
