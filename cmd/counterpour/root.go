package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"

	"counterpour/flavor"
)

// Exit codes.
const (
	exitDone   = 0
	exitFailed = 1 // the work failed
	exitInput  = 2 // the input or the flags were wrong
)

// usageError is a fault in the flags or the arguments.
type usageError struct{ error }

// run runs the program and returns its exit code.
func run(args []string, in io.Reader, out, errOut io.Writer) int {
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	root := newRoot()
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errOut)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return exitDone
	}
	fmt.Fprintln(errOut, err)
	return exitCode(err)
}

// exitCode maps an error to the exit code: what the user wrote, or the work.
func exitCode(err error) int {
	var usage usageError
	if errors.As(err, &usage) || errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown) {
		return exitInput
	}
	return exitFailed
}

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:           "counterpour",
		Short:         "Balance drinks, mend them, and cover what ran out",
		SilenceUsage:  true,
		SilenceErrors: true,
	}
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error { return usageError{err} })
	root.AddCommand(newCalibrate())
	return root
}
