package housekeeping

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"counterpour/cmd/counterpour/terminal"
	"counterpour/webui/access"
)

// maxTyped is the most that is read for a passcode.
const maxTyped = 4 << 10 // bytes

// keyholder is the owner of a line in the file of passcodes.
type keyholder struct{ name, role string }

// flags adds the flags that name the owner.
func (k *keyholder) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&k.name, "name", "", "who it is for, as they sign in: letters, digits and - . _ ' without blanks")
	cmd.Flags().StringVar(&k.role, "role", "", "lead (everything) or floor (outs, tastings and training, and reading everything)")
}

// check validates the flags, before the passcode is asked for.
func (k *keyholder) check() (access.Role, error) {
	if k.name == "" {
		return 0, terminal.Usagef("--name is not given; name who it is for")
	}
	role, ok := access.ParseRole(k.role)
	switch {
	case k.role == "":
		return 0, terminal.Usagef("--role is not given; use lead or floor")
	case !ok:
		return 0, terminal.Usagef("--role %s is no role; use lead or floor", k.role)
	}
	if _, err := access.Line(role, k.name, ""); err != nil {
		return 0, terminal.Usagef("--name: %w", err)
	}
	return role, nil
}

// newPasscode creates the line of a person for the file of passcodes.
//
//	counterpour house passcode --name Ana --role lead >> passcodes
func newPasscode() *cobra.Command {
	var k keyholder
	cmd := &cobra.Command{
		Use:   "passcode --name NAME --role ROLE",
		Short: "Make the line of a person for the file of passcodes",
		Long: fmt.Sprintf(`Reads a passcode of %d characters or more, one line, from the input, and prints
the line for the file of passcodes: the role, the name and an argon2id hash (RFC
9106, the second recommended option). The passcode cannot be read back from it.
Keep the file to yourself: chmod 600.

On a terminal the passcode is asked for twice and does not show as it is typed.`, access.LeastPasscode),
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			role, err := k.check()
			if err != nil {
				return err
			}
			passcode, err := readPasscode(cmd, k.name)
			if err != nil {
				return err
			}
			hash, err := access.HashPasscode(passcode)
			if err != nil {
				return err
			}
			line, err := access.Line(role, k.name, hash)
			if err != nil {
				return err
			}
			return terminal.Say(cmd, "%s", line)
		},
	}
	k.flags(cmd)
	return cmd
}

// readPasscode reads one line. On a terminal it asks twice and does not echo.
func readPasscode(cmd *cobra.Command, name string) (string, error) {
	in := cmd.InOrStdin()
	if f, ok := in.(*os.File); ok && term.IsTerminal(int(f.Fd())) {
		return typedTwice(cmd.ErrOrStderr(), name, func() (string, error) {
			text, err := term.ReadPassword(int(f.Fd()))
			return string(text), err
		})
	}
	r := bufio.NewReader(io.LimitReader(in, maxTyped))
	line, err := r.ReadString('\n')
	if err != nil && !errors.Is(err, io.EOF) {
		return "", fmt.Errorf("reading the passcode: %w", err)
	}
	if strings.TrimSpace(line) == "" {
		return "", terminal.Usagef("there is no passcode to read; type it, or pipe in a line that holds it")
	}
	rest, err := io.ReadAll(r)
	if err != nil {
		return "", fmt.Errorf("reading the passcode: %w", err)
	}
	if strings.TrimSpace(string(rest)) != "" {
		return "", terminal.Usagef("the input holds more than one line; a passcode is one line")
	}
	return line, nil
}

// typedTwice asks for a passcode until it is typed twice in the same way. Without echo a
// typing error would go unnoticed and lock its owner out.
func typedTwice(to io.Writer, name string, read func() (string, error)) (string, error) {
	ask := func(text string) (string, error) {
		if _, err := fmt.Fprint(to, text); err != nil {
			return "", err
		}
		typed, err := read()
		if err != nil {
			return "", fmt.Errorf("reading the passcode: %w", err)
		}
		_, err = fmt.Fprintln(to)
		return typed, err
	}
	for {
		first, err := ask(fmt.Sprintf("Passcode for %s, %d characters or more; it does not show as you type: ", name, access.LeastPasscode))
		if err != nil {
			return "", err
		}
		if strings.TrimSpace(first) == "" {
			return "", terminal.Usagef("there is no passcode to read; type it, or pipe in a line that holds it")
		}
		again, err := ask("Once more: ")
		if err != nil {
			return "", err
		}
		if first == again {
			return first, nil
		}
		if _, err := fmt.Fprintln(to, "The two passcodes differ."); err != nil {
			return "", err
		}
	}
}

// newToken creates a token for a script, and its line for the file of passcodes.
//
//	counterpour house token --name till-script --role floor >> passcodes
func newToken() *cobra.Command {
	var k keyholder
	cmd := &cobra.Command{
		Use:   "token --name NAME --role ROLE",
		Short: "Make a token for a script and its line for the file of passcodes",
		Long: `Makes a token of 256 random bits. Prints the token to the error output, this once,
and to the output the line for the file of passcodes, which holds only its
SHA-256. The script sends the token with every request, as
Authorization: Bearer TOKEN.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			role, err := k.check()
			if err != nil {
				return err
			}
			token, inBook := access.NewToken()
			line, err := access.Line(role, k.name, inBook)
			if err != nil {
				return err
			}
			if _, err := fmt.Fprintf(cmd.ErrOrStderr(), "The token of %s; it is shown this once:\n\n    %s\n\nIts line for the file of passcodes:\n", k.name, token); err != nil {
				return err
			}
			return terminal.Say(cmd, "%s", line)
		},
	}
	k.flags(cmd)
	return cmd
}
