package housekeeping

import (
	"time"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
)

// newRight marks a drink as right for the house.
//
//	counterpour house right "Quay Sour" --house bar.house
func newRight(open premises.Kitchens, where *string) *cobra.Command {
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
			why := premises.ToRead
			if len(args) == 1 {
				why = premises.ToWrite
			}
			v, done, err := premises.AtOwnHouse(cmd.Context(), open, &premises.Place{Where: *where, Why: why})
			if err != nil {
				return err
			}
			defer done()
			if len(args) == 1 {
				by := house.By{Actor: actor, At: time.Now()}
				if err := v.Right(cmd.Context(), by, service.RightRequest{Drink: args[0], Undo: undo}); err != nil {
					return err
				}
			}
			return terminal.Deliver(cmd, *asJSON, shape.AnswerPalate(v.Now()), showRight)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().BoolVar(&undo, "undo", false, "take the mark off")
	cmd.Flags().StringVar(&actor, "by", "bar", "name to note in the log")
	return cmd
}

func showRight(p *terminal.Page, a *shape.PalateAnswer) {
	if len(a.Right) == 0 {
		p.Line("no drink is marked as right; name one to mark it")
		return
	}
	p.Line("Right for this house")
	for _, r := range a.Right {
		p.Row("  "+r.Name, "version "+terminal.Number(float64(r.Version), 0))
	}
	for _, one := range a.Palates {
		p.Head("%s, by %s: each part against all of them, where 1 is as in the proven drinks", one.Family, terminal.Drinks(one.Drinks))
		for _, part := range one.Parts {
			p.Row("  "+part.Axis, terminal.Number(part.Factor, 3))
		}
	}
}
