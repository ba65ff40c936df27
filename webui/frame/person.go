package frame

import (
	"net/http"
	"time"

	"counterpour/data/house"
	"counterpour/webui/access"
)

// nobody is the actor of a change if there are no accounts.
const nobody = "bar"

// By returns who makes a change, and when.
func By(r *http.Request) house.By {
	who := house.By{Actor: nobody, At: time.Now()}
	if p, ok := access.PersonOf(r.Context()); ok {
		who.Actor = p.Name
	}
	return who
}
