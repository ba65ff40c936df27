package data

import (
	"math"

	"counterpour/data/tables"
	"counterpour/flavor"
)

// tooFar is how far a figure may lie from a published table, in its own standard
// deviations; one in twenty correct figures lies further.
const tooFar = 2.0

// Departure is a figure of a record, compared with a published table.
type Departure struct {
	Ingredient string // id
	Field      string
	Have       flavor.Figure
	Table      flavor.Figure
	Reason     string // why the record keeps it; empty if no reason is given
}

// Spreads returns the distance between the two, in standard deviations of the record's
// figure. It is infinite if that figure has no spread.
func (d Departure) Spreads() float64 {
	off := math.Abs(d.Have.Value - d.Table.Value)
	if off == 0 {
		return 0
	}
	return off / d.Have.Spread
}

// ClassTables compares the records of a class with the published tables.
type ClassTables struct {
	Class  flavor.Class
	Given  int         // figures that a table has
	Taken  int         // those of them that the record takes unchanged
	Beyond []Departure // those further than tooFar from the table, sorted by id
}

// AgainstTables compares every figure that a published table has with the record. The
// result is in the order of [flavor.Classes]; classes without such figures are left out.
func (c *Catalogue) AgainstTables() ([]ClassTables, error) {
	book, err := tables.Load()
	if err != nil {
		return nil, err
	}
	byClass := map[flavor.Class]*ClassTables{}
	for _, p := range c.profiles {
		for _, x := range book.Figures(p) {
			k := byClass[p.Class]
			if k == nil {
				k = &ClassTables{Class: p.Class}
				byClass[p.Class] = k
			}
			k.Given++
			d := Departure{Ingredient: p.ID, Field: x.Field, Have: figureOf(p, x.Field), Table: x.Figure, Reason: x.Reason}
			switch {
			case d.Have == d.Table:
				k.Taken++
			case !(d.Spreads() <= tooFar):
				k.Beyond = append(k.Beyond, d)
			}
		}
	}
	var out []ClassTables
	for _, class := range flavor.Classes() {
		if k := byClass[class]; k != nil {
			out = append(out, *k)
		}
	}
	return out, nil
}

// figureOf returns the figure of a field, named as in the catalogue's files. It is zero
// if the record does not state it.
func figureOf(p *flavor.Profile, field string) flavor.Figure {
	for _, f := range figuresOf(p) {
		if f.field == field {
			return f.Figure
		}
	}
	return flavor.Figure{}
}
