package template

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/mat"

	"counterpour/flavor/ratio"
)

// Tuning holds the few constants that no conjugate rule gives. They were chosen
// by cross-validation over the proven drinks; the calibrate command prints the
// figures they were chosen by.
type Tuning struct {
	RatioDrinks  float64           // how many drinks the published ratio counts for
	SpreadDrinks float64           // how many drinks the usual spread counts for
	UsualSpread  ratio.Equivalents // log standard deviation of each part, over all families
	Bandwidth    float64           // of likeness, in 1 − cosine
	Twin         float64           // weight of a drink of the very same make-up, in drinks
	HabitWidth   float64           // the same, in asking what is poured at most
	Pull         float64           // weight of the family's centre against its relatives, in drinks
	ExcessWidth  float64           // share of the drink by which an absent axis may exceed its allowance
	Allowance    float64           // least allowance
	SignPenalty  float64           // how dear it is to leave the traditional signs
	FitWeight    float64           // how much the ratio speaks in telling families apart
}

// DefaultTuning returns the tuning that the program uses.
func DefaultTuning() Tuning {
	return Tuning{RatioDrinks: 8, SpreadDrinks: 20,
		UsualSpread: ratio.Equivalents{ratio.Strong: 0.17, ratio.Sweet: 0.24, ratio.Sour: 0.15, ratio.Bitter: 0.47, ratio.Long: 0.50},
		Bandwidth:   0.20, Twin: 4, HabitWidth: 0.25, Pull: 0.70, ExcessWidth: 0.33, Allowance: 0.12,
		SignPenalty: 0.014, FitWeight: 0.23}
}

// Learn fits every family from proven drinks. Drinks of a family that is not
// in families are an error, as is a family that does not check.
func Learn(families []Family, proven []Labelled, t Tuning) ([]Fitted, error) {
	known := map[string]bool{}
	for i := range families {
		if err := families[i].Check(); err != nil {
			return nil, err
		}
		known[families[i].ID] = true
	}
	for _, p := range proven {
		if !known[p.Family] {
			return nil, fmt.Errorf("template: proven drink %q is of family %q, which is not defined", p.Spec.Name, p.Family)
		}
	}
	lessons := LessonsOf(proven)
	out := make([]Fitted, len(families))
	for i := range families {
		f, err := fitFamily(&families[i], lessons, &t)
		if err != nil {
			return nil, err
		}
		out[i] = f
	}
	return out, fitSigns(families, out, lessons, &t, nil)
}

// fitFamily moves the centre from the ratio by the conjugate rule, and the
// spread from the usual one by what is left once each drink is held against
// its own relatives.
func fitFamily(f *Family, lessons []Lesson, t *Tuning) (Fitted, error) {
	basis, err := ratio.NewBasis(len(f.Axes))
	if err != nil {
		return Fitted{}, err
	}
	relatives, excess, err := RelativesOf(f, basis, lessons)
	if err != nil {
		return Fitted{}, err
	}
	prior, err := basis.Coordinates(f.lifted())
	if err != nil {
		return Fitted{}, fmt.Errorf("template: family %q: %w", f.ID, err)
	}
	k, n := len(prior), float64(len(relatives))
	centre := make([]float64, k)
	for j := range centre {
		centre[j] = t.RatioDrinks * prior[j]
		for _, r := range relatives {
			centre[j] += r.Coords[j]
		}
		centre[j] /= t.RatioDrinks + n
	}
	stray := make([][]float64, len(relatives))
	for i, r := range relatives {
		near := LocalMiddle(Middle{Coords: CoordsOf(centre)}, relatives, WeightFor(r.Kin, t), i, t)
		stray[i] = make([]float64, k)
		for a := range k {
			stray[i][a] = r.Coords[a] - near.Coords[a]
		}
	}
	freedom := t.SpreadDrinks + n
	scatter := robustScatter(usualScatter(f, basis, t), stray, t)
	spread := (1 + 1/(t.RatioDrinks+n)) / freedom
	for i := range scatter {
		scatter[i] *= spread
	}
	return Fitted{ID: f.ID, Drinks: len(relatives), Centre: centre, Scale: scatter, Freedom: freedom,
		Allowance: allowanceOf(f, excess, t)}, nil
}

