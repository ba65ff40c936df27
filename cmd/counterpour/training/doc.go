// Package training is the commands that train people: rounds of questions, tasting flights,
// triangle tests, and the card of a family.
package training

import (
	"github.com/spf13/cobra"

	"counterpour/cmd/counterpour/premises"
)

// Commands returns the commands, which open houses with kitchens from open.
func Commands(open premises.Kitchens) []*cobra.Command {
	return []*cobra.Command{newDrill(open), newFlight(open), newTriangle(open), newCard(open)}
}
