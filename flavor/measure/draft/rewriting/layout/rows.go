package layout

import (
	"math"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/label"
	"counterpour/flavor/measure/draft/words/serving"
	"counterpour/flavor/measure/draft/words/token"
	"counterpour/flavor/measure/pattern"
)

// A row of a sheet may stand without a head. Its cells hold names, amounts and units by turns, the name of the drink
// before them and how it is made behind them: "Harbour,1.5,dark rum,.75,lime,shake".

// cellKind is what a cell holds.
type cellKind byte

const (
	words  cellKind = iota
	number          // an amount, with its unit or without
	unitOf          // a unit alone
	both            // a name and its amount, parted by a colon
	manner          // how the drink is made and served
)

// cell is one of a row.
type cell struct {
	kind         cellKind
	text         string // as it is read
	value        float64
	unit         flavor.Unit
	name, amount string // of a cell that holds both
}

// rowSigns part the cells of a row, the surest first.
var rowSigns = []string{"\t", "|", ";", ","}

// leastOfRow is how many cells a row has that holds a whole drink, leastOfLine how many one that holds a pour.
const leastOfRow, leastOfLine = 6, 3

// inLiquids are words that stand for an amount in a cell of its own.
var inLiquids = token.Words(`top float rinse splash dash fill`)

// rows sets each pour of a row on a line of its own.
func (s *Set) rows() {
	for _, at := range emptyCells.FindAllStringIndex(s.Text, -1) {
		s.clear(at[0], at[1])
	}
	lines := strings.Split(s.Text, "\n")
	under := headed(lines)
	changed := len(under) != len(lines)
	lines = under
	for i, line := range lines {
		for _, sign := range rowSigns {
			in := cellsOf(line, sign)
			if len(in) < leastOfLine {
				continue
			}
			pours, ok := row(in)
			if ok {
				lines[i], changed = strings.Join(pours, "\n"), true
				break
			}
		}
	}
	if changed {
		s.Text = strings.Join(lines, "\n")
	}
}

// emptyCells are those before what a row tells in a later one: ";;shake / rocks".
var emptyCells = pattern.Of(`(?m)^[ \t]*(?:[;,|][ \t]*){2,}`)

// cellsOf are the cells of a line that hold something.
func cellsOf(line, sign string) []cell {
	if !strings.Contains(line, sign) {
		return nil
	}
	var out []cell
	quoted := false
	for part := range strings.FieldsFuncSeq(line, func(c rune) bool {
		if c == '"' {
			quoted = !quoted
		}
		return !quoted && string(c) == sign
	}) {
		if part = strings.Trim(part, " \t\r\""); part != "" {
			out = append(out, cellOf(part))
		}
	}
	return out
}

// cellOf is what a cell holds.
func cellOf(text string) cell {
	c := cell{text: text}
	toks := token.Lex(nil, text, 0, len(text))
	if before, behind, ok := strings.Cut(text, ":"); ok && label.Words[strings.ToLower(strings.TrimSpace(before))] == label.None {
		name, amount := cellOf(strings.TrimSpace(before)), cellOf(strings.TrimSpace(behind))
		if name.kind == words && (amount.kind == number || inLiquids[strings.ToLower(amount.text)]) {
			c.kind, c.name, c.amount = both, name.text, amount.text
			return c
		}
	}
	switch unit, k := entry.UnitAt(toks); {
	case len(toks) > 0 && entry.AmountAt(toks) == len(toks):
		c.kind, c.value = number, toks[0].Value
	case k > 0 && k == len(toks):
		c.kind, c.unit = unitOf, unit
	case inLiquids[strings.ToLower(text)]: // "fill" is no unit
		c.kind = number
	default:
		if said := serving.Read(toks); said.States() && len(said.Unknown) == 0 {
			c.kind = manner
		}
	}
	return c
}

// row are the lines of the cells of a row: the name of the drink, its pours, and what else it says. It is false if
// names and amounts do not take turns, or may in two ways.
func row(in []cell) ([]string, bool) {
	var out []string
	if lines, ok := pairsOfRow(in); ok {
		return lines, true
	}
	if len(in) >= leastOfRow {
		if in[0].kind == words && in[1].kind == words { // the drink, and names before their amounts
			out = append(out, in[0].text)
			in = in[1:]
		} else if lines, ok := amountsFirst(in); ok {
			return lines, true
		}
	}
	lines, rest := namesFirst(in)
	if len(lines) == 0 || len(in) >= leastOfRow && len(lines) < leastCells || len(in) < leastOfRow && len(lines) > 1 {
		return nil, false
	}
	for _, c := range rest {
		if c.kind == number || c.kind == unitOf || c.kind == both {
			return nil, false
		}
		lines = append(lines, c.text)
	}
	return append(out, lines...), true
}

