// Package calibration is the command for contributors that fits the families to the proven
// drinks, and tries the model, the covers and the reader.
package calibration

import (
	"bytes"
	"fmt"
	"os"
	"slices"

	"github.com/spf13/cobra"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data"
	"counterpour/flavor/template"
)

// New returns the command. It fits the families to the proven drinks, or runs
// the trials of the model.
//
//	counterpour calibrate --write data/fitted.toml
//	counterpour calibrate --trial
//	counterpour calibrate --covers
//	counterpour calibrate --drafts
func New() *cobra.Command {
	var path string
	var trial, covers, drafts bool
	cmd := &cobra.Command{
		Use:   "calibrate",
		Short: "Fit the families to the proven drinks (for contributors)",
		Long: `Fits the families to the proven drinks and prints the fitted values, or writes them
to a file. With --trial it leaves out each proven drink in turn, judges it and
its spoilt versions by the others, and prints how often the advice was right, as
a Markdown table. With --covers it asks for covers in situations of the trade, from
a usual bar and over the whole catalogue, and prints how often they were what the
trade pours, and each case in which they were not. With --drafts it reads drafts in many
hands, and prints how many were read right, refused and misread, and which.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if asked := slices.DeleteFunc([]bool{trial, covers, drafts, path != ""}, func(set bool) bool { return !set }); len(asked) > 1 {
				return terminal.Usagef("each of --trial, --covers and --drafts prints a table and writes no file; give one of --write, --trial, --covers and --drafts")
			}
			catalogue, err := data.Embedded()
			if err != nil {
				return err
			}
			if trial {
				return runTrial(cmd, catalogue)
			}
			if covers {
				return tryCovers(cmd, catalogue)
			}
			if drafts {
				return tryDrafts(cmd, catalogue)
			}
			return fit(cmd, catalogue, path)
		},
	}
	cmd.Flags().StringVar(&path, "write", "", "file to write; prints if empty")
	cmd.Flags().BoolVar(&trial, "trial", false, "cross-validate on the proven drinks and print the table; takes about ten seconds")
	cmd.Flags().BoolVar(&covers, "covers", false, "try the covers on situations of the trade and print the table; takes about ten seconds")
	cmd.Flags().BoolVar(&drafts, "drafts", false, "try the reader on drafts in many hands and print the table")
	return cmd
}

// fit fits the families and writes them to a file, or prints them.
func fit(cmd *cobra.Command, catalogue *data.Catalogue, path string) error {
	fitted, err := catalogue.Calibrate(template.DefaultTuning())
	if err != nil {
		return err
	}
	var text bytes.Buffer
	if err := data.WriteFitted(&text, fitted); err != nil {
		return err
	}
	if path == "" {
		_, err = cmd.OutOrStdout().Write(text.Bytes())
		return err
	}
	if err := os.WriteFile(path, text.Bytes(), 0o644); err != nil {
		return err
	}
	_, err = fmt.Fprintf(cmd.OutOrStdout(), "fitted %d families; wrote %s\n", len(fitted), path)
	return err
}

// runTrial prints the table of the trial, and its progress to standard error.
func runTrial(cmd *cobra.Command, catalogue *data.Catalogue) error {
	rig, err := catalogue.Rig(template.DefaultTuning())
	if err != nil {
		return err
	}
	const every = 25
	report, err := rig.Run(func(done, total int) {
		if done%every == 0 || done == total {
			fmt.Fprintf(cmd.ErrOrStderr(), "%d of %d drinks\n", done, total)
		}
	})
	if err != nil {
		return err
	}
	return report.WriteMarkdown(cmd.OutOrStdout())
}
