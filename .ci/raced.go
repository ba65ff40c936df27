// Command raced prints what the race detector is run over, at the root of the module: a regular
// expression of tests, and in the next line their packages.
//
// Only a test that starts a goroutine or a server, or calls what does, can race; any other is done
// in one goroutine, whatever it calls, and takes ten times as long under the detector for nothing.
// A page that is asked of a recorder answers in the goroutine of its test. So a test is raced if
// its body, or that of a function of the tests of its folder that it calls by any number of steps,
// starts something, and if it is one of those named below.
package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// starters are the functions that start something, other than those of the tests of a folder:
// of sync.WaitGroup, of the program and of the packages that set its tests up. What is called of
// net/http/httptest starts something too, if its name speaks of a server.
var starters = map[string]bool{"Go": true, "FillPool": true, "Subscribe": true, "openVenue": true}

// named are tests by the names they have, where what they call works at once by itself: on other
// cores, or a venue that follows its store while the test writes there.
var named = map[string]*regexp.Regexp{
	"flavor/beside":     regexp.MustCompile(`.`),
	"flavor/trial":      regexp.MustCompile(`Trial`),
	"flavor/cover/outs": regexp.MustCompile(`^TestOuts$|Cores`),
	"api/service":       regexp.MustCompile(`Feed|Servers|AnotherVenue|ReturnedWrite|Restart|FaultsStay`),
}

func main() {
	tests, folders, err := raced(".")
	if err != nil {
		fmt.Fprintln(os.Stderr, "the tests cannot be read:", err)
		os.Exit(1)
	}
	fmt.Printf("^(%s)$\n%s\n", strings.Join(tests, "|"), strings.Join(folders, " "))
}

// raced returns the tests that are raced and the folders they are in, each once and in order.
func raced(root string) (tests, folders []string, err error) {
	files, err := testFiles(root)
	if err != nil {
		return nil, nil, err
	}
	for folder, inside := range files {
		before := len(tests)
		started := startedBy(inside)
		for name := range inside {
			also := named[folder]
			if strings.HasPrefix(name, "Test") && name != "TestMain" && (started[name] || also != nil && also.MatchString(name)) {
				tests = append(tests, name)
			}
		}
		if len(tests) > before {
			folders = append(folders, "./"+folder)
		}
	}
	slices.Sort(tests)
	slices.Sort(folders)
	return slices.Compact(tests), folders, nil
}

// testFiles returns the functions of the tests of each folder, by name.
func testFiles(root string) (map[string]map[string]*ast.FuncDecl, error) {
	out := map[string]map[string]*ast.FuncDecl{}
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		folder := filepath.ToSlash(filepath.Dir(path))
		if out[folder] == nil {
			out[folder] = map[string]*ast.FuncDecl{}
		}
		for _, d := range file.Decls {
			if f, ok := d.(*ast.FuncDecl); ok && f.Body != nil {
				name := f.Name.Name
				if old := out[folder][name]; old != nil { // methods of two types: what either does counts
					f.Body.List = append(f.Body.List, old.Body.List...)
				}
				out[folder][name] = f
			}
		}
		return nil
	})
	return out, err
}

// startedBy returns which of the functions of a folder start something.
func startedBy(inside map[string]*ast.FuncDecl) map[string]bool {
	started := map[string]bool{}
	for again := true; again; {
		again = false
		for name, f := range inside {
			if !started[name] && starts(f.Body, started) {
				started[name], again = true, true
			}
		}
	}
	return started
}

// starts reports whether a body starts a goroutine or calls what starts something.
func starts(body *ast.BlockStmt, started map[string]bool) bool {
	found := false
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.GoStmt:
			found = true
		case *ast.CallExpr:
			switch f := ast.Unparen(n.Fun).(type) {
			case *ast.Ident:
				found = found || started[f.Name] || starters[f.Name]
			case *ast.SelectorExpr:
				of, _ := f.X.(*ast.Ident)
				served := of != nil && of.Name == "httptest" && strings.Contains(f.Sel.Name, "Server")
				found = found || served || started[f.Sel.Name] || starters[f.Sel.Name]
			}
		}
		return !found
	})
	return found
}
