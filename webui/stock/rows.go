package stock

import (
	"net/url"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/data/house/prep"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// stockShelf is the bottles of one class.
type stockShelf struct {
	Title   string
	Bottles []stockBottle
}

// stockBottle is a bottle in the list.
type stockBottle struct {
	Name, Address string
	Category      string
	Ingredient    string // its id; empty if nothing is known of it
	Out           bool
	One           string // its id, if others of its category are there, or it ran out beside them
	Poured        bool   // of two or more of its category
	Instead       string // the one that is poured in its place
	Amount        string
	Order         string // how many to order; empty if it needs none, or has no par
	Strength      stockFact
	Facts         []stockFact // sugar and acid
	Price         string      // of a full one
	PerPour       string      // of the pour that was chosen
	Allergens     string
	Trouble       string
}

// Kin reports whether the category says more than the name.
func (b *stockBottle) Kin() bool { return !strings.EqualFold(b.Name, b.Category) }

// stockFact is a value, and what it is to be held against.
type stockFact struct{ Name, Value, Against string }

// shelve puts bottles, which are in order, on the shelves of their classes, or on one
// if they are sorted otherwise.
func (r *stockroom) shelve(bottles []house.Bottle, q stockQuery) []stockShelf {
	var out []stockShelf
	for i := range bottles {
		title := say.It("stock.of-no-category")
		if c := r.class(&bottles[i]); q.Sort != "" {
			title = ""
		} else if c != "" {
			title = words.SentenceStart(string(c))
		}
		if len(out) == 0 || out[len(out)-1].Title != title {
			out = append(out, stockShelf{Title: title})
		}
		last := &out[len(out)-1]
		last.Bottles = append(last.Bottles, r.bottleOf(&bottles[i], q.Per))
	}
	return out
}

// bottleAddress is the address of the page of a bottle.
func bottleAddress(b *house.Bottle) string {
	return "/stock/bottle?" + url.Values{"id": {b.ID}}.Encode()
}

func (r *stockroom) bottleOf(b *house.Bottle, per pourSize) stockBottle {
	v := stockBottle{Name: b.Name, Address: bottleAddress(b), Category: r.category(b), Out: !r.there(b)}
	if well := r.wells[b.Ingredient]; well.ID != b.ID {
		v.Instead = well.Name
	} else {
		v.Poured = slices.ContainsFunc(r.bottles, func(o house.Bottle) bool { return o.Ingredient == b.Ingredient && o.ID != b.ID })
	}
	v.Amount = stockWords(b)
	if n := r.order(b); n > 0 {
		v.Order = say.It("stock.to-order", "Number", words.Plain(n))
	}
	ref, ok := referTo(r.catalogue, r.shelf, b.Ingredient)
	if !ok {
		v.Trouble = say.It("stock.no-such-category")
		v.Allergens = say.It("stock.nobody-has-stated")
		return v
	}
	v.Ingredient = b.Ingredient
	if v.Instead != "" || v.Poured {
		v.One = b.ID
	}
	laid, _ := laidOver(ref.profile, *b)
	v.Allergens = allergenLine(laid)
	if err := ref.notUsed(*b); err != nil {
		v.Trouble = say.It("stock.measured-not-used", "Why", form.Message(err))
	} else if err := b.Contradicts(ref.profile); err != nil {
		v.Trouble = words.Sentence(form.Message(err))
	}
	for _, f := range factsOf(b, &ref) {
		if f.Name == say.It("stock.strength") {
			v.Strength = f
		} else {
			v.Facts = append(v.Facts, f)
		}
	}
	if b.Price != nil {
		v.Price = say.It("stock.price-of-a-full-one", "Price", words.Joined(words.Figure(*b.Price, 2), b.Currency))
		v.PerPour = say.It("stock.price-per-pour", "Price", words.Joined(words.Figure(prep.PourCost(*b.Price, b.VolumeML(ref.profile), per.ml), 2), b.Currency), "Pour", words.Joined(per.Name))
	}
	return v
}

// stockWords says what there is of a bottle.
func stockWords(b *house.Bottle) string {
	if b.Stock == 0 {
		return say.It("stock.none-of-size", "Size", part.SizeOf(b))
	}
	return say.It("stock.stock-of-size", "Number", words.Plain(b.Stock), "Size", part.SizeOf(b))
}

// factsOf says strength, sugar and acid, where there is any: as measured and
// beside it the catalogue's value, or else that alone.
func factsOf(b *house.Bottle, ref *reference) []stockFact {
	var out []stockFact
	measured, _ := laidOver(ref.profile, *b)
	for _, f := range []struct {
		name, unit string
		measured   bool
		brix       *float64 // it was measured so
		of         func(*flavor.Profile) flavor.Figure
	}{
		{say.It("stock.strength"), "% vol", b.ABVPct != nil, nil, func(p *flavor.Profile) flavor.Figure { return p.ABV }},
		{say.It("stock.sugar"), "g/L", b.Brix != nil || b.SugarGPerL != nil, b.Brix, func(p *flavor.Profile) flavor.Figure { return p.Sugar }},
		{say.It("stock.acid"), "g/L", b.AcidGPerL != nil, nil, func(p *flavor.Profile) flavor.Figure { return p.Acid }},
	} {
		theirs, ours := f.of(ref.profile), f.of(measured)
		switch {
		case f.measured:
			out = append(out, stockFact{f.name, withBrix(amountWords(ours.Value, f.unit), f.brix),
				say.It("stock.figure-by", "Figure", amountWords(theirs.Value, f.unit), "By", ref.by)})
		case theirs.Value > 0:
			out = append(out, stockFact{f.name, amountWords(theirs.Value, f.unit), say.It("stock.by", "By", ref.by)})
		}
	}
	return out
}

// withBrix is a figure with what a refractometer showed, if that was used.
func withBrix(figure string, brix *float64) string {
	if brix == nil {
		return figure
	}
	return say.It("stock.in-brix", "Figure", figure, "Brix", words.Joined(words.Plain(*brix), "°Bx"))
}

// amountWords writes a value with a decimal below a hundred.
func amountWords(v float64, unit string) string {
	if v >= 100 {
		return words.Joined(words.Figure(v, 0), unit)
	}
	return words.Joined(words.Figure(v, 1), unit)
}
