package sense

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"counterpour/flavor"
)

// Table is what is known of odorants, as it is written down.
type Table struct {
	Notes     []Note
	Odorants  []Odorant
	Materials []Material
	// Aliases are other names of materials: written name to material.
	Aliases map[string]string
	// Together names odorants that come together and go by one name, such as
	// citral for geranial and neral.
	Together map[string][]string
}

// Note is one thing that an odorant can smell of, finer than a family.
type Note struct {
	ID     string
	Family flavor.AromaFamily
}

// Odorant is a molecule, or a group of molecules that smell alike and come
// together, by its common chemical name.
type Odorant struct {
	Name      string
	Character []Share // which notes it smells of; the weights sum to 1
	// ThresholdUGPerL is the least that a nose finds in water, µg/L; 0 if nobody
	// has said.
	ThresholdUGPerL float64
}

// Material is something that aromas are made of.
type Material struct {
	Name string
	// Shares spreads one unit of intensity over the families; if all are zero
	// they follow from the odorants.
	Shares flavor.Aroma
	// Odorants and their importance for the smell of the material, 0 to 1. If
	// there are none the material counts by its families.
	Odorants []Share
}

// Share is a named thing and how much of it there is.
type Share struct {
	Name   string
	Weight float64
}

// check reports the first fault of a table.
func (t *Table) check() error {
	notes, err := t.checkNotes()
	if err != nil {
		return err
	}
	odorants, err := t.checkOdorants(notes)
	if err != nil {
		return err
	}
	materials, err := t.checkMaterials(odorants)
	if err != nil {
		return err
	}
	if err := t.checkTogether(odorants); err != nil {
		return err
	}
	return t.checkAliases(materials)
}

// checkNotes returns the ids of the notes.
func (t *Table) checkNotes() (map[string]bool, error) {
	notes := map[string]bool{}
	for _, n := range t.Notes {
		if n.ID == "" || notes[n.ID] || n.Family < 0 || int(n.Family) >= flavor.NumAromaFamilies {
			return nil, fmt.Errorf("sense: note %q: must be there once, with a family", n.ID)
		}
		notes[n.ID] = true
	}
	return notes, nil
}

// checkOdorants returns the names of the odorants, whose notes must be known.
func (t *Table) checkOdorants(notes map[string]bool) (map[string]bool, error) {
	odorants := map[string]bool{}
	for _, o := range t.Odorants {
		if o.Name == "" || odorants[o.Name] {
			return nil, fmt.Errorf("sense: odorant %q: must be there once", o.Name)
		}
		odorants[o.Name] = true
		if !(o.ThresholdUGPerL >= 0) || math.IsInf(o.ThresholdUGPerL, 1) {
			return nil, fmt.Errorf("sense: odorant %q: the threshold %v µg/L must be a number, zero or more", o.Name, o.ThresholdUGPerL)
		}
		sum, err := sumOf(o.Character, notes, "note")
		if err != nil {
			return nil, fmt.Errorf("sense: odorant %q: %w", o.Name, err)
		}
		if math.Abs(sum-1) > 1e-6 {
			return nil, fmt.Errorf("sense: odorant %q: the notes sum to %.4f; they must sum to 1", o.Name, sum)
		}
	}
	return odorants, nil
}

// checkMaterials returns the names of the materials, whose odorants must be known.
func (t *Table) checkMaterials(odorants map[string]bool) (map[string]bool, error) {
	materials := map[string]bool{}
	for i := range t.Materials {
		m := &t.Materials[i]
		if m.Name == "" || materials[m.Name] {
			return nil, fmt.Errorf("sense: material %q: must be there once", m.Name)
		}
		materials[m.Name] = true
		if _, err := sumOf(m.Odorants, odorants, "odorant"); err != nil {
			return nil, fmt.Errorf("sense: material %q: %w", m.Name, err)
		}
		if len(m.Odorants) == 0 && m.Shares.Total() <= 0 {
			return nil, fmt.Errorf("sense: material %q: needs odorants or shares of families", m.Name)
		}
	}
	return materials, nil
}

// checkTogether checks the names that stand for several odorants at once.
func (t *Table) checkTogether(odorants map[string]bool) error {
	for _, name := range slices.Sorted(maps.Keys(t.Together)) {
		for _, o := range t.Together[name] {
			if !odorants[o] || odorants[name] {
				return fmt.Errorf("sense: %q for %q: it must name odorants of the table, and not be one", name, o)
			}
		}
	}
	return nil
}

func (t *Table) checkAliases(materials map[string]bool) error {
	for _, alias := range slices.Sorted(maps.Keys(t.Aliases)) {
		if name := t.Aliases[alias]; !materials[name] || materials[alias] {
			return fmt.Errorf("sense: alias %q of %q: it must name a material of the table, and not be one", alias, name)
		}
	}
	return nil
}

// sumOf adds up the weights of parts that are all known, above zero, at most 1
// and named once.
func sumOf(parts []Share, known map[string]bool, kind string) (float64, error) {
	var sum float64
	seen := make(map[string]bool, len(parts))
	for _, p := range parts {
		switch {
		case !known[p.Name]:
			return 0, fmt.Errorf("%s %q is not known; add it to the table or use one that is there", kind, p.Name)
		case seen[p.Name]:
			return 0, fmt.Errorf("%s %q is named twice; keep one", kind, p.Name)
		case !(p.Weight > 0 && p.Weight <= 1):
			return 0, fmt.Errorf("%s %q: the weight %v must be above 0 and at most 1", kind, p.Name, p.Weight)
		}
		seen[p.Name] = true
		sum += p.Weight
	}
	return sum, nil
}
