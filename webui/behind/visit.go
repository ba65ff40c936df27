package behind

import (
	"net/http"

	"counterpour/api/service"
)

// Visit is a house as one request sees it: as it stood when the request began, and
// as it stands after each write of the request's own.
type Visit interface {
	Bar
	House
	Trainer
}

var _ Visit = (*service.Visit)(nil)

// Open begins a visit, once for each request.
type Open func() Visit

// Visiting makes an action of a method of pages: over the house as it stands when
// the request begins, which begin gives them.
func Visiting[P any](open Open, begin func(Visit) P) func(func(P, http.ResponseWriter, *http.Request) error) func(http.ResponseWriter, *http.Request) error {
	return func(do func(P, http.ResponseWriter, *http.Request) error) func(http.ResponseWriter, *http.Request) error {
		return func(w http.ResponseWriter, r *http.Request) error { return do(begin(open()), w, r) }
	}
}
