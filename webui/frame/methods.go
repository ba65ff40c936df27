package frame

import "net/http"

// The methods of pages that only show something, of those that take forms too,
// and of those that take nothing else. What a form changes is a lead's where the route says so; the rest is for
// everybody who is let in.
var (
	Showing = []string{http.MethodGet, http.MethodHead}
	Taking  = []string{http.MethodGet, http.MethodHead, http.MethodPost}
	Posting = []string{http.MethodPost}
)
