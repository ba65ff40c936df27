package house

import (
	"encoding/json"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// Every field that a kind of record is written with is known as one of its own, so
// that none is ever kept from before in place of what was written.
func TestEveryWrittenFieldIsKnown(t *testing.T) {
	for kind, decoder := range decoders {
		item, err := decoder([]byte("{}"), true)
		require.NoError(t, err, kind)
		var known []string
		for _, f := range fieldsOf(reflect.TypeOf(item)) {
			known = append(known, f.name)
		}
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

// What a later version wrote stays in every part of a record, with the part that it
// was written in.
func TestFieldsOfALaterVersionStayInEveryPart(t *testing.T) {
	pour := func(ingredient string, amount float64) Pour {
		return Pour{Ingredient: ingredient, Amount: amount, Unit: flavor.Ounce}
	}
	spec := func(pours ...Pour) Spec {
		return Spec{ID: "house-sour", Name: "House sour", Method: flavor.Shake, Service: flavor.Up, Pours: pours}
	}
	const gin, lemon, syrup = `{"ingredient":"gin","amount":2,"unit":"oz","chill":true}`, `{"ingredient":"lemon-juice","amount":0.75,"unit":"oz"}`, `{"ingredient":"simple-syrup","amount":0.5,"unit":"oz","hand":{"of":"bo"}}`
	before := `{"id":"house-sour","name":"House sour","method":"shake","service":"up","pours":[` + gin + "," + lemon + "," + syrup + `],"coaster":{"size":1}}`
	for name, c := range map[string]struct {
		item   Item
		before string
		want   string // within the record
	}{
		"as it was": {spec(pour("gin", 2), pour("lemon-juice", 0.75), pour("simple-syrup", 0.5)), before, `"pours":[` + gin + "," + lemon + "," + syrup + `],"coaster":{"size":1}}`},
		"in another order, with one more": {spec(pour("water", 1), pour("simple-syrup", 0.5), pour("gin", 2)), before,
			`"pours":[{"ingredient":"water","amount":1,"unit":"oz"},` + syrup + "," + gin + "]"},
		"with another amount":        {spec(pour("gin", 1.5), pour("lemon-juice", 0.75)), before, `{"ingredient":"gin","amount":1.5,"unit":"oz","chill":true}`},
		"poured twice, each its own": {spec(pour("gin", 1), pour("gin", 2)), before, `[{"ingredient":"gin","amount":1,"unit":"oz"},` + gin + "]"},
		"another in its place":       {spec(pour("rum", 2)), before, `"pours":[{"ingredient":"rum","amount":2,"unit":"oz"}]`},
		"in what a label says":       {Bottle{ID: "gin-a", Name: "Gin A", Ingredient: "gin", Label: &Label{}}, `{"id":"gin-a","label":{"contains":null,"photo":"front"}}`, `"photo":"front"}`},
		"nothing before":             {spec(pour("gin", 2)), "", `"pours":[{"ingredient":"gin","amount":2,"unit":"oz"}]`},
	} {
		body, err := EncodeOver(c.item, []byte(c.before))
		require.NoError(t, err, name)
		assert.Contains(t, string(body), c.want, name)
		again, err := DecodeKept(c.item.Ref().Kind, body)
		require.NoError(t, err, name)
		assert.Equal(t, c.item.clean(), again, name)
	}
}

// Laying a record over itself changes nothing, whichever kind it is.
func TestEncodeOverItself(t *testing.T) {
	for _, item := range []Item{
		Bottle{ID: "a", Name: "A", Ingredient: "gin", Measured: Measured{ABVPct: new(41.5)}, Label: &Label{}},
		Made{ID: "m", Name: "M", Parts: []Pour{{Ingredient: "gin", Amount: 1}}, Aliases: []string{"x"}},
		ServedCover{ID: "c", Served: []Pour{{Ingredient: "gin", Amount: 1}}}, Training{ID: "t"}, Settings{}, Out{Ingredient: "gin"},
	} {
		body, err := Encode(item)
		require.NoError(t, err)
		twice, err := EncodeOver(item, body)
		require.NoError(t, err)
		assert.Equal(t, string(body), string(twice), item.Ref())
	}
}
