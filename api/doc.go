// Package api serves the program over HTTP: routes, request and response types,
// problem answers and the OpenAPI document. The Kitchen does the work and knows
// nothing of HTTP, so that the command line gives the same answers.
package api
