package webuitest

import (
	"context"
	"io"
	"log/slog"
	"net/http"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/api/service/coaching"
	"counterpour/webui"
	"counterpour/webui/behind"
)

// NewPages are pages over a fresh house.
func NewPages(t *testing.T) http.Handler {
	t.Helper()
	return PagesOf(t, NewHouse())
}

// PagesOf are pages over a house that a test can see into.
func PagesOf(t *testing.T, h behind.House) http.Handler {
	t.Helper()
	p, err := webui.New(Visit(h), slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	return p
}

// visit is the fake bar and trainer at a house.
type visit struct {
	Bar
	behind.House
	Trainer
}

// Triangle knows how strong the drinks of the menu are.
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
			return coaching.LayOut(r, judged.Drink.ABV)
		}
	}
	a, err := coaching.LayOut(r, coaching.SpiritABV)
	if err == nil {
		a.Assumed = true
	}
	return a, err
}

// Visit is how a request sees a fake house, which may change under it.
func Visit(h behind.House) behind.Open { return func() behind.Visit { return visit{House: h} } }
