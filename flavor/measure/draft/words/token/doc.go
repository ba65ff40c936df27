// Package token cuts a line into words, numbers and signs, and reads the numbers
// as bartenders write them: decimals without the nought, fractions, mixed
// numbers, ranges, numbers in words.
package token
