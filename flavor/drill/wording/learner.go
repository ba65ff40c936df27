package wording

import "fmt"

// Skill names what is trained, a kind of round and the axis of those that have one.
func Skill(kind, axis string) string {
	if axis == "" {
		return kind
	}
	return kind + " of " + axis
}

// Untried says that somebody has not tried a skill.
func Untried(who, skill string) string { return fmt.Sprintf("%s has not tried %s yet", who, skill) }

// Notices says from how many noticeable steps on somebody tells a skill.
func Notices(who, skill string, steps float64, right, rounds int) string {
	return fmt.Sprintf("%s notices %s from %.1f noticeable steps on, %d of %d right", who, skill, steps, right, rounds)
}

// Guesses says to within how many noticeable steps somebody guesses.
func Guesses(who string, steps float64, right, rounds int) string {
	return fmt.Sprintf("%s guesses to within %.2f noticeable steps, %d of %d right", who, steps, right, rounds)
}

// Unsure adds that this is not certain.
const Unsure = "; too few rounds to be sure"

// Overdue adds for how many days a skill is due.
func Overdue(days int) string { return fmt.Sprintf("; %d days overdue", days) }
