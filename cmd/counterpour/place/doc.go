// Package place opens a house from where it is stored: a file, a database or memory.
package place
