package data

import (
	"embed"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"counterpour/flavor"
)

//go:embed sense/senses.toml
var sensed embed.FS

const sensesFile = "sense/senses.toml"

type sensesSchema struct {
	Version     int               `toml:"version"`
	Pigments    map[string]string `toml:"pigments"`
	Materials   map[string]string `toml:"materials"`
	Classes     map[string]string `toml:"classes"`
	Ingredients map[string]string `toml:"ingredients"`
}

// senseTable says how ingredients affect the senses that their records do not state.
type senseTable struct {
	materials   map[string]sensing
	classes     map[flavor.Class]takes
	ingredients map[string]sensing
}

// sensing is a line of the table: quantities, and which of them it sets.
type sensing struct {
	senses flavor.Senses
	named  map[string]bool
}

// takes is the share of its materials' effects that a class gets: of colour, savour and
// dryness; of cloud and foam; of bite.
type takes struct {
	colour, cloud, bite float64
	own                 sensing
}

// maxSense is the limit of any quantity; a larger number is a mistake.
const maxSense = 2000

func loadSenses() (*senseTable, error) {
	var f sensesSchema
	if err := decodeStrict(sensed, sensesFile, &f); err != nil {
		return nil, err
	}
	if f.Version != FormatVersion {
		return nil, fmt.Errorf("data: %s: version is %d; this program reads version %d", sensesFile, f.Version, FormatVersion)
	}
	pigments := map[string]flavor.Colour{}
	var faults []error
	report := func(place string, err error) {
		if err != nil {
			faults = append(faults, fmt.Errorf("data: %s: %s: %w", sensesFile, place, err))
		}
	}
	for _, name := range sortedKeys(f.Pigments) {
		bands, err := parseNumbers(f.Pigments[name], 3)
		report("pigment "+name, err)
		if err == nil {
			pigments[name] = flavor.Colour{Red: bands[0], Green: bands[1], Blue: bands[2]}
		}
	}
	t := &senseTable{materials: map[string]sensing{}, classes: map[flavor.Class]takes{}, ingredients: map[string]sensing{}}
	read := func(lines map[string]string, what string, into map[string]sensing) {
		for _, name := range sortedKeys(lines) {
			s, err := parseSensing(lines[name], pigments)
			report(what+" "+name, err)
			into[name] = s
		}
	}
	read(f.Materials, "material", t.materials)
	read(f.Ingredients, "ingredient", t.ingredients)
	for _, name := range sortedKeys(f.Classes) {
		class := flavor.Class(name)
		k, err := parseTakes(f.Classes[name], pigments)
		if err == nil && !class.Valid() {
			err = fmt.Errorf("is not a class; use one of %v", flavor.Classes())
		}
		report("class "+name, err)
		t.classes[class] = k
	}
	return t, errors.Join(faults...)
}

// parseTakes reads "takes colour cloud bite; quantity amount; …".
func parseTakes(text string, pigments map[string]flavor.Colour) (takes, error) {
	first, rest, more := strings.Cut(text, ";")
	first, ok := strings.CutPrefix(first, "takes ")
	if !ok {
		return takes{}, fmt.Errorf("%q must begin with takes and three shares: of colour, of cloud, of bite", text)
	}
	shares, err := parseNumbers(first, 3)
	if err != nil {
		return takes{}, err
	}
	k := takes{colour: shares[0], cloud: shares[1], bite: shares[2]}
	if more {
		k.own, err = parseSensing(rest, pigments)
	}
	return k, err
}

// colourName marks in sensing that a line sets the colour.
const colourName = "colour"

