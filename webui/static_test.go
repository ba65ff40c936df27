package webui

import (
	"crypto/sha512"
	"encoding/base64"
	"html"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/webui/frame"
)

func TestStaticFiles(t *testing.T) {
	h := newPages(t)
	for _, c := range []struct{ name, kind string }{
		{"bar.css", "text/css; charset=utf-8"},
		{"bench.js", "text/javascript; charset=utf-8"},
		{"board.css", "text/css; charset=utf-8"},
		{"board.js", "text/javascript; charset=utf-8"},
		{"icon.svg", "image/svg+xml"},
		{"vendor/htmx-4.0.1.min.js", "text/javascript; charset=utf-8"},
		{"vendor/htmx-LICENSE.txt", "text/plain; charset=utf-8"},
	} {
		w := get(h, "/static/"+c.name, "")
		require.Equal(t, http.StatusOK, w.Code, c.name)
		assert.Equal(t, c.kind, w.Header().Get("Content-Type"), c.name)
		assert.Equal(t, frame.AskFirst, w.Header().Get("Cache-Control"), c.name)
		assert.NotEmpty(t, w.Body.Bytes(), c.name)
		again := get(h, "/static/"+c.name, w.Header().Get("ETag"))
		assert.Equal(t, http.StatusNotModified, again.Code, c.name)
	}
	for _, path := range []string{"/static/", "/static/nothing.css", "/static/vendor/README.md", "/static/../webui.go"} {
		assert.NotEqual(t, http.StatusOK, get(h, path, "").Code, path)
	}
}

func get(h http.Handler, path, etag string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(http.MethodGet, path, nil)
	if etag != "" {
		r.Header.Set("If-None-Match", etag)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

func TestVendoredFileIsTheStatedOne(t *testing.T) {
	body, err := fs.ReadFile(embedded, "static/vendor/htmx-4.0.1.min.js")
	require.NoError(t, err)
	readme, err := os.ReadFile("static/vendor/README.md")
	require.NoError(t, err)
	sum := sha512.Sum384(body)
	assert.Contains(t, string(readme), base64.StdEncoding.EncodeToString(sum[:]))
}

var links = regexp.MustCompile(`(?:href|src|action|data-hx-post|data-hx-get)="([^"]*)"`)

// Every link of every page leads somewhere on this server, and static ones are
// kept for ever.
func TestLinksResolve(t *testing.T) {
	h := newPages(t)
	pages := []string{
		get(h, "/", "").Body.String(),
		get(h, "/nowhere", "").Body.String(),
		get(h, "/board?avoid=tree+nuts", "").Body.String(),
		post(h, "/board", url.Values{"out": {"falernum"}}, true).Body.String(),
		get(h, "/specs?q=e&avoid=milk", "").Body.String(),
		get(h, "/specs/nutcracker/card", "").Body.String(),
		get(h, "/specs/print", "").Body.String(),
		get(h, "/map?spec=nutcracker", "").Body.String(),
		get(h, "/training?what=mend", "").Body.String(),
		post(h, "/training", answerForm("mend", "pour-0", "2 oz", "pour-1", "1 oz", "pour-2", "½ oz"), false).Body.String(),
		ask(t, http.MethodPost, "/", url.Values{"text": {nutDraft}, "missing": {"orgeat"}}, false).Body.String(),
		ask(t, http.MethodPost, "/", url.Values{"text": {"2 oz gni"}}, false).Body.String(),
	}
	seen := 0
	for _, page := range pages {
		for _, m := range links.FindAllStringSubmatch(page, -1) {
			link := html.UnescapeString(m[1])
			if id, ok := strings.CutPrefix(link, "#"); ok {
				assert.Contains(t, page, `id="`+id+`"`, link)
				continue
			}
			require.True(t, strings.HasPrefix(link, "/") && !strings.HasPrefix(link, "//"), "%s leads elsewhere", link)
			w := get(h, link, "")
			assert.Equal(t, http.StatusOK, w.Code, link)
			if strings.HasPrefix(link, "/static/") {
				assert.Equal(t, frame.KeepForever, w.Header().Get("Cache-Control"), link)
			}
			seen++
		}
	}
	assert.Greater(t, seen, 12)
}

// What the content policy would refuse, and what points to other hosts.
var forbidden = map[string]*regexp.Regexp{
	"a style attribute":     regexp.MustCompile(`\sstyle\s*=`),
	"a handler attribute":   regexp.MustCompile(`(?i)\s(data-)?(hx-)?on[a-z:-]*\s*=`),
	"a script in the page":  regexp.MustCompile(`<script\b[^>]*>[^<]`),
	"a style in the page":   regexp.MustCompile(`<style\b`),
	"text turned into code": regexp.MustCompile(`js:|javascript:|hx-trigger="[^"]*\[`),
	"another host":          regexp.MustCompile(`(?i)(href|src|action|url\()\s*=?\s*["']?(https?:)?//`),
}

func TestTemplatesAndStylesKeepToThePolicy(t *testing.T) {
	for _, root := range []string{"templates", "static/bar.css", "static/board.css", "static/specs.css", "static/print.css", "static/training.css", "static/bench.js", "static/board.js", "static/print.js", "static/icon.svg"} {
		err := fs.WalkDir(embedded, root, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			body, err := fs.ReadFile(embedded, name)
			for what, pattern := range forbidden {
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

var ids = regexp.MustCompile(`\sid="([^"]*)"`)

func TestIdsAreUnique(t *testing.T) {
	page := ask(t, http.MethodPost, "/", url.Values{"text": {nutDraft + "\n"}, "missing": {"orgeat"}}, false).Body.String()
	twice := ask(t, http.MethodPost, "/", url.Values{"text": {"1 oz gin\n1 oz gin\nstir"}}, false).Body.String()
	h := newFakeHouse()
	h.outs = []string{"falernum", "orgeat"}
	pages := pagesOf(t, h)
	for _, body := range []string{page, twice, get(pages, "/board?avoid=milk", "").Body.String(), get(pages, "/specs", "").Body.String(),
		get(pages, "/specs/print", "").Body.String(), get(pages, "/map?spec=nutcracker&missing=orgeat", "").Body.String(),
		get(pages, "/training?what=order-sweet", "").Body.String(), get(pages, "/training?what=cover", "").Body.String(), get(pages, "/tools?tool=dilute&amount=700&from=57&to=40", "").Body.String(),
		post(pages, "/training", answerForm("fault", "way", "much", "of", "sour"), false).Body.String()} {
		seen := map[string]bool{}
		for _, m := range ids.FindAllStringSubmatch(body, -1) {
			assert.False(t, seen[m[1]], "id %q twice", m[1])
			seen[m[1]] = true
		}
	}
}
