// Package shape says how requests and answers look as JSON, and makes the answers.
//
// A body is a request, an answer a response. Both types are declared here, with units in
// the names of their fields; no type of the science is served as it is. The Answer
// functions turn a body into an answer of the centre. A server and the command line both
// call them, so that both give the same answers.
package shape
