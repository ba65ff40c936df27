package main

import (
	"io"
	"log/slog"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/service/visit"
	"counterpour/cmd/counterpour/premises"
	"counterpour/webui"
	"counterpour/webui/behind"
	"counterpour/webui/webuitest"
)

const harbourSour = "2+oz+gold+rum%0A3%2F4+oz+lime+juice%0A3%2F4+oz+falernum%0Ashake%2C+up"

// scantHoney is a sour with too little honey: to pour more of it is no fix for a vegan.
const scantHoney = "2+oz+gin%0A3%2F4+oz+lemon+juice%0A1+barspoon+honey+syrup%0Ashake%2C+up"

// The juices of the catalogue know their acids, and the training page stands on
// the proven drinks.
func TestPagesOverTheKitchen(t *testing.T) {
	v, done, err := premises.AtHouse(t.Context(), embedded, premises.Demo)
	require.NoError(t, err)
	defer done()
	h, err := webui.New(func() behind.Visit { return visit.Of(v) }, slog.New(slog.NewTextHandler(io.Discard, nil)))
	require.NoError(t, err)
	for _, c := range []struct {
		path   string
		status int
		want   []string
		not    []string
	}{
		{"/tools?tool=acid&juice=orange+juice&amount=500&target=lime", 200, []string{"Citric acid", "40.0 g/L citric and 20.0 g/L malic", `<option value="orange juice">`}, nil},
		{"/tools?tool=acid&juice=lemon+juice&amount=500&target=lime", 200, []string{"12.8 g/L malic, as sour as lime"}, nil},
		{"/tools?tool=acid&juice=simple+syrup&amount=500&target=lime", 422, []string{"is no juice"}, nil},
		{"/training?what=", 200, []string{"Your answer"}, nil},
		{"/?text=2+oz+gin%0A3%2F4+oz+lemon+juice%0A1%2F2+oz+orgeat%0Ashake%2C+up", 200, []string{"How the score is worked out", "<ol class=\"steps\"><li>"}, nil},
		{"/?text=" + scantHoney, 200, []string{"How to fix it", "honey syrup instead of"}, []string{"are left out"}},
		{"/?text=" + scantHoney + "&diet=vegan", 200, []string{"Fixes that pour what this guest must not have are left out."}, []string{"honey syrup instead of"}},
		{"/?text=" + harbourSour + "&missing=falernum", 200, []string{"From what the house has", "Pour this"}, []string{"falernum syrup (alcohol-free)"}},
		{"/?text=" + harbourSour + "&missing=falernum&from=all", 200, []string{"From the whole catalogue", "falernum syrup (alcohol-free)"}, nil},
	} {
		w := webuitest.Follow(h, c.path)
		assert.Equal(t, c.status, w.Code, c.path)
		for _, s := range c.want {
			assert.Contains(t, w.Body.String(), s, c.path)
		}
		for _, s := range c.not {
			assert.NotContains(t, w.Body.String(), s, c.path)
		}
	}
}

// The first visit to any page is light, with the whole catalogue and a menu behind it.
func TestFirstLoadIsLight(t *testing.T) {
	h := demoPages(t)
	for _, path := range []string{
		"/", "/tonight?avoid=tree+nuts", "/board", "/board?avoid=milk", "/bench?text=" + harbourSour, "/bench?text=" + harbourSour + "&missing=falernum", "/tools",
		"/riffs", "/riffs?text=" + harbourSour, "/riffs/use-up?bottle=mezcal&bottle=fino-sherry", "/riffs/walk?from=tide-table&to=ropewalk",
		"/specs", "/specs/tide-table", "/specs/tide-table/batch", "/specs/tide-table/card", "/specs/print", "/menu", "/costs", "/specs/import",
		"/stock", "/stock/bottle", "/stock/made", "/stock/house", "/stock/import", "/start", "/map", "/map?spec=tide-table", "/map?bottle=mezcal",
		"/training?what=cover", "/training/progress", "/training/flight", "/training/triangle", "/training/starter",
	} {
		weight := webuitest.FirstLoad(t, h, path)
		t.Logf("%s: %d bytes", path, weight)
		assert.Less(t, weight, webuitest.MaxLoad, path)
	}
}
