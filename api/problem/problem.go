// Package problem says what is wrong with a request, as RFC 9457 has it: which status
// each kind of error has, and everything that is wrong with its place.
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

// Kinds of faults that only a server has, beside those of package flavor.
var (
	// ErrNoRoute: an address that nothing answers to.
	ErrNoRoute = errors.New("no such address")
	// ErrMalformed: a body or an address that cannot be read at all.
	ErrMalformed = errors.New("malformed")
	// ErrTooLarge: a body that is longer than is read.
	ErrTooLarge = errors.New("too large")
	// ErrMediaType: a body that is not JSON.
	ErrMediaType = errors.New("unsupported media type")
	// ErrMethod: a method that the address does not take.
	ErrMethod = errors.New("method not allowed")
	// ErrSlowBody: a body that did not arrive in time.
	ErrSlowBody = errors.New("request timed out")
	// ErrForbidden: who asks may not do that.
	ErrForbidden = errors.New("forbidden")
	// ErrNotReady: the program is starting or stopping.
	ErrNotReady = errors.New("not ready")
)

// kinds maps every kind of error to its status. The detail is for kinds whose
// errors say nothing that a user should read. What is not here is 500, and its
// cause is logged and not served.
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

// InternalDetail is all that is said of a fault of the program.
const InternalDetail = "something went wrong in the program, not in the request; it is logged"

// Problem is an error as RFC 9457 describes it, in application/problem+json.
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

// GetStatus returns the HTTP status, as huma asks for it.
func (p *Problem) GetStatus() int { return p.Status }

// GetHeaders returns what goes with the status, as huma asks for it: when to ask
// again, where that helps.
func (p *Problem) GetHeaders() http.Header {
	h := http.Header{}
	if p.Status == http.StatusServiceUnavailable {
		h.Set("Retry-After", strconv.Itoa(admission.RetryAfter))
	}
	return h
}

// ContentType returns the media type of problems, as huma asks for it.
func (p *Problem) ContentType(string) string { return MediaType }

// MediaType is that of a problem.
const MediaType = "application/problem+json"

// StatusOf returns the status of an error and what to say if the error itself
// is not to be read; known is false for what the log is to tell. What the store
// cannot take at the moment is told in its own words.
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

// Of turns an error into a problem. Places within the request begin with
// origin, which is body or query.
func Of(err error, origin string) *Problem {
	status, detail, _ := StatusOf(err)
	p := New(status, detail)
	for _, f := range flavor.FaultsOf(err) {
		p.Errors = append(p.Errors, ErrorOf(f, origin))
	}
	if p.Detail == "" {
		p.Detail = p.summary()
	}
	return p
}

// ErrorOf turns a fault into one thing wrong with a request.
func ErrorOf(f *flavor.Fault, origin string) ProblemError {
	e := ProblemError{Location: locate(f.Location, origin), Message: f.Message, Value: fault.Quotable(f.Value), Suggest: f.Suggest}
	if e.Suggest == nil {
		e.Suggest = []string{}
	}
	return e
}

// New returns a problem of which nothing is said but a status and a sentence.
func New(status int, detail string) *Problem {
	return &Problem{Type: "about:blank", Title: http.StatusText(status), Status: status, Detail: detail, Errors: []ProblemError{}}
}

// summary says in a sentence what the errors say.
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

// locate puts the origin before a place; a line of a text and a part of the
// address stand by themselves.
func locate(location, origin string) string {
	switch {
	case origin == "" || strings.HasPrefix(location, "line ") || strings.HasPrefix(location, "path."):
		return location
	case location == "":
		return origin
	}
	return origin + "." + location
}
