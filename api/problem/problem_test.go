package problem

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// TestKinds walks every kind of error: each has a status and a message, whether it is
// bare, wrapped or a fault.
func TestKinds(t *testing.T) {
	all := []error{ErrNoRoute, fault.ErrNotFound, service.ErrLost, service.ErrStale, ErrForbidden, ErrMalformed, ErrTooLarge, ErrMediaType, ErrMethod, ErrSlowBody, ErrNotReady, admission.ErrFull,
		flavor.ErrInvalid, flavor.ErrUnknown, context.DeadlineExceeded, context.Canceled, lookup.ErrClosed}
	require.Len(t, kinds, len(all), "a kind is in the table, or in this list, but not in both")
	for _, kind := range all {
		for name, err := range map[string]error{
			"bare": kind, "wrapped": fmt.Errorf("doing this: %w", kind),
			"fault": &flavor.DataFault{Kind: kind, Message: "mend it so"}, "faults": flavor.DataFaults{{Kind: kind, Message: "mend it so"}},
		} {
			status, _, known := StatusOf(err)
			assert.True(t, known, "%v, %s", kind, name)
			assert.GreaterOrEqual(t, status, 400, "%v, %s", kind, name)
			p := Of(err, "body")
			assert.Equal(t, status, p.Status)
			assert.NotEmpty(t, p.Detail, "%v, %s", kind, name)
			assert.NotEmpty(t, p.Title)
			assert.NotContains(t, p.Detail, "doing this", "the inner cause is not for the user")
			assert.NotNil(t, p.Errors)
		}
	}
	p := Of(errors.New("the disk at /secret is full"), "body")
	assert.Equal(t, http.StatusInternalServerError, p.Status)
	assert.NotContains(t, p.Detail, "secret")
}

// Errors that the store states for the user keep their message; internal ones do not.
func TestStoreErrorsKeepTheirMessage(t *testing.T) {
	for _, c := range []struct {
		kind   error
		status int
	}{
		{house.ErrConflict, http.StatusConflict}, {house.ErrFull, http.StatusServiceUnavailable}, {house.ErrReadOnly, http.StatusServiceUnavailable},
		{house.ErrBusy, http.StatusServiceUnavailable}, {house.ErrUnavailable, http.StatusServiceUnavailable}, {house.ErrNewer, http.StatusServiceUnavailable},
	} {
		p := Of(&house.Error{Kind: c.kind, Op: "write", Message: "say this"}, "body")
		assert.Equal(t, c.status, p.Status, c.kind)
		assert.Equal(t, "say this", p.Detail, c.kind)
	}
	p := Of(&house.Error{Kind: house.ErrInternal, Op: "write", Message: "page 7 of /secret"}, "body")
	assert.Equal(t, http.StatusInternalServerError, p.Status)
	assert.NotContains(t, p.Detail, "secret")
}

func TestProblemPlaces(t *testing.T) {
	for location, want := range map[string]string{"line 3": "line 3", "": "body", "spec.pours[1].unit": "body.spec.pours[1].unit", "path.id": "path.id"} {
		p := Of(&flavor.DataFault{Kind: flavor.ErrInvalid, Location: location, Message: "no"}, "body")
		assert.Equal(t, want, p.Errors[0].Location)
	}
}
