package data

import (
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/beside"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/template"
)

// Resolve finds an ingredient by its exact id, name or alias. Misspellings are errors,
// since records refer to one another exactly.
func (c *Catalogue) Resolve(written string) (*flavor.Profile, flavor.Match, error) {
	p, own, found := c.ByName(written)
	if !found {
		return nil, flavor.Match{}, &flavor.DataFault{Kind: flavor.ErrUnknown, Value: written,
			Message: fmt.Sprintf("%q is not in the catalogue; use the name or an alias of a record", written)}
	}
	how := flavor.MatchAlias
	if own {
		how = flavor.MatchExact
	}
	return p, flavor.Match{Asked: written, How: how}, nil
}

// Book reads the proven drinks, with ingredients from the catalogue.
func (c *Catalogue) Book(records []ProvenRecord) ([]template.Labelled, error) {
	out := make([]template.Labelled, len(records))
	err := beside.Each(len(records), func(i int) error {
		r := &records[i]
		spec, err := c.ReadSpec(r.Name, r.Text)
		if err != nil {
			return fmt.Errorf("data: proven drink %q: %w", r.Name, err)
		}
		out[i] = template.Labelled{Spec: spec, Family: r.Family, Source: r.Source, Status: r.Status, Current: r.Current}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

// ReadSpec reads a spec from text, with ingredients from the catalogue.
func (c *Catalogue) ReadSpec(name, text string) (flavor.Spec, error) {
	spec, err := reading.Read(strings.TrimSpace(text), c)
	if err != nil {
		return flavor.Spec{}, err
	}
	spec.Name = name
	return spec, nil
}
