// Package shorthand writes out what a draft has clipped or run together, "2dabsinth",
// "dkcacao", "shkup", where the words as they stand are none that are known.
package shorthand
