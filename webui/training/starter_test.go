package training_test

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/require"

	"counterpour/data/house"
	"counterpour/flavor/measure"
	"counterpour/webui/behind"
	"counterpour/webui/training"
	"counterpour/webui/webuitest"
)

func TestStarterScenarios(t *testing.T) {
	for _, c := range []struct {
		name   string
		house  behind.House
		path   string
		status int
		want   []string
		not    []string
	}{
		{name: "the first family of the menu", house: webuitest.NewHouse(), path: training.StarterPath, status: 200,
			want: []string{`<option value="sour" selected>`, "8.0 strong : 2.6 sweet : 2.8 sour", "8 : 3 : 3, common practice.", "Halyard Sour", "of the house, 90 of 100", "Nutcracker", "Proven Sour", "a proven drink, 95 of 100",
				"2 oz London dry gin", "tree nuts (orgeat)", "eggs (egg white)", "Too much syrup tastes flat", `<svg class="strips"`, "<caption>", "Raw egg can carry Salmonella", "the label decides"}},
		{name: "one asked for", house: webuitest.NewHouse(), path: training.StarterPath + "?family=sour", status: 200, want: []string{"Sour, for a new starter"}},
		{name: "one that is not known", house: webuitest.NewHouse(), path: training.StarterPath + "?family=grog", status: 422, want: []string{"is not a family known here"}, not: []string{"Poured like this"}},
		{name: "a house without a menu", house: &webuitest.House{}, path: training.StarterPath, status: 200, want: []string{"Choose a family", `<option value="flip">`}, not: []string{"Poured like this"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			webuitest.Holds(t, webuitest.Get(webuitest.PagesOf(t, c.house), c.path, ""), c.status, c.want, c.not)
		})
	}
	metric := webuitest.NewHouse()
	_, err := metric.Store().Write(t.Context(), webuitest.Opening, house.Put(house.Settings{Units: measure.Metric}, 0))
	require.NoError(t, err)
	webuitest.Holds(t, webuitest.Get(webuitest.PagesOf(t, metric), training.StarterPath, ""), 200, []string{"60 mL London dry gin"}, []string{"oz London dry gin"})
	if w := webuitest.Get(webuitest.NewPages(t), training.StarterPath+"?family=%zz", ""); w.Code != http.StatusBadRequest {
		t.Error("an address that cannot be read", w.Code)
	}
}
