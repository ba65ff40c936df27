package stock

import (
	"cmp"
	"context"
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/words"
)

// bottlePage shows a bottle of the house and takes changes to it.
func (p *pages) bottlePage(w http.ResponseWriter, r *http.Request) error {
	d := p.bottleDesk()
	if r.URL.Query().Get("id") == "" {
		currency, err := p.currency(r.Context())
		if err != nil {
			return err
		}
		d.start.Currency = currency
		if kind, known := p.house.Shelf().ByID(r.URL.Query().Get("of")); known {
			d.start.Name, d.start.Ingredient = kind.Name, kind.ID
		}
	}
	return d.serve(p, w, r)
}

// The headings of a bottle's form.
const (
	groupWhat     = "What it is"
	groupMeasured = "What was measured"
	groupThere    = "What there is of it"
	groupCost     = "Its price, and a note"
)

func (p *pages) bottleDesk() *stockDesk[house.Bottle] {
	names := part.NewNearFinder(p.bar, p.house.Shelf())
	return &stockDesk[house.Bottle]{kind: house.KindBottle, path: "/stock/bottle", page: "stock-bottle", what: "bottle",
		groups: []formGroup{{Title: groupWhat}, {Title: groupThere}, {Title: groupCost}, {Title: groupMeasured, Hint: "Where a field is empty, the catalogue's value is used."}, {Title: groupLabel, Hint: "Until it is read, the category says what is in it."}},
		fields: bottleFields(names),
		start:  house.Bottle{Stock: 1},
		sound: func(field string) house.Bottle {
			b := house.Bottle{ID: "x", Name: "x", Ingredient: "x", SizeML: 1}
			switch field {
			case "size_g":
				b.SizeML = 0
			case "label", "label_contains", "label_may_contain", "label_vegan", "label_by":
				b.Label = soundLabel()
			case "price", "currency":
				b.Price, b.Currency = new(float64), "XXX" // ISO 4217 for no currency
			}
			return b
		},
		withID: func(b house.Bottle, id string) house.Bottle { b.ID = id; return b },
		name:   func(b house.Bottle) string { return b.Name },
		well:   func(b house.Bottle) bool { return b.Well },
		away:   func(b house.Bottle) bool { return b.OutSince != nil },
		settle: p.settleBottle,
		refuse: func(context.Context, string) (string, error) { return "", nil },
		facts:  p.bottleFacts,
	}
}

func bottleFields(names *part.NearFinder) []formField[house.Bottle] {
	fields := []formField[house.Bottle]{
		textField(groupWhat, formBox{Name: "name", Label: "Name", Missing: "Give it a name, such as the one on its label.", Hint: "As the house calls it."},
			func(b *house.Bottle) *string { return &b.Name }),
		{formBox{Name: "ingredient", Label: "Category", Kind: "text", Offers: true, Before: "1 ml ",
			Missing: "Say what recipes call it, such as London dry gin.", Hint: "What recipes call it, such as London dry gin; its allergens come from here."},
			groupWhat,
			func(b house.Bottle) string { return part.ShelfName(names.Shelf(), b.Ingredient) },
			func(b *house.Bottle, text string) error {
				profile, _, err := names.Resolve(text)
				if err == nil {
					b.Ingredient = profile.ID
				}
				return err
			}},
		{formBox{Name: "well", Label: "Pour this one", Kind: "tick", Hint: "House pour: of two bottles of one category, the one that drinks use."},
			groupWhat,
			func(b house.Bottle) string {
				if b.Well {
					return "yes"
				}
				return ""
			},
			func(b *house.Bottle, _ string) error { b.Well = true; return nil }},
	}
	fields = append(fields, measuredFields(groupMeasured, func(b *house.Bottle) *house.Measured { return &b.Measured })...)
	fields = append(fields, labelFields()...)
	return append(fields,
		amountField(groupThere, formBox{Name: "size_ml", Label: "A full one holds", Unit: "mL", Hint: "As the label states it, such as 700."}, func(b *house.Bottle) *float64 { return &b.SizeML }),
		amountField(groupThere, formBox{Name: "size_g", Label: "Or weighs", Unit: "g", Hint: "For what is sold by weight, such as sugar, in place of mL."}, func(b *house.Bottle) *float64 { return &b.SizeG }),
		amountField(groupThere, formBox{Name: "stock", Label: "In stock", Unit: "bottles", Hint: "An open bottle counts as what is left in it: 2.5 is two full ones and a half."}, func(b *house.Bottle) *float64 { return &b.Stock }),
		priceField(),
		currencyField(),
		textField(groupCost, formBox{Name: "note", Label: "Note", Kind: "area", Rows: 2, Hint: "Where it is kept, who sells it, whatever helps."}, func(b *house.Bottle) *string { return &b.Note }),
	)
}

// priceField takes a price with its currency or without; settleBottle holds that currency
// against the field of it.
func priceField() formField[house.Bottle] {
	f := optionalField(groupCost, formBox{Name: "price", Label: "Price", Hint: "Of one full bottle, as you pay it."}, func(b *house.Bottle) **float64 { return &b.Price })
	f.take = func(b *house.Bottle, text string) error {
		v, _, _, err := form.Price(text, "such as 2.5")
		b.Price = &v
		return err
	}
	return f
}

