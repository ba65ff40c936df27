package service

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"counterpour/flavor"
	"counterpour/flavor/measure/draft"
	"counterpour/flavor/measure/draft/reading"
	"counterpour/flavor/measure/draft/serving"
	"counterpour/flavor/ratio"
)

// Draft is a spec as it comes in. One of its parts is given.
type Draft struct {
	Text   *string      // as a bartender writes it down
	Fields *Fields      // in fields
	Drink  *string      // a drink of the house, by its name or slug
	Spec   *flavor.Spec // read already
}

// Fields is a spec in fields. What is left out of method and service is assumed
// as in a text.
type Fields struct {
	Name, Method, Service string
	Pours                 []Line
	HotC                  float64 // °C of a hot drink; zero: not stated
	Glass, Garnish, Rim   string
	Steps                 []string
}

// Line is one pour in fields; without a unit it is in pieces. ID, Name and ML
// say it again, as answers do, and must agree with the rest where they are given.
type Line struct {
	Ingredient string // name, alias or id; empty for what ID or Name says
	Amount     float64
	Unit       string
	ID         string
	Name       string
	ML         float64
	After      bool // goes in once the rest is mixed
}

// called returns the name that the ingredient is looked up by.
func (l *Line) called() string { return cmp.Or(l.Ingredient, l.ID, l.Name) }

// sameML is how far the millilitres of a line may lie from what amount and unit
// give, as a share: what was rounded for an answer reads back.
const sameML = 0.01

// check finds what a line says twice and not alike.
func (s *Snapshot) check(l *Line, pour *flavor.Pour, place string) (faults flavor.Faults) {
	if l.ID != "" && l.ID != pour.Profile.ID {
		faults = append(faults, flavor.Invalid(place+".id", l.ID, "%q is not the id of %s, which is %q; leave it out", Quotable(l.ID), pour.Profile.Name, pour.Profile.ID))
	}
	if p, _, err := s.Index.Resolve(l.Name); l.Name != "" && (err != nil || p.ID != pour.Profile.ID) {
		faults = append(faults, flavor.Invalid(place+".name", Quotable(l.Name), "%q is not the same ingredient as %s; leave it out", Quotable(l.Name), pour.Profile.Name))
	}
	if l.ML != 0 && !(math.Abs(l.ML-pour.ML) <= max(sameML, sameML*pour.ML)) {
		faults = append(faults, flavor.Invalid(place+".ml", l.ML, "%v %s of %s are %.2f mL and not %v; leave ml out", pour.Amount, pour.Unit, pour.Profile.Name, pour.ML, l.ML))
	}
	return faults
}

// Read reads a draft. Faults of a text name the line; those of fields the place
// under "spec". A drink without anything to weigh is a fault.
func (s *Snapshot) Read(d Draft) (flavor.Spec, error) {
	spec, err := s.readAny(d)
	if err != nil {
		return flavor.Spec{}, err
	}
	var total float64
	for _, v := range ratio.EquivalentsOf(&spec) {
		total += v
	}
	if !(total > 0) {
		return flavor.Spec{}, flavor.Invalid("", "", "the drink has no strength, sweetness, acid, bitterness or length to weigh; add a pour that has")
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
		return s.readFields(d.Fields)
	case d.Spec != nil:
		return *d.Spec, nil
	case d.Drink != nil:
		found, err := s.Drink(*d.Drink)
		return found.Spec, at("drink", err)
	}
	return flavor.Spec{}, flavor.Invalid("", "", "there is no draft; send it as text, or in fields as spec")
}

// ReadText reads a spec as text, whether there is anything to weigh in it or
// not. Its faults name line and word.
func (s *Snapshot) ReadText(text string) (flavor.Spec, error) {
	spec, err := reading.Read(text, s.Index)
	if err != nil {
		return flavor.Spec{}, err
	}
	return spec, nil
}

// ReadPart reads what can be read of a text, and says what cannot, by line. Its
// error is not the text's: the index does not answer.
func (s *Snapshot) ReadPart(text string) (spec flavor.Spec, missed flavor.Faults, err error) {
	r, err := reading.Resolve(draft.Parse(text), s.Index)
	if err != nil {
		return flavor.Spec{}, nil, err
	}
	return r.Spec, r.Faults, nil
}

