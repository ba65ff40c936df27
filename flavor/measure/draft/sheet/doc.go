// Package sheet reads what a draft says once for many numbers: the head of a table says what
// is a name, an amount or nothing that is poured in each row; a line may say the unit of all.
package sheet
