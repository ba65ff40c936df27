// Package layout sets a text anew whose layout hides its lines: the name of the drink before a sign
// or before its pours, the cells of one row of a sheet, a price at the end of a line.
//
// What it returns is as long as the text, byte for byte: a sign becomes the end of a line, and what
// pours nothing becomes blanks. It proposes, the likeliest first; package reading reads each as any
// other draft and keeps the first that leaves nothing open and that holds for what is read.
package layout
