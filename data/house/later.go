package house

import (
	"bytes"
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
)

// EncodeOver returns an item as [Encode] does, and keeps the fields of the record before
// it that this version of the program does not know. A later version wrote those fields,
// and an older one that renames a bottle must not delete them. Unknown fields come last,
// sorted by name, in the record and in each of its parts. An element of a list keeps the
// unknown fields of the equal element before or, if there is none, of the next one with
// the same first field, such as the pour of the same ingredient. before may be empty.
func EncodeOver(item Item, before []byte) ([]byte, error) {
	body, err := Encode(item)
	if err != nil || len(before) == 0 {
		return body, err
	}
	return over(reflect.TypeOf(item), body, before)
}

var marshals = reflect.TypeFor[json.Marshaler]()

// over merges the JSON value of a type over the one before it.
func over(t reflect.Type, now, before json.RawMessage) (json.RawMessage, error) {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case t.Implements(marshals) || reflect.PointerTo(t).Implements(marshals):
		return now, nil // the type has its own encoding
	case t.Kind() == reflect.Struct && first(now) == '{' && first(before) == '{':
		return overFields(t, now, before)
	case (t.Kind() == reflect.Slice || t.Kind() == reflect.Array) && first(now) == '[' && first(before) == '[':
		return overParts(t.Elem(), now, before)
	}
	return now, nil
}

// first returns the first character of a value; 0 if it is empty.
func first(value json.RawMessage) byte {
	if value = bytes.TrimSpace(value); len(value) > 0 {
		return value[0]
	}
	return 0
}

func overFields(t reflect.Type, now, before json.RawMessage) (json.RawMessage, error) {
	var is, was map[string]json.RawMessage
	if err := json.Unmarshal(now, &is); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(before, &was); err != nil {
		return nil, err
	}
	var body bytes.Buffer
	put := func(name string, value json.RawMessage) error {
		quoted, err := json.Marshal(name)
		if body.Len() > 0 {
			body.WriteByte(',')
		}
		body.Write(quoted)
		body.WriteByte(':')
		body.Write(value)
		return err
	}
	known := fieldsOf(t)
	for _, f := range known {
		value, there := is[f.name]
		if !there {
			continue
		}
		value, err := over(f.of, value, was[f.name])
		if err == nil {
			err = put(f.name, value)
		}
		if err != nil {
			return nil, err
		}
	}
	for _, name := range slices.Sorted(maps.Keys(was)) {
		if slices.ContainsFunc(known, func(k field) bool { return strings.EqualFold(k.name, name) }) { // field names compare as in the decoder
			continue
		}
		if err := put(name, was[name]); err != nil {
			return nil, err
		}
	}
	return slices.Concat([]byte("{"), body.Bytes(), []byte("}")), nil
}

func overParts(t reflect.Type, now, before json.RawMessage) (json.RawMessage, error) {
	var is, was []json.RawMessage
	if err := json.Unmarshal(now, &is); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(before, &was); err != nil {
		return nil, err
	}
	from := make([]int, len(is)) // index from 1 of the same part before; 0 if there is none
	taken := make([]bool, len(was))
	for _, mark := range []func(reflect.Type, json.RawMessage) string{sayings, firstSaying} {
		for i := range is {
			for j := range was {
				if said := mark(t, is[i]); from[i] == 0 && !taken[j] && said != "" && said == mark(t, was[j]) {
					from[i], taken[j] = j+1, true
				}
			}
		}
	}
	for i, at := range from {
		if at == 0 {
			continue
		}
		var err error
		if is[i], err = over(t, is[i], was[at-1]); err != nil {
			return nil, err
		}
	}
	return json.Marshal(is)
}

// sayings returns the known fields of a list element in a canonical form; "" if it is no
// object.
func sayings(t reflect.Type, part json.RawMessage) string {
	v := reflect.New(t)
	if first(part) != '{' || json.Unmarshal(part, v.Interface()) != nil {
		return ""
	}
	text, err := json.Marshal(v.Interface())
	if err != nil {
		return ""
	}
	return string(text)
}

// firstSaying returns the first field of a list element, which identifies it.
func firstSaying(t reflect.Type, part json.RawMessage) string {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	var fields map[string]json.RawMessage
	if t.Kind() != reflect.Struct || json.Unmarshal(part, &fields) != nil {
		return ""
	}
	known := fieldsOf(t)
	if len(known) == 0 {
		return ""
	}
	return string(fields[known[0].name])
}

// field is a JSON field of a type.
type field struct {
	name string
	of   reflect.Type
}

// fieldsOf lists the JSON fields of a type, in order.
func fieldsOf(t reflect.Type) (fields []field) {
	for _, f := range reflect.VisibleFields(t) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case !f.IsExported() || name == "-" || f.Anonymous && name == "":
			continue
		case name == "":
			name = f.Name
		}
		fields = append(fields, field{name, f.Type})
	}
	return fields
}
