package stock

import (
	"context"
	"errors"
	"slices"
	"strings"
	"time"

	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/webui/desk"
	"counterpour/webui/say"
	"counterpour/webui/words"
)

// groupLabel is the group of what a label says of allergens.
const groupLabel = "label"

// labelFields ask what a bottle's label says of allergens, and who read it.
func labelFields() []desk.Field[house.Bottle] {
	read := desk.NewField(groupLabel, desk.Box{Name: "label", Label: say.It("stock.label-was-read"), Kind: "tick", Hint: say.It("stock.label-was-read-hint")},
		func(b house.Bottle) string {
			if b.Label != nil {
				return say.It("stock.yes")
			}
			return ""
		},
		func(b *house.Bottle, _ string) error { labelOf(b); return nil })
	by := desk.NewField(groupLabel, desk.Box{Name: "label_by", Label: say.It("stock.read-by"), Kind: "text", Hint: say.It("stock.read-by-hint")},
		func(b house.Bottle) string {
			if b.Label == nil {
				return ""
			}
			return b.Label.ReadBy
		},
		func(b *house.Bottle, text string) error { labelOf(b).ReadBy = text; return nil })
	unread := desk.NewField(groupLabel, desk.Box{Name: "unread", Label: say.It("stock.label-unread"), Kind: "tick", Hint: say.It("stock.label-unread-hint")},
		func(b house.Bottle) string {
			if b.Unread {
				return say.It("stock.yes")
			}
			return ""
		},
		func(b *house.Bottle, _ string) error { b.Unread = true; return nil })
	return []desk.Field[house.Bottle]{read,
		allergensField(desk.Box{Name: "label_contains", Label: say.It("stock.label-contains"), Hint: say.It("stock.label-contains-hint")},
			func(l *house.Label) *[]flavor.Allergen { return &l.Contains }),
		allergensField(desk.Box{Name: "label_may_contain", Label: say.It("stock.label-may-contain"), Hint: say.It("stock.label-may-contain-hint")},
			func(l *house.Label) *[]flavor.Allergen { return &l.MayContain }),
		desk.NewField(groupLabel, desk.Box{Name: "label_vegan", Label: say.It("stock.says-vegan"), Kind: "tick", Hint: say.It("stock.says-vegan-hint")},
			func(b house.Bottle) string {
				if b.Label.SaysVegan() {
					return say.It("stock.yes")
				}
				return ""
			},
			func(b *house.Bottle, _ string) error { labelOf(b).Vegan = true; return nil }),
		by, unread}
}

// labelOf is the label of a bottle, a new one if nobody has read it yet.
func labelOf(b *house.Bottle) *house.Label {
	if b.Label == nil {
		b.Label = &house.Label{}
	}
	return b.Label
}

// allergensField is a list of allergens with commas between them.
func allergensField(box desk.Box, at func(*house.Label) *[]flavor.Allergen) desk.Field[house.Bottle] {
	box.Kind = "text"
	return desk.NewField(groupLabel, box,
		func(b house.Bottle) string {
			if b.Label == nil {
				return ""
			}
			return strings.Join(words.Of(*at(b.Label)), ", ")
		},
		func(b *house.Bottle, text string) error {
			for _, word := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(",;\n", r) }) {
				if word = strings.TrimSpace(word); word == "" {
					continue
				}
				a, err := flavor.ParseAllergen(word)
				if err != nil {
					return err
				}
				list := at(labelOf(b))
				*list = append(*list, a)
			}
			return nil
		})
}

// soundLabel is a label with which nothing is wrong, to try one field of it.
func soundLabel() *house.Label {
	return &house.Label{ReadBy: "x", ReadAt: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC)}
}

// settleLabel says when the label was read: when it was, if it still says the same,
// and now otherwise.
func (p *pages) settleLabel(ctx context.Context, f *desk.Form[house.Bottle]) error {
	b := &f.Item
	if b.Label == nil {
		return nil
	}
	if by := f.BoxOf("label_by"); b.Label.ReadBy == "" && by.Fault == "" {
		by.Fault = say.It("stock.say-who-read")
	}
	b.Label.ReadAt = time.Now().UTC()
	if b.ID == "" {
		return nil // it is new
	}
	kept, err := house.Get[house.Bottle](ctx, p.house.Store(), b.ID)
	if errors.Is(err, house.ErrNotFound) {
		return nil
	}
	if err == nil && kept.Item.Label != nil && sameLabel(kept.Item.Label, b.Label) {
		b.Label.ReadAt = kept.Item.Label.ReadAt
	}
	return err
}

// sameLabel reports whether two labels say the same, in any order.
func sameLabel(a, b *house.Label) bool {
	same := func(x, y []flavor.Allergen) bool {
		x, y = slices.Clone(x), slices.Clone(y)
		slices.Sort(x)
		slices.Sort(y)
		return slices.Equal(slices.Compact(x), slices.Compact(y))
	}
	return a.ReadBy == b.ReadBy && a.Vegan == b.Vegan && same(a.Contains, b.Contains) && same(a.MayContain, b.MayContain)
}
