package stock

import (
	"context"
	"errors"
	"net/http"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor/measure"
	"counterpour/webui/form"
	"counterpour/webui/frame"
	"counterpour/webui/say"
)

// SettingsPath is the address of the house's settings.
const SettingsPath = "/stock/house"

// groupHouse is the group of the settings' form.
const groupHouse = "house"

// settingsPage shows the settings of the house and takes changes to them.
func (p *pages) settingsPage(w http.ResponseWriter, r *http.Request) error {
	if err := form.Parse(r); err != nil {
		return err
	}
	d := p.settingsDesk()
	if r.Method == http.MethodPost || r.Form.Has("id") {
		return d.serve(p, w, r)
	}
	_, err := p.historyOf(r.Context(), house.Settings{}.Ref())
	if errors.Is(err, frame.ErrNotFound) {
		return d.show(p, w, r, "")
	}
	if err != nil {
		return err
	}
	return d.show(p, w, r, house.SettingsID)
}

func (p *pages) settingsDesk() *stockDesk[house.Settings] {
	return &stockDesk[house.Settings]{kind: house.KindSettings, path: SettingsPath, page: "stock-house", what: say.It("stock.a-name-for-the-house"), anew: say.It("stock.new-name-for-the-house"),
		groups: []formGroup{{ID: groupHouse, Title: say.It("stock.group-house")}},
		fields: settingsFields(),
		sound:  func(string) house.Settings { return house.Settings{} },
		withID: func(s house.Settings, _ string) house.Settings { return s },
		name:   func(s house.Settings) string { return s.Name },
		settle: func(context.Context, *filledForm[house.Settings]) ([]house.Edit, error) { return nil, nil },
		refuse: func(context.Context, string) (string, error) { return "", nil },
		facts:  func(context.Context, house.Settings) (any, error) { return nil, nil },
		alone:  true,
	}
}

func settingsFields() []formField[house.Settings] {
	countries := []form.Option{{Name: say.It("stock.country-not-said")}}
	for _, c := range house.Countries() {
		countries = append(countries, form.Option{Value: c, Name: c})
	}
	units := []form.Option{{Name: say.It("stock.units-as-written")}, {Value: string(measure.Metric), Name: say.It("stock.units-millilitres")}, {Value: string(measure.Imperial), Name: say.It("stock.units-ounces")}}
	signs := []form.Option{{Value: house.DecimalPoint, Name: say.It("stock.decimal-point")}, {Value: house.DecimalComma, Name: say.It("stock.decimal-comma")}}
	currency := textField(groupHouse, formBox{Name: "currency", Label: say.It("stock.currency"), Hint: say.It("stock.house-currency-hint")}, func(s *house.Settings) *string { return &s.Currency })
	currency.take = func(s *house.Settings, text string) error { s.Currency = strings.ToUpper(text); return nil }
	choice := func(b formBox, at func(*house.Settings) *string) formField[house.Settings] {
		b.Kind = "choice"
		return textField(groupHouse, b, at)
	}
	return []formField[house.Settings]{
		textField(groupHouse, formBox{Name: "name", Label: say.It("stock.house-name"), Hint: say.It("stock.house-name-hint")}, func(s *house.Settings) *string { return &s.Name }),
		choice(formBox{Name: "units", Label: say.It("stock.specs-measure-in"), Options: units, Hint: say.It("stock.specs-measure-in-hint")},
			func(s *house.Settings) *string { return (*string)(&s.Units) }),
		currency,
		choice(formBox{Name: "decimal", Label: say.It("stock.decimals-follow"), Options: signs, Hint: say.It("stock.decimals-follow-hint")}, func(s *house.Settings) *string { return &s.Decimal }),
		choice(formBox{Name: "country", Label: say.It("stock.standard-drinks-of"), Options: countries, Hint: say.It("stock.standard-drinks-of-hint")}, func(s *house.Settings) *string { return &s.Country }),
	}
}
