package data

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"counterpour/data/legal"
	"counterpour/flavor"
	"counterpour/flavor/mix"
)

// record is an ingredient in its file. Pointers tell an absent field from an empty one.
type record struct {
	ID         string    `toml:"id"`
	Name       string    `toml:"name"`
	Aliases    []string  `toml:"aliases"`
	Class      string    `toml:"class"`
	Legal      string    `toml:"legal"`
	ABV        string    `toml:"abv"`
	Sugar      string    `toml:"sugar"`
	Sugars     string    `toml:"sugars"`
	Acid       string    `toml:"acid"`
	Acids      string    `toml:"acids"`
	Bitter     string    `toml:"bitter"`
	Texture    string    `toml:"texture"`
	Fat        string    `toml:"fat"`
	Salt       string    `toml:"salt"`
	Sweeteners string    `toml:"sweeteners"`
	Caffeine   string    `toml:"caffeine"`
	Tannin     string    `toml:"tannin"`
	SmellsOf   string    `toml:"smells_of"`
	MadeWith   []string  `toml:"made_with"`
	Allergens  *[]string `toml:"allergens"`
	MayContain []string  `toml:"may_contain"`
	Unstated   bool      `toml:"unstated"`
	UnstatedOf []string  `toml:"unstated_of"`
	FreeOf     []string  `toml:"free_of"`
	Animal     []string  `toml:"animal"`
	Cautions   []string  `toml:"cautions"`
	Carbonated bool      `toml:"carbonated"`
	Making     string    `toml:"making"`
	Yields     []string  `toml:"yields"`
}

var idPattern = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// Upper limits of an ingredient's values, in the units of the field. A larger number is a
// mistake.
const (
	maxABV      = 100
	maxSolids   = 1600 // g/L, crystalline sugar
	maxSalt     = 2170 // g/L, crystalline salt
	maxBitter   = 50000
	maxCaffeine = 20000 // mg/L, the solubility in cold water
	maxAroma    = 1000
	maxAliases  = 24
)

// profile converts a record to a profile. The error names the field and the remedy.
func (r record) profile(b *blends, materials map[string]Material) (*flavor.Profile, error) {
	p := &flavor.Profile{ID: r.ID, Name: strings.TrimSpace(r.Name), Aliases: r.Aliases,
		Class: flavor.ClassNamed(r.Class), Legal: r.Legal, Carbonated: r.Carbonated, Making: r.Making}
	steps := []func(*flavor.Profile) error{
		r.checkNames,
		r.readFigures,
		func(p *flavor.Profile) error { return r.readBlends(p, b) },
		func(p *flavor.Profile) error { return r.readAroma(p, materials) },
		func(p *flavor.Profile) error { return r.readContents(p, materials) },
		r.readCautions,
		legal.Check,
		r.readYields,
		mix.Complete,
	}
	for _, step := range steps {
		if err := step(p); err != nil {
			return nil, fmt.Errorf("ingredient %q: %w", r.ID, err)
		}
	}
	return p, nil
}

func (r record) checkNames(p *flavor.Profile) error {
	switch {
	case !idPattern.MatchString(r.ID):
		return fmt.Errorf("field id: %q must be lower-case words joined by hyphens", r.ID)
	case p.Name == "":
		return fmt.Errorf("field name: must not be empty")
	case !p.Class.Valid():
		return fmt.Errorf("field class: %q is not a class; use one of %v", r.Class, flavor.Classes())
	case len(r.Aliases) > maxAliases:
		return fmt.Errorf("field aliases: %d are too many; keep %d", len(r.Aliases), maxAliases)
	}
	return nil
}

func (r record) readFigures(p *flavor.Profile) error {
	for _, f := range []struct {
		field    string
		text     string
		into     *flavor.Figure
		max      float64
		optional bool
	}{
		{"abv", r.ABV, &p.ABV, maxABV, false},
		{"sugar", r.Sugar, &p.Sugar, maxSolids, false},
		{"acid", r.Acid, &p.Acid, maxSolids, false},
		{"bitter", r.Bitter, &p.Bitter, maxBitter, false},
		{"texture", r.Texture, &p.Texture, maxSolids, false},
		{"fat", r.Fat, &p.Fat, maxSolids, true},
		{"salt", r.Salt, &p.Salt, maxSalt, true},
		{"sweeteners", r.Sweeteners, &p.Sweeteners, maxSolids, true},
		{"caffeine", r.Caffeine, &p.Caffeine, maxCaffeine, true},
		{"tannin", r.Tannin, &p.Tannin, maxSolids, true},
	} {
		if f.text == "" && f.optional {
			continue
		}
		if f.text == "" {
			return fmt.Errorf("field %s: is missing; every record needs it, with spread and origin", f.field)
		}
		fig, err := parseFigure(f.text)
		if err != nil {
			return fmt.Errorf("field %s: %w", f.field, err)
		}
		if fig.Value > f.max {
			return fmt.Errorf("field %s: %v is more than the most possible, %v", f.field, fig.Value, f.max)
		}
		*f.into = fig
	}
	if p.Fat.Value > p.Texture.Value {
		return fmt.Errorf("field fat: %v g/L is more than the texture it is part of, %v g/L", p.Fat.Value, p.Texture.Value)
	}
	return nil
}

func (r record) readBlends(p *flavor.Profile, b *blends) error {
	var ok bool
	if p.Sugars, ok = b.sugars[r.Sugars]; !ok {
		return fmt.Errorf("field sugars: blend %q is not known; use one of blends.toml", r.Sugars)
	}
	if p.Acids, ok = b.acids[r.Acids]; !ok {
		return fmt.Errorf("field acids: blend %q is not known; use one of blends.toml", r.Acids)
	}
	if p.Sugar.Value > 0 && r.Sugars == "none" {
		return fmt.Errorf("field sugars: is none, yet the record has %v g/L of sugar", p.Sugar.Value)
	}
	if p.Acid.Value > 0 && r.Acids == "none" {
		return fmt.Errorf("field acids: is none, yet the record has %v g/L of acid", p.Acid.Value)
	}
	return nil
}

