package data

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"counterpour/flavor"
	"counterpour/flavor/beside"
	"counterpour/flavor/sense"
)

//go:embed catalogue/*.toml
var embedded embed.FS

// FormatVersion is the version of the catalogue's file format.
const FormatVersion = 1

// Caution is a warning about an ingredient or about every drink.
type Caution struct {
	Key    string
	Text   string
	Source string
	Status string // published, common practice or from memory
	// LeastML is the least volume of ingredients with this caution, in mL per drink, for
	// which the caution is given; zero for any. Dose gives the reason.
	LeastML float64
	Dose    string
	// WithoutAlcohol is an additional text for a drink without alcohol, which a child or
	// a pregnant guest may have; empty for most cautions.
	WithoutAlcohol string
	// Allergens are those that guests who react to the ingredient avoid, or that makers let into
	// it, though its record has none of them; empty for most cautions.
	Allergens []flavor.Allergen
}

// Catalogue holds every ingredient, and the materials and cautions that their records
// refer to. It is read-only once loaded.
type Catalogue struct {
	profiles  []*flavor.Profile // sorted by id
	byID      map[string]*flavor.Profile
	byName    map[string]*flavor.Profile // by normalised name or alias
	materials map[string]Material
	cautions  map[string]Caution
	space     *sense.Space
}

// catalogueFile is the schema of a file; unknown fields are errors.
type catalogueFile struct {
	Version     int               `toml:"version"`
	Class       string            `toml:"class"`
	Materials   map[string]string `toml:"materials"`
	Ingredients []record          `toml:"ingredient"`
	Cautions    []cautionRecord   `toml:"caution"`
}

type cautionRecord struct {
	Key     string  `toml:"key"`
	Text    string  `toml:"text"`
	Source  string  `toml:"source"`
	Status  string  `toml:"status"`
	LeastML float64 `toml:"least_ml"`
	Dose    string  `toml:"dose"`

	WithoutAlcohol string            `toml:"without_alcohol"`
	Allergens      []flavor.Allergen `toml:"allergens"`
}

// Embedded loads the catalogue that is embedded in the program.
func Embedded() (*Catalogue, error) {
	sub, err := fs.Sub(embedded, "catalogue")
	if err != nil {
		return nil, err
	}
	return Load(sub)
}

// Load reads a catalogue from the TOML files in the root of fsys. The error joins all
// faults; each names file, record and field.
func Load(fsys fs.FS) (*Catalogue, error) {
	names, err := fs.Glob(fsys, "*.toml")
	if err != nil {
		return nil, err
	}
	if len(names) == 0 {
		return nil, errors.New("data: no .toml file here; a catalogue needs materials.toml, blends.toml, cautions.toml and ingredients")
	}
	c := &Catalogue{byID: map[string]*flavor.Profile{}, byName: map[string]*flavor.Profile{},
		materials: map[string]Material{}, cautions: map[string]Caution{}}
	b, err := loadBlends(fsys)
	if err != nil {
		return nil, err
	}
	senses, err := loadSenses()
	if err != nil {
		return nil, err
	}
	files, unread, err := readFiles(fsys, names)
	if err != nil {
		return nil, err
	}
	var faults []error
	for i, name := range names {
		if unread[i] != nil {
			faults = append(faults, unread[i])
			continue
		}
		faults = append(faults, c.addMaterials(name, files[i])...)
		faults = append(faults, c.addCautions(name, files[i])...)
	}
	sensed := beside.Run(func() (err error) {
		c.space, err = space(c.materials)
		return err
	})
	for i, name := range names {
		faults = append(faults, c.addIngredients(name, files[i], b, senses)...)
	}
	faults = append(faults, c.checkReferences()...)
	err = sensed()
	if len(faults) > 0 {
		return nil, errors.Join(faults...)
	}
	if err != nil {
		return nil, err
	}
	slices.SortFunc(c.profiles, func(a, b *flavor.Profile) int { return strings.Compare(a.ID, b.ID) })
	return c, nil
}

// readFiles reads all files but that of the blends, several at once. unread holds the fault
// of each file that cannot be read.
func readFiles(fsys fs.FS, names []string) (files []catalogueFile, unread []error, err error) {
	files, unread = make([]catalogueFile, len(names)), make([]error, len(names))
	err = beside.Each(len(names), func(i int) error {
		if names[i] != blendsFile {
			files[i], unread[i] = readFile(fsys, names[i])
		}
		return nil
	})
	return files, unread, err
}

func readFile(fsys fs.FS, name string) (catalogueFile, error) {
	var f catalogueFile
	if err := decodeStrict(fsys, name, &f); err != nil {
		return f, err
	}
	if f.Version != FormatVersion {
		return f, fmt.Errorf("data: %s: version is %d; this program reads version %d", name, f.Version, FormatVersion)
	}
	return f, nil
}

// decodeStrict decodes a TOML file into v. Fields that v does not have are errors.
func decodeStrict(fsys fs.FS, name string, v any) error {
	text, err := fsys.Open(name)
	if err != nil {
		return fmt.Errorf("data: %w", err)
	}
	defer text.Close()
	dec := toml.NewDecoder(text).DisallowUnknownFields()
	if err := dec.Decode(v); err != nil {
		var strict *toml.StrictMissingError
		if errors.As(err, &strict) && len(strict.Errors) > 0 {
			row, _ := strict.Errors[0].Position()
			return fmt.Errorf("data: %s: line %d: field %q is not known", name, row, strings.Join(strict.Errors[0].Key(), "."))
		}
		var decode *toml.DecodeError
		if errors.As(err, &decode) {
			row, _ := decode.Position()
			return fmt.Errorf("data: %s: line %d: %w", name, row, err)
		}
		return fmt.Errorf("data: %s: %w", name, err)
	}
	return nil
}

