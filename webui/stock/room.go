package stock

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"counterpour/api/service/evening"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/form"
	"counterpour/webui/part"
	"counterpour/webui/say"
)

// stockroom is what the house keeps and makes, at one moment.
type stockroom struct {
	bottles   []house.Bottle
	made      []house.Made
	outs      []string // ids of what has run out
	wells     map[string]house.Bottle
	shelf     *house.Shelf
	catalogue *house.Shelf
}

func (p *pages) stockroom(ctx context.Context) (*stockroom, error) {
	entries, err := p.house.Store().List(ctx, house.KindBottle, house.KindMade)
	if err != nil {
		return nil, err
	}
	room := &stockroom{shelf: p.house.Shelf(), catalogue: p.house.Catalogue()}
	if room.outs, err = p.house.RunOut(ctx); err != nil {
		return nil, err
	}
	for _, e := range entries {
		switch item := e.Item.(type) {
		case house.Bottle:
			room.bottles = append(room.bottles, item)
		case house.Made:
			room.made = append(room.made, item)
		}
	}
	room.wells = house.Wells(room.bottles)
	return room, nil
}

// class is the class of a bottle's category, empty if that is not known.
func (r *stockroom) class(b *house.Bottle) flavor.Class {
	if p, ok := r.shelf.ByID(b.Ingredient); ok {
		return p.Class
	}
	return ""
}

// classes lists the classes that there is something of.
func (r *stockroom) classes(chosen flavor.Class) []form.Option {
	var out []form.Option
	for _, c := range flavor.Classes() {
		if slices.ContainsFunc(r.bottles, func(b house.Bottle) bool { return r.class(&b) == c }) ||
			slices.ContainsFunc(r.made, func(m house.Made) bool { return m.Class == c }) {
			out = append(out, form.Option{Value: string(c), Name: string(c), Chosen: c == chosen})
		}
	}
	return out
}

// find returns what a query lets through, in the order of a bar's inventory, by
// category and by name.
func (r *stockroom) find(q stockQuery) (bottles []house.Bottle, made []house.Made) {
	holds := func(class flavor.Class, in string) bool {
		return (q.Class == "" || q.Class == class) && evening.HasWords(in, q.Text)
	}
	for _, b := range r.bottles {
		if holds(r.class(&b), r.bottleWords(&b)) {
			bottles = append(bottles, b)
		}
	}
	for _, m := range r.made {
		if holds(m.Class, madeWords(&m)) {
			made = append(made, m)
		}
	}
	order := flavor.Classes()
	slices.SortStableFunc(bottles, func(a, b house.Bottle) int {
		return cmp.Or(cmp.Compare(place(order, r.class(&a)), place(order, r.class(&b))), strings.Compare(r.category(&a), r.category(&b)),
			strings.Compare(a.Name, b.Name), strings.Compare(a.ID, b.ID))
	})
	slices.SortStableFunc(made, func(a, b house.Made) int { return strings.Compare(a.Name, b.Name) })
	return bottles, made
}

// bottleWords is what a bottle is found under: also what else its category is called, in
// the trade and in this house.
func (r *stockroom) bottleWords(b *house.Bottle) string {
	in := []string{b.Name, r.category(b), b.Note}
	if p, ok := r.shelf.ByID(b.Ingredient); ok {
		in = append(in, p.Aliases...)
	}
	for i := range in {
		in[i] = flavor.NormaliseName(in[i])
	}
	return strings.Join(in, " ")
}

// madeWords is what something house-made is found under.
func madeWords(m *house.Made) string {
	in := flavor.NormaliseName(m.Name) + " " + flavor.NormaliseName(m.Note)
	for _, alias := range m.Aliases {
		in += " " + flavor.NormaliseName(alias)
	}
	return in
}

// meantBy offers what may have been meant by a text that nothing here holds.
func (r *stockroom) meantBy(q stockQuery) []part.Meant {
	var in []string
	for i := range r.bottles {
		in = append(in, r.bottleWords(&r.bottles[i]))
	}
	for i := range r.made {
		in = append(in, madeWords(&r.made[i]))
	}
	return part.MeantBy(q.Text, in, "/stock", "q", q.fields(1))
}

// place is where a class stands among all; one that is not known comes last.
func place(order []flavor.Class, c flavor.Class) int {
	if at := slices.Index(order, c); at >= 0 {
		return at
	}
	return len(order)
}

// onShelf is how many bottles are there and have not run out.
func (r *stockroom) onShelf() (n int) {
	for _, b := range r.bottles {
		if r.there(&b) {
			n++
		}
	}
	return n
}

// there reports whether something is left of a bottle: neither it nor all of its ingredient ran out.
func (r *stockroom) there(b *house.Bottle) bool {
	return b.There() && !slices.Contains(r.outs, b.Ingredient)
}

// order is [house.Bottle.Order] of what is there.
func (r *stockroom) order(b *house.Bottle) float64 {
	left := *b
	if !r.there(b) {
		left.Stock = 0
	}
	return left.Order()
}

// category is the name of a bottle's category, its id if that is not known.
func (r *stockroom) category(b *house.Bottle) string {
	if p, ok := r.shelf.ByID(b.Ingredient); ok {
		return p.Name
	}
	return b.Ingredient
}

// notes says what is amiss with the stock as a whole.
func (r *stockroom) notes() []string {
	var out []string
	if mixed := house.MixedCurrencies(r.bottles); mixed != "" {
		out = append(out, mixed)
	}
	marked := map[string]int{}
	for _, b := range r.bottles {
		if b.Well {
			marked[b.Ingredient]++
		}
	}
	for _, b := range r.bottles {
		if marked[b.Ingredient] > 1 {
			out = append(out, say.It("stock.several-marked", "Category", r.category(&b), "Poured", r.wells[b.Ingredient].Name))
			marked[b.Ingredient] = 0
		}
	}
	return out
}