func (r record) readAroma(p *flavor.Profile, materials map[string]Material) error {
	list, spread, origin, err := parseSmells(r.SmellsOf)
	if err != nil {
		return fmt.Errorf("field smells_of: %w", err)
	}
	p.AromaSpread, p.AromaOrigin = spread, origin
	if err := applyMaterials(p, list, materials); err != nil {
		return fmt.Errorf("field smells_of: %w", err)
	}
	if t := p.Aroma.Total(); t > maxAroma {
		return fmt.Errorf("field smells_of: total intensity %v is more than the most possible, %d", t, maxAroma)
	}
	return nil
}

// readContents adds the allergens, animal sources and cautions of the materials that the
// ingredient is made with. The materials that it only smells of add none.
func (r record) readContents(p *flavor.Profile, materials map[string]Material) error {
	for _, name := range r.MadeWith {
		m, ok := materials[name]
		if !ok {
			return fmt.Errorf("field made_with: material %q is not known; add it to materials.toml or use one that is there", name)
		}
		p.Contents = appendNew(p.Contents, name)
		for _, a := range m.Allergens {
			markAllergen(p, a, flavor.Contains)
		}
		p.Animal = appendNew(p.Animal, m.Animal...)
		p.Cautions = appendNew(p.Cautions, m.Cautions...)
	}
	return nil
}

func (r record) readCautions(p *flavor.Profile) error {
	if r.Allergens == nil {
		return fmt.Errorf("field allergens: is missing; list what is contained, [] for nothing, and say unstated = true where nobody has stated the rest")
	}
	p.AllergensKnown, p.Undisclosed = !r.Unstated && len(r.UnstatedOf) == 0, r.Unstated
	if err := markAll(p, *r.Allergens, flavor.Contains); err != nil {
		return fmt.Errorf("field allergens: %w", err)
	}
	if err := markAll(p, r.MayContain, flavor.MayContain); err != nil {
		return fmt.Errorf("field may_contain: %w", err)
	}
	if err := r.readFreeOf(p); err != nil {
		return fmt.Errorf("field free_of: %w", err)
	}
	order := flavor.Allergens()
	slices.SortFunc(p.AllergenMarks, func(a, b flavor.AllergenMark) int {
		return slices.Index(order, a.Allergen) - slices.Index(order, b.Allergen)
	})
	if err := checkAnimals(r.Animal); err != nil {
		return fmt.Errorf("field animal: %w", err)
	}
	p.Animal = appendNew(p.Animal, r.Animal...)
	if p.Class.Fined() {
		p.Animal = appendNew(p.Animal, flavor.Finings)
	}
	p.Cautions = appendNew(p.Cautions, r.Cautions...)
	return nil
}

// readFreeOf reads the allergens that are stated to be absent while others are unknown:
// those listed, or all but the few in unstated_of.
func (r record) readFreeOf(p *flavor.Profile) error {
	if len(r.UnstatedOf) > 0 {
		return r.readUnstatedOf(p)
	}
	if len(r.FreeOf) > 0 && !r.Unstated {
		return fmt.Errorf("all is known here; free_of is for what is known where the rest is unstated")
	}
	for _, w := range r.FreeOf {
		a, err := flavor.ParseAllergen(w)
		if err != nil {
			return err
		}
		if c, has := p.Allergen(a); has && c != flavor.Unstated {
			return fmt.Errorf("%s is also said to be there (%s)", a, c)
		}
		p.FreeOf = append(p.FreeOf, a)
	}
	return nil
}

// readUnstatedOf reads the allergens that are unstated while all others are known.
func (r record) readUnstatedOf(p *flavor.Profile) error {
	if r.Unstated || len(r.FreeOf) > 0 {
		return fmt.Errorf("unstated_of stands alone; leave out unstated and free_of beside it")
	}
	open := make([]flavor.Allergen, len(r.UnstatedOf))
	for i, w := range r.UnstatedOf {
		var err error
		if open[i], err = flavor.ParseAllergen(w); err != nil {
			return err
		}
	}
	for _, a := range flavor.Allergens() {
		if c, has := p.Allergen(a); !slices.Contains(open, a) && (!has || c == flavor.Unstated) {
			p.FreeOf = append(p.FreeOf, a)
		}
	}
	return nil
}

func markAll(p *flavor.Profile, words []string, c flavor.Certainty) error {
	for _, w := range words {
		a, err := flavor.ParseAllergen(w)
		if err != nil {
			return err
		}
		markAllergen(p, a, c)
	}
	return nil
}

func (r record) readYields(p *flavor.Profile) error {
	for _, text := range r.Yields {
		unit, rest, ok := strings.Cut(strings.TrimSpace(text), " ")
		if !ok {
			return fmt.Errorf("field yields: %q needs a unit and a figure, such as \"leaf 0.4 ± 0.1 | common practice\"", text)
		}
		fig, err := parseFigure(rest)
		if err != nil {
			return fmt.Errorf("field yields: %w", err)
		}
		u := flavor.Unit(unit)
		if !u.Yields() {
			return fmt.Errorf("field yields: unit %q takes no yield; use sprig, leaf, slice, wedge, piece, cube, pinch or dash", unit)
		}
		p.Yields = append(p.Yields, flavor.Yield{Unit: u, Amount: fig})
	}
	return nil
}
