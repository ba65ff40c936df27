package house

import (
	"math"
	"slices"
	"time"

	"counterpour/flavor"
)

// Measured is what the house measured of a bottle; nil means not measured.
type Measured struct {
	ABVPct     *float64 `json:"abv_pct,omitempty"`       // % vol, from the label
	Brix       *float64 `json:"brix,omitempty"`          // dissolved solids, g per 100 g; meaningless in a liquid with alcohol
	SugarGPerL *float64 `json:"sugar_g_per_l,omitempty"` // if known directly; not together with brix
	AcidGPerL  *float64 `json:"acid_g_per_l,omitempty"`  // all acids, weighed
}

func (m Measured) check() error {
	if m.Brix != nil && m.SugarGPerL != nil {
		return invalid("brix", *m.Brix, "brix and sugar are two ways to say one thing; keep one")
	}
	return checks(
		checkOptional("abv", m.ABVPct, 0, 100),
		checkOptional("brix", m.Brix, 0, 90),
		checkOptional("sugar", m.SugarGPerL, 0, 1600),
		checkOptional("acid", m.AcidGPerL, 0, 1600),
	)
}

func (m Measured) clean() Measured {
	return Measured{copyOf(m.ABVPct), copyOf(m.Brix), copyOf(m.SugarGPerL), copyOf(m.AcidGPerL)}
}

func copyOf(v *float64) *float64 {
	if v == nil {
		return nil
	}
	c := *v
	return &c
}

// Bottle is a bottle on the shelf. It stands for an ingredient of the catalogue, and its
// measured values replace the catalogue's.
type Bottle struct {
	ID         string `json:"id"`
	Name       string `json:"name"`           // what the house calls it
	Ingredient string `json:"ingredient"`     // id of the ingredient in the catalogue
	Well       bool   `json:"well,omitempty"` // poured first among the bottles of its ingredient
	Measured
	Label *Label `json:"label,omitempty"` // allergens on the label; nil if nobody has read it
	// Unread means that somebody said what kind it is, which its name does not: until its label is
	// read, nobody has stated what it carries.
	Unread   bool     `json:"unread,omitempty"`
	Price    *float64 `json:"price,omitempty"`    // of one full bottle, in Currency
	Currency string   `json:"currency,omitempty"` // three letters, as in ISO 4217
	SizeML   float64  `json:"size_ml,omitempty"`
	SizeG    float64  `json:"size_g,omitempty"` // if sold by weight; then SizeML is 0
	Stock    float64  `json:"stock"`            // number of bottles; a started one counts as a fraction
	Par      float64  `json:"par,omitempty"`    // number of bottles to order up to; 0: not stated
	// OutSince is when this bottle ran out while others of its ingredient were left; nil if
	// it is there, or went with all of them, which an [Out] says.
	OutSince *time.Time `json:"out_since,omitempty"`
	Note     string     `json:"note,omitempty"`
}

// Ref returns the kind and id of the record.
func (b Bottle) Ref() Ref { return Ref{KindBottle, b.ID} }

// There reports whether something is left of a bottle, unless all of its ingredient is out.
func (b Bottle) There() bool { return b.Stock > 0 && b.OutSince == nil }

// Order returns how many whole bottles bring what there is up to the par; 0 if it has none. A
// bottle that ran out counts as none, whatever was counted of it before.
func (b Bottle) Order() float64 {
	there := b.Stock
	if !b.There() {
		there = 0
	}
	return math.Max(0, math.Ceil(b.Par-there))
}

func (b Bottle) check() error {
	return checks(
		checkLine("name", b.Name, true),
		CheckID(b.Ingredient),
		b.Measured.check(),
		b.Label.check(),
		b.checkSize(),
		checkRange("stock", b.Stock, 0, 1e6),
		checkRange("par", b.Par, 0, 1e6),
		b.checkOut(),
		checkText("note", b.Note, MaxNote),
		b.checkPrice(),
	)
}

func (b Bottle) checkSize() error {
	switch {
	case b.SizeML != 0 && b.SizeG != 0:
		return invalid("size_ml", b.SizeML, "size_ml and size_g are two ways to say one thing; keep one")
	case b.SizeG != 0:
		return checkRange("size_g", b.SizeG, 1, 100000)
	}
	return checkRange("size_ml", b.SizeML, 1, 100000)
}

