package stock

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/behind"
	"counterpour/webui/desk"
)

// CheckForms fills forms with records, and holds that each gives its own back.
func CheckForms(t *testing.T, bar behind.Bar, h behind.House) {
	p := &pages{bar: bar, house: h}
	list := p.house.Shelf().Profiles()
	amount := rapid.Float64Range(0.5, 900)
	optional := func(t *rapid.T, label string) *float64 {
		if rapid.Bool().Draw(t, label) {
			return nil
		}
		return Number(rapid.Float64Range(0, 80).Draw(t, label+" value"))
	}
	text := rapid.StringMatching(`[A-Za-z夜é'"<&;=,-][A-Za-z夜é'"<&;=,. -]{0,20}[A-Za-z]`)
	rapid.Check(t, func(t *rapid.T) {
		b := house.Bottle{ID: "x", Name: text.Draw(t, "name"), Ingredient: rapid.SampledFrom(list).Draw(t, "category").ID, Well: rapid.Bool().Draw(t, "well"),
			Measured: house.Measured{ABVPct: optional(t, "abv"), AcidGPerL: optional(t, "acid"), Brix: optional(t, "brix")}, SizeML: amount.Draw(t, "size") + 1, Stock: amount.Draw(t, "stock"), Note: text.Draw(t, "note")}
		if b.Price = optional(t, "price"); b.Price != nil {
			b.Currency = "EUR"
		}
		sameInAForm(t, p.bottleDesk(), b)
		m := house.Made{ID: "x", Name: text.Draw(t, "made"), Class: rapid.SampledFrom(flavor.Classes()).Draw(t, "class"), YieldML: amount.Draw(t, "yield"), Method: text.Draw(t, "method") + "\n" + text.Draw(t, "more"),
			Measured: house.Measured{SugarGPerL: optional(t, "sugar")}, KeepsDays: rapid.IntRange(0, 300).Draw(t, "days"), Aliases: rapid.SliceOfN(text, 0, 3).Draw(t, "aliases")}
		for range rapid.IntRange(1, 4).Draw(t, "parts") {
			m.Parts = append(m.Parts, house.Pour{Ingredient: rapid.SampledFrom(list).Draw(t, "part").ID, Amount: amount.Draw(t, "amount") / 10,
				Unit: rapid.SampledFrom([]flavor.Unit{flavor.Millilitre, flavor.Ounce, flavor.Gram, flavor.Barspoon}).Draw(t, "unit")})
		}
		sameInAForm(t, p.madeDesk(), m)
	})
}

func sameInAForm[T house.Item](t *rapid.T, d *desk.Desk[T], item T) {
	form := url.Values{}
	for _, b := range d.Fill(item).Boxes() {
		form.Set(b.Name, b.Value)
	}
	f := d.Read(form)
	for _, b := range f.Boxes() {
		require.Empty(t, b.Fault, "%s: %q", b.Name, b.Value)
	}
	want, err := house.Encode(item)
	require.NoError(t, err)
	got, err := house.Encode(d.WithID(f.Item, "x"))
	require.NoError(t, err)
	require.JSONEq(t, string(want), string(got))
}

func Number(v float64) *float64 { return &v }
