// Package words writes what every page writes: numbers with a fixed count of
// decimals and a true minus sign, counts, lists, sentences, and the trade's word
// for a verdict, an axis or a distance. It reads nothing and decides nothing.
package words
