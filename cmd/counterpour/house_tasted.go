package main

import (
	"context"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/data/house"
)

// newTasted notes how a cover was received, so that the next search knows.
//
//	counterpour house tasted served.txt --house bar.house --missing falernum --kept
func newTasted(open kitchens, where *string) *cobra.Command {
	var t tasted
	cmd := &cobra.Command{
		Use:   "tasted FILE --house PATH --missing NAME (--kept | --sent-back | --score N)",
		Short: "Note how a cover was received, so that the next list of covers knows",
		Long: `Reads the drink as it was served, under the name of the spec it stood in for, and
notes whether the guest kept it, sent it back, or how it scored from 0 to 10.
Covers that were kept move up in this house's lists, those sent back move down.`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			text, file, err := readDraft(cmd, args)
			if err != nil {
				return err
			}
			t.scored = cmd.Flags().Changed("score")
			if err := t.check(); err != nil {
				return err
			}
			v, done, err := atOwnHouse(cmd.Context(), open, *where)
			if err != nil {
				return err
			}
			defer done()
			if err := t.note(cmd.Context(), v, text); err != nil {
				return explain(err, file)
			}
			return say(cmd, "noted")
		},
	}
	cmd.Flags().StringVar(&t.missing, "missing", "", "the ingredient that had run out: name, alias or id")
	cmd.Flags().BoolVar(&t.kept, "kept", false, "the guest kept it")
	cmd.Flags().BoolVar(&t.sentBack, "sent-back", false, "the guest sent it back")
	cmd.Flags().Float64Var(&t.score, "score", 0, "how it scored, 0 to 10")
	cmd.Flags().StringVar(&t.taster, "by", "bar", "who is noted in the log")
	return cmd
}

// tasted is what is to be noted.
type tasted struct {
	missing, taster        string
	kept, sentBack, scored bool
	score                  float64
}

func (t *tasted) check() error {
	said := 0
	for _, is := range []bool{t.kept, t.sentBack, t.scored} {
		if is {
			said++
		}
	}
	switch {
	case t.missing == "":
		return usagef("--missing is not given; name the ingredient that had run out")
	case said != 1:
		return usagef("say one of --kept, --sent-back and --score")
	case !(t.score >= 0 && t.score <= service.MostScore):
		return usagef("--score %v is out of range; give 0 to %d", t.score, service.MostScore)
	}
	return nil
}

func (t *tasted) note(ctx context.Context, v *service.Venue, text string) error {
	k, s := v.Kitchen(), v.Store()
	served, err := k.Read(text)
	if err != nil {
		return err
	}
	if served.Name == "" {
		return usagef("the drink has no name; write the name of the spec it stood in for on the first line")
	}
	missing, _, err := k.Index.Resolve(t.missing)
	if err != nil {
		return err
	}
	id := house.IDOf(house.KindSpec, served.Name)
	spec, err := house.Get[house.Spec](ctx, s, id)
	if err != nil {
		return fmt.Errorf("the house has no spec %q: %w", served.Name, err)
	}
	now := time.Now().UTC()
	c := house.Cover{At: now, Spec: id, SpecVersion: spec.Version, Missing: missing.ID,
		Served: house.FromSpec(id, served).Pours, Taster: t.taster}
	switch {
	case t.kept:
		c.Verdict = house.VerdictKept
	case t.sentBack:
		c.Verdict = house.VerdictSentBack
	default:
		c.Score, c.Verdict = &t.score, house.VerdictUnknown
	}
	_, err = s.Write(ctx, house.By{Actor: t.taster, At: now}, house.Put(c, 0))
	return err
}
