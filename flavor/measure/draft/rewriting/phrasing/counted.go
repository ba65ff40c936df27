package phrasing

import (
	"strconv"
	"strings"

	"counterpour/flavor/measure/pattern"
)

// Old receipts write a unit before its number, which is a Roman one that may end in a j: "gtt. v", "dr. ij",
// "oz. iij". The drachm is an eighth of the fluid ounce: common practice, no source.
var receipt = pattern.Of(`(?i)\b(gtts?|dr|drs|fl[ .]?dr|oz|tsp)\.?[ \t]+([ivx]{1,4}j?|j)\b\.?`)

// receiptUnits are the units of a receipt as bars write them.
var receiptUnits = map[string]string{"gtt": "drops", "gtts": "drops", "dr": "drachms", "drs": "drachms", "oz": "oz", "tsp": "tsp"}

// roman are Roman numbers up to twelve by their order.
var roman = strings.Fields("i ii iii iv v vi vii viii ix x xi xii")

// apothecary writes the amounts of old receipts as lists do.
func (p *Plain) apothecary() {
	p.backward(receipt, func(at []int) {
		unit := receiptUnits[strings.TrimLeft(strings.TrimPrefix(strings.ToLower(p.Text[at[2]:at[3]]), "fl"), " .")]
		number := strings.ReplaceAll(strings.ToLower(p.Text[at[4]:at[5]]), "j", "i")
		for i, r := range roman {
			if r == number && unit != "" {
				p.replace(at[0], at[1], strconv.Itoa(i+1)+" "+unit)
			}
		}
	})
}

// label is the number of a step or a pour within a line: "1. 60 ml gin 2. 30 ml lemon".
var label = pattern.Of(`(?:^|[ \t:])(\d{1,2})\.[ \t]+[\pL\d½¼¾⅓⅔]`)

// leastNumbered is from how many numbers in a row on a line is a list of them.
const leastNumbered = 3

// numbered puts what a line numbers, from one on, on lines of their own.
func (p *Plain) numbered() {
	lines := strings.Split(p.Text, "\n")
	for k, line := range lines {
		var at [][]int
		for _, m := range label.FindAllStringSubmatchIndex(line, -1) {
			if line[m[2]:m[3]] == strconv.Itoa(len(at)+1) {
				at = append(at, m)
			}
		}
		if len(at) < leastNumbered || strings.ContainsAny(line[:at[0][2]], "0123456789") {
			continue
		}
		for i := len(at) - 1; i >= 0; i-- {
			line = strings.TrimRight(line[:at[i][2]], " \t;,") + "\n" + strings.TrimLeft(line[at[i][3]+1:], " \t")
		}
		lines[k] = strings.TrimLeft(line, "\n")
	}
	p.Text = strings.Join(lines, "\n")
}
