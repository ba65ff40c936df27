package main

import (
	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
)

// newLikeness says how alike things smell.
//
//	counterpour likeness orgeat falernum "almond syrup"
func newLikeness(open premises.Kitchens) *cobra.Command {
	var asJSON, materials *bool
	var body shape.LikenessBody
	var where string
	cmd := &cobra.Command{
		Use:   "likeness NAME NAME...",
		Short: "Say how alike ingredients or materials smell",
		Long: `Compares the aroma of each two names, from 0 for nothing in common to 1 for the same:
by the odorants that they share, the rare ones counting most.`,
		Args: cobra.MinimumNArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			body.Names, body.Of = args, string(kitchen.OfIngredients)
			if *materials {
				body.Of = string(kitchen.OfMaterials)
			}
			return premises.Ask(cmd, open, where, "", *asJSON, func(house *service.Snapshot) (*shape.LikenessAnswer, error) {
				return shape.AnswerLikeness(house, body)
			}, showLikeness)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	materials = cmd.Flags().Bool("materials", false, "read the names as materials of aromas first, such as violet, not as bottles")
	premises.AddFlag(cmd, &where)
	return cmd
}

func showLikeness(p *terminal.Page, a *shape.LikenessAnswer) {
	for i, row := range a.Aroma {
		for j := i + 1; j < len(row); j++ {
			p.Row("  "+a.Names[i].Name, a.Names[j].Name, terminal.Number(row[j], 2))
		}
	}
}
