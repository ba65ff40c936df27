package exchange_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"counterpour/data/house"
	"counterpour/data/house/exchange"
	"counterpour/flavor"
	"counterpour/flavor/measure"
	"counterpour/flavor/measure/draft/meaning"
	"counterpour/flavor/measure/draft/onedrink"
)

// Generators of what a house may hold.
var (
	genID   = rapid.StringMatching(`[a-z0-9]{1,8}(-[a-z0-9]{1,8}){0,2}`)
	genLine = rapid.OneOf(
		rapid.StringMatching(`[A-Za-z0-9"',;:=éß夜 ]{0,30}[A-Za-z夜]`),
		rapid.StringMatching(genFormula+`{0,10}[A-Za-z夜]`))
	genNote = rapid.OneOf(
		rapid.StringMatching(`[A-Za-z0-9"',;:=\n\t\\<>&é夜 ]{0,60}`),
		rapid.StringMatching(genFormula+`{0,12}`))
)

// genFormula draws what spreadsheets run, and what looks like its guard.
const genFormula = "[=+@＝'\"\t\r\n 0-9.,e(A-]"

func genOptional(low, high float64) *rapid.Generator[*float64] {
	return rapid.Custom(func(t *rapid.T) *float64 {
		if rapid.Bool().Draw(t, "absent") {
			return nil
		}
		v := rapid.Float64Range(low, high).Draw(t, "value")
		return &v
	})
}

func genBottle(t *rapid.T, id string) house.Bottle {
	b := house.Bottle{ID: id, Name: genLine.Draw(t, "name"), Ingredient: genID.Draw(t, "ingredient"), Well: rapid.Bool().Draw(t, "well"),
		Measured: house.Measured{ABVPct: genOptional(0, 100).Draw(t, "abv"), Brix: genOptional(0, 90).Draw(t, "brix"), AcidGPerL: genOptional(0, 100).Draw(t, "acid")},
		SizeML:   rapid.Float64Range(1, 20000).Draw(t, "size"), Stock: rapid.Float64Range(0, 1e5).Draw(t, "stock"), Note: genNote.Draw(t, "note")}
	if b.Price = genOptional(0, 1e5).Draw(t, "price"); b.Price != nil {
		b.Currency = "EUR"
	}
	if rapid.Bool().Draw(t, "label") {
		b.Label = &house.Label{ReadBy: strings.TrimSpace(genLine.Draw(t, "reader")), ReadAt: time.Date(2026, 4, 1, rapid.IntRange(0, 23).Draw(t, "hour"), 0, 0, 0, time.UTC)}
		for _, a := range flavor.Allergens() {
			switch rapid.IntRange(0, 4).Draw(t, string(a)) {
			case 0:
				b.Label.Contains = append(b.Label.Contains, a)
			case 1:
				b.Label.MayContain = append(b.Label.MayContain, a)
			}
		}
	}
	if rapid.Bool().Draw(t, "by weight") {
		b.SizeML, b.SizeG = 0, b.SizeML
	}
	return b
}

// genSpec makes a spec of ingredients of the catalogue, in units that they are
// poured in and amounts that the text form can state.
func genSpec(t *rapid.T, f *house.Shelf, id string) house.Spec {
	s := house.Spec{ID: id, Name: genLine.Draw(t, "name"), Method: rapid.SampledFrom(flavor.Methods()).Draw(t, "method"),
		Service: rapid.SampledFrom(flavor.Services()).Draw(t, "service"), Note: strings.TrimSpace(genNote.Draw(t, "note"))}
	all := f.Profiles()
	for i := range rapid.IntRange(1, 8).Draw(t, "pours") {
		p := rapid.SampledFrom(all).Draw(t, "ingredient")
		u := rapid.SampledFrom(measure.UnitsFor(p)).Draw(t, "unit")
		amount := rapid.OneOf(rapid.Float64Range(0.01, 9), rapid.Map(rapid.IntRange(1, 72), func(n int) float64 { return float64(n) / 8 })).Draw(t, "amount")
		poured, err := meaning.ResolvePour(amount, string(u), p.Name, fmt.Sprint(i), f)
		switch {
		case err != nil:
			t.Skip("not a pour that the text form takes")
		case poured.ML > onedrink.MostInScaleML:
			t.Skip("a draft is asked about that")
		}
		s.Pours = append(s.Pours, house.Pour{Ingredient: p.ID, Amount: amount, Unit: u})
	}
	return s
}

// sound drops a draw that the house itself would refuse.
func sound(t *rapid.T, item house.Item) {
	if err := house.Check(item); err != nil {
		t.Skip(err)
	}
}

// stored is an item in the form that the house keeps.
func stored[T house.Item](t *rapid.T, item T) T {
	body, err := house.Encode(item)
	require.NoError(t, err)
	got, err := house.Decode(item.Ref().Kind, body)
	require.NoError(t, err)
	return got.(T)
}

func TestStockSurvivesCSV(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var want []house.Bottle
		for i := range rapid.IntRange(1, 5).Draw(t, "n") {
			b := genBottle(t, fmt.Sprintf("bottle-%d", i))
			sound(t, b)
			want = append(want, stored(t, b))
		}
		var out bytes.Buffer
		require.NoError(t, exchange.WriteStock(&out, want))
		r, err := readStock(&out, nil)
		require.NoError(t, err)
		require.Empty(t, r.Bad)
		for i, it := range r.Items {
			require.Equal(t, want[i], stored(t, it.(house.Bottle)))
		}
		require.Len(t, r.Items, len(want))
	})
}

