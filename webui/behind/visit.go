package behind

import (
	"net/http"

	"counterpour/api/service/visit"
)

// Visit is the house during one request: its state at the start and, after each write of
// the request, the latest one.
type Visit interface {
	Bar
	House
	Trainer
}

var _ Visit = (*visit.Visit)(nil)

// Open begins a visit. Call it once for each request.
type Open func() Visit

// Visiting turns a method of pages into an action. begin makes the pages for the visit
// that each request opens.
func Visiting[P any](open Open, begin func(Visit) P) func(func(P, http.ResponseWriter, *http.Request) error) func(http.ResponseWriter, *http.Request) error {
	return func(do func(P, http.ResponseWriter, *http.Request) error) func(http.ResponseWriter, *http.Request) error {
		return func(w http.ResponseWriter, r *http.Request) error { return do(begin(open()), w, r) }
	}
}
