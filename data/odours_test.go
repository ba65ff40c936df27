package data

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/flavor/sense"
)

var update = flag.Bool("update", false, "make the generated files again")

// madeFactors computes the factors of the embedded table of odorants and returns the
// content of their file.
func madeFactors() ([]byte, error) {
	t, err := odourTable()
	if err != nil {
		return nil, err
	}
	f, err := sense.Factor(t)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "# Made from odorants.toml and materials.toml: see the test of the factors.\nversion = %d\ndigest = %q\nlargest_error = %.3f\nrms_error = %.4f\n\n[rows]\n",
		FormatVersion, f.Digest, f.Largest, f.RMS)
	for i := range t.Materials {
		fmt.Fprintf(&b, "%q = \"", t.Materials[i].Name)
		for k, v := range f.Rows[i] {
			if k > 0 {
				b.WriteByte(' ')
			}
			fmt.Fprintf(&b, "%d", int(math.Round(v/factorScale)))
		}
		b.WriteString("\"\n")
	}
	return b.Bytes(), nil
}

// The factors are those of the table, and stand for it as well as the file says.
// go test ./data -run Factors -update makes them again.
func TestFactorsAreOfTheTable(t *testing.T) {
	if *update {
		made, err := madeFactors()
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(factorsFile, made, 0o644))
		t.Skip("made again; run the test without -update to check what was embedded")
	}
	table, err := odourTable()
	require.NoError(t, err)
	factors, err := odourFactors()
	require.NoError(t, err)
	largest, rms, err := factors.Check(table)
	require.NoError(t, err)
	assert.InDelta(t, factors.Largest, largest, 0.002, "the largest error of a likeness is the one that the file states")
	assert.InDelta(t, factors.RMS, rms, 0.0005)
	assert.Less(t, rms, 0.025)
}

// Every material of the catalogue has odorants, and every odorant is carried by
// some material.
func TestOdourTableIsWhole(t *testing.T) {
	catalogue, err := Embedded()
	require.NoError(t, err)
	table, err := odourTable()
	require.NoError(t, err)
	carried := map[string]bool{}
	listed := map[string]bool{}
	for _, m := range table.Materials {
		listed[m.Name] = true
		assert.GreaterOrEqual(t, len(m.Odorants), 5, "%s", m.Name)
		for _, o := range m.Odorants {
			carried[o.Name] = true
		}
	}
	for name := range catalogue.materials {
		assert.True(t, listed[name], "material %q has no odorants; add it to %s", name, materialsFile)
	}
	for _, o := range table.Odorants {
		assert.True(t, carried[o.Name], "no material carries %q; drop it from %s", o.Name, odorantsFile)
	}
}

func TestParsePartsFaults(t *testing.T) {
	for _, text := range []string{"", "limonene", "limonene much", "limonene 0.5;linalool"} {
		_, err := parseParts(text, "; ")
		assert.Error(t, err, "%q", text)
	}
	parts, err := parseParts("1,8-cineole 0.5; linalool 1", "; ")
	require.NoError(t, err)
	assert.Len(t, parts, 2)
	assert.Equal(t, "1,8-cineole", parts[0].Name)
}
