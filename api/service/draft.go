package service

import (
	"fmt"
	"slices"
	"strings"

	"counterpour/api/service/fault"
	"counterpour/api/service/kitchen"
	"counterpour/flavor"
)

// Draft is a spec in a request. Exactly one of its fields is set.
type Draft struct {
	Text   *string         // free text
	Fields *kitchen.Fields // in fields
	Drink  *string         // name or slug of a drink of the house
	Spec   *flavor.Spec    // already read
}

// Read reads a draft. Faults of a text name the line; those of fields, the place under
// "spec". A drink whose strength, sweetness, acid, bitterness and length are all zero is
// a fault.
func (s *Snapshot) Read(d Draft) (flavor.Spec, error) {
	spec, err := s.readAny(d)
	if err != nil {
		return flavor.Spec{}, err
	}
	if err := kitchen.CheckWeight(&spec); err != nil {
		return flavor.Spec{}, err
	}
	return spec, nil
}

func (s *Snapshot) readAny(d Draft) (flavor.Spec, error) {
	given := 0
	for _, is := range []bool{d.Text != nil, d.Fields != nil, d.Drink != nil, d.Spec != nil} {
		if is {
			given++
		}
	}
	switch {
	case given > 1 && d.Drink != nil:
		return flavor.Spec{}, flavor.Invalid("", "", "a drink of the house and a draft are both given; send one of them")
	case given > 1:
		return flavor.Spec{}, flavor.Invalid("", "", "text and spec are both given; send one of them")
	case d.Text != nil:
		return s.ReadText(*d.Text)
	case d.Fields != nil:
		return s.ReadFields(d.Fields)
	case d.Spec != nil:
		return *d.Spec, nil
	case d.Drink != nil:
		found, err := s.Drink(*d.Drink)
		return found.Spec, fault.At("drink", err)
	}
	return flavor.Spec{}, flavor.Invalid("", "", "there is no draft; send it as text, or in fields as spec")
}

// poured returns the drink of the house that a draft names; else what it reads as, without a slug.
func (s *Snapshot) poured(d Draft) (Drink, error) {
	if d.Drink != nil && d.Text == nil && d.Fields == nil && d.Spec == nil {
		found, err := s.Drink(*d.Drink)
		return found, fault.At("drink", err)
	}
	spec, err := s.Read(d)
	return Drink{Spec: spec}, err
}

// menu returns the drinks sent with a request, or the menu of the house if sent is nil.
// Its faults are placed under "specs".
func (s *Snapshot) menu(sent []kitchen.Fields) (specs []*flavor.Spec, err error) {
	if sent == nil {
		for i := range s.Menu {
			specs = append(specs, &s.Menu[i].Spec)
		}
		return specs, nil
	}
	var faults flavor.DataFaults
	for i := range sent {
		spec, err := s.Read(Draft{Fields: &sent[i]})
		err = fault.Placed(err, func(l string) string { return fmt.Sprintf("specs[%d]%s", i, strings.TrimPrefix(l, "spec")) })
		if err := fault.Collect(&faults, err); err != nil {
			return nil, err
		}
		specs = append(specs, &spec)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return specs, nil
}

// mostSuggested is how many drinks are suggested for an unknown name.
const mostSuggested = 3

// Drink finds a drink of the house by its name or slug. An unknown name is a fault of
// kind [flavor.ErrUnknown] that suggests drinks with a word that begins with the same
// letters.
func (s *Snapshot) Drink(name string) (Drink, error) {
	key := flavor.NormaliseName(name)
	for i := range s.Menu {
		if d := s.Menu[i]; d.Slug == name || flavor.NormaliseName(d.Spec.Name) == key {
			return d, nil
		}
	}
	f := &flavor.DataFault{Kind: flavor.ErrUnknown, Value: name,
		Message: fmt.Sprintf("%q is no drink of the house; write one as the menu names it", fault.Quotable(name))}
	for i := range s.Menu {
		if called := s.Menu[i].Spec.Name; len(f.Suggest) < mostSuggested && beginAlike(key, flavor.NormaliseName(called)) {
			f.Suggest = append(f.Suggest, called)
		}
	}
	if len(f.Suggest) > 0 {
		f.Message += "; nearest: " + strings.Join(f.Suggest, ", ")
	}
	return Drink{}, f
}

// beginAlike reports whether a word of a and a word of b begin with the same three
// letters.
func beginAlike(a, b string) bool {
	const alike = 3
	return slices.ContainsFunc(strings.Fields(a), func(word string) bool {
		letters := []rune(word)
		return len(letters) >= alike && slices.ContainsFunc(strings.Fields(b), func(other string) bool {
			return strings.HasPrefix(other, string(letters[:alike]))
		})
	})
}

// Drinks finds drinks of the house by name or slug; all of them if names is empty. Its
// faults are placed under "drinks".
func (s *Snapshot) Drinks(names []string) ([]Drink, error) {
	if len(names) == 0 {
		return s.Menu, nil
	}
	var out []Drink
	var faults flavor.DataFaults
	for i, name := range names {
		d, err := s.Drink(name)
		if err := fault.Collect(&faults, fault.At(fmt.Sprintf("drinks[%d]", i), err)); err != nil {
			return nil, err
		}
		out = append(out, d)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}
