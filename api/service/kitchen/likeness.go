package kitchen

import (
	"fmt"

	"counterpour/api/service/fault"
	"counterpour/flavor"
)

// Of is what a likeness is asked of.
type Of string

// A likeness of ingredients takes each name for a bottle first, one of materials
// for what aromas are made of.
const (
	OfIngredients Of = "ingredients"
	OfMaterials   Of = "materials"
)

// MaxLikened is the most names of one request.
const MaxLikened = 200

// LikenessRequest asks how alike things smell.
type LikenessRequest struct {
	Of          Of
	Names       []string // up to MaxLikened; names, aliases, ids, near forms
	SkipUnknown bool     // leave out what is not known, instead of failing
}

// Likeness is how alike things smell.
type Likeness struct {
	Names   []Likened
	Unknown []string // as they were asked
	// Aroma holds 0 to 1 for each two of Names, in their order; symmetric.
	Aroma [][]float64
}

// Likened is a name and what it was taken for.
type Likened struct {
	Asked, ID, Name string // a material's id is its name
}

// Likeness works out how alike things smell. An unknown name is a fault that
// suggests the nearest, unless unknown names are skipped.
func (k *Kitchen) Likeness(r LikenessRequest) (*Likeness, error) {
	var faults flavor.Faults
	if fault.InRange(&faults, "names", len(r.Names), 1, MaxLikened); len(faults) > 0 {
		return nil, faults
	}
	out := &Likeness{}
	var profiles []*flavor.Profile
	for i, asked := range r.Names {
		p, err := k.smelt(r.Of, asked)
		switch {
		case err == nil:
			out.Names = append(out.Names, Likened{asked, p.ID, p.Name})
			profiles = append(profiles, p)
		case r.SkipUnknown && flavor.FaultsOf(err) != nil:
			out.Unknown = append(out.Unknown, asked)
		default:
			if err := fault.Collect(&faults, fault.At(fmt.Sprintf("names[%d]", i), err)); err != nil {
				return nil, err
			}
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	out.Aroma = k.Catalogue.Space().LikenessTable(profiles)
	return out, nil
}

// smelt finds what is to be smelt: by its name or an alias, of the kind that was
// asked before the other kind; then an ingredient by a slip of the pen.
func (k *Kitchen) smelt(of Of, asked string) (*flavor.Profile, error) {
	material, isMaterial := k.Catalogue.Space().Resolve(asked)
	if isMaterial && of == OfMaterials {
		return pure(material), nil
	}
	p, match, err := k.Index.Resolve(asked)
	if isMaterial && (err != nil || match.How == flavor.MatchFuzzy) {
		return pure(material), nil
	}
	return p, err
}

// pure is a profile that smells of one material.
func pure(material string) *flavor.Profile {
	return &flavor.Profile{ID: material, Name: material, Materials: []flavor.MaterialShare{{Material: material, Intensity: 1}}}
}
