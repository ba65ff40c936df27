package frame

import "net/http"

// Methods of pages that only read, of pages that also take forms, and of those that only
// take forms. If a form changes something that only a lead may change, the route says so.
var (
	Showing = []string{http.MethodGet, http.MethodHead}
	Taking  = []string{http.MethodGet, http.MethodHead, http.MethodPost}
	Posting = []string{http.MethodPost}
)
