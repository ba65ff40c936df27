package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// forBrowser is what an engine in the page would be made of: the centre, the
// science and the catalogue.
var forBrowser = []string{"./api/service", "./flavor/...", "./data"}

// heavy is what reaches them through interfaces, and never the other way.
var heavy = []string{"net/http", "database/sql", "github.com/blevesearch/", "github.com/jackc/", "modernc.org/",
	"github.com/gin-gonic/", "github.com/danielgtaylor/", "counterpour/index", "counterpour/data/house/store"}

// The centre, the science and the catalogue build for a browser, without a
// search engine, a database or a server. They are checked as a compiler for that machine
// would, types and all; no machine code is made, which takes most of a minute.
func TestServiceBuildsForABrowser(t *testing.T) {
	t.Parallel()
	cmd := exec.CommandContext(t.Context(), "go", append([]string{"list", "-deps", "-json=ImportPath,Dir,GoFiles,ImportMap,Standard"}, forBrowser...)...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	out, err := cmd.Output()
	require.NoError(t, err)
	known := checked{"unsafe": types.Unsafe}
	for list := json.NewDecoder(bytes.NewReader(out)); list.More(); {
		var p listed
		require.NoError(t, list.Decode(&p))
		for _, h := range heavy {
			assert.False(t, strings.HasPrefix(p.ImportPath, h), "the centre, flavor or data import %s", p.ImportPath)
		}
		if p.ImportPath != "unsafe" {
			known[p.ImportPath], err = p.check(known)
			require.NoError(t, err, p.ImportPath)
		}
	}
	assert.Contains(t, known, "counterpour/data/house", "the list is that of the centre")
}

// listed is a package as the go command lists it, those that it imports before it.
type listed struct {
	ImportPath, Dir string
	GoFiles         []string
	ImportMap       map[string]string
	Standard        bool
}

// checked are the packages whose types are known, by their path.
type checked map[string]*types.Package

// check checks a package for the browser. Of the standard library the bodies of functions
// are left out: it builds for every machine that it knows.
func (p *listed) check(known checked) (*types.Package, error) {
	files, set := make([]*ast.File, len(p.GoFiles)), token.NewFileSet()
	for i, name := range p.GoFiles {
		var err error
		if files[i], err = parser.ParseFile(set, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution); err != nil {
			return nil, err
		}
	}
	importing := importer(func(path string) (*types.Package, error) {
		if to, ok := p.ImportMap[path]; ok {
			path = to
		}
		if known[path] == nil {
			return nil, fmt.Errorf("%s is not listed before %s", path, p.ImportPath)
		}
		return known[path], nil
	})
	config := types.Config{Importer: importing, IgnoreFuncBodies: p.Standard, Sizes: types.SizesFor("gc", "wasm")}
	return config.Check(p.ImportPath, set, files, nil)
}

// importer finds the package of an import.
type importer func(path string) (*types.Package, error)

// Import implements [types.Importer].
func (f importer) Import(path string) (*types.Package, error) { return f(path) }
