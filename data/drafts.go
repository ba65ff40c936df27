package data

import (
	"embed"
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"

	"counterpour/flavor/template"
	"counterpour/flavor/trial"
)

//go:embed drafts.toml
var drafts embed.FS

const draftsFile = "drafts.toml"

type draftsRecord struct {
	Version int           `toml:"version"`
	Source  string        `toml:"source"`
	Drafts  []draftRecord `toml:"draft"`
}

type draftRecord struct {
	Text  string   `toml:"text"`
	Pours []string `toml:"pours"`
}

// Drafts returns the drafts that test the reader: drafts as bartenders type them, and
// every proven drink in a random style of writing. Every id must be in the catalogue. The
// error joins all faults.
func (c *Catalogue) Drafts(proven []template.Labelled, seed uint64) ([]trial.Typed, error) {
	var file draftsRecord
	if err := decodeStrict(drafts, draftsFile, &file); err != nil {
		return nil, err
	}
	faults := checkTable(draftsFile, file.Version, file.Source)
	out := make([]trial.Typed, 0, len(file.Drafts)+len(proven))
	for i, r := range file.Drafts {
		d := trial.Typed{Hand: "written by hand", Text: r.Text}
		for _, written := range r.Pours {
			p, err := c.poured(written)
			if err != nil {
				faults = append(faults, fmt.Errorf("data: %s: draft %d: %w", draftsFile, i+1, err))
			}
			d.Pours = append(d.Pours, p)
		}
		out = append(out, d)
	}
	for i := range proven {
		out = append(out, trial.Scribble(&proven[i].Spec, rand.New(rand.NewPCG(seed, uint64(i)))))
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return out, nil
}

// Tolerances for the millilitres of a hand-written draft: bartenders round an ounce to 30
// mL, and dashes differ.
const (
	handShare = 0.15
	handML    = 1.0
)

// poured reads an id and its millilitres, such as "lemon-juice 22.5".
func (c *Catalogue) poured(written string) (p trial.Poured, err error) {
	id, ml, amount := strings.Cut(written, " ")
	if _, found := c.ByID(id); !found {
		return p, fmt.Errorf("%q is not an id of the catalogue", id)
	}
	p.ID = id
	if !amount {
		return p, nil
	}
	if p.ML, err = strconv.ParseFloat(ml, 64); err != nil || !(p.ML > 0) {
		return p, fmt.Errorf("%q is no amount in millilitres above zero", ml)
	}
	p.Tolerance = max(handShare*p.ML, handML)
	return p, nil
}
