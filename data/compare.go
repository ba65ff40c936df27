package data

import (
	"math"

	"counterpour/data/tables"
	"counterpour/flavor"
)

// tooFar is how many of its own spreads a figure may lie from a published
// table; one in twenty of sound figures lies further.
const tooFar = 2.0

// Departure is a figure that a record holds against a published table.
type Departure struct {
	Ingredient string // id
	Field      string
	Have       flavor.Figure
	Table      flavor.Figure
	Reason     string // why it is kept; empty if nobody has said
}

// Spreads is how far the two lie apart, in spreads of the record's figure;
// infinite for a figure that claims to be sure.
func (d Departure) Spreads() float64 {
	off := math.Abs(d.Have.Value - d.Table.Value)
	if off == 0 {
		return 0
	}
	return off / d.Have.Spread
}

// ClassTables is how the records of a class stand against the published tables.
type ClassTables struct {
	Class  flavor.Class
	Given  int         // figures that a table gives
	Taken  int         // of them, those that stand as the table gives them
	Beyond []Departure // those that lie more than two of their own spreads away, by id
}

// AgainstTables holds every figure that a published table gives to it. Classes
// come in the order of [flavor.Classes]; those that no table speaks of are left out.
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

// figureOf returns the figure of a field, as the catalogue's files call it; one
// that the record does not state is empty.
func figureOf(p *flavor.Profile, field string) flavor.Figure {
	for _, f := range figuresOf(p) {
		if f.field == field {
			return f.Figure
		}
	}
	return flavor.Figure{}
}
