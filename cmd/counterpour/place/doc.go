// Package place is where a house is kept, a file, a database or memory, and how it is
// opened for what is to be done with it.
package place
