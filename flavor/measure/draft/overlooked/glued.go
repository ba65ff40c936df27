package overlooked

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// tenths is a figure behind a stop that stands right behind a word: "gin.2 oz". Half an ounce is written so.
var tenths = pattern.Of(`(?i)\pL\.([1-46-9][ \t]?oz)\b`)

// GluedStop is the fault of an amount behind a stop that may part it from its name or be its decimal point: nobody
// pours a tenth of an ounce, and nobody knows that it is none.
func GluedStop(text string) *flavor.DataFault {
	at := tenths.FindStringSubmatchIndex(text)
	if at == nil {
		return nil
	}
	amount := text[at[2]:at[3]]
	f := measure.Invalid("amount", amount, "%q behind a stop may be %s or a tenth of it; put a blank before the amount, and a nought before its point", amount, amount)
	f.Location = measure.LineLocation(1 + strings.Count(text[:at[0]], "\n"))
	return f
}
