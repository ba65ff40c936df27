package webui

import (
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/frame"
)

// A device keeps what it saw: when the bar does not answer it shows a copy that
// says so, with its time, and lists its copies in place of a page never seen.
func TestACopyIsMarkedAsOne(t *testing.T) {
	b := newBrowser(t, 360)
	server := httptest.NewServer(pagesOf(t, newFakeHouse()))
	defer server.Close()
	b.open(server.URL, "/board")
	b.until(`!!navigator.serviceWorker.controller`)
	b.open(server.URL, "/board") // now it goes through the keeper
	b.open(server.URL, "/specs?avoid=tree+nuts")
	b.until(`document.querySelector('h1') && !document.querySelector('.copy')`)
	server.CloseClientConnections() // the board listens as long as it can
	server.Close()

	b.open(server.URL, "/board")
	b.until(`document.querySelector('.copy strong')?.textContent.startsWith('This is a copy of ')`)
	b.until(`Math.abs(Date.now() - new Date(document.querySelector('.copy time').dateTime)) < 120000`)
	b.until(`document.getElementById('out-falernum') !== null`)
	b.until(`getComputedStyle(document.body).backgroundColor === 'rgb(13, 12, 11)'`)
	b.fits()

	b.open(server.URL, "/training")
	b.until(`document.querySelector('h1').textContent === 'The bar does not answer'`)
	b.until(`[...document.querySelectorAll('li a')].map((a) => a.getAttribute('href')).join() === '/specs?avoid=tree+nuts,/board'`)
}

func TestWhatIsKeptIsServed(t *testing.T) {
	pages := pagesOf(t, newFakeHouse())
	w := get(pages, "/offline.js", "")
	assert.Equal(t, "text/javascript; charset=utf-8", w.Header().Get("Content-Type"))
	assert.Equal(t, frame.AskFirst, w.Header().Get("Cache-Control"))
	w = get(pages, "/static/bar.webmanifest", "")
	assert.Equal(t, "application/manifest+json", w.Header().Get("Content-Type"))
	assert.Contains(t, get(pages, "/", "").Body.String(), `rel="manifest"`)
}
