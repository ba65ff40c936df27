package data

import (
	"embed"
	"errors"
	"fmt"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/trial"
)

//go:embed situations.toml situations-held.toml situations-fresh.toml situations-wide.toml situations-second-bar.toml
var situations embed.FS

// Sets of situations on which covers are tested: those used for tuning; those first held back
// and later used to mend faults; and those written last, which measure covers on unseen
// drinks.
const (
	TunedSituations = "situations.toml"
	HeldSituations  = "situations-held.toml"
	FreshSituations = "situations-fresh.toml"
	WideSituations  = "situations-wide.toml"
	// SecondBarSituations are asked of a smaller bar than the usual one.
	SecondBarSituations = "situations-second-bar.toml"
)

type situationsRecord struct {
	Version    int                 `toml:"version"`
	Source     string              `toml:"source"`
	Stock      []string            `toml:"stock"` // the usual bar if there is none
	Lists      map[string][]string `toml:"lists"`
	Situations []situationRecord   `toml:"situation"`
}

type situationRecord struct {
	Out   string   `toml:"out"`
	Also  []string `toml:"also"`
	Avoid []string `toml:"avoid"`
	Diet  []string `toml:"diet"`
	Drink string   `toml:"drink"`
	Good  []string `toml:"good"`
	Bad   []string `toml:"bad"`
}

// Situations reads a set of test situations for covers: [TunedSituations],
// [HeldSituations], [FreshSituations] or [WideSituations]. Every id must be in the
// catalogue. The error joins all faults.
func (c *Catalogue) Situations(name string) (all []trial.Situation, bar []*flavor.Profile, err error) {
	var file situationsRecord
	if err := decodeStrict(situations, name, &file); err != nil {
		return nil, nil, err
	}
	faults := checkTable(name, file.Version, file.Source)
	for i, r := range file.Situations {
		s, err := c.situation(r, file.Lists)
		if err != nil {
			faults = append(faults, fmt.Errorf("data: %s: situation %d, %s out: %w", name, i+1, r.Out, err))
		}
		all = append(all, s)
	}
	bar, unknown := c.stocked("data: "+name, file.Stock)
	if len(file.Stock) == 0 {
		if bar, err = c.UsualBar(); err != nil {
			faults = append(faults, err)
		}
	}
	faults = append(faults, unknown...)
	if len(faults) > 0 {
		return nil, nil, errors.Join(faults...)
	}
	return all, bar, nil
}

func (c *Catalogue) situation(r situationRecord, lists map[string][]string) (s trial.Situation, err error) {
	out, _, found := c.ByName(r.Out)
	if !found || strings.Count(r.Drink, "%") != 1 {
		return s, errors.New("out must be in the catalogue, and its place in the drink a single %")
	}
	s.Out = out
	text := strings.ReplaceAll(strings.ReplaceAll(r.Drink, "%", r.Out), "; ", "\n")
	if s.Spec, err = c.ReadSpec("", text); err != nil {
		return s, err
	}
	if err := c.addGuest(&s, r); err != nil {
		return s, err
	}
	for _, written := range r.Good {
		var answer [][]string
		for _, part := range strings.Split(written, " + ") {
			ids := listed(part, lists)
			if err := c.known(ids); err != nil {
				return s, err
			}
			answer = append(answer, ids)
		}
		s.Good = append(s.Good, answer)
	}
	for _, id := range r.Bad {
		ids := listed(id, lists)
		if err := c.known(ids); err != nil {
			return s, err
		}
		s.Bad = append(s.Bad, ids...)
	}
	if len(s.Good) == 0 || len(s.Bad) == 0 {
		return s, errors.New("needs answers that are good and some that are bad")
	}
	return s, nil
}

// addGuest reads what else is out, and the guest's diet and limits.
func (c *Catalogue) addGuest(s *trial.Situation, r situationRecord) error {
	for _, name := range r.Also {
		p, _, found := c.ByName(name)
		if !found {
			return fmt.Errorf("%q is out too, and not in the catalogue", name)
		}
		s.Also = append(s.Also, p)
	}
	for _, word := range r.Avoid {
		meant, err := flavor.AllergensMeant(word)
		if err != nil {
			return err
		}
		s.Avoid = append(s.Avoid, meant...)
	}
	for _, word := range r.Diet {
		if _, err := flavor.ParseDiet(word); err != nil {
			return err
		}
	}
	s.Diet = r.Diet
	return nil
}

// listed expands the name of a list to its ids; any other id stands for itself.
func listed(id string, lists map[string][]string) []string {
	if list, ok := strings.CutPrefix(id, "@"); ok {
		return lists[list]
	}
	return []string{id}
}

// known returns an error for the first id that is not in the catalogue.
func (c *Catalogue) known(ids []string) error {
	if len(ids) == 0 {
		return errors.New("a list that is empty or not there")
	}
	for _, id := range ids {
		if _, found := c.ByID(id); !found {
			return fmt.Errorf("%q is not an id of the catalogue", id)
		}
	}
	return nil
}
