package api

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"maps"
	"net/http"
	"net/url"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/gin-gonic/gin"

	"counterpour/api/problem"
	"counterpour/api/service/fault"
	"counterpour/api/strictjson"
	"counterpour/flavor"
)

// recover logs a panic of a handler with its stack, and answers 500.
func (s *Server) recover(c *gin.Context) {
	defer func() {
		cause := recover()
		if cause == nil {
			return
		}
		if cause == http.ErrAbortHandler {
			panic(cause) // net/http closes the connection
		}
		s.opts.Log.ErrorContext(c.Request.Context(), "handler panicked", "method", c.Request.Method, "path", c.Request.URL.Path,
			"cause", fmt.Sprint(cause), "stack", string(debug.Stack()))
		if c.Writer.Written() {
			c.Abort()
			return
		}
		refuse(c, problem.New(http.StatusInternalServerError, problem.InternalDetail))
	}()
	c.Next()
}

// setSecurityHeaders sets the security headers. Pages set their own content security policy.
func (s *Server) setSecurityHeaders(c *gin.Context) {
	maps.Copy(c.Writer.Header(), securityHeaders)
	c.Next()
}

// securityHeaders are the same for all answers, which share the lists of values: a header
// that is set again gets another list, and one more value does not fit in.
var securityHeaders = http.Header{
	"X-Content-Type-Options": {"nosniff"},
	"Referrer-Policy":        {"same-origin"},
	"X-Frame-Options":        {"DENY"},
	contentPolicy:            {"default-src 'none'; frame-ancestors 'none'"},
}

const contentPolicy = "Content-Security-Policy"

// setDeadline puts the request's deadline into its context. Pages set their own deadlines,
// since some stay open for server-sent events.
func (s *Server) setDeadline(c *gin.Context) {
	if c.FullPath() == "" {
		c.Next()
		return
	}
	ctx, cancel := context.WithTimeout(c.Request.Context(), s.opts.Timeout)
	defer cancel()
	c.Request = c.Request.WithContext(ctx)
	c.Next()
}

// searching are the endpoints that always run a search.
var searching = map[string]bool{"/v1/cover": true, "/v1/riff": true, "/v1/use-up": true, "/v1/walk": true}

// reserve takes a place in the search queue before the draft is read. Under overload most
// of the work would otherwise go into reading drafts that are then refused. The body has
// arrived by then, so a slow client holds no place.
func (s *Server) reserve(c *gin.Context) {
	if !searching[c.FullPath()] {
		c.Next()
		return
	}
	ctx, leave, err := s.house().Searches.Reserve(c.Request.Context())
	if err != nil {
		refuse(c, s.problem(c.Request.Context(), err, "", c.FullPath()))
		return
	}
	defer leave()
	c.Request = c.Request.WithContext(ctx)
	c.Next()
}

// repeatable are the query parameters that may appear more than once.
var repeatable = map[string]bool{"avoid": true}

// checkQuery refuses a malformed query and a parameter that appears twice. The schema
// checks which parameters exist.
func (s *Server) checkQuery(c *gin.Context) {
	if c.FullPath() == "" || c.Request.URL.RawQuery == "" {
		c.Next()
		return
	}
	query, err := url.ParseQuery(c.Request.URL.RawQuery)
	if err != nil {
		refuse(c, problem.Of(&flavor.DataFault{Kind: problem.ErrMalformed, Value: c.Request.URL.RawQuery,
			Message: "the query cannot be read; write it as name=value, joined by &, with percent signs as %25"}, "query"))
		return
	}
	var faults flavor.DataFaults
	for _, name := range slices.Sorted(maps.Keys(query)) {
		if values := query[name]; len(values) > 1 && !repeatable[name] {
			faults = append(faults, flavor.Invalid(name, strings.Join(values, ", "), "is given %d times; give it once", len(values)))
		}
	}
	if len(faults) > 0 {
		refuse(c, problem.Of(faults, "query"))
		return
	}
	c.Next()
}

// noRoute answers paths that no endpoint handles: with a page, or with a 404 problem
// under /v1, where the client is a program.
func (s *Server) noRoute(c *gin.Context) {
	path := c.Request.URL.Path
	if s.opts.Pages == nil || path == "/v1" || strings.HasPrefix(path, "/v1/") {
		refuse(c, problem.Of(&flavor.DataFault{Kind: problem.ErrNoRoute, Location: "path", Value: path,
			Message: "there is nothing at this address; " + openAPIPath + " lists what there is"}, ""))
		return
	}
	c.Status(http.StatusOK) // gin has set 404
	c.Writer.Header().Del(contentPolicy)
	s.opts.Pages.ServeHTTP(c.Writer, c.Request)
}

// noMethod answers 405 where an endpoint does not take the method.
func (s *Server) noMethod(c *gin.Context) {
	allowed := c.Writer.Header().Get("Allow")
	refuse(c, problem.Of(&flavor.DataFault{Kind: problem.ErrMethod, Location: "method", Value: c.Request.Method,
		Message: fmt.Sprintf("this address takes %s and not %s", allowed, fault.Quotable(c.Request.Method))}, ""))
}

// readBody reads the whole body of a POST and refuses invalid JSON before any handler
// sees it.
func (s *Server) readBody(c *gin.Context) {
	if c.FullPath() == "" || c.Request.Method != http.MethodPost {
		c.Next()
		return
	}
	text, err := strictjson.Read(c.Writer, c.Request, MaxBody)
	if err != nil {
		refuse(c, s.problem(c.Request.Context(), err, "body", c.FullPath()))
		return
	}
	c.Request.Body = io.NopCloser(bytes.NewReader(text))
	c.Next()
}
