package webui_test

import (
	"crypto/sha512"
	"encoding/base64"
	"html"
	"io/fs"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui"
	"counterpour/webui/frame"
	"counterpour/webui/part"
	"counterpour/webui/webuitest"
)

func TestStaticFiles(t *testing.T) {
	h := webuitest.NewPages(t)
	for _, c := range []struct{ name, kind string }{
		{"bar.css", "text/css; charset=utf-8"},
		{"bench.js", "text/javascript; charset=utf-8"},
		{"board.css", "text/css; charset=utf-8"},
		{"board.js", "text/javascript; charset=utf-8"},
		{"icon.svg", "image/svg+xml"},
		{"vendor/htmx-4.0.1.min.js", "text/javascript; charset=utf-8"},
		{"vendor/htmx-LICENSE.txt", "text/plain; charset=utf-8"},
	} {
		w := webuitest.Get(h, "/static/"+c.name, "")
		require.Equal(t, http.StatusOK, w.Code, c.name)
		assert.Equal(t, c.kind, w.Header().Get("Content-Type"), c.name)
		assert.Equal(t, frame.AskFirst, w.Header().Get("Cache-Control"), c.name)
		assert.NotEmpty(t, w.Body.Bytes(), c.name)
		again := webuitest.Get(h, "/static/"+c.name, w.Header().Get("ETag"))
		assert.Equal(t, http.StatusNotModified, again.Code, c.name)
	}
	for _, path := range []string{"/static/", "/static/nothing.css", "/static/vendor/README.md", "/static/../webui.go"} {
		assert.NotEqual(t, http.StatusOK, webuitest.Get(h, path, "").Code, path)
	}
}

func TestVendoredFileIsTheStatedOne(t *testing.T) {
	body, err := fs.ReadFile(webui.Embedded, "static/vendor/htmx-4.0.1.min.js")
	require.NoError(t, err)
	readme, err := os.ReadFile("static/vendor/README.md")
	require.NoError(t, err)
	sum := sha512.Sum384(body)
	assert.Contains(t, string(readme), base64.StdEncoding.EncodeToString(sum[:]))
}

// Every link of every page leads somewhere on this server, and static ones are
// kept for ever.
func TestLinksResolve(t *testing.T) {
	h := webuitest.NewPages(t)
	pages := []string{
		webuitest.Get(h, "/", "").Body.String(),
		webuitest.Get(h, "/nowhere", "").Body.String(),
		webuitest.Get(h, "/board?avoid=tree+nuts", "").Body.String(),
		webuitest.Post(h, "/board", url.Values{"out": {"falernum"}}, true).Body.String(),
		webuitest.Get(h, "/specs?q=e&avoid=milk", "").Body.String(),
		webuitest.Get(h, "/specs/nutcracker/card", "").Body.String(),
		webuitest.Get(h, "/specs/print", "").Body.String(),
		webuitest.Get(h, "/map?spec=nutcracker", "").Body.String(),
		webuitest.Follow(h, "/training?what=mend").Body.String(),
		webuitest.Post(h, "/training", webuitest.AnswerForm("mend", "pour-0", "2 oz", "pour-1", "1 oz", "pour-2", "½ oz"), false).Body.String(),
		webuitest.Ask(t, http.MethodPost, "/", url.Values{"text": {webuitest.NutDraft}, "missing": {"orgeat"}}, false).Body.String(),
		webuitest.Ask(t, http.MethodPost, "/", url.Values{"text": {"2 oz gnx"}}, false).Body.String(),
	}
	seen := 0
	for _, page := range pages {
		for _, m := range webuitest.Links.FindAllStringSubmatch(page, -1) {
			link := html.UnescapeString(m[1])
			if id, ok := strings.CutPrefix(link, "#"); ok {
				assert.Contains(t, page, `id="`+id+`"`, link)
				continue
			}
			require.True(t, strings.HasPrefix(link, "/") && !strings.HasPrefix(link, "//"), "%s leads elsewhere", link)
			if link == part.UndoPath {
				continue // which takes only forms
			}
			page, _, _ := strings.Cut(link, "#")
			w := webuitest.Get(h, page, "")
			assert.Equal(t, http.StatusOK, w.Code, link)
			if strings.HasPrefix(link, "/static/") {
				assert.Equal(t, frame.KeepForever, w.Header().Get("Cache-Control"), link)
			}
			seen++
		}
	}
	assert.Greater(t, seen, 12)
}

