package webui_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"text/template/parse"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/say"
)

// Every sentence that Go code asks for is there, with the values that it names and no others;
// and none is there that nothing asks for.
func TestGoCodeSaysWhatStandsInTheSentences(t *testing.T) {
	all, err := say.Views()
	require.NoError(t, err)
	asked := map[string]bool{}
	for _, file := range codeOf(t, ".") {
		for _, call := range saysIn(file) {
			text, found := all[call.key]
			if !assert.True(t, found, "%s: there is no sentence %q; write it into say/english/views", call.at, call.key) {
				continue
			}
			asked[call.key] = true
			assert.Equal(t, valuesOf(t, text), call.names, "%s: the values of %q, %s", call.at, call.key, text)
		}
	}
	for key := range all {
		assert.True(t, asked[key], "%q is a sentence that nothing says; take it away", key)
	}
}

// sourceFile is a file of Go code.
type sourceFile struct {
	set *token.FileSet
	*ast.File
}

// codeOf are the Go files below a folder, without tests and what is for tests.
func codeOf(t *testing.T, folder string) (out []sourceFile) {
	err := filepath.WalkDir(folder, func(at string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && strings.HasSuffix(at, "test") {
			return fs.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(at, ".go") || strings.HasSuffix(at, "_test.go") {
			return nil
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, at, nil, 0)
		out = append(out, sourceFile{set, file})
		return err
	})
	require.NoError(t, err)
	require.NotEmpty(t, out)
	return out
}

// parsed is a file of Go code, p.go, from its text.
func parsed(t *testing.T, text string) sourceFile {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, "p.go", text, 0)
	require.NoError(t, err)
	return sourceFile{set, file}
}

// saidCall is one call for a sentence.
type saidCall struct {
	at, key string
	names   []string // of its values, sorted
}

// saysIn are the calls for sentences in a file. Keys and names are written out in each, so
// that they can be found.
func saysIn(file sourceFile) (out []saidCall) {
	ast.Inspect(file.File, func(n ast.Node) bool {
		call, is := n.(*ast.CallExpr)
		if !is || !calls(call, "say", "It") {
			return true
		}
		said := saidCall{at: file.set.Position(call.Pos()).String(), names: []string{}}
		for i, arg := range call.Args {
			switch text, literal := literalOf(arg); {
			case i == 0:
				said.key = text
			case i%2 == 1 && literal:
				said.names = append(said.names, text)
			case i%2 == 1:
				said.names = append(said.names, fmt.Sprintf("argument %d, which is no name written out", i))
			}
		}
		if len(call.Args)%2 == 0 {
			said.names = append(said.names, "a name without a value")
		}
		slices.Sort(said.names)
		out = append(out, said)
		return true
	})
	return out
}

// calls reports whether a call is of a function of a package.
func calls(call *ast.CallExpr, pkg, function string) bool {
	f, is := call.Fun.(*ast.SelectorExpr)
	if !is || f.Sel.Name != function {
		return false
	}
	of, is := f.X.(*ast.Ident)
	return is && of.Name == pkg
}

func literalOf(e ast.Expr) (string, bool) {
	l, is := e.(*ast.BasicLit)
	if !is || l.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(l.Value)
	return text, err == nil
}

// valuesOf are the names of the values of a sentence, sorted.
func valuesOf(t *testing.T, sentence string) []string {
	parsed, err := say.Parse(sentence)
	require.NoError(t, err, sentence)
	names := map[string]bool{}
	var walk func(n parse.Node)
	walk = func(n parse.Node) {
		switch n := n.(type) {
		case *parse.ListNode:
			if n != nil {
				for _, each := range n.Nodes {
					walk(each)
				}
			}
		case *parse.ActionNode:
			walk(n.Pipe)
		case *parse.IfNode:
			walk(n.Pipe)
			walk(n.List)
			walk(n.ElseList)
		case *parse.PipeNode:
			for _, c := range n.Cmds {
				walk(c)
			}
		case *parse.CommandNode:
			for _, each := range n.Args {
				walk(each)
			}
		case *parse.FieldNode:
			names[n.Ident[0]] = true
		case *parse.RangeNode, *parse.WithNode, *parse.TemplateNode:
			assert.Fail(t, "a sentence chooses by if and count alone", sentence)
		}
	}
	walk(parsed.Root)
	out := []string{}
	for name := range names {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}
