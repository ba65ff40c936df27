// Package jotted reads a bottle as people jot it down on a line without columns, and what else the name of one
// says: how many there are, what a full one holds, how strong it is, what it costs.
package jotted

import (
	"strconv"
	"strings"

	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor/measure/pattern"
)

// A plain line is a bottle as a supplier or a bartender writes it, without columns: "6 x
// Hawse dry gin 70cl 18.50", "Hawse dry gin 3x70cl @ 24", "Hawse dry gin 70cl - none". A number before "x",
// one behind it and one before "btl" are how many there are; a whole number is a price behind "@" or beside a
// sign of a currency.
var plainLine = pattern.Of(`(?i)^\s*(?:(\d+(?:[.,]\d+)?)\s*(?:[x×]|btls?\b|bottles?\b(?:\s+of\b)?)\s*)?` + // how many
	`(\S.*?\pL.*?|\pL.*?)` + // what it is called
	`(?:,?\s+(?:(\d+)\s*[x×]\s*)?(\d+(?:[.,]\d+)?\s*(?:ml|cl|l|ltr|lit(?:re|er)|oz|g|kg))\.?)?` + // what a full one holds, and how many before it
	`(?:\s*[-–:,]?\s*(?:[x×]\s*(\d+)\b|(\d+)\s*(?:btls?|bottles?)\b\.?|[-–:]?\s+(none|nil|out|empty|zero)\b))?` + // how many, behind
	`(?:\s*(?:@\s*((?:[€$£]|[A-Z]{3})?\s*\d+(?:[.,]\d\d)?\s*(?:[€$£]|[A-Z]{3})?)|` +
	`[-–]?\s*([€$£]\s*\d+|\d+\s*[€$£]|(?:[€$£]|[A-Z]{3})?\s*\d+[.,]\d\d\s*(?:[€$£]|[A-Z]{3})?))(?:\s*(?:ea\.?|each))?)?\s*$`)

// sizeFirst matches a name that begins with what a full one holds.
var sizeFirst = pattern.Of(`(?i)^(\d+(?:[.,]\d+)?\s*(?:ml|cl|l|ltr|lit(?:re|er)|oz|g|kg))\.?\s+(\S.*)$`)

// columned matches what parts a row into cells, where it is no decimal comma.
var columned = pattern.Of(`[;\t|"]|,\D|\D,|,$`)

// titles are the titles of the cells of a plain line.
var titles = []string{"Stock", "Name", "Size", "Price"}

// Cells are the cells of a plain line, as in titles; nil if it is none. Where it says twice how
// many there are, all but the first of it stays in the name, to be seen.
func Cells(line string) []string {
	m := plainLine.FindStringSubmatch(line)
	if m == nil {
		return nil
	}
	if lead := sizeFirst.FindStringSubmatch(m[2]); lead != nil && m[1] != "" && m[3]+m[4] == "" { // "24x20cl tonic water"
		m[1], m[2], m[3], m[4] = "", lead[2], m[1], lead[1]
	}
	count, size, price := "", m[4], strings.TrimSpace(m[8]+m[9])
	for _, said := range []string{m[1], m[3], m[5], m[6], m[7]} {
		if said != "" && count != "" {
			return []string{m[1], strings.TrimSpace(line[max(0, strings.Index(line, m[2])):]), "", ""}
		}
		count += said
	}
	if m[3] != "" && price != "" && (m[8] == "" || ofACase(m[3], m[4])) {
		count, size = "", m[3]+" x "+size // the price may be that of the pack: that is asked
	}
	return []string{count, strings.TrimSpace(m[2]), size, price}
}

// Lines parts a text without columns into rows, the titles first. ok is false where the
// text has columns, or where most lines say nothing but a name.
func Lines(text []byte) (rows []grid.Row, ok bool) {
	rows = []grid.Row{{Cells: titles}}
	said := 0
	for i, line := range strings.Split(strings.ReplaceAll(string(text), "\r\n", "\n"), "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		if columned.MatchString(line) {
			return nil, false
		}
		row := grid.Row{Number: i + 1, Cells: []string{"", strings.TrimSpace(line), "", ""}, Raw: line + "\n"}
		if cells := Cells(line); cells != nil {
			row.Cells = cells
			if cells[0]+cells[2]+cells[3] != "" {
				said++
			}
		}
		rows = append(rows, row)
	}
	return rows, 2*said >= len(rows)-1 && said > 0
}

// smallML is up to how much a bottle holds that is bought by the case: common practice, no source.
const smallML = 350.0

// ofACase reports whether a price beside several bottles of a size may be that of their case: small
// bottles are priced so.
func ofACase(count, size string) bool {
	n, err := strconv.Atoi(count)
	a, open, ok := numeral.Size(size, "", false)
	return err == nil && n > 1 && ok && !open && a.ML > 0 && a.ML <= smallML
}
