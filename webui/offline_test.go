package webui_test

import (
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterpour/webui/frame"
	"counterpour/webui/webuitest"
)

// A device keeps what it saw: when the bar does not answer it shows a copy that
// says so, with its time, and lists its copies in place of a page never seen.
func TestACopyIsMarkedAsOne(t *testing.T) {
	b := webuitest.NewBrowser(t, 360)
	server := httptest.NewServer(webuitest.PagesOf(t, webuitest.NewHouse()))
	defer server.Close()
	b.Open(server.URL, "/board")
	b.Until(`!!navigator.serviceWorker.controller`)
	b.Until(`(caches.open("counterpour-seen-1").then((c) => c.keys()).then((all) => { window.kept = all.length; }), window.kept === 1)`) // what was open before
	b.Open(server.URL, "/tonight?avoid=tree+nuts")
	b.Open(server.URL, "/specs?avoid=tree+nuts")
	b.Until(`document.querySelector('h1') && !document.querySelector('.copy')`)
	server.CloseClientConnections() // the board listens as long as it can
	server.Close()

	b.Open(server.URL, "/board")
	b.Until(`document.querySelector('.copy strong')?.textContent.startsWith('This is a copy of ')`)
	b.Until(`Math.abs(Date.now() - new Date(document.querySelector('.copy time').dateTime)) < 120000`)
	b.Until(`document.getElementById('out-falernum') !== null`)
	b.Until(`getComputedStyle(document.body).backgroundColor === 'rgb(13, 12, 11)'`)
	b.Fits()

	b.Until(`document.querySelector('.copy').textContent.includes('minute')`)
	b.Open(server.URL, "/tonight?avoid=tree+nuts&show=ready") // another choice of the same
	b.Until(`!!document.querySelector('.copy') && !!document.querySelector('.for-guest')`)

	b.Open(server.URL, "/tonight") // for everybody, which was never opened
	b.Until(`document.querySelector('h1').textContent === 'No connection'`)
	b.Until(`[...document.querySelectorAll('li a')].map((a) => a.getAttribute('href')).join() === '/tonight?avoid=tree+nuts,/specs?avoid=tree+nuts,/board'`)
	b.Until(`document.querySelector('li a').textContent.includes('for a guest without tree nuts')`)
	b.Until(`getComputedStyle(document.body).backgroundColor === 'rgb(13, 12, 11)'`)
	b.Fits()
}

func TestWhatIsKeptIsServed(t *testing.T) {
	pages := webuitest.PagesOf(t, webuitest.NewHouse())
	w := webuitest.Get(pages, "/offline.js", "")
	assert.Equal(t, "text/javascript; charset=utf-8", w.Header().Get("Content-Type"))
	assert.Equal(t, frame.AskFirst, w.Header().Get("Cache-Control"))
	w = webuitest.Get(pages, "/static/bar.webmanifest", "")
	assert.Equal(t, "application/manifest+json", w.Header().Get("Content-Type"))
	assert.Contains(t, webuitest.Get(pages, "/", "").Body.String(), `rel="manifest"`)
}
