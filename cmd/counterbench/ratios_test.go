package main

import (
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/data"
)

// The section is written between its marks, and nothing else is touched.
func TestWriteSection(t *testing.T) {
	path := filepath.Join(t.TempDir(), "DEVELOPERS.md")
	require.NoError(t, os.WriteFile(path, []byte("before\n"+sectionBegins+"old\n"+sectionEnds+"after\n"), 0o600))
	require.NoError(t, writeSection(path, "new\n"))
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "before\n"+sectionBegins+"new\n"+sectionEnds+"after\n", string(text))
	require.NoError(t, os.WriteFile(path, []byte("no marks\n"), 0o600))
	assert.Error(t, writeSection(path, "new\n"))
	guide, err := os.ReadFile("../../DEVELOPERS.md")
	require.NoError(t, err)
	assert.Contains(t, string(guide), sectionBegins)
	assert.Contains(t, string(guide), sectionEnds)
}

// A generated catalogue is the same every time, and every ingredient has an id and a
// name of its own.
func TestGeneratedCatalogues(t *testing.T) {
	c, err := data.Embedded()
	require.NoError(t, err)
	const n = 3000
	a, b := generated(c.Profiles(), n), generated(c.Profiles(), n)
	require.Len(t, a, n)
	ids := map[string]bool{}
	for i := range a {
		assert.Equal(t, *a[i], *b[i])
		ids[a[i].ID] = true
	}
	assert.Len(t, ids, n)
}

func TestDriveCountsEveryAnswer(t *testing.T) {
	n := 0
	s := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if n++; n%2 == 0 {
			w.WriteHeader(http.StatusServiceUnavailable)
		}
	}))
	defer s.Close()
	list := drive(t.Context(), 1, 100*time.Millisecond, s.URL, same("{}"))
	good, refused := with(list, http.StatusOK), with(list, http.StatusServiceUnavailable)
	assert.Len(t, list, len(good)+len(refused))
	assert.InDelta(t, len(good), len(refused), 1)
}
