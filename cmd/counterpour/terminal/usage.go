package terminal

import (
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
)

// UsageError is an error in the flags, the arguments or an input file.
type UsageError struct{ error }

// Usagef returns a [UsageError].
func Usagef(format string, args ...any) error { return UsageError{fmt.Errorf(format, args...)} }

// WrongArgs turns the errors of an argument check into [UsageError]s.
func WrongArgs(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if check == nil {
			return nil
		}
		if err := check(cmd, args); err != nil {
			return Usagef("%w; write it as: %s", err, cmd.UseLine())
		}
		return nil
	}
}

// Exit codes.
const (
	ExitDone   = 0
	ExitFailed = 1 // the operation failed
	ExitInput  = 2 // the input or the flags are wrong
)

// ExitCode returns the exit code for an error.
func ExitCode(err error) int {
	var usage UsageError
	if errors.As(err, &usage) || errors.Is(err, flavor.ErrInvalid) || errors.Is(err, flavor.ErrUnknown) || errors.Is(err, fault.ErrNotFound) || errors.Is(err, house.ErrInvalid) {
		return ExitInput
	}
	return ExitFailed
}
