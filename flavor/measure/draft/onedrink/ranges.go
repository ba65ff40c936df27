package onedrink

import (
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/words/entry"
	"counterpour/flavor/measure/draft/words/token"
)

// Amounts that are ranges are refused: nobody can pour "3/4-1 oz", and the drink tastes of which end of it
// is poured. What a hand counts out loosely, such as "2-3 dashes" and "8-10 mint leaves", stays as it is
// read: its middle, which is told.

// Ranges returns a fault for each pour of a draft whose amount is a range. It names both ends, and suggests
// them. At tells which of the pours each line is: −1 if it is none. What no pour is measured by may be a
// range, such as how long a drink is stirred.
func Ranges(d *draft.Draft, pours []flavor.Pour, at []int) (out flavor.DataFaults) {
	text := d.String()
	for i := range d.Lines {
		l := &d.Lines[i]
		if i >= len(at) || at[i] < 0 || l.AmountAt.Empty() || l.AmountAt.End > len(text) {
			continue
		}
		written := text[l.AmountAt.Start:l.AmountAt.End]
		if loose(pours[at[i]].Unit, written) {
			continue
		}
		if f := faultOf(written, text[l.Span.Start:l.Span.End], l.Unit); f != nil {
			f.Location = measure.LineLocation(l.Number)
			out = append(out, f)
		}
	}
	return out
}

// fewest is how many pieces are as good as one more: three berries are, one lime is not. Common
// practice, no source.
const fewest = 3

// loose reports whether an amount is counted out by a hand that does not care for one more or less: leaves,
// dashes, berries. Both its ends must be written in figures or words.
func loose(u flavor.Unit, amount string) bool {
	low, _, ok := token.Between(amount)
	if !ok {
		return false
	}
	from, _ := token.Value(low)
	switch u {
	case flavor.Leaf, flavor.Sprig, flavor.Slice, flavor.Dash, flavor.Drop, flavor.Pinch:
		return true
	case flavor.Piece:
		return from >= fewest
	}
	return false
}

// faultOf is the fault of an amount that leaves a choice, by itself or by what stands behind it in its pour;
// nil if it is one amount.
func faultOf(amount, pour string, u flavor.Unit) (f *flavor.DataFault) {
	if low, high, ok := token.Between(amount); ok {
		f = measure.Invalid("amount", amount, "%q is a range; write one amount, %q or %q", amount, low, high)
		f.Suggest = []string{low, high}
	} else if end, ok := token.Bounded(amount); ok {
		f = measure.Invalid("amount", amount, "%q is the end of a range; write one amount, such as %q", amount, end)
		f.Suggest = []string{end}
	} else if other := choice(pour, u); other != "" {
		f = measure.Invalid("amount", other, "%q leaves a choice; write one amount", other)
	}
	return f
}

// choice is what stands in brackets in a pour and names another amount in its unit: "2 oz gin (or 2.5)",
// but not "2 oz gin (or 60 ml)".
func choice(pour string, u flavor.Unit) string {
	at := strings.Index(pour, "(or ")
	if at < 0 {
		return ""
	}
	end := strings.IndexByte(pour[at:], ')')
	if end < 0 {
		return ""
	}
	toks := token.Lex(nil, pour, at+len("(or "), at+end)
	if len(toks) == 0 || toks[0].Kind != token.Numeral {
		return ""
	}
	if other, n := entry.UnitAt(toks[1:]); n > 0 && other != u {
		return ""
	}
	return pour[at : at+end+1]
}
