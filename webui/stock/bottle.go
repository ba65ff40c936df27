package stock

import (
	"cmp"
	"context"
	"net/http"
	"net/url"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/exchange/numeral"
	"counterpour/flavor"
	"counterpour/webui/desk"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
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
		d.Start.Currency = currency
		if kind, known := p.house.Shelf().ByID(r.URL.Query().Get("of")); known {
			d.Start.Name, d.Start.Ingredient = kind.Name, kind.ID
		}
	}
	return d.Serve(p.desk(), w, r)
}

// The groups of a bottle's form.
const (
	groupWhat     = "what"
	groupMeasured = "measured"
	groupThere    = "there"
	groupCost     = "cost"
)

func (p *pages) bottleDesk() *desk.Desk[house.Bottle] {
	names := part.NewNearFinder(p.bar, p.house.Shelf())
	return &desk.Desk[house.Bottle]{Kind: house.KindBottle, Path: "/stock/bottle", Page: "stock-bottle", What: say.It("stock.a-bottle"), Anew: say.It("stock.new-bottle"),
		Groups: []desk.Group{{ID: groupWhat, Title: say.It("stock.group-what")}, {ID: groupThere, Title: say.It("stock.group-there")}, {ID: groupCost, Title: say.It("stock.group-cost")},
			{ID: groupMeasured, Title: say.It("stock.group-measured"), Hint: say.It("stock.group-measured-of-bottle")},
			{ID: groupLabel, Title: say.It("stock.group-label"), Hint: say.It("stock.group-label-hint")}},
		Fields: bottleFields(names),
		Start:  house.Bottle{Stock: 1},
		Sound: func(field string) house.Bottle {
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
		WithID: func(b house.Bottle, id string) house.Bottle { b.ID = id; return b },
		Name:   func(b house.Bottle) string { return b.Name },
		Well:   func(b house.Bottle) bool { return b.Well },
		Away:   func(b house.Bottle) bool { return b.OutSince != nil },
		Settle: p.settleBottle,
		Refuse: func(context.Context, string) (string, error) { return "", nil },
		Facts:  p.bottleFacts,
		Gone:   goneAddress,
	}
}

func bottleFields(names *part.NearFinder) []desk.Field[house.Bottle] {
	fields := []desk.Field[house.Bottle]{
		desk.Text(groupWhat, desk.Box{Name: "name", Label: say.It("stock.name"), Missing: say.It("stock.bottle-name-missing"), Hint: say.It("stock.bottle-name-hint")},
			func(b *house.Bottle) *string { return &b.Name }),
		desk.NewField(groupWhat, desk.Box{Name: "ingredient", Label: say.It("stock.category"), Kind: "text", Offers: true, Before: "1 ml ",
			Missing: say.It("stock.category-missing"), Hint: say.It("stock.category-hint")},
			func(b house.Bottle) string { return part.ShelfName(names.Shelf(), b.Ingredient) },
			func(b *house.Bottle, text string) error {
				profile, _, err := names.Resolve(text)
				if err == nil {
					b.Ingredient = profile.ID
				}
				return err
			}),
		desk.NewField(groupWhat, desk.Box{Name: "well", Label: say.It("stock.pour-this-one"), Kind: "tick", Hint: say.It("stock.pour-this-one-hint")},
			func(b house.Bottle) string {
				if b.Well {
					return say.It("stock.yes")
				}
				return ""
			},
			func(b *house.Bottle, _ string) error { b.Well = true; return nil }),
	}
	fields = append(fields, measuredFields(groupMeasured, func(b *house.Bottle) *house.Measured { return &b.Measured })...)
	fields = append(fields, labelFields()...)
	return append(fields,
		desk.Amount(groupThere, desk.Box{Name: "size_ml", Label: say.It("stock.a-full-one-holds"), Unit: "mL", Hint: say.It("stock.a-full-one-holds-hint")}, func(b *house.Bottle) *float64 { return &b.SizeML }),
		desk.Amount(groupThere, desk.Box{Name: "size_g", Label: say.It("stock.or-weighs"), Unit: "g", Hint: say.It("stock.or-weighs-hint")}, func(b *house.Bottle) *float64 { return &b.SizeG }),
		desk.Amount(groupThere, desk.Box{Name: "stock", Label: say.It("stock.in-stock"), Unit: say.It("stock.bottles"), Hint: say.It("stock.in-stock-hint")}, func(b *house.Bottle) *float64 { return &b.Stock }),
		desk.Amount(groupThere, desk.Box{Name: "par", Label: say.It("stock.par"), Unit: say.It("stock.bottles"), Hint: say.It("stock.par-hint")}, func(b *house.Bottle) *float64 { return &b.Par }),
		priceField(),
		currencyField(),
		desk.Text(groupCost, desk.Box{Name: "note", Label: say.It("stock.note"), Kind: "area", Rows: 2, Hint: say.It("stock.bottle-note-hint")}, func(b *house.Bottle) *string { return &b.Note }),
	)
}

// priceField takes a price with its currency or without; settleBottle holds that currency
// against the field of it.
func priceField() desk.Field[house.Bottle] {
	f := desk.Optional(groupCost, desk.Box{Name: "price", Label: say.It("stock.price"), Hint: say.It("stock.price-hint")}, func(b *house.Bottle) **float64 { return &b.Price })
	f.Take = func(b *house.Bottle, text string) error {
		v, _, _, err := form.Price(text, say.It("stock.such-as-a-price"))
		b.Price = &v
		return err
	}
	return f
}

// settleCurrency takes the currency that is written with the price, unless the field
// beside it says another.
func settleCurrency(f *desk.Form[house.Bottle]) {
	b, price := &f.Item, f.BoxOf("price")
	_, code, shared, err := form.Price(price.Value, "")
	switch {
	case b.Price == nil:
		b.Currency = "" // a currency without a price says nothing
	case err != nil || code == "" || code == b.Currency || shared && numeral.Shares(code, b.Currency):
	case b.Currency == "":
		b.Currency = code
	default:
		price.Fault = say.It("stock.two-currencies", "Price", code, "Beside", b.Currency)
	}
}

func currencyField() desk.Field[house.Bottle] {
	f := desk.Text(groupCost, desk.Box{Name: "currency", Label: say.It("stock.currency"), Hint: say.It("stock.currency-hint")},
		func(b *house.Bottle) *string { return &b.Currency })
	f.Take = func(b *house.Bottle, text string) error { b.Currency = strings.ToUpper(text); return nil }
	return f
}

// settleSize asks for a size, and about one that no bottle has.
func settleSize(f *desk.Form[house.Bottle]) {
	b, size := &f.Item, f.BoxOf("size_ml")
	switch {
	case size.Fault != "" || f.BoxOf("size_g").Fault != "":
	case b.SizeML == 0 && b.SizeG == 0:
		size.Fault = say.It("stock.size-missing")
	case b.SizeML > house.LargestML:
		size.Fault = say.It("stock.size-too-large", "Litres", words.Plain(b.SizeML/1000), "Millilitres", words.Plain(b.SizeML/100))
	}
}

// settleBottle checks what two fields say together, and takes the mark of the
// well from the bottle that had it.
func (p *pages) settleBottle(ctx context.Context, f *desk.Form[house.Bottle]) ([]house.Edit, error) {
	b := &f.Item
	settleCurrency(f)
	settleSize(f)
	if ref, ok := referTo(p.house.Catalogue(), p.house.Shelf(), b.Ingredient); ok && f.Sound() {
		if err := cmp.Or(b.Contradicts(ref.profile), ref.notUsed(*b)); err != nil {
			f.Blame(err, "abv")
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
	Instead   *desk.Link // the bottle that is poured in its place
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
	}{{say.It("stock.strength"), profile.ABV, "% vol"}, {say.It("stock.sugar"), profile.Sugar, "g/L"}, {say.It("stock.acid"), profile.Acid, "g/L"}} {
		v.Against = append(v.Against, part.Row{Name: f.name, Amount: measuredAs(f.figure, f.unit)})
	}
	bottles, err := house.All[house.Bottle](ctx, p.house.Store())
	if err != nil {
		return nil, err
	}
	if well, ok := house.Wells(house.Items(bottles))[b.Ingredient]; ok && well.ID != b.ID {
		v.Instead = &desk.Link{Name: well.Name, Address: "/stock/bottle?" + url.Values{"id": {well.ID}}.Encode()}
	}
	return v, nil
}

// allergenLine is the allergens of a category in a sentence.
func allergenLine(p *flavor.Profile) string {
	if line := part.MarksLine(p); line != "" {
		return words.Sentence(line)
	}
	return say.It("stock.no-allergen-for", "Name", p.Name)
}

// measuredAs is a figure with its spread and its unit.
func measuredAs(f flavor.Figure, unit string) string {
	decimals := 1
	if f.Value >= 100 {
		decimals = 0
	}
	return words.Joined(words.Figure(f.Value, decimals), words.PlusMinus(f.Spread, decimals), unit)
}
