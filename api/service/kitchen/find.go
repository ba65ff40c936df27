package kitchen

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"counterpour/api/service/fault"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
	"counterpour/flavor/sense"
)

// Ingredients are those of a catalogue, and the index that finds them.
type Ingredients struct {
	Catalogue *data.Catalogue
	Index     Index
}

// Close releases the index.
func (k *Ingredients) Close() error { return k.Index.Close() }

// FindRequest asks for ingredients. An ingredient must meet every condition that is set.
type FindRequest struct {
	Text      string
	Class     string
	Family    string
	BitterMin *float64 // mg/L, as quinine
	ABVMax    *float64 // % vol
	Avoid     []string
	Like      string // id of an ingredient; sorts the hits by their distance from it
	Limit     int    // 1 to lookup.MaxLimit
}

// Find finds ingredients. Its faults name the field.
func (k *Ingredients) Find(ctx context.Context, r FindRequest) (*lookup.Result, error) {
	q := lookup.Query{Text: r.Text, Class: flavor.Class(r.Class), BitterMin: r.BitterMin, ABVMax: r.ABVMax, Like: r.Like, Limit: r.Limit,
		Measure: k.steps}
	var faults flavor.DataFaults
	fault.InRange(&faults, "limit", r.Limit, 1, lookup.MaxLimit)
	if r.Family != "" {
		family, ok := flavor.ParseAromaFamily(r.Family)
		if !ok {
			faults = append(faults, flavor.Invalid("family", r.Family, "%q is no aroma family; use %s", fault.Quotable(r.Family), flavor.JoinOr(FamilyIDs())))
		}
		q.Family = &family
	}
	var found flavor.DataFaults
	q.Avoid, found = Avoided(r.Avoid)
	faults = append(faults, found...)
	if len(faults) > 0 {
		return nil, faults
	}
	result, err := k.Index.Search(ctx, q)
	return &result, err
}

// Avoided reads the words for allergens that a guest must avoid: all that each may mean, each
// once.
func Avoided(words []string) ([]flavor.Allergen, flavor.DataFaults) {
	return avoided(words, flavor.AllergensMeant)
}

// AvoidedByGuest is Avoided where what is no allergen of the law may be avoided too, see
// [flavor.Substances].
func AvoidedByGuest(words []string) ([]flavor.Allergen, flavor.DataFaults) {
	return avoided(words, flavor.AvoidanceMeant)
}

func avoided(words []string, mean func(string) ([]flavor.Allergen, error)) (out []flavor.Allergen, faults flavor.DataFaults) {
	for i, w := range words {
		meant, err := mean(w)
		if err != nil {
			faults = append(faults, flavor.Invalid(fmt.Sprintf("avoid[%d]", i), w, "%s", err))
			continue
		}
		for _, a := range meant {
			if !slices.Contains(out, a) {
				out = append(out, a)
			}
		}
	}
	return out, faults
}

// steps returns a function that measures the distance of other ingredients from one, both
// tasted neat, in just-noticeable differences.
func (k *Ingredients) steps(of *flavor.Profile) func(*flavor.Profile) float64 {
	space := k.Catalogue.Space()
	neat := space.Neat(of)
	return func(other *flavor.Profile) float64 {
		d := sense.Between(neat, space.Neat(other))
		return d.Total()
	}
}

// FamilyIDs lists the ids of the aroma families.
func FamilyIDs() []string {
	all := flavor.AromaFamilies()
	out := make([]string, len(all))
	for i, f := range all {
		out[i] = f.ID
	}
	return out
}

// Named returns the ingredient that a name means. A misspelt name is not guessed at,
// since a single name has no context to confirm the guess: it is a fault of kind
// [flavor.ErrUnknown] with suggestions.
func (k *Ingredients) Named(name string) (*flavor.Profile, error) {
	p, m, err := k.Index.Resolve(name)
	if err == nil && m.How == flavor.MatchFuzzy {
		return nil, flavor.Unknown("", name, []string{p.Name}, "unknown ingredient %q; nearest: %s", fault.Quotable(name), p.Name)
	}
	return p, err
}

// Ingredient returns the profile with an id. An unknown id is a fault of kind
// [fault.ErrNotFound] at "path.id", with the nearest names as suggestions.
func (k *Ingredients) Ingredient(id string) (*flavor.Profile, error) {
	p, ok := k.Index.Profile(id)
	if ok {
		return p, nil
	}
	f := &flavor.DataFault{Kind: fault.ErrNotFound, Location: "path.id", Value: id, Message: fmt.Sprintf("no ingredient has the id %q", fault.Quotable(id))}
	p, _, err := k.Index.Resolve(id)
	var unknown *flavor.DataFault
	switch {
	case err == nil:
		f.Message += fmt.Sprintf("; %q is called %s", p.Name, p.ID)
		f.Suggest = []string{p.ID}
	case errors.As(err, &unknown):
		f.Message += "; the search lists what there is"
		f.Suggest = slices.Clone(unknown.Suggest)
		if len(f.Suggest) > 0 {
			f.Message += "; nearest: " + flavor.JoinOr(f.Suggest)
		}
	default:
		return nil, err
	}
	return nil, f
}
