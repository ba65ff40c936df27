package main

import (
	"context"
	"fmt"
	"io"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"

	"counterpour/cmd/counterpour/calibration"
	"counterpour/cmd/counterpour/housekeeping"
	"counterpour/cmd/counterpour/premises"
	"counterpour/cmd/counterpour/terminal"
	"counterpour/cmd/counterpour/training"
	"counterpour/flavor"
)

// run runs the program and returns its exit code.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	return runWith(ctx, embedded, args, in, out, errOut)
}

// runWith runs the program with kitchens from open, until ctx ends.
func runWith(ctx context.Context, open premises.Kitchens, args []string, in io.Reader, out, errOut io.Writer) int {
	root := newRoot(open)
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return terminal.ExitDone
	}
	fmt.Fprintln(errOut, terminal.Legible(err.Error()))
	return terminal.ExitCode(err)
}

func newRoot(open premises.Kitchens) *cobra.Command {
	root := &cobra.Command{
		Use:   "counterpour",
		Short: "Balance drinks, fix them, and cover what ran out",
		Long: `Counterpour scores the draft of a drink, says how to fix it, and finds what
to pour when a bottle is out.

Exit codes: 0 done, 1 the work failed, 2 the input or the flags were wrong.`,
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return cmd.Help()
			}
			return noCommand(cmd, args[0])
		},
	}
	root.SuggestionsMinimumDistance = 2
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		if before := cmd.Flags().Args(); cmd == root && len(before) > 0 {
			return noCommand(cmd, before[0])
		}
		return terminal.Usagef("%w; %s --help lists the flags", err, cmd.CommandPath())
	})
	root.AddCommand(newServe(open), newScore(open), newCover(open), newRiff(open), newUseUp(open), newWalk(open), newOuts(open), newTonight(open), newFind(ingredients), newLikeness(open), housekeeping.New(open), newCheck(), calibration.New(), newVersion())
	root.AddCommand(training.Commands(open)...)
	for _, c := range root.Commands() {
		c.Args = terminal.WrongArgs(c.Args)
	}
	return root
}

// noCommand says that there is no command of a name, and which are near.
func noCommand(root *cobra.Command, name string) error {
	if near := append(root.SuggestionsFor(name), beneath(root, name)...); len(near) > 0 {
		return terminal.Usagef("%q is no command; did you mean %s?", name, flavor.JoinOr(near))
	}
	return terminal.Usagef("%q is no command; counterpour --help lists them", name)
}

// beneath lists the commands of a name that stand beneath another, such as "house batch".
func beneath(root *cobra.Command, name string) (found []string) {
	for _, c := range root.Commands() {
		for _, under := range c.Commands() {
			if under.Name() == name && c.Name() != "completion" {
				found = append(found, c.Name()+" "+name)
			}
		}
	}
	return found
}
