//go:build ignore

// Command sentences prints every sentence a user can see, a line each: file,
// line and text, sorted. Run it at the root of the module, with folders or
// files to look at only those: go run .ci/sentences.go [PATH ...]
//
// Of a page it takes the text, titles, labels and placeholders, and each of the sentences
// that are put into its places; of Go code the
// strings that hold a space, without tests, struct tags, regular expressions,
// SQL and templates of layout; of the data the names, aliases and notes that are
// shown, and the names of materials and of what they smell of.
package main

import (
	"cmp"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/net/html"
)

// sentence is a text and where it stands.
type sentence struct {
	file string
	line int
	text string
}

func main() {
	roots := os.Args[1:]
	if len(roots) == 0 {
		roots = []string{"api", "cmd", "data", "flavor", "index", "webui"}
	}
	var all []sentence
	for _, root := range roots {
		found, err := under(root)
		if err != nil {
			fmt.Fprintln(os.Stderr, "the sentences cannot be read:", err)
			os.Exit(1)
		}
		all = append(all, found...)
	}
	slices.SortFunc(all, func(a, b sentence) int {
		return cmp.Or(cmp.Compare(a.file, b.file), cmp.Compare(a.line, b.line), cmp.Compare(a.text, b.text))
	})
	for _, s := range slices.Compact(all) {
		fmt.Printf("%s:%d: %s\n", s.file, s.line, s.text)
	}
}

// under returns the sentences of every file below a folder, or of one file.
func under(root string) ([]sentence, error) {
	var all []sentence
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if entry.Name() == "testdata" {
				return filepath.SkipDir
			}
			return nil
		}
		read := reader(filepath.ToSlash(path))
		if read == nil {
			return nil
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		found, err := read(string(text))
		if err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
		for _, s := range found {
			s.file = filepath.ToSlash(path)
			if s.text = strings.Join(strings.Fields(s.text), " "); s.text != "" {
				all = append(all, s)
			}
		}
		return nil
	})
	return all, err
}

// reader returns what reads a file of this name, or nil where a user sees
// nothing of it.
func reader(path string) func(string) ([]sentence, error) {
	switch base := filepath.Base(path); {
	case strings.HasSuffix(base, "_test.go"), strings.Contains(path, "test/"),
		strings.Contains(base, "drafts"), strings.Contains(base, "situations"):
		return nil
	case strings.HasSuffix(base, ".go"):
		return ofCode
	case strings.HasSuffix(base, ".html"):
		return ofPage
	case strings.HasSuffix(base, ".txt") && strings.Contains(path, "say/"):
		return ofSentences
	case strings.HasSuffix(base, ".toml"):
		return ofData
	case strings.HasSuffix(base, ".js") && !strings.Contains(base, "htmx"):
		return ofScript
	}
	return nil
}

var (
	action   = regexp.MustCompile(`(?s)\{\{.*?\}\}`)
	quoted   = regexp.MustCompile("\"((?:[^\"\\\\\n]|\\\\.)*)\"|`([^`\n]*)`")
	letters  = regexp.MustCompile(`\pL{2,}`)
	notWords = regexp.MustCompile(`(?s)^\s*(SELECT|INSERT|UPDATE|DELETE|CREATE|ALTER|DROP|PRAGMA|BEGIN|WITH|AND|ORDER|WHERE|VALUES|ON CONFLICT)\b|^\s*<[a-z/!]|^[a-z-]+="`)
)

// isSentence reports whether a string is words for people: letters and a space,
// and no byte that separates fields.
func isSentence(text string) bool {
	return utf8.ValidString(text) && !strings.Contains(text, "\x00") && letters.MatchString(text) && strings.Contains(strings.TrimSpace(text), " ") && !notWords.MatchString(text)
}

// seen names the attributes of an element that are read out or shown.
var seen = []string{"title", "aria-label", "placeholder", "alt", "content", "value", "label", "hx-confirm", "data-confirm", "summary"}

