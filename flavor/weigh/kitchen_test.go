package weigh_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data"
	"counterpour/data/datatest"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/ratio"
	"counterpour/flavor/template"
	"counterpour/flavor/weigh"
)

// kitchen is the real families, catalogue and proven drinks.
type kitchen struct {
	catalogue *data.Catalogue
	families  []template.Family
	fitted    []template.Fitted
	book      []template.Labelled
	set       *weigh.Set
}

// newKitchen uses families that are fitted anew, so that no test depends on when the file
// of fitted values was last written.
func newKitchen(t require.TestingT) *kitchen {
	f, err := datatest.Refitted()
	require.NoError(t, err)
	return &kitchen{catalogue: f.Catalogue, families: f.Families, fitted: f.Fitted, book: f.Proven, set: f.Set}
}

func (k *kitchen) read(t require.TestingT, text string) *flavor.Spec {
	s, err := k.catalogue.ReadSpec("", text)
	require.NoError(t, err)
	return &s
}

func (k *kitchen) build(t require.TestingT, s *flavor.Spec) *weigh.Build {
	b, err := k.set.Prepare(s)
	require.NoError(t, err)
	return b
}

func (k *kitchen) score(t require.TestingT, s *flavor.Spec) float64 {
	b := k.build(t, s)
	return b.Score(b.Amounts())
}

// draft draws a drink: a proven one with its pours out of proportion, or
// anything at all from the catalogue.
func (k *kitchen) draft(t *rapid.T) *flavor.Spec {
	var s flavor.Spec
	if rapid.Bool().Draw(t, "proven") {
		s = rapid.SampledFrom(k.book).Draw(t, "drink").Spec.Clone()
		for i := range s.Pours {
			factor := rapid.Float64Range(0.25, 4).Draw(t, "factor")
			s.Pours[i].Amount *= factor
			s.Pours[i].ML *= factor
		}
		return &s
	}
	s.Method = rapid.SampledFrom(flavor.Methods()).Draw(t, "method")
	s.Service = rapid.SampledFrom(flavor.Services()).Draw(t, "service")
	// Something with strength comes first: a drink of water and leaves alone
	// has nothing to weigh.
	strong := slices.DeleteFunc(slices.Clone(k.catalogue.Profiles()), func(p *flavor.Profile) bool { return p.ABV.Value < 15 })
	k.pour(t, &s, strong)
	for range rapid.IntRange(1, 5).Draw(t, "more") {
		k.pour(t, &s, k.catalogue.Profiles())
	}
	return &s
}

func (k *kitchen) pour(t *rapid.T, s *flavor.Spec, from []*flavor.Profile) {
	p := rapid.SampledFrom(from).Draw(t, "ingredient")
	pour := flavor.Pour{Profile: p, Unit: flavor.Millilitre, Amount: float64(rapid.IntRange(1, 90).Draw(t, "amount"))}
	if p.Class.Solid() {
		pour.Unit = flavor.Gram
	}
	if per, ok := measure.MLPerUnit(pour.Unit, p); ok {
		pour.ML = pour.Amount * per
		s.Pours = append(s.Pours, pour)
	}
}

func mustBasis(t *testing.T, parts int) *ratio.Basis {
	b, err := ratio.NewBasis(parts)
	require.NoError(t, err)
	return b
}
