package stock

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/desk"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// madePage shows something house-made and takes changes to it.
func (p *pages) madePage(w http.ResponseWriter, r *http.Request) error {
	return p.madeDesk().Serve(p.desk(), w, r)
}

// The groups of a making's form, beside those of a bottle's.
const (
	groupRecipe = "recipe"
	groupKeeps  = "keeps"
)

func (p *pages) madeDesk() *desk.Desk[house.Made] {
	names := part.NewNearFinder(p.bar, p.house.Shelf())
	return &desk.Desk[house.Made]{Kind: house.KindMade, Path: "/stock/made", Page: "stock-made", What: say.It("stock.a-making"), Anew: say.It("stock.new-making"),
		Groups: []desk.Group{{ID: groupWhat, Title: say.It("stock.group-what")}, {ID: groupRecipe, Title: say.It("stock.group-recipe")},
			{ID: groupMeasured, Title: say.It("stock.group-measured"), Hint: say.It("stock.group-measured-of-making")}, {ID: groupKeeps, Title: say.It("stock.group-keeps")}},
		Fields: madeFields(names),
		Start:  house.Made{Class: flavor.ClassSyrup},
		Sound: func(string) house.Made {
			return house.Made{ID: "x", Name: "x", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "y", Amount: 1, Unit: flavor.Millilitre}}}
		},
		WithID: func(m house.Made, id string) house.Made { m.ID = id; return m },
		Name:   func(m house.Made) string { return m.Name },
		Settle: p.settleMade,
		Refuse: p.pouredIn,
		Facts:  p.madeFacts,
		Gone:   goneAddress,
	}
}

func madeFields(names *part.NearFinder) []desk.Field[house.Made] {
	classes := make([]form.Option, 0, len(flavor.Classes()))
	for _, c := range flavor.Classes() {
		classes = append(classes, form.Option{Value: string(c), Name: string(c)})
	}
	fields := []desk.Field[house.Made]{
		desk.Text(groupWhat, desk.Box{Name: "name", Label: say.It("stock.name"), Missing: say.It("stock.making-name-missing"), Hint: say.It("stock.making-name-hint")}, func(m *house.Made) *string { return &m.Name }),
		desk.NewField(groupWhat, desk.Box{Name: "aliases", Label: say.It("stock.other-names"), Kind: "area", Rows: 2, Hint: say.It("stock.other-names-hint")},
			func(m house.Made) string { return strings.Join(m.Aliases, "\n") },
			func(m *house.Made, text string) error { m.Aliases = nonBlank(text); return nil }),
		desk.NewField(groupWhat, desk.Box{Name: "class", Label: say.It("stock.kind"), Kind: "choice", Options: classes, Missing: say.It("stock.kind-missing"), Hint: say.It("stock.kind-hint")},
			func(m house.Made) string { return string(m.Class) },
			func(m *house.Made, text string) error { m.Class = flavor.Class(text); return nil }),
		desk.NewField(groupRecipe, desk.Box{Name: "parts", Label: say.It("stock.what-goes-in"), Kind: "area", Rows: 6, Offers: true,
			Missing: say.It("stock.what-goes-in-missing"), Hint: say.It("stock.what-goes-in-hint")},
			func(m house.Made) string { return recipeText(&m, names.Shelf()) },
			func(m *house.Made, text string) (err error) {
				m.Parts, m.Steeped, err = readRecipe(text, names)
				return err
			}),
		desk.Amount(groupRecipe, desk.Box{Name: "yield_ml", Label: say.It("stock.yield"), Unit: "mL", Hint: say.It("stock.yield-hint")}, func(m *house.Made) *float64 { return &m.YieldML }),
		desk.Text(groupRecipe, desk.Box{Name: "method", Label: say.It("stock.how-it-is-made"), Kind: "area", Rows: 4, Hint: say.It("stock.how-it-is-made-hint")}, func(m *house.Made) *string { return &m.Method }),
	}
	fields = append(fields, measuredFields(groupMeasured, func(m *house.Made) *house.Measured { return &m.Measured })...)
	return append(fields, keepsField(),
		desk.Text(groupKeeps, desk.Box{Name: "note", Label: say.It("stock.note"), Kind: "area", Rows: 2, Hint: say.It("stock.making-note-hint")}, func(m *house.Made) *string { return &m.Note }))
}

