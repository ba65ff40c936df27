package exchange

import (
	"slices"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/data/house/exchange/grid"
	"counterpour/data/house/exchange/numeral"
)

// defaults says how to read cells that are incomplete.
type defaults struct {
	currency string // of prices without a currency
	sizeUnit string // of sizes without a unit
	fraction bool   // strengths are fractions of 1, as spreadsheets store percentages
	sizes    []string
}

// usualSizes are offered if the file has no sizes of its own. Common practice, no source.
var usualSizes = []string{"700 ml", "750 ml", "1 L"}

// defaultsOf derives the defaults from all cells of a column.
func defaultsOf(s *sheetReader, rows []grid.Row, there []house.Bottle) defaults {
	d := defaults{currency: s.settled.Currency}
	of := func(f column.Field) (cells []string, unit string) {
		for i, c := range s.Columns {
			if c.Field == f {
				return grid.Column(rows, i), c.Unit
			}
		}
		return nil, ""
	}
	sizes, unit := of(column.Size)
	if d.sizeUnit = unit; unit == "" {
		d.sizeUnit = numeral.ColumnUnit(sizes, s.comma)
		if d.sizeUnit != "" {
			s.Notes = append(s.Notes, "Sizes without a unit are read as "+d.sizeUnit+".")
		}
	}
	d.sizes = commonSizes(sizes, d.sizeUnit, s.comma)
	strengths, unit := of(column.Strength)
	if shares := grid.ShareOf(strengths, func(c string) bool { v, ok := numeral.Number(c, s.comma); return ok && v > 0 && v <= 1 }); unit == "" && shares > 0 &&
		grid.ShareOf(strengths, func(c string) bool { v, ok := numeral.Number(c, s.comma); return ok && v <= 1 || numeral.Nothing(c) }) == 1 {
		d.fraction = true
		s.Notes = append(s.Notes, "Strengths are read as fractions: 0.4 as 40 % vol.")
	}
	prices, _ := of(column.Price)
	d.priced(s, prices, there)
	if !s.titled(column.Stock) {
		s.Notes = append(s.Notes, "No column says how many there are; a bottle that is new counts as one.")
	}
	return d
}

// priced sets the currency of prices without one: the one that the user chose, or that of
// the existing bottles, or of the house, or the one that all currency signs of the file
// agree on.
func (d *defaults) priced(s *sheetReader, prices []string, there []house.Bottle) {
	title := ""
	for _, c := range s.Columns {
		if c.Field == column.Price {
			title = c.Title
		}
	}
	var own, kept []string
	shared := false
	for _, cell := range append(slices.Clone(prices), title) {
		_, code, many, _ := numeral.Money(cell, s.comma)
		if code != "" && !slices.Contains(own, code) {
			own, shared = append(own, code), shared || many
		}
	}
	for _, b := range there {
		if b.Price != nil && !slices.Contains(kept, b.Currency) {
			kept = append(kept, b.Currency)
		}
	}
	switch {
	case d.currency != "":
	case len(kept) == 1 && (len(own) == 0 || shared):
		d.currency = kept[0]
	case s.settled.House != "" && (len(own) == 0 || len(own) == 1 && shared && numeral.Shares(own[0], s.settled.House)):
		d.currency = s.settled.House
		s.Notes = append(s.Notes, "Prices are read as "+s.settled.House+", the currency of the house; say so if they are in another.")
	case len(own) == 1:
		if d.currency = own[0]; shared {
			s.Notes = append(s.Notes, "Prices are read as "+own[0]+"; say so if they are in another currency.")
		}
	}
}

// commonSizes returns the sizes that most bottles of a file have, in a form that can be
// written into a cell.
func commonSizes(cells []string, unit string, comma bool) []string {
	counts := map[string]int{}
	var out []string
	for _, c := range cells {
		if a, open, ok := numeral.Size(c, unit, comma); ok && !open && a.ML > 0 {
			s := exact(a.ML) + " ml"
			if counts[s]++; counts[s] == 1 {
				out = append(out, s)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b string) int { return counts[b] - counts[a] })
	if len(out) == 0 {
		return usualSizes
	}
	return out[:min(len(out), 3)]
}
