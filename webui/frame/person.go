package frame

import (
	"net/http"
	"time"

	"counterpour/data/house"
	"counterpour/webui/access"
)

// nobody is who writes where nobody signs in.
const nobody = "bar"

// By says who makes a change, and when.
func By(r *http.Request) house.By {
	who := house.By{Actor: nobody, At: time.Now()}
	if p, ok := access.PersonOf(r.Context()); ok {
		who.Actor = p.Name
	}
	return who
}
