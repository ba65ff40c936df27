package frame

import (
	"errors"
	"net/http"

	"counterpour/data/house"
	"counterpour/webui/words"
)

// toldStatus is the status of what a store refuses and a page can tell in the
// store's own words. Whatever is not here is internal.
var toldStatus = []struct {
	kind   error
	status int
}{
	{house.ErrConflict, http.StatusConflict},
	{house.ErrNotFound, http.StatusConflict},
	{house.ErrInvalid, http.StatusUnprocessableEntity},
	{house.ErrReadOnly, http.StatusServiceUnavailable},
	{house.ErrFull, http.StatusServiceUnavailable},
	{house.ErrBusy, http.StatusServiceUnavailable},
	{house.ErrUnavailable, http.StatusServiceUnavailable},
	{house.ErrNewer, http.StatusServiceUnavailable},
}

// Told returns what a page says of an error of the store's, and its status;
// the text is empty if the error is internal.
func Told(err error) (string, int) {
	var own *house.Error
	if !errors.As(err, &own) {
		return "", http.StatusInternalServerError
	}
	for _, t := range toldStatus {
		if errors.Is(err, t.kind) {
			return words.Sentence(own.Message), t.status
		}
	}
	return "", http.StatusInternalServerError
}
