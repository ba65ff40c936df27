package data

import (
	"embed"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/sense"
)

//go:embed odour/*.toml
var odours embed.FS

const (
	odorantsFile  = "odour/odorants.toml"
	materialsFile = "odour/materials.toml"
	factorsFile   = "odour/factors.toml"
)

type odorantsSchema struct {
	Version    int                `toml:"version"`
	Notes      map[string]string  `toml:"notes"`
	Together   map[string]string  `toml:"together"`
	Thresholds map[string]float64 `toml:"thresholds"` // µg/L in water
	Odorants   map[string]string  `toml:"odorants"`
}

type carriedSchema struct {
	Version   int               `toml:"version"`
	Aliases   map[string]string `toml:"aliases"`
	Materials map[string]string `toml:"materials"`
}

// space builds the sensory space of the catalogue's materials from the embedded odorants.
// A material without odorants is represented by its aroma families.
func space(materials map[string]Material) (*sense.Space, error) {
	table, err := odourTable()
	if err != nil {
		return nil, err
	}
	listed := map[string]bool{}
	for i := range table.Materials {
		m := &table.Materials[i]
		m.Shares = materials[m.Name].Shares
		listed[m.Name] = true
	}
	for _, name := range sortedKeys(materials) {
		if !listed[name] {
			table.Materials = append(table.Materials, sense.Material{Name: name, Shares: materials[name].Shares})
		}
	}
	factors, err := odourFactors()
	if err != nil {
		return nil, err
	}
	s, err := sense.NewSpace(table, factors)
	if err != nil {
		return nil, fmt.Errorf("data: odour: %w", err)
	}
	return s, nil
}

// odourTable reads the notes, the odorants and the materials that carry them.
func odourTable() (*sense.Table, error) {
	var o odorantsSchema
	var c carriedSchema
	if err := errors.Join(decodeStrict(odours, odorantsFile, &o), decodeStrict(odours, materialsFile, &c)); err != nil {
		return nil, err
	}
	if o.Version != FormatVersion || c.Version != FormatVersion {
		return nil, fmt.Errorf("data: odour: versions %d and %d; this program reads version %d", o.Version, c.Version, FormatVersion)
	}
	t := &sense.Table{Aliases: c.Aliases}
	t.Together = map[string][]string{}
	for name, odorants := range o.Together {
		t.Together[name] = strings.Split(odorants, "; ")
	}
	for _, id := range sortedKeys(o.Notes) {
		family, ok := flavor.ParseAromaFamily(o.Notes[id])
		if !ok {
			return nil, fmt.Errorf("data: %s: note %q: %q is not an aroma family", odorantsFile, id, o.Notes[id])
		}
		t.Notes = append(t.Notes, sense.Note{ID: id, Family: family})
	}
	for _, name := range sortedKeys(o.Odorants) {
		character, err := parseParts(o.Odorants[name], ", ")
		if err != nil {
			return nil, fmt.Errorf("data: %s: odorant %q: %w", odorantsFile, name, err)
		}
		t.Odorants = append(t.Odorants, sense.Odorant{Name: name, Character: character, ThresholdUGPerL: o.Thresholds[name]})
	}
	for _, name := range sortedKeys(o.Thresholds) {
		if _, ok := o.Odorants[name]; !ok {
			return nil, fmt.Errorf("data: %s: threshold of %q: it is not an odorant of the file", odorantsFile, name)
		}
	}
	for _, name := range sortedKeys(c.Materials) {
		carried, err := parseParts(c.Materials[name], "; ")
		if err != nil {
			return nil, fmt.Errorf("data: %s: material %q: %w", materialsFile, name, err)
		}
		t.Materials = append(t.Materials, sense.Material{Name: name, Odorants: carried})
	}
	return t, nil
}

// factorsSchema is the file of the factored kernel: for each material with odorants
// AromaDims integers, in units of factorScale.
type factorsSchema struct {
	Version int               `toml:"version"`
	Digest  string            `toml:"digest"`
	Largest float64           `toml:"largest_error"`
	RMS     float64           `toml:"rms_error"`
	Rows    map[string]string `toml:"rows"`
}

// factorScale is the unit of the integers in the file.
const factorScale = 1e-4

// odourFactors reads the embedded factors.
func odourFactors() (*sense.Factors, error) {
	var f factorsSchema
	if err := decodeStrict(odours, factorsFile, &f); err != nil {
		return nil, err
	}
	out := &sense.Factors{Digest: f.Digest, Largest: f.Largest, RMS: f.RMS}
	for _, name := range sortedKeys(f.Rows) {
		var row [sense.AromaDims]float64
		fields := strings.Fields(f.Rows[name])
		if len(fields) != len(row) {
			return nil, fmt.Errorf("data: %s: material %q: %d numbers; there must be %d", factorsFile, name, len(fields), len(row))
		}
		for i, text := range fields {
			n, err := strconv.Atoi(text)
			if err != nil {
				return nil, fmt.Errorf("data: %s: material %q: %q is not a whole number", factorsFile, name, text)
			}
			row[i] = factorScale * float64(n)
		}
		out.Rows = append(out.Rows, row)
	}
	return out, nil
}

// parseParts reads a list of "name weight". The separator must not occur in names, which
// may contain a comma ("1,8-cineole").
func parseParts(text, separator string) ([]sense.Share, error) {
	var out []sense.Share
	for item := range strings.SplitSeq(text, separator) {
		at := strings.LastIndexByte(item, ' ')
		if at < 0 {
			return nil, fmt.Errorf("%q needs a name and a weight, such as \"limonene 0.6\"", item)
		}
		w, err := strconv.ParseFloat(item[at+1:], 64)
		if err != nil {
			return nil, fmt.Errorf("%q: the weight is not a number", item)
		}
		out = append(out, sense.Share{Name: strings.TrimSpace(item[:at]), Weight: w})
	}
	return out, nil
}
