// Package exchange reads and writes a house for other programs and for people:
// JSON for all of it, CSV for stock and specs, Recipe documents of schema.org
// as JSON-LD, and text as a bartender writes it. Text carries neither ids nor
// notes, the other forms do.
//
// Reading changes nothing. It gives a [Reading]: the good records, and the bad
// ones by number with what is wrong and how to mend it. [Import] then writes
// the good ones, or nothing if any is bad, as the user chooses. Amounts, units
// and order survive every way out and back.
//
// # CSV
//
// Stock is a bottle a row. It is written under these columns:
//
//	id,name,ingredient,well,abv_pct,brix,sugar_g_per_l,acid_g_per_l,
//	price,currency,size_ml,size_g,stock,par,note,
//	label_contains,label_may_contain,label_vegan,label_read_by,label_read_at,label_unread,out_since,words
//
// and read as people keep it ([ReadSheet]): whatever separates the cells, under
// titles in the trade's own words, in any order, below lines that say what the file
// is, with headings between the rows; sums with their signs, sizes with their
// units. What the file leaves open is supposed and said, or asked for: every fault
// of a row is told at once, with what would mend it ([CellFault]), and what a
// person settles goes before the file ([Settled]). A column of which a bottle has
// no field is kept in its note. Over bottles that are there a column that is left
// out changes nothing.
//
// Specs are a pour a row, under columns that the first row names, in any order and
// separated by commas, semicolons or tabs; beside the latter two, decimals may be
// written with a comma. They stand in the order of the pours, the rows of a spec one
// after another:
//
//	id,name,method,service,amount,unit,ingredient,note
//
// where name, method, service and note may be left empty after the first row of
// a spec. An empty id is made of the name. An ingredient is an id, or, with a
// finder, any name that it knows. Rows are numbered as a spreadsheet does, blank
// ones counted, the columns' names being row 1. Bad rows can be had by themselves,
// as they stood and under the names of the columns ([Reading.Rest]), so that the
// good ones can go in first and none is lost.
//
// A cell that a spreadsheet would take for a formula is written with an
// apostrophe before it, which reading takes off again.
//
// # JSON
//
// One document: {"format": "counterpour-house", "version": 1, "records":
// [{"kind": "spec", "record": {…}}, …]}, by kind and id. It holds the records
// as they stand; the log stays in the house and in its backups.
package exchange