func TestSpecsSurviveEveryWayOut(t *testing.T) {
	f := shelf(t)
	rapid.Check(t, func(t *rapid.T) {
		var want []house.Spec
		for i := range rapid.IntRange(1, 3).Draw(t, "n") {
			s := genSpec(t, f, fmt.Sprintf("spec-%d", i))
			sound(t, s)
			want = append(want, stored(t, s))
		}
		var table, recipes bytes.Buffer
		require.NoError(t, exchange.WriteSpecs(&table, want))
		r, err := exchange.ReadSpecs(&table, nil)
		require.NoError(t, err)
		sameSpecs(t, want, r)

		require.NoError(t, exchange.WriteRecipes(&recipes, want, f))
		r, err = exchange.ReadRecipes(&recipes, f)
		require.NoError(t, err)
		sameSpecs(t, want, r)
	})
}

func sameSpecs(t *rapid.T, want []house.Spec, r *exchange.Reading) {
	require.Empty(t, r.Bad)
	got := r.Specs()
	require.Len(t, got, len(want))
	for i := range got {
		require.Equal(t, want[i], stored(t, got[i]))
	}
}

// Text carries no ids and notes; the rest survives.
func TestSpecsSurviveText(t *testing.T) {
	f := shelf(t)
	rapid.Check(t, func(t *rapid.T) {
		var want []house.Spec
		var specs []flavor.Spec
		for i := range rapid.IntRange(1, 3).Draw(t, "n") {
			s := genSpec(t, f, "x")
			s.Name = fmt.Sprintf("%s %d", s.Name, i)
			s.ID, s.Note = house.IDOf(house.KindSpec, s.Name), ""
			sound(t, s)
			s = stored(t, s)
			full, err := s.Flavor(f)
			require.NoError(t, err)
			want, specs = append(want, s), append(specs, full)
		}
		var out bytes.Buffer
		require.NoError(t, exchange.WriteText(&out, specs))
		text := out.String()
		r, err := exchange.ReadText(&out, f)
		require.NoError(t, err)
		require.Empty(t, r.Bad, text)
		got := r.Specs()
		require.Len(t, got, len(want), text)
		for i := range got {
			require.Equal(t, want[i], got[i], text)
		}
	})
}

// Every name of the catalogue, commas and all, is read back as itself.
func TestEveryNameSurvivesText(t *testing.T) {
	f := shelf(t)
	for _, p := range f.Profiles() {
		if p.Class.Solid() {
			continue
		}
		var out bytes.Buffer
		pour := flavor.Pour{Profile: p, Amount: 1, Unit: flavor.Ounce, ML: 29.57}
		require.NoError(t, exchange.WriteText(&out, []flavor.Spec{{Name: "A", Method: flavor.Shake, Service: flavor.Up, Pours: []flavor.Pour{pour}}}))
		text := out.String()
		r, err := exchange.ReadText(&out, f)
		require.NoError(t, err)
		if !assert.Empty(t, r.Bad, text) || !assert.Len(t, r.Specs(), 1, text) {
			continue
		}
		got := r.Specs()[0]
		if assert.Len(t, got.Pours, 1, text) {
			assert.Equal(t, p.ID, got.Pours[0].Ingredient, text)
		}
		assert.Empty(t, got.Steps, text)
	}
}

func TestAHouseSurvivesJSON(t *testing.T) {
	f := shelf(t)
	a, b := open(t), open(t)
	n := 0
	rapid.Check(t, func(rt *rapid.T) {
		n++ // each draw adds to the houses; together they must stay the same
		spec := genSpec(rt, f, fmt.Sprintf("spec-%d", n))
		bottle := genBottle(rt, fmt.Sprintf("bottle-%d", n))
		bottle.Ingredient = fmt.Sprintf("kind-%d", n) // of two of a kind, an import keeps pouring the one that is poured
		sound(rt, spec)
		sound(rt, bottle)
		items := []house.Item{spec, bottle,
			house.Made{ID: fmt.Sprintf("made-%d", n), Name: genLine.Draw(rt, "made"), Class: rapid.SampledFrom(flavor.Classes()).Draw(rt, "class"), Parts: spec.Pours, Method: genNote.Draw(rt, "method")},
			house.ServedCover{ID: fmt.Sprintf("cover-%d", n), At: who.At, Spec: spec.ID, Missing: "vodka", Served: spec.Pours, Reception: house.ReceptionKept, Score: genOptional(0, 10).Draw(rt, "score"), Note: genNote.Draw(rt, "note")},
		}
		var edits []house.Edit
		for _, it := range items {
			sound(rt, it)
			edits = append(edits, house.Put(it, 0))
		}
		_, err := a.Write(t.Context(), who, edits...)
		require.NoError(rt, err)
		var out bytes.Buffer
		require.NoError(rt, exchange.WriteJSON(t.Context(), a, &out))
		r, err := exchange.ReadJSON(&out)
		require.NoError(rt, err)
		_, err = exchange.Import(t.Context(), b, who, r, exchange.AllOrNone)
		require.NoError(rt, err)
		require.Equal(rt, records(t, a), records(t, b))
	})
}
