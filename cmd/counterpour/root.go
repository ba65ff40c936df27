package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"

	"counterpour/data/house"
	"counterpour/flavor"
)

// Exit codes.
const (
	exitDone   = 0
	exitFailed = 1 // the work failed
	exitInput  = 2 // the input or the flags were wrong
)

// usageError is a fault in the flags, the arguments or a file that was named.
type usageError struct{ error }

func usagef(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }

// run runs the program and returns its exit code.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	return runWith(ctx, embedded, args, in, out, errOut)
}

// runWith runs the program with kitchens of the caller's, until ctx ends.
func runWith(ctx context.Context, open kitchens, args []string, in io.Reader, out, errOut io.Writer) int {
	root := newRoot(open)
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return exitDone
	}
	fmt.Fprintln(errOut, legible(err.Error()))
	return exitCode(err)
}

// exitCode maps an error to the exit code: what the user wrote, or the work.
func exitCode(err error) int {
	var usage usageError
	if errors.As(err, &usage) || errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown) || errors.Is(err, house.ErrInvalid) {
		return exitInput
	}
	return exitFailed
}

func newRoot(open kitchens) *cobra.Command {
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
			near := cmd.SuggestionsFor(args[0])
			if len(near) > 0 {
				return usagef("%q is no command; did you mean %s?", args[0], flavor.JoinOr(near))
			}
			return usagef("%q is no command; counterpour --help lists them", args[0])
		},
	}
	root.SuggestionsMinimumDistance = 2
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return usagef("%w; %s --help lists the flags", err, cmd.CommandPath())
	})
	root.AddCommand(newServe(open), newScore(open), newCover(open), newRiff(open), newUseUp(open), newWalk(open), newOuts(open), newFind(open), newHouse(open), newCheck(), newCalibrate(), newVersion())
	for _, c := range root.Commands() {
		c.Args = wrongArgs(c.Args)
	}
	return root
}

// wrongArgs makes what a check of arguments finds a fault of the user's.
func wrongArgs(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if check == nil {
			return nil
		}
		if err := check(cmd, args); err != nil {
			return usagef("%w; write it as: %s", err, cmd.UseLine())
		}
		return nil
	}
}
