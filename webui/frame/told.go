package frame

import (
	"errors"
	"net/http"

	"counterpour/data/house"
	"counterpour/webui/words"
)

// toldStatus maps errors of the store that have a message for the user to statuses. All
// others are internal.
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

// Told returns the message for the user of an error of the store, and its status. The
// message is "" if the error is internal.
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
