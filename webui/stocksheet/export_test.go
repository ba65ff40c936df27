package stocksheet

// What the tests of this folder look at from outside.

var ColumnNotes = columnNotes
