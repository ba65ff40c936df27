package data

import (
	"errors"
	"fmt"

	"counterpour/flavor/template"
)

const servesFile = "serves.toml"

type servesRecords struct {
	Version int           `toml:"version"`
	Source  string        `toml:"source"`
	Serves  []serveRecord `toml:"serve"`
}

type serveRecord struct {
	Family string `toml:"family"`
	Text   string `toml:"text"`
}

// Serves reads how bars pour what hardly any proven drink has a place for: nameless
// drinks, each with the id of its family. The error joins all faults; each names the serve
// by its place in the file.
func (c *Catalogue) Serves() ([]template.Labelled, error) {
	var file servesRecords
	if err := decodeStrict(trade, servesFile, &file); err != nil {
		return nil, err
	}
	faults := checkTable(servesFile, file.Version, file.Source)
	out := make([]template.Labelled, len(file.Serves))
	for i, r := range file.Serves {
		spec, err := c.ReadSpec("", r.Text)
		if err != nil {
			faults = append(faults, fmt.Errorf("data: %s: serve %d: %w", servesFile, i+1, err))
		}
		out[i] = template.Labelled{Spec: spec, Family: r.Family, Source: file.Source}
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return out, nil
}
