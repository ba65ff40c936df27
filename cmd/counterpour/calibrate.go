package main

import (
	"bytes"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"counterpour/data"
	"counterpour/flavor/template"
)

// newCalibrate is for contributors: it fits the families to the proven drinks
// again.
//
//	counterpour calibrate --write data/fitted.toml
func newCalibrate() *cobra.Command {
	var path string
	cmd := &cobra.Command{
		Use:   "calibrate",
		Short: "Fit the families to the proven drinks (for contributors)",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			catalogue, err := data.Embedded()
			if err != nil {
				return err
			}
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
		},
	}
	cmd.Flags().StringVar(&path, "write", "", "file to write; prints if empty")
	return cmd
}
