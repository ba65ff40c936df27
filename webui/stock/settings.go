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
)

// SettingsPath is the address of the house's settings.
const SettingsPath = "/stock/house"

// groupHouse is the heading of the settings' form.
const groupHouse = "The house"

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
	return &stockDesk[house.Settings]{kind: house.KindSettings, path: SettingsPath, page: "stock-house", what: "name for the house",
		groups: []formGroup{{Title: groupHouse}},
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
	countries := []form.Option{{Name: "not said: the United States"}}
	for _, c := range house.Countries() {
		countries = append(countries, form.Option{Value: c, Name: c})
	}
	units := []form.Option{{Name: "as each spec is written"}, {Value: string(measure.Metric), Name: "millilitres"}, {Value: string(measure.Imperial), Name: "ounces"}}
	signs := []form.Option{{Value: house.DecimalPoint, Name: "a point, 2.5"}, {Value: house.DecimalComma, Name: "a comma, 2,5"}}
	currency := textField(groupHouse, formBox{Name: "currency", Label: "Currency", Hint: "Its three letters, such as EUR. A new price starts with it."}, func(s *house.Settings) *string { return &s.Currency })
	currency.take = func(s *house.Settings, text string) error { s.Currency = strings.ToUpper(text); return nil }
	choice := func(b formBox, at func(*house.Settings) *string) formField[house.Settings] {
		b.Kind = "choice"
		return textField(groupHouse, b, at)
	}
	return []formField[house.Settings]{
		textField(groupHouse, formBox{Name: "name", Label: "Name of the house", Hint: "Every page shows it, and the printed menu has it on top."}, func(s *house.Settings) *string { return &s.Name }),
		choice(formBox{Name: "units", Label: "Specs measure in", Options: units, Hint: "Tonight, the board, specs and cards; the bench shows a draft as it is written. To the nearest mark of a jigger; where none is near enough, a pour stays as it is."},
			func(s *house.Settings) *string { return (*string)(&s.Units) }),
		currency,
		choice(formBox{Name: "decimal", Label: "Decimals follow", Options: signs, Hint: "On cards, and in what drinks cost. You may type either anywhere."}, func(s *house.Settings) *string { return &s.Decimal }),
		choice(formBox{Name: "country", Label: "Standard drinks of", Options: countries, Hint: "Health offices count alcohol by different measures."}, func(s *house.Settings) *string { return &s.Country }),
	}
}
