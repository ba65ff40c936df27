package evening_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/api/service/evening"
	"counterpour/flavor"
)

// A drink is found under its name and its pours, in the spelling that is to hand.
func TestADrinkIsFoundAsItIsTyped(t *testing.T) {
	s := &flavor.Spec{Name: "Quai d'Été", Pours: []flavor.Pour{{Profile: &flavor.Profile{Name: "crème de cassis"}}, {Profile: &flavor.Profile{Name: "lime juice", Aliases: []string{"Quayside Limes"}}}}}
	for text, want := range map[string]bool{
		"": true, "  ": true, "quai": true, "QUA": true, "ete": true, "dete": true, "creme cass": true, "limes": true, "ete lime": true, "quayside": true, "creme quayside": true,
		"lemon": false, "quai lemon": false, "quaid": false,
	} {
		assert.Equal(t, want, evening.Holds(s, text), "%q", text)
	}
}
