package stock

import (
	"context"
	"errors"
	"net/http"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor/measure"
	"counterpour/webui/desk"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
)

// settingsPath is the address of the house's settings.
const settingsPath = "/stock/house"

// groupHouse is the group of the settings' form.
const groupHouse = "house"

// settingsPage shows the settings of the house and takes changes to them.
func (p *pages) settingsPage(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	d := p.settingsDesk()
	if r.Method == http.MethodPost || r.Form.Has("id") {
		return d.Serve(p.desk(), w, r)
	}
	_, err := p.desk().History(r.Context(), house.Settings{}.Ref())
	if errors.Is(err, frame.ErrNotFound) {
		return d.Show(p.desk(), w, r, "")
	}
	if err != nil {
		return err
	}
	return d.Show(p.desk(), w, r, house.SettingsID)
}

func (p *pages) settingsDesk() *desk.Desk[house.Settings] {
	return &desk.Desk[house.Settings]{Kind: house.KindSettings, Path: settingsPath, Page: "stock-house", What: say.It("stock.a-name-for-the-house"), Anew: say.It("stock.new-name-for-the-house"),
		Groups: []desk.Group{{ID: groupHouse, Title: say.It("stock.group-house")}},
		Fields: settingsFields(),
		Sound:  func(string) house.Settings { return house.Settings{} },
		WithID: func(s house.Settings, _ string) house.Settings { return s },
		Name:   func(s house.Settings) string { return s.Name },
		Settle: func(context.Context, *desk.Form[house.Settings]) ([]house.Edit, error) { return nil, nil },
		Refuse: func(context.Context, string) (string, error) { return "", nil },
		Facts:  func(context.Context, house.Settings) (any, error) { return nil, nil },
		Gone:   goneAddress,
		Alone:  true,
	}
}

func settingsFields() []desk.Field[house.Settings] {
	countries := []form.Option{{Name: say.It("stock.country-not-said")}}
	for _, c := range house.Countries() {
		countries = append(countries, form.Option{Value: c, Name: c})
	}
	units := []form.Option{{Name: say.It("stock.units-as-written")}, {Value: string(measure.Metric), Name: say.It("stock.units-millilitres")}, {Value: string(measure.Imperial), Name: say.It("stock.units-ounces")}}
	signs := []form.Option{{Value: house.DecimalPoint, Name: say.It("stock.decimal-point")}, {Value: house.DecimalComma, Name: say.It("stock.decimal-comma")}}
	currency := desk.Text(groupHouse, desk.Box{Name: "currency", Label: say.It("stock.currency"), Hint: say.It("stock.house-currency-hint")}, func(s *house.Settings) *string { return &s.Currency })
	currency.Take = func(s *house.Settings, text string) error { s.Currency = strings.ToUpper(text); return nil }
	choice := func(b desk.Box, at func(*house.Settings) *string) desk.Field[house.Settings] {
		b.Kind = "choice"
		return desk.Text(groupHouse, b, at)
	}
	return []desk.Field[house.Settings]{
		desk.Text(groupHouse, desk.Box{Name: "name", Label: say.It("stock.house-name"), Hint: say.It("stock.house-name-hint")}, func(s *house.Settings) *string { return &s.Name }),
		choice(desk.Box{Name: "units", Label: say.It("stock.specs-measure-in"), Options: units, Hint: say.It("stock.specs-measure-in-hint")},
			func(s *house.Settings) *string { return (*string)(&s.Units) }),
		currency,
		choice(desk.Box{Name: "decimal", Label: say.It("stock.decimals-follow"), Options: signs, Hint: say.It("stock.decimals-follow-hint")}, func(s *house.Settings) *string { return &s.Decimal }),
		choice(desk.Box{Name: "country", Label: say.It("stock.standard-drinks-of"), Options: countries, Hint: say.It("stock.standard-drinks-of-hint")}, func(s *house.Settings) *string { return &s.Country }),
	}
}
