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

// newTasted records how a cover was received, so that later searches learn from it.
//
//	counterpour house tasted served.txt --house bar.house --missing falernum --kept
func newTasted(open premises.Kitchens, where *string) *cobra.Command {
	var t tasted
	var asJSON *bool
	cmd := &cobra.Command{
		Use:   "tasted FILE --house PATH --missing NAME (--kept | --sent-back | --score N)",
		Short: "Note how a cover was received, so that the next list of covers knows",
		Long: `Reads the drink as it was served, under the name of the spec it stood in for, and
notes whether the guest kept it, sent it back, or how it scored from 0 to 10.
Covers that guests keep move up in this house's lists; covers that they send back move down.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := terminal.ReadDraft(cmd, args)
			if err != nil {
				return err
			}
			t.scored = cmd.Flags().Changed("score")
			if err := t.check(); err != nil {
				return err
			}
			v, done, err := premises.AtOwnHouse(cmd.Context(), open, &premises.Place{Where: *where, Why: premises.ToWrite})
			if err != nil {
				return err
			}
			defer done()
			if err := v.Taste(cmd.Context(), house.By{Actor: t.taster, At: time.Now().UTC()}, t.request(text)); err != nil {
				return terminal.Explain(err, file)
			}
			return terminal.Deliver(cmd, *asJSON, shape.AnswerTastings(v.Now()), func(p *terminal.Page, _ *shape.TastingsAnswer) { p.Line("noted") })
		},
	}
	asJSON = terminal.AddJSON(cmd)
	cmd.Flags().StringVar(&t.missing, "missing", "", "the ingredient that had run out: name, alias or id")
	cmd.Flags().BoolVar(&t.kept, "kept", false, "the guest kept it")
	cmd.Flags().BoolVar(&t.sentBack, "sent-back", false, "the guest sent it back")
	cmd.Flags().Float64Var(&t.score, "score", 0, "how it scored, 0 to 10")
	cmd.Flags().StringVar(&t.taster, "by", "bar", "name to note in the log")
	return cmd
}

// tasted holds the flags of newTasted.
type tasted struct {
	missing, taster        string
	kept, sentBack, scored bool
	score                  float64
}

func (t *tasted) check() error {
	switch {
	case t.missing == "":
		return terminal.Usagef("--missing is not given; name the ingredient that had run out")
	case !oneOf(t.kept, t.sentBack, t.scored):
		return terminal.Usagef("say one of --kept, --sent-back and --score")
	}
	return nil
}

func (t *tasted) request(text string) service.TasteRequest {
	r := service.TasteRequest{Served: service.Draft{Text: &text}, Missing: t.missing}
	switch {
	case t.kept:
		r.Reception = house.ReceptionKept
	case t.sentBack:
		r.Reception = house.ReceptionSentBack
	default:
		r.Score = &t.score
	}
	return r
}

// oneOf reports whether exactly one argument is true.
func oneOf(said ...bool) bool {
	n := 0
	for _, is := range said {
		if is {
			n++
		}
	}
	return n == 1
}
