// Package joining puts together what is written apart and is one entry: pieces of a line
// between its separators, lines that hold an amount and a name by turns, names under one
// amount.
package joining
