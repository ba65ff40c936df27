// Package terminal handles input and output on a terminal: pages and JSON, reading
// drafts, messages without control characters, and usage errors.
package terminal