// parseSensing reads "quantity amount; …".
func parseSensing(text string, pigments map[string]flavor.Colour) (sensing, error) {
	s := sensing{named: map[string]bool{}}
	for item := range strings.SplitSeq(text, ";") {
		item = strings.TrimSpace(item)
		if item == "clear" {
			s.named[colourName] = true
			continue
		}
		name, amount, _ := strings.Cut(item, " ")
		numbers, err := parseNumbers(amount, 1)
		if err != nil {
			return s, fmt.Errorf("%q: %w", item, err)
		}
		if pigment, ok := pigments[name]; ok {
			s.named[colourName] = true
			c := &s.senses.Colour
			c.Red += numbers[0] * pigment.Red
			c.Green += numbers[0] * pigment.Green
			c.Blue += numbers[0] * pigment.Blue
			continue
		}
		into, ok := fieldOf(&s.senses, name)
		if !ok || s.named[name] {
			return s, fmt.Errorf("%q: the quantity is not known or is named twice; use %s, clear or a pigment", item, strings.Join(quantities[:], ", "))
		}
		*into, s.named[name] = numbers[0], true
	}
	return s, nil
}

// quantities are the quantities of a line, except the colour.
var quantities = [...]string{"umami", "pungent", "cooling", "astringent", "carbonation", "foam", "cloud"}

// fieldOf returns a pointer to the quantity with a name.
func fieldOf(s *flavor.Senses, name string) (*float64, bool) {
	switch name {
	case "umami":
		return &s.UmamiGPerL, true
	case "pungent":
		return &s.PungentMGPerL, true
	case "cooling":
		return &s.CoolingMGPerL, true
	case "astringent":
		return &s.AstringentGPerL, true
	case "carbonation":
		return &s.CarbonationGPerL, true
	case "foam":
		return &s.FoamGPerL, true
	case "cloud":
		return &s.Colour.Cloud, true
	}
	return nil, false
}

// parseNumbers reads n numbers, each from 0 to maxSense.
func parseNumbers(text string, n int) ([]float64, error) {
	fields := strings.Fields(text)
	if len(fields) != n {
		return nil, fmt.Errorf("%q holds %d numbers; there must be %d", text, len(fields), n)
	}
	out := make([]float64, n)
	for i, f := range fields {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil || math.IsNaN(v) || v < 0 || v > maxSense {
			return nil, fmt.Errorf("%q must be a number from 0 to %d", f, maxSense)
		}
		out[i] = v
	}
	return out, nil
}

// apply sets the senses of a profile whose materials are known.
func (t *senseTable) apply(p *flavor.Profile) {
	k := t.classes[p.Class]
	out := k.own.senses
	for _, m := range p.Materials {
		given := t.materials[m.Material].senses
		taken := flavor.Senses{
			UmamiGPerL: k.colour * given.UmamiGPerL, AstringentGPerL: k.colour * given.AstringentGPerL,
			PungentMGPerL: k.bite * given.PungentMGPerL, CoolingMGPerL: given.CoolingMGPerL,
			CarbonationGPerL: given.CarbonationGPerL, FoamGPerL: k.cloud * given.FoamGPerL,
			Colour: flavor.Colour{Red: k.colour * given.Colour.Red, Green: k.colour * given.Colour.Green,
				Blue: k.colour * given.Colour.Blue, Cloud: k.cloud * given.Colour.Cloud},
		}
		out = out.Plus(&taken, m.Intensity)
	}
	if own, ok := t.ingredients[p.ID]; ok {
		own.replace(&out)
	}
	if p.Tannin.Origin != "" {
		out.AstringentGPerL = tannicPerTannin * p.Tannin.Value
	}
	if !p.Carbonated {
		out.CarbonationGPerL = 0
	} else if out.CarbonationGPerL == 0 {
		out.CarbonationGPerL = usualCarbonation
	}
	p.Senses = out
}

// tannicPerTannin is the mass of tannic acid that is as astringent as a unit of mass of
// tea tannin. From memory.
const tannicPerTannin = 0.5

// usualCarbonation is the CO₂ of a sparkling ingredient of a class without a value of its
// own, in g/L.
const usualCarbonation = 6.0

// replace overwrites the quantities that a line sets.
func (s *sensing) replace(into *flavor.Senses) {
	if s.named[colourName] {
		c := &into.Colour
		c.Red, c.Green, c.Blue = s.senses.Colour.Red, s.senses.Colour.Green, s.senses.Colour.Blue
	}
	for _, name := range quantities {
		if !s.named[name] {
			continue
		}
		from, _ := fieldOf(&s.senses, name)
		to, _ := fieldOf(into, name)
		*to = *from
	}
}
