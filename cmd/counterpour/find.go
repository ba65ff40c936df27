package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/api/service/kitchen"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/flavor/lookup"
)

// newFind searches the ingredients.
//
//	counterpour find bitter orange --abv-max 20 --avoid sulphites
func newFind(open func(context.Context) (*kitchen.Ingredients, error)) *cobra.Command {
	var asJSON *bool
	var r kitchen.FindRequest
	var bitterMin, abvMax float64
	cmd := &cobra.Command{
		Use:   "find WORDS...",
		Short: "Find ingredients",
		Long: `Finds ingredients by words of a name, an alias, a class, an aroma family or a
material. Small spelling mistakes are allowed. With a flag, words may be left out.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			r.Text = strings.Join(args, " ")
			if r.Text == "" && cmd.Flags().NFlag() == 0 {
				return terminal.Usagef("there is nothing to find; write a word, such as: %s orange", cmd.CommandPath())
			}
			if cmd.Flags().Changed("bitter-min") {
				r.BitterMin = &bitterMin
			}
			if cmd.Flags().Changed("abv-max") {
				r.ABVMax = &abvMax
			}
			ingredients, err := open(cmd.Context())
			if err != nil {
				return err
			}
			defer func() { _ = ingredients.Close() }() // an index in memory has nothing to flush
			answer, err := shape.AnswerSearch(cmd.Context(), ingredients, r)
			if err != nil {
				return terminal.Explain(err, "")
			}
			return terminal.Deliver(cmd, *asJSON, answer, showHits)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().StringVar(&r.Class, "class", "", "only this class, such as amaro")
	cmd.Flags().StringVar(&r.Family, "family", "", "only what carries this aroma family, such as orange")
	cmd.Flags().Float64Var(&bitterMin, "bitter-min", 0, "only what is at least this bitter, in mg/L of quinine")
	cmd.Flags().Float64Var(&abvMax, "abv-max", 0, "only what is at most this strong, in % vol")
	cmd.Flags().StringArrayVar(&r.Avoid, "avoid", nil, "only what is free of this allergen; may be repeated")
	cmd.Flags().StringVar(&r.Like, "like", "", "id of an ingredient; sorts the hits by how near they are to it")
	cmd.Flags().IntVar(&r.Limit, "limit", lookup.DefaultLimit, "most hits to list, 1 to 100")
	return cmd
}

// mostAliases is how many aliases fit on a line.
const mostAliases = 3

func showHits(p *terminal.Page, a *shape.SearchAnswer) {
	if len(a.Hits) == 0 {
		p.Line("nothing found; try fewer words, or words of another name for it")
		return
	}
	for _, h := range a.Hits {
		p.Row(h.ID, h.Name, h.Class, strings.Join(h.Aliases[:min(mostAliases, len(h.Aliases))], ", "))
	}
	if a.Total > len(a.Hits) {
		p.Line("%d of %d; --limit lists more", len(a.Hits), a.Total)
	}
}
