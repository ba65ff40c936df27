package main

import (
	"io"
	"log/slog"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterpour/api/service/visit"
	"counterpour/cmd/counterpour/premises"
	"counterpour/data/house"
	"counterpour/webui"
	"counterpour/webui/behind"
	"counterpour/webui/webuitest"
)

// One tap marks the bottle that is poured, and every page pours the next one; one tap more
// says that all of it is out.
func TestABottleThatIsOutIsOutOnEveryPage(t *testing.T) {
	v, done, err := premises.AtHouse(t.Context(), embedded, premises.Demo)
	require.NoError(t, err)
	defer done()
	_, err = v.Store().Write(t.Context(), house.By{Actor: "Wren", At: time.Now()},
		house.Put(house.Bottle{ID: "pier-gin", Name: "Pier gin", Ingredient: "london-dry-gin", SizeML: 700, Stock: 2}, 0))
	require.NoError(t, err)
	h, err := webui.New(func() behind.Visit { return visit.Of(v) }, slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	const bench = "/bench?text=2+oz+London+dry+gin%0A3%2F4+oz+lime+juice%0A3%2F4+oz+simple+syrup%0Ashake%2C+up"
	pages := func(want, not map[string]string) {
		t.Helper()
		for path, s := range want {
			webuitest.Tells(t, webuitest.Get(h, path, ""), 200, s)
		}
		for path, s := range not {
			webuitest.Lacks(t, webuitest.Get(h, path, ""), s)
		}
	}
	const one, all = `name="out-one" value="london-dry-gin"`, `name="out" value="london-dry-gin"`
	pages(map[string]string{"/tonight": one, "/board": one, "/stock": one}, map[string]string{"/tonight": all, "/board": all})

	require.Equal(t, 303, webuitest.Post(h, "/tonight", webuitest.Fields("out-one", "london-dry-gin"), false).Code)
	const switched = `Pier gin is poured`
	pages(map[string]string{"/tonight": switched, "/board": switched, "/stock?marked-one=london-dry-gin": "London dry gin is out: Pier gin is poured."},
		map[string]string{bench: "London dry gin is out", "/tonight": `name="back" value="london-dry-gin"`})

	require.Equal(t, 303, webuitest.Post(h, "/board", webuitest.Fields("out", "london-dry-gin"), false).Code)
	const back = `name="back" value="london-dry-gin"`
	pages(map[string]string{"/tonight": back, "/board": back}, map[string]string{"/tonight": switched})

	require.Equal(t, 303, webuitest.Post(h, "/stock/mark", webuitest.Fields("back-one", "london-dry-gin", "list", "/stock"), false).Code)
	pages(map[string]string{"/stock?marked-one=london-dry-gin": "London dry gin is back.", "/tonight": "Pier gin is out"}, map[string]string{"/tonight": back})
	webuitest.Tells(t, webuitest.Get(h, "/stock/bottle?id=pier-gin", ""), 200, "ran out")
}
