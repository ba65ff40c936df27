// Package sheet reads what a draft says once for many numbers: the head of a table says what
// is a name, an amount or nothing that is poured in each row; a line may say the unit of all; a
// column in brackets may be a batch's, and percentages may be shares of the whole.
package sheet
