package coaching

import (
	"encoding/hex"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/flavor"
	"counterpour/flavor/drill"
)

// What a round shows tells it apart from another of the same request.
func TestLooks(t *testing.T) {
	a, b := drill.Round{Question: "too much of what?"}, drill.Round{Question: "too much of what?"}
	assert.Equal(t, Looks(&a), Looks(&b))
	b.Options = []drill.Option{{Label: "honey syrup"}}
	assert.NotEqual(t, Looks(&a), Looks(&b))
}

// A round that was handed out before is graded still: what a seal holds of it does not
// change with what pages make of amounts. The bytes are those of the first seals.
func TestOldSealsHold(t *testing.T) {
	gin, egg := &flavor.Profile{ID: "gin", Name: "gin"}, &flavor.Profile{ID: "egg-white", Name: "egg white"}
	r := drill.Round{Question: "Too much of what?", Specs: []flavor.Spec{{Name: "Sour", Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{
		{Profile: gin, Amount: 22.5, Unit: flavor.Millilitre}, {Profile: gin, Amount: 0.75, Unit: flavor.Ounce}, {Profile: egg, Amount: 1, Unit: flavor.Piece}}}}}
	assert.Equal(t, "cebc2a6cc678cd32", hex.EncodeToString(Looks(&r)))
}
