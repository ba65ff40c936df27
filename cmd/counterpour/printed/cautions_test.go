package printed_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/shape"
	"counterpour/cmd/counterpour/printed"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor"
)

// A caution about an allergy is never left out, however many others there are.
func TestCautionsOfAllergiesAreShown(t *testing.T) {
	var all []shape.Caution
	for i := range printed.FirstCautions + 2 {
		all = append(all, shape.Caution{Key: fmt.Sprint("danger ", i), Text: fmt.Sprint("Danger ", i), Status: "published"})
	}
	all = append(all, shape.Caution{Key: "tuber", Text: "Milled beside nuts", Status: "common practice", Allergens: []flavor.Allergen{flavor.TreeNuts}})
	var b strings.Builder
	p := terminal.NewPage(&b)
	var c printed.Cautions
	c.Add("1", all)
	c.Show(p, false)
	require.NoError(t, p.Close())
	assert.Contains(t, b.String(), "Milled beside nuts")
	assert.Contains(t, b.String(), "3 more with --cautions")
	assert.Less(t, strings.Index(b.String(), "Milled"), strings.Index(b.String(), "Danger 0"))
}
