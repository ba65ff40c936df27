// Package words formats what all pages show: numbers with a fixed number of decimals and
// a true minus sign, counts, lists, sentences, and the trade's words for verdicts, axes
// and distances.
package words
