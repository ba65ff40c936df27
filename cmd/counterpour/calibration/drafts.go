package calibration

import (
	"context"

	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/api/service/kitchen"
	"counterpour/data"
	"counterpour/flavor"
	"counterpour/flavor/trial"
	"counterpour/index"
)

// draftsSeed selects the styles in which the proven drinks are written.
const draftsSeed = 1

// tryDrafts prints the result of the drafts that test the reader.
func tryDrafts(cmd *cobra.Command, catalogue *data.Catalogue) error {
	report, err := readDrafts(cmd.Context(), catalogue)
	if err != nil {
		return err
	}
	return report.WriteMarkdown(cmd.OutOrStdout())
}

// readDrafts reads every draft with the catalogue's names alone.
func readDrafts(ctx context.Context, catalogue *data.Catalogue) (*trial.DraftReport, error) {
	k, err := kitchen.New(catalogue, index.New)
	if err != nil {
		return nil, err
	}
	drafts, err := catalogue.Drafts(k.Proven, draftsSeed)
	if err != nil {
		return nil, err
	}
	bar := service.AtRest(k, &data.House{})
	report := trial.TryDrafts(drafts, func(text string) (flavor.Spec, error) { return bar.Read(service.Draft{Text: &text}) })
	return report, k.Close()
}
