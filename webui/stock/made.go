package stock

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// madePage shows something house-made and takes changes to it.
func (p *pages) madePage(w http.ResponseWriter, r *http.Request) error {
	return p.madeDesk().serve(p, w, r)
}

// The headings of a making's form, beside those of a bottle's.
const (
	groupRecipe = "The recipe"
	groupKeeps  = "How long it keeps"
)

func (p *pages) madeDesk() *stockDesk[house.Made] {
	names := part.NewNearFinder(p.bar, p.house.Shelf())
	return &stockDesk[house.Made]{kind: house.KindMade, path: "/stock/made", page: "stock-made", what: "syrup or infusion",
		groups: []formGroup{{Title: groupWhat}, {Title: groupRecipe}, {Title: groupMeasured, Hint: "What is left empty is worked out from the recipe."}, {Title: groupKeeps}},
		fields: madeFields(names),
		start:  house.Made{Class: flavor.ClassSyrup},
		sound: func(string) house.Made {
			return house.Made{ID: "x", Name: "x", Class: flavor.ClassSyrup, Parts: []house.Pour{{Ingredient: "y", Amount: 1, Unit: flavor.Millilitre}}}
		},
		withID: func(m house.Made, id string) house.Made { m.ID = id; return m },
		name:   func(m house.Made) string { return m.Name },
		settle: p.settleMade,
		refuse: p.pouredIn,
		facts:  p.madeFacts,
	}
}

func madeFields(names *part.NearFinder) []formField[house.Made] {
	classes := make([]form.Option, 0, len(flavor.Classes()))
	for _, c := range flavor.Classes() {
		classes = append(classes, form.Option{Value: string(c), Name: string(c)})
	}
	fields := []formField[house.Made]{
		textField(groupWhat, formBox{Name: "name", Label: "Name", Missing: "Give it a name, such as Ginger syrup.", Hint: "As specs name it."}, func(m *house.Made) *string { return &m.Name }),
		{formBox{Name: "aliases", Label: "Other names", Kind: "area", Rows: 2, Hint: "One a line: what else it is called in specs."}, groupWhat,
			func(m house.Made) string { return strings.Join(m.Aliases, "\n") },
			func(m *house.Made, text string) error { m.Aliases = nonBlank(text); return nil }},
		{formBox{Name: "class", Label: "Kind", Kind: "choice", Options: classes, Missing: "Choose what kind of thing it is.", Hint: "This decides what it does in a drink."}, groupWhat,
			func(m house.Made) string { return string(m.Class) },
			func(m *house.Made, text string) error { m.Class = flavor.Class(text); return nil }},
		{formBox{Name: "parts", Label: "What goes in", Kind: "area", Rows: 6, Offers: true,
			Missing: "Write what goes in, one thing a line, such as 500 g white sugar.", Hint: "One thing a line with its amount, such as 500 g white sugar."}, groupRecipe,
			func(m house.Made) string { return recipeText(m.Parts, names.Shelf()) },
			func(m *house.Made, text string) (err error) { m.Parts, err = readRecipe(text, names); return err }},
		amountField(groupRecipe, formBox{Name: "yield_ml", Label: "Yield", Unit: "mL", Hint: "What it gave once strained or boiled down; empty if nothing is lost."}, func(m *house.Made) *float64 { return &m.YieldML }),
		textField(groupRecipe, formBox{Name: "method", Label: "How it is made", Kind: "area", Rows: 4, Hint: "Heat, time and what to strain through, so that the next batch is the same."}, func(m *house.Made) *string { return &m.Method }),
	}
	fields = append(fields, measuredFields(groupMeasured, func(m *house.Made) *house.Measured { return &m.Measured })...)
	return append(fields, keepsField(),
		textField(groupKeeps, formBox{Name: "note", Label: "Note", Kind: "area", Rows: 2, Hint: "Where it is kept, what to look out for."}, func(m *house.Made) *string { return &m.Note }))
}

func keepsField() formField[house.Made] {
	b := formBox{Name: "keeps_days", Label: "Keeps", Unit: "days", Kind: "number", Hint: "In the fridge, by the house's own rule; empty if it has none."}
	return formField[house.Made]{b, groupKeeps, func(m house.Made) string {
		if m.KeepsDays == 0 {
			return ""
		}
		return words.Plain(float64(m.KeepsDays))
	}, func(m *house.Made, text string) error {
		v, err := b.number(text)
		if err == nil && v != float64(int(v)) {
			err = fmt.Errorf("%q is not a whole number of days", text)
		}
		m.KeepsDays = int(v)
		return err
	}}
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
func (p *pages) settleMade(ctx context.Context, f *filledForm[house.Made]) ([]house.Edit, error) {
	if !f.sound() {
		return nil, nil
	}
	made, err := house.All[house.Made](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	item := f.item
	if item.ID == "" {
		item.ID = house.IDOf(house.KindMade, item.Name)
	}
	if err := house.Check(item); err != nil {
		f.blame(err, "parts")
		return nil, nil
	}
	others := slices.DeleteFunc(house.Items(made), func(m house.Made) bool { return m.ID == item.ID })
	_, faults := house.Overlay(p.house.Shelf().Profiles(), nil, append(others, item))
	for _, fault := range faults {
		if own := item.Ref().String(); keyOf(fault) == own {
			f.blame(fault, "parts")
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
	return "It is poured in " + words.List(names) + ". Change what is poured there first.", nil
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
		Out: slices.Contains(r.outs, m.ID), Allergens: part.AllergensOf(recipeSpec(m.Parts, r.shelf), nil)}
	profile, err := m.Profile(r.shelf)
	if err != nil {
		_, message := fieldOf(err)
		v.Trouble = "It cannot be worked out: " + message + "."
		return v
	}
	for _, row := range profileRows(profile) {
		v.Facts = append(v.Facts, stockFact{Name: row.Name, Value: row.Amount})
	}
	if m.KeepsDays > 0 {
		v.Facts = append(v.Facts, stockFact{Name: "Keeps", Value: words.Count(m.KeepsDays, "day", "days")})
	}
	return v
}
