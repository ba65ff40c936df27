package training

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/behind"
)

// A card warns of each thing once, and says the most that any of its drinks asks for.
func TestACardWarnsOnce(t *testing.T) {
	egg, young, juice := behind.Caution{Text: "Raw egg can carry germs."}, behind.Caution{Text: "Raw egg can carry germs. Mind the young."}, behind.Caution{Text: "Press juice for the shift."}
	for _, order := range [][]behind.Caution{{egg, juice, young}, {young, juice, egg}, {young, juice, young}} {
		var got []behind.Caution
		for _, c := range order {
			got = warn(got, c)
		}
		assert.Equal(t, []behind.Caution{young, juice}, got)
	}
}
