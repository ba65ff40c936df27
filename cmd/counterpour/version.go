package main

import (
	"github.com/spf13/cobra"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/data/stamp"
)

// newVersion prints what the program was built from.
//
//	counterpour version
func newVersion() *cobra.Command {
	var asJSON *bool
	cmd := &cobra.Command{
		Use:   "version",
		Short: "Say which build of the program this is",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return terminal.Deliver(cmd, *asJSON, stamp.Read(), showBuild)
		},
	}
	asJSON = cmd.Flags().Bool("json", false, "print JSON instead of a table")
	return cmd
}

func showBuild(p *terminal.Page, b stamp.Build) {
	p.Line("Counterpour %s", b.Version)
	p.Row("built with", b.Go)
	if b.Revision == "" {
		return
	}
	revision := b.Revision
	if b.Changed {
		revision += ", with changes"
	}
	p.Row("from", revision)
	p.Row("of", b.Time)
}
