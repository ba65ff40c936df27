package webui_test

import (
	"go/ast"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What Go code shows stands in the package say.
func TestGoCodeHoldsNoSentences(t *testing.T) {
	for _, file := range codeOf(t, ".") {
		at := filepath.ToSlash(filepath.Dir(file.set.Position(file.Pos()).Filename))
		if at == "say" || at == "access" {
			continue // these speak to who writes sentences, to programs, and on a terminal
		}
		assert.Empty(t, sentencesIn(file), "%s: write it into say/english/views", at)
	}
}

var (
	phrase    = regexp.MustCompile(`\pL[\pL'’]*[,;:.)]* +[(“]?\pL`)        // two words
	glue      = regexp.MustCompile(`^[\s\x{00a0}].*\pL|\pL.*[ \x{00a0}]$`) // a word that others are put beside
	lowerCase = regexp.MustCompile(`\p{Ll}`)
	label     = regexp.MustCompile(`^\p{Lu}\p{Ll}{2,}$`) // a word with a capital, as on a button
	// a kind of error, or a package, before what went wrong: for the log
	forTheLog = regexp.MustCompile(`^(%w|[a-z]*): `)
	// lines of a drawing, attributes, what is sent to a browser and not shown
	markup = regexp.MustCompile(`^M%[sd] |^[a-z-]+="|^ ?[a-z-]+="|^\w+/[\w+-]+; |'self'|^(event|data|attachment|public|Bearer)\b`)
	// what is filled in by a format
	verb = regexp.MustCompile(`%(\[\d+\])?[sdvq]`)
	tag  = regexp.MustCompile(`<[^>]*(>|$)`)
	// a unit behind a figure, the same in every language
	unit = regexp.MustCompile(`^[\s\x{00a0}](mL|L|g|g/L|mg/L|oz|%[\s\x{00a0}]vol|% abv)$`)
	logs = []string{"Debug", "Info", "Warn", "Error", "DebugContext", "InfoContext", "WarnContext", "ErrorContext"}
)

// readAgain are words that a program reads: those of wishes that forms send, for which the
// page shows others, names of headers, the place of a fault, what stands before or behind a
// name that is looked up, diets, and why a row of a sheet is left out.
var readAgain = []string{"more bitter", "less bitter", "below 20 %", "below 15 %", "below 12 %", "below 8 %", "below ", "more ", "less ", "line ", "1 ml ", "orange juice", " juice", " x",
	"no egg", "no dairy", "Allow", "Vary", "Bearer", "0.0 % alcohol", "a heading", "a sum", "left out, as you said"}

// sentencesIn are the literals of a file that a visitor reads: two words or more, a word with
// a capital, or one that is put beside others; not what is for the log, tags, patterns, keys by
// which something is looked up, and what say is asked for.
func sentencesIn(file sourceFile) (out []string) {
	skipped := map[ast.Node]bool{}
	ast.Inspect(file.File, func(n ast.Node) bool {
		if skipped[n] {
			return false
		}
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			n.Tag = nil
		case *ast.KeyValueExpr:
			skipped[n.Key] = true
		case *ast.CallExpr:
			for i := 1; calls(n, "say", "It") && i < len(n.Args); i += 2 {
				skipped[n.Args[i]] = true
			}
			if f, is := n.Fun.(*ast.SelectorExpr); is && (slices.Contains(logs, f.Sel.Name) || calls(n, "regexp", "MustCompile")) {
				return false
			}
		case *ast.BasicLit:
			if n.Kind != token.STRING {
				return true
			}
			text, err := strconv.Unquote(n.Value)
			if err == nil && isSentence(text) {
				out = append(out, file.set.Position(n.Pos()).String()+": "+text)
			}
		}
		return true
	})
	return out
}

func isSentence(text string) bool {
	if strings.HasPrefix(strings.TrimSpace(text), "<") {
		return isSentence(strings.TrimSpace(tag.ReplaceAllString(text, " ")))
	}
	bare := verb.ReplaceAllString(text, "")
	return lowerCase.MatchString(bare) && (phrase.MatchString(bare) || glue.MatchString(bare) || label.MatchString(bare)) &&
		!forTheLog.MatchString(text) && !markup.MatchString(text) && !unit.MatchString(bare) && !slices.Contains(readAgain, text)
}

// The check finds sentences, and leaves what is none.
func TestSentencesOfGoCodeAreFound(t *testing.T) {
	for text, want := range map[string]bool{
		"Nothing is out.": true, "in mL": true, " mL": false, "\u00a0% vol": false, " steps": true, "%d of %s": true, "\n%s\n": false, "of ": true, "not here, there": true, "\u00a0steps": true, "p = %s, or less": true,
		"": false, "out": false, "ready": false, ", ": false, " ": false, "Authorization, Cookie": true,
		"%w: a score without a family": false, "frame: static files: %w": false, "<path d=\"M0 0\" class=\"a b\"/>": false, `class="a b"`: false, "M%s %sh52": false, "<text x=\"%s\">%s</text>\n<path d=\"M%s": false,
		"<text x=\"%s\">a guest notices</text>": true, "Strong": true, "Vary": false, "sour": false, "SameSite": false, "text/html; charset=utf-8": false,
		"default-src 'self'; style-src 'self'": false, "attachment; filename=\"a b\"": false,
	} {
		assert.Equal(t, want, isSentence(text), "%q", text)
	}
	file := parsed(t, `package p
		import "a b"
		type x struct { A int "json of it" }
		var y = regexp.MustCompile("in the")
		func z() { log.Warn("it broke down"); log.Error("so", "it broke"); show("Nothing is out."); say.It("a.b", "Name", "Sour") }
		var glasses = map[string]string{"large coupe": "a wide one"}`)
	assert.Equal(t, []string{"p.go:5:75: Nothing is out.", "p.go:5:117: Sour", "p.go:6:50: a wide one"}, sentencesIn(file))
}

// The check of keys finds each call, and what is not written out in it.
func TestCallsForSentencesAreFound(t *testing.T) {
	file := parsed(t, `package p
		func z() { say.It("a.b", "N", 1, "M", n); say.It("a." + k); say.It("a.c", name, 1); say.It("a.d", "N"); words.It("a.e") }`)
	calls := saysIn(file)
	require.Len(t, calls, 4)
	assert.Equal(t, saidCall{"p.go:2:14", "a.b", []string{"M", "N"}}, calls[0])
	assert.Empty(t, calls[1].key)
	assert.Equal(t, []string{"argument 1, which is no name written out"}, calls[2].names)
	assert.Contains(t, strings.Join(calls[3].names, ", "), "a name without a value")
	assert.Equal(t, []string{"A", "B", "C", "D"}, valuesOf(t, `{{if eq .A 1}}{{.B}}{{else}}{{count .C "x" "y"}}{{end}}{{if and .D .A}}z{{end}}`))
}
