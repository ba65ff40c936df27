package main

import (
	"context"
	"errors"
	"time"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/data/house"
)

// rightAnswer is the palate of a house.
type rightAnswer struct {
	Right   []rightDrink `json:"right"`
	Palates []palate     `json:"palates"` // the families that they move
}

type rightDrink struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Version int64  `json:"version"` // as it was tasted
}

// palate is how a house pours a family, against the proven drinks.
type palate struct {
	Family string      `json:"family"`
	Drinks int         `json:"drinks"`
	Parts  []palateOne `json:"parts"`
}

type palateOne struct {
	Axis   string  `json:"axis"`
	Factor float64 `json:"factor"` // 0.9 is a tenth less, against all parts together
}

// newRight marks a drink as right for the house.
//
//	counterpour house right "Quay Sour" --house bar.house
func newRight(open kitchens, where *string) *cobra.Command {
	var asJSON *bool
	var undo bool
	var actor string
	cmd := &cobra.Command{
		Use:   "right [DRINK] --house PATH",
		Short: "Mark a drink as right for this house, and list what that moves",
		Long: `Marks a drink, as it is now, as right for this house. The drinks that are marked
are its palate: the centre of their family moves toward them, a little for one
and most of the way for twenty. Without a drink it lists them, and what they move.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, done, err := atOwnHouse(cmd.Context(), open, *where)
			if err != nil {
				return err
			}
			defer done()
			if len(args) == 1 {
				if err := markRight(cmd.Context(), v, args[0], actor, undo); err != nil {
					return err
				}
			}
			answer, err := rightOf(cmd.Context(), v)
			if err != nil {
				return err
			}
			return deliver(cmd, *asJSON, answer, showRight)
		},
	}
	asJSON = addJSON(cmd)
	cmd.Flags().BoolVar(&undo, "undo", false, "take the mark off")
	cmd.Flags().StringVar(&actor, "by", "bar", "who is noted in the log")
	return cmd
}

func markRight(ctx context.Context, v *service.Venue, name, actor string, undo bool) error {
	drinks, err := drinksNamed(v, []string{name})
	if err != nil {
		return err
	}
	d := drinks[0]
	kept, err := house.Get[house.Right](ctx, v.Store(), d.ID)
	if err != nil && !errors.Is(err, house.ErrNotFound) {
		return err
	}
	edit := house.Put(house.Right{Spec: d.ID, SpecVersion: d.Version, Note: kept.Item.Note}, kept.Version)
	if undo {
		if kept.Version == 0 {
			return usagef("%q is not marked, so that there is no mark to take off", d.Spec.Name)
		}
		edit = house.Remove(kept.Item.Ref(), kept.Version)
	}
	_, err = v.Store().Write(ctx, house.By{Actor: actor, At: time.Now()}, edit)
	return err
}

func rightOf(ctx context.Context, v *service.Venue) (*rightAnswer, error) {
	marks, err := house.All[house.Right](ctx, v.Store())
	if err != nil {
		return nil, err
	}
	a := &rightAnswer{Right: []rightDrink{}, Palates: []palate{}}
	for _, m := range house.Items(marks) {
		one := rightDrink{ID: m.Spec, Name: m.Spec, Version: m.SpecVersion}
		if d, ok := drinkNamed(v.Now().Menu, m.Spec); ok {
			one.Name = d.Spec.Name
		}
		a.Right = append(a.Right, one)
	}
	for _, p := range v.Kitchen().Set.Palates() {
		one := palate{Family: p.ID, Drinks: p.Drinks, Parts: []palateOne{}}
		for i, axis := range p.Axes {
			one.Parts = append(one.Parts, palateOne{axis.String(), rounded(p.Factors[i], 3)})
		}
		a.Palates = append(a.Palates, one)
	}
	return a, nil
}

func showRight(p *page, a *rightAnswer) {
	if len(a.Right) == 0 {
		p.line("no drink is marked as right; name one to mark it")
		return
	}
	p.line("Right for this house")
	for _, r := range a.Right {
		p.row("  "+r.Name, "version "+number(float64(r.Version), 0))
	}
	for _, one := range a.Palates {
		p.head("%s, by %s: each part against all of them, where 1 is as in the proven drinks", one.Family, drinks(one.Drinks))
		for _, part := range one.Parts {
			p.row("  "+part.Axis, number(part.Factor, 3))
		}
	}
}
