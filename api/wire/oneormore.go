package wire

import (
	"bytes"
	"encoding/json"
	"reflect"

	"github.com/danielgtaylor/huma/v2"
)

// OneOrMore is a value that JSON may hold alone or as a list. It is answered in the form
// in which it was sent.
type OneOrMore[T any] struct {
	Items  []T
	IsList bool
}

// NamesOf returns names: alone if there is one, otherwise as a list.
func NamesOf(names ...string) OneOrMore[string] {
	return OneOrMore[string]{Items: names, IsList: len(names) != 1}
}

// MarshalJSON writes the list, or the single value.
func (o OneOrMore[T]) MarshalJSON() ([]byte, error) {
	if o.IsList || len(o.Items) != 1 {
		return Encode(append([]T{}, o.Items...))
	}
	return Encode(o.Items[0])
}

// UnmarshalJSON reads a list or a single value.
func (o *OneOrMore[T]) UnmarshalJSON(text []byte) error {
	if o.IsList = bytes.HasPrefix(bytes.TrimSpace(text), []byte("[")); o.IsList {
		return json.Unmarshal(text, &o.Items)
	}
	o.Items = make([]T, 1)
	return json.Unmarshal(text, &o.Items[0])
}

// maxListed is the longest list that a OneOrMore may hold.
const maxListed = 20

// Schema describes both forms; a name must not be empty. It implements
// huma.SchemaProvider.
func (OneOrMore[T]) Schema(r huma.Registry) *huma.Schema {
	item := r.Schema(reflect.TypeFor[T](), true, "")
	if item.Type == huma.TypeString {
		least, most := 1, 200
		item = &huma.Schema{Type: huma.TypeString, MinLength: &least, MaxLength: &most}
	}
	least, most := 1, maxListed
	list := &huma.Schema{Type: huma.TypeArray, Items: item, MinItems: &least, MaxItems: &most}
	either := &huma.Schema{OneOf: []*huma.Schema{item, list}}
	for _, s := range []*huma.Schema{item, list, either} {
		s.PrecomputeMessages()
	}
	return either
}
