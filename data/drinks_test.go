package data_test

import (
	"flag"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
	"counterpour/flavor/measure/draft/drinks"
)

var updateDrinks = flag.Bool("update-drinks", false, "write the names of the proven drinks that a draft is read by")

// A draft is read by the names of the proven drinks, without what tells two of one name apart.
func TestDrinksAreThoseThatAreProven(t *testing.T) {
	records, err := data.Proven()
	require.NoError(t, err)
	var names []string
	for _, r := range records {
		name, _, _ := strings.Cut(r.Name, ",")
		name, _, _ = strings.Cut(name, " (")
		names = append(names, strings.ToLower(strings.TrimSpace(name)))
	}
	slices.Sort(names)
	want := strings.Join(slices.Compact(names), "\n") + "\n"
	if *updateDrinks {
		require.NoError(t, os.WriteFile("../flavor/measure/draft/drinks/names.txt", []byte(want), 0o644))
		return
	}
	assert.Equal(t, want, drinks.Names, "run go test ./data -run TestDrinksAreThoseThatAreProven -update-drinks")
}