// pairsOfRow are the lines of a row whose cells hold a name and its amount each.
func pairsOfRow(in []cell) ([]string, bool) {
	var out []string
	pairs := 0
	for i, c := range in {
		switch {
		case c.kind == both:
			out = append(out, c.amount+" "+c.name)
			pairs++
		case c.kind == words && (i == 0 || pairs >= leastCells), c.kind == manner && pairs >= leastCells:
			out = append(out, c.text)
		default:
			return nil, false
		}
	}
	return out, pairs >= leastCells
}

// measures reports whether a cell is an amount, or a word that stands for one.
func (c *cell) measures() bool {
	return c.kind == number || c.kind == unitOf && inLiquids[strings.ToLower(c.text)]
}

// namesFirst are the lines of cells that begin with names, each with its amount behind it, and the cells behind them.
func namesFirst(in []cell) (out []string, rest []cell) {
	for len(in) > 1 && in[0].kind == words && in[1].measures() {
		name, amount := in[0].text, in[1].text
		first := in[1]
		in = in[2:]
		if len(in) > 0 && in[0].kind == unitOf {
			first.unit = in[0].unit
			amount += " " + in[0].text
			in = in[1:]
		}
		if len(in) > 0 && in[0].kind == number && sameAmount(&first, &in[0]) {
			in = in[1:]
		}
		out = append(out, amount+" "+name)
	}
	return out, in
}

// mlPerOunce are the millilitres of a US fluid ounce, by definition, and hand how far a hand rounds them off.
const mlPerOunce, hand = 29.5735, 0.06

// sameAmount reports whether a number is an amount in ounces told again in millilitres.
func sameAmount(ounces, again *cell) bool {
	return ounces.unit == flavor.Ounce && math.Abs(again.value-ounces.value*mlPerOunce) <= hand*again.value
}

// amountsFirst are the lines of a row that begins with the name of the drink, with each amount before its name; false
// for another.
func amountsFirst(in []cell) ([]string, bool) {
	if in[0].kind != words || in[1].kind != number {
		return nil, false
	}
	out := []string{in[0].text}
	rest := in[1:]
	for len(rest) > 1 && rest[0].kind == number {
		amount := rest[0].text
		rest = rest[1:]
		if rest[0].kind == unitOf && len(rest) > 1 {
			amount += " " + rest[0].text
			rest = rest[1:]
		}
		if rest[0].kind != words {
			return nil, false
		}
		out = append(out, amount+" "+rest[0].text)
		rest = rest[1:]
	}
	if len(out) <= leastCells {
		return nil, false
	}
	for _, c := range rest {
		if c.kind != manner {
			return nil, false
		}
		out = append(out, c.text)
	}
	return out, true
}

// headed reads a row under a head that names what each of its amounts is of, with the unit: "drink,gin_ml,lime_ml".
func headed(lines []string) []string {
	for i := 0; i+1 < len(lines); i++ {
		heads, values := strings.Split(lines[i], ","), strings.Split(lines[i+1], ",")
		if len(heads) < leastOfLine || len(heads) != len(values) || strings.ContainsAny(lines[i], figures) || i+2 < len(lines) && strings.Count(lines[i+2], ",") == len(heads)-1 {
			continue
		}
		var out []string
		pours := 0
		for k, head := range heads {
			value := strings.TrimSpace(values[k])
			name, unit, ok := unitOfHead(head)
			switch c := cellOf(value); {
			case value == "":
			case ok && c.kind == number && c.value > 0:
				out = append(out, value+" "+unit+" "+name)
				pours++
			case ok && inLiquids[strings.ToLower(value)]:
				out = append(out, value+" "+name)
				pours++
			case ok:
				return lines
			default:
				if l := strings.ToLower(strings.TrimSpace(head)); label.Words[l] != label.None {
					value = l + ": " + value
				}
				out = append(out, value)
			}
		}
		if pours >= leastCells {
			return append(append(append([]string{}, lines[:i]...), out...), lines[i+2:]...)
		}
	}
	return lines
}

// unitOfHead parts the head of a column into a name and the unit behind it: "lime_ml", "lime (ml)".
func unitOfHead(head string) (name, unit string, ok bool) {
	head = strings.TrimRight(strings.TrimSpace(head), ")")
	at := strings.LastIndexAny(head, "_ (-")
	if at <= 0 {
		return "", "", false
	}
	unit = head[at+1:]
	toks := token.Lex(nil, unit, 0, len(unit))
	u, k := entry.UnitAt(toks)
	name = strings.TrimSpace(strings.ReplaceAll(head[:at], "_", " "))
	return strings.TrimRight(name, " ("), unit, k == 1 && len(toks) == 1 && u.Jigger()
}