// readFields makes a spec of fields, with the checks and the assumptions of a
// text.
func (s *Snapshot) readFields(in *Fields) (flavor.Spec, error) {
	var faults flavor.Faults
	out := flavor.Spec{Name: strings.Join(strings.Fields(in.Name), " "), HotC: in.HotC,
		Glass: in.Glass, Garnish: in.Garnish, Rim: in.Rim, Steps: slices.Clone(in.Steps)}
	if strings.ContainsFunc(out.Name, unicode.IsControl) {
		faults = append(faults, flavor.Invalid("spec.name", in.Name, "the name holds a control character; delete it"))
	}
	if len(in.Pours) == 0 {
		faults = append(faults, flavor.Invalid("spec.pours", "", "there is no pour here; give at least one, such as 2 oz London dry gin"))
	}
	if len(in.Pours) > draft.MaxPours {
		return flavor.Spec{}, flavor.Invalid("spec.pours", "", "these are more than %d pours; leave some out", draft.MaxPours)
	}
	for i := range in.Pours {
		l, place := &in.Pours[i], fmt.Sprintf("spec.pours[%d]", i)
		pour, err := reading.ResolvePour(l.Amount, l.Unit, l.called(), place, s.Index)
		if err == nil {
			faults = append(faults, s.check(l, &pour, place)...)
		} else if err := collect(&faults, err); err != nil {
			return flavor.Spec{}, err
		}
		pour.After = pour.After || l.After
		out.Pours = append(out.Pours, pour)
	}
	var ok bool
	if out.Method, ok = serving.ParseMethod(in.Method); !ok && strings.TrimSpace(in.Method) != "" {
		faults = append(faults, unknownWord("spec.method", in.Method, "method", flavor.Methods()))
	}
	if out.Service, ok = serving.ParseService(in.Service); !ok && strings.TrimSpace(in.Service) != "" {
		faults = append(faults, unknownWord("spec.service", in.Service, "service", flavor.Services()))
	}
	if len(faults) > 0 {
		return flavor.Spec{}, faults
	}
	return reading.Assume(out), nil
}

func unknownWord[T ~string](location, word, what string, known []T) *flavor.Fault {
	f := flavor.Invalid(location, word, "%q is no %s; use %s", Quotable(word), what, flavor.JoinOr(words(known)))
	f.Suggest = serving.NearestMethods(word)
	return f
}

func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// menu returns the drinks of a request: those sent, or the house's. Its faults
// are placed under "specs".
func (s *Snapshot) menu(sent []Fields) (specs []*flavor.Spec, err error) {
	if sent == nil {
		for i := range s.Menu {
			specs = append(specs, &s.Menu[i].Spec)
		}
		return specs, nil
	}
	var faults flavor.Faults
	for i := range sent {
		spec, err := s.Read(Draft{Fields: &sent[i]})
		err = placed(err, func(l string) string { return fmt.Sprintf("specs[%d]%s", i, strings.TrimPrefix(l, "spec")) })
		if err := collect(&faults, err); err != nil {
			return nil, err
		}
		specs = append(specs, &spec)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return specs, nil
}

// mostSuggested is how many drinks are named where one was misnamed.
const mostSuggested = 3

// Drink finds a drink of the house by its name or slug. A name that no drink has
// is a fault of kind [flavor.ErrUnknown] that suggests those with a word that
// begins alike.
func (s *Snapshot) Drink(name string) (Drink, error) {
	key := flavor.NormaliseName(name)
	for i := range s.Menu {
		if d := s.Menu[i]; d.Slug == name || flavor.NormaliseName(d.Spec.Name) == key {
			return d, nil
		}
	}
	f := &flavor.Fault{Kind: flavor.ErrUnknown, Value: name,
		Message: fmt.Sprintf("%q is no drink of the house; write one as the menu names it", Quotable(name))}
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

// beginAlike reports whether a word of one name and one of the other begin with
// the same three letters.
func beginAlike(a, b string) bool {
	const alike = 3
	return slices.ContainsFunc(strings.Fields(a), func(word string) bool {
		letters := []rune(word)
		return len(letters) >= alike && slices.ContainsFunc(strings.Fields(b), func(other string) bool {
			return strings.HasPrefix(other, string(letters[:alike]))
		})
	})
}

// Drinks finds drinks of the house by name or slug; all of them if none is
// named. Its faults are placed under "drinks".
func (s *Snapshot) Drinks(names []string) ([]Drink, error) {
	if len(names) == 0 {
		return s.Menu, nil
	}
	var out []Drink
	var faults flavor.Faults
	for i, name := range names {
		d, err := s.Drink(name)
		if err := collect(&faults, at(fmt.Sprintf("drinks[%d]", i), err)); err != nil {
			return nil, err
		}
		out = append(out, d)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return out, nil
}