// settleCurrency takes the currency that is written with the price, unless the field
// beside it says another.
func settleCurrency(f *filledForm[house.Bottle]) {
	b, price := &f.item, f.box("price")
	_, code, shared, err := form.Price(price.Value, "")
	switch {
	case b.Price == nil:
		b.Currency = "" // a currency without a price says nothing
	case err != nil || code == "" || code == b.Currency || shared && numeral.Shares(code, b.Currency):
	case b.Currency == "":
		b.Currency = code
	default:
		price.Fault = "The price is in " + code + ", the field beside it says " + b.Currency + ": which is it?"
	}
}

func currencyField() formField[house.Bottle] {
	f := textField(groupCost, formBox{Name: "currency", Label: "Currency", Hint: "Its three letters, such as EUR; the same for every bottle, so that drinks can be costed."},
		func(b *house.Bottle) *string { return &b.Currency })
	f.take = func(b *house.Bottle, text string) error { b.Currency = strings.ToUpper(text); return nil }
	return f
}

// settleSize asks for a size, and about one that no bottle has.
func settleSize(f *filledForm[house.Bottle]) {
	b, size := &f.item, f.box("size_ml")
	switch {
	case size.Fault != "" || f.box("size_g").Fault != "":
	case b.SizeML == 0 && b.SizeG == 0:
		size.Fault = "Say what a full one holds in mL, or below what it weighs in g."
	case b.SizeML > house.LargestML:
		size.Fault = fmt.Sprintf("That is %s L, more than the largest keg holds. Is it %s mL? What is kept in a tank is written as so many kegs.",
			words.Plain(b.SizeML/1000), words.Plain(b.SizeML/100))
	}
}

// settleBottle checks what two fields say together, and takes the mark of the
// well from the bottle that had it.
func (p *pages) settleBottle(ctx context.Context, f *filledForm[house.Bottle]) ([]house.Edit, error) {
	b := &f.item
	settleCurrency(f)
	settleSize(f)
	if ref, ok := referTo(p.house.Catalogue(), p.house.Shelf(), b.Ingredient); ok && f.sound() {
		if err := cmp.Or(b.Contradicts(ref.profile), ref.notUsed(*b)); err != nil {
			f.blame(err, "abv")
		}
	}
	if err := p.settleLabel(ctx, f); err != nil {
		return nil, err
	}
	others, err := house.All[house.Bottle](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	for _, o := range others {
		if o.Item.ID == b.ID {
			b.OutSince = o.Item.OutSince // a mark of the shift, which no field of the form says
		}
	}
	if !b.Well {
		return house.KeepPoured(others, []house.Edit{house.Put(*b, 0)})[1:], nil
	}
	var edits []house.Edit
	for _, o := range others {
		if o.Item.Well && o.Item.Ingredient == b.Ingredient && o.Item.ID != b.ID {
			o.Item.Well = false
			edits = append(edits, house.Put(o.Item, o.Version))
		}
	}
	return edits, nil
}

// laidOver is a profile with what was measured in a bottle of it.
func laidOver(p *flavor.Profile, b house.Bottle) (*flavor.Profile, []error) {
	list, faults := house.Overlay([]*flavor.Profile{p}, []house.Bottle{b}, nil)
	return list[0], faults
}

// currency is what the house's bottles are priced in; if none is or they are in
// two, the one of its settings.
func (p *pages) currency(ctx context.Context) (string, error) {
	bottles, err := house.All[house.Bottle](ctx, p.house.Store())
	all := house.Currencies(house.Items(bottles))
	if len(all) != 1 {
		return p.house.Settings().Currency, err
	}
	return all[0], err
}

// bottleSide is what is said beside a bottle's form.
type bottleSide struct {
	Category  string     // empty if nothing is known of it
	By        string     // who says what it is
	Against   []part.Row // what they say
	Instead   *deskLink  // the bottle that is poured in its place
	Allergens string
}

func (p *pages) bottleFacts(ctx context.Context, b house.Bottle) (any, error) {
	if b.Ingredient == "" {
		return (*bottleSide)(nil), nil
	}
	ref, ok := referTo(p.house.Catalogue(), p.house.Shelf(), b.Ingredient)
	if !ok {
		return &bottleSide{}, nil
	}
	profile := ref.profile
	v := &bottleSide{Category: profile.Name, By: ref.by, Allergens: allergenLine(profile)}
	for _, f := range []struct {
		name   string
		figure flavor.Figure
		unit   string
	}{{"Strength", profile.ABV, "% vol"}, {"Sugar", profile.Sugar, "g/L"}, {"Acid", profile.Acid, "g/L"}} {
		v.Against = append(v.Against, part.Row{Name: f.name, Amount: measuredAs(f.figure, f.unit)})
	}
	bottles, err := house.All[house.Bottle](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	if well, ok := house.Wells(house.Items(bottles))[b.Ingredient]; ok && well.ID != b.ID {
		v.Instead = &deskLink{Name: well.Name, Address: "/stock/bottle?" + url.Values{"id": {well.ID}}.Encode()}
	}
	return v, nil
}

// allergenLine is the allergens of a category in a sentence.
func allergenLine(p *flavor.Profile) string {
	if line := part.MarksLine(p); line != "" {
		return words.Sentence(line)
	}
	return "No allergen on record for " + p.Name + "."
}

// measuredAs is a figure with its spread and its unit.
func measuredAs(f flavor.Figure, unit string) string {
	decimals := 1
	if f.Value >= 100 {
		decimals = 0
	}
	return words.Joined(words.Figure(f.Value, decimals), words.PlusMinus(f.Spread, decimals), unit)
}
