package sheet

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// leastCells is from how many cells on a row pasted from a sheet tells more than a line.
const leastCells = 4

// TitleApart puts the name of a drink on a line of its own where a text is one row of a sheet
// whose first cell is the name: "Pier Lamp", "gin", "50", "lemon", "25", parted by tabs. Written
// on, it would be taken for a part of the first name. It is false of any other text; what it
// returns is as long as the text.
func TitleApart(text string) (string, bool) {
	row := strings.TrimRight(text, "\t \r\n")
	cells := strings.Split(row, "\t")
	if len(cells) < leastCells || strings.ContainsAny(row, "\r\n") || !inWords(cells[0]) || !inWords(cells[1]) || !inFigures(cells[2]) {
		return text, false
	}
	at := len(cells[0])
	return text[:at] + "\n" + text[at+1:], true
}

// inWords reports whether a cell holds a name, which begins with no amount: "gin", "0% Mule".
func inWords(cell string) bool {
	return strings.ContainsFunc(cell, unicode.IsLetter) && (!inFigures(cell) || strings.Contains(cell, "%"))
}

// inFigures reports whether a cell begins with a figure.
func inFigures(cell string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimSpace(cell))
	return first == '.' || unicode.IsNumber(first)
}
