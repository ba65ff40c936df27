package data

import (
	"fmt"
	"io"
	"math"
	"strconv"

	"github.com/pelletier/go-toml/v2"

	"counterpour/flavor/template"
)

// fittedDigits is how many significant digits a fitted value keeps on disk:
// more would differ between processors.
const fittedDigits = 5

// Calibrate fits the families of the embedded files to their proven drinks.
func (c *Catalogue) Calibrate(t template.Tuning) ([]template.Fitted, error) {
	families, err := Families()
	if err != nil {
		return nil, err
	}
	records, err := Proven()
	if err != nil {
		return nil, err
	}
	book, err := c.Book(records)
	if err != nil {
		return nil, err
	}
	return template.Learn(families, book, t)
}

// WriteFitted writes fitted families as fitted.toml holds them.
func WriteFitted(w io.Writer, fitted []template.Fitted) error {
	out := fittedSchema{Version: FormatVersion}
	for _, f := range fitted {
		out.Fitted = append(out.Fitted, fittedRecord{ID: f.ID, Drinks: f.Drinks, Freedom: f.Freedom,
			Centre: rounded(f.Centre), Scale: rounded(f.Scale), Allowance: rounded(f.Allowance[:]),
			Weights: rounded(f.Weights[:]), Bias: rounded([]float64{f.Bias})[0]})
	}
	if _, err := fmt.Fprintln(w, "# What the proven drinks taught about the families. Written by the calibrate\n# command from families.toml and proven/; do not edit."); err != nil {
		return err
	}
	return toml.NewEncoder(w).Encode(out)
}

func rounded(values []float64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i], _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', fittedDigits, 64), 64)
		if math.Abs(out[i]) < 1e-9 {
			out[i] = 0
		}
	}
	return out
}
