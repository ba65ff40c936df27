package webuitest

import (
	"net/http"
	"net/http/httptest"
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"
)

// Links are the addresses that a page leads to or asks for.
var Links = regexp.MustCompile(`(?:href|src|action|data-hx-post|data-hx-get)="([^"]*)"`)

// Forbidden is what the content policy would refuse, and what points to other hosts.
var Forbidden = map[string]*regexp.Regexp{
	"a style attribute":     regexp.MustCompile(`\sstyle\s*=`),
	"a handler attribute":   regexp.MustCompile(`(?i)\s(data-)?(hx-)?on[a-z:-]*\s*=`),
	"a script in the page":  regexp.MustCompile(`<script\b[^>]*>[^<]`),
	"a style in the page":   regexp.MustCompile(`<style\b`),
	"text turned into code": regexp.MustCompile(`js:|javascript:|hx-trigger="[^"]*\[`),
	"another host":          regexp.MustCompile(`(?i)(href|src|action|url\()\s*=?\s*["']?(https?:)?//`),
}

// Ids are the ids of a page.
var Ids = regexp.MustCompile(`\sid="([^"]*)"`)

// MaxLoad is the most that the first visit to a page may weigh on its way, in bytes,
// all files counted.
const MaxLoad = 120_000

// Loads are the static files that a page loads.
var Loads = regexp.MustCompile(`(?:href|src)="(/static/[^"]*)"`)

// FirstLoad is what the first visit to a page weighs, in bytes, as a browser that takes
// gzip is sent it.
func FirstLoad(t *testing.T, h http.Handler, path string) int {
	t.Helper()
	page := Follow(h, path)
	require.Contains(t, []int{http.StatusOK, http.StatusUnprocessableEntity}, page.Code, path)
	weight := page.Body.Len()
	for _, m := range Loads.FindAllStringSubmatch(page.Body.String(), -1) {
		r := httptest.NewRequest(http.MethodGet, m[1], nil)
		r.Header.Set("Accept-Encoding", "gzip")
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		require.Equal(t, http.StatusOK, w.Code, m[1])
		weight += w.Body.Len()
	}
	return weight
}
