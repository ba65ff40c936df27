package main

import (
	"os"
	"os/exec"
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
// search engine, a database or a server.
func TestServiceBuildsForABrowser(t *testing.T) {
	t.Parallel()
	tool := func(args ...string) string {
		cmd := exec.CommandContext(t.Context(), "go", append(args, forBrowser...)...)
		cmd.Dir = root
		cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
		return string(out)
	}
	imported := strings.Fields(tool("list", "-deps"))
	assert.Contains(t, imported, "counterpour/data/house", "the list is that of the centre")
	for _, p := range imported {
		for _, h := range heavy {
			assert.False(t, strings.HasPrefix(p, h), "the centre, flavor or data import %s", p)
		}
	}
	if testing.Short() {
		return // to compile it all for another machine takes most of a minute
	}
	tool("build", "-o", os.DevNull)
}
