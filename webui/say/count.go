package say

import "strconv"

// count writes a number before the form that its language has for it; the forms stand in the
// order in which the language counts. It is a function in sentences.
func count(n int, first string, others ...string) string {
	forms := append([]string{first}, others...)
	return strconv.Itoa(n) + " " + forms[min(form(n), len(others))]
}

// form tells which form of a word goes with a number: English has one for 1 and one for all
// others.
func form(n int) int {
	if n == 1 {
		return 0
	}
	return 1
}

// formInScript is form for a number of a script.
const formInScript = "%s === 1 ? 0 : 1"
