package housekeeping

import (
	"time"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/house"
)

// newName stores the house's own words for ingredients.
//
//	counterpour house name "old harbour gin" "London dry gin" --house bar.house
func newName(open premises.Kitchens, where *string) *cobra.Command {
	var undo bool
	var actor string
	cmd := &cobra.Command{
		Use:   "name [WORDS [KIND]] --house PATH",
		Short: "Say once what a word of this house means, such as a label's name",
		Long: `Keeps what words mean in this house: the name on a label, or what the bar calls
it. Drafts, completion and imports know them from then on. KIND is an ingredient,
by its name or id. Without words it lists them; --undo forgets some.`,
		Args: cobra.MaximumNArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			why := premises.ToWrite
			switch {
			case len(args) == 0 && undo:
				return terminal.Usagef("--undo forgets the words of this house that it is given; give them")
			case len(args) == 0:
				why = premises.ToRead
			case undo && len(args) == 2:
				return terminal.Usagef("--undo takes the words alone")
			case !undo && len(args) == 1:
				return terminal.Usagef("%q means what? write its kind after it, such as \"London dry gin\"; find lists them", args[0])
			}
			v, done, err := premises.AtOwnHouse(cmd.Context(), open, &premises.Place{Where: *where, Why: why})
			if err != nil {
				return err
			}
			defer done()
			if len(args) == 0 {
				return listNames(cmd, v.Now())
			}
			r := service.NameRequest{Words: args[0], Undo: undo}
			if !undo {
				r.Kind = args[1]
			}
			if err := v.Name(cmd.Context(), house.By{Actor: actor, At: time.Now()}, r); err != nil {
				return err
			}
			if undo {
				return terminal.Say(cmd, "%q is forgotten", args[0])
			}
			return terminal.Say(cmd, "%q means %s from now on", args[0], args[1])
		},
	}
	cmd.Flags().BoolVar(&undo, "undo", false, "forget the words")
	cmd.Flags().StringVar(&actor, "by", "bar", "name to note in the log")
	return cmd
}

func listNames(cmd *cobra.Command, s *service.Snapshot) error {
	names := s.Names()
	if len(names) == 0 {
		return terminal.Say(cmd, "this house has no words of its own; give one and what it means")
	}
	for _, n := range names {
		if err := terminal.Say(cmd, "%s: %s", n.Words, n.Profile.Name); err != nil {
			return err
		}
	}
	return nil
}
