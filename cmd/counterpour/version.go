package main

import (
	"github.com/spf13/cobra"

	"counterpour/data/stamp"
)

// newVersion says what the program was built from.
//
//	counterpour version
func newVersion() *cobra.Command {
	var asJSON *bool
	cmd := &cobra.Command{
		Use:   "version",
		Short: "Say which build of the program this is",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return deliver(cmd, *asJSON, stamp.Read(), showBuild)
		},
	}
	asJSON = cmd.Flags().Bool("json", false, "print JSON instead of a table")
	return cmd
}

func showBuild(p *page, b stamp.Build) {
	p.line("Counterpour %s", b.Version)
	p.row("built with", b.Go)
	if b.Revision == "" {
		return
	}
	revision := b.Revision
	if b.Changed {
		revision += ", with changes"
	}
	p.row("from", revision)
	p.row("of", b.Time)
}
