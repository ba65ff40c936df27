package main

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/cmd/counterpour/terminal"
)

var updateReadme = flag.Bool("update-readme", false, "write the true outputs into README.md")

const (
	readmeDraft = "Halyard Sour\n2 oz London dry gin\n1 1/2 oz honey syrup\n1 oz lemon juice\nshake, up\n"
	readmeCover = "Halyard Sour\n2 oz London dry gin\n3/4 oz honey syrup\n1 oz lemon juice\nshake, up\n"
)

// What README shows is what the program prints: each block follows a comment
// that names its command.
func TestReadmeShowsTrueOutput(t *testing.T) {
	t.Parallel() // it computes while others wait for databases and children
	path := filepath.Join(root, "README.md")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	readme := string(text)
	require.Contains(t, readme, strings.ReplaceAll("    "+strings.TrimSpace(readmeDraft), "\n", "\n    "), "the draft that is scored is the one shown")
	for _, c := range []struct {
		name, in string
		args     []string
		fenced   bool
		first    bool // only what stands before the first empty line
		slow     bool
	}{
		{name: "counterpour score", in: readmeDraft, args: []string{"score", "-"}, fenced: true},
		{name: "counterpour cover", in: readmeCover, args: []string{"cover", "-", "--missing", "honey syrup", "--limit", "2"}, fenced: true},
		{name: "counterpour check", args: []string{"check"}, fenced: true},
		{name: "counterpour calibrate --drafts", args: []string{"calibrate", "--drafts"}, first: true},
		{name: "counterpour calibrate --trial", args: []string{"calibrate", "--trial"}, slow: true},
	} {
		if c.slow && testing.Short() {
			t.Logf("%s: left out of a short run", c.name)
			continue
		}
		var out, errOut bytes.Buffer
		require.Equal(t, terminal.ExitDone, run(c.args, strings.NewReader(c.in), &out, &errOut), errOut.String())
		want := strings.TrimRight(out.String(), "\n")
		if c.first {
			want, _, _ = strings.Cut(want, "\n\n")
		}
		if c.fenced {
			want = "```\n" + want + "\n```"
		}
		head, tail := around(t, readme, c.name)
		if *updateReadme {
			readme = head + want + tail
			continue
		}
		assert.Equal(t, want, readme[len(head):len(readme)-len(tail)], "%s: README is behind; write it with -update-readme", c.name)
	}
	if *updateReadme {
		require.NoError(t, os.WriteFile(path, []byte(readme), 0o644))
	}
}

// around returns what stands before and after the block of a command: it
// begins after the comment with its name and ends at the next heading, comment
// or the sentence after it, marked with a comment of its own.
func around(t *testing.T, readme, name string) (head, tail string) {
	t.Helper()
	begin, end := "<!-- "+name+" -->\n", "\n<!-- end -->"
	at := strings.Index(readme, begin)
	require.GreaterOrEqual(t, at, 0, "README has no block for %s", name)
	at += len(begin)
	length := strings.Index(readme[at:], end)
	require.GreaterOrEqual(t, length, 0, "the block of %s has no end", name)
	return readme[:at], readme[at+length:]
}
