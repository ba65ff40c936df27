// Package api serves the program over HTTP: routes, request and response types, problem
// answers and the OpenAPI document. The work is done in [counterpour/api/service], which
// knows nothing of HTTP.
//
// # Words
//
// A body is a request, an answer a response. Both types are declared here, with units in
// the names of their fields; no type of the science is served as it is. The Answer
// functions turn a body into an answer. The command line calls them too, so it gives the
// same answers as a [Server], which adds only HTTP.
//
// # Strictness
//
// A body is read completely before any handler sees it. Size, media type, encoding and
// syntax are checked, and a field may not appear twice. Then the body is validated
// against the schema in the OpenAPI document, which is generated from the types here;
// unknown fields and parameters are errors. The service validates last. Every refusal is
// a [problem.Problem] that names the place, the value and the remedy. One table maps the
// kinds of errors to statuses; any other error is logged and answered with a 500 that
// does not show it.
package api
