package data

import (
	"errors"
	"fmt"

	"counterpour/flavor"
	"counterpour/flavor/riff/wish"
)

const wishesFile = "wishes.toml"

type wishesRecords struct {
	Version int          `toml:"version"`
	Source  string       `toml:"source"`
	Wishes  []wishRecord `toml:"wish"`
}

type wishRecord struct {
	Words        []string       `toml:"words"`
	Bases        []flavor.Class `toml:"bases"`
	First        []string       `toml:"first"`
	FirstClasses []flavor.Class `toml:"first-classes"`
	Also         []string       `toml:"also"`
	AlsoClasses  []flavor.Class `toml:"also-classes"`
}

// Carriers reads the ingredients with which a bartender meets a wish for more of
// something. Every wish must be a valid word with one row, and every id in the catalogue.
// The error joins all faults; each names the wish.
func (c *Catalogue) Carriers() (*wish.Carriers, error) {
	var file wishesRecords
	if err := decodeStrict(trade, wishesFile, &file); err != nil {
		return nil, err
	}
	out, faults := &wish.Carriers{}, checkTable(wishesFile, file.Version, file.Source)
	for _, r := range file.Wishes {
		if len(r.Words) == 0 || len(r.First)+len(r.FirstClasses) == 0 {
			faults = append(faults, fmt.Errorf("data: %s: wish %q: needs a word, and what is reached for first", wishesFile, r.Words))
			continue
		}
		place := fmt.Sprintf("data: %s: wish %q", wishesFile, r.Words[0])
		row := &wish.Row{First: map[string]bool{}, Also: map[string]bool{}}
		faults = append(faults, c.addCarriers(row.First, row, place, r.First, r.FirstClasses)...)
		faults = append(faults, c.addCarriers(row.Also, row, place, r.Also, r.AlsoClasses)...)
		bases := r.Bases
		if len(bases) == 0 {
			bases = []flavor.Class{""}
		}
		for _, base := range bases {
			if base != "" && base.Part() != flavor.PartBase {
				faults = append(faults, fmt.Errorf("%s: %q is no class of spirit", place, base))
			}
			for _, w := range r.Words {
				if !out.Add(w, base, row) {
					faults = append(faults, fmt.Errorf("%s: %q is no word that a wish may be made of, or has such a row already", place, w))
				}
			}
		}
	}
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	return out, nil
}

// addCarriers adds ingredients by id, and all ingredients of some classes, unless the row
// has them already.
func (c *Catalogue) addCarriers(to map[string]bool, row *wish.Row, place string, ids []string, classes []flavor.Class) (faults []error) {
	for _, id := range ids {
		p, found := c.ByID(id)
		switch {
		case !found:
			faults = append(faults, fmt.Errorf("%s: %q is not an id of the catalogue", place, id))
		case row.Carries(p):
			faults = append(faults, fmt.Errorf("%s: %q is named twice; keep one", place, id))
		default:
			to[id] = true
		}
	}
	for _, class := range classes {
		if !class.Valid() {
			faults = append(faults, fmt.Errorf("%s: %q is no class of ingredient", place, class))
		}
		for _, p := range c.Profiles() {
			if p.Class == class && !row.Carries(p) {
				to[p.ID] = true
			}
		}
	}
	return faults
}
