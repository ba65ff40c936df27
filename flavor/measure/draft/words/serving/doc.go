// Package serving reads what is said of a drink's method, service, ice and glass,
// in any order, and in sentences too.
package serving
