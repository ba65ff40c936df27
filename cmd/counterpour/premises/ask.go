package premises

import (
	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/cmd/counterpour/terminal"
)

// AddFlag adds the flag that says where the house is kept.
func AddFlag(cmd *cobra.Command, where *string) {
	cmd.Flags().StringVar(where, "house", Demo, "file that the house is kept in, or a postgres:// address; the invented demo house if empty")
}

// Ask opens the house of a command, asks it, and prints the answer as JSON or as show does.
// file is the one that a fault of a line is in; it may be empty.
func Ask[T any](cmd *cobra.Command, open Kitchens, where, file string, asJSON bool, ask func(*service.Snapshot) (T, error), show func(*terminal.Page, T)) error {
	house, done, err := SnapshotOf(cmd.Context(), open, where)
	if err != nil {
		return err
	}
	defer done()
	answer, err := ask(house)
	if err != nil {
		return terminal.Explain(err, file)
	}
	return terminal.Deliver(cmd, asJSON, answer, show)
}
