package housekeeping

import (
	"time"

	"github.com/spf13/cobra"

	"counterpour/api/service/marking"
	"counterpour/api/shape"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
)

// newMark marks what ran out and what is back.
//
//	counterpour house mark --house bar.house --out falernum --back mint
func newMark(open premises.Kitchens, where *string) *cobra.Command {
	var asJSON *bool
	var r marking.Request
	var actor string
	cmd := &cobra.Command{
		Use:   "mark --house PATH [--out NAME]... [--back NAME]... [--bottle-out BOTTLE]... [--bottle-back BOTTLE]...",
		Short: "Mark what ran out or is back, and list what has run out",
		Long: `Marks ingredients that the house keeps as run out or as there again, all of them or
none. A bottle that runs out alone leaves its ingredient poured from another bottle of
it, and takes it along if it is the last. Without a mark it lists what has run out.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			at := &premises.Place{Where: *where, Why: premises.ToRead}
			if !r.Empty() {
				at.Why = premises.ToWrite
			}
			v, done, err := premises.AtOwnHouse(cmd.Context(), open, at)
			if err != nil {
				return err
			}
			defer done()
			if at.Why == premises.ToWrite {
				if err := v.Mark(cmd.Context(), house.By{Actor: actor, At: time.Now().UTC()}, r); err != nil {
					return err
				}
			}
			return terminal.Deliver(cmd, *asJSON, shape.AnswerMarks(v.Now()), showMarks)
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().StringArrayVar(&r.Out, "out", nil, "what ran out: name, alias or id; may be repeated")
	cmd.Flags().StringArrayVar(&r.Back, "back", nil, "what is there again; may be repeated")
	cmd.Flags().StringArrayVar(&r.BottlesOut, "bottle-out", nil, "one bottle that ran out, by its name or id; may be repeated")
	cmd.Flags().StringArrayVar(&r.BottlesBack, "bottle-back", nil, "one bottle that is there again; may be repeated")
	cmd.Flags().StringVar(&actor, "by", "bar", "name to note in the log")
	return cmd
}

func showMarks(p *terminal.Page, a *shape.MarksAnswer) {
	if len(a.Out)+len(a.BottlesOut) == 0 {
		p.Line("nothing has run out")
		return
	}
	if len(a.Out) > 0 {
		p.Line("Out")
	}
	for _, i := range a.Out {
		p.Line("  %s", i.Name)
	}
	for _, b := range a.BottlesOut {
		if b.Poured != "" {
			p.Line("Bottle out: %s; %s is poured", b.Name, b.Poured)
		}
	}
}
