package stock

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/form"
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
	holds := func(class flavor.Class, texts ...string) bool {
		return (q.Class == "" || q.Class == class) && slices.ContainsFunc(texts, func(s string) bool {
			return strings.Contains(flavor.NormaliseName(s), flavor.NormaliseName(q.Text))
		})
	}
	for _, b := range r.bottles {
		if holds(r.class(&b), b.Name, r.category(&b), b.Note) {
			bottles = append(bottles, b)
		}
	}
	for _, m := range r.made {
		if holds(m.Class, append([]string{m.Name, m.Note}, m.Aliases...)...) {
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
		if !slices.Contains(r.outs, b.Ingredient) {
			n++
		}
	}
	return n
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
			out = append(out, "More than one bottle of "+r.category(&b)+" is marked to be poured; "+r.wells[b.Ingredient].Name+" is. Take the mark off the others.")
			marked[b.Ingredient] = 0
		}
	}
	return out
}
