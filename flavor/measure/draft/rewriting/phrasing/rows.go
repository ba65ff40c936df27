package phrasing

import (
	"strings"

	"counterpour/flavor/measure/pattern"
)

// Amounts that stand apart from their names: in cells of a row, in brackets, told of two names at once.

var (
	// cellAmount is a cell of a row that holds an amount and nothing else, and cellName one that holds words.
	cellAmount = pattern.Of(`(?i)^[ \t"]*(?:\d*[.]?\d+(?:[ \t]?[½¼¾⅓⅔])?|[½¼¾⅓⅔]|\d+[ \t]?/[ \t]?\d+)[ \t]?(?:oz|ml|cl)?[ \t"]*$`)
	cellName   = pattern.Of(`(?i)^[^\d½¼¾⅓⅔]*\p{L}[^\d½¼¾⅓⅔]*$`)
	// bracketed is an amount in a bracket right behind its name: "Gin(2) Lemon(3/4)".
	bracketed = pattern.Of(`(\p{L})[ \t]*\((\d*[.]?\d+|\d+/\d+|\d*[ \t]?[½¼¾⅓⅔])\)[ \t]*([,;]?)`)
	// sharedBy is said of two things that are poured alike; a dairy is called so as well.
	sharedBy = pattern.Of(`(?i)\bhalf[ \t]*(?:and|&|n|-and-)[ \t]*half\b`)
	figure   = pattern.Of(`[\d½¼¾⅓⅔]`)
	// opt is short for optional.
	opt = pattern.Of(`(?i)\bopt(?:'l|\.|\b)`)
	// ifAsked is an optional pour in a bracket of its own: "(optional: 1 egg white)".
	ifAsked = pattern.Of(`(?i)([,;\n][ \t]*)\([ \t]*optional(?:ly)?:?[ \t]+([^()\n]*[\d½¼¾⅓⅔][^()\n]*)\)`)
)

// leastInRow is from how many amounts in cells of their own a line is a row, and leastBracketed from how many
// in brackets they are the habit of a text.
const leastInRow, leastBracketed = 2, 2

// rows parts the cells of a row by a sign that is no decimal one: "Sour,gin,2,lemon,.75,shake".
func (p *Plain) rows() {
	lines := strings.Split(p.Text, "\n")
	for i, line := range lines {
		if isRow(line) {
			lines[i] = strings.ReplaceAll(line, ",", ";")
		}
	}
	p.Text = strings.Join(lines, "\n")
}

// isRow reports whether each cell of a line between commas holds an amount or words, and names and amounts
// take turns.
func isRow(line string) bool {
	cells := strings.Split(line, ",")
	amounts, before := 0, false
	for _, c := range cells {
		amount := cellAmount.MatchString(c)
		if amount && before || !amount && !cellName.MatchString(c) {
			return false
		}
		if before = amount; amount {
			amounts++
		}
	}
	return amounts >= leastInRow && len(cells) > 2*amounts
}

// brackets takes amounts out of the brackets behind their names.
func (p *Plain) brackets() {
	if len(bracketed.FindAllStringIndex(p.Text, leastBracketed)) < leastBracketed {
		return
	}
	p.backward(bracketed, func(at []int) { p.replace(at[3], at[1], " "+p.Text[at[4]:at[5]]+", ") })
}

// shared writes equal parts for halves, where no amount stands that could be of the dairy.
func (p *Plain) shared() {
	if !figure.MatchString(p.Text) {
		p.backward(sharedBy, func(at []int) { p.replace(at[0], at[1], "equal parts") })
	}
}

// optionals writes out what is short for optional, and takes such a pour out of its bracket.
func (p *Plain) optionals() {
	p.backward(opt, func(at []int) { p.replace(at[0], at[1], "optional") })
	p.backward(ifAsked, func(at []int) { p.replace(at[0], at[1], p.Text[at[2]:at[3]]+p.Text[at[4]:at[5]]+" optional") })
}
