// Package api serves the program over HTTP: routes, request and response types,
// problem answers and the OpenAPI document. The work is done in
// [counterpour/api/service], which knows nothing of HTTP.
//
// # Words
//
// A body is what comes in, an answer what goes out. Both are declared here, with
// units in the names of their fields; nothing of the science is served raw.
// The Answer functions make an answer of a body, so that the command line gives
// the same answers; a [Server] only carries them over HTTP.
//
// # Strictness
//
// A body is read once, in whole, before any handler sees it: its size, its type,
// its encoding and its syntax are checked, and no field may come twice. Then it
// is checked against the schema of the OpenAPI document, which is made from the
// types here; unknown fields and parameters are errors. What the science refuses
// comes last. Every refusal is a [problem.Problem] that names the place, the word and
// the remedy; the kinds of errors and their statuses are in one table, and
// whatever is not in it is logged and served as a bare 500.
package api
