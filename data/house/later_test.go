package house

import (
	"encoding/json"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every field that a kind of record is written with is known as one of its own, so
// that none is ever kept from before in place of what was written.
func TestEveryWrittenFieldIsKnown(t *testing.T) {
	for kind, decoder := range decoders {
		item, err := decoder([]byte("{}"), true)
		require.NoError(t, err, kind)
		known := fieldsOf(reflect.TypeOf(item))
		require.NotEmpty(t, known, kind)
		for _, name := range known { // the strict reader knows every one
			_, err := decoder([]byte(`{"`+name+`":null}`), true)
			assert.NoError(t, err, "%s: %s", kind, name)
		}
		body, err := json.Marshal(item)
		require.NoError(t, err)
		var written map[string]any
		require.NoError(t, json.Unmarshal(body, &written))
		for name := range written {
			assert.Contains(t, known, name, kind)
		}
	}
}
