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

// stillSaying are the packages whose Go code holds sentences that are not in the package say
// yet. No other may.
var stillSaying = []string{"draw", "words"}

// What Go code shows stands in the package say, as far as that is done.
func TestGoCodeHoldsNoSentences(t *testing.T) {
	held := map[string][]string{}
	for _, file := range codeOf(t, ".") {
		at := filepath.ToSlash(filepath.Dir(file.set.Position(file.Pos()).Filename))
		if at == "say" || at == "access" {
			continue // these speak to who writes sentences, to programs, and on a terminal
		}
		held[at] = append(held[at], sentencesIn(file)...)
	}
	for at, list := range held {
		if slices.Contains(stillSaying, at) {
			assert.NotEmpty(t, list, "%s holds no sentence any more; take it off the list", at)
			continue
		}
		assert.Empty(t, list, "%s: write it into say/english/views", at)
	}
}

var (
	phrase    = regexp.MustCompile(`\pL[\pL'’]*[,;:.)]* +[(“]?\pL`)        // two words
	glue      = regexp.MustCompile(`^[\s\x{00a0}].*\pL|\pL.*[ \x{00a0}]$`) // a word that others are put beside
	lowerCase = regexp.MustCompile(`\p{Ll}`)
	// a kind of error, or a package, before what went wrong: for the log
	forTheLog = regexp.MustCompile(`^(%w|[a-z]*): `)
	// tags, attributes, what is sent to a browser and not shown
	markup = regexp.MustCompile(`^\s*<|^[a-z-]+="|^ ?[a-z-]+="|^\w+/[\w+-]+; |'self'|^(event|data|attachment|public|Bearer)\b`)
	// a unit behind a figure, the same in every language
	unit = regexp.MustCompile(`^[\s\x{00a0}](mL|L|g|g/L|mg/L|oz|%[\s\x{00a0}]vol|% abv)$`)
	logs = []string{"Debug", "Info", "Warn", "Error", "DebugContext", "InfoContext", "WarnContext", "ErrorContext"}
)

// readAgain are words that a program reads: those of wishes that forms send, for which the
// page shows others, the place of a fault, what stands before or behind a
// name that is looked up, diets, and why a row of a sheet is left out.
var readAgain = []string{"more bitter", "less bitter", "below 20 %", "below 15 %", "below 12 %", "below 8 %", "below ", "more ", "less ", "line ", "1 ml ", "orange juice", " juice", " x",
	"no egg", "no dairy", "0.0 % alcohol", "a heading", "a sum", "left out, as you said"}

// sentencesIn are the literals of a file that a visitor reads: two words or more, or a word
// that is put beside others; not what is for the log, tags, patterns, and what say is asked
// for.
func sentencesIn(file sourceFile) (out []string) {
	ast.Inspect(file.File, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			n.Tag = nil
		case *ast.CallExpr:
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
	return lowerCase.MatchString(text) && (phrase.MatchString(text) || glue.MatchString(text)) &&
		!forTheLog.MatchString(text) && !markup.MatchString(text) && !unit.MatchString(text) && !slices.Contains(readAgain, text)
}

// The check finds sentences, and leaves what is none.
func TestSentencesOfGoCodeAreFound(t *testing.T) {
	for text, want := range map[string]bool{
		"Nothing is out.": true, "in mL": true, " mL": false, "\u00a0% vol": false, " steps": true, "%d of %s": true, "of ": true, "not here, there": true, "\u00a0steps": true, "p = %s, or less": true,
		"": false, "out": false, "ready": false, ", ": false, " ": false, "Authorization, Cookie": true,
		"%w: a score without a family": false, "frame: static files: %w": false, "<path d=\"M0 0\" class=\"a b\"/>": false, `class="a b"`: false, "text/html; charset=utf-8": false,
		"default-src 'self'; style-src 'self'": false, "attachment; filename=\"a b\"": false,
	} {
		assert.Equal(t, want, isSentence(text), "%q", text)
	}
	file := parsed(t, `package p
		import "a b"
		type x struct { A int "json of it" }
		var y = regexp.MustCompile("in the")
		func z() { log.Warn("it broke down"); log.Error("so", "it broke"); show("Nothing is out."); say.It("a.b") }`)
	assert.Equal(t, []string{"p.go:5:75: Nothing is out."}, sentencesIn(file))
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
