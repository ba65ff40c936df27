package exchange

import (
	"errors"
	"fmt"

	"counterpour/data/house"
	"counterpour/data/house/exchange/column"
	"counterpour/flavor"
)

// rules maps a rule of the house to the field it is about, and to a function that makes
// the bottle pass it, so that the rules after it can be checked too.
var rules = map[string]struct {
	field column.Field
	mend  func(*house.Bottle)
}{
	"name":      {column.Name, func(b *house.Bottle) { b.Name = "x" }},
	"id":        {column.ID, func(b *house.Bottle) { b.ID, b.Ingredient = "x", "x" }},
	"abv":       {column.Strength, func(b *house.Bottle) { b.ABVPct = nil }},
	"brix":      {column.Brix, func(b *house.Bottle) { b.Brix = nil }},
	"sugar":     {column.Sugar, func(b *house.Bottle) { b.SugarGPerL = nil }},
	"acid":      {column.Acid, func(b *house.Bottle) { b.AcidGPerL = nil }},
	"size_ml":   {column.Size, func(b *house.Bottle) { b.SizeML, b.SizeG = 1, 0 }},
	"size_g":    {column.Size, func(b *house.Bottle) { b.SizeML, b.SizeG = 1, 0 }},
	"stock":     {column.Stock, func(b *house.Bottle) { b.Stock = 0 }},
	"par":       {column.Par, func(b *house.Bottle) { b.Par = 0 }},
	"out_since": {column.Out, func(b *house.Bottle) { b.OutSince = nil }},
	"note":      {column.Note, func(b *house.Bottle) { b.Note = "" }},
	"currency":  {column.Currency, func(b *house.Bottle) { b.Price, b.Currency = nil, "" }},
	"price":     {column.Price, func(b *house.Bottle) { b.Price, b.Currency = nil, "" }},
}

// check adds a fault for every rule of the house that the bottle breaks. Fields that have
// a fault already are made valid first, so that no field gets two.
func (b *bottleReader) check() {
	bottle := b.r.Bottle
	for _, f := range b.r.Faults {
		for _, rule := range rules {
			if rule.field == f.Field {
				rule.mend(&bottle)
			}
		}
		switch f.Field {
		case column.Kind:
			bottle.Ingredient = "x"
		case column.Contains, column.MayContain, column.Vegan, column.LabelRead:
			bottle.Label = nil
		case column.Out:
			bottle.OutSince = nil
		}
	}
	for range len(rules) + 1 {
		err := house.Check(bottle)
		if err == nil {
			return
		}
		var fault *flavor.DataFault
		var own *house.Error
		message := err.Error()
		if errors.As(err, &own) {
			message = own.Message
		}
		if !errors.As(err, &fault) {
			b.fault(column.Row, message)
			return
		}
		rule, known := rules[fault.Field]
		if !known {
			b.fault(column.LabelReader, message)
			bottle.Label = nil
			continue
		}
		b.fault(rule.field, message, empty(rule.field))
		rule.mend(&bottle)
	}
}

// twice reports a second row with the same id, and offers another id for it.
func (b *bottleReader) twice() {
	id := b.r.Bottle.ID
	first, again := b.seen[id]
	if !again {
		b.seen[id] = b.r.Number
		return
	}
	var remedies []Remedy
	for n := 2; n < 100; n++ {
		other := house.Slug(fmt.Sprintf("%s %d", id, n))
		if b.r.Bottle.SizeML > 0 && n == 2 {
			other = house.Slug(fmt.Sprintf("%s %s ml", id, exact(b.r.Bottle.SizeML)))
		}
		_, taken := b.seen[other]
		if _, kept := b.there[other]; !taken && !kept && other != id {
			remedies = []Remedy{{"keep both", column.ID, other}}
			break
		}
	}
	b.fault(column.ID, fmt.Sprintf("%s is on the list twice, in row %d too; leave one of them out, or keep both as two bottles", b.r.Bottle.Name, first), remedies...)
}
