// Package terminal is how the program speaks on a terminal: pages and JSON, drafts that
// are read, messages that can do a terminal no harm, and faults in what was typed.
package terminal
