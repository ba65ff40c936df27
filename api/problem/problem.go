// Package problem turns errors into problem details (RFC 9457). It maps each kind of
// error to a status, and lists everything that is wrong with a request, each with its
// place.
package problem

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"counterpour/api/admission"
	"counterpour/api/service"
	"counterpour/api/service/fault"
	"counterpour/data/house"
	"counterpour/flavor"
	"counterpour/flavor/lookup"
)

// Kinds of errors that only an HTTP server has, beside those of package flavor.
var (
	// ErrNoRoute: no endpoint or page has this address.
	ErrNoRoute = errors.New("no such address")
	// ErrMalformed: the body or the address cannot be parsed.
	ErrMalformed = errors.New("malformed")
	// ErrTooLarge: the body is over the size limit.
	ErrTooLarge = errors.New("too large")
	// ErrMediaType: a body that is not JSON.
	ErrMediaType = errors.New("unsupported media type")
	// ErrMethod: the endpoint does not take this method.
	ErrMethod = errors.New("method not allowed")
	// ErrSlowBody: the body did not arrive in time.
	ErrSlowBody = errors.New("request timed out")
	// ErrForbidden: the user may not do that.
	ErrForbidden = errors.New("forbidden")
	// ErrNotReady: the program is starting or stopping.
	ErrNotReady = errors.New("not ready")
)

// kinds maps every kind of error to its status. Kinds with a detail answer with it
// instead of the error's own text, which is not for users. An error of no kind listed
// here is answered with a bare 500, and its cause is logged.
var kinds = []struct {
	kind   error
	status int
	detail string
}{
	{ErrNoRoute, http.StatusNotFound, ""},
	{fault.ErrNotFound, http.StatusNotFound, ""},
	{ErrForbidden, http.StatusForbidden, ""},
	{ErrMethod, http.StatusMethodNotAllowed, ""},
	{ErrMalformed, http.StatusBadRequest, ""},
	{ErrTooLarge, http.StatusRequestEntityTooLarge, ""},
	{ErrMediaType, http.StatusUnsupportedMediaType, ""},
	{ErrSlowBody, http.StatusRequestTimeout, ""},
	{ErrNotReady, http.StatusServiceUnavailable, ""},
	{admission.ErrFull, http.StatusServiceUnavailable, admission.ErrFull.Error()},
	{service.ErrLost, http.StatusServiceUnavailable, service.ErrLost.Error()},
	{service.ErrStale, http.StatusServiceUnavailable, service.ErrStale.Error()},
	{flavor.ErrInvalid, http.StatusUnprocessableEntity, ""},
	{flavor.ErrUnknown, http.StatusUnprocessableEntity, ""},
	{context.DeadlineExceeded, http.StatusServiceUnavailable, "this took longer than is allowed; ask for fewer parts, or again later"},
	{context.Canceled, http.StatusServiceUnavailable, "the request was cancelled"},
	{lookup.ErrClosed, http.StatusServiceUnavailable, "the program is stopping; ask again later"},
}

// InternalDetail is the only detail that an internal error is answered with.
const InternalDetail = "something went wrong in the program, not in the request; it is logged"

// Problem is an error in the form of RFC 9457, served as application/problem+json.
type Problem struct {
	Type   string         `json:"type" doc:"Address that explains this kind of problem; about:blank where the status says enough"`
	Title  string         `json:"title" doc:"The status in words"`
	Status int            `json:"status" doc:"The HTTP status"`
	Detail string         `json:"detail" doc:"What is wrong, in a sentence"`
	Errors []ProblemError `json:"errors" doc:"Everything that is wrong, each thing with its place"`

	RequestID string `json:"request_id,omitempty" doc:"Names the request in the log"`
}

// ProblemError is one thing wrong with a request.
type ProblemError struct {
	Location string   `json:"location" doc:"Where: line 3 of a text, body.spec.pours[2].unit, query.limit"`
	Message  string   `json:"message" doc:"What is wrong and how to fix it"`
	Value    any      `json:"value" doc:"The word or number that is wrong"`
	Suggest  []string `json:"suggest" doc:"What may have been meant, the nearest first"`
}

// Error returns the detail.
func (p *Problem) Error() string { return p.Detail }

// GetStatus returns the HTTP status. It implements huma.StatusError.
func (p *Problem) GetStatus() int { return p.Status }

// GetHeaders returns the headers that go with the status, such as Retry-After. It
// implements huma.HeadersError.
func (p *Problem) GetHeaders() http.Header {
	h := http.Header{}
	if p.Status == http.StatusServiceUnavailable {
		h.Set("Retry-After", strconv.Itoa(admission.RetryAfter))
	}
	return h
}

// ContentType returns the media type of problems. It implements huma.ContentTypeFilter.
func (p *Problem) ContentType(string) string { return MediaType }

// MediaType is the media type of problems.
const MediaType = "application/problem+json"

// StatusOf returns the status of an error, and the detail to answer with if the error's
// own text is not for users. known is false for an internal error, which the caller
// should log. An error of the store that says it cannot write keeps its own message.
func StatusOf(err error) (status int, detail string, known bool) {
	for _, k := range kinds {
		if errors.Is(err, k.kind) {
			return k.status, k.detail, true
		}
	}
	var store *house.Error
	if errors.As(err, &store) {
		if errors.Is(err, house.ErrConflict) {
			return http.StatusConflict, store.Message, true
		}
		for _, kind := range []error{house.ErrReadOnly, house.ErrNewer, house.ErrFull, house.ErrBusy, house.ErrUnavailable} {
			if errors.Is(err, kind) {
				return http.StatusServiceUnavailable, store.Message, false
			}
		}
	}
	return http.StatusInternalServerError, InternalDetail, false
}

// Of turns an error into a problem. origin, "body" or "query", is put before the places
// of its faults.
func Of(err error, origin string) *Problem {
	status, detail, _ := StatusOf(err)
	p := New(status, detail)
	for _, f := range flavor.DataFaultsOf(err) {
		p.Errors = append(p.Errors, ErrorOf(f, origin))
	}
	if p.Detail == "" {
		p.Detail = p.summary()
	}
	return p
}

// ErrorOf turns one fault into one entry of a problem.
func ErrorOf(f *flavor.DataFault, origin string) ProblemError {
	e := ProblemError{Location: locate(f.Location, origin), Message: f.Message, Value: fault.Quotable(f.Value), Suggest: f.Suggest}
	if e.Suggest == nil {
		e.Suggest = []string{}
	}
	return e
}

// New returns a problem with a status and a detail, and no list of errors.
func New(status int, detail string) *Problem {
	return &Problem{Type: "about:blank", Title: http.StatusText(status), Status: status, Detail: detail, Errors: []ProblemError{}}
}

// summary returns one sentence for the detail of the problem.
func (p *Problem) summary() string {
	switch len(p.Errors) {
	case 0:
		return p.Title
	case 1:
		return p.Errors[0].sentence()
	}
	return fmt.Sprintf("%d things are wrong; the first: %s", len(p.Errors), p.Errors[0].sentence())
}

func (e *ProblemError) sentence() string {
	if e.Location == "" || e.Location == "body" {
		return e.Message
	}
	return e.Location + ": " + e.Message
}

// locate puts the origin before a place. A line of a text and a part of the path stand
// without one.
func locate(location, origin string) string {
	switch {
	case origin == "" || strings.HasPrefix(location, "line ") || strings.HasPrefix(location, "path."):
		return location
	case location == "":
		return origin
	}
	return origin + "." + location
}
