// Package premises opens a house from where it is stored: a file, a database or memory.
package premises