// ofPage returns the text of a page, what its attributes show, and the strings
// in its actions. An action becomes "…" in the text around it.
func ofPage(text string) ([]sentence, error) {
	var all []sentence
	plain := action.ReplaceAllStringFunc(text, func(act string) string {
		at := 1 + strings.Count(text[:strings.Index(text, act)], "\n")
		for _, m := range quoted.FindAllStringSubmatch(act, -1) {
			if s := m[1] + m[2]; isSentence(s) {
				all = append(all, sentence{line: at, text: s})
			}
		}
		return "…" + strings.Repeat("\n", strings.Count(act, "\n"))
	})
	line, skip := 1, false
	for z := html.NewTokenizer(strings.NewReader(plain)); ; {
		kind := z.Next()
		if kind == html.ErrorToken {
			return all, nil
		}
		raw := string(z.Raw())
		at := line + strings.Count(raw[:len(raw)-len(strings.TrimLeft(raw, "\n\t "))], "\n")
		line += strings.Count(raw, "\n")
		tok := z.Token()
		switch kind {
		case html.TextToken:
			if !skip && letters.MatchString(tok.Data) {
				all = append(all, sentence{line: at, text: tok.Data})
			}
		case html.StartTagToken, html.SelfClosingTagToken:
			skip = tok.Data == "script" || tok.Data == "style"
			for _, a := range tok.Attr {
				if slices.Contains(seen, a.Key) && letters.MatchString(a.Val) {
					all = append(all, sentence{line: at, text: a.Key + ": " + a.Val})
				}
			}
		default:
			skip = false
		}
	}
}

// ofSentences returns the sentences of a template, which stand behind their keys.
func ofSentences(text string) ([]sentence, error) {
	var all []sentence
	for i, line := range strings.Split(text, "\n") {
		if more, goesOn := strings.CutPrefix(line, "\t"); goesOn && len(all) > 0 {
			all[len(all)-1].text += "\n" + more
		} else if _, said, found := strings.Cut(line, ": "); found {
			all = append(all, sentence{line: i + 1, text: said})
		}
	}
	return all, nil
}

// ofCode returns the strings of a Go file that are words for people.
func ofCode(text string) ([]sentence, error) {
	files := token.NewFileSet()
	file, err := parser.ParseFile(files, "", text, 0)
	if err != nil {
		return nil, err
	}
	var all []sentence
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			if n.Tag != nil {
				all = append(all, ofTag(n.Tag.Value, files.Position(n.Pos()).Line)...)
			}
			n.Tag = nil
		case *ast.CallExpr:
			if fun, is := n.Fun.(*ast.SelectorExpr); is {
				if of, is := fun.X.(*ast.Ident); is && of.Name == "regexp" {
					return false
				}
			}
		case *ast.BasicLit:
			if n.Kind != token.STRING {
				return true
			}
			if s, err := strconv.Unquote(n.Value); err == nil && isSentence(s) {
				all = append(all, sentence{line: files.Position(n.Pos()).Line, text: s})
			}
		}
		return true
	})
	return all, nil
}

var docs = regexp.MustCompile(`\b(doc|example|summary):"((?:[^"\\]|\\.)*)"`)

// ofTag returns what the description of the programming interface says of a field.
func ofTag(tag string, line int) []sentence {
	var all []sentence
	for _, m := range docs.FindAllStringSubmatch(tag, -1) {
		all = append(all, sentence{line: line, text: m[2]})
	}
	return all
}

var (
	field = regexp.MustCompile(`^\s*("[^"]+"|[\w-]+)\s*=\s*(.*)$`)
	title = regexp.MustCompile(`^\s*\[+([\w-]+)\]+`)
	named = []string{"materials", "aliases", "notes", "odorants"} // tables whose keys are names
	shown = []string{"aliases", "class", "without_alcohol", "text", "note", "name", "usual", "source", "title", "caution", "remedy", "label", "says", "detail", "reason", "about", "hint", "tip", "kind", "lead", "from", "making"}
)

// ofData returns the fields of a data file that are shown to a user.
func ofData(text string) ([]sentence, error) {
	var all []sentence
	table := ""
	for i, line := range strings.Split(text, "\n") {
		if m := title.FindStringSubmatch(line); m != nil {
			table = m[1]
		}
		m := field.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		if key := strings.Trim(m[1], `"`); slices.Contains(named, table) {
			all = append(all, sentence{line: i + 1, text: table + ": " + key})
			continue
		} else if !slices.Contains(shown, key) {
			continue
		}
		for _, q := range quoted.FindAllStringSubmatch(m[2], -1) {
			if s := q[1] + q[2]; letters.MatchString(s) {
				all = append(all, sentence{line: i + 1, text: m[1] + ": " + s})
			}
		}
	}
	return all, nil
}

// ofScript returns the strings of a script that are words for people.
func ofScript(text string) ([]sentence, error) {
	var all []sentence
	for i, line := range strings.Split(text, "\n") {
		for _, q := range quoted.FindAllStringSubmatch(line, -1) {
			if s := q[1] + q[2]; isSentence(s) && letters.MatchString(s) {
				all = append(all, sentence{line: i + 1, text: s})
			}
		}
	}
	return all, nil
}
