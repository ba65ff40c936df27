package wording

import (
	"fmt"
	"strings"
)

// portions are said in words, by how many of how many parts they are.
var portions = map[[2]int]string{{2, 3}: "two thirds", {1, 2}: "half", {1, 3}: "a third", {1, 4}: "a quarter"}

// OfEverything says to pour so many of so many parts of a drink.
func OfEverything(some, parts int) string {
	return fmt.Sprintf("pour %s of everything", portions[[2]int{some, parts}])
}

// Add says to pour an ingredient as well.
func Add(amount, name string) string { return fmt.Sprintf("add %s %s", amount, name) }

// LeaveOut says not to pour an ingredient.
func LeaveOut(name string) string { return "leave out the " + name }

// Instead says to pour an amount of an ingredient in place of another.
func Instead(amount, name, before string) string {
	return fmt.Sprintf("pour %s %s instead of %s", amount, name, before)
}

// InPlace says to pour an amount of one ingredient in the place of another one.
func InPlace(amount, name, out string) string {
	return fmt.Sprintf("pour %s %s instead of the %s", amount, name, out)
}

// All says to do one thing and another.
func All(steps []string) string { return strings.Join(steps, ", and ") }

// NotEnough says of what a fix does that the drink is still out of balance then.
func NotEnough(text string) string { return text + "; that is not enough to balance it" }
