package kitchen

import (
	"fmt"

	"counterpour/api/service/fault"
	"counterpour/flavor"
)

// Of says what kind of things a likeness compares.
type Of string

// Names are looked up first among the kind asked for, then among the other.
const (
	OfIngredients Of = "ingredients"
	OfMaterials   Of = "materials"
)

// MaxLikened is the largest number of names in one request.
const MaxLikened = 200

// LikenessRequest asks how alike the smells of things are.
type LikenessRequest struct {
	Of          Of
	Names       []string // up to MaxLikened names, aliases, ids or misspellings
	SkipUnknown bool     // leave unknown names out instead of failing
}

// Likeness is how alike the smells of things are.
type Likeness struct {
	Names   []Likened
	Unknown []string // as written in the request
	// Aroma is a symmetric matrix of likenesses, 0 to 1, in the order of Names.
	Aroma [][]float64
}

// Likened is a name from the request and what it was read as.
type Likened struct {
	Asked, ID, Name string // the id of a material is its name
}

// Likeness works out how alike the smells of things are. An unknown name is a fault with
// suggestions, unless SkipUnknown is set.
func (k *Kitchen) Likeness(r LikenessRequest) (*Likeness, error) {
	var faults flavor.DataFaults
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
		case r.SkipUnknown && flavor.DataFaultsOf(err) != nil:
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

// smelt looks a name or an alias up, first among the kind asked for, then among the other
// kind, and at last as a misspelt ingredient.
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

// pure returns a profile that smells of one material.
func pure(material string) *flavor.Profile {
	return &flavor.Profile{ID: material, Name: material, Materials: []flavor.MaterialShare{{Material: material, Intensity: 1}}}
}
