package exchange

import (
	"errors"
	"fmt"

	"counterpour/data/house"
	"counterpour/flavor"
)

// rules maps a rule of the house to the field it is about, and to a function that makes
// the bottle pass it, so that the rules after it can be checked too.
var rules = map[string]struct {
	field Field
	mend  func(*house.Bottle)
}{
	"name":      {FieldName, func(b *house.Bottle) { b.Name = "x" }},
	"id":        {FieldID, func(b *house.Bottle) { b.ID, b.Ingredient = "x", "x" }},
	"abv":       {FieldStrength, func(b *house.Bottle) { b.ABVPct = nil }},
	"brix":      {FieldBrix, func(b *house.Bottle) { b.Brix = nil }},
	"sugar":     {FieldSugar, func(b *house.Bottle) { b.SugarGPerL = nil }},
	"acid":      {FieldAcid, func(b *house.Bottle) { b.AcidGPerL = nil }},
	"size_ml":   {FieldSize, func(b *house.Bottle) { b.SizeML, b.SizeG = 1, 0 }},
	"size_g":    {FieldSize, func(b *house.Bottle) { b.SizeML, b.SizeG = 1, 0 }},
	"stock":     {FieldStock, func(b *house.Bottle) { b.Stock = 0 }},
	"out_since": {FieldOut, func(b *house.Bottle) { b.OutSince = nil }},
	"note":      {FieldNote, func(b *house.Bottle) { b.Note = "" }},
	"currency":  {FieldCurrency, func(b *house.Bottle) { b.Price, b.Currency = nil, "" }},
	"price":     {FieldPrice, func(b *house.Bottle) { b.Price, b.Currency = nil, "" }},
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
		case FieldKind:
			bottle.Ingredient = "x"
		case FieldContains, FieldMayContain, FieldVegan, FieldLabelRead:
			bottle.Label = nil
		case FieldOut:
			bottle.OutSince = nil
		}
	}
	for range len(rules) + 1 {
		err := house.Check(bottle)
		if err == nil {
			return
		}
		var fault *flavor.Fault
		var own *house.Error
		message := err.Error()
		if errors.As(err, &own) {
			message = own.Message
		}
		if !errors.As(err, &fault) {
			b.fault(FieldRow, message)
			return
		}
		rule, known := rules[fault.Field]
		if !known {
			b.fault(FieldLabelReader, message)
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
			remedies = []Remedy{{"keep both", FieldID, other}}
			break
		}
	}
	b.fault(FieldID, fmt.Sprintf("%s is on the list twice, in row %d too; leave one of them out, or keep both as two bottles", b.r.Bottle.Name, first), remedies...)
}
