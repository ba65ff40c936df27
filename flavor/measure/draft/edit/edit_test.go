package edit

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
)

// An edit leaves every word that it need not change as its writer put it.
func TestEditsKeepTheWords(t *testing.T) {
	const text = "Halyard Sour\n2oz London  gin\n3/4 oz each lemon, simple\nshaken, coupe # try it"
	for name, c := range map[string]struct {
		got  draft.Draft
		want string
	}{
		"amount":          {SetAmount(draft.Parse(text), 0, 1.5, ""), "Halyard Sour\n1½oz London  gin\n3/4 oz each lemon, simple\nshaken, coupe # try it"},
		"amount and unit": {SetAmount(draft.Parse(text), 0, 45, flavor.Millilitre), "Halyard Sour\n45ml London  gin\n3/4 oz each lemon, simple\nshaken, coupe # try it"},
		"one of a list":   {SetAmount(draft.Parse(text), 2, 0.5, ""), "Halyard Sour\n2oz London  gin\n¾ oz lemon\n½ oz simple\nshaken, coupe # try it"},
		"name":            {Replace(draft.Parse(text), 0, "old tom gin"), "Halyard Sour\n2oz old tom gin\n3/4 oz each lemon, simple\nshaken, coupe # try it"},
		"delete":          {Delete(draft.Parse(text), 0), "Halyard Sour\n3/4 oz each lemon, simple\nshaken, coupe # try it"},
	} {
		assert.Equal(t, c.want, c.got.String(), name)
		assert.NoError(t, c.got.Err(), name)
	}
}