func (c *Catalogue) addMaterials(file string, f catalogueFile) (faults []error) {
	for _, name := range sortedKeys(f.Materials) {
		m, err := parseMaterial(name, f.Materials[name])
		if _, twice := c.materials[name]; twice {
			err = errors.New("is defined twice; keep one")
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("data: %s: material %q: %w", file, name, err))
			continue
		}
		c.materials[name] = m
	}
	return faults
}

func (c *Catalogue) addCautions(file string, f catalogueFile) (faults []error) {
	for _, r := range f.Cautions {
		_, twice := c.cautions[r.Key]
		if twice || r.Key == "" || r.Text == "" || r.Source == "" || r.Status == "" {
			faults = append(faults, fmt.Errorf("data: %s: caution %q: must be there once, with key, text, source and status", file, r.Key))
			continue
		}
		if !(r.LeastML >= 0) || (r.LeastML > 0) != (r.Dose != "") {
			faults = append(faults, fmt.Errorf("data: %s: caution %q: least_ml must be zero or more, and dose must say why where it is not zero", file, r.Key))
			continue
		}
		if at := slices.IndexFunc(r.Allergens, func(a flavor.Allergen) bool { return !slices.Contains(flavor.Allergens(), a) }); at >= 0 {
			faults = append(faults, fmt.Errorf("data: %s: caution %q: %q is no allergen of the law; write one such as \"tree nuts\"", file, r.Key, r.Allergens[at]))
			continue
		}
		c.cautions[r.Key] = Caution(r)
	}
	return faults
}

func (c *Catalogue) addIngredients(file string, f catalogueFile, b *blends, senses *senseTable) (faults []error) {
	for _, r := range f.Ingredients {
		if r.Class == "" {
			r.Class = f.Class
		}
		p, err := r.profile(b, c.materials)
		if err == nil {
			senses.apply(p)
			err = c.add(p)
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("data: %s: %w", file, err))
		}
	}
	return faults
}

// add adds a profile under its id, name and aliases, each of which must be unused.
func (c *Catalogue) add(p *flavor.Profile) error {
	if _, taken := c.byID[p.ID]; taken {
		return fmt.Errorf("ingredient %q: the id is taken", p.ID)
	}
	for _, name := range append([]string{p.ID, p.Name}, p.Aliases...) {
		key := flavor.NormaliseName(name)
		if key == "" {
			return fmt.Errorf("ingredient %q: name %q has no letters", p.ID, name)
		}
		if other, taken := c.byName[key]; taken && other != p {
			return fmt.Errorf("ingredient %q: the name %q is taken by %q; an alias may belong to one ingredient only", p.ID, name, other.ID)
		}
		c.byName[key] = p
	}
	c.byID[p.ID] = p
	c.profiles = append(c.profiles, p)
	return nil
}

// checkReferences returns a fault for every caution that no file defines.
func (c *Catalogue) checkReferences() (faults []error) {
	for _, p := range c.profiles {
		for _, key := range p.Cautions {
			if _, ok := c.cautions[key]; !ok {
				faults = append(faults, fmt.Errorf("data: ingredient %q: caution %q is not in cautions.toml", p.ID, key))
			}
		}
	}
	return faults
}

// Profiles returns every ingredient, sorted by id. The caller may change the slice but
// not the profiles.
func (c *Catalogue) Profiles() []*flavor.Profile { return slices.Clone(c.profiles) }

// Space returns the sensory space of the catalogue's materials.
func (c *Catalogue) Space() *sense.Space { return c.space }

// ByID returns the ingredient with an id.
func (c *Catalogue) ByID(id string) (*flavor.Profile, bool) {
	p, ok := c.byID[id]
	return p, ok
}

// ByName returns the ingredient with this id, name or alias, ignoring case, accents,
// plural and punctuation. own is true if it matched the name or id and not an alias.
func (c *Catalogue) ByName(written string) (p *flavor.Profile, own bool, found bool) {
	key := flavor.NormaliseName(written)
	p, found = c.byName[key]
	if !found {
		return nil, false, false
	}
	return p, key == flavor.NormaliseName(p.Name) || key == flavor.NormaliseName(p.ID), true
}

// CautionsOf returns the keys of the cautions of a drink, in the order of its pours and
// without duplicates. It leaves out cautions whose [Caution.LeastML] the drink does not
// reach.
func (c *Catalogue) CautionsOf(s *flavor.Spec) []string {
	poured := map[string]float64{}
	var keys []string
	for i := range s.Pours {
		for _, key := range s.Pours[i].Profile.Cautions {
			poured[key] += s.Pours[i].ML
			keys = appendNew(keys, key)
		}
	}
	return slices.DeleteFunc(keys, func(key string) bool { return poured[key] < c.cautions[key].LeastML })
}

// Caution returns the caution with a key.
func (c *Catalogue) Caution(key string) (Caution, bool) {
	k, ok := c.cautions[key]
	return k, ok
}
