// Package api serves the program over HTTP: routes, who may write, problem answers and the
// OpenAPI document. The work is done in [counterpour/api/service], which knows nothing of
// HTTP; how requests and answers look is in [counterpour/api/shape].
//
// # Strictness
//
// A body is read completely before any handler sees it. Size, media type, encoding and
// syntax are checked, and a field may not appear twice. Then the body is validated
// against the schema in the OpenAPI document, which is generated from the types of shape;
// unknown fields and parameters are errors. The service validates last. Every refusal is
// a [problem.Problem] that names the place, the value and the remedy. One table maps the
// kinds of errors to statuses; any other error is logged and answered with a 500 that
// does not show it.
package api
