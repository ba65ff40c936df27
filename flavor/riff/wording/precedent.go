package wording

import "fmt"

// AsPoured says that a drink pours what a proven one does.
func AsPoured(proven string) string { return "as " + proven + " is poured" }

// Nearest says which proven drink is most like a drink.
func Nearest(proven string) string { return "the nearest proven drink is " + proven }

// PouredIn says in how many proven drinks something is poured, and names one of them.
func PouredIn(what string, n int, proven string) string {
	return fmt.Sprintf("%s is poured in %s, such as %s", what, provenDrinks(n), proven)
}

// PouredWith says in how many proven drinks something is poured beside another thing, and
// names one of them.
func PouredWith(what, beside string, n int, proven string) string {
	return fmt.Sprintf("%s is poured with %s in %s, such as %s", what, beside, provenDrinks(n), proven)
}

// NeverWith says that no proven drink pours two things together, and which is nearest.
func NeverWith(what, beside, nearest string) string {
	return fmt.Sprintf("no proven drink pours %s with %s; the nearest is %s", what, beside, nearest)
}

// Share says what two ingredients both smell of.
func Share(a, b, note string) string { return fmt.Sprintf("%s and %s both smell of %s", a, b, note) }

func provenDrinks(n int) string {
	if n == 1 {
		return "one proven drink"
	}
	return fmt.Sprintf("%d proven drinks", n)
}