func keepsField() desk.Field[house.Made] {
	b := desk.Box{Name: "keeps_days", Label: say.It("stock.keeps"), Unit: say.It("stock.unit-days"), Kind: "number", Hint: say.It("stock.keeps-hint")}
	return desk.NewField(groupKeeps, b, func(m house.Made) string {
		if m.KeepsDays == 0 {
			return ""
		}
		return words.Plain(float64(m.KeepsDays))
	}, func(m *house.Made, text string) error {
		v, err := b.Number(text)
		if err == nil && v != float64(int(v)) {
			err = errors.New(say.It("stock.not-whole-days", "Typed", strconv.Quote(text)))
		}
		m.KeepsDays = int(v)
		return err
	})
}

// nonBlank is the lines of a text that hold something.
func nonBlank(text string) []string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			out = append(out, line)
		}
	}
	return out
}

// settleMade works the recipe out among the others, so that one that cannot be,
// or that goes round in a circle, is refused.
func (p *pages) settleMade(ctx context.Context, f *desk.Form[house.Made]) ([]house.Edit, error) {
	if !f.Sound() {
		return nil, nil
	}
	made, err := house.All[house.Made](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	item := f.Item
	if item.ID == "" {
		item.ID = house.IDOf(house.KindMade, item.Name)
	}
	if err := house.Check(item); err != nil {
		f.Blame(err, "parts")
		return nil, nil
	}
	others := slices.DeleteFunc(house.Items(made), func(m house.Made) bool { return m.ID == item.ID })
	_, faults := house.Overlay(p.house.Shelf().Profiles(), nil, append(others, item))
	for _, fault := range faults {
		if own := item.Ref().String(); keyOf(fault) == own {
			f.Blame(fault, "parts")
		}
	}
	return nil, nil
}

// pouredIn says which recipes and specs would be broken if something house-made
// went.
func (p *pages) pouredIn(ctx context.Context, id string) (string, error) {
	if p.standsIn(id) {
		return "", nil // the catalogue's own is poured again
	}
	entries, err := p.house.Store().List(ctx, house.KindMade, house.KindSpec)
	if err != nil {
		return "", err
	}
	holds := func(p house.Pour) bool { return p.Ingredient == id }
	var names []string
	for _, e := range entries {
		switch item := e.Item.(type) {
		case house.Made:
			if slices.ContainsFunc(item.Parts, holds) {
				names = append(names, item.Name)
			}
		case house.Spec:
			if slices.ContainsFunc(item.Pours, holds) {
				names = append(names, item.Name)
			}
		}
	}
	if len(names) == 0 {
		return "", nil
	}
	return say.It("stock.poured-in", "Names", words.List(names)), nil
}

// stockMade is something house-made in the list.
type stockMade struct {
	Name, Address string
	Class         string
	Out           bool
	Facts         []stockFact
	Allergens     part.Allergens
	Trouble       string
}

func (r *stockroom) makingOf(m house.Made) stockMade {
	v := stockMade{Name: m.Name, Address: "/stock/made?" + url.Values{"id": {m.ID}}.Encode(), Class: string(m.Class),
		Out: slices.Contains(r.outs, m.ID), Allergens: part.AllergensOf(recipeSpec(&m, r.shelf), nil)}
	profile, err := m.Profile(r.shelf)
	if err != nil {
		_, message := desk.FieldOf(err)
		v.Trouble = say.It("stock.cannot-be-worked-out", "Why", message)
		return v
	}
	for _, row := range profileRows(profile) {
		v.Facts = append(v.Facts, stockFact{Name: row.Name, Value: row.Amount})
	}
	if m.KeepsDays > 0 {
		v.Facts = append(v.Facts, stockFact{Name: say.It("stock.keeps"), Value: say.It("stock.keeps-days", "Days", m.KeepsDays)})
	}
	return v
}
