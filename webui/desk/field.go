package desk

import (
	"strconv"
	"strings"

	"counterpour/webui/form"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// Field is a field of a record: how it is shown, and read.
type Field[T any] struct {
	Box
	Group string // id of its group
	Show  func(T) string
	Take  func(*T, string) error // of a text that is not empty
}

// NewField returns a field of a group.
func NewField[T any](group string, b Box, show func(T) string, take func(*T, string) error) Field[T] {
	return Field[T]{b, group, show, take}
}

// Text keeps what is typed, but for the space around it.
func Text[T any](group string, b Box, at func(*T) *string) Field[T] {
	if b.Kind == "" {
		b.Kind = "text"
	}
	return NewField(group, b, func(t T) string { return *at(&t) }, func(t *T, text string) error { *at(t) = text; return nil })
}

// Number reads what was typed into a field, with a point or a comma, with its unit or
// without.
func (b *Box) Number(text string) (float64, error) { return form.Quantity(text, b.Unit) }

// told says what is wrong with what a field holds: a number out of its range in
// the unit of the field, anything else as the house says it.
func (b *Box) told(err error) string {
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
	return say.It("desk.out-of-range", "Amount", amount(v), "Least", amount(fault.Bounds.Least), "Most", amount(fault.Bounds.Most))
}

// Optional is a number that nobody may know.
func Optional[T any](group string, b Box, at func(*T) **float64) Field[T] {
	b.Kind = "number"
	return Field[T]{b, group, func(t T) string {
		if v := *at(&t); v != nil {
			return words.Plain(*v)
		}
		return ""
	}, func(t *T, text string) error {
		v, err := b.Number(text)
		*at(t) = &v
		return err
	}}
}

// Amount is a number that is not stated when it is zero.
func Amount[T any](group string, b Box, at func(*T) *float64) Field[T] {
	b.Kind = "number"
	return Field[T]{b, group, func(t T) string {
		if v := *at(&t); v != 0 {
			return words.Plain(v)
		}
		return ""
	}, func(t *T, text string) (err error) {
		*at(t), err = b.Number(text)
		return err
	}}
}
