package main

import (
	"runtime/debug"

	"github.com/spf13/cobra"
)

// build is what the program was built from.
type build struct {
	Version  string `json:"version"`            // of the module; "dev" where none is known
	Go       string `json:"go"`                 // the release of Go
	Revision string `json:"revision,omitempty"` // of the source, where it was built in its repository
	Time     string `json:"time,omitempty"`     // of that revision, RFC 3339
	Changed  bool   `json:"changed,omitempty"`  // the source held changes beyond the revision
}

// thisBuild reads what the Go tool stamped into the binary.
func thisBuild() build {
	b := build{Version: "dev"}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return b
	}
	return stampOf(info, b)
}

// stampOf fills in what info knows.
func stampOf(info *debug.BuildInfo, b build) build {
	b.Go = info.GoVersion
	if v := info.Main.Version; v != "" && v != "(devel)" {
		b.Version = v
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			b.Revision = s.Value
		case "vcs.time":
			b.Time = s.Value
		case "vcs.modified":
			b.Changed = s.Value == "true"
		}
	}
	return b
}

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
			return deliver(cmd, *asJSON, thisBuild(), showBuild)
		},
	}
	asJSON = cmd.Flags().Bool("json", false, "print JSON instead of a table")
	return cmd
}

func showBuild(p *page, b build) {
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
