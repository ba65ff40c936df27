package house

import (
	"reflect"
	"testing"
)

// Whatever another version wrote, a record that can be read is written over it
// without a loss: it is read back the same, and once more changes nothing.
func FuzzEncodeOver(f *testing.F) {
	f.Add(0, `{"id":"a","later":1}`, `{"label":{"seen":[{}]},"zest":{"of":["lime"]}}`)
	f.Add(7, `{"id":"s","pours":[{"ingredient":"gin","amount":2}]}`, `{"pours":[{"ingredient":"gin","x":1},{"ingredient":"gin","y":null},7,null]}`)
	f.Add(2, `{}`, `[]`)
	kinds := RecordKinds()
	f.Fuzz(func(t *testing.T, at int, text, before string) {
		kind := kinds[(at%len(kinds)+len(kinds))%len(kinds)]
		item, err := DecodeKept(kind, []byte(text))
		if err != nil {
			return
		}
		body, err := EncodeOver(item, []byte(before))
		if err != nil {
			return // what came before is no record
		}
		again, err := DecodeKept(kind, body)
		if err != nil {
			t.Fatalf("%v: %s", err, body)
		}
		if !reflect.DeepEqual(item.clean(), again.clean()) {
			t.Fatalf("%s over %s is %s", text, before, body)
		}
		twice, err := EncodeOver(again, body)
		if err != nil || string(twice) != string(body) {
			t.Fatalf("%v: %s became %s", err, body, twice)
		}
	})
}
