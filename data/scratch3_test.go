package data

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor/template"
)

func TestScratchList(t *testing.T) {
	f := os.Getenv("FAM")
	if f == "" {
		t.Skip()
	}
	c, err := Embedded()
	require.NoError(t, err)
	rec, _ := Proven()
	book, err := c.Book(rec)
	require.NoError(t, err)
	for _, b := range book {
		if b.Family == f || f == "all" {
			e := template.EquivalentsOf(&b.Spec)
			fmt.Printf("%-40s %-18s st %.0f sw %.0f so %.0f bi %.0f lo %.0f  sw/so %.2f st/so %.2f st/sw %.2f\n", b.Spec.Name, b.Family, e[0], e[1], e[2], e[3], e[4], e[1]/e[2], e[0]/e[2], e[0]/e[1])
		}
	}
}
