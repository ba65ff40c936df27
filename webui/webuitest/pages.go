package webuitest

import (
	"context"
	"io"
	"log/slog"
	"net/http"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/flavor"
	"counterpour/flavor/drill/tasting"
	"counterpour/flavor/mix"
	"counterpour/webui/behind"
)

// Builder makes the handler of all pages over a house.
type Builder func(behind.Open, *slog.Logger) (http.Handler, error)

// build is what [Main] was given. This package does not import the pages: a package that does
// is compiled anew for the tests of each package of pages.
var build Builder

// NewPages are pages over a fresh house.
func NewPages(t *testing.T) http.Handler {
	t.Helper()
	return PagesOf(t, NewHouse())
}

// PagesOf are pages over a house that a test can see into.
func PagesOf(t *testing.T, h behind.House) http.Handler {
	t.Helper()
	require.NotNil(t, build, "the tests of this package run by Main")
	p, err := build(Visit(h), slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	return p
}

// visit is the fake bar and trainer at a house.
type visit struct {
	Bar
	behind.House
	Trainer
}

// Triangle knows how strong the drinks of the menu are, and pours a cover that the house knows
// in place of one of its kin.
func (v visit) Triangle(ctx context.Context, r coaching.TriangleRequest) (*coaching.TriangleAnswer, error) {
	menu, err := v.Menu(ctx)
	if err != nil {
		return nil, err
	}
	for i := range menu {
		if menu[i].Spec.Name == r.Drink {
			judged, err := v.Judge(&menu[i].Spec)
			if err != nil {
				return nil, err
			}
			a, err := coaching.LayOut(r, judged.Drink.ABV)
			if err != nil {
				return nil, err
			}
			return a, v.pourBoth(a, &menu[i].Spec, r.Cover)
		}
	}
	a, err := coaching.LayOut(r, coaching.SpiritABV)
	if err == nil {
		a.Assumed = true
	}
	return a, err
}

func (v visit) pourBoth(a *coaching.TriangleAnswer, spec *flavor.Spec, with string) error {
	p, _, err := v.Shelf().Resolve(with)
	if err != nil {
		return nil // nobody here knows it
	}
	mixer, err := mix.NewMixer()
	if err != nil {
		return err
	}
	b, at := spec.Clone(), max(0, slices.IndexFunc(spec.Pours, func(q flavor.Pour) bool { return q.Profile.Class.Kin() == p.Class.Kin() }))
	a.Instead, a.Looks, b.Pours[at].Profile = spec.Pours[at].Profile, "white turns straw", p
	const each = 10
	for _, side := range []struct {
		spec *flavor.Spec
		into **coaching.TriangleSide
	}{{spec, &a.A}, {&b, &a.B}} {
		batch, err := mixer.Batch(side.spec, each)
		if err != nil {
			return err
		}
		*side.into = &coaching.TriangleSide{Spec: *side.spec, Glasses: each, Sheet: tasting.SheetOf(batch), Foams: true}
	}
	return nil
}

// Visit is how a request sees a fake house, which may change under it.
func Visit(h behind.House) behind.Open { return func() behind.Visit { return visit{House: h} } }
