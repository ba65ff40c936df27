package house

import (
	"bytes"
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
)

// EncodeOver returns an item as [Encode] does, with the fields of the record before
// it that this version of the program does not know: a later one wrote them, and
// an older one that changes the name of a bottle must not empty the rest. Such
// fields come last, by name; only those of the record itself are told, not those
// within its parts. Before may be empty.
func EncodeOver(item Item, before []byte) ([]byte, error) {
	body, err := Encode(item)
	if err != nil || len(before) == 0 {
		return body, err
	}
	var fields map[string]json.RawMessage
	if err := json.Unmarshal(before, &fields); err != nil {
		return nil, err
	}
	known := fieldsOf(reflect.TypeOf(item))
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		if slices.ContainsFunc(known, func(k string) bool { return strings.EqualFold(k, name) }) { // as the decoder compares them
			continue
		}
		quoted, err := json.Marshal(name)
		if err != nil {
			return nil, err
		}
		body = bytes.TrimSuffix(body, []byte("}"))
		if len(body) > 1 {
			body = append(body, ',')
		}
		body = slices.Concat(body, quoted, []byte(":"), fields[name], []byte("}"))
	}
	return body, nil
}

// fieldsOf lists the names under which a kind of record is written.
func fieldsOf(t reflect.Type) (names []string) {
	for _, f := range reflect.VisibleFields(t) {
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case !f.IsExported() || name == "-" || f.Anonymous && name == "":
		case name == "":
			names = append(names, f.Name)
		default:
			names = append(names, name)
		}
	}
	return names
}