// LargestML is the most that a full one holds of what bars buy, the largest keg; common
// practice, no source. What is written as more is asked about where it is written.
const LargestML = 60000

// VolumeML returns the volume of a full bottle, in mL; p is its profile, whose density
// converts a size in grams.
func (b Bottle) VolumeML(p *flavor.Profile) float64 {
	if b.SizeG > 0 && p.DensityGPerML > 0 {
		return b.SizeG / p.DensityGPerML
	}
	return b.SizeML
}

func (b Bottle) checkPrice() error {
	switch {
	case b.Price == nil && b.Currency == "":
		return nil
	case b.Price == nil:
		return invalid("currency", b.Currency, "currency is there without a price")
	case b.Currency == "":
		return invalid("currency", b.Currency, "currency must be three capital letters, such as EUR")
	}
	return checks(checkCurrency(b.Currency), checkRange("price", *b.Price, 0, 1e7))
}

func (b Bottle) checkOut() error {
	if b.OutSince == nil {
		return nil
	}
	return checkTime("out_since", *b.OutSince)
}

func (b Bottle) clean() Item {
	b.Measured, b.Label = b.Measured.clean(), b.Label.clean()
	if b.OutSince != nil {
		since := utc(*b.OutSince)
		b.OutSince = &since
	}
	b.Price = copyOf(b.Price)
	b.Name, b.Note = tidy(b.Name), lines(b.Note)
	return b
}

func (b Bottle) withID(id string) Item { b.ID = id; return b }
func (b Bottle) links() []Ref          { return nil }

// Pour is an amount of an ingredient. The ingredient is the id of a catalogue profile or
// of something house-made.
type Pour struct {
	Ingredient string      `json:"ingredient"`
	Amount     float64     `json:"amount"`
	Unit       flavor.Unit `json:"unit"`
	After      bool        `json:"after,omitempty"` // added after the rest is mixed
	Heat       flavor.Heat `json:"heat,omitempty"`  // hot or cold, if the spec says so
}

// Made is a syrup or an infusion that the house makes. Its profile is computed from the
// recipe and never stored, so it is always up to date; measured values replace the
// computed ones.
type Made struct {
	ID      string       `json:"id"`
	Name    string       `json:"name"`
	Aliases []string     `json:"aliases,omitempty"`
	Class   flavor.Class `json:"class"`
	Parts   []Pour       `json:"parts"`
	Steeped []Steeped    `json:"steeped,omitempty"` // and strained out
	// YieldML is the volume of the finished batch, after straining or boiling down; 0
	// means the sum of the volumes of its parts.
	YieldML float64 `json:"yield_ml,omitempty"`
	Method  string  `json:"method,omitempty"`
	Measured
	KeepsDays int    `json:"keeps_days,omitempty"` // in the fridge, by the house's own rule; 0: not stated
	Note      string `json:"note,omitempty"`
}

// Ref returns the kind and id of the record.
func (m Made) Ref() Ref { return Ref{KindMade, m.ID} }

func (m Made) check() error {
	if !m.Class.Valid() {
		return oneOf("class", m.Class, flavor.Classes())
	}
	for _, a := range m.Aliases {
		if err := checkLine("alias", a, true); err != nil {
			return err
		}
	}
	return checks(
		checkLine("name", m.Name, true),
		checkPours("parts", m.Parts, m.ID),
		checkSteeped(m.Steeped),
		checkRange("yield_ml", m.YieldML, 0, 1e6),
		checkText("method", m.Method, MaxNote),
		m.Measured.check(),
		checkRange("keeps_days", float64(m.KeepsDays), 0, 3650),
		checkText("note", m.Note, MaxNote),
	)
}

func (m Made) clean() Item {
	m.Measured = m.Measured.clean()
	m.Aliases, m.Parts, m.Steeped = slices.Clone(m.Aliases), slices.Clone(m.Parts), slices.Clone(m.Steeped)
	for i := range m.Steeped {
		m.Steeped[i].Name = tidy(m.Steeped[i].Name)
	}
	for i, a := range m.Aliases {
		m.Aliases[i] = tidy(a)
	}
	m.Name, m.Method, m.Note = tidy(m.Name), lines(m.Method), lines(m.Note)
	return m
}

func (m Made) withID(id string) Item { m.ID = id; return m }
func (m Made) links() []Ref          { return nil }
