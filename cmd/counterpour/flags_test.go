package main

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service"
)

// guestFlagOf is the flag of each limit of a guest.
var guestFlagOf = map[string]string{"Avoid": "avoid", "Diet": "diet", "MaxABV": "max-abv", "MaxCost": "max-cost"}

// Every command that finds drinks for a guest takes every limit that a guest may have.
func TestEveryLimitHasAFlag(t *testing.T) {
	root := newRoot(shared)
	limits := reflect.TypeFor[service.Guest]()
	for _, name := range []string{"cover", "outs", "riff", "use-up", "walk"} {
		cmd, _, err := root.Find([]string{name})
		require.NoError(t, err)
		for i := range limits.NumField() {
			limit := limits.Field(i).Name
			if limit == "Prices" { // those of the house
				continue
			}
			require.Contains(t, guestFlagOf, limit, "%s has no flag", limit)
			assert.NotNil(t, cmd.Flags().Lookup(guestFlagOf[limit]), "%s has no --%s", name, guestFlagOf[limit])
		}
	}
}
