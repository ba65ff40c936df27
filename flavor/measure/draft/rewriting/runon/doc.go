// Package runon parts a text that runs on, spoken or typed without a sign between one pour
// and the next, into a list of lines.
package runon
