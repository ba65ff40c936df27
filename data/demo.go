package data

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"counterpour/flavor"
	"counterpour/flavor/template"
)

//go:embed demo/*.toml
var demo embed.FS

const demoFile = "halyard-room.toml"

// House is a bar: its menu, its stock, and what has run out.
type House struct {
	Name        string
	Description string // one line
	Invented    bool   // a demo, not a real bar; true of every built-in house
	Specs       []HouseSpec
	Stock       []*flavor.Profile // everything that the house keeps, in the order of its shelves
	Out         []*flavor.Profile // the part of Stock that has run out
	Currency    string            // of Prices, ISO 4217
	Prices      map[flavor.Class]Price
}

// Price is what a house pays for one bottle, or one piece, of a class.
type Price struct {
	Amount float64
	SizeML float64
}

// InStock returns the part of the stock that has not run out.
func (h *House) InStock() []*flavor.Profile {
	return slices.DeleteFunc(slices.Clone(h.Stock), func(p *flavor.Profile) bool { return slices.Contains(h.Out, p) })
}

// HouseSpec is a drink on the menu of a house.
type HouseSpec struct {
	Name   string
	Family string // id of the family that it is meant for
	Spec   flavor.Spec
	Text   string // as written
}

// houseSchema is the schema of a house file.
type houseSchema struct {
	Version     int               `toml:"version"`
	Invented    bool              `toml:"invented"`
	Name        string            `toml:"name"`
	Description string            `toml:"description"`
	Stock       []string          `toml:"stock"`
	Out         []string          `toml:"out"`
	Currency    string            `toml:"currency"`
	Prices      []priceRecord     `toml:"price"`
	Specs       []houseSpecRecord `toml:"spec"`
}

// priceRecord is the price of a bottle of each class that it lists.
type priceRecord struct {
	Classes []flavor.Class `toml:"classes"`
	Amount  float64        `toml:"amount"`
	SizeML  float64        `toml:"size_ml"`
}

type houseSpecRecord struct {
	Name   string `toml:"name"`
	Family string `toml:"family"`
	Text   string `toml:"text"`
}

// Demo loads the invented demo house. Each call returns a new House; the profiles are
// shared.
func (c *Catalogue) Demo() (*House, error) {
	sub, err := fs.Sub(demo, "demo")
	if err != nil {
		return nil, err
	}
	return c.loadHouse(sub, demoFile)
}

// loadHouse reads and validates a house. The error joins all faults; each names file,
// record and field.
func (c *Catalogue) loadHouse(fsys fs.FS, file string) (*House, error) {
	var f houseSchema
	if err := decodeStrict(fsys, file, &f); err != nil {
		return nil, err
	}
	if f.Version != FormatVersion {
		return nil, fmt.Errorf("data: %s: version is %d; this program reads version %d", file, f.Version, FormatVersion)
	}
	h := &House{Name: strings.TrimSpace(f.Name), Description: strings.TrimSpace(f.Description), Invented: f.Invented}
	faults := h.checkHead()
	var errs []error
	h.Stock, errs = c.stocked("field stock", f.Stock)
	faults = append(faults, errs...)
	h.Out, errs = c.stocked("field out", f.Out)
	faults = append(faults, errs...)
	for _, p := range h.Out {
		if !slices.Contains(h.Stock, p) {
			faults = append(faults, fmt.Errorf("field out: %q is not in stock, so it cannot run dry; add it to stock", p.ID))
		}
	}
	faults = append(faults, h.readPrices(f.Currency, f.Prices)...)
	faults = append(faults, c.readMenu(h, f.Specs)...)
	if len(faults) == 0 {
		return h, nil
	}
	for i := range faults {
		faults[i] = fmt.Errorf("data: %s: %w", file, faults[i])
	}
	return nil, errors.Join(faults...)
}

func (h *House) checkHead() (faults []error) {
	if h.Name == "" {
		faults = append(faults, errors.New("field name: is empty; a house needs a name"))
	}
	if h.Description == "" || strings.Contains(h.Description, "\n") {
		faults = append(faults, errors.New("field description: must be one line"))
	}
	// A built-in house must not be mistaken for a real bar.
	if !h.Invented {
		faults = append(faults, errors.New("field invented: must be true; the program ships no real house"))
	}
	return faults
}

// readPrices reads the prices, which must cover the whole stock or be absent.
func (h *House) readPrices(currency string, records []priceRecord) (faults []error) {
	if len(records) == 0 {
		return nil
	}
	h.Currency, h.Prices = currency, map[flavor.Class]Price{}
	if len(currency) != 3 {
		faults = append(faults, fmt.Errorf("field currency: %q must be three letters, such as EUR", currency))
	}
	for i, r := range records {
		if !(r.Amount > 0) || !(r.SizeML >= 1) {
			faults = append(faults, fmt.Errorf("price[%d]: amount and size_ml must be above zero", i))
		}
		for _, c := range r.Classes {
			if _, twice := h.Prices[c]; twice {
				faults = append(faults, fmt.Errorf("price[%d]: class %q is there twice; keep one", i, c))
			}
			h.Prices[c] = Price{r.Amount, r.SizeML}
		}
	}
	for _, p := range h.Stock {
		if _, ok := h.Prices[p.Class]; !ok {
			faults = append(faults, fmt.Errorf("field price: %q is kept and class %q has no price; add one", p.ID, p.Class))
		}
	}
	return faults
}

// readMenu reads the drinks of a house whose stock is already read.
func (c *Catalogue) readMenu(h *House, records []houseSpecRecord) (faults []error) {
	families, err := Families()
	if err != nil {
		return []error{err}
	}
	if len(records) == 0 {
		faults = append(faults, errors.New("field spec: is empty; a house needs a drink"))
	}
	taken := map[string]bool{}
	for _, r := range records {
		s, errs := c.readHouseSpec(r, families, h.Stock)
		key := flavor.NormaliseName(s.Name)
		if key == "" || taken[key] {
			errs = append(errs, errors.New("field name: must be there, and once on the menu"))
		}
		taken[key] = true
		for _, err := range errs {
			faults = append(faults, fmt.Errorf("spec %q: %w", s.Name, err))
		}
		h.Specs = append(h.Specs, s)
	}
	return faults
}

func (c *Catalogue) readHouseSpec(r houseSpecRecord, families []template.Family, stock []*flavor.Profile) (s HouseSpec, faults []error) {
	s = HouseSpec{Name: strings.TrimSpace(r.Name), Family: r.Family, Text: strings.TrimSpace(r.Text)}
	if !slices.ContainsFunc(families, func(f template.Family) bool { return f.ID == r.Family }) {
		faults = append(faults, fmt.Errorf("field family: %q is not known; use an id in %s", r.Family, familiesFile))
	}
	spec, err := c.ReadSpec(s.Name, s.Text)
	if err != nil {
		return s, append(faults, fmt.Errorf("field text: %w", err))
	}
	s.Spec = spec
	// The drafts of a menu must be complete: anything that the reader assumed is a fault.
	for _, note := range spec.Notes {
		faults = append(faults, fmt.Errorf("field text: say it plainly: %s", note))
	}
	for i := range spec.Pours {
		if p := spec.Pours[i].Profile; !slices.Contains(stock, p) {
			faults = append(faults, fmt.Errorf("field text: %q is poured but not kept; add it to stock", p.ID))
		}
	}
	return s, faults
}