func TestTemplatesAndStylesKeepToThePolicy(t *testing.T) {
	for _, root := range []string{"templates", "static"} {
		err := fs.WalkDir(webui.Embedded, root, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || strings.HasPrefix(name, "static/vendor/") {
				return err
			}
			body, err := fs.ReadFile(webui.Embedded, name)
			for what, pattern := range webuitest.Forbidden {
				if strings.HasSuffix(name, ".js") && what == "a handler attribute" {
					continue // scripts may name a variable so
				}
				assert.False(t, pattern.Match(body), "%s holds %s: %q", name, what, pattern.Find(body))
			}
			return err
		})
		require.NoError(t, err)
	}
}

func TestIdsAreUnique(t *testing.T) {
	page := webuitest.Ask(t, http.MethodPost, "/", url.Values{"text": {webuitest.NutDraft + "\n"}, "missing": {"orgeat"}}, false).Body.String()
	twice := webuitest.Ask(t, http.MethodPost, "/", url.Values{"text": {"1 oz gin\n1 oz gin\nstir"}}, false).Body.String()
	h := webuitest.NewHouse()
	h.Dry = []string{"falernum", "orgeat"}
	pages := webuitest.PagesOf(t, h)
	for _, body := range []string{page, twice, webuitest.Get(pages, "/board?avoid=milk", "").Body.String(), webuitest.Get(pages, "/specs", "").Body.String(),
		webuitest.Get(pages, "/specs/print", "").Body.String(), webuitest.Get(pages, "/map?spec=nutcracker&missing=orgeat", "").Body.String(),
		webuitest.Follow(pages, "/training?what=order-sweet").Body.String(), webuitest.Follow(pages, "/training?what=cover").Body.String(), webuitest.Get(pages, "/tools?tool=dilute&amount=700&from=57&to=40", "").Body.String(),
		webuitest.Post(pages, "/training", webuitest.AnswerForm("fault", "say", "sour-much"), false).Body.String()} {
		seen := map[string]bool{}
		for _, m := range webuitest.Ids.FindAllStringSubmatch(body, -1) {
			assert.False(t, seen[m[1]], "id %q twice", m[1])
			seen[m[1]] = true
		}
	}
}

// A sheet whose braces do not match loses the rules that follow, without a word.
func TestSheetsAreWhole(t *testing.T) {
	names, err := fs.Glob(webui.Embedded, "static/*.css")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		text, err := fs.ReadFile(webui.Embedded, name)
		require.NoError(t, err)
		depth := 0
		for _, r := range comments.ReplaceAllString(string(text), "") {
			switch r {
			case '{':
				depth++
			case '}':
				depth--
			}
			if !assert.GreaterOrEqual(t, depth, 0, "%s closes what it has not opened", name) {
				break
			}
		}
		assert.Zero(t, depth, "%s leaves something open", name)
	}
}

// comments are those of a sheet.
var comments = regexp.MustCompile(`(?s)/\*.*?\*/`)

// hoverable is a block of rules for screens whose pointer can stand over a thing without
// touching it. On others what was tapped, and what slides in under the finger, would
// stay lit.
var hoverable = regexp.MustCompile(`(?s)@media \(hover: hover\) \{([^{}]*\{[^{}]*\})*\s*\}`)

func TestOnlyAPointerHovers(t *testing.T) {
	names, err := fs.Glob(webui.Embedded, "static/*.css")
	require.NoError(t, err)
	found := 0
	for _, name := range names {
		text, err := fs.ReadFile(webui.Embedded, name)
		require.NoError(t, err)
		found += len(hoverable.FindAll(text, -1))
		assert.NotContains(t, hoverable.ReplaceAllString(string(text), ""), ":hover", "%s: put it under @media (hover: hover)", name)
	}
	assert.Positive(t, found)
}
