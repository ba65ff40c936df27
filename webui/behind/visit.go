package behind

import "counterpour/api/service"

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
