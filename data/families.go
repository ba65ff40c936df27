package data

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"

	"counterpour/flavor/makeup"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

//go:embed families.toml fitted.toml proven/*.toml
var templates embed.FS

const (
	familiesFile = "families.toml"
	fittedFile   = "fitted.toml"
)

type familiesSchema struct {
	Version  int            `toml:"version"`
	Families []familyRecord `toml:"family"`
}

type familyRecord struct {
	ID     string             `toml:"id"`
	Name   string             `toml:"name"`
	Ratio  map[string]float64 `toml:"ratio"`
	Spread map[string]float64 `toml:"spread"`
	Source string             `toml:"source"`
	Signs  map[string]float64 `toml:"signs"`
	Bias   float64            `toml:"bias"`
	Usual  string             `toml:"usual"`
	Mark   string             `toml:"mark"`
	Poured string             `toml:"poured"`
}

// Families loads the families of drinks with their published ratios.
func Families() ([]template.Family, error) {
	var f familiesSchema
	if err := decodeStrict(templates, familiesFile, &f); err != nil {
		return nil, err
	}
	if f.Version != FormatVersion {
		return nil, fmt.Errorf("data: %s: version is %d; this program reads version %d", familiesFile, f.Version, FormatVersion)
	}
	out := make([]template.Family, len(f.Families))
	for i, r := range f.Families {
		family, err := r.family()
		if err != nil {
			return nil, fmt.Errorf("data: %s: family %q: %w", familiesFile, r.ID, err)
		}
		out[i] = family
	}
	return out, nil
}

func (r familyRecord) family() (template.Family, error) {
	f := template.Family{ID: r.ID, Name: r.Name, Source: r.Source, Bias: r.Bias, Usual: r.Usual, Mark: r.Mark, Poured: r.Poured}
	if f.Mark == "" || f.Poured == "" {
		return f, errors.New("fields mark and poured: say what makes it this family, and how bars say its ratio")
	}
	for _, a := range ratio.Axes() {
		if v, ok := r.Ratio[a.String()]; ok {
			f.Axes = append(f.Axes, a)
			f.Ratio = append(f.Ratio, v)
		}
	}
	if len(f.Axes) != len(r.Ratio) {
		return f, fmt.Errorf("field ratio: names an axis that is not one of %v", ratio.Axes())
	}
	for _, name := range sortedKeys(r.Spread) {
		a, ok := ratio.ParseAxis(name)
		if !ok {
			return f, fmt.Errorf("field spread: axis %q is not one of %v", name, ratio.Axes())
		}
		f.Spread[a] = r.Spread[name]
	}
	for _, name := range sortedKeys(r.Signs) {
		s, ok := makeup.ParseSignal(name)
		if !ok {
			return f, fmt.Errorf("field signs: signal %q is not known", name)
		}
		f.Signs[s] = r.Signs[name]
	}
	return f, f.Check()
}

type fittedSchema struct {
	Version int            `toml:"version"`
	Fitted  []fittedRecord `toml:"fitted"`
}

// fittedRecord is a fitted family in the file, rounded to digits that do not differ
// between processors.
type fittedRecord struct {
	ID        string    `toml:"id"`
	Drinks    int       `toml:"drinks"`
	Centre    []float64 `toml:"centre"`
	Scale     []float64 `toml:"scale"`
	Freedom   float64   `toml:"freedom"`
	Allowance []float64 `toml:"allowance"`
	Weights   []float64 `toml:"weights"`
	Bias      float64   `toml:"bias"`
}

// Fitted loads the fitted values of the families, as last calibrated.
func Fitted() ([]template.Fitted, error) {
	var f fittedSchema
	if err := decodeStrict(templates, fittedFile, &f); err != nil {
		return nil, err
	}
	if f.Version != FormatVersion {
		return nil, fmt.Errorf("data: %s: version is %d; this program reads version %d", fittedFile, f.Version, FormatVersion)
	}
	out := make([]template.Fitted, len(f.Fitted))
	for i, r := range f.Fitted {
		if len(r.Allowance) != ratio.NumAxes || len(r.Weights) != makeup.NumSignals {
			return nil, fmt.Errorf("data: %s: family %q: %w", fittedFile, r.ID, errStaleFit)
		}
		out[i] = template.Fitted{ID: r.ID, Drinks: r.Drinks, Centre: r.Centre, Scale: r.Scale, Freedom: r.Freedom, Bias: r.Bias}
		copy(out[i].Allowance[:], r.Allowance)
		copy(out[i].Weights[:], r.Weights)
	}
	return out, nil
}

var errStaleFit = errors.New("was fitted for other axes or signals; run the calibrate command again")

// provenSchema is the schema of a file of proven drinks.
type provenSchema struct {
	Version int            `toml:"version"`
	Source  string         `toml:"source"`
	Status  string         `toml:"status"`
	Current bool           `toml:"current"`
	Specs   []ProvenRecord `toml:"spec"`
}

// ProvenRecord is a proven drink in its file.
type ProvenRecord struct {
	Name   string `toml:"name"`
	Family string `toml:"family"`
	Source string `toml:"source"`
	Status string `toml:"status"` // read or recalled, see template.Labelled
	Text   string `toml:"text"`

	// Current is set by the file, for lists that bars go by today; see template.Labelled.
	Current bool `toml:"-"`
}

// Proven loads the proven drinks, in file order.
func Proven() ([]ProvenRecord, error) {
	names, err := fs.Glob(templates, "proven/*.toml")
	if err != nil {
		return nil, err
	}
	var out []ProvenRecord
	for _, name := range names {
		var f provenSchema
		if err := decodeStrict(templates, name, &f); err != nil {
			return nil, err
		}
		for _, r := range f.Specs {
			if r.Source == "" {
				r.Source = f.Source
			}
			if r.Status == "" {
				r.Status = f.Status
			}
			if r.Name == "" || r.Family == "" || r.Source == "" || r.Status == "" || r.Text == "" {
				return nil, fmt.Errorf("data: %s: spec %q: needs a name, a family, a source, a status and a text", name, r.Name)
			}
			if r.Status != template.StatusRead && r.Status != template.StatusRecalled {
				return nil, fmt.Errorf("data: %s: spec %q: status %q must be %q or %q", name, r.Name, r.Status, template.StatusRead, template.StatusRecalled)
			}
			r.Current = f.Current
			out = append(out, r)
		}
	}
	return out, nil
}
