package access

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/secure/precis"

	"counterpour/flavor"
)

// Limits of a roster.
const (
	mostRoster = 64 << 10 // bytes
	mostName   = 40       // characters
)

// Roster lists who may sign in. It is immutable.
type Roster struct {
	text    string // the text of the file
	people  []keeper
	bearers []bearer
	byName  map[string]int // by nameKey; index into people
}

// keeper is a person in the roster and the hash of their passcode.
type keeper struct {
	Person
	hash *hash
}

// faultOf returns a fault of the file. Its text must not contain a secret.
func faultOf(location, value, format string, args ...any) *flavor.DataFault {
	return &flavor.DataFault{Kind: flavor.ErrInvalid, Location: location, Value: value, Message: fmt.Sprintf(format, args...)}
}

// ReadFile reads a roster. It refuses a file that other users of the machine can read, and
// one without a lead. Errors in the content are [flavor.DataFaults] or a [*flavor.DataFault];
// errors in opening the file are those of package os.
func ReadFile(path string) (*Roster, error) {
	// Opening a named pipe would block, so check the file type first.
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, faultOf(path, info.Mode().String(), "this is no file; name the file that the passcodes are in")
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err = f.Stat(); err != nil {
		return nil, err
	}
	if err := private(path, info.Mode()); err != nil {
		return nil, err
	}
	text, err := io.ReadAll(io.LimitReader(f, mostRoster+1))
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", path, err)
	}
	b, err := Parse(string(text))
	var faults flavor.DataFaults
	if errors.As(err, &faults) {
		for _, f := range faults {
			f.Location = strings.TrimSuffix(path+", "+f.Location, ", ")
		}
	}
	return b, err
}

// private refuses a file that anybody but its owner may read or write, on systems with
// Unix permissions.
func private(path string, mode fs.FileMode) error {
	if runtime.GOOS == "windows" || mode.Perm()&0o077 == 0 {
		return nil
	}
	return faultOf(path, fmt.Sprintf("%#o", mode.Perm()), "others on this machine may open the passcodes (mode %#o); shut them out with: chmod 600 %s", mode.Perm(), path)
}

// Parse reads the text of a roster: one entry per line, without empty lines and comments,
// which begin with #. Its errors are [flavor.DataFaults], one for each faulty line.
func Parse(text string) (*Roster, error) {
	if len(text) > mostRoster {
		return nil, flavor.DataFaults{faultOf("", "", "a file of passcodes holds %d KiB at most; this is another file, or it lists somebody too often", mostRoster>>10)}
	}
	b := &Roster{text: text, byName: map[string]int{}}
	var faults flavor.DataFaults
	lead := false
	seen := map[string]int{} // name to line
	number := 0
	for line := range strings.Lines(strings.TrimPrefix(text, "\ufeff")) {
		number++
		words := wordsOf(line)
		if len(words) == 0 {
			continue
		}
		place := fmt.Sprintf("line %d", number)
		p, key, fault := b.readLine(place, words)
		switch {
		case fault != nil:
			faults = append(faults, fault)
		case seen[key] > 0:
			faults = append(faults, faultOf(place, words[1], "%s is on line %d already; give everybody, and every script, a name of their own", p.Name, seen[key]))
		default:
			seen[key] = number
			lead = lead || p.Role == Lead
		}
	}
	if len(faults) == 0 && !lead {
		faults = append(faults, faultOf("", "", "nobody in it is a lead; make a line with: counterpour house passcode --role lead --name NAME"))
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return b, nil
}

// wordsOf returns the words of a line before a comment.
func wordsOf(line string) []string {
	words := strings.Fields(line)
	for i, w := range words {
		if strings.HasPrefix(w, "#") {
			return words[:i]
		}
	}
	return words
}

// readLine adds the entry of a line to the roster. A fault states only the length of an
// invalid hash: the user may have written a passcode in its place.
func (b *Roster) readLine(place string, words []string) (p Person, key string, fault *flavor.DataFault) {
	role, ok := ParseRole(words[0])
	if !ok {
		return p, "", faultOf(place, brief(words[0]), "%q is no role; begin the line with lead or floor", brief(words[0]))
	}
	if len(words) != 3 {
		return p, "", faultOf(place, "", "the line has %d words; write three: the role, the name and the hash, as counterpour house passcode prints them", len(words))
	}
	key, err := nameKey(words[1])
	if err != nil {
		return p, "", faultOf(place, brief(words[1]), "%v", err)
	}
	p = Person{Name: words[1], Role: role}
	if text, ok := strings.CutPrefix(words[2], tokenInRoster); ok {
		sum, err := parseTokenSum(text)
		if err != nil {
			return p, "", faultOf(place, "", "%v; make the line again with: counterpour house token --role %s --name %s", err, role, p.Name)
		}
		b.bearers = append(b.bearers, bearer{p, sum})
		return p, key, nil
	}
	h, err := parseHash(words[2])
	if err != nil {
		return p, "", faultOf(place, "", "the third word, of %d characters, is not allowed: %v; make the line again with: counterpour house passcode --role %s --name %s",
			utf8.RuneCountInString(words[2]), err, role, p.Name)
	}
	b.byName[key] = len(b.people)
	b.people = append(b.people, keeper{p, h})
	return p, key, nil
}

// nameKey returns the canonical form of a name, by RFC 8265's UsernameCaseMapped. The
// error says which names are valid.
func nameKey(name string) (string, error) {
	key, err := precis.UsernameCaseMapped.String(name)
	if err != nil || utf8.RuneCountInString(name) > mostName || strings.ContainsFunc(name, notInName) || !strings.ContainsFunc(name, unicode.IsLetter) {
		return "", fmt.Errorf("%q is no name; use up to %d letters, digits and - . _ ' with a letter among them and no blanks", brief(name), mostName)
	}
	return key, nil
}

// brief returns the first characters of a word, enough to find it.
func brief(word string) string { return fmt.Sprintf("%.*s", mostName, word) }

func notInName(r rune) bool {
	return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r) && !strings.ContainsRune("-._'", r)
}

// Line returns a line for the roster. inRoster is a hash made by [HashPasscode] or
// [NewToken]. An invalid role or name is a [*flavor.DataFault].
func Line(role Role, name, inRoster string) (string, error) {
	if !role.May(Floor) {
		return "", faultOf("role", role.String(), "the role is missing; use lead or floor")
	}
	if _, err := nameKey(name); err != nil {
		return "", faultOf("name", brief(name), "%v", err)
	}
	return fmt.Sprintf("%s %s %s", role, name, inRoster), nil
}
