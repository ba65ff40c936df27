package calibration

import (
	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/trial"
	"counterpour/index"
)

// tryCovers asks for covers in every situation of the trade: once from a bar, as far as
// that holds an answer, and once over the whole catalogue.
func tryCovers(cmd *cobra.Command, catalogue *data.Catalogue) error {
	k, err := kitchen.New(catalogue, index.New)
	if err != nil {
		return err
	}
	defer k.Close()
	bar := service.AtRest(k, &data.House{})
	for _, set := range []struct{ file, title string }{
		{data.TunedSituations, "tuned to"}, {data.HeldSituations, "held back, then mended by"}, {data.FreshSituations, "fresh"}, {data.WideSituations, "of wide spread"},
		{data.SecondBarSituations, "of a second bar"},
	} {
		situations, stock, err := catalogue.Situations(set.file)
		if err != nil {
			return err
		}
		if err := tryCoversOn(cmd, bar, stock, situations, set.title); err != nil {
			return err
		}
	}
	return nil
}

// tryCoversOn tries one set of situations, from the bar that stocks what is given and
// over the whole catalogue.
func tryCoversOn(cmd *cobra.Command, bar *service.Snapshot, stocked []*flavor.Profile, situations []trial.Situation, title string) error {
	var possible []trial.Situation
	var stock []string
	for i := range situations {
		if situations[i].Possible(stocked) {
			possible = append(possible, situations[i])
		}
	}
	for _, p := range stocked {
		stock = append(stock, p.ID)
	}
	for _, round := range []struct {
		title      string
		situations []trial.Situation
		stock      []string
	}{{"from a bar", possible, stock}, {"over the whole catalogue", situations, nil}} {
		report, err := trial.TryCovers(round.situations, func(s *trial.Situation) ([][]flavor.Pour, error) {
			request := service.CoverRequest{Draft: service.Draft{Spec: &s.Spec}, Missing: []string{s.Out.ID}, Guest: service.Guest{Diet: s.Diet},
				Stock: round.stock, Parts: service.DefaultMaxParts, Limit: service.DefaultCovers}
			for _, p := range s.Also {
				request.Missing = append(request.Missing, p.ID)
			}
			for _, a := range s.Avoid {
				request.Guest.Avoid = append(request.Guest.Avoid, string(a))
			}
			a, err := bar.Cover(cmd.Context(), request)
			if err != nil {
				return nil, err
			}
			covers := make([][]flavor.Pour, len(a.Result.Covers))
			for i := range covers {
				covers[i] = a.Result.Covers[i].Parts
			}
			return covers, nil
		})
		if err != nil {
			return err
		}
		if err := report.WriteMarkdown(cmd.OutOrStdout(), title+", "+round.title, true); err != nil {
			return err
		}
	}
	return nil
}
