package mix

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor"
)

// made returns a completed profile of a strength in % vol, sucrose and citric
// acid in g/L.
func made(t testing.TB, abv, sugar, acid float64) *flavor.Profile {
	t.Helper()
	p := &flavor.Profile{ID: "made", Name: "made", Class: flavor.ClassLiqueur,
		ABV: flavor.Figure{Value: abv}, Sugar: flavor.Figure{Value: sugar}, Acid: flavor.Figure{Value: acid},
		Sugars: flavor.SugarBlend{Sucrose: 1}, Acids: flavor.AcidBlend{Citric: 1}}
	require.NoError(t, Complete(p))
	return p
}

func pour(p *flavor.Profile, ml float64) flavor.Pour {
	return flavor.Pour{Profile: p, Amount: ml, Unit: flavor.Millilitre, ML: ml}
}

func mixer(t testing.TB) *Mixer {
	t.Helper()
	m, err := NewMixer()
	require.NoError(t, err)
	return m
}

// part is one line of a book's recipe: millilitres, % vol, g/L of sugar and acid.
type part struct{ ml, abv, sugar, acid float64 }

func specOf(t testing.TB, name string, m flavor.Method, s flavor.Service, parts ...part) *flavor.Spec {
	t.Helper()
	spec := &flavor.Spec{Name: name, Method: m, Service: s}
	for _, p := range parts {
		spec.Pours = append(spec.Pours, pour(made(t, p.abv, p.sugar, p.acid), p.ml))
	}
	return spec
}
