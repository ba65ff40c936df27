package terminal

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"counterpour/flavor"
)

// MaxFile is the most that a draft or a list may hold.
const MaxFile = 64 << 10 // bytes

// ReadDraft reads the draft from the file in args or from standard input. name is for
// messages.
func ReadDraft(cmd *cobra.Command, args []string) (text, name string, err error) {
	if len(args) == 1 && args[0] != "-" {
		text, err = ReadFile(args[0])
		return text, args[0], err
	}
	if len(args) == 0 && isTerminal(cmd.InOrStdin()) {
		return "", "", Usagef("there is no draft to read; name a file that holds one, or pipe it in:\n"+
			"  %[1]s draft.txt\n  printf '2 oz gin\\n3/4 oz lemon juice\\n1/2 oz simple syrup\\nshake, up\\n' | %[1]s -", cmd.CommandPath())
	}
	text, err = readAll(cmd.InOrStdin(), "the input")
	return text, "", err
}

// ReadDraftOrName reads what an argument stands for: the draft in standard input, or in a
// file if one of that name exists; else the argument is the name of a drink. It sets text or
// drink, and returns the file's name for messages.
func ReadDraftOrName(cmd *cobra.Command, arg string, text, drink **string) (file string, err error) {
	if arg != "-" {
		if info, err := os.Stat(arg); err != nil || info.IsDir() {
			*drink = &arg
			return "", nil
		}
	}
	read, file, err := ReadDraft(cmd, []string{arg})
	*text = &read
	return file, err
}

// ReadFile reads a file of at most MaxFile bytes.
func ReadFile(path string) (string, error) {
	f, err := os.Open(path)
	if err != nil {
		return "", WrongPath(err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return "", Usagef("%s is a folder; name a file", path)
	}
	return readAll(f, path)
}

// readAll reads a text of at most MaxFile bytes.
func readAll(r io.Reader, name string) (string, error) {
	var b bytes.Buffer
	if _, err := b.ReadFrom(io.LimitReader(r, MaxFile+1)); err != nil {
		return "", fmt.Errorf("reading %s: %w", name, err)
	}
	if b.Len() > MaxFile {
		return "", Usagef("%s holds more than %d KiB; leave some out", name, MaxFile>>10)
	}
	return b.String(), nil
}

// WrongPath turns the error of a missing file into a [UsageError].
func WrongPath(err error) error {
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrPermission) || errors.Is(err, fs.ErrInvalid) {
		return Usagef("%w; check the path", err)
	}
	return err
}

// isTerminal reports whether a reader is a terminal.
func isTerminal(r io.Reader) bool {
	f, ok := r.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// flagPlaces maps places in a request to flags.
var flagPlaces = []struct{ place, flag string }{
	{"missing", "--missing"}, {"out", "--out"}, {"avoid", "--avoid"}, {"limit", "--limit"}, {"max_parts", "--max-parts"}, {"stock", "--stock"},
	{"class", "--class"}, {"family", "--family"}, {"bitter_min", "--bitter-min"}, {"abv_max", "--abv-max"}, {"like", "--like"},
	{"toward", "--toward"}, {"diet", "--diet"}, {"max_abv_pct", "--max-abv"}, {"max_abv", "--max-abv"}, {"max_cost", "--max-cost"},
	{"bottles", "--bottle"}, {"families", "--family"}, {"unit", "--unit"}, {"steps", "--steps"}, {"pour_ml", "--pour"},
	{"axis", "--axis"}, {"size_jnd", "--size"}, {"seed", "--seed"}, {"builds", "--builds"}, {"step_jnd", "--step"}, {"build_ml", "--build"}, {"tasters", "--tasters"}, {"each_ml", "--each"}, {"guests", "--guests"},
	{"glass_ml", "--glass"}, {"alpha", "--alpha"}, {"power", "--power"}, {"share", "--share"}, {"cover", "COVER"}, {"drink", "DRINK"}, {"path.id", "FAMILY"},
}

// toTeach says how a house is taught a name that means nothing here.
const toTeach = "; to teach a house the name: counterpour house name WORDS KIND --house PATH"

// Explain rewrites the places of faults for the command line: flags by name, lines with
// their file. A name that is like none that is known can be taught, and it says how. Other
// errors are returned unchanged.
func Explain(err error, file string) error {
	return flavor.Relocated(err, func(f *flavor.DataFault) {
		if f.Kind == flavor.ErrUnknown && strings.HasPrefix(f.Message, "unknown ingredient") && len(f.Suggest) == 0 {
			f.Message += toTeach
		}
		if file != "" && strings.HasPrefix(f.Location, "line ") {
			f.Location = file + ", " + f.Location
		}
		for _, p := range flagPlaces {
			if rest, ok := strings.CutPrefix(f.Location, p.place); ok && (rest == "" || rest[0] == '[') {
				f.Location = p.flag
			}
		}
	})
}
