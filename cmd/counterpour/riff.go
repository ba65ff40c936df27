package main

import (
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api"
)

// newRiff finds variations of a draft.
//
//	counterpour riff draft.txt --toward "more bitter" --toward "below 15 %"
func newRiff(open kitchens) *cobra.Command {
	var asJSON *bool
	var stock string
	var body api.RiffBody
	cmd := &cobra.Command{
		Use:   "riff [FILE|-]",
		Short: "Find variations of a draft that stay in balance",
		Long: `Reads a draft, one pour a line, from a file or from the input, and lists
variations that stay in balance, each unlike the others, made of what the house
stocks and what is in the draft.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := readDraft(cmd, args)
			if err != nil {
				return err
			}
			shelf := ""
			if stock != "" {
				if shelf, err = readFile(stock); err != nil {
					return err
				}
			}
			kitchen, done, err := open(cmd.Context())
			if err != nil {
				return err
			}
			defer done()
			if stock != "" {
				if body.Stock, err = readStock(kitchen, shelf); err != nil {
					return explain(err, stock)
				}
			}
			body.Text = &text
			answer, err := kitchen.AnswerRiff(cmd.Context(), body)
			if err != nil {
				return explain(err, file)
			}
			return deliver(cmd, *asJSON, answer, showRiffs)
		},
	}
	asJSON = addJSON(cmd)
	cmd.Flags().StringArrayVar(&body.Toward, "toward", nil, "a wish, such as \"more bitter\", nuttier, \"no nuts\" or \"below 12 %\"; may be repeated")
	cmd.Flags().StringArrayVar(&body.Avoid, "avoid", nil, "an allergen that the guest must not have; may be repeated")
	cmd.Flags().StringVar(&stock, "stock", "", "file of what may be poured, a name or id a line, # for comments; the house's stock and the draft if empty")
	cmd.Flags().IntVar(&body.Limit, "limit", api.DefaultRiffs, "most riffs to list, 1 to 100")
	cmd.Flags().Uint64Var(&body.Seed, "seed", 0, "another number gives another list of much the same quality")
	return cmd
}

func showRiffs(p *page, a *api.RiffAnswer) {
	if len(a.Riffs) == 0 {
		p.line("Nothing that may be poured makes a riff that stays in balance and meets every wish")
	}
	for i, r := range a.Riffs {
		p.head("%d. %s", i+1, r.Text)
		for _, x := range r.Spec.Pours {
			p.row("   "+amount(x.Amount, x.Unit), x.Ingredient)
		}
		p.line("     %s, %s; %s; %s %% vol; %s noticeable steps away; score %s", r.Spec.Method, r.Spec.Service, r.Family,
			number(r.ABVPct, 1), number(r.DistanceJND, 1), number(r.Score, 1))
		if names := allergenNames(r.Allergens); len(names) > 0 {
			p.line("     allergens: %s", strings.Join(names, ", "))
		}
	}
	p.head("Proven relatives of the draft")
	for _, x := range a.Relatives {
		p.row("  "+x.Name, x.Family, x.Source+" ("+x.Status+")")
	}
}

func allergenNames(marks []api.Allergen) []string {
	var out []string
	for _, m := range marks {
		out = append(out, m.Certainty+" "+m.Allergen)
	}
	return out
}