// usualScatter is the scatter matrix that SpreadDrinks drinks of the usual
// spread would have, its parts straying independently.
func usualScatter(f *Family, basis *ratio.Basis, t *Tuning) []float64 {
	k := len(f.Axes) - 1
	s := make([]float64, k*k)
	for a := range k {
		for b := range k {
			for i, axis := range f.Axes {
				u := cmp.Or(f.Spread[axis], t.UsualSpread[axis])
				s[a*k+b] += t.SpreadDrinks * basis.Contrasts.At(i, a) * basis.Contrasts.At(i, b) * u * u
			}
		}
	}
	return s
}

// RelativesOf returns the proven drinks of a family with their coordinates in its basis,
// and what share each gives to every axis. It fails where one lacks a part that the
// logarithm needs.
func RelativesOf(f *Family, basis *ratio.Basis, lessons []Lesson) (relatives []Relative, shares []ratio.Equivalents, err error) {
	for i := range lessons {
		l := &lessons[i]
		if l.Drink.Family != f.ID {
			continue
		}
		parts, share, err := ratio.PartsOf(f.Axes, &l.Equivalents)
		if err != nil {
			return nil, nil, fmt.Errorf("template: proven drink %q: %w", l.Drink.Spec.Name, err)
		}
		z, err := basis.Coordinates(parts)
		if err != nil {
			return nil, nil, fmt.Errorf("template: proven drink %q: %w", l.Drink.Spec.Name, err)
		}
		relatives = append(relatives, Relative{At: i, Kin: &l.Kin, Coords: CoordsOf(z), Size: l.size})
		shares = append(shares, share)
	}
	return relatives, shares, nil
}

// allowanceOf returns, for each axis, the share that nine in ten of the
// family's drinks stay below.
func allowanceOf(f *Family, shares []ratio.Equivalents, t *Tuning) ratio.Equivalents {
	var out ratio.Equivalents
	for a := range out {
		if slices.Contains(f.Axes, ratio.Axis(a)) {
			continue
		}
		column := make([]float64, 0, len(shares))
		for _, s := range shares {
			column = append(column, s[a])
		}
		slices.Sort(column)
		out[a] = t.Allowance
		if len(column) > 0 {
			out[a] = max(out[a], column[(9*len(column)-1)/10])
		}
	}
	return out
}

// oddFreedom is the degrees of freedom of the strays of a family's drinks: a few
// odd ones must not widen what the others say.
const oddFreedom = 6.0

// robustScatter adds the strays of drinks to a prior scatter matrix, each weighted
// by (ν + k) ÷ (ν + d²), its squared distance d² in what the others span: the
// estimate of a multivariate t by iterated weights (Lange, Little and Taylor, J Am
// Stat Assoc 84:881, 1989).
func robustScatter(prior []float64, stray [][]float64, t *Tuning) []float64 {
	if len(stray) == 0 {
		return prior
	}
	k := len(stray[0])
	weights := make([]float64, len(stray))
	for i := range weights {
		weights[i] = 1
	}
	scatter := slices.Clone(prior)
	for range robustTurns {
		copy(scatter, prior)
		count := t.SpreadDrinks
		for i, z := range stray {
			count += weights[i]
			for a := range k {
				for b := range k {
					scatter[a*k+b] += weights[i] * z[a] * z[b]
				}
			}
		}
		var chol mat.Cholesky
		if !chol.Factorize(mat.NewSymDense(k, slices.Clone(scatter))) {
			return scatter // newModel says so
		}
		for i, z := range stray {
			var x mat.VecDense
			v := mat.NewVecDense(k, z)
			if err := chol.SolveVecTo(&x, v); err != nil {
				return scatter
			}
			d2 := mat.Dot(v, &x) * count
			weights[i] = (oddFreedom + float64(k)) / (oddFreedom + d2)
		}
		for i := range scatter {
			scatter[i] *= (t.SpreadDrinks + float64(len(stray))) / count
		}
	}
	return scatter
}

const robustTurns = 20
