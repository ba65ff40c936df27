package drill

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"counterpour/flavor"
	"counterpour/flavor/drill/wording"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
)

// Card is one family on one page, for a new starter.
type Card struct {
	ID, Name string
	Source   string // of the ratio as it is handed down
	Ratio    string // as the trade says it, the largest part as 8
	Parts    []CardPart
	Examples []Example // three if there are so many, from the specs given before proven drinks
	Usual    string    // the two usual faults and how they taste
}

// CardPart is one part of a family's ratio.
type CardPart struct {
	Axis   ratio.Axis
	Handed float64 // the share that is handed down
	Fitted float64 // the share that proven drinks have
	// Low and High are how far this part alone may move, as factors of Fitted,
	// before the drink leaves the good drinks of the family.
	Low, High float64
}

// Example is a drink of the family.
type Example struct {
	Spec   flavor.Spec
	Score  float64
	Proven bool // a proven drink, where too few specs were given
}

const cardExamples = 3

// Card makes the card of a family: its ratio and range, the three of the specs
// given that belong to it and sit best in it, and its two usual faults. Where
// there are fewer than three, the proven drinks that sit best fill the gap. It
// fails with a fault if the family is not known, or if one of its specs cannot
// be scored.
func (t *Trainer) Card(family string, specs []template.Labelled) (*Card, error) {
	families, fitted := t.set.Families()
	at := slices.IndexFunc(families, func(f template.Family) bool { return f.ID == family })
	if at < 0 {
		return nil, unknownFamily(family, families)
	}
	f := &families[at]
	c := &Card{ID: f.ID, Name: f.Name, Source: f.Source, Usual: f.Usual}
	centre, err := t.set.Centre(family)
	if err != nil {
		return nil, err
	}
	ranges, err := rangesOf(centre, &fitted[at])
	if err != nil {
		return nil, err
	}
	var all float64
	for _, v := range f.Ratio {
		all += v
	}
	var shown ratio.Equivalents
	for k, a := range f.Axes {
		shown[a] = centre[k]
		c.Parts = append(c.Parts, CardPart{Axis: a, Handed: f.Ratio[k] / all, Fitted: centre[k], Low: math.Exp(-ranges[k]), High: math.Exp(ranges[k])})
	}
	c.Ratio = wording.Ratio(&shown, shareFloor)
	c.Examples, err = t.examples(family, specs)
	return c, err
}

// unknownFamily is the fault of a family that there is not.
func unknownFamily(id string, known []template.Family) *flavor.DataFault {
	ids := make([]string, len(known))
	for i := range known {
		ids[i] = known[i].ID
	}
	return &flavor.DataFault{Kind: flavor.ErrUnknown, Location: "family", Value: id,
		Message: fmt.Sprintf("%q is not a family known here; use %s", id, flavor.JoinOr(ids))}
}

// examples are the specs that sit best in the family, and after them the proven
// drinks that do and have another name.
func (t *Trainer) examples(family string, specs []template.Labelled) ([]Example, error) {
	own, err := t.best(family, specs)
	if err != nil {
		return nil, err
	}
	var classics []template.Labelled
	for _, c := range t.classics {
		if !c.own && !slices.ContainsFunc(own, func(x Example) bool { return x.Spec.Name == c.spec.Name }) {
			classics = append(classics, template.Labelled{Spec: c.spec, Family: c.family})
		}
	}
	more, err := t.best(family, classics)
	for i := range more {
		more[i].Proven = true
	}
	own = append(own, more...)
	return own[:min(len(own), cardExamples)], err
}

// best are the drinks of a family, the best score first.
func (t *Trainer) best(family string, specs []template.Labelled) ([]Example, error) {
	var out []Example
	for i := range specs {
		if specs[i].Family != family {
			continue
		}
		score, err := t.judge.ScoreOnly(&specs[i].Spec)
		if err != nil {
			return nil, err
		}
		out = append(out, Example{Spec: specs[i].Spec, Score: score})
	}
	slices.SortStableFunc(out, func(a, b Example) int { return cmp.Compare(b.Score, a.Score) })
	return out, nil
}

// rangesOf returns how far the logarithm of each part may move by itself. A move t along
// a part's row v of the basis has the squared distance t² vᵀS⁻¹v. The drink is balanced
// up to the edge from which the score counts a slip of one part; its square is held
// against that distance.
func rangesOf(centre []float64, f *template.Fitted) ([]float64, error) {
	k := len(f.Centre)
	basis, err := ratio.NewBasis(len(centre))
	if err != nil {
		return nil, err
	}
	var chol mat.Cholesky
	if !chol.Factorize(mat.NewSymDense(k, slices.Clone(f.Scale))) {
		return nil, fmt.Errorf("drill: family %q: its fitted scale is not positive definite; fit the families again", f.ID)
	}
	edge := f.SlipEdge()
	from, err := basis.Coordinates(centre)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(centre))
	for i := range centre {
		moved := slices.Clone(centre)
		moved[i] *= math.E
		to, err := basis.Coordinates(moved)
		if err != nil {
			return nil, err
		}
		row := mat.NewVecDense(k, nil)
		for j := range to {
			row.SetVec(j, to[j]-from[j])
		}
		var solved mat.VecDense
		if err := chol.SolveVecTo(&solved, row); err != nil {
			return nil, fmt.Errorf("drill: family %q: %w", f.ID, err)
		}
		out[i] = math.Sqrt(edge / mat.Dot(row, &solved))
	}
	return out, nil
}
