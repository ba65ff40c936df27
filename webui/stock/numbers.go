package stock

import (
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// number reads what was typed into a field, with a point or a comma, with its unit or
// without.
func (b *formBox) number(text string) (float64, error) { return form.Quantity(text, b.Unit) }

// told says what is wrong with what a field holds: a number out of its range in
// the unit of the field, anything else as the house says it.
func (b *formBox) told(err error) string {
	fault, ok := fieldFault(err)
	if !ok || fault.Bounds == nil {
		return form.Message(err)
	}
	v, err := strconv.ParseFloat(fault.Value, 64)
	if err != nil {
		return fault.Message
	}
	amount := func(v float64) string {
		return strings.ReplaceAll(words.Joined(words.Plain(v), b.Unit), "-", "−")
	}
	return say.It("stock.out-of-range", "Amount", amount(v), "Least", amount(fault.Bounds.Least), "Most", amount(fault.Bounds.Most))
}

// optionalField is a number that nobody may know.
func optionalField[T any](group string, b formBox, at func(*T) **float64) formField[T] {
	b.Kind = "number"
	return formField[T]{b, group, func(t T) string {
		if v := *at(&t); v != nil {
			return words.Plain(*v)
		}
		return ""
	}, func(t *T, text string) error {
		v, err := b.number(text)
		*at(t) = &v
		return err
	}}
}

// amountField is a number that is not stated when it is zero.
func amountField[T any](group string, b formBox, at func(*T) *float64) formField[T] {
	b.Kind = "number"
	return formField[T]{b, group, func(t T) string {
		if v := *at(&t); v != 0 {
			return words.Plain(v)
		}
		return ""
	}, func(t *T, text string) (err error) {
		*at(t), err = b.number(text)
		return err
	}}
}

// measuredFields ask for what was measured, in a bottle or in what is made.
func measuredFields[T any](group string, at func(*T) *house.Measured) []formField[T] {
	field := func(b formBox, of func(*house.Measured) **float64) formField[T] {
		return optionalField(group, b, func(t *T) **float64 { return of(at(t)) })
	}
	return []formField[T]{
		field(formBox{Name: "abv", Label: say.It("stock.strength"), Unit: "% vol", Hint: say.It("stock.strength-hint")},
			func(m *house.Measured) **float64 { return &m.ABVPct }),
		field(formBox{Name: "brix", Label: say.It("stock.brix"), Unit: "°Bx", Hint: say.It("stock.brix-hint")},
			func(m *house.Measured) **float64 { return &m.Brix }),
		field(formBox{Name: "sugar", Label: say.It("stock.sugar"), Unit: "g/L", Hint: say.It("stock.sugar-hint")},
			func(m *house.Measured) **float64 { return &m.SugarGPerL }),
		field(formBox{Name: "acid", Label: say.It("stock.acid"), Unit: "g/L", Hint: say.It("stock.acid-hint")},
			func(m *house.Measured) **float64 { return &m.AcidGPerL }),
	}
}
