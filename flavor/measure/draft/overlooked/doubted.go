package overlooked

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/pattern"
)

// queried is a mark of doubt that stands alone, in place of a word or an amount, "15 ml ??? syrup", or
// behind a pour that may be another: "25 gin??".
var queried = pattern.Of(`(?i)(?:[\d½¼¾⅓⅔]|\b(?:ml|cl|oz|dash|dashes|bsp|tsp))[ \t]*\?{2,}|(?:^|[ \t])\?{2,}[ \t]+[\pL\d]|[\d½¼¾⅓⅔][ \t]*(?:(?:ml|cl|oz)[ \t]+)?[\pL]+(?:[ \t]+[\pL]+)?[ \t]*\?{2,}`)

// doubted is the fault of a line that holds such a mark.
func doubted(line string) *flavor.DataFault {
	m := queried.FindString(line)
	if m == "" {
		return nil
	}
	return measure.Invalid("text", strings.TrimSpace(line), "%q leaves something open; write what is poured", strings.TrimSpace(m))
}
