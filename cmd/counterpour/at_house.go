package main

import (
	"github.com/spf13/cobra"

	"counterpour/api/service"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
)

// atHouse opens a house, asks it, and prints the answer. file is the one that
// a fault of a line is in.
func atHouse[T any](cmd *cobra.Command, open premises.Kitchens, where, file string, asJSON bool, ask func(*service.Snapshot) (T, error), show func(*terminal.Page, T)) error {
	house, done, err := premises.SnapshotOf(cmd.Context(), open, where)
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
