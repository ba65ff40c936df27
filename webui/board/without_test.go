package board_test

import (
	"context"
	"io"
	"log/slog"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/flavor"
	"counterpour/flavor/balance"
	"counterpour/flavor/cover"
	"counterpour/flavor/cover/outs"
	"counterpour/flavor/sense"
	"counterpour/webui"
	"counterpour/webui/behind"
	"counterpour/webui/webuitest"
)

// withoutOnly is a house where nothing stands for what is out: a drink is kept without it, and with
// three ounces of gin.
type withoutOnly struct{ behind.Visit }

func (withoutOnly) Outs(_ context.Context, r outs.Request) (*outs.Result, error) {
	result := &outs.Result{}
	for _, s := range r.Specs {
		if !s.HasProfile(r.Out[0]) {
			continue
		}
		left := &cover.Cover{Spec: s.Clone(), Distance: 5, Notice: sense.WillNotice, Score: 89}
		var pours []flavor.Pour
		for _, p := range left.Spec.Pours {
			if p.Profile == webuitest.Gin {
				left.Changes = append(left.Changes, balance.Change{Profile: p.Profile, Unit: flavor.Ounce, From: p.Amount, To: 3, FromML: p.ML, ToML: 88.7})
				p.Amount, p.Unit, p.ML = 3, flavor.Ounce, 88.7
			}
			if p.Profile != r.Out[0] {
				pours = append(pours, p)
			}
		}
		left.Spec.Pours = pours
		result.Touched = append(result.Touched, outs.Touched{Spec: s, Missing: r.Out, Removed: r.Out, ScoreBefore: 94.2, Chosen: -1, LeftOut: left})
	}
	return result, nil
}

// A card of a drink that is kept without what is out shows the amounts that its score is of.
func TestADrinkWithoutAPourIsShownAsItIsPoured(t *testing.T) {
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum"}
	visit := webuitest.Visit(h)
	pages, err := webui.New(func() behind.Visit { return withoutOnly{visit()} }, slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	const line = "our it without falernum: London dry gin to 3\u00a0oz. A guest will notice; it scores 89."
	webuitest.Says(t, webuitest.Get(pages, "/tonight?q=falernum", ""), []string{line, `3 oz London dry gin <span class="small">was 2 oz`, "falernum</s>"}, []string{">2 oz London dry gin"})
	webuitest.Says(t, webuitest.Get(pages, "/tonight/wall", ""), []string{line, `<span class="amount">3 oz</span> London dry gin</strong> (was 2 oz)`}, nil)
	webuitest.Says(t, webuitest.Get(pages, "/board", ""), []string{line}, nil)
}
