package data

import (
	"fmt"
	"io"
	"math"
	"strconv"

	"github.com/pelletier/go-toml/v2"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/template"
	"counterpour/flavor/trial"
	"counterpour/flavor/weigh"
)

// Significant digits of a fitted value in the file, and its most decimals. Further digits
// would differ between processors.
const (
	fittedDigits   = 5
	fittedDecimals = 5
)

// Calibrate fits the embedded families to their proven drinks.
func (c *Catalogue) Calibrate(t template.Tuning) ([]template.Fitted, error) {
	families, book, err := c.calibration()
	if err != nil {
		return nil, err
	}
	return template.Learn(families, book, t)
}

// Rig returns the trial of the embedded families and proven drinks, including fixes.
func (c *Catalogue) Rig(t template.Tuning) (*trial.Rig, error) {
	families, book, err := c.calibration()
	if err != nil {
		return nil, err
	}
	return &trial.Rig{Families: families, Proven: book, Tuning: t, Pantry: c.Pantry(), Advise: true, Larder: c.ByID}, nil
}

// Set returns the embedded families as last calibrated, and the proven drinks that they
// were fitted to.
func (c *Catalogue) Set() (*weigh.Set, []template.Labelled, error) {
	families, book, err := c.calibration()
	if err != nil {
		return nil, nil, err
	}
	fitted, err := Fitted()
	if err != nil {
		return nil, nil, err
	}
	set, err := weigh.NewSet(families, fitted, book, template.DefaultTuning())
	return set, book, err
}

// Pantry chooses the ingredients that the judge may propose to add to a draft. Those that
// the catalogue lacks are left out.
func (c *Catalogue) Pantry() balance.Pantry {
	get := func(id string) *flavor.Profile {
		p, _ := c.ByID(id)
		return p
	}
	return balance.Pantry{Syrup: get("rich-simple-syrup"), Sour: get("lemon-juice"),
		Bitters: get("aromatic-bitters"), Length: get("soda-water"), Water: get("water"), Sober: c.sober()}
}

// sober returns what stands for each kind of spirit and has no alcohol.
func (c *Catalogue) sober() (out []*flavor.Profile) {
	for _, id := range []string{"alcohol-free-juniper", "alcohol-free-cane", "alcohol-free-dark-cane", "alcohol-free-agave", "alcohol-free-oak-aged"} {
		if p, ok := c.ByID(id); ok {
			out = append(out, p)
		}
	}
	return out
}

// calibration loads the embedded families and the proven drinks.
func (c *Catalogue) calibration() ([]template.Family, []template.Labelled, error) {
	families, err := Families()
	if err != nil {
		return nil, nil, err
	}
	records, err := Proven()
	if err != nil {
		return nil, nil, err
	}
	book, err := c.Book(records)
	return families, book, err
}

// WriteFitted writes fitted families in the format of fitted.toml.
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
	grid := math.Pow10(fittedDecimals)
	out := make([]float64, len(values))
	for i, v := range values {
		out[i], _ = strconv.ParseFloat(strconv.FormatFloat(math.Round(v*grid)/grid, 'g', fittedDigits, 64), 64)
		if out[i] == 0 {
			out[i] = 0 // no negative zero
		}
	}
	return out
}
