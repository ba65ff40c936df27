package house

import (
	"fmt"
	"slices"

	"counterpour/flavor"
)

// Name is the house's own word for an ingredient, such as the name on a bottle's label.
type Name struct {
	ID         string `json:"id"`
	Written    string `json:"written"`
	Ingredient string `json:"ingredient"` // id of a catalogue profile or of something house-made
}

// Ref returns the kind and id of the record.
func (n Name) Ref() Ref { return Ref{KindName, n.ID} }

func (n Name) check() error {
	err := checks(checkLine("written", n.Written, true), CheckID(n.Ingredient))
	if err == nil && flavor.NormaliseName(n.Written) == "" {
		return invalid("written", n.Written, "written %q has no letter or digit to be known by", n.Written)
	}
	return err
}

func (n Name) clean() Item           { n.Written = tidy(n.Written); return n }
func (n Name) withID(id string) Item { n.ID = id; return n }
func (n Name) links() []Ref          { return nil }

// NameProfiles adds the house's own words to profiles as aliases. The result has the
// order of profiles; profiles without a word are shared, and the arguments do not change.
// A word for an unknown ingredient, or one that means another ingredient already, is left
// out and returned as an error.
func NameProfiles(profiles []*flavor.Profile, names []Name) ([]*flavor.Profile, []error) {
	if len(names) == 0 {
		return profiles, nil
	}
	shelf, out := NewShelf(profiles), slices.Clone(profiles)
	o := &overlay{shelf: shelf}
	own := map[string]bool{}
	for _, n := range names {
		i := slices.IndexFunc(out, func(p *flavor.Profile) bool { return p.ID == n.Ingredient })
		if i < 0 {
			o.report(n, fmt.Errorf("there is no ingredient %q for %q to mean", n.Ingredient, n.Written))
			continue
		}
		if other, taken := shelf.byName[flavor.NormaliseName(n.Written)]; taken && other.ID != n.Ingredient {
			o.report(n, fmt.Errorf("%q means %s already, and cannot mean %s too", n.Written, other.Name, out[i].Name))
			continue
		}
		if !own[n.Ingredient] {
			c := *out[i]
			c.Aliases = slices.Clone(c.Aliases)
			out[i], own[n.Ingredient] = &c, true
		}
		out[i].Aliases = append(out[i].Aliases, n.Written)
	}
	return out, o.faults
}
