package token

// What stands around an amount or between names.

// Joins are words between two names, or between a number and what it is of.
var Joins = Words(`or to and with of over for about approx than in at into from by the plus x around`)

// Approximations stand before an amount or a unit. The first list changes
// nothing that can be measured; the second is said in a note.
var (
	LooseWords = Words(`about approx approximately ca circa roughly around full level even exactly ~ good`)
	BiasWords  = Words(`scant fat heavy generous healthy short heaping heaped rounded bare hefty big small large tiny light thick thin nearly almost barely just under over shy`)
)

// Opening returns where the last bracket opens before the last token; below 0 if none does.
func Opening(toks []Token) int {
	for i := len(toks) - 2; i >= 0; i-- {
		if toks[i].Is("(") {
			return i
		}
	}
	return -1
}
